"""Energy that a press takes."""

from __future__ import annotations

from fractions import Fraction

_WATT_SECONDS_PER_KWH = 3_600_000


def kilowatt_hours(watts: int, seconds: Fraction, duty: Fraction = Fraction(1)) -> Fraction:
    """Return watts x duty x time in kWh; `duty` is the share of the time that the element is on, 0 to 1."""
    return watts * duty * seconds / _WATT_SECONDS_PER_KWH
