"""Markdown of the records to safe HTML: headings in their place, pictures in all their sizes."""

from __future__ import annotations

import html
import re
from collections.abc import Callable
from functools import cache
from typing import TYPE_CHECKING
from urllib.parse import unquote

from markupsafe import Markup

from maker_site.pages.parts import Picture

if TYPE_CHECKING:
    from markdown import Markdown

_TAGS = {
    *("p", "h2", "h3", "h4", "h5", "h6", "ul", "ol", "li", "dl", "dt", "dd", "blockquote", "pre", "code", "hr", "br"),
    *("em", "strong", "del", "sub", "sup", "abbr", "kbd", "a", "img", "figure", "figcaption"),
    *("table", "thead", "tbody", "tr", "th", "td", "caption", "div", "span"),
}
_ATTRIBUTES = {
    "a": {"href", "title", "id"},
    "img": {"src", "alt", "title"},
    "th": {"align", "scope"},
    "td": {"align"},
    "ol": {"start"},
    "abbr": {"title"},
    "li": {"id"},
    "sup": {"id"},
    **{f"h{level}": {"id"} for level in range(2, 7)},
}
_PICTURE = re.compile(r"<img\b([^>]*)>")
_ATTRIBUTE = re.compile(r'(src|alt|title)="([^"]*)"')
_SHOWN = r'<figure class="shown">(?P<picture><picture>.*?</picture>)(?P<caption><figcaption>.*?</figcaption>)?</figure>'
_ALONE = re.compile(rf"<p>\s*(?P<figure>{_SHOWN})\s*</p>", re.DOTALL)
_IN_LINE = re.compile(r"<(?P<tag>p|h[2-6])\b[^>]*>.*?</(?P=tag)>", re.DOTALL)
_FIGURE = re.compile(_SHOWN, re.DOTALL)
_OWN_FIGURE = re.compile(rf"<figure>\s*{_SHOWN}\s*(?P<own><figcaption>.*?</figcaption>)?\s*</figure>", re.DOTALL)

PictureFinder = Callable[[str], Picture | None]
"""Gives the picture of a path as written in the text, or None where it may not be shown."""
PicturePrinter = Callable[[Picture], Markup]
"""Draws a picture as HTML, for this page."""


def written(text: str, find: PictureFinder, draw: PicturePrinter) -> tuple[Markup, tuple[str, ...]]:
    """Return the HTML of a record's Markdown, and the paths of the pictures that it shows.

    Raw HTML is let through only as far as nh3 finds it harmless. Headings begin at the second level, since the page
    has the first. A picture that `find` doesn't give (not shared, say) is left out, its text with it.
    """
    import nh3  # late: most pages have no such text

    raw = _markdown().reset().convert(_headings_down(text))
    clean = nh3.clean(
        raw,
        tags=_TAGS,
        attributes=_ATTRIBUTES,
        url_schemes={"http", "https", "mailto"},
        link_rel="noopener",
        strip_comments=True,
    )
    shown: list[str] = []

    def place(match: re.Match[str]) -> str:
        attributes = {name: html.unescape(value) for name, value in _ATTRIBUTE.findall(match[1])}
        path = unquote(attributes.get("src", ""))
        picture = find(path)
        if picture is None:
            return ""
        shown.append(path)
        return str(draw(_with_words(picture, attributes.get("alt", ""), attributes.get("title"))))

    return Markup(_in_place(_PICTURE.sub(place, clean))), tuple(shown)


@cache
def _markdown() -> Markdown:
    """Return what converts one text after another: to set it up takes as long as a short text."""
    from markdown import Markdown  # late, as nh3

    return Markdown(extensions=["tables", "footnotes", "sane_lists", "attr_list", "smarty"], output_format="html")


def _in_place(figured: str) -> str:
    """Return HTML whose figures stand where figures may.

    One that the maker wrote a figure around is one figure, with the maker's caption where there is one. One alone in
    its paragraph takes the paragraph's place. Among words it is a picture without its caption.
    """
    whole = _OWN_FIGURE.sub(
        lambda each: f'<figure class="shown">{each["picture"]}{each["own"] or each["caption"] or ""}</figure>', figured
    )
    apart = _ALONE.sub(lambda each: each["figure"], whole)
    return _IN_LINE.sub(lambda block: _FIGURE.sub(lambda each: each["picture"], block[0]), apart)


def _with_words(picture: Picture, text: str, title: str | None) -> Picture:
    return Picture(
        text.strip() or picture.text,
        title or picture.caption,
        picture.width,
        picture.height,
        picture.modern,
        picture.modern_type,
        picture.fallback,
    )


def _headings_down(text: str) -> str:
    """Lower first-level headings by one where there is any; fenced code is left alone."""
    if not re.search(r"^#\s", text, re.MULTILINE):
        return text
    lines: list[str] = []
    fenced = False
    for line in text.splitlines():
        if line.lstrip().startswith(("```", "~~~")):
            fenced = not fenced
        lines.append(f"#{line}" if not fenced and re.match(r"#{1,5}\s", line) else line)
    return "\n".join(lines)
