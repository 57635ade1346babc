"""A project's page in the workshop copy: everything about it."""

from __future__ import annotations

from collections.abc import Iterator

from maker_site.language import listed, say, say_in, say_n
from maker_site.pages import addresses
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
from maker_site.pages.workshop.views import CostShown, Fact, ProjectPage
from maker_site.pages.writing import written
from maker_site.records import Order, Project
from maker_site.records.words import difficulty_said

_LOG = 120
"""Pressings listed on a project's page, the latest; the press log has all."""


def project_page(book: Notebook, project: Project, cost: CostShown) -> Page:
    """Return projects/ID.html."""
    here = addresses.project(project.id)
    blank = book.workshop.blanks[project.blank]
    remake = book.remakes[project.id]
    rows = book.pressings_by_project.get(project.id, ())
    photos = photos_of(book, project)
    artwork = tuple(artwork_row(book, project, index, here) for index in range(len(project.artwork)))
    write_up = None
    photo_words = say("Photo of {project}", project=project.title)
    if project.tutorial:
        write_up, _ = written(
            project.tutorial,
            lambda path: picture_at(book.pictures, f"projects/{project.id}/{path}", photo_words),
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
        Link(say("Press card"), addresses.card(project.id)),
        hazards(remake.cautions),
        write_up,
        tuple(log_row(book, row) for row in reversed(rows[-_LOG:])),
        max(0, len(rows) - _LOG),
        log_total(book, rows),
        artwork,
        tuple(_supplies(book, project)),
        cost,
        Link(say("Cost sheet, with figures to try"), addresses.cost(project.id)),
        tuple(_shared(book, project)),
        project.note,
        Link(say("Video"), project.video) if project.video else None,
        Link(say("Proof"), addresses.proof(project.id)) if any(each.proof for each in artwork) else None,
    )
    return Page(here, "workshop/project.html", project.title, view, door="catalogue/index.html")


def _facts(book: Notebook, project: Project) -> Iterator[Fact]:
    count = book.wording.count
    facts = [
        (say("Method"), say(book.workshop.method_of(project))),
        (say("Sold or given as"), book.wording.set_of(project.pieces) if project.pieces > 1 else None),
        (say("Occasions"), listed(project.occasions)),
        (say("Difficulty"), difficulty_said(project.difficulty) if project.difficulty else None),
        (say("Time needed"), project.time_needed),
        (say("At once"), say("{n} in the press", n=count(project.at_once)) if project.at_once else None),
        (say("Batch"), say("{n} at one go", n=count(project.batch)) if project.batch else None),
        (say_in("whom it is for", "For"), project.for_),
        (say("Care"), project.care),
    ]
    yield from (Fact(name, value) for name, value in facts if value)
    if project.order:
        yield from _order(book, project.order)


def _order(book: Notebook, order: Order) -> Iterator[Fact]:
    if order.for_:
        yield Fact(say("Ordered by"), order.for_)
    if order.due:
        yield Fact(say("Due"), book.wording.day(order.due).words)
    if order.paid:
        yield Fact(say("Paid"), book.money(order.paid) or "")
    if order.names:
        yield Fact(say("Names"), listed(order.names))
    if order.note:
        yield Fact(say("Order note"), order.note)


def _supplies(book: Notebook, project: Project) -> Iterator[Fact]:
    for use in project.supplies:
        supply = book.workshop.supplies[use.supply]
        yield Fact(supply.name, use.use.typed if use.use else say("as needed"))


def _shared(book: Notebook, project: Project) -> Iterator[str]:
    share = project.share
    if share.tutorial:
        yield say("the tutorial")
    if share.tutorial and share.setting:
        yield say("its setting")
    if share.tutorial and share.supplies:
        yield say("its supplies list")
    if share.menu:
        yield say("an entry on the menu")
    photos, every = sum(photo.share for photo in project.photos), len(project.photos)
    if photos and (share.tutorial or share.menu):
        shown, of = book.wording.count(photos), book.wording.count(every)
        if photos < every:
            yield say_n("{n} of {every} photos", "{n} of {every} photos", every, n=shown, every=of)
        elif photos == 1:
            yield say("its photo")
        else:
            yield say_n("all {n} photos", "all {n} photos", photos, n=shown)
