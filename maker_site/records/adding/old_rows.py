"""A table of old notebook rows, turned into rows of the press log or into the reasons why not. Pure.

Inner module of the records room.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final

from maker_site.frozen import frozen
from maker_site.records.adding.dates import Order, any_date
from maker_site.records.adding.headings import SPOILED, Meaning
from maker_site.records.adding.log_text import HEADING, Cells, table
from maker_site.records.base import like
from maker_site.records.meanings import key_of
from maker_site.records.pressing import Pressing
from maker_site.records.problems import NotReadable, Problem, nearest, quoted
from maker_site.records.quantities import number
from maker_site.records.quantities.numbers import NUMBER
from maker_site.records.read_log import read_log, table_rows
from maker_site.records.shop import Units
from maker_site.records.words import HOTTEST_C

NAMED: Final = {"blank": "blanks", "press": "presses", "project": "projects"}
"""The columns that name a record, and the folder of those records."""

_NOTHING: Final = ("-", "–", "—", "none", "n/a", "na", "nil", "?")
_YES: Final = ("y", "yes", "ok", "okay", "good", "all", "true", "✓", "✔")
_NO: Final = ("n", "no", "none", "bad", "false", "✗", "✘")
_COOLEST_F: Final = 212
"""Water boils; a bare figure below it was meant in C. Common practice, no source."""


@frozen
class OldTable:
    """A spreadsheet's table as text."""

    headings: tuple[str, ...]
    rows: tuple[tuple[int, tuple[str, ...]], ...]
    """Each with its line."""

    def column(self, index: int) -> list[str]:
        """Return the cells of a column that hold something."""
        return [row[index].strip() for _, row in self.rows if index < len(row) and row[index].strip()]


@frozen
class Choices:
    """How the table is to be read."""

    meanings: tuple[Meaning | None, ...]
    """For each column; None leaves it out."""
    order: Order | None
    """Of figures in dates."""
    names: Mapping[str, Mapping[str, str]]
    """For ``blank``, ``press`` and ``project``: their word, folded, and the record's id. An empty word stands for an
    empty cell."""


@frozen
class Refused:
    """A row that can't be taken, and why."""

    line: int
    reasons: tuple[str, ...]


@frozen
class Read:
    """What came of reading the table."""

    rows: tuple[Cells, ...]
    """By the log's columns."""
    pressings: tuple[Pressing, ...]
    """The same rows as they will be read back; the line is that of the table."""
    refused: tuple[Refused, ...]


@dataclass
class _Row:
    cells: dict[str, str] = field(default_factory=dict)
    wrong: set[str] = field(default_factory=set)
    """Columns that are refused already."""
    reasons: list[str] = field(default_factory=list)
    told: bool = False
    """Nothing more is to be said of the row."""


def old_table(text: str) -> OldTable:
    """Return the table of a CSV text. Raises `NotATableError` where its quotes don't add up."""
    (_, headings), *rows = list(table_rows(text)) or [(1, [])]
    while headings and not headings[-1].strip():
        headings.pop()
    return OldTable(tuple(cell.strip() for cell in headings), tuple((line, tuple(row)) for line, row in rows))


def known_names(texts: Sequence[str], ids: Mapping[str, str | None], said: Mapping[str, str]) -> dict[str, str]:
    """Return the record that each word means: as said, or the one of that id or name. Others are left out.

    `ids` are the records by id with their own names, `said` the maker's choices by folded word.
    """
    by_name: dict[str, list[str]] = {}
    for record_id, name in ids.items():
        for word in {folded(record_id), folded(name or record_id)}:
            by_name.setdefault(word, []).append(record_id)
    found = dict(said)
    for text in texts:
        meant = by_name.get(folded(text), [])
        if text in ids:
            found.setdefault(folded(text), text)
        elif len(meant) == 1:
            found.setdefault(folded(text), meant[0])
    return found


def folded(text: str) -> str:
    """Return a name without capitals, hyphens and double spaces."""
    return key_of(text)


def read_old_rows(old: OldTable, choices: Choices, units: Units, ids: Mapping[str, Mapping[str, str | None]]) -> Read:
    """Turn every row into a row of the log, or say all that is wrong with it."""
    rows: list[Cells] = []
    pressings: list[Pressing] = []
    refused: list[Refused] = []
    for line, row in old.rows:
        made = _translated(row, old, choices, units, ids)
        found, problems = _as_written(made.cells, line, units)
        reasons = [*made.reasons, *(_said(each) for each in problems if not made.told and each.field not in made.wrong)]
        if found is None or reasons:
            refused.append(Refused(line, tuple(reasons)))
        else:
            rows.append(made.cells)
            pressings.append(found)
    return Read(tuple(rows), tuple(pressings), tuple(refused))


def _as_written(cells: Cells, line: int, units: Units) -> tuple[Pressing | None, list[Problem]]:
    """Read a row back as the log's reader will; `line` becomes its line."""
    text = "".join(table([HEADING, [cells.get(column, "") for column in HEADING]]))
    found, problems = read_log(text, "", units)
    if not found:
        return None, problems
    return like(found[0], {"id": f":{line}"}), problems


def _said(problem: Problem) -> str:
    return f"{problem.field}: {problem.message}" if problem.field else problem.message


