"""How much is in a packet, how much of it is used, how far it goes."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache

from maker_site.records.problems import NotReadable, nearest, quoted
from maker_site.records.quantities.length import MM_PER_INCH
from maker_site.records.quantities.numbers import NUMBER, number, tidy

ML_PER_US_FLUID_OUNCE = Fraction("29.5735295625")
"""1/128 of 231 cubic inches."""
_UNITS: dict[str, tuple[str, Fraction]] = {
    "ml": ("ml", Fraction(1)),
    "cl": ("ml", Fraction(10)),
    "l": ("ml", Fraction(1000)),
    "fl oz": ("ml", ML_PER_US_FLUID_OUNCE),
    "mm": ("mm", Fraction(1)),
    "cm": ("mm", Fraction(10)),
    "m": ("mm", Fraction(1000)),
    "in": ("mm", MM_PER_INCH),
    "ft": ("mm", MM_PER_INCH * 12),
    "yd": ("mm", MM_PER_INCH * 36),
    "g": ("g", Fraction(1)),
    "kg": ("g", Fraction(1000)),
    "m2": ("m2", Fraction(1)),
    "m²": ("m2", Fraction(1)),
    **dict.fromkeys(("sheet", "sheets"), ("sheets", Fraction(1))),
    **dict.fromkeys(("piece", "pieces", "pcs", "each"), ("pieces", Fraction(1))),
    **dict.fromkeys(("box", "boxes", "bag", "bags", "card", "cards", "label", "labels"), ("pieces", Fraction(1))),
    **dict.fromkeys(("pressing", "pressings"), ("pressings", Fraction(1))),
}
_MEASURE = re.compile(rf"(?:(\d+)\s*(?:x|×)\s*)?({NUMBER})\s*([a-z][a-z ]*[a-z]|[a-z]|m²|m2)?", re.IGNORECASE)
_LAYDOWN = re.compile(rf"({NUMBER})\s*ml\s*(?:/|per)\s*(?:m2|m²|sq\.?\s?m)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Measure:
    """An amount with its unit."""

    amount: Fraction
    unit: str
    """ml, mm, g, m2, sheets, pieces or pressings."""
    typed: str = field(default="", compare=False)


@lru_cache(maxsize=1024)
def measure(text: str) -> Measure:
    """Read ``400 ml``, ``3 x 20 ml``, ``33 m``, ``100 sheets``, ``200 pressings``; a bare figure counts pieces."""
    clean = tidy(text)
    match = _MEASURE.fullmatch(clean)
    if not match:
        raise NotReadable(f"{quoted(text)} is not an amount; write it like 400 ml, 33 m or 100 sheets")
    times, figure, unit = match.groups()
    known = _UNITS.get((unit or "pieces").lower())
    if known is None:
        raise NotReadable(f"{quoted(unit)} is not a unit known here ({', '.join(_UNITS)}){nearest(unit, _UNITS)}")
    value = number(figure) * known[1] * int(times or 1)
    if not value:
        raise NotReadable(f"{quoted(text)} is nothing; write an amount above 0")
    return Measure(value, known[0], clean)


@lru_cache(maxsize=64)
def laydown(text: str) -> Fraction:
    """Read ink per printed area at full cover, such as ``11 ml/m2``, in ml per square metre."""
    match = _LAYDOWN.fullmatch(tidy(text))
    if not match:
        raise NotReadable(f"{quoted(text)} is not an ink laydown; write it like 11 ml/m2")
    return number(match[1])
