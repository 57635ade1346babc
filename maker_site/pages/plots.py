"""The plots of the workshop copy, out of its evidence."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from fractions import Fraction
from itertools import accumulate, groupby

from markupsafe import Markup

from maker_site.frozen import frozen
from maker_site.language import say
from maker_site.pages.marks.plots import Spot, Unit, YieldPoint, calibration_plot, setting_plot, yield_plot
from maker_site.pages.notebook import Notebook
from maker_site.records import Press, Pressing
from maker_site.records.quantities import Duration, Temperature
from maker_site.workings.calibration import curve
from maker_site.workings.wilson import interval

_FEWEST_DAYS = 3
"""A course over time wants at least three days."""
_MOST_DATES = 5
_MOST_SPOTS = 150
"""Marks in one plot: more can't be told apart, and each weighs."""
_KELVIN, _SECONDS = 2.0, 5.0
"""The finest grid in which settings that lie close are drawn as one."""


def _unit(book: Notebook) -> Unit:
    return Unit("°F", "°C") if book.wording.temperature_unit == "F" else Unit("°C", "°F")


@frozen
class Tried:
    """A setting as a plot shows it."""

    true: Temperature
    time: Duration
    good: int
    pressed: int


def settings_plot(book: Notebook, groups: Sequence[Tried], what: str) -> Markup | None:
    """Return temperature and time of all settings with n and outcome, or None where nothing was pressed."""
    if not groups:
        return None
    wording = book.wording
    title = say("Temperature and time of every setting on {what}; the settings themselves have the figures", what=what)
    if len(groups) > _MOST_SPOTS:
        return setting_plot(_together(book, groups), title=title, unit=_unit(book), clock=_clock)
    spots = [
        Spot(
            float(each.true.celsius),
            float(each.time.seconds),
            each.good,
            each.pressed,
            say(
                "{temperature}, {time}: {good} of {pressed} good",
                temperature=wording.one_line(wording.temperature(each.true)),
                time=wording.time(each.time).first,
                good=wording.count(each.good),
                pressed=wording.count(each.pressed),
            ),
        )
        for each in groups
    ]
    return setting_plot(spots, title=title, unit=_unit(book), clock=_clock)


def _together(book: Notebook, groups: Sequence[Tried]) -> list[Spot]:
    """Return at most _MOST_SPOTS for more settings: those that lie close are one, in the finest grid that does."""
    places = [(float(each.true.celsius) / _KELVIN, float(each.time.seconds) / _SECONDS) for each in groups]
    step = 1
    while len({(round(across / step), round(up / step)) for across, up in places}) > _MOST_SPOTS:
        step += 1
    fields: dict[tuple[int, int], list[Tried]] = {}
    for (across, up), each in zip(places, groups, strict=True):
        fields.setdefault((round(across / step), round(up / step)), []).append(each)
    return [
        _spot_of(book, step * _KELVIN * across, step * _SECONDS * up, near) for (across, up), near in fields.items()
    ]


def _spot_of(book: Notebook, celsius: float, seconds: float, near: Sequence[Tried]) -> Spot:
    good, pressed = sum(each.good for each in near), sum(each.pressed for each in near)
    words = say(
        "About {temperature}, {time}: {good} of {pressed} good",
        temperature=book.wording.one_line(book.wording.temperature(Temperature(Fraction(celsius)))),
        time=_clock(seconds),
        good=book.wording.count(good),
        pressed=book.wording.count(pressed),
    )
    return Spot(celsius, seconds, good, pressed, words)


def _clock(seconds: float) -> str:
    whole = round(seconds)
    return f"{whole // 60}:{whole % 60:02d}"


def blank_yield_plot(book: Notebook, rows: Sequence[Pressing], what: str) -> Markup | None:
    """Return the good share over time, or None where there are too few days to draw a course."""
    days = [(day, list(same)) for day, same in groupby(rows, key=lambda row: row.date)]
    if len(days) < _FEWEST_DAYS:
        return None
    days = _periods(days)
    counts = [(sum(row.good for row in same), sum(row.pressed for row in same)) for _, same in days]
    totals = list(accumulate(counts, lambda one, other: (one[0] + other[0], one[1] + other[1])))
    points = []
    for (day, _), (good, pressed), (all_good, all_pressed) in zip(days, counts, totals, strict=True):
        found = interval(all_good, all_pressed)
        if found:
            share = all_good / all_pressed
            points.append(YieldPoint(day.toordinal(), good, pressed, share, found.low, found.high))
    title = say(
        "Good share of {what} over time, with its 95 % interval; the pressings beneath have the figures", what=what
    )
    return yield_plot(points, title=title, dates=_dates(book, [day for day, _ in days]))


def _periods(days: list[tuple[date, list[Pressing]]]) -> list[tuple[date, list[Pressing]]]:
    """Return at most _MOST_SPOTS days; where there are more, as many after another as need be are taken as one."""
    size = -(-len(days) // _MOST_SPOTS)
    runs = [days[start : start + size] for start in range(0, len(days), size)]
    return [(run[-1][0], [row for _, rows in run for row in rows]) for run in runs]


def _dates(book: Notebook, days: Sequence[date]) -> list[tuple[int, str]]:
    first, last = days[0].toordinal(), days[-1].toordinal()
    steps = min(_MOST_DATES, len(days)) - 1
    chosen = [first + round((last - first) * index / steps) for index in range(steps + 1)]
    return [(day, book.wording.day(date.fromordinal(day)).words) for day in dict.fromkeys(chosen)]


def press_curve_plot(book: Notebook, press: Press) -> Markup | None:
    """Return what the platen does against what the dial says, or None without readings."""
    found = curve(press)
    if not found.set:
        return None
    readings = [(float(each.set.celsius), float(each.measured.celsius)) for each in press.readings]
    pieces = [(float(dial), float(true)) for dial, true in zip(found.set, found.measured, strict=True)]
    title = say(
        "What the platen of {press} does when the dial says something; the readings beneath have the figures",
        press=press.name,
    )
    return calibration_plot(readings, pieces, title=title, unit=_unit(book))
