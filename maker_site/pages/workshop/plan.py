"""Every page of the workshop copy."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from maker_site.language import page_language, say, spoken, tag_of
from maker_site.pages import addresses
from maker_site.pages.cost_words import cost_shown
from maker_site.pages.menu import menu, menu_paper
from maker_site.pages.menu_sheets import menu_sheets
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Batch, Drawn, Page, Said, Text
from maker_site.pages.parts import Link
from maker_site.pages.workshop.blanks import blank_list, blank_page
from maker_site.pages.workshop.card import card_page
from maker_site.pages.workshop.catalogue import catalogue_pages
from maker_site.pages.workshop.costs import cost_overview, cost_sheet_page
from maker_site.pages.workshop.home import home_page
from maker_site.pages.workshop.ladders import ladder_page
from maker_site.pages.workshop.presses import press_list, press_page
from maker_site.pages.workshop.project import project_page
from maker_site.pages.workshop.proofs import proof_page
from maker_site.pages.workshop.reading import writing_pages
from maker_site.pages.workshop.search import search_pages
from maker_site.pages.workshop.settings import settings_index, substrate_pages, substrates
from maker_site.pages.workshop.supplies import supplies_page
from maker_site.pages.workshop.views import MenuPage, WorkshopFrame


def doors() -> tuple[Link, ...]:
    """Return the way to everything, in the language spoken now."""
    return (
        Link(say("Home"), "index.html"),
        Link(say("Search"), "search.html"),
        Link(say("Catalogue"), "catalogue/index.html"),
        Link(say("Settings"), "settings/index.html"),
        Link(say("Blanks"), "blanks/index.html"),
        Link(say("Presses"), "presses/index.html"),
        Link(say("Supplies"), "supplies/index.html"),
        Link(say("Costs"), "costs/index.html"),
        Link(say("Writing"), "writing/index.html"),
        Link(say("Menu"), "menu.html"),
    )


def workshop_frame(book: Notebook) -> WorkshopFrame:
    """Return what surrounds every page."""
    shop = book.workshop.shop
    here = page_language(shop.locale)
    return WorkshopFrame(shop.name, shop.line, shop.notice, here, spoken().direction, tag_of(shop.locale), doors())


def workshop_batches(book: Notebook) -> Iterator[Batch]:
    """Yield what to build for every page of the workshop copy; nothing is built yet."""
    yield Batch("home", lambda: [home_page(book)])
    yield Batch("search", lambda: search_pages(book))
    yield Batch("catalogue", lambda: catalogue_pages(book))
    for project in book.workshop.projects.values():
        yield Batch(f"{PROJECT}{project.id}", partial(_of_project, book, project.id))
    yield Batch("costs", lambda: cost_overview(book))
    yield Batch("settings", lambda: [settings_index(book)])
    for substrate in substrates(book):
        yield Batch(f"settings/{substrate}", partial(substrate_pages, book, substrate))
    yield Batch("blanks", lambda: blank_list(book))
    for blank in book.workshop.blanks.values():
        yield Batch(f"blanks/{blank.id}", partial(_of_blank, book, blank.id))
    yield Batch("presses", lambda: [press_list(book)])
    for press in book.workshop.presses.values():
        yield Batch(f"presses/{press.id}", partial(_of_press, book, press.id))
    yield Batch("supplies", lambda: [supplies_page(book)])
    yield Batch("writing", lambda: writing_pages(book))
    yield Batch("menu", lambda: _menu_pages(book))


PROJECT = "projects/"
"""How the name of the batch of a project's own pages begins, its press card and its cost sheet among them."""


def workshop_pages(book: Notebook) -> Iterator[Page | Text | Drawn | Said]:
    """Yield every page of the workshop copy."""
    for batch in workshop_batches(book):
        yield from batch.build()


def _of_project(book: Notebook, name: str) -> Iterator[Page]:
    project = book.workshop.whole_project(name)
    cost = cost_shown(book, project)
    yield project_page(book, project, cost)
    yield card_page(book, project)
    yield cost_sheet_page(book, project, cost)
    proof = proof_page(book, project)
    if proof:
        yield proof


def _of_press(book: Notebook, name: str) -> Iterator[Page]:
    yield press_page(book, book.workshop.presses[name])


def _of_blank(book: Notebook, name: str) -> Iterator[Page]:
    blank = book.workshop.whole_blank(name)
    yield from blank_page(book, blank)
    yield ladder_page(book, blank)


def _menu_pages(book: Notebook) -> Iterator[Page]:
    whole = menu(book, lambda project: Link(project.title, addresses.project(project.id)))
    for sheet in menu_sheets(whole):
        view = MenuPage(sheet.menu, sheet.section, sheet.first, sheet.paging, menu_paper(whole))
        yield Page(sheet.address, "workshop/menu.html", sheet.title, view, door=addresses.MENU)
