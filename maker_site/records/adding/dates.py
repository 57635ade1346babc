"""Dates in other forms than the log's. Whether the day or the month comes first is told by the whole column. Pure.

Inner module of the records room.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date
from enum import StrEnum
from typing import Final

from maker_site.records.problems import NotReadable, quoted

_ISO: Final = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})")
_FIGURES: Final = re.compile(r"(\d{1,2})\s?[-/. ]\s?(\d{1,2})\s?[-/. ]\s?(\d{4}|\d{2})\.?")
_DAY_FIRST: Final = re.compile(
    r"(\d{1,2})(?:st|nd|rd|th)?[\s./-]*(?:of\s+)?([a-z]{3,9})[\s.,/-]*(\d{4}|\d{2})", re.IGNORECASE
)
_MONTH_FIRST: Final = re.compile(r"([a-z]{3,9})[\s./-]*(\d{1,2})(?:st|nd|rd|th)?[\s.,/-]+(\d{4}|\d{2})", re.IGNORECASE)
_CLOCK: Final = re.compile(r"[T\s]+\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?\s*(?:am|pm)?$", re.IGNORECASE)
_WEEKDAY: Final = re.compile(r"^(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*[.,]?\s+", re.IGNORECASE)
_MONTHS: Final = (
    "january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november",
    "december",
)  # fmt: skip


class Order(StrEnum):
    """Which of the two small figures is the day."""

    DMY = "dmy"
    MDY = "mdy"


def order_of(texts: Iterable[str]) -> Order | None:
    """Return the order that the column itself proves; None where it proves neither, or both.

    A figure above 12 is a day. A column in which no date changes its meaning is day first.
    """
    pairs = {(int(match[1]), int(match[2])) for text in texts if (match := _FIGURES.fullmatch(_bare(text)))}
    day_first = any(first > 12 for first, _ in pairs)
    month_first = any(second > 12 for _, second in pairs)
    if day_first != month_first:
        return Order.DMY if day_first else Order.MDY
    return Order.DMY if all(first == second for first, second in pairs) else None


def unclear(texts: Iterable[str]) -> str | None:
    """Return the first date that can be read two ways."""
    return next((text for text in texts if _FIGURES.fullmatch(_bare(text))), None)


def any_date(text: str, order: Order | None) -> str:
    """Read a date in one of many forms and return it by ISO 8601; a year of two figures is of this century."""
    bare = _bare(text)
    if match := _ISO.fullmatch(bare):
        return _iso(text, match[1], int(match[2]), int(match[3]))
    if match := _FIGURES.fullmatch(bare):
        first, second = int(match[1]), int(match[2])
        if order is None:
            raise NotReadable(f"{quoted(text)} can be read two ways, day first or month first")
        day, month = (first, second) if order is Order.DMY else (second, first)
        return _iso(text, match[3], month, day)
    if match := _DAY_FIRST.fullmatch(bare):
        return _iso(text, match[3], _month(match[2], text), int(match[1]))
    if match := _MONTH_FIRST.fullmatch(bare):
        return _iso(text, match[3], _month(match[1], text), int(match[2]))
    raise NotReadable(f"{quoted(text)} is not a date; write year-month-day like 2026-04-18")


def _bare(text: str) -> str:
    return _WEEKDAY.sub("", _CLOCK.sub("", " ".join(text.split())))


def _month(name: str, text: str) -> int:
    found = [number for number, month in enumerate(_MONTHS, 1) if month.startswith(name.lower()[:4].rstrip("."))]
    if name.lower() == "sept":
        return 9
    if len(found) != 1 or not _MONTHS[found[0] - 1].startswith(name.lower()):
        raise NotReadable(f"{quoted(text)} names no month known here; write year-month-day like 2026-04-18")
    return found[0]


def _iso(text: str, year: str, month: int, day: int) -> str:
    try:
        return date(int(year) + (2000 if len(year) == 2 else 0), month, day).isoformat()
    except ValueError:
        raise NotReadable(f"{quoted(text)} is not a day of the calendar") from None
