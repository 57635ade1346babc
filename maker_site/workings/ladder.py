"""A test ladder: a few settings around one, which vary one thing, in the fewest blanks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from fractions import Fraction
from math import ceil, floor
from typing import Final

from maker_site.frozen import frozen
from maker_site.language import say
from maker_site.records import Blank, Press, Pressing, Workshop
from maker_site.records.quantities import Duration, Temperature, TemperatureStep, from_fahrenheit, number, plain
from maker_site.workings.calibration import Footing, true_temperature
from maker_site.workings.evidence import Evidence, comparable, temperature_step, time_step
from maker_site.workings.faults import Direction
from maker_site.workings.money.words import Figures
from maker_site.workings.stack import Limit, stack_of, weakest
from maker_site.workings.starting_point import Source, StartingPoint

FEWEST, MOST = 3, 5
"""Rungs of a ladder: with fewer nothing is seen to turn, and more cost blanks. Common practice, no source."""
FURTHEST: Final = 4
"""Rungs out from the middle, where nearer ones are pressed often enough. Common practice, no source."""
OFTEN: Final = 5
"""Pieces pressed at a rung after which it need not be pressed again. Common practice, no source."""
KELVIN_APART: Final = Fraction(5)
FAHRENHEIT_APART: Final = Fraction(10)
"""Between rungs of temperature on a dial in °C or °F, or the next whole step above. Common practice, no source."""
SHARE_OF_TIME: Final = Fraction(1, 6)
"""Between rungs of time, of the time in the middle. Common practice, no source."""
SECONDS_APART: Final = (1, 2, 5, 10, 15, 30, 60, 120)
"""The nearest of these to the share of the time is taken: figures that a person sets. Common practice, no source."""
LOG_COLUMNS: Final = (
    *("date", "project", "blank", "lot", "press", "method", "temperature", "time", "pressure", "face", "pre-press"),
    *("stack", "at once", "peel", "cool", "pressed", "good", "defects", "note", "photo"),
)
"""The columns of the press log, in their usual order."""


@frozen
class Rung:
    """One setting of a ladder."""

    dial: Temperature
    """What to set, on the press's own steps, in its unit."""
    true: Temperature
    """At the platen."""
    footing: Footing
    """What the platen's temperature rests on."""
    time: Duration
    why: str
    """In a clause, without a full stop, said."""
    pressed: int
    """Pieces pressed at it before."""
    good: int
    """Of those, the good ones."""


def ladder(
    point: StartingPoint,
    workshop: Workshop,
    groups: Sequence[Evidence],
    *,
    method: str | None = None,
    direction: Direction = Direction.TIME_BOTH_WAYS,
    rungs: int = FEWEST,
    limit: Limit | None = None,
) -> tuple[Rung, ...]:
    """Return a ladder around a starting point, the least heat or time first; press one piece at each rung.

    It is for the press that the point is dialled for. Only the temperature or only the time changes, as `direction`
    says. The point's own setting is a rung, to compare with; those at which `OFTEN` pieces were pressed already are
    left out, and the next rungs out take their place. No rung is above the weakest limit of the blank and the stack
    last used (`limit`, where given, counts besides), or beyond what the dial reaches; so there may be fewer than
    `rungs` (3 to 5), down to none where nothing but the point itself is left. None too without a press, a
    temperature or a time. `method` is the blank's own unless given; a point of the maker's own has its own.

    Raises ValueError where `rungs` is no number from 3 to 5.
    """
    if not FEWEST <= rungs <= MOST:
        raise ValueError(f"a ladder has {FEWEST} to {MOST} rungs, not {rungs}")
    if point.press is None or point.dial is None or point.time is None:
        return ()
    blank = workshop.blanks[point.blank]
    figures = Figures(workshop.shop.currency, workshop.shop.locale)
    bench = _Bench(point, blank, _method(point, blank, method), workshop.presses, groups, figures)
    middle = _middle(bench, point.dial.temperature, point.time)
    bounds = _Bounds(bench.press, min(_limits(bench, workshop, limit), default=None))
    kept: list[tuple[int, Rung]] = []
    for place in _places(direction):
        rung = _rung(bench, middle, place, direction)
        if bounds.hold(rung) and rung.pressed < OFTEN:
            kept.append((place, rung))
        if len(kept) == rungs:
            break
    if all(place == 0 for place, _ in kept):
        return ()
    return tuple(rung for _, rung in sorted(kept, key=lambda each: each[0]))


