"""A page for each press, and the list of them."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from maker_site.frozen import frozen
from maker_site.language import say
from maker_site.pages import addresses
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.plots import press_curve_plot
from maker_site.pages.wording import hazards
from maker_site.pages.workshop.pieces import blank_link, log_total, press_link, setting_row
from maker_site.pages.workshop.views import (
    Fact,
    PressList,
    PressPage,
    PressRow,
    PressSetting,
    ReadingRow,
)
from maker_site.records import Press, Reading
from maker_site.workings.calibration import cautions as reading_cautions
from maker_site.workings.cautions import cautions
from maker_site.workings.evidence import Evidence

_SETTINGS = 60
"""Settings listed on a press's page: those used last."""


def press_list(book: Notebook) -> Page:
    """Return presses/index.html."""
    rows = PressList(tuple(_row(book, press) for press in book.workshop.presses.values()))
    return Page("presses/index.html", "workshop/presses.html", say("Presses"), rows, door="presses/index.html")


def press_page(book: Notebook, press: Press) -> Page:
    """Return presses/ID.html."""
    here = addresses.press(press.id)
    return Page(here, "workshop/press.html", press.name, _view(book, press), door="presses/index.html")


def _row(book: Notebook, press: Press) -> PressRow:
    rows = book.pressings_by_press.get(press.id, ())
    return PressRow(
        press_link(book, press.id),
        press.kind and say(press.kind),
        book.wording.one_line(book.wording.size(press.platen)) if press.platen else None,
        sum(row.pressed for row in rows),
        book.wording.day(rows[-1].date) if rows else None,
        reading_cautions(press, book.today, book.figures.day),
    )


def _view(book: Notebook, press: Press) -> PressPage:
    return PressPage(
        press.id,
        press.name,
        tuple(_facts(book, press)),
        tuple(_reading(book, reading) for reading in press.readings),
        press_curve_plot(book, press),
        reading_cautions(press, book.today, book.figures.day),
        log_total(book, book.pressings_by_press.get(press.id, ())),
        tuple(
            PressSetting(blank_link(book, each.setting.blank), setting_row(book, each, best=False))
            for each in _used_last(book, press)
        ),
        hazards(cautions("", ptfe=True)),
        press.note,
    )


def _used_last(book: Notebook, press: Press) -> Iterator[Evidence]:
    """Yield the settings last pressed on one press; of other blanks than were pressed on it none is looked at."""
    used = [
        (each.last_used, blank, each.number)
        for blank in sorted({row.blank for row in book.pressings_by_press.get(press.id, ())})
        for each in book.shown("used", _used_on, blank)
        if each.press == press.id
    ]
    for _, blank, number in sorted(used, key=lambda each: each[0], reverse=True)[:_SETTINGS]:
        yield book.evidence_by_blank[blank][number]


@frozen
class _Used:
    """A setting of a blank, by its number among them."""

    number: int
    press: str
    last_used: date


def _used_on(book: Notebook, name: str) -> tuple[_Used, ...]:
    groups = book.evidence_by_blank[name]
    return tuple(_Used(number, each.setting.press, each.last_used) for number, each in enumerate(groups))


def _facts(book: Notebook, press: Press) -> Iterator[Fact]:
    wording = book.wording
    if press.kind:
        yield Fact(say("Kind"), say(press.kind))
    for name, size in ((say("Platen"), press.platen), (say("Even zone"), press.even_zone)):
        if size:
            yield Fact(name, wording.one_line(wording.size(size)))
    if press.watts:
        yield Fact(say("Power"), say("{n} W").format(n=wording.count(press.watts)))
    if press.duty:
        yield Fact(say("Element on"), say("{n} % of the time", n=wording.figure(press.duty.of_one * 100, 1)))
    if press.warm_up:
        yield Fact(say("Warm-up"), wording.minutes(press.warm_up))
    temperatures = ((say("Idle"), press.idle), (say("Lowest"), press.lowest), (say("Highest"), press.highest))
    for name, temperature in temperatures:
        if temperature:
            yield Fact(name, wording.one_line(wording.temperature(temperature)))
    if press.resolution.temperature:
        yield Fact(say("Step of the dial"), wording.one_line(wording.step(press.resolution.temperature)))
    if press.resolution.time:
        yield Fact(say("Step of the timer"), wording.time(press.resolution.time).second)
    if press.pressure_mark:
        yield Fact(say("Pressure"), press.pressure_mark)
    if press.timer_starts:
        yield Fact(say("Timer starts"), press.timer_starts)


def _reading(book: Notebook, reading: Reading) -> ReadingRow:
    wording = book.wording
    return ReadingRow(
        wording.day(reading.date),
        wording.temperature(reading.set),
        wording.temperature(reading.measured),
        wording.difference(reading.measured.celsius - reading.set.celsius, signed=True),
        reading.where,
    )