def _translated(
    row: Sequence[str], old: OldTable, choices: Choices, units: Units, ids: Mapping[str, Mapping[str, str | None]]
) -> _Row:
    made = _Row()
    if any(cell.strip() for cell in row[len(old.headings) :]):
        made.reasons.append("the row has more cells than there are headings")
        made.told = True
        return made
    given = [
        (old.headings[index], meant, row[index].strip())
        for index, meant in enumerate(choices.meanings)
        if meant is not None and index < len(row) and row[index].strip()
    ]
    for column in HEADING:
        texts = [(heading, meant, text) for heading, meant, text in given if meant.column == column]
        try:
            if column in NAMED:
                text = _named(column, texts[0][2] if texts else "", choices, ids[column])
            else:
                text = _cell(column, texts, choices, units) if texts else ""
        except NotReadable as refused:
            made.reasons.append(f"{column}: {refused}")
            made.wrong.add(column)
            continue
        if text:
            made.cells[column] = text
    spoiled = next((text for _, meant, text in given if meant.column == SPOILED), None)
    try:
        made.cells |= _counts(made.cells.get("pressed"), made.cells.get("good"), spoiled)
    except NotReadable as refused:
        made.reasons.append(str(refused))
        made.wrong |= {"pressed", "good"}
    return made


def _cell(column: str, texts: Sequence[tuple[str, Meaning, str]], choices: Choices, units: Units) -> str:
    _, meant, text = texts[0]
    if column == "note":
        return "; ".join(
            text if meant.sure or len(texts) == 1 else f"{heading}: {text}" for heading, meant, text in texts
        )
    if text.lower() in _NOTHING and column != "good":
        return ""
    match column:
        case "date":
            return any_date(text, choices.order)
        case "temperature":
            return _temperature(text, meant.unit, units)
        case "time":
            return _time([(each.unit, text) for _, each, text in texts])
        case "pressure":
            return f"{text} {meant.unit}" if meant.unit and _is_number(text) else text
        case "defects":
            return "; ".join(part.strip() for part in re.split(r"[;,/&+\n]", text) if part.strip())
        case "pressed" | "at once":
            return _whole(text)
        case _:
            return text


def _temperature(text: str, unit: str | None, units: Units) -> str:
    if not _is_number(text):
        return text
    if unit:
        return f"{text} {unit}"
    value, usual = number(text), units.temperature
    if usual == "C" and value > HOTTEST_C:
        raise NotReadable(
            f"{quoted(text)} would be {text} C, hotter than anything pressed; say that the column is in F"
        )
    if usual == "F" and value < _COOLEST_F:
        raise NotReadable(f"{quoted(text)} would be {text} F, too cool to press; say that the column is in C")
    return text


def _time(parts: Sequence[tuple[str | None, str]]) -> str:
    if len(parts) > 1:
        by_unit = [(text, unit) for wanted in ("min", "s") for unit, text in parts if unit == wanted]
        text = " ".join(f"{text} {unit}" if _is_number(text) else text for text, unit in by_unit if _amounts(text))
        return text or "0 s"
    ((unit, text),) = parts
    if re.fullmatch(r"\d{1,2}:\d{2}:\d{2}", text) and not text.startswith(("0:", "00:")):
        raise NotReadable(f"{quoted(text)} is hours:minutes:seconds, which no pressing takes; write minutes:seconds")
    return f"{text} {unit}" if unit and _is_number(text) else text


def _amounts(text: str) -> bool:
    return not (_is_number(text) and number(text) == 0)


def _named(column: str, text: str, choices: Choices, ids: Mapping[str, str | None]) -> str:
    said = choices.names.get(column, {})
    if text.lower() in _NOTHING and folded(text) not in said:
        text = ""
    known = said.get(folded(text))
    if known is not None or not text:
        return known or ""
    raise NotReadable(f"there is no {column} {quoted(text)}{nearest(text, words_for(ids))}")


def words_for(ids: Mapping[str, str | None]) -> list[str]:
    """Return the ids and then the names that records are known by."""
    return list(dict.fromkeys([*ids, *(name for name in ids.values() if name)]))


def _counts(pressed: str | None, good: str | None, spoiled: str | None) -> dict[str, str]:
    """Return pressed and good, worked out where the table says them in another way."""
    found: dict[str, str] = {}
    if good and good.lower() in (*_YES, *_NO):
        if pressed is None:
            raise NotReadable(f"good: {quoted(good)} of how many? There is no count pressed")
        return {"good": pressed if good.lower() in _YES else "0"}
    if good:
        found["good"] = _whole(good)
    if spoiled is None:
        return found
    lost = _count(_whole(spoiled), SPOILED)
    if pressed is None and good is not None:
        return found | {"pressed": str(_count(found["good"], "good") + lost)}
    if pressed is not None:
        kept = _count(pressed, "pressed") - lost
        if kept < 0:
            raise NotReadable(f"{lost} spoiled of {pressed} pressed can't be; correct one of the two")
        if good is not None and kept != _count(found["good"], "good"):
            raise NotReadable(f"{good} good and {lost} spoiled don't make {pressed} pressed; correct one of the three")
        found["good"] = str(kept)
    return found


def _count(text: str, what: str) -> int:
    if not re.fullmatch(r"\d{1,9}", text):
        raise NotReadable(f"{what}: {quoted(text)} is not a whole number")
    return int(text)


def _whole(text: str) -> str:
    """Return a count as figures alone where a spreadsheet has written ``4.0``."""
    return re.sub(r"^(\d+)[.,]0+$", r"\1", text)


def _is_number(text: str) -> bool:
    return re.fullmatch(NUMBER, " ".join(text.split())) is not None


def unnamed(old: OldTable, choices: Choices, column: str) -> Iterator[str]:
    """Yield each word of the table that names no record, once, in the table's order."""
    said = choices.names.get(column, {})
    for index, meant in enumerate(choices.meanings):
        if meant is not None and meant.column == column:
            for text in dict.fromkeys(old.column(index)):
                if folded(text) not in said and text.lower() not in _NOTHING:
                    yield text
