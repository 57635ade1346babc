"""A menu on as many pages as it needs: one, or a first with something of each section and pages for the long ones."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from maker_site.frozen import frozen
from maker_site.language import say
from maker_site.pages.addresses import MENU, slug
from maker_site.pages.paging import on_page, pages_of
from maker_site.pages.parts import Link, Menu, MenuItem, MenuSection, Paging

ITEMS_A_PAGE = 60
"""Things on one page of the menu."""
_FEWEST = 4
"""Of each section on the first page, however many sections there are."""


@frozen
class MenuSheet:
    """One page of the menu."""

    address: str
    menu: Menu
    """With what this page shows."""
    section: str | None
    """The one that the page is of; None on the first."""
    paging: Paging | None

    @property
    def first(self) -> int:
        """The place in its section of the first thing on the page, from 1."""
        return (self.paging.number - 1) * ITEMS_A_PAGE + 1 if self.paging else 1

    @property
    def title(self) -> str:
        """For the title element."""
        if self.section is None or self.paging is None:
            return say("Menu")
        if self.paging.number == 1:
            return say("Menu: {section}", section=self.section)
        return say("Menu: {section}, page {n}", section=self.section, n=self.paging.number)


def menu_sheets(whole: Menu) -> Iterator[MenuSheet]:
    """Yield the pages of the menu: one for a menu that a page can hold, else the first of each section and all of each.

    Where a section is short it stands whole on the first page and has none of its own.
    """
    parts = list(_parts(whole.sections))
    first = tuple(replace(section, items=section.items[:kept], more=more) for section, kept, more in parts)
    yield MenuSheet(MENU, replace(whole, sections=first), None, None)
    for section, _, more in parts:
        if more is None:
            continue
        words = (say("Before"), say("After"))
        for here, place in pages_of(more.address, section.items, at_once=ITEMS_A_PAGE, words=words):
            shown = replace(section, items=tuple(on_page(section.items, place, ITEMS_A_PAGE)))
            yield MenuSheet(here, replace(whole, sections=(shown,)), section.title, place)


def _parts(sections: Sequence[MenuSection]) -> Iterator[tuple[MenuSection, int, Link | None]]:
    """Yield each section, how many of its items the first page shows, and the way to all of them where it needs one."""
    fits = sum(len(section.items) for section in sections) <= ITEMS_A_PAGE
    share = max(_FEWEST, ITEMS_A_PAGE // max(1, len(sections)))
    taken: set[str] = set()
    for number, section in enumerate(sections, 1):
        count = len(section.items)
        if fits or count <= share:
            yield section, count, None
            continue
        name = slug(section.title) or "section"
        name = f"{name}-{number}" if name in taken else name
        taken.add(name)
        words = say("All {n} under {section}", n=count, section=section.title)
        yield section, share, Link(words, f"menu/{name}.html")


def placed(sections: Sequence[MenuSection]) -> Iterator[MenuSection]:
    """Yield sections whose items know the page that they stand on."""
    for section, _, more in _parts(sections):
        items: list[MenuItem] = []
        words = ("", "")
        for here, place in pages_of(more.address if more else MENU, section.items, at_once=ITEMS_A_PAGE, words=words):
            shown = on_page(section.items, place, ITEMS_A_PAGE) if more else section.items
            items += [replace(item, address=f"{here}#{item.anchor}") for item in shown]
            if not more:
                break
        yield replace(section, items=tuple(items))
