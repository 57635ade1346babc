"""A project's page in the workshop copy: everything about it."""

from __future__ import annotations

from collections.abc import Iterator

from maker_site.pages import addresses
from maker_site.pages.cost_words import cost_shown
from maker_site.pages.marks import swatch
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.parts import Link
from maker_site.pages.picture_html import figure_html
from maker_site.pages.pictures import picture_at
from maker_site.pages.wording import hazards
from maker_site.pages.workshop.artwork import artwork_row
from maker_site.pages.workshop.pieces import (
    BAND_HEIGHT,
    BAND_WIDTH,
    blank_link,
    log_row,
    log_total,
    photos_of,
    start_shown,
    substrate_link,
)
from maker_site.pages.workshop.proofs import stand_in
from maker_site.pages.workshop.views import Fact, ProjectPage
from maker_site.pages.writing import written
from maker_site.records import Order, Project


def project_page(book: Notebook, project: Project) -> Page:
    """Return projects/ID.html."""
    here = addresses.project(project.id)
    blank = book.workshop.blanks[project.blank]
    remake = book.remakes[project.id]
    rows = book.pressings_by_project.get(project.id, ())
    photos = photos_of(book, project)
    artwork = tuple(artwork_row(book, project, index, here) for index in range(len(project.artwork)))
    write_up = None
    if project.tutorial:
        write_up, _ = written(
            project.tutorial,
            lambda path: picture_at(book.pictures, f"projects/{project.id}/{path}", f"Photo of {project.title}"),
            lambda picture: figure_html(picture, here),
        )
    view = ProjectPage(
        project.id,
        project.title,
        book.wording.day(project.made),
        blank_link(book, blank.id),
        substrate_link(blank.substrate),
        swatch(blank.substrate, width=BAND_WIDTH, height=BAND_HEIGHT),
        tuple(_facts(book, project)),
        photos,
        None if photos else stand_in(book, project, here),
        project.summary,
        start_shown(book, remake.setting) if remake.setting else None,
        Link("Press card", addresses.card(project.id)),
        hazards(remake.cautions),
        write_up,
        tuple(log_row(book, row) for row in reversed(rows)),
        log_total(book, rows),
        artwork,
        tuple(_supplies(book, project)),
        cost_shown(book, project),
        Link("Cost sheet, with figures to try", addresses.cost(project.id)),
        tuple(_shared(project)),
        project.note,
        Link("Video", project.video) if project.video else None,
        Link("Proof", addresses.proof(project.id)) if any(each.proof for each in artwork) else None,
    )
    return Page(here, "workshop/project.html", project.title, view, door="catalogue/index.html")


def _facts(book: Notebook, project: Project) -> Iterator[Fact]:
    facts = [
        ("Method", book.workshop.method_of(project)),
        ("Sold or given as", f"a set of {project.pieces}" if project.pieces > 1 else None),
        ("Occasions", ", ".join(project.occasions)),
        ("Difficulty", project.difficulty),
        ("Time needed", project.time_needed),
        ("At once", f"{project.at_once} in the press" if project.at_once else None),
        ("Batch", f"{project.batch} at one go" if project.batch else None),
        ("For", project.for_),
        ("Care", project.care),
    ]
    yield from (Fact(name, value) for name, value in facts if value)
    if project.order:
        yield from _order(book, project.order)


def _order(book: Notebook, order: Order) -> Iterator[Fact]:
    if order.for_:
        yield Fact("Ordered by", order.for_)
    if order.due:
        yield Fact("Due", book.wording.day(order.due).words)
    if order.paid:
        yield Fact("Paid", book.money(order.paid) or "")
    if order.names:
        yield Fact("Names", ", ".join(order.names))
    if order.note:
        yield Fact("Order note", order.note)


def _supplies(book: Notebook, project: Project) -> Iterator[Fact]:
    for use in project.supplies:
        supply = book.workshop.supplies[use.supply]
        yield Fact(supply.name, use.use.typed if use.use else "as needed")


def _shared(project: Project) -> Iterator[str]:
    share = project.share
    if share.tutorial:
        yield "the tutorial"
    if share.tutorial and share.setting:
        yield "its setting"
    if share.tutorial and share.supplies:
        yield "its supplies list"
    if share.menu:
        yield "an entry on the menu"
    photos = sum(photo.share for photo in project.photos)
    if photos and (share.tutorial or share.menu):
        every = photos == len(project.photos)
        yield (
            ("its photo" if photos == 1 else f"all {photos} photos")
            if every
            else f"{photos} of {len(project.photos)} photos"
        )
