"""Numbers as people write them: ``12``, ``12.5``, ``12,5``, ``3 1/2``, ``3½``."""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

from maker_site.records.problems import NotReadable

_VULGAR = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
NUMBER = rf"(?:\d+\s+\d+/\d+|\d+/\d+|\d*[{_VULGAR}]|\d+(?:[.,]\d+)?|[.,]\d+)"
"""A pattern for an unsigned number, to be built into the patterns of quantities."""
_MOST_DIGITS = 30


def number(text: str) -> Fraction:
    """Return the exact value of an unsigned number.

    A comma is a decimal comma. ``1,200`` is refused, since it is read as 1200 in one country and as 1.2 in another.
    """
    text = text.strip()
    if len(text) > _MOST_DIGITS:
        raise NotReadable(f"the number “{text[:12]}…” is too long")
    if re.fullmatch(r"\d{1,3},\d{3}", text):
        raise NotReadable(
            f"“{text}” can be read two ways; write {text.replace(',', '')} or {text.replace(',', '.')}"
        )
    if not re.fullmatch(NUMBER, text):
        raise NotReadable(f"“{text}” is not a number")
    if text[-1] in _VULGAR:
        whole = text[:-1].strip()
        part = unicodedata.numeric(text[-1])
        return Fraction(whole or 0) + Fraction(part).limit_denominator(10)
    try:
        return sum((Fraction(part) for part in text.replace(",", ".").split()), Fraction(0))
    except ZeroDivisionError:
        raise NotReadable(f"“{text}” divides by nothing") from None


def plain(value: Fraction, places: int = 3) -> str:
    """Return `value` rounded half away from zero to at most `places` decimals, without trailing noughts."""
    scaled = abs(value) * 10**places
    whole = int(scaled + Fraction(1, 2))
    sign = "-" if value < 0 and whole else ""
    if not places:
        return f"{sign}{whole}"
    digits = f"{whole:0{places + 1}d}"
    return f"{sign}{digits[:-places]}.{digits[-places:]}".rstrip("0").rstrip(".")
