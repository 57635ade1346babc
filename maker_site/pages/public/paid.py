"""Links that earn the maker something, also where they stand in a text: the link says so, and so does the page."""

from __future__ import annotations

import html
import re

from markupsafe import Markup

from maker_site.language import marked
from maker_site.records import Workshop

DISCLOSURE = marked(
    "Some links on this page are paid links: the maker earns something when you buy through them, at no cost to you."
)
_LINK = re.compile(r'<a\b(?P<before>[^>]*?)href="(?P<to>[^"]*)"(?P<between>[^>]*?)rel="noopener"(?P<after>[^>]*)>')


def paid_addresses(workshop: Workshop) -> frozenset[str]:
    """Return the addresses that the records call paid links."""
    links = [(each.link, each.paid_link) for each in workshop.blanks.values()]
    links += [(each.link, each.paid_link) for each in workshop.supplies.values()]
    return frozenset(link for link, pays in links if pays and link)


def with_paid_links(text: Markup, paid: frozenset[str]) -> tuple[Markup, bool]:
    """Return cleaned HTML whose paid links say so by their relation, and whether there is one."""
    if not paid:
        return text, False
    met = False

    def mark(link: re.Match[str]) -> str:
        nonlocal met
        if html.unescape(link["to"]) not in paid:
            return link[0]
        met = True
        start = f'<a{link["before"]}href="{link["to"]}"{link["between"]}'
        return f'{start}rel="noopener sponsored"{link["after"]}>'

    return Markup(_LINK.sub(mark, str(text))), met
