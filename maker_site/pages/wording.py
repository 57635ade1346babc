"""Quantities and dates in words: both unit systems, the shop's first, its language's figures."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from functools import lru_cache
from typing import overload

from babel import Locale
from babel.dates import format_skeleton
from babel.numbers import format_decimal

from maker_site.frozen import frozen
from maker_site.language import listed, marked, say, say_n
from maker_site.pages.marks import evidence_dots, interval_bar
from maker_site.pages.parts import Both, Day, EvidenceShown, Hazard, Hazards
from maker_site.records import Shop
from maker_site.records.quantities import (
    KPA_PER_PSI,
    Duration,
    DurationRange,
    Length,
    Pressure,
    Size,
    Temperature,
    TemperatureRange,
    TemperatureStep,
)
from maker_site.workings.cautions import CLOSING, Caution
from maker_site.workings.evidence import Evidence
from maker_site.workings.starting_point import percent_down, percent_up

_PSI_STEP, _BAR_PLACES = 0, 2
_LONGEST_CLOCK = 3600


@frozen
class Wording:
    """How one shop writes its figures."""

    locale: Locale
    temperature_unit: str
    length_unit: str
    pressure_unit: str

    @classmethod
    def of(cls, shop: Shop) -> Wording:
        """Return the wording of a shop's record."""
        return cls(Locale.parse(shop.locale), shop.units.temperature, shop.units.length, shop.units.pressure)

    def figure(self, value: Fraction, places: int = 0) -> str:
        """Return a figure rounded half away from zero to at most `places` decimals, in the locale's digits."""
        return _figure(value.numerator, value.denominator, places, self.locale)

    def count(self, value: int) -> str:
        """Return a whole number with the locale's grouping."""
        return self.figure(Fraction(value))

    @overload
    def day(self, given: date) -> Day: ...

    @overload
    def day(self, given: None) -> None: ...

    def day(self, given: date | None) -> Day | None:
        """Return a date as the locale orders it, the month as a word."""
        if given is None:
            return None
        return _day(given, self.locale)

    def temperature(self, given: Temperature) -> Both:
        """Return whole degrees in both units, the shop's first."""
        return self._degrees(self.figure(given.celsius), self.figure(given.fahrenheit))

    def temperature_range(self, given: TemperatureRange) -> Both:
        """Return a range of temperatures in both units."""
        if given.low == given.high:
            return self.temperature(given.low)
        low, high = given.low, given.high
        celsius = say("{low} to {high} °C", low=self.figure(low.celsius), high=self.figure(high.celsius))
        fahrenheit = say("{low} to {high} °F", low=self.figure(low.fahrenheit), high=self.figure(high.fahrenheit))
        return Both(fahrenheit, celsius) if self.temperature_unit == "F" else Both(celsius, fahrenheit)

    def step(self, given: TemperatureStep) -> Both:
        """Return a difference of temperatures: 5 K is 9 °F."""
        return self.difference(given.kelvin)

    def difference(self, kelvin: Fraction, *, signed: bool = False) -> Both:
        """Return a difference in both units, with a plus sign where asked."""
        return self._degrees(self._signed(kelvin, signed=signed), self._signed(kelvin * Fraction(9, 5), signed=signed))

    def _degrees(self, celsius: str, fahrenheit: str) -> Both:
        in_celsius, in_fahrenheit = _written(say("{n} °C"), celsius), _written(say("{n} °F"), fahrenheit)
        return Both(in_fahrenheit, in_celsius) if self.temperature_unit == "F" else Both(in_celsius, in_fahrenheit)

    def _signed(self, value: Fraction, *, signed: bool) -> str:
        shown = self.figure(value, 1)
        return f"+{shown}" if signed and value > 0 else shown.replace("-", "−")

    def time(self, given: Duration) -> Both:
        """Return a time as m:ss and in seconds (minutes from an hour on)."""
        seconds = given.seconds
        if seconds >= _LONGEST_CLOCK:
            hours, rest = divmod(seconds, _LONGEST_CLOCK)
            return Both(
                say("{hours} h {minutes} min", hours=self.count(int(hours)), minutes=self.figure(rest / 60)),
                _written(say("{n} min"), self.figure(seconds / 60)),
            )
        whole = int(seconds)
        part = seconds - whole
        clock = f"{whole // 60}:{whole % 60:02d}" + (f"{self.figure(part, 1)[1:]}" if part else "")
        # Translators: s for seconds, short
        return Both(clock, _written(say("{n} s"), self.figure(seconds, 1)))

    def time_range(self, given: DurationRange) -> Both:
        """Return a range of times."""
        if given.low == given.high:
            return self.time(given.low)
        low, high = self.time(given.low), self.time(given.high)
        return Both(say("{low} to {high}", low=low.first, high=high.first), self._seconds_range(given))

    def _seconds_range(self, given: DurationRange) -> str:
        low, high = given.low.seconds, given.high.seconds
        if low >= _LONGEST_CLOCK:
            return say("{low} to {high} min", low=self.figure(low / 60), high=self.figure(high / 60))
        if high < _LONGEST_CLOCK:
            return say("{low} to {high} s", low=self.figure(low, 1), high=self.figure(high, 1))
        return say("{low} to {high}", low=self.time(given.low).second, high=self.time(given.high).second)

    def minutes(self, given: Duration) -> str:
        """Return a time in minutes alone."""
        return _written(say("{n} min"), self.figure(given.seconds / 60, 1))

    def length(self, given: Length) -> Both:
        """Return a length in mm (or cm) and inches, the shop's first."""
        metric, imperial = self._metric([given]), self._inches([given])
        return Both(imperial, metric) if self.length_unit == "in" else Both(metric, imperial)

    def size(self, given: Size) -> Both:
        """Return width by height, or a diameter, in both units."""
        sides = [given.width] if given.round else [given.width, given.height]
        metric, imperial = self._metric(sides), self._inches(sides)
        if given.round:
            # Translators: the diameter of a round piece, 95 mm round
            metric, imperial = say("{across} round", across=metric), say("{across} round", across=imperial)
        return Both(imperial, metric) if self.length_unit == "in" else Both(metric, imperial)

    def set_of(self, pieces: int) -> str:
        """Return how many pieces are one item, where that is more than one."""
        return say_n("a set of {n}", "a set of {n}", pieces, n=self.count(pieces))

    def good_of(self, good: int, pressed: int) -> str:
        """Return ``24 of 25 good``."""
        return say("{good} of {pressed} good", good=self.count(good), pressed=self.count(pressed))

    def one_line(self, given: Both) -> str:
        """Return both figures in one line, ``200 °C (392 °F)``."""
        return say("{first} ({second})", first=given.first, second=given.second)

    def _metric(self, sides: Sequence[Length]) -> str:
        if self.length_unit == "cm":
            return _kept_together(say("{n} cm"), " × ".join(self.figure(side.mm / 10, 2) for side in sides))
        return _kept_together(say("{n} mm"), " × ".join(self.figure(side.mm, 1) for side in sides))

    def _inches(self, sides: Sequence[Length]) -> str:
        # Translators: in for inches, short
        return _kept_together(say("{n} in"), " × ".join(self.figure(side.inches, 2) for side in sides))

    def pressure(self, given: Pressure | None) -> str | None:
        """Return the word, the gauge's figure in both units, and the press's own mark, whichever are there."""
        if given is None:
            return None
        parts = [say(given.word)] if given.word else []
        if given.kpa is not None:
            bar = _written(say("{n} bar"), self.figure(given.kpa / 100, 2))
            psi = _written(say("{n} psi"), self.figure(given.kpa / KPA_PER_PSI))
            kpa = _written(say("{n} kPa"), self.figure(given.kpa))
            shown = {"psi": (psi, bar), "kPa": (kpa, psi)}.get(self.pressure_unit, (bar, psi))
            parts.append(self.one_line(Both(*shown)))
        if given.mark:
            parts.append(given.mark)
        return listed(parts)

    def evidence(self, given: Evidence) -> EvidenceShown:
        """Return counted evidence in words and marks."""
        low, high = percent_down(given.interval.low), percent_up(given.interval.high)
        good, pressed = self.count(given.good), self.count(given.pressed)
        return EvidenceShown(
            given.pressed,
            given.good,
            low,
            high,
            say(
                "{good} of {pressed} good; the true share is likely between {low} and {high} %",
                good=good,
                pressed=pressed,
                low=self.count(low),
                high=self.count(high),
            ),
            say("{good} of {pressed}", good=good, pressed=pressed),
            evidence_dots(given.outcomes),
            interval_bar(given.interval.low, given.interval.high, given.good / given.pressed),
            self.day(given.last_used),
            tuple(say("{defect} ({n})", defect=say(defect), n=self.count(count)) for defect, count in given.defects),
        )


