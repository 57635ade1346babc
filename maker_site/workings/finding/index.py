"""The index: which words and figures stand in which rows."""

from __future__ import annotations

from array import array
from collections import defaultdict
from collections.abc import Sequence
from enum import IntEnum
from typing import Final

from maker_site.frozen import frozen
from maker_site.workings.finding.folding import words_of

WEIGHT_BITS: Final = 2
WEIGHT_MASK: Final = (1 << WEIGHT_BITS) - 1


class Weight(IntEnum):
    """How near a word is to what the setting is for; breaks ties between equally good matches."""

    DEFECT = 0
    PROJECT = 1
    """Title, id, occasion of what it was used for."""
    MANNER = 2
    """How it is pressed: method, press, face, pressure, figures; from whom the blank is."""
    THING = 3
    """The blank itself: its name, id, code and substrate."""


@frozen
class Span:
    """A figure, or a range of them, in degrees Celsius or seconds."""

    kind: str
    """heat or time."""
    low: float
    high: float


@frozen
class Sayings:
    """What one row says: texts with their weights, and figures."""

    texts: tuple[tuple[str, Weight], ...]
    spans: tuple[Span, ...]


@frozen
class Vocabulary:
    """All distinct words and figures; the number of one is its place among the words, then the figures."""

    words: Sequence[str]
    spans: Sequence[Span]


@frozen
class Index:
    """The vocabulary, and for each of it the rows that say it: row number x 4 + weight, rising."""

    vocabulary: Vocabulary
    postings: Sequence[array[int]]


class Indexing:
    """Makes an index of rows, which are numbered from 0 in the order they come."""

    def __init__(self) -> None:
        self._rows = 0
        self._words: dict[str, array[int]] = defaultdict(lambda: array("I"))
        self._spans: dict[Span, array[int]] = defaultdict(lambda: array("I"))

    def add(self, row: Sayings) -> None:
        """Take in what the next row says."""
        for word, most in words_said(row).items():
            self._words[word].append(self._rows << WEIGHT_BITS | most)
        for span in dict.fromkeys(row.spans):
            self._spans[span].append(self._rows << WEIGHT_BITS | Weight.MANNER)
        self._rows += 1

    def done(self) -> Index:
        """Return the index of all rows that came."""
        return Index(Vocabulary(tuple(self._words), tuple(self._spans)), (*self._words.values(), *self._spans.values()))


def words_said(row: Sayings) -> dict[str, int]:
    """Return each word that a row says, with the most that it weighs there."""
    heaviest: dict[str, int] = {}
    for text, weight in row.texts:
        for word in words_of(text):
            if heaviest.get(word, -1) < weight:
                heaviest[word] = weight
    return heaviest
