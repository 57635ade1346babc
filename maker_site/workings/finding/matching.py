"""Which rows answer a query, the best match first."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Container, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final

from maker_site.workings.finding.folding import parts_of
from maker_site.workings.finding.index import WEIGHT_BITS, WEIGHT_MASK, Span, Vocabulary
from maker_site.workings.finding.query import Term

Postings = Callable[[int], Sequence[int]]
"""Gives the rows that say the word or figure of that number, as in `Index.postings`."""

_EXACT, _BEGINS, _WITHIN, _MISSPELT = 8, 6, 4, 1
"""How much a match counts for, above any weight."""
_BEGINNING, _INSIDE = 2, 3
"""The fewest letters that are looked for at the beginning of words, and inside them."""
_ROUNDING: Final = 0.5
"""Figures are shown as whole degrees and seconds, so half of one apart is the same."""
_A_DEGREE: Final = 1.1
"""In kelvin: 400 F is 204.4 C, which some set as 204 and some as 205."""
_LIKE, _NEAREST = 0.75, 0.4
"""Of 1, by difflib: as like as a slip of the keys; near enough to be offered."""
_TIE: Final = 0.05
_OFFERED: Final = 3
_SHORTEST_SLIP, _SHORT, _LONGEST_SLIP = 3, 5, 40


@dataclass(frozen=True, slots=True)
class Matches:
    """What came of looking."""

    rows: tuple[int, ...]
    """Row numbers: the best match first, then the order of the rows themselves."""
    read_as: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Misspelt words and what they were taken for."""
    unknown: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Words that stand nowhere, and the nearest ones that do; where there are any, no row matches."""


def match(
    terms: Sequence[Term],
    vocabulary: Vocabulary,
    postings: Postings,
    rank: Callable[[int], tuple[Any, ...]] | None = None,
    gone: Container[int] = (),
) -> Matches:
    """Return the rows that say every term, however loosely it is spelt. `rank` gives the order of the rows where it is
    not that of their numbers; `gone` are numbers in the postings that are no rows any more.

    A row counts, for each term, its best: said exactly before beginning with it before holding it before a likely
    misspelling; of equals, said of the blank before said of a project or a defect. Equal sums stay in row order. Every
    word and figure of the vocabulary is said by a row that is not gone.
    """
    read_as: dict[str, tuple[str, ...]] = {}
    unknown: dict[str, tuple[str, ...]] = {}
    found: list[dict[int, int]] = []
    for term, hits in _hits(terms, vocabulary):
        if not hits:
            unknown[term.typed] = _nearest(term.typed, vocabulary.words)
            continue
        if all(worth <= _MISSPELT for worth in hits.values()):
            read_as[term.typed] = tuple(vocabulary.words[number] for number in hits)
        found.append(_rows(hits, postings))
    if unknown or not found:
        return Matches((), read_as, unknown)
    found.sort(key=len)
    sums = found[0]
    for more in found[1:]:
        sums = {row: worth + more[row] for row, worth in sums.items() if row in more}
    rows = (row for row in sums if row not in gone) if gone else sums
    if rank is None:
        return Matches(tuple(sorted(rows, key=lambda row: (-sums[row], row))), read_as)
    return Matches(tuple(sorted(rows, key=lambda row: (-sums[row], *rank(row)))), read_as)


def _hits(terms: Sequence[Term], vocabulary: Vocabulary) -> Iterator[tuple[Term, Mapping[int, int]]]:
    """Yield each term with the numbers of what it may mean and how much each counts; taken to parts where need be."""
    for term in terms:
        hits = {**_words_like(term.word, vocabulary.words), **_figures_like(term, vocabulary)}
        parts = tuple(dict.fromkeys(parts_of(term.word))) if term.word and not hits else ()
        if len(parts) > 1:
            yield from _hits([Term(part, part) for part in parts], vocabulary)
        elif hits or term.word is None:
            yield term, hits
        else:
            yield term, dict.fromkeys(_misspelt(term.word, vocabulary.words), _MISSPELT)


def _words_like(word: str | None, words: Sequence[str]) -> dict[int, int]:
    if not word:
        return {}
    found = {}
    for number, known in enumerate(words):
        if word not in known:
            continue
        if word == known:
            found[number] = _EXACT
        elif word.isdecimal():  # 11 is in 11oz, but 20 is not in 200
            if known.startswith(word) and not known[len(word)].isdecimal():
                found[number] = _BEGINS
        elif known.startswith(word):
            if len(word) >= _BEGINNING:
                found[number] = _BEGINS
        elif len(word) >= _INSIDE or not word.isascii():
            found[number] = _WITHIN
    return found


def _figures_like(term: Term, vocabulary: Vocabulary) -> dict[int, int]:
    found = {}
    for number, span in enumerate(vocabulary.spans, len(vocabulary.words)):
        worth = _worth(span, term)
        if worth:
            found[number] = worth
    return found


def _worth(span: Span, term: Term) -> int:
    asked = term.celsius if span.kind == "heat" else (term.seconds,) if term.seconds is not None else ()
    best = 0
    for value in asked:
        apart = max(span.low - value, value - span.high, 0.0)
        if apart <= _ROUNDING:
            best = max(best, _EXACT if span.low == span.high else _BEGINS)
        elif span.kind == "heat" and apart <= _A_DEGREE:
            best = max(best, _WITHIN)
    return best


def _misspelt(word: str, words: Sequence[str]) -> list[int]:
    """Return the numbers of the words that `word` is likely a slip of the keys for."""
    if not _SHORTEST_SLIP <= len(word) <= _LONGEST_SLIP or not word.isalpha():
        return []
    near = {known: number for number, known in enumerate(words) if _could_be(word, known)}
    if len(word) <= _SHORT:  # difflib counts a swapped pair as two slips, too many of few letters
        letters = sorted(word)
        swapped = [number for known, number in sorted(near.items()) if sorted(known) == letters]
        if swapped:
            return swapped
    close = difflib.get_close_matches(word, near, n=_OFFERED, cutoff=_LIKE)
    best = [_likeness(word, known) for known in close]
    return [near[known] for known, like in zip(close, best, strict=True) if like >= best[0] - _TIE]


def _could_be(word: str, known: str) -> bool:
    """Tell, cheaply, whether a word is worth comparing; most are not."""
    slack = 1 + len(word) // 4
    return abs(len(known) - len(word)) <= slack and known.isalpha() and len(set(word) ^ set(known)) <= 2 * slack


def _likeness(word: str, known: str) -> float:
    return difflib.SequenceMatcher(a=known, b=word).ratio()


def _nearest(word: str, words: Sequence[str]) -> tuple[str, ...]:
    if len(word) > _LONGEST_SLIP:
        return ()
    near = [known for known in words if known.isalpha() and abs(len(known) - len(word)) <= len(word) // 2]
    return tuple(difflib.get_close_matches(word, near, n=_OFFERED, cutoff=_NEAREST))


def _rows(hits: Mapping[int, int], postings: Postings) -> dict[int, int]:
    """Return each row that says any of the hits, with the most that one counts for."""
    found: dict[int, int] = {}
    for number, worth in sorted(hits.items(), key=lambda each: each[1]):  # the best comes last and stays
        base = worth << WEIGHT_BITS
        if found:
            for said in postings(number):
                row, most = said >> WEIGHT_BITS, base | said & WEIGHT_MASK
                if found.get(row, 0) < most:
                    found[row] = most
        else:
            found = {said >> WEIGHT_BITS: base | said & WEIGHT_MASK for said in postings(number)}
    return found
