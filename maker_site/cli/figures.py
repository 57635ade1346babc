"""Settings in words for the terminal, in both unit systems, without the libraries that the pages' wording needs."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import ceil, floor
from typing import Any

from maker_site.workings.cautions import CLOSING, cautions

Facts = dict[str, Any]
"""A row or a starting point as plain values, by the names of the contract."""


def degrees(celsius: float, unit: str) -> tuple[str, str]:
    """Return a temperature in whole degrees, in the shop's unit and in the other."""
    in_c, in_f = f"{_whole(celsius)} °C", f"{_whole(celsius * 1.8 + 32)} °F"
    return (in_f, in_c) if unit == "F" else (in_c, in_f)


def clock(seconds: float) -> tuple[str, str]:
    """Return a time as m:ss and in seconds, to a tenth of one."""
    tenths = floor(seconds * 10 + 0.5)
    whole, part = divmod(tenths, 10)
    rest = f".{part}" if part else ""
    return f"{whole // 60}:{whole % 60:02d}{rest}", f"{whole}{rest} s"


def both(first: str, second: str) -> str:
    """Return both figures in one line, ``200 °C (392 °F)``."""
    return f"{first} ({second})"


def share(facts: Facts) -> str | None:
    """Return ``83 to 100 %``, the ends rounded outwards so that few pieces never look better than they are."""
    if facts["low"] is None:
        return None
    return f"{floor(round(facts['low'] * 100, 9))} to {ceil(round(facts['high'] * 100, 9))} %"


def hazards(substrates: Iterable[str], over_limit: Sequence[str] = ()) -> str:
    """Return the cautions for some substrates in a few lines, and who has the last word. People can be burnt."""
    found = dict.fromkeys(over_limit)
    for substrate in substrates:  # a cover sheet is nearly always in the stack, and most are PTFE
        found |= dict.fromkeys(each.short for each in cautions(substrate, ptfe=True))
    return f"Cautions: {'. '.join(found)}. {CLOSING}"


def _whole(value: float) -> int:
    return floor(abs(value) + 0.5) * (1 if value >= 0 else -1)
