"""Whose heading means what: other people's words for the columns of the press log. Pure.

The table of words is this project's own, from how makers speak of the work; a guess is shown before it is used.
Inner module of the records room.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from maker_site.frozen import frozen
from maker_site.records.adding.log_text import HEADING
from maker_site.records.meanings import key_of
from maker_site.records.problems import NotReadable, nearest, quoted

SPOILED: Final = "spoiled"
"""Not a column of the log: the count that did not come out, which gives the good ones."""
TARGETS: Final = (*HEADING, SPOILED)

_WORDS: Final[dict[str, str]] = {
    "date": "when, day, on, made, made on, done on, pressed on, press date",
    "project": "job, design, title, order, made for, what for",
    "blank": "material, item, substrate, product, blank name, item name, blank used, what, on what, object",
    "lot": "batch, batch no, lot no, lot number, batch number, delivery",
    "press": "machine, heat press, press used, which press, equipment, on which press",
    "method": "process, technique, print method",
    "temperature": "temp, heat, set temp, dial, degrees, press temp, temp set, temperature set, deg",
    "time": "dwell, duration, press time, pressing time, dwell time, how long, timer, t",
    "pressure": "force, squeeze, press pressure, clamp",
    "face": "orientation, way up, facing, which way, print face, face up or down",
    "pre-press": "prepress, pre press time",
    "stack": "layers, sandwich, build up, lay up",
    "at once": "together, per load, per pressing, pieces at once",
    "peel": "peeled, peel type",
    "cool": "cooling, cooled, cool down, cooled how",
    "pressed": "qty, quantity, count, number, pieces, total, pcs, how many, made qty, tried, number pressed, "
    "no pressed, units, pressings",
    "good": "ok, okay, passed, pass, came out, came out good, fine, usable, good ones, no good ones, number good, "
    "successes, qty good, qty ok, sellable",
    "defects": "defect, fault, faults, problem, problems, issue, issues, what went wrong, went wrong, trouble",
    "note": "notes, comment, comments, remark, remarks, memo, what happened, observations, thoughts",
    "photo": "picture, image, photo file, pic",
    SPOILED: "bad, failed, fails, rejects, rejected, scrap, scrapped, waste, ruined, no bad, qty bad, lost",
}
_BY_WORD: Final = {word: column for column, words in _WORDS.items() for word in words.split(", ")}
_EXACT: Final = {key_of(column).replace("-", " "): column for column in TARGETS}

_UNITS: Final[dict[str, dict[str, str]]] = {
    "temperature": {
        "C": "c °c ºc degc celsius centigrade",
        "F": "f °f ºf degf fahrenheit",
    },
    "time": {"s": "s sec secs second seconds", "min": "m min mins minute minutes"},
    "pressure": {"bar": "bar bars", "psi": "psi", "kPa": "kpa"},
}
_UNIT_BY_WORD: Final = {
    word: (column, unit) for column, units in _UNITS.items() for unit, words in units.items() for word in words.split()
}
_FILLERS: Final = {"in", "of", "the", "a", "deg", "degrees", "°", "º"}


@frozen
class Meaning:
    """What a column of another table holds."""

    column: str
    """A column of the log, or `SPOILED`."""
    unit: str | None = None
    """What its bare numbers are in, where the heading says so."""
    sure: bool = False
    """The heading is the log's own word."""

    def __str__(self) -> str:
        return f"{self.column} {self.unit}" if self.unit else self.column


def guess(heading: str) -> Meaning | None:
    """Return what a heading seems to mean, or None where nothing is known of it."""
    if exact := _EXACT.get(_folded(heading)):
        return Meaning(exact, sure=True)
    words = re.findall(r"[^\W_]+|[°º][cf]?", heading.lower())
    units = [_UNIT_BY_WORD[word] for word in words if word in _UNIT_BY_WORD]
    if whole := _known(words):
        return Meaning(whole)
    for column, unit in units:
        rest = [word for word in words if _UNIT_BY_WORD.get(word) != (column, unit)]
        named = _known(rest) or _known([word for word in rest if word not in _FILLERS])
        if named == column or not [word for word in rest if word not in _FILLERS]:
            sure = _EXACT.get(" ".join(rest)) == column
            return Meaning(column, unit, sure)
    return None


def meaning(text: str) -> Meaning | None:
    """Read what a maker says a heading means: a column, with a unit where it has one; ``-`` leaves it out."""
    clean = " ".join(text.split())
    if clean in ("", "-"):
        return None
    *first, last = clean.split(" ")
    for name, unit in ((clean, None), (" ".join(first), last)):
        column = _EXACT.get(_folded(name))
        if column and unit is None:
            return Meaning(column, sure=True)
        if column and unit and _UNIT_BY_WORD.get(unit.lower(), ("",))[0] == column:
            return Meaning(column, _UNIT_BY_WORD[unit.lower()][1], sure=True)
    raise NotReadable(
        f"{quoted(text)} is not a column of the press log{nearest(clean, TARGETS)}; known are {', '.join(TARGETS)}, "
        "and a unit may follow, as in temperature F, time min or pressure psi"
    )


def clashes(meanings: Sequence[Meaning | None]) -> list[str]:
    """Return the columns that more than one heading means; notes are put together, minutes and seconds too."""
    twice: list[str] = []
    for column in TARGETS:
        found = [each for each in meanings if each and each.column == column]
        parts = column == "time" and sorted(str(each.unit) for each in found) == ["min", "s"]
        if len(found) > 1 and column != "note" and not parts:
            twice.append(column)
    return twice


def settled(meanings: Sequence[Meaning | None]) -> list[Meaning | None]:
    """Return the meanings with a guess left out where a heading with the log's own word is there too."""
    certain = {each.column for each in meanings if each and each.sure} - {"note", "time"}
    return [each if not each or each.sure or each.column not in certain else None for each in meanings]


def _known(words: Sequence[str]) -> str | None:
    text = " ".join(words)
    return _BY_WORD.get(text) or _EXACT.get(text)


def _folded(heading: str) -> str:
    return key_of(heading).replace("-", " ")