def as_log_rows(
    rungs: Sequence[Rung],
    point: StartingPoint,
    workshop: Workshop,
    *,
    method: str | None = None,
    day: date | None = None,
) -> tuple[dict[str, str], ...]:
    """Return a row of the press log for each rung, by column, to paste and fill in.

    The pieces pressed and good are left empty, and so is the date where no `day` is given. What the ladder does not
    vary is written as in the latest pressing behind the point, so that it stays the same.
    """
    blank = workshop.blanks[point.blank]
    last = _last(point)
    of = _method(point, blank, method)
    fixed = dict.fromkeys(LOG_COLUMNS, "") | {
        "date": day.isoformat() if day else "",
        "blank": blank.id,
        "press": point.press or "",
        "method": of if of != blank.method else "",
        "pressure": point.pressure.typed if point.pressure else "",
        "face": point.face or "",
    }
    if last:
        fixed |= {
            "pre-press": _typed(last.pre_press),
            "stack": " > ".join(last.stack),
            "at once": str(last.at_once or ""),
            "peel": last.peel or "",
            "cool": last.cool or "",
        }
    elif blank.sheet and point.source is Source.SHEET:
        sheet = blank.sheet
        fixed |= {"pre-press": _typed(sheet.pre_press), "peel": sheet.peel or "", "cool": sheet.cool or ""}
    note = say("Test ladder {number} of {count}")  # filled in here, so that no mark of direction gets into the log
    return tuple(
        fixed
        | {
            "temperature": rung.dial.typed,
            "time": rung.time.typed,
            "note": note.format(number=number, count=len(rungs)),
        }
        for number, rung in enumerate(rungs, 1)
    )


@frozen
class _Bench:
    """What stays the same over a ladder."""

    point: StartingPoint
    blank: Blank
    method: str
    presses: Mapping[str, Press]
    groups: Sequence[Evidence]
    figures: Figures

    @property
    def press(self) -> Press:
        """The press that the point is dialled for."""
        assert self.point.press is not None
        return self.presses[self.point.press]

    @property
    def was_set(self) -> bool:
        """Tell whether the point's own figures were once set on this press, so that they can be."""
        return self.point.evidence is not None and self.point.evidence.setting.press == self.point.press

    def tally(self, dial: Temperature, time: Duration) -> tuple[int, int]:
        """Return pieces pressed and good less than a step of this press away from a setting."""
        step = temperature_step(self.press)
        low, high = (true_temperature(self.press, Temperature(dial.celsius + way * step)) for way in (-1, 1))
        same = [
            each
            for each in self.groups
            if self._alike(each)
            and low.temperature < each.setting.true < high.temperature
            and abs(each.setting.time.seconds - time.seconds) < time_step(self.press)
        ]
        return sum(each.pressed for each in same), sum(each.good for each in same)

    def _alike(self, each: Evidence) -> bool:
        setting = each.setting
        felt = (setting.blank, setting.method, setting.face, setting.pressure)
        near = comparable(self.presses[setting.press], self.press)
        return near and felt == (self.blank.id, self.method, self.point.face, self.point.pressure)


@frozen
class _Middle:
    """The setting that a ladder is built around, and the steps of the dial it is set on."""

    dial: Temperature
    time: Duration
    fahrenheit: bool
    kelvin_apart: Fraction
    seconds_apart: Fraction


@frozen
class _Bounds:
    """What no rung may pass."""

    press: Press
    hottest: Fraction | None
    """At the platen, in degrees Celsius."""

    def hold(self, rung: Rung) -> bool:
        lowest, highest = self.press.lowest, self.press.highest
        return (
            (self.hottest is None or rung.true.celsius <= self.hottest)
            and (highest is None or rung.dial <= highest)
            and (lowest is None or rung.dial >= lowest)
            and rung.time.seconds > 0
        )


def _places(direction: Direction) -> Iterator[int]:
    """Yield places on the ladder from the middle out: 0 is the point itself, below it less heat or time."""
    yield 0
    for out in range(1, FURTHEST + 1):
        if direction not in (Direction.LONGER, Direction.HOTTER):
            yield -out
        if direction not in (Direction.SHORTER, Direction.COOLER):
            yield out


def _middle(bench: _Bench, dial: Temperature, time: Duration) -> _Middle:
    """Return the middle as it was typed where it was once set on the press, else on the press's own steps."""
    step = bench.press.resolution.temperature
    fahrenheit = _written_in_fahrenheit(dial) if bench.was_set or step is None else _in_fahrenheit(step)
    kelvin = step.kelvin if step else Fraction(5, 9) if fahrenheit else Fraction(1)
    apart = ceil((FAHRENHEIT_APART * Fraction(5, 9) if fahrenheit else KELVIN_APART) / kelvin) * kelvin
    if not bench.was_set:
        zero = from_fahrenheit(Fraction(0)).celsius if fahrenheit else Fraction(0)
        dial = _shown(_nearest(dial.celsius - zero, kelvin) + zero, fahrenheit=fahrenheit)
        time = _seconds(_nearest(time.seconds, time_step(bench.press)))
    elif _is_bare(dial.typed):  # a pasted row should read the same whatever the shop's unit becomes
        dial = _shown(dial.celsius, fahrenheit=fahrenheit)
    return _Middle(dial, time, fahrenheit, apart, _seconds_apart(time.seconds, time_step(bench.press)))