# A workshop says the same few figures and days many thousand times, and formatting by CLDR is slow.
@lru_cache(maxsize=65536)
def _figure(numerator: int, denominator: int, places: int, locale: Locale) -> str:
    exact = Decimal(numerator) / Decimal(denominator)
    rounded = exact.quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP)
    rounded = rounded + 0 if rounded else abs(rounded)  # no “-0”
    return str(format_decimal(rounded, format=f"#,##0.{'#' * places}" if places else "#,##0", locale=locale))


@lru_cache(maxsize=16384)
def _day(given: date, locale: Locale) -> Day:
    return Day(given.isoformat(), str(format_skeleton("yMMMd", given, locale=locale)))


FACE_WORDS = {
    "print up": marked("Print up: the transfer lies print side up, the blank face down on it."),
    "print down": marked("Print down: the blank lies face up, the transfer print side down on it."),
    "wrapped": marked("Wrapped: the transfer goes round the blank, print side inwards."),
}
"""What each face means, since “face down” alone is used both ways."""


def face_words(face: str | None) -> str | None:
    """Return a face as a sentence; an unclear one is said to be unclear."""
    if face is None:
        return None
    if face in FACE_WORDS:
        return say(FACE_WORDS[face])
    return say("“{face}” as written in the log: which way is not clear.", face=face)


def hazards(given: Sequence[Caution]) -> Hazards:
    """Return cautions for a page, with their closing sentence."""
    each_said = tuple(Hazard(each.kind, say(each.title), say(each.words), say(each.short)) for each in given)
    return Hazards(each_said, say(CLOSING))


def _kept_together(sentence: str, figures: str) -> str:
    """Return a size that no line breaks: neither before its unit nor between its sides."""
    return _written(sentence, figures).replace(" ", "\N{NO-BREAK SPACE}")


def _written(pattern: str, figure: str) -> str:
    """Return a figure with its unit; what is said of it sets the two apart together."""
    return pattern.format(n=figure)
