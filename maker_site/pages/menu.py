"""The menu, which is the same in both copies but for where its names lead."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date

from maker_site.language import marked, say
from maker_site.pages.addresses import MENU, MENU_PAPER, slug
from maker_site.pages.menu_sheets import placed
from maker_site.pages.notebook import Notebook
from maker_site.pages.parts import Link, Menu, MenuItem, MenuSection, Picture
from maker_site.pages.pictures import picture_at
from maker_site.pages.stand_in import blank_drawing
from maker_site.records import Project

NO_SECTION = marked("More")


def menu(book: Notebook, page_of: Callable[[Project], Link | None]) -> Menu:
    """Return the whole menu; only what its entries say, and shared photos with a text, are shown."""
    shop = book.workshop.shop
    listed = [project for project in book.newest_first if project.share.menu]
    titles = list(dict.fromkeys([*shop.menu_sections, *sorted({_section(project) for project in listed})]))
    sections = [
        MenuSection(title, tuple(_item(book, project, page_of) for project in listed if _section(project) == title))
        for title in titles
    ]
    return Menu(
        shop.name,
        shop.line,
        tuple(placed([section for section in sections if section.items])),
        shop.lead_time,
        shop.how_to_order,
        shop.contact,
        book.wording.day(_newest_day(book, listed)),
    )


def menu_paper(shown: Menu) -> Link | None:
    """Return the way to the menu as a PDF; None where there is nothing on it."""
    return Link(say("The menu to print (PDF)"), MENU_PAPER) if shown.sections else None


def shared_photos(book: Notebook, project: Project) -> dict[str, Picture]:
    """Return the photos that may be shown to everybody, by file: shared, and with a text for those who can't see."""
    found: dict[str, Picture] = {}
    for photo in project.photos:
        if photo.share and photo.text:
            picture = picture_at(book.pictures, f"projects/{project.id}/{photo.file}", photo.text, photo.caption)
            if picture:
                found[photo.file] = picture
    return found


def _newest_day(book: Notebook, listed: Sequence[Project]) -> date | None:
    """Return the newest day that the entries say for everybody, never after today: what a printed menu is dated by."""
    days = [day for each in listed for day in (each.share.published, each.share.updated) if day]
    return max((day for day in days if day <= book.today), default=None)


def _section(project: Project) -> str:
    entry = project.share.menu
    return (entry.section if entry else None) or say(NO_SECTION)


def _item(book: Notebook, project: Project, page_of: Callable[[Project], Link | None]) -> MenuItem:
    item, page = book.shown("menu", _entry, project.id), page_of(project)
    return replace(item, page=page) if page else item


def _entry(book: Notebook, name: str) -> MenuItem:
    """Return what a project's entry says, which leads nowhere yet."""
    project = book.workshop.projects[name]
    entry = project.share.menu
    assert entry is not None  # the caller has looked
    blank = book.workshop.blanks[project.blank]
    photos = shared_photos(book, project)
    picture = photos.get(entry.photo or "") or next(iter(photos.values()), None)
    return MenuItem(
        slug(project.id),
        f"{MENU}#{slug(project.id)}",
        entry.name or project.title,
        entry.line or project.summary,
        book.wording.one_line(book.wording.size(blank.size)) if blank.size else None,
        say(blank.substrate),
        entry.options,
        book.price_words(project),
        picture,
        None if picture else blank_drawing(book, blank.id),
        None,
    )
