"""Amounts of money and percentages."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

from maker_site.records.problems import NotReadable, quoted
from maker_site.records.quantities.numbers import NUMBER, number, refuse_thousands, tidy

_FIGURE = r"\d+(?:[.,]\d+)?|[.,]\d+"
_AMOUNT = re.compile(rf"(?:([A-Za-z]{{3}}|[^\w\s.,-])\s*)?({_FIGURE})(?:\s*([A-Za-z]{{3}}|[^\w\s.,-]))?")
_PERCENT = re.compile(rf"({NUMBER})\s*(?:%|per\s?cent|percent)?", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Amount:
    """Money in the shop's currency unless another is written."""

    value: Decimal
    """Exactly as typed, never a float."""
    currency: str | None = None
    """The code or sign that was written beside it, capital letters; None where none was."""
    typed: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True, order=True)
class Share:
    """A part of a whole: 6.5 % is 0.065."""

    of_one: Fraction
    """0 to 1 for a part; above 1 where more than the whole is meant."""
    typed: str = field(default="", compare=False)


@lru_cache(maxsize=2048)
def amount(text: str) -> Amount:
    """Read ``12.50``, ``12,50``, ``USD 12.50`` or ``£12.50``. A minus sign is refused."""
    clean = tidy(text)
    match = _AMOUNT.fullmatch(clean)
    if not match or (match[1] and match[3]):
        raise NotReadable(f"{quoted(text)} is not an amount of money; write it like 12.50")
    refuse_thousands(match[2])
    sign = match[1] or match[3]
    return Amount(Decimal(match[2].replace(",", ".")), sign.upper() if sign else None, clean)


@lru_cache(maxsize=512)
def share(text: str) -> Share:
    """Read ``6.5 %``; a bare figure is a percentage too."""
    clean = tidy(text)
    match = _PERCENT.fullmatch(clean)
    if not match:
        raise NotReadable(f"{quoted(text)} is not a percentage; write it like 6.5 %")
    return Share(number(match[1]) / 100, clean)
