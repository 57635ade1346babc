"""Answers kept ready: every setting that can be found, on disk beside no record of the maker's.

What is kept can be thrown away at any time, which costs time only. It is used while its fingerprint fits; after an
edit only what that concerns is worked out again (`answers_mended`); and all is made again where that can't be, or where
any part that is read does not agree with its checksum. Nothing that is slow to import is imported but for the last.
"""

from __future__ import annotations

import contextlib
import json
import marshal
import sqlite3
import zlib
from array import array
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, TypeVar

from maker_site.workings.finding.index import Span, Vocabulary
from maker_site.workings.finding.matching import Matches, match
from maker_site.writer.answers_kept import MAKE_AGAIN, Kept, NotKept, at_hand, keep, opened, whole
from maker_site.writer.cache_folder import kept_file
from maker_site.writer.fingerprint import Fingerprint, fingerprint, is_alike

if TYPE_CHECKING:  # importing the records room is slow
    from maker_site.records import Problem, Workshop
    from maker_site.workings.finding.query import Term
    from maker_site.writer.answers_overlay import Overlay

T = TypeVar("T")
_AT_ONCE: Final = 500


class RecordsBroken(Exception):
    """The records have errors, so there is nothing to answer from."""

    def __init__(self, problems: Sequence[Problem]) -> None:
        super().__init__(f"{len(problems)} problems")
        self.problems = tuple(problems)


class Answers:
    """What can be asked of the records, read part by part as it is asked."""

    def __init__(self, kept: Kept) -> None:
        self._kept = kept

    @property
    def shop(self) -> Mapping[str, str]:
        """Return how the shop shows temperatures: ``{"temperature": "C"}``."""
        return dict(json.loads(self._kept.part("shop")))

    @property
    def blanks(self) -> Sequence[str]:
        """Return the ids of all blanks, sorted."""
        return list(json.loads(self._kept.part("blanks")))

    @property
    def presses(self) -> Sequence[str]:
        """Return the ids of all presses, sorted."""
        return list(json.loads(self._kept.part("presses")))

    def match(self, terms: Sequence[Term]) -> Matches:
        """Return the rows that say every term; see `matching.match`."""
        if self._overlay is None:
            return match(terms, self._vocabulary, self._postings)
        place, first = self._overlay.place, self._first
        return match(terms, self._vocabulary, self._postings, lambda row: place(row, first), self._overlay.gone)

    def rows(self, numbers: Sequence[int]) -> Iterator[str]:
        """Yield rows, each as the JSON text of its facts, in the order asked for."""
        mended: dict[str, list[Any]] = {}
        for start in range(0, len(numbers), _AT_ONCE):
            some = numbers[start : start + _AT_ONCE]
            marks = ",".join("?" * len(some))
            asked = f"SELECT name, data, sum FROM kept WHERE kind = 'row' AND name IN ({marks})"
            found = {number: whole(data, check) for number, data, check in self._kept.base.execute(asked, some)}
            for number in some:
                if number in found:
                    yield found[number].decode()
                    continue
                if self._overlay is None:
                    raise NotKept
                blank, at, _ = self._overlay.rows[number - self._first]
                if blank not in mended:
                    mended[blank] = marshal.loads(zlib.decompress(self._kept.part("rows", blank)))
                yield mended[blank][at][0]

    def likes(self) -> Mapping[int, str]:
        """Return the blank that a row's setting is taken from, for rows where it is another's."""
        based = {int(number): blank for number, blank in json.loads(self._kept.based("likes")).items()}
        return {**based, **self._overlay.likes} if self._overlay else based

    def starting_points(self, blank: str, press: str | None = None) -> Sequence[Mapping[str, object]]:
        """Return the facts of where to begin with a blank: the first and the runner-up, where there is one.

        On one press they are worked out when asked: there are as many of these as blanks times presses.
        """
        if press is None:
            return list(json.loads(self._kept.part("start", blank)))
        from maker_site.writer.answers_points import points_on

        return points_on(self._kept, blank, press)

    @cached_property
    def _overlay(self) -> Overlay | None:
        """What is otherwise than in the base; None where nothing is."""
        found = self._kept.find("overlay")
        if found is None:
            return None
        from maker_site.writer.answers_overlay import Overlay

        return Overlay(found)

    @cached_property
    def _first(self) -> int:
        """The number of the first row that is not in the base."""
        from maker_site.writer.answers_order import KEY

        return len(self._kept.based("keys")) // KEY.size

    @cached_property
    def _based(self) -> tuple[list[str], list[Span]]:
        words = self._kept.based("words").decode().split("\n")
        return words, [Span(*each) for each in json.loads(self._kept.based("spans"))]

    @cached_property
    def _vocabulary(self) -> Vocabulary:
        """Every word and figure that can be found."""
        return self._overlay.vocabulary(*self._based) if self._overlay else Vocabulary(*self._based)

    def _postings(self, number: int) -> Sequence[int]:
        """Return the rows that say a word or figure of the vocabulary."""
        if self._overlay is None:
            return self._posted(number)
        words, spans = self._based
        return self._overlay.postings(number, len(words), len(spans), self._posted)

    def _posted(self, number: int) -> array[int]:
        found = array("I")
        found.frombytes(self._kept.based("postings", number))
        return found


def ask(content: Path, question: Callable[[Answers], T], cache: Path | None = None) -> T:
    """Return what `question` gives for the answers from a content folder, from what is kept where it fits.

    `question` may be called several times, so it must do nothing but read. `cache` is the folder of kept files, the
    user's own where None. Where nothing can be kept the answers are worked out and forgotten. Raises RecordsBroken.
    """
    now = fingerprint(content)
    base, patch = (kept_file(what, content, cache) for what in ("settings", "settings-since"))
    with contextlib.suppress(*MAKE_AGAIN), contextlib.closing(opened(base, patch, now.program)) as kept:
        if now.is_settled and kept.part("records").decode() == now.records:
            return question(Answers(kept))
        return _after_edits(kept, question, content, now, patch)
    made_now = _made(content, now, cache)
    with contextlib.closing(made_now) as made:
        if is_alike(now, fingerprint(content)):
            keep(made, base, content)
        return question(Answers(Kept(made, None)))


def _after_edits(kept: Kept, question: Callable[[Answers], T], content: Path, now: Fingerprint, file: Path) -> T:
    from maker_site.writer.answers_mended import mended

    parts = mended(kept, content, now)
    if parts is None:
        raise NotKept
    if not parts:
        return question(Answers(kept))
    with contextlib.closing(at_hand(lambda: ((kind, name, data) for (kind, name), data in parts.items()))) as patch:
        answer = question(Answers(Kept(kept.base, patch)))
        keep(patch, file, content)
        return answer


def _made(content: Path, now: Fingerprint, cache: Path | None) -> sqlite3.Connection:
    """Return the answers, worked out from the records."""
    from maker_site.records.uncollected import uncollected
    from maker_site.writer.answers_made import parts_of

    with uncollected():
        workshop = _read(content, cache)
        return at_hand(lambda: parts_of(workshop, content, now))


def _read(content: Path, cache: Path | None) -> Workshop:
    from maker_site.records import load
    from maker_site.writer.shelf import shelved

    with shelved(content, cache) as remembered:
        findings = load(content, remembered)
    if findings.workshop is None:
        raise RecordsBroken(findings.problems)
    return findings.workshop
