"""Times under heat, and minutes of work."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from maker_site.records.problems import NotReadable, quoted
from maker_site.records.quantities.numbers import NUMBER, number, tidy

TimeUnit = Literal["s", "min"]

_CLOCK = re.compile(r"(?:(\d{1,3}):)?(\d{1,3}):(\d{2})(?:\s*(?:min|m))?", re.IGNORECASE)
_PARTS = re.compile(
    rf"(?:({NUMBER})\s*(?:h|hrs?|hours?)\b\.?)?\s*"
    rf"(?:({NUMBER})\s*(?:m|mins?|minutes?|'|′)\.?)?\s*"
    rf"(?:({NUMBER})\s*(?:s|secs?|seconds?|\"|″)\.?)?",
    re.IGNORECASE,
)
_BARE = re.compile(NUMBER)
_ONE_UNIT = re.compile(rf"{NUMBER}(\D+)")
_RANGE = re.compile(r"(.+?)\s*(?:\bto\b|-|–|—)\s*(.+)", re.IGNORECASE)
_MINUTE, _HOUR = 60, 3600


@dataclass(frozen=True, slots=True, order=True)
class Duration:
    """A length of time, held exactly."""

    seconds: Fraction
    typed: str = field(default="", compare=False)
    """As the maker wrote it."""

    @property
    def minutes(self) -> Fraction:
        """The same in minutes."""
        return self.seconds / _MINUTE


@dataclass(frozen=True, slots=True)
class DurationRange:
    """From `low` to `high`, which are the same where one figure was written."""

    low: Duration
    high: Duration
    typed: str = field(default="", compare=False)


@lru_cache(maxsize=4096)
def duration(text: str, bare: TimeUnit = "s") -> Duration:
    """Read ``2:30`` (minutes:seconds), ``150 s``, ``2 min 30 s``, ``1:10:00`` or a bare figure in the unit `bare`."""
    clean = tidy(text)
    if clock := _CLOCK.fullmatch(clean):
        hours, minutes, seconds = (int(part or 0) for part in clock.groups())
        if seconds >= _MINUTE or (clock[1] and minutes >= _MINUTE):
            raise NotReadable(f"“{clean}” has more than 59 seconds or minutes after the colon")
        return Duration(Fraction(hours * _HOUR + minutes * _MINUTE + seconds), clean)
    if _BARE.fullmatch(clean):
        return Duration(number(clean) * (_MINUTE if bare == "min" else 1), clean)
    parts = _PARTS.fullmatch(clean)
    if not parts or not any(parts.groups()):
        raise NotReadable(f"{quoted(text)} is not a time; write it like 150 s, 2:30 or 2 min 30 s")
    weights = (_HOUR, _MINUTE, 1)
    total = sum(
        (number(part) * weight for part, weight in zip(parts.groups(), weights, strict=True) if part),
        Fraction(0),
    )
    return Duration(total, clean)


@lru_cache(maxsize=1024)
def duration_range(text: str, bare: TimeUnit = "s") -> DurationRange:
    """Read ``60 to 75 s``, or one time as a range of itself."""
    clean = tidy(text)
    match = _RANGE.fullmatch(clean)
    if not match:
        one = duration(text, bare)
        return DurationRange(one, one, clean)
    low_text, high_text = match.groups()
    high = duration(high_text, bare)
    if _BARE.fullmatch(low_text) and not _BARE.fullmatch(high_text):
        shared = _ONE_UNIT.fullmatch(high_text)
        if not shared:
            raise NotReadable(f"{quoted(text)} can be read two ways; write both times in full, like 2 min to 3:30")
        low_text += shared[1]  # "60 to 75 s": the unit stands once, at the end
    low = duration(low_text, bare)
    if low > high:
        raise NotReadable(f"{quoted(text)} runs downwards; write the shorter time first")
    return DurationRange(low, high, clean)
