"""The settings index: by substrate, then by blank, the best supported first."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from maker_site.frozen import frozen
from maker_site.language import all_of, say, say_n
from maker_site.pages import addresses
from maker_site.pages.marks import swatch
from maker_site.pages.notebook import Notebook, grouped
from maker_site.pages.page import Page
from maker_site.pages.paging import on_page, pages_of
from maker_site.pages.parts import Hazards, Link, Paging
from maker_site.pages.plots import Tried, settings_plot
from maker_site.pages.wording import hazards
from maker_site.pages.workshop.pieces import (
    BAND_HEIGHT,
    BAND_WIDTH,
    blank_link,
    setting_row,
    sheet_shown,
    start_shown,
    substrate_link,
)
from maker_site.pages.workshop.views import (
    BlankEntry,
    BlankSettings,
    SettingRow,
    SettingsIndex,
    StartShown,
    SubstratePage,
    SubstrateRow,
)
from maker_site.records import Blank
from maker_site.workings.cautions import cautions
from maker_site.workings.disagreement import disagreement
from maker_site.workings.starting_point import Source

BLANKS_A_PAGE = 40
"""Blanks on one page of a material's settings."""
SETTINGS_A_PAGE = 20
"""Settings on a blank's own page, and on each that follows it."""


def substrates(book: Notebook) -> Sequence[str]:
    """Return the substrates that have pages of their own; those of like addresses share the pages of the first."""
    return list(_by_address(_by_substrate(book)))


def substrate_pages(book: Notebook, substrate: str) -> Iterator[Page]:
    """Yield the pages of a substrate, one of `substrates`."""
    yield from _substrate_pages(book, substrate, _by_address(_by_substrate(book))[substrate])


def _by_substrate(book: Notebook) -> Mapping[str, Sequence[Blank]]:
    return grouped(book.workshop.blanks.values(), lambda blank: blank.substrate)


def settings_index(book: Notebook) -> Page:
    """Return settings/index.html."""
    by_substrate = _by_substrate(book)
    rows = tuple(_row(book, substrate, blanks) for substrate, blanks in sorted(by_substrate.items()))
    general = hazards(cautions("", ptfe=True))
    index = SettingsIndex(rows, general)
    return Page(
        "settings/index.html", "workshop/settings.html", say("Settings by material"), index, door="settings/index.html"
    )


def substrate_hazards(substrate: str) -> Hazards:
    """Return the cautions for any setting on a substrate; a PTFE sheet may be in the stack."""
    return hazards(cautions(substrate, ptfe=True))


def disagreement_words(book: Notebook, blank: Blank) -> str | None:
    """Return the sentence where the maker's best and the supplier's sheet differ by more than the press's step."""
    own = next((point.evidence for point in book.points[blank.id] if point.source is Source.OWN), None)
    if own is None or blank.sheet is None:
        return None
    found = disagreement(own, blank.sheet, book.workshop.presses[own.setting.press])
    if found is None:
        return None
    wording = book.wording
    parts = []
    if found.kelvin:
        apart = wording.one_line(wording.difference(abs(found.kelvin)))
        hotter = found.kelvin > 0
        parts.append(
            say("{degrees} hotter at the platen", degrees=apart)
            if hotter
            else say("{degrees} cooler at the platen", degrees=apart)
        )
    if found.seconds:
        seconds = wording.figure(abs(found.seconds))
        longer = found.seconds > 0
        parts.append(
            say("{n}\N{NO-BREAK SPACE}s longer", n=seconds)
            if longer
            else say("{n}\N{NO-BREAK SPACE}s shorter", n=seconds)
        )
    if found.face:
        parts.append(say("with the print looking the other way"))
    if found.pressure:
        parts.append(say("at another pressure ({pressures})", pressures=found.pressure))
    return say(
        "You press it {how} than the supplier’s sheet says, and yours has come out {counted}.",
        how=all_of(parts),
        counted=wording.good_of(own.good, own.pressed),
    )


def _by_address(by_substrate: Mapping[str, Sequence[Blank]]) -> dict[str, list[Blank]]:
    """Put substrates whose addresses are alike on one page, so that none is overwritten."""
    pages: dict[str, tuple[str, list[Blank]]] = {}
    for substrate, blanks in sorted(by_substrate.items()):
        pages.setdefault(addresses.slug(substrate), (substrate, []))[1].extend(blanks)
    return dict(pages.values())


def _row(book: Notebook, substrate: str, blanks: Sequence[Blank]) -> SubstrateRow:
    found = [book.shown("standing", _standing, blank.id) for blank in blanks]
    best = min((each for each in found if each.best), key=lambda each: each.order, default=None)
    claims = [each for each in found if each.start] if best is None else []
    claim = min(claims, key=lambda each: each.source, default=None)
    return SubstrateRow(
        substrate_link(substrate),
        swatch(substrate, width=72, height=56),
        len(blanks),
        best.best if best else None,
        best.blank if best else None,
        claim.start if claim else None,
    )


