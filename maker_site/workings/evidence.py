"""The maker's own pressings, grouped into settings and counted."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from fractions import Fraction
from functools import cache
from itertools import groupby
from typing import TYPE_CHECKING, Final

from maker_site.frozen import frozen
from maker_site.records.quantities import Duration, Pressure, Temperature
from maker_site.workings.calibration import Curve, Footing, curve
from maker_site.workings.wilson import Interval, interval

if TYPE_CHECKING:  # all kinds of records are slow to import
    from maker_site.records import Blank, Press, Pressing, Workshop

USUAL_STEP_KELVIN: Final = Fraction(1)
USUAL_STEP_SECONDS: Final = Fraction(1)
"""The resolution of a press whose record names none. Common practice, no source."""


@frozen
class Setting:
    """What was set, on what, with what: the things that must be the same for two pressings to be compared."""

    blank: str
    method: str
    press: str
    """The press it was last set on."""
    dial: Temperature
    """What that press was set to, as typed last."""
    true: Temperature
    """At the platen, through the calibration."""
    footing: Footing
    time: Duration
    pressure: Pressure | None
    face: str | None


@dataclass(frozen=True, slots=True)
class Evidence:
    """A setting and what came of it."""

    setting: Setting
    pressings: tuple[Pressing, ...]
    """Oldest first."""
    pressed: int = field(init=False)
    """Pieces pressed."""
    good: int = field(init=False)
    """Pieces fit to sell."""

    def __post_init__(self) -> None:
        """Count once: these two are asked for again and again."""
        object.__setattr__(self, "pressed", sum(row.pressed for row in self.pressings))
        object.__setattr__(self, "good", sum(row.good for row in self.pressings))

    @property
    def interval(self) -> Interval:
        """The 95 % interval of the true share of good pieces."""
        found = interval(self.good, self.pressed)
        assert found is not None
        return found

    @property
    def last_used(self) -> date:
        """The day of the latest pressing."""
        return self.pressings[-1].date

    @property
    def defects(self) -> tuple[tuple[str, int], ...]:
        """The defects noted and in how many pressings, most frequent first."""
        seen = Counter(defect for row in self.pressings for defect in dict.fromkeys(row.defects))
        return tuple(sorted(seen.items(), key=lambda each: (-each[1], each[0])))

    @property
    def projects(self) -> tuple[str, ...]:
        """The ids of the projects it was used for, latest first."""
        return tuple(dict.fromkeys(row.project for row in reversed(self.pressings) if row.project))

    @property
    def outcomes(self) -> tuple[bool, ...]:
        """True for each good piece, False for each spoiled one, in the order pressed (good first in one pressing)."""
        return tuple(
            outcome for row in self.pressings for outcome in [True] * row.good + [False] * (row.pressed - row.good)
        )


def evidence(
    pressings: Iterable[Pressing], blanks: Mapping[str, Blank], presses: Mapping[str, Press]
) -> tuple[Evidence, ...]:
    """Group pressings by blank, method, kind of press, true setting and face; best supported first in each blank.

    Settings within the press's own resolution of each other are one; a whole step of its dial apart they are two,
    however little the platen changes for it. Presses of one kind with the same true temperature share a group, and so
    do those whose records name no kind; presses of different kinds never do, since their pressure and heat are not
    comparable.
    """
    curves = {name: curve(press) for name, press in presses.items()}

    @cache  # a log says the same few things many times over
    def heat(press: str, dial: Temperature) -> _Heat:
        return _heat(curves[press], dial, temperature_step(presses[press]))

    rows = sorted(
        (_row(row, blanks, presses[row.press], heat(row.press, row.temperature)) for row in pressings), key=_by_time
    )
    groups = [
        Evidence(_setting(cluster), tuple(row.pressing for row in sorted(cluster, key=_when)))
        for _, same in groupby(rows, key=lambda row: row.apart)
        for cluster in _clusters(list(same))
    ]
    return tuple(sorted(groups, key=best_first))


def comparable(one: Press, other: Press) -> bool:
    """Tell whether a setting can be carried between two presses: never where both say a kind and it is another."""
    return one.id == other.id or one.kind is None or other.kind is None or one.kind == other.kind


def temperature_step(press: Press) -> Fraction:
    """Return the smallest step of a press's dial, in kelvin."""
    return press.resolution.temperature.kelvin if press.resolution.temperature else USUAL_STEP_KELVIN


