"""The maker's own pressings, grouped into settings and counted."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from itertools import groupby
from typing import Final

from maker_site.records import Blank, Press, Pressing, Workshop
from maker_site.records.quantities import Duration, Pressure, Temperature
from maker_site.workings.calibration import Curve, Footing, curve
from maker_site.workings.wilson import Interval, interval

USUAL_STEP_KELVIN: Final = Fraction(1)
USUAL_STEP_SECONDS: Final = Fraction(1)
"""The resolution of a press whose record names none. Common practice, no source."""


@dataclass(frozen=True, slots=True)
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

    @property
    def pressed(self) -> int:
        """Pieces pressed."""
        return sum(row.pressed for row in self.pressings)

    @property
    def good(self) -> int:
        """Pieces fit to sell."""
        return sum(row.good for row in self.pressings)

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

    Settings within the press's own resolution of each other are one. Presses of one kind with the same true
    temperature share a group; presses of different kinds never do, since their pressure and heat are not comparable.
    """
    curves = {name: curve(press) for name, press in presses.items()}
    rows = sorted((_row(each, blanks, presses, curves) for each in pressings), key=_Row.order)
    groups = [
        Evidence(_setting(cluster), tuple(row.pressing for row in sorted(cluster, key=_Row.when)))
        for _, same in groupby(rows, key=_Row.apart)
        for cluster in _clusters(list(same))
    ]
    return tuple(sorted(groups, key=best_first))


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


@dataclass(frozen=True, slots=True)
class _Row:
    pressing: Pressing
    method: str
    place: str
    """Kind of press; the press itself where its record names no kind."""
    true: Temperature
    footing: Footing
    step_kelvin: Fraction
    step_seconds: Fraction

    def apart(self) -> tuple[str, ...]:
        """What keeps pressings apart whatever their figures."""
        row = self.pressing
        pressure = row.pressure
        felt = f"{pressure.word}|{pressure.kpa}|{pressure.mark}" if pressure else ""
        return (row.blank, self.method, self.place, row.face or "", felt)

    def order(self) -> tuple[tuple[str, ...], Fraction, Fraction, tuple[date, str, int, int, str]]:
        return (self.apart(), self.pressing.time.seconds, self.true.celsius, self.when())

    def when(self) -> tuple[date, str, int, int, str]:
        row = self.pressing
        return (row.date, row.origin.file, row.origin.line(()), row.pressed, row.id)


_Figure = Callable[[_Row], Fraction]


def _row(
    pressing: Pressing, blanks: Mapping[str, Blank], presses: Mapping[str, Press], curves: Mapping[str, Curve]
) -> _Row:
    press = presses[pressing.press]
    carried = curves[pressing.press].true(pressing.temperature)
    step, second = press.resolution.temperature, press.resolution.time
    return _Row(
        pressing,
        pressing.method or blanks[pressing.blank].method,
        press.kind or f"press {press.id}",
        carried.temperature,
        carried.footing,
        step.kelvin if step else USUAL_STEP_KELVIN,
        second.seconds if second else USUAL_STEP_SECONDS,
    )


def _clusters(rows: Sequence[_Row]) -> Iterator[list[_Row]]:
    """Split rows into those within one step of time, and these into those within one step of temperature."""
    by_time = _runs(rows, lambda row: row.pressing.time.seconds, lambda row: row.step_seconds)
    for same_time in by_time:
        hot = sorted(same_time, key=lambda row: (row.true.celsius, row.when()))
        yield from _runs(hot, lambda row: row.true.celsius, lambda row: row.step_kelvin)


def _runs(rows: Sequence[_Row], value: _Figure, step: _Figure) -> Iterator[list[_Row]]:
    """Cut rising rows where a figure is a whole step or more above the first of its run."""
    run: list[_Row] = []
    for row in rows:
        if run and value(row) - value(run[0]) >= max(step(run[0]), step(row)):
            yield run
            run = []
        run.append(row)
    if run:
        yield run


def _setting(cluster: Sequence[_Row]) -> Setting:
    last = max(cluster, key=_Row.when)
    row = last.pressing
    return Setting(
        row.blank,
        last.method,
        row.press,
        row.temperature,
        last.true,
        last.footing,
        row.time,
        row.pressure,
        row.face,
    )
