"""Temperatures, their differences and their ranges."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from maker_site.records.problems import NotReadable, quoted
from maker_site.records.quantities.numbers import NUMBER, number, tidy

TemperatureUnit = Literal["C", "F"]

_UNIT = r"(?:°|º|deg(?:rees)?\.?)?\s*(c(?:elsius)?|f(?:ahrenheit)?)?"
_ONE = re.compile(rf"([-−]?)\s*({NUMBER})\s*{_UNIT}", re.IGNORECASE)
_RANGE = re.compile(rf"({NUMBER})\s*{_UNIT}\s*(?:to|-|–|—|\.\.)\s*({NUMBER})\s*{_UNIT}", re.IGNORECASE)
_ABSOLUTE_ZERO = Fraction("-273.15")


@dataclass(frozen=True, slots=True, order=True)
class Temperature:
    """A temperature, held exactly."""

    celsius: Fraction
    """Degrees Celsius."""
    typed: str = field(default="", compare=False)
    """As the maker wrote it; never rewritten by rounding."""

    @property
    def fahrenheit(self) -> Fraction:
        """Degrees Fahrenheit: t/F = 1.8 t/C + 32 (NIST SP 811, Appendix B.8)."""
        return self.celsius * Fraction(9, 5) + 32


@dataclass(frozen=True, slots=True, order=True)
class TemperatureStep:
    """A difference of temperatures; 20 C apart is 36 F apart, not 68."""

    kelvin: Fraction
    """The difference in kelvin, which is the same in degrees Celsius."""
    typed: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class TemperatureRange:
    """From `low` to `high`, which are the same where one figure was written."""

    low: Temperature
    high: Temperature
    typed: str = field(default="", compare=False)


def from_fahrenheit(fahrenheit: Fraction, typed: str = "") -> Temperature:
    """Return the temperature of so many degrees Fahrenheit, exactly."""
    return Temperature((fahrenheit - 32) * Fraction(5, 9), typed)


def _made(figure: Fraction, unit: str, typed: str) -> Temperature:
    made = from_fahrenheit(figure, typed) if unit == "F" else Temperature(figure, typed)
    if made.celsius < _ABSOLUTE_ZERO:
        raise NotReadable(f"{quoted(typed)} is below absolute zero")
    return made


@lru_cache(maxsize=4096)
def temperature(text: str, bare: TemperatureUnit = "C") -> Temperature:
    """Read ``400 F``, ``204 °C`` or a bare figure in the shop's unit `bare`."""
    clean = tidy(text)
    match = _ONE.fullmatch(clean)
    if not match:
        raise NotReadable(f"{quoted(text)} is not a temperature; write it like 200 C or 400 F")
    sign, figure, unit = match.groups()
    value = number(figure)
    return _made(-value if sign else value, (unit or bare)[0].upper(), clean)


@lru_cache(maxsize=1024)
def temperature_range(text: str, bare: TemperatureUnit = "C") -> TemperatureRange:
    """Read ``190 to 200 C``, or one temperature as a range of itself."""
    clean = tidy(text)
    match = _RANGE.fullmatch(clean)
    if not match:
        one = temperature(text, bare)
        return TemperatureRange(one, one, clean)
    low, low_unit, high, high_unit = match.groups()
    low_value = _made(number(low), (low_unit or high_unit or bare)[0].upper(), f"{low} {low_unit or high_unit or bare}")
    high_value = _made(number(high), (high_unit or bare)[0].upper(), f"{high} {high_unit or bare}")
    if low_value > high_value:
        raise NotReadable(f"{quoted(text)} runs downwards; write the lower temperature first")
    return TemperatureRange(low_value, high_value, clean)


@lru_cache(maxsize=256)
def temperature_step(text: str, bare: TemperatureUnit = "C") -> TemperatureStep:
    """Read a difference such as ``1 C`` or ``5 F`` (5/9 K for each F)."""
    clean = tidy(text)
    match = _ONE.fullmatch(clean)
    if not match or match[1]:
        raise NotReadable(f"{quoted(text)} is not a step of temperature; write it like 1 C or 5 F")
    figure = number(match[2])
    kelvin = figure * Fraction(5, 9) if (match[3] or bare)[0].upper() == "F" else figure
    if not kelvin:
        raise NotReadable("a step of temperature must be more than nothing")
    return TemperatureStep(kelvin, clean)
