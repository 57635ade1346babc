"""Pressure: the press's word, its own mark, or a gauge's figure."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from maker_site.language import marked
from maker_site.records.problems import NotReadable, nearest, quoted
from maker_site.records.quantities.numbers import NUMBER, number, tidy

PressureUnit = Literal["bar", "psi", "kPa"]

KPA_PER_PSI = Fraction("0.45359237") * Fraction("9.80665") / (Fraction("0.0254") ** 2) / 1000
"""From the exact pound, standard gravity and inch: 6.894757293… (NIST SP 811, Appendix B.8)."""
_KPA = {"bar": Fraction(100), "psi": KPA_PER_PSI, "kpa": Fraction(1), "mpa": Fraction(1000)}
WORDS = (marked("light"), marked("medium"), marked("firm"), marked("heavy"))
"""The words for pressure, lightest first; what they mean belongs to one press."""

_GAUGE = re.compile(rf"({NUMBER})\s*(?a:(bar|psi|kpa|mpa))?", re.IGNORECASE)
_WORD = re.compile(rf"({'|'.join(WORDS)})(?:\s+pressure)?\b[\s,;:]*(.*)", re.IGNORECASE)
_MARK = re.compile(
    r"\(?\s*((?:mark|gauge|dial|setting|no)(?![a-z])\.?\s*.+?|.+?\s*turns?|\d[\d.,]*)\s*\)?", re.IGNORECASE
)


@dataclass(frozen=True, slots=True)
class Pressure:
    """How hard the press closes. At least one of the three is there."""

    word: str | None
    """light, medium, firm or heavy: no common scale."""
    kpa: Fraction | None
    """A gauge's figure in kilopascals."""
    mark: str | None
    """The press's own mark or turn count, as written."""
    typed: str = field(default="", compare=False)


@lru_cache(maxsize=512)
def pressure(text: str, bare: PressureUnit = "bar") -> Pressure:
    """Read ``medium``, ``40 psi``, ``2.8 bar``, ``medium (mark 5)``, ``firm, 3 turns`` or a bare figure in `bare`."""
    clean = tidy(text)
    word, rest = None, clean
    if match := _WORD.fullmatch(clean):
        word, rest = match[1].lower(), match[2].strip()
    if not rest:
        if word is None:
            raise NotReadable("the pressure is empty; write light, medium, firm or heavy, or a figure like 2.8 bar")
        return Pressure(word, None, None, clean)
    gauge = _GAUGE.fullmatch(rest.strip("() "))
    if gauge and (gauge[2] or word is None):
        return Pressure(word, number(gauge[1]) * _KPA[(gauge[2] or bare).lower()], None, clean)
    if mark := _MARK.fullmatch(rest):
        return Pressure(word, None, mark[1].strip(), clean)
    raise NotReadable(
        f"{quoted(text)} is not a pressure; write light, medium, firm or heavy, or a figure like 2.8 bar or 40 psi"
        f"{nearest(clean, WORDS)}"
    )
