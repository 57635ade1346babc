"""What goes over the index of the base: rows that are gone, rows that came, and the words that nobody says any more.

Rows that came are numbered on from those of the base, and a blank whose rows are worked out again gets new numbers: so
an edit adds to what is there and puts nothing together anew.
"""

from __future__ import annotations

import json
import marshal
from array import array
from bisect import bisect_left
from collections.abc import Callable, Sequence
from functools import cached_property
from typing import Any, Final, TypeAlias, cast

from maker_site.workings.finding.index import WEIGHT_BITS, Span, Vocabulary, Weight
from maker_site.writer.answers_kept import Kept
from maker_site.writer.answers_order import KEY

Came: TypeAlias = "tuple[str, str | None, tuple[Any, ...], dict[str, int], list[tuple[str, float, float]]]"
"""A row: its facts as JSON, the blank that it is like, its place, its words with their weights, its figures."""
_NEVER: Final = Span("time", float("inf"), float("inf"))
"""A figure that nobody asks for, in the place of one that no row says any more."""


class Overlay:
    """As it is kept, and added to."""

    def __init__(self, data: bytes | None = None) -> None:
        held: dict[str, Any] = marshal.loads(data) if data else {}
        self._gone: bytes = held.get("gone", b"")
        self.rows: list[tuple[str, int, tuple[Any, ...]]] = held.get("rows", [])
        """Of each that came: its blank, which it is there, its place among all."""
        self._of: dict[str, tuple[int, int]] = held.get("of", {})
        """The first and the number of rows of each blank that was worked out again."""
        self._posted: dict[int | str | tuple[str, float, float], bytes] = held.get("posted", {})
        """Rows that say a word or figure, by its number in the base, or itself where it is new."""
        self._new: list[str | tuple[str, float, float]] = held.get("new", [])
        """Words and figures that are not in the base."""
        self._less: dict[int, int] = held.get("less", {})
        """How many rows fewer say a word or figure of the base."""
        self._alive: dict[Any, int] = held.get("alive", {})
        """How many rows that came, and are not gone again, say a word or figure."""
        self._dead: set[Any] = held.get("dead", set())
        self.likes: dict[int, str] = held.get("likes", {})

    def __bytes__(self) -> bytes:
        """Return it as it is kept."""
        held = {
            "gone": self._gone,
            "rows": self.rows,
            "of": self._of,
            "posted": self._posted,
            "new": self._new,
            "less": self._less,
            "alive": self._alive,
            "dead": self._dead,
            "likes": self.likes,
        }
        return marshal.dumps(held)

    @property
    def blanks(self) -> Sequence[str]:
        """The blanks that were worked out again."""
        return list(self._of)

    @cached_property
    def gone(self) -> frozenset[int]:
        """The numbers that are no rows any more."""
        found = array("I")
        found.frombytes(self._gone)
        return frozenset(found)

    def place(self, row: int, first: int) -> tuple[Any, ...]:
        """Return where a row stands among all; those that came are numbered from `first`."""
        return (row,) if row < first else (*self.rows[row - first][2], row)

    def vocabulary(self, words: Sequence[str], spans: Sequence[Span]) -> Vocabulary:
        """Return the words and figures of the base with these. One that no row says is empty: nothing is like it."""
        all_words, all_spans = [*words, *self._new_words], [*spans, *(Span(*each) for each in self._new_spans)]
        for number in self._dead:
            if isinstance(number, int) and number < len(words):
                all_words[number] = ""
            elif isinstance(number, int):
                all_spans[number - len(words)] = _NEVER
        return Vocabulary(all_words, all_spans)

    def postings(self, number: int, words: int, spans: int, based: Callable[[int], array[int]]) -> Sequence[int]:
        """Return the rows that say a word or figure of that vocabulary; `words` and `spans` are counted in the base."""
        new = len(self._new_words)
        found = array("I")
        if words <= number < words + new:
            found.frombytes(self._posted[self._new_words[number - words]])
        elif number >= words + new + spans:
            found.frombytes(self._posted[self._new_spans[number - words - new - spans]])
        else:
            at = number if number < words else number - new
            found = based(at)
            found.frombytes(self._posted.get(at, b""))
        return found

    @cached_property
    def _new_words(self) -> list[str]:
        return [each for each in self._new if isinstance(each, str) and each not in self._dead]

    @cached_property
    def _new_spans(self) -> list[tuple[str, float, float]]:
        return [each for each in self._new if not isinstance(each, str) and each not in self._dead]