def _seconds_apart(seconds: Fraction, step: Fraction) -> Fraction:
    """Return the time between rungs: the figure nearest to a share of the time, in whole steps of the timer."""
    figure = min(SECONDS_APART, key=lambda each: abs(each - seconds * SHARE_OF_TIME))
    return ceil(figure / step) * step


def _rung(bench: _Bench, middle: _Middle, place: int, direction: Direction) -> Rung:
    dial, time, why = middle.dial, middle.time, say("the setting to compare with")
    if place and direction.of_time:
        apart = place * middle.seconds_apart
        time = _seconds(time.seconds + apart)
        why = _longer_or_shorter(apart, bench.figures)
    elif place:
        kelvin = place * middle.kelvin_apart
        dial = _shown(dial.celsius + kelvin, fahrenheit=middle.fahrenheit)
        why = _hotter_or_cooler(kelvin, bench.figures, fahrenheit=middle.fahrenheit)
    platen = true_temperature(bench.press, dial)
    pressed, good = bench.tally(dial, time)
    if pressed:
        why = say("{why}; {good} of {pressed} good so far", why=why, good=good, pressed=pressed)
    if platen.footing is Footing.BEYOND:
        why = say("{why}; beyond the press’s readings, so the platen’s temperature is a guess", why=why)
    return Rung(dial, platen.temperature, platen.footing, time, why, pressed, good)


def _longer_or_shorter(apart: Fraction, figures: Figures) -> str:
    time = say("{n} s", n=figures.number(abs(apart), 3))
    return say("{time} longer", time=time) if apart > 0 else say("{time} shorter", time=time)


def _hotter_or_cooler(kelvin: Fraction, figures: Figures, *, fahrenheit: bool) -> str:
    both = f"{figures.number(abs(kelvin), 1)} °C", f"{figures.number(abs(kelvin) * Fraction(9, 5), 1)} °F"
    first, second = both[::-1] if fahrenheit else both
    if kelvin > 0:
        return say("{first} ({second}) hotter on the dial", first=first, second=second)
    return say("{first} ({second}) cooler on the dial", first=first, second=second)


def _nearest(value: Fraction, step: Fraction) -> Fraction:
    return floor(value / step + Fraction(1, 2)) * step


def _seconds(value: Fraction) -> Duration:
    return Duration(value, f"{plain(value)} s")


def _shown(celsius: Fraction, *, fahrenheit: bool) -> Temperature:
    """Return a temperature as the dial would have it written."""
    made = Temperature(celsius)
    return Temperature(celsius, f"{plain(made.fahrenheit)} F" if fahrenheit else f"{plain(celsius)} C")


def _written_in_fahrenheit(given: Temperature) -> bool:
    """Tell whether a temperature was typed in degrees Fahrenheit; a bare figure is known by its size."""
    unit = given.typed.strip().lower()
    if unit.endswith(("f", "fahrenheit")):
        return True
    return _is_bare(unit) and number(unit) == given.fahrenheit


def _in_fahrenheit(step: TemperatureStep) -> bool:
    """Tell whether a dial goes in degrees Fahrenheit; a bare figure is known by its size."""
    unit = step.typed.strip().lower()
    if unit.endswith(("f", "fahrenheit")):
        return True
    return _is_bare(unit) and number(unit) * Fraction(5, 9) == step.kelvin


def _is_bare(typed: str) -> bool:
    return bool(typed) and not any(each.isalpha() or each == "-" for each in typed)


def _limits(bench: _Bench, workshop: Workshop, limit: Limit | None) -> Iterator[Fraction]:
    last = _last(bench.point)
    stack = stack_of(last.stack if last else (), bench.point.face, bench.blank, workshop.supplies, bench.method)
    for each in (weakest(stack, bench.blank), limit):
        if each:
            yield each.temperature.celsius


def _last(point: StartingPoint) -> Pressing | None:
    return point.evidence.pressings[-1] if point.evidence else None


def _method(point: StartingPoint, blank: Blank, given: str | None) -> str:
    return point.evidence.setting.method if point.evidence else given or blank.method


def _typed(given: Duration | None) -> str:
    return given.typed if given else ""
