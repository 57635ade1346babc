"""Writing, the page about the shop, the menu."""

from __future__ import annotations

from markupsafe import Markup

from maker_site.frozen import frozen
from maker_site.pages.parts import Day, Link, Menu, Paging


@frozen
class WritingRow:
    """An article or a write-up in the list of writing."""

    link: Link
    kind: str
    """Write-up or Article."""
    date: Day | None
    summary: str | None
    public: bool


@frozen
class WritingList:
    """writing/index.html: articles and write-ups."""

    rows: tuple[WritingRow, ...]
    about: Link | None
    """To the page about the shop, where there is one; on the first page."""
    paging: Paging


@frozen
class ArticlePage:
    """writing/ID.html."""

    title: str
    text: Markup
    published: Day | None
    updated: Day | None
    public: bool


@frozen
class AboutPage:
    """about.html."""

    text: Markup


@frozen
class MenuPage:
    """menu.html, menu/SECTION.html …: as customers see it."""

    menu: Menu
    """What this page shows of it."""
    section: str | None
    """The one that the page is of; None on the first."""
    first: int
    """The place in its section of the first thing on the page, from 1."""
    paging: Paging | None
    paper: Link | None
    """The same as a PDF to hand out; None where there is nothing on it."""