class Laying:
    """Puts rows on an overlay."""

    def __init__(self, kept: Kept, overlay: Overlay) -> None:
        self._kept, self.overlay = kept, overlay
        words = kept.based("words").decode().split("\n")
        self._numbers: dict[Any, int] = {word: number for number, word in enumerate(words)}
        spans = enumerate(json.loads(kept.based("spans")), len(words))
        self._numbers |= {tuple(span): number for number, span in spans}
        self._totals = array("I")
        self._totals.frombytes(kept.based("totals"))
        self._first = len(kept.based("keys")) // KEY.size

    def put(self, blank: str, before: Sequence[Came], now: Sequence[Came]) -> None:
        """Put the rows of a blank in the place of those it had; `before` are those that lie there already."""
        on = self.overlay
        concerned: set[Any] = set()
        if blank in on._of:
            first, count = on._of[blank]
            on._gone += array("I", range(first, first + count)).tobytes()
            for row in before:
                for key in self._keys(row):
                    on._alive[key] -= 1
                    concerned.add(key)
        else:
            concerned |= self._mask(blank)
        on._of[blank] = (self._first + len(on.rows), len(now))
        for at, row in enumerate(now):
            number = self._first + len(on.rows)
            on.rows.append((blank, at, row[2]))
            if row[1]:
                on.likes[number] = row[1]
            for key, weight in self._keys(row).items():
                if not isinstance(key, int) and key not in on._posted:
                    on._new.append(key)
                on._posted[key] = on._posted.get(key, b"") + array("I", [number << WEIGHT_BITS | weight]).tobytes()
                on._alive[key] = on._alive.get(key, 0) + 1
                concerned.add(key)
        for key in concerned:
            left = self._totals[key] - on._less.get(key, 0) if isinstance(key, int) else 0
            if left + on._alive.get(key, 0):
                on._dead.discard(key)
            else:
                on._dead.add(key)

    def _keys(self, row: Came) -> dict[Any, int]:
        """Return the words and figures of a row, by number in the base where they are there, with their weights."""
        said = {self._numbers.get(word, word): weight for word, weight in row[3].items()}
        return said | {self._numbers.get(span, span): int(Weight.MANNER) for span in map(tuple, row[4])}

    def _mask(self, blank: str) -> set[int]:
        """Take away the rows of a blank in the base; return the words and figures that they say."""
        held = self._kept.find("said", blank)
        if held is None:
            return set()  # a new blank
        rows, said, counts = marshal.loads(held)
        self.overlay._gone += rows
        numbers, fewer = array("I"), array("I")
        numbers.frombytes(said)
        fewer.frombytes(counts)
        for number, count in zip(numbers, fewer, strict=True):
            self.overlay._less[number] = self.overlay._less.get(number, 0) + count
        return {*numbers}


class Order:
    """The orders of the rows of the base, unpacked one by one."""

    def __init__(self, kept: Kept) -> None:
        self._data = kept.based("keys")
        self._blanks: list[str] = json.loads(kept.based("blanks"))

    def __len__(self) -> int:
        return len(self._data) // KEY.size

    def __getitem__(self, at: int) -> tuple[object, ...]:
        if at >= len(self):
            raise IndexError(at)
        *key, blank = KEY.unpack_from(self._data, at * KEY.size)
        return (*key, self._blanks[blank])

    def place(self, order: tuple[object, ...]) -> tuple[object, ...]:
        """Return the place of another row among these: between the numbers of two, then by its own order."""
        return (bisect_left(cast("Sequence[Any]", self), order) - 0.5, *order)
