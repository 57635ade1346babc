"""Numbers as people write them: ``12``, ``12.5``, ``12,5``, ``3 1/2``, ``3½``."""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

from maker_site.records.problems import NotReadable, quoted

_VULGAR = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
NUMBER = rf"(?:\d+\s+\d+/\d+|\d+/\d+|(?:\d+\s?)?[{_VULGAR}]|\d+(?:[.,]\d+)?|[.,]\d+)"
"""A pattern for an unsigned number, to be built into the patterns of quantities."""
_THOUSANDS = re.compile(r"[1-9]\d{0,2},\d{3}")
_MOST_DIGITS = 30
_LONGEST = 100


def tidy(text: str) -> str:
    """Return the text with single spaces. What no quantity is as long as is refused before any pattern sees it."""
    if len(text) > _LONGEST:
        raise NotReadable(f"{quoted(text[:40])} goes on for {len(text)} characters; one short figure was expected here")
    return " ".join(text.split())


def refuse_thousands(figure: str) -> None:
    """Refuse ``1,200``, which is 1200 in one country and 1.2 in another; ``0,125`` can be read one way only."""
    if _THOUSANDS.fullmatch(figure):
        raise NotReadable(
            f"“{figure}” can be read two ways; write {figure.replace(',', '')} or {figure.replace(',', '.')}"
        )


def number(text: str) -> Fraction:
    """Return the exact value of an unsigned number.

    A comma is a decimal comma, except that ``1,200`` is refused.
    """
    text = tidy(text)
    if len(text) > _MOST_DIGITS:
        raise NotReadable(f"the number “{text[:12]}…” is too long")
    refuse_thousands(text)
    if not re.fullmatch(NUMBER, text):
        raise NotReadable(f"{quoted(text)} is not a number")
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
