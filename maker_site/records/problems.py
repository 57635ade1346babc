"""What is wrong in a maker's file, as a sentence the maker can act on."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import Final


class Severity(StrEnum):
    """How much a problem matters."""

    ERROR = "error"
    """Nothing is made until it is mended."""
    CAUTION = "caution"
    """The site is made; the maker should look at it."""


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One thing wrong in one place of one file."""

    file: str
    """Path from the content folder, with forward slashes."""
    line: int
    """Line counted from 1; 0 where the whole file is meant."""
    field: str
    """The field's name as the maker writes it, nested ones joined by a colon; empty for the whole file."""
    message: str
    """What was read, what was expected, and the nearest right word where there is one."""
    severity: Severity = Severity.ERROR


class NotReadable(ValueError):
    """Text that does not mean what its field needs; the sentence says what was read and what was expected."""


_MOST_OFFERED: Final = 3
_LONGEST_WORD: Final = 80
"""A longer text is no slip of the pen for a known word, and slow to compare."""


def quoted(text: str) -> str:
    """Return what the maker wrote in quotation marks, in one line, cut short where it is long."""
    line = " ".join(text[: _LONGEST_WORD * 10].split())
    shown = line if len(line) <= _LONGEST_WORD else f"{line[:_LONGEST_WORD]}…"
    return "“" + "".join(each if each.isprintable() else "\N{REPLACEMENT CHARACTER}" for each in shown) + "”"


def nearest(word: str, known: Iterable[str]) -> str:
    """Return ``; did you mean "…"?`` for the known words nearest to `word`, or an empty string where none is near."""
    if len(word) > _LONGEST_WORD:
        return ""
    folded = {each.casefold(): each for each in known}
    letters = sorted(word.casefold())
    swapped = [each for each in folded if sorted(each) == letters]  # gpb is gbp before it is pab
    longer = [each for each in folded if word.casefold() in re.split(r"[\s_-]+", each)]  # paper: transfer paper
    near = difflib.get_close_matches(word.casefold(), folded, n=1, cutoff=0.6)
    matches = swapped[:1] or (longer if len(longer) <= _MOST_OFFERED else []) or near
    return f"; did you mean {listed(quoted(folded[each]) for each in matches)}?" if matches else ""


def listed(words: Iterable[str]) -> str:
    """Return the words as ``a, b or c``."""
    *most, last = words
    return f"{', '.join(most)} or {last}" if most else last
