"""What a dial's figure means at the platen, and what to set for a wanted temperature."""

from __future__ import annotations

import itertools
from bisect import bisect_right
from collections import defaultdict
from collections.abc import Callable, Iterable
from datetime import date, timedelta
from enum import StrEnum
from fractions import Fraction
from typing import TYPE_CHECKING

from maker_site.frozen import frozen
from maker_site.language import all_of, say, say_n
from maker_site.records.quantities import Temperature

if TYPE_CHECKING:  # all kinds of records are slow to import
    from maker_site.records import Press, Reading

GOOD_FOR = timedelta(days=365)
"""Readings older than this are questioned: displays drift with age. Common practice, no source."""


class Footing(StrEnum):
    """What a carried temperature rests on."""

    MEASURED = "between readings"
    BEYOND = "beyond the readings"
    NONE = "no readings"


def weaker(one: Footing, other: Footing) -> Footing:
    """Return what a figure rests on that was carried twice: a guess stays a guess."""
    return max(one, other, key=list(Footing).index)


@frozen
class Carried:
    """A temperature carried through a press's readings."""

    temperature: Temperature
    footing: Footing

    @property
    def is_guess(self) -> bool:
        """Tell whether no pair of readings stands around the figure."""
        return self.footing is not Footing.MEASURED


@frozen
class Curve:
    """Readings of one press as straight pieces, in degrees Celsius; both rows rise."""

    set: tuple[Fraction, ...]
    measured: tuple[Fraction, ...]

    def true(self, dial: Temperature) -> Carried:
        """Return what the platen does when the dial says `dial`. Beyond the readings the nearest offset holds."""
        return _carry(dial, self.set, self.measured)

    def dial(self, wanted: Temperature) -> Carried:
        """Return what to set for a true temperature; the inverse of `true`."""
        return _carry(wanted, self.measured, self.set)


_MOST_CURVES = 64
_curves: dict[int, tuple[tuple[Reading, ...], Curve]] = {}
"""Of the readings that were asked for, by their identity: a large log asks for the same few very many times."""


def curve(press: Press) -> Curve:
    """Return the press's calibration from its readings.

    Only readings of the latest day for each dial figure count, averaged where several were taken (centre and
    corners). Where a higher dial figure read lower, the two are pooled to their mean so that the curve rises
    (pool adjacent violators: the usual least-squares fit of a rising line); `cautions` says so.
    """
    readings = press.readings
    known = _curves.get(id(readings))
    if known is None or known[0] is not readings:
        if len(_curves) >= _MOST_CURVES:
            _curves.clear()
        known = _curves[id(readings)] = (readings, _rising(press))
    return known[1]


def _rising(press: Press) -> Curve:
    pooled: list[tuple[list[Fraction], Fraction, int]] = []
    for set_at, measured in _means(press):
        pooled.append(([set_at], measured, 1))
        while len(pooled) > 1 and pooled[-2][1] >= pooled[-1][1]:
            later_sets, later, later_n = pooled.pop()
            sets, earlier, n = pooled.pop()
            pooled.append((sets + later_sets, (earlier * n + later * later_n) / (n + later_n), n + later_n))
    return Curve(
        tuple(sum(sets, Fraction(0)) / len(sets) for sets, _, _ in pooled),
        tuple(measured for _, measured, _ in pooled),
    )


def true_temperature(press: Press, dial: Temperature) -> Carried:
    """Return the platen's temperature for a dial figure of this press."""
    return curve(press).true(dial)


def dial_for(press: Press, wanted: Temperature) -> Carried:
    """Return the dial figure of this press for a true temperature."""
    return curve(press).dial(wanted)


def cautions(press: Press, today: date, written: Callable[[date], str] = date.isoformat) -> tuple[str, ...]:
    """Return sentences about readings that should not be trusted blindly, as of `today`; `written` writes a day."""
    if not press.readings:
        return (say("No readings yet: the dial is taken at its word. Measure the platen with a contact probe."),)
    found: list[str] = []
    counting = [reading for _, readings in _by_dial(press) for reading in readings]
    dated = {reading.date for reading in counting if reading.date}
    old = sorted(day for day in dated if today - day > GOOD_FOR)
    if not dated:
        found.append(say("The readings have no date; write when they were taken."))
    elif any(reading.date is None for reading in counting):
        found.append(say("A reading has no date; write when it was taken."))
    if old and len(old) == len(dated):
        found.append(say("The last readings are of {day}, more than a year ago; measure again.", day=written(old[-1])))
    elif old:
        dials = _figures(reading.set for reading in counting if reading.date in old)
        found.append(
            say_n(
                "{figures} was measured more than a year ago, last on {day}; measure again there.",
                "{figures} were measured more than a year ago, last on {day}; measure again there.",
                len(dials),
                figures=all_of(dials),
                day=written(old[-1]),
            )
        )
    means = _means(press)
    if any(later <= earlier for (_, earlier), (_, later) in itertools.pairwise(means)):
        found.append(say("A higher dial figure read lower or the same; those readings are pooled. Measure again."))
    if len(means) == 1:
        found.append(
            say("There is one reading only; its offset is taken to hold everywhere.")
            if len(counting) == 1
            else say("All readings are at one dial figure; their offset is taken to hold everywhere.")
        )
    return tuple(found)


def _figures(dials: Iterable[Temperature]) -> list[str]:
    return list(dict.fromkeys(dial.typed or f"{float(dial.celsius):g} C" for dial in dials))


def _by_dial(press: Press) -> list[tuple[Fraction, list[Reading]]]:
    """Return the readings that count: those of the latest day for each dial figure, lowest figure first."""
    by_set: dict[Fraction, list[Reading]] = defaultdict(list)
    for reading in press.readings:
        by_set[reading.set.celsius].append(reading)
    latest = {set_at: max(_day(reading) for reading in readings) for set_at, readings in by_set.items()}
    return [
        (set_at, [reading for reading in readings if _day(reading) == latest[set_at]])
        for set_at, readings in sorted(by_set.items())
    ]


def _day(reading: Reading) -> date:
    """Return the day of a reading; one without a day is taken for the oldest."""
    return reading.date or date.min


def _means(press: Press) -> list[tuple[Fraction, Fraction]]:
    return [
        (set_at, sum((reading.measured.celsius for reading in readings), Fraction(0)) / len(readings))
        for set_at, readings in _by_dial(press)
    ]


def _carry(given: Temperature, source: tuple[Fraction, ...], target: tuple[Fraction, ...]) -> Carried:
    if not source:
        return Carried(given, Footing.NONE)
    at = given.celsius
    if at < source[0]:
        return Carried(Temperature(at + target[0] - source[0]), Footing.BEYOND)
    if at > source[-1]:
        return Carried(Temperature(at + target[-1] - source[-1]), Footing.BEYOND)
    if len(source) == 1:
        return Carried(Temperature(target[0]), Footing.MEASURED)
    right = min(bisect_right(source, at), len(source) - 1)
    left = right - 1
    share = (at - source[left]) / (source[right] - source[left])
    return Carried(Temperature(target[left] + share * (target[right] - target[left])), Footing.MEASURED)
