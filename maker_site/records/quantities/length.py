"""Lengths, sizes and places on a blank."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from maker_site.records.problems import NotReadable, quoted
from maker_site.records.quantities.numbers import NUMBER, number, tidy

LengthUnit = Literal["mm", "cm", "in"]

MM_PER_INCH = Fraction("25.4")
"""Exact since the agreement of 1959 (NIST SP 811, Appendix B.8)."""

_MM = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": MM_PER_INCH,
    "inch": MM_PER_INCH,
    "inches": MM_PER_INCH,
    '"': MM_PER_INCH,
    "″": MM_PER_INCH,
    "”": MM_PER_INCH,
    "ft": MM_PER_INCH * 12,
    "'": MM_PER_INCH * 12,
    "′": MM_PER_INCH * 12,
}
_UNIT = r"(?a:(mm|cm|m|inches|inch|in|ft|\"|″|”|'|′))"
_LENGTH = re.compile(rf"({NUMBER})\s*{_UNIT}?\.?", re.IGNORECASE)
_TIMES = re.compile(r"\s*(?:x|×|\*|\bby\b)\s*", re.IGNORECASE)
_ROUND = re.compile(r"\b(?:round|diameter|dia\.?)(?=\W|$)|[Øø⌀]", re.IGNORECASE)

PAPER_MM: dict[str, tuple[Fraction, Fraction]] = {
    # ISO 216
    "A2": (Fraction(420), Fraction(594)),
    "A3": (Fraction(297), Fraction(420)),
    "A4": (Fraction(210), Fraction(297)),
    "A5": (Fraction(148), Fraction(210)),
    "A6": (Fraction(105), Fraction(148)),
    # North American, by the PWG 5101.1 media names
    "Letter": (MM_PER_INCH * Fraction("8.5"), MM_PER_INCH * 11),
    "Legal": (MM_PER_INCH * Fraction("8.5"), MM_PER_INCH * 14),
    "Tabloid": (MM_PER_INCH * 11, MM_PER_INCH * 17),
    "13x19": (MM_PER_INCH * 13, MM_PER_INCH * 19),
}
"""Paper by name: width and height in mm, upright."""
_PAPER_BY_FOLDED_NAME = {name.casefold(): sides for name, sides in PAPER_MM.items()}


@dataclass(frozen=True, slots=True, order=True)
class Length:
    """A length, held exactly."""

    mm: Fraction
    typed: str = field(default="", compare=False)

    @property
    def inches(self) -> Fraction:
        """The same in inches."""
        return self.mm / MM_PER_INCH


@dataclass(frozen=True, slots=True)
class Size:
    """Width and height, or the diameter of a round piece in both."""

    width: Length
    height: Length
    round: bool = False
    typed: str = field(default="", compare=False)


def _length(text: str, unit_if_bare: str) -> Length:
    clean = tidy(text)
    match = _LENGTH.fullmatch(clean)
    if not match:
        raise NotReadable(f"{quoted(text)} is not a length; write it like 100 mm or 3 1/2 in")
    return Length(number(match[1]) * _MM[(match[2] or unit_if_bare).lower()], clean)


@lru_cache(maxsize=2048)
def length(text: str, bare: LengthUnit = "mm") -> Length:
    """Read ``3 mm``, ``11 3/4"``, ``3½ in`` or a bare figure in the shop's unit `bare`."""
    return _length(text, bare)


@lru_cache(maxsize=1024)
def size(text: str, bare: LengthUnit = "mm") -> Size:
    """Read ``100 x 100 mm``, ``11 3/4" x 5 7/8"``, ``3 1/2 in round`` or the name of a paper (``A4``)."""
    clean = tidy(text)
    if sides := _PAPER_BY_FOLDED_NAME.get(clean.casefold()):
        return Size(Length(sides[0], clean), Length(sides[1], clean), typed=clean)
    if _ROUND.search(clean):
        across = _positive(_length(_ROUND.sub("", clean).strip(), bare))
        return Size(across, across, round=True, typed=clean)
    parts = _TIMES.split(clean)
    if len(parts) != 2:
        raise NotReadable(f"{quoted(text)} is not a size; write it like 100 x 80 mm, 95 mm round or A4")
    width_text, height_text = parts
    last = _LENGTH.fullmatch(height_text.strip())
    shared = (last[2] if last and last[2] else bare).lower()
    return Size(_positive(_length(width_text, shared)), _positive(_length(height_text, bare)), typed=clean)


def _positive(given: Length) -> Length:
    if not given.mm:
        raise NotReadable("a side must be more than nothing")
    return given


@lru_cache(maxsize=256)
def place(text: str, bare: LengthUnit = "mm") -> tuple[Length, Length]:
    """Read a place such as ``10 x 10 mm``: right from the left edge, down from the upper one."""
    parts = _TIMES.split(tidy(text))
    if len(parts) != 2:
        raise NotReadable(f"{quoted(text)} is not a place; write it like 10 x 10 mm (from the left, from the top)")
    last = _LENGTH.fullmatch(parts[1].strip())
    shared = (last[2] if last and last[2] else bare).lower()
    return _length(parts[0], shared), _length(parts[1], bare)