@frozen
class _Standing:
    """What is known of the settings of one blank, for what is said of all blanks of its substrate."""

    blank: Link
    order: tuple[float, int, Fraction]
    """Of the best setting, the best first."""
    best: SettingRow | None
    source: int
    """Where it is best to begin from, the surest first."""
    start: StartShown | None
    common: StartShown | None
    """What common practice says, where nothing better is known."""
    tried: tuple[Tried, ...]


def _standing(book: Notebook, name: str) -> _Standing:
    points, groups = book.points[name], book.evidence_by_blank[name]
    best = groups[0] if groups and groups[0].good else None
    common = next((point for point in points if point.source is Source.COMMON), None)
    return _Standing(
        blank_link(book, name),
        (-best.interval.low, -best.pressed, best.setting.true.celsius) if best else (0, 0, Fraction(0)),
        setting_row(book, best, best=True) if best else None,
        list(Source).index(points[0].source) if points else len(Source),
        start_shown(book, points[0]) if points else None,
        start_shown(book, common) if common else None,
        tuple(Tried(each.setting.true, each.setting.time, each.good, each.pressed) for each in groups),
    )


def _substrate_pages(book: Notebook, substrate: str, blanks: Sequence[Blank]) -> Iterator[Page]:
    ordered = sorted(blanks, key=lambda each: each.name.casefold())
    found = [book.shown("standing", _standing, blank.id) for blank in blanks]
    common = next((each.common for each in found if each.common), None)
    tried = [each for here in found for each in here.tried]
    for here, place in pages_of(
        addresses.substrate(substrate), ordered, at_once=BLANKS_A_PAGE, words=(say("Before"), say("After"))
    ):
        first = place.number == 1
        view = SubstratePage(
            say(substrate),
            swatch(substrate, width=BAND_WIDTH, height=BAND_HEIGHT),
            tuple(book.shown("settings", _entry_of, blank.id) for blank in on_page(ordered, place, BLANKS_A_PAGE)),
            len(ordered),
            place,
            settings_plot(book, tried, say(substrate)) if first else None,
            common if first else None,
            substrate_hazards(substrate),
        )
        title = say("Settings for {material}", material=say(substrate))
        yield Page(here, "workshop/substrate.html", title, view, door="settings/index.html")


def _entry_of(book: Notebook, name: str) -> BlankEntry:
    return blank_entry(book, book.workshop.blanks[name])


def blank_entry(book: Notebook, blank: Blank) -> BlankEntry:
    """Return what the settings of its material show of a blank."""
    points = book.points[blank.id]
    groups = book.evidence_by_blank.get(blank.id, ())
    best = groups[0] if groups and groups[0].good else None
    link = blank_link(book, blank.id)
    return BlankEntry(
        blank.id,
        link,
        blank.supplier,
        blank.code,
        say(blank.method),
        book.left(blank),
        setting_row(book, best, best=True) if best else None,
        start_shown(book, points[0]) if points and not best else None,
        sheet_shown(book, blank),
        disagreement_words(book, blank),
        len(groups),
        Link(
            say_n("One setting tried", "All {n} settings tried", len(groups), n=book.wording.count(len(groups))),
            f"{link.address}#settings",
        ),
    )


def best_settings(book: Notebook, blank: Blank) -> tuple[tuple[SettingRow, ...], Paging]:
    """Return the best supported settings of a blank, for its own page, and the way to the others."""
    place, rows = next(_settings_of(book, blank))
    return rows, place


def other_settings(book: Notebook, blank: Blank) -> Iterator[Page]:
    """Yield blanks/ID/settings/2.html …: what the blank's own page has no room for."""
    link = blank_link(book, blank.id)
    total = len(book.evidence_by_blank.get(blank.id, ()))
    for place, rows in _settings_of(book, blank):
        if place.number == 1:
            continue
        view = BlankSettings(
            link,
            swatch(blank.substrate, width=BAND_WIDTH, height=BAND_HEIGHT),
            rows,
            (place.number - 1) * SETTINGS_A_PAGE + 1,
            total,
            place,
            substrate_hazards(blank.substrate),
        )
        here = f"{addresses.settings_of(blank.id)}/{place.number}.html"
        title = say("Less sure settings of {blank}, page {number}", blank=blank.name, number=place.number)
        yield Page(here, "workshop/blank-settings.html", title, view, door="blanks/index.html")


def _settings_of(book: Notebook, blank: Blank) -> Iterator[tuple[Paging, tuple[SettingRow, ...]]]:
    groups = book.evidence_by_blank.get(blank.id, ())
    words = (say("Surer settings"), say("Less sure settings"))
    folder = addresses.settings_of(blank.id)
    for _, place in pages_of(addresses.blank(blank.id), groups, at_once=SETTINGS_A_PAGE, words=words, folder=folder):
        first = place.number == 1
        yield (
            place,
            tuple(
                setting_row(book, each, best=first and index == 0 and each.good > 0)
                for index, each in enumerate(on_page(groups, place, SETTINGS_A_PAGE))
            ),
        )
