"""A page for each blank, and the list of them."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from maker_site.language import marked, say
from maker_site.pages import addresses
from maker_site.pages.marks import swatch
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.paging import on_page, pages_of
from maker_site.pages.parts import Link, Picture
from maker_site.pages.pictures import picture_at
from maker_site.pages.plots import blank_yield_plot
from maker_site.pages.stand_in import blank_drawing
from maker_site.pages.workshop.ladders import tries_shown, tries_source
from maker_site.pages.workshop.pieces import (
    BAND_HEIGHT,
    BAND_WIDTH,
    blank_link,
    log_row,
    outcome,
    sheet_shown,
    start_shown,
    substrate_link,
    tile,
)
from maker_site.pages.workshop.settings import best_settings, disagreement_words, other_settings, substrate_hazards
from maker_site.pages.workshop.views import BlankList, BlankPage, BlankRow, Fact, LotRow
from maker_site.records import Blank, Lot
from maker_site.workings.money import landed

BLANKS = "blanks/index.html"
BLANKS_A_PAGE = 100
"""Blanks on one page of the list."""
_TILES = 24
"""Projects shown on a blank's page, the newest."""
_HISTORY = 40
"""Pressings listed on a blank's page; all of them are in the settings above it and in the log."""


def blank_list(book: Notebook) -> Iterator[Page]:
    """Yield blanks/index.html and its further pages."""
    ordered = sorted(book.workshop.blanks.values(), key=lambda blank: (blank.substrate, blank.name.casefold()))
    pages = list(pages_of(BLANKS, ordered, at_once=BLANKS_A_PAGE, words=(say("Before"), say("After"))))
    begins: dict[str, Link] = {}
    for here, place in pages:
        for blank in on_page(ordered, place, BLANKS_A_PAGE):
            begins.setdefault(blank.substrate, Link(say(blank.substrate), f"{here}#{_place_of(blank.substrate)}"))
    materials = tuple(begins.values()) if len(pages) > 1 else ()
    for here, place in pages:
        rows = tuple(book.shown("blanks", _row_of, blank.id) for blank in on_page(ordered, place, BLANKS_A_PAGE))
        view = BlankList(rows, len(ordered), place, materials)
        yield Page(here, "workshop/blanks.html", say("Blanks"), view, door=BLANKS)


def _place_of(substrate: str) -> str:
    return f"of-{addresses.slug(substrate)}"


def blank_page(book: Notebook, blank: Blank) -> Iterator[Page]:
    """Yield blanks/ID.html, and the further pages of its settings."""
    yield Page(addresses.blank(blank.id), "workshop/blank.html", blank.name, _view(book, blank), door=BLANKS)
    yield from other_settings(book, blank)


def _row_of(book: Notebook, name: str) -> BlankRow:
    return blank_row(book, book.workshop.blanks[name])


def blank_row(book: Notebook, blank: Blank) -> BlankRow:
    """Return what the list of blanks shows of one."""
    return BlankRow(
        blank_link(book, blank.id),
        substrate_link(blank.substrate),
        swatch(blank.substrate),
        say(blank.method),
        book.wording.size(blank.size).first if blank.size else None,
        blank.supplier,
        blank.code,
        book.left(blank),
        book.is_low(blank),
        outcome(book, book.pressings_by_blank.get(blank.id, ())),
    )


def _view(book: Notebook, blank: Blank) -> BlankPage:
    points = book.points[blank.id]
    rows = book.pressings_by_blank.get(blank.id, ())
    settings, paging = best_settings(book, blank)
    return BlankPage(
        blank.id,
        blank.name,
        substrate_link(blank.substrate),
        swatch(blank.substrate, width=BAND_WIDTH, height=BAND_HEIGHT),
        blank_drawing(book, blank.id),
        blank.supplier,
        blank.code,
        Link(say("Supplier’s page"), blank.link, paid=blank.paid_link) if blank.link else None,
        _coated(blank),
        tuple(_facts(book, blank)),
        book.left(blank),
        book.is_low(blank),
        start_shown(book, points[0]) if points else None,
        tries_shown(points[0] if points else None, rows),
        tries_source(),
        Link(say("Test ladder"), addresses.ladder(blank.id)),
        start_shown(book, points[1]) if len(points) > 1 else None,
        disagreement_words(book, blank),
        sheet_shown(book, blank),
        settings,
        len(book.evidence_by_blank.get(blank.id, ())),
        paging,
        tuple(_lot(book, blank, lot) for lot in blank.bought),
        _landed(book, blank),
        tuple(_pictures(book, blank)),
        tuple(tile(book, project, addresses.blank(blank.id)) for project in book.projects_on(blank.id, at_most=_TILES)),
        blank_yield_plot(book, rows, blank.name),
        tuple(log_row(book, row) for row in reversed(rows[-_HISTORY:])),
        substrate_hazards(blank.substrate),
        blank.note,
    )


def _pictures(book: Notebook, blank: Blank) -> Iterator[Picture]:
    for name in blank.folder_pictures:
        words = say("{blank}: {file}", blank=blank.name, file=name)
        picture = picture_at(book.pictures, f"blanks/{blank.id}/{name}", words)
        if picture:
            yield picture


_COATINGS = {"soft": marked("soft coating"), "hard": marked("hard coating")}


def _coated(blank: Blank) -> str | None:
    coating = say(_COATINGS[blank.coating]) if blank.coating else None
    if coating and blank.coated_side:
        return say("{coating}; {side}", coating=coating, side=blank.coated_side)
    return coating or blank.coated_side


def _facts(book: Notebook, blank: Blank) -> Iterator[Fact]:
    wording = book.wording
    yield Fact(say("Method"), say(blank.method))
    if blank.size:
        yield Fact(say("Size"), wording.one_line(wording.size(blank.size)))
    if blank.print_area:
        yield Fact(say("Print area"), wording.one_line(wording.size(blank.print_area)))
    lengths = [
        (say("Thickness"), blank.thickness),
        (say("Corner radius"), blank.corner_radius),
        (say("Bleed"), blank.bleed),
        (say("Girth"), blank.girth),
        (say("Girth at the bottom"), blank.girth_bottom),
        (say("Height"), blank.height),
        (say("Handle gap"), blank.handle_gap),
    ]
    for name, length in lengths:
        if length:
            yield Fact(name, wording.one_line(wording.length(length)))
    if blank.limit:
        yield Fact(say("Never hotter than"), wording.one_line(wording.temperature(blank.limit)))
    if blank.care:
        yield Fact(say("Care"), blank.care)
    if blank.food_contact:
        yield Fact(say("Food contact"), blank.food_contact)


def _lot(book: Notebook, blank: Blank, lot: Lot) -> LotRow:
    of_lot = [row for row in book.pressings_by_blank.get(blank.id, ()) if lot.lot and row.lot == lot.lot]
    return LotRow(
        book.wording.day(lot.date),
        lot.lot,
        lot.count,
        book.money(lot.paid),
        book.money(lot.delivery),
        _landed_lot(book, lot),
        lot.note,
        outcome(book, of_lot),
    )


def _landed(book: Notebook, blank: Blank) -> str | None:
    each = landed(blank).each
    return say("{price} each, landed, over all lots", price=book.figures.money(each)) if each is not None else None


def _landed_lot(book: Notebook, lot: Lot) -> str | None:
    if lot.paid is None:
        return None
    extra = [amount.value for amount in (lot.paid, lot.delivery, lot.import_charges) if amount]
    return book.figures.money(sum(extra, Decimal(0)) / lot.count)