def time_step(press: Press) -> Fraction:
    """Return the smallest step of a press's timer, in seconds."""
    return press.resolution.time.seconds if press.resolution.time else USUAL_STEP_SECONDS


def best_first(each: Evidence) -> tuple[str, float, int, float, Fraction, Fraction, str]:
    """Order evidence by blank, then by the lower end of the interval, then by how much and how lately it was used."""
    setting = each.setting
    return (
        setting.blank,
        -each.interval.low,
        -each.pressed,
        -each.last_used.toordinal(),
        setting.true.celsius,
        setting.time.seconds,
        f"{setting.press} {setting.face} {setting.pressure}",
    )


def evidence_of(workshop: Workshop) -> tuple[Evidence, ...]:
    """Return the evidence of all pressings of a workshop."""
    return evidence(workshop.pressings, workshop.blanks, workshop.presses)


@frozen
class _Heat:
    """A dial figure at the platen."""

    true: Temperature
    rough: float
    """The same in degrees Celsius: of two figures most often this alone tells the higher, and quickly."""
    footing: Footing
    step_up: Fraction
    """What the platen gains by one step of the dial more, in kelvin."""
    step_down: Fraction
    """What it loses by one step less."""


@frozen
class _Row:
    pressing: Pressing
    method: str
    heat: _Heat
    step_seconds: Fraction
    apart: tuple[str, ...]
    """What keeps pressings apart whatever their figures; the kind of press is empty where its record names none."""
    when: tuple[date, str, int, int, str]


def _by_time(row: _Row) -> tuple[object, ...]:
    seconds = row.pressing.time.seconds
    return (row.apart, float(seconds), seconds, *_by_heat(row))


def _by_heat(row: _Row) -> tuple[object, ...]:
    return (row.heat.rough, row.heat.true.celsius, row.when)


def _when(row: _Row) -> tuple[date, str, int, int, str]:
    return row.when


def _heat(of_press: Curve, dial: Temperature, step: Fraction) -> _Heat:
    here = of_press.true(dial)
    up, down = (of_press.true(Temperature(dial.celsius + way * step)).temperature.celsius for way in (1, -1))
    at = here.temperature.celsius
    return _Heat(here.temperature, float(at), here.footing, up - at, at - down)


def _row(pressing: Pressing, blanks: Mapping[str, Blank], press: Press, heat: _Heat) -> _Row:
    method = pressing.method or blanks[pressing.blank].method
    pressure, origin = pressing.pressure, pressing.origin
    felt = f"{pressure.word}|{pressure.kpa}|{pressure.mark}" if pressure else ""
    apart = (pressing.blank, method, press.kind or "", pressing.face or "", felt)
    when = (pressing.date, origin.file, origin.line(()), pressing.pressed, pressing.id)
    return _Row(pressing, method, heat, time_step(press), apart, when)


def _clusters(rows: Sequence[_Row]) -> Iterator[list[_Row]]:
    """Split rows into those within one step of time, and these into those within one step of temperature."""
    for same_time in _runs(rows, _longer):
        yield from _runs(sorted(same_time, key=_by_heat), _hotter)


def _longer(one: _Row, other: _Row) -> bool:
    """Tell whether the second is a whole step of time or more above the first; the coarser press decides."""
    low, high = one.pressing.time.seconds, other.pressing.time.seconds
    return low is not high and high - low >= max(one.step_seconds, other.step_seconds)


def _hotter(one: _Row, other: _Row) -> bool:
    """Tell whether the second is a whole step of temperature or more above the first; the coarser press decides."""
    low, high = one.heat, other.heat
    return low is not high and high.true.celsius - low.true.celsius >= max(low.step_up, high.step_down)


def _runs(rows: Sequence[_Row], apart: Callable[[_Row, _Row], bool]) -> Iterator[list[_Row]]:
    """Cut rising rows where one is a whole step above the lowest of its run on any press."""
    run: list[_Row] = []
    lowest: dict[str, _Row] = {}
    for row in rows:
        if any(apart(low, row) for low in lowest.values()):
            yield run
            run, lowest = [], {}
        run.append(row)
        lowest.setdefault(row.pressing.press, row)
    if run:
        yield run


def _setting(cluster: Sequence[_Row]) -> Setting:
    last = max(cluster, key=_when)
    row = last.pressing
    return Setting(
        row.blank,
        last.method,
        row.press,
        row.temperature,
        last.heat.true,
        last.heat.footing,
        row.time,
        row.pressure,
        row.face,
    )
