"""Quantities and dates in words: both unit systems, the shop's first, its language's figures."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from functools import lru_cache
from typing import overload

from babel import Locale
from babel.dates import format_date
from babel.numbers import format_decimal

from maker_site.language import say
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


@dataclass(frozen=True, slots=True)
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
        """Return a date as the locale writes it, the month as a word."""
        if given is None:
            return None
        return _day(given, self.locale)

    def temperature(self, given: Temperature) -> Both:
        """Return whole degrees in both units, the shop's first."""
        celsius = f"{self.figure(given.celsius)} °C"
        fahrenheit = f"{self.figure(given.fahrenheit)} °F"
        return Both(fahrenheit, celsius) if self.temperature_unit == "F" else Both(celsius, fahrenheit)

    def temperature_range(self, given: TemperatureRange) -> Both:
        """Return a range of temperatures in both units."""
        if given.low == given.high:
            return self.temperature(given.low)
        low, high = self.temperature(given.low), self.temperature(given.high)
        return Both(_joined(low.first, high.first), _joined(low.second, high.second))

    def step(self, given: TemperatureStep) -> Both:
        """Return a difference of temperatures: 5 K is 9 °F."""
        return self.difference(given.kelvin)

    def difference(self, kelvin: Fraction, *, signed: bool = False) -> Both:
        """Return a difference in both units, with a plus sign where asked."""
        celsius = self._signed(kelvin, signed=signed) + " °C"
        fahrenheit = self._signed(kelvin * Fraction(9, 5), signed=signed) + " °F"
        return Both(fahrenheit, celsius) if self.temperature_unit == "F" else Both(celsius, fahrenheit)

    def _signed(self, value: Fraction, *, signed: bool) -> str:
        shown = self.figure(value, 1)
        return f"+{shown}" if signed and value > 0 else shown.replace("-", "−")

    def time(self, given: Duration) -> Both:
        """Return a time as m:ss and in seconds (minutes from an hour on)."""
        seconds = given.seconds
        if seconds >= _LONGEST_CLOCK:
            hours, rest = divmod(seconds, _LONGEST_CLOCK)
            return Both(f"{int(hours)} h {self.figure(rest / 60)} min", f"{self.figure(seconds / 60)} min")
        whole = int(seconds)
        part = seconds - whole
        clock = f"{whole // 60}:{whole % 60:02d}" + (f"{self.figure(part, 1)[1:]}" if part else "")
        return Both(clock, f"{self.figure(seconds, 1)} s")

    def time_range(self, given: DurationRange) -> Both:
        """Return a range of times."""
        if given.low == given.high:
            return self.time(given.low)
        low, high = self.time(given.low), self.time(given.high)
        return Both(f"{low.first} to {high.first}", _joined(low.second, high.second))

    def length(self, given: Length) -> Both:
        """Return a length in mm (or cm) and inches, the shop's first."""
        metric, imperial = self._metric([given]), self._inches([given])
        return Both(imperial, metric) if self.length_unit == "in" else Both(metric, imperial)

    def size(self, given: Size) -> Both:
        """Return width by height, or a diameter, in both units."""
        sides = [given.width] if given.round else [given.width, given.height]
        metric, imperial = self._metric(sides), self._inches(sides)
        if given.round:
            metric, imperial = f"{metric} round", f"{imperial} round"
        return Both(imperial, metric) if self.length_unit == "in" else Both(metric, imperial)

    def one_line(self, given: Both) -> str:
        """Return both figures in one line, ``200 °C (392 °F)``."""
        return f"{given.first} ({given.second})"

    def _metric(self, sides: Sequence[Length]) -> str:
        if self.length_unit == "cm":
            return f"{' × '.join(self.figure(side.mm / 10, 2) for side in sides)} cm"
        return f"{' × '.join(self.figure(side.mm, 1) for side in sides)} mm"

    def _inches(self, sides: Sequence[Length]) -> str:
        return f"{' × '.join(self.figure(side.inches, 2) for side in sides)} in"

    def pressure(self, given: Pressure | None) -> str | None:
        """Return the word, the gauge's figure in both units, and the press's own mark, whichever are there."""
        if given is None:
            return None
        parts = [given.word] if given.word else []
        if given.kpa is not None:
            bar = f"{self.figure(given.kpa / 100, 2)} bar"
            psi = f"{self.figure(given.kpa / KPA_PER_PSI)} psi"
            kpa = f"{self.figure(given.kpa)} kPa"
            shown = {"psi": (psi, bar), "kPa": (kpa, psi)}.get(self.pressure_unit, (bar, psi))
            parts.append(f"{shown[0]} ({shown[1]})")
        if given.mark:
            parts.append(given.mark)
        return ", ".join(parts)

    def evidence(self, given: Evidence) -> EvidenceShown:
        """Return counted evidence in words and marks."""
        low, high = percent_down(given.interval.low), percent_up(given.interval.high)
        short = f"{self.count(given.good)} of {self.count(given.pressed)}"
        return EvidenceShown(
            given.pressed,
            given.good,
            low,
            high,
            f"{short} good; the true share is likely between {low} and {high} %",
            short,
            evidence_dots(given.outcomes),
            interval_bar(given.interval.low, given.interval.high, given.good / given.pressed),
            self.day(given.last_used),
            tuple(f"{defect} ({count})" for defect, count in given.defects),
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
    return Day(given.isoformat(), str(format_date(given, "d MMM y", locale=locale)))


FACE_WORDS = {
    "print up": "Print up: the transfer lies print side up, the blank face down on it.",
    "print down": "Print down: the blank lies face up, the transfer print side down on it.",
    "wrapped": "Wrapped: the transfer goes round the blank, print side inwards.",
}
"""What each face means, since “face down” alone is used both ways."""


def face_words(face: str | None) -> str | None:
    """Return a face as a sentence; an unclear one is said to be unclear."""
    if face is None:
        return None
    return FACE_WORDS.get(face, f"“{face}” as written in the log: which way is not clear.")


def hazards(given: Sequence[Caution]) -> Hazards:
    """Return cautions for a page, with their closing sentence."""
    each_said = tuple(Hazard(each.kind, say(each.title), say(each.words), say(each.short)) for each in given)
    return Hazards(each_said, say(CLOSING))


def counted(number: int, one: str, many: str) -> str:
    """Return ``1 blank`` or ``3 blanks``."""
    return f"{number} {one if number == 1 else many}"


def in_a_row(parts: Sequence[str]) -> str:
    """Return ``hotter``, ``hotter and longer`` or ``hotter, longer and firmer``."""
    return " and ".join(part for part in (", ".join(parts[:-1]), *parts[-1:]) if part)


def _joined(low: str, high: str) -> str:
    """Return ``190 to 200 °C`` for ``190 °C`` and ``200 °C``."""
    figure, _, unit = low.rpartition(" ")
    return f"{figure} to {high}" if high.endswith(f" {unit}") else f"{low} to {high}"
