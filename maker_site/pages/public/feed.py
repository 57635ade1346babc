"""The feed: Atom by RFC 4287, the whole text, whole addresses, ids that stay."""

from __future__ import annotations

import re
import uuid
from collections.abc import Sequence
from html import escape, unescape
from urllib.parse import urljoin, urlsplit

from markupsafe import Markup

from maker_site.frozen import frozen
from maker_site.language import listed, say
from maker_site.pages import addresses
from maker_site.pages.page import Text
from maker_site.pages.parts import Day, Link
from maker_site.pages.public.data import canonical
from maker_site.pages.public.views import Article, SharedSetting, SharedSupply, Tutorial

FEED = "feed.xml"
MOST = 30
"""Entries: the latest."""
_NOT_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""Characters that XML 1.0 has no place for (section 2.2)."""
_ADDRESS = re.compile(r'\b(href|src)="([^"]*)"')
_CHOICES = re.compile(r"</?picture>|<source\b[^>]*>")


@frozen
class Entry:
    """One tutorial or article of the feed."""

    here: str
    first_id: str
    """What it was called at the very first, so that a new name makes no new entry."""
    view: Tutorial | Article

    @property
    def latest(self) -> Day | None:
        """The day that it was changed last; without one it can't be in a feed."""
        return self.view.updated or self.view.published


def feed(address: str, shop: str, line: str | None, language: str, entries: Sequence[Entry]) -> Text | None:
    """Return the feed of the latest entries, or None where none has a day."""
    dated = sorted(
        ((day.iso, each) for each in entries if (day := each.latest)), key=lambda pair: pair[0], reverse=True
    )
    if not dated:
        return None
    home = canonical(address, "index.html")
    parts = [
        '<?xml version="1.0" encoding="utf-8"?>\n',
        f'<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="{_xml(language)}">\n',
        f"<id>{_id(address, '')}</id>\n<title>{_xml(shop)}</title>\n",
        f"<subtitle>{_xml(line)}</subtitle>\n" if line else "",
        f"<updated>{_moment(dated[0][0])}</updated>\n<author><name>{_xml(shop)}</name></author>\n",
        f'<link rel="alternate" type="text/html" href="{_xml(home)}"/>\n',
        f'<link rel="self" type="application/atom+xml" href="{_xml(canonical(address, FEED))}"/>\n',
        *(_entry(address, each, day) for day, each in dated[:MOST]),
        "</feed>\n",
    ]
    return Text(FEED, "".join(parts))


def _entry(address: str, entry: Entry, latest: str) -> str:
    view, page = entry.view, canonical(address, entry.here)
    folder = entry.here.partition("/")[0]
    body = _tutorial(view, entry.here) if isinstance(view, Tutorial) else _article(view)
    occasions = "".join(f'<category term="{_xml(each.text)}"/>\n' for each in view.occasions)
    return (
        f"<entry>\n<id>{_id(address, f'{folder}/{entry.first_id}')}</id>\n<title>{_xml(view.title)}</title>\n"
        + (f"<published>{_moment(view.published.iso)}</published>\n" if view.published else "")
        + f"<updated>{_moment(latest)}</updated>\n"
        + f'<link rel="alternate" type="text/html" href="{_xml(page)}"/>\n'
        + occasions
        + (f"<summary>{_xml(view.summary)}</summary>\n" if view.summary else "")
        + f'<content type="html" xml:base="{_xml(page)}">{_xml(whole_addresses(body, page))}</content>\n</entry>\n'
    )


def whole_addresses(html: Markup, page: str) -> str:
    """Return HTML whose links and pictures have whole addresses, each picture in the one form that all readers know."""
    return _ADDRESS.sub(
        lambda each: f'{each[1]}="{escape(urljoin(page, unescape(each[2])))}"', _CHOICES.sub("", str(html))
    )


def _tutorial(view: Tutorial, here: str) -> Markup:
    """Return all that the page says in plain HTML; the cautions with the setting and before the steps."""
    parts = [Markup("<p>{}</p>").format(view.disclosure) if view.disclosure else Markup("")]
    if view.cover:
        shown, source = view.cover, addresses.relative(here, view.cover.fallback.address)
        parts.append(
            Markup('<p><img src="{}" alt="{}" width="{}" height="{}"></p>').format(
                source, shown.text, shown.width, shown.height
            )
        )
    parts.append(view.opening)
    parts.append(_needed(view.supplies, view.tools))
    if view.setting:
        parts.append(_setting(view.setting))
    parts.append(_heading(say("Cautions")) + Markup("<ul>"))
    parts += [Markup("<li><strong>{}</strong> {}</li>").format(each.title, each.words) for each in view.hazards.each]
    parts.append(Markup("</ul><p>{}</p>").format(view.hazards.closing))
    for number, step in enumerate(view.steps, 1):
        parts.append(_heading(say("{number}. {step}", number=number, step=step.title)) + step.text)
    if view.care:
        parts.append(_heading(say("Keeping it")))
        parts += [Markup("<p>{}</p>").format(words) for words in view.care]
    if view.video:
        link = view.video.link
        parts.append(_video(link, view.video.host))
    return Markup("").join(parts)


def _heading(words: str) -> Markup:
    return Markup("<h2>{}</h2>").format(words)


def _video(link: Link, host: str) -> Markup:
    way = Markup('<a href="{}">{}</a>').format(link.address, link.text)
    return Markup("<p>{}</p>").format(say("{link} ({host})", link=way, host=host))


def _article(view: Article) -> Markup:
    disclosed = Markup("<p>{}</p>").format(view.disclosure) if view.disclosure else Markup("")
    return disclosed + view.text


def _needed(supplies: Sequence[SharedSupply], tools: Sequence[str]) -> Markup:
    if not supplies and not tools:
        return Markup("")
    rows = []
    for each in supplies:
        name = say("{name}: {amount}", name=each.name, amount=each.amount) if each.amount else each.name
        link = Markup("")
        if each.link:
            relation = Markup(' rel="sponsored"') if each.link.paid else Markup("")
            link = Markup(' <a href="{}"{}>{}</a>').format(each.link.address, relation, each.link.text)
        rows.append(Markup("<li>{}{}</li>").format(name, link))
    rows += [Markup("<li>{}</li>").format(each) for each in tools]
    return Markup("{}<ul>{}</ul>").format(_heading(say("What is needed")), Markup("").join(rows))


def _setting(setting: SharedSetting) -> Markup:
    words = [
        say("{first} ({second})", first=setting.temperature.first, second=setting.temperature.second),
        say("{first} ({second})", first=setting.time.first, second=setting.time.second),
        *([setting.pressure] if setting.pressure else []),
    ]
    face = Markup("<p>{}</p>").format(setting.face_words) if setting.face_words else Markup("")
    return Markup("{}<p>{}</p>{}<p>{}</p>").format(_heading(say("Our setting")), listed(words), face, setting.words)


def _id(address: str, what: str) -> str:
    """Return a URN (RFC 4122) of the host and the first name: no new title, day or name of a page changes it."""
    host = urlsplit(address).netloc.lower()
    return uuid.uuid5(uuid.NAMESPACE_URL, f"https://{host}/{what}").urn


def _moment(day: str) -> str:
    """Return a day as a moment by RFC 3339."""
    return f"{day}T00:00:00Z"


def _xml(text: str) -> str:
    return escape(_NOT_XML.sub("", text))
