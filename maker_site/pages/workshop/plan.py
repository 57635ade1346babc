"""Every page of the workshop copy."""

from __future__ import annotations

from collections.abc import Iterator

from maker_site.pages import addresses
from maker_site.pages.menu import menu, menu_paper
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page, Text
from maker_site.pages.parts import Link
from maker_site.pages.workshop.blanks import blank_pages
from maker_site.pages.workshop.card import card_page
from maker_site.pages.workshop.catalogue import catalogue_pages
from maker_site.pages.workshop.costs import cost_pages
from maker_site.pages.workshop.home import home_page
from maker_site.pages.workshop.ladders import ladder_pages
from maker_site.pages.workshop.presses import press_pages
from maker_site.pages.workshop.project import project_page
from maker_site.pages.workshop.proofs import proof_page
from maker_site.pages.workshop.reading import writing_pages
from maker_site.pages.workshop.search import search_pages
from maker_site.pages.workshop.settings import settings_pages
from maker_site.pages.workshop.supplies import supplies_page
from maker_site.pages.workshop.views import MenuPage, WorkshopFrame

DOORS = (
    Link("Home", "index.html"),
    Link("Search", "search.html"),
    Link("Catalogue", "catalogue/index.html"),
    Link("Settings", "settings/index.html"),
    Link("Blanks", "blanks/index.html"),
    Link("Presses", "presses/index.html"),
    Link("Supplies", "supplies/index.html"),
    Link("Costs", "costs/index.html"),
    Link("Writing", "writing/index.html"),
    Link("Menu", "menu.html"),
)


def workshop_frame(book: Notebook) -> WorkshopFrame:
    """Return what surrounds every page."""
    shop = book.workshop.shop
    locale = book.wording.locale
    return WorkshopFrame(shop.name, shop.line, shop.notice, shop.locale.replace("_", "-"), locale.text_direction, DOORS)


def workshop_pages(book: Notebook) -> Iterator[Page | Text]:
    """Yield every page of the workshop copy."""
    yield home_page(book)
    yield from search_pages(book)
    yield from catalogue_pages(book)
    for project in book.workshop.projects.values():
        yield project_page(book, project)
        yield card_page(book, project)
        proof = proof_page(book, project)
        if proof:
            yield proof
    yield from cost_pages(book)
    yield from settings_pages(book)
    yield from blank_pages(book)
    yield from ladder_pages(book)
    yield from press_pages(book)
    yield supplies_page(book)
    yield from writing_pages(book)
    shown = menu(book, lambda project: Link(project.title, addresses.project(project.id)))
    yield Page("menu.html", "workshop/menu.html", "Menu", MenuPage(shown, menu_paper(shown)), door="menu.html")
