"""The press log's rows out of a spreadsheet's text: commas, semicolons or tabs, columns in any order.

Inner module of the records room.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from typing import Final

from pydantic import ValidationError

from maker_site.records.base import OneLine, Origin, like
from maker_site.records.meanings import key_of
from maker_site.records.pressing import Pressing
from maker_site.records.problems import Problem, nearest, quoted
from maker_site.records.read_record import problems_of
from maker_site.records.remembered import Forgetful, Remembered
from maker_site.records.shop import Units

COLUMNS: Final = tuple(
    {"pre_press": "pre-press"}.get(name, name.replace("_", " ")) for name in Pressing.model_fields if name != "id"
)
"""The log's columns as their headings are written."""
_KEYS: Final = {key_of(column): column for column in COLUMNS}
_FIELDS: Final = {key: key.replace(" ", "_") for key in _KEYS}
"""The field that each column is read into."""
NEEDED: Final = tuple(
    column for column in COLUMNS if Pressing.model_fields[key_of(column).replace(" ", "_")].is_required()
)


def read_log(
    text: str, file: str, units: Units, remembered: Remembered | None = None
) -> tuple[list[Pressing], list[Problem]]:
    """Return the pressings of one file, oldest line first, and every problem in it; see `load` for `remembered`."""
    memory, said = remembered or Forgetful(), repr(units)
    pressings: list[Pressing] = []
    problems: list[Problem] = []
    keys: list[str] | None = None
    shared = _Shared()
    try:
        for line, row in table_rows(text):
            if keys is None:
                keys, problems = _headings(row, file, line)
                if problems:
                    break
                continue
            row_id = f"{file}:{line}"
            read = partial(_pressing, row, keys, Origin(file, OneLine(line)), row_id, units, shared)
            pressing, found = memory.value(row_id, (row, keys, said), read)
            problems += found
            if pressing is not None:
                pressings.append(pressing)
    except NotATableError as error:
        problems.append(Problem(file, error.line, "", f"the row can't be read as part of a table: {error}"))
    return pressings, problems


class NotATableError(ValueError):
    """A row's quotes don't add up."""

    def __init__(self, line: int, reason: str) -> None:
        super().__init__(f"{reason}; look for a quotation mark that is not closed, and double one inside a cell")
        self.line = line


def delimiter_of(text: str) -> str:
    """Return what parts the cells of a table's heading: a comma, a semicolon or a tab."""
    heading = text.lstrip().partition("\n")[0]
    return max(",;\t", key=heading.count)


def table_rows(text: str) -> Iterator[tuple[int, list[str]]]:
    """Yield each row that is not empty with the line it begins in; raises `NotATableError`."""
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter_of(text), strict=True)
    while True:
        begins = reader.line_num + 1
        try:
            row = next(reader, None)
        except csv.Error as error:
            raise NotATableError(begins, str(error)) from None
        if row is None:
            return
        if any(cell.strip() for cell in row):
            yield begins, row


def _headings(row: list[str], file: str, line: int) -> tuple[list[str], list[Problem]]:
    keys = [key_of(cell) for cell in row]
    while keys and not keys[-1]:
        keys.pop()
    problems = [
        Problem(file, line, quoted(written).strip("“”"), _unknown(key, written))
        for key, written in zip(keys, row, strict=False)
        if key not in _KEYS
    ]
    problems += [
        Problem(file, line, _KEYS[key], f"the column “{_KEYS[key]}” is there twice; keep one of them")
        for key in dict.fromkeys(keys)
        if key in _KEYS and keys.count(key) > 1
    ]
    problems += [
        Problem(file, line, column, f"the column “{column}” is missing; the press log needs {', '.join(NEEDED)}")
        for column in NEEDED
        if key_of(column) not in keys
    ]
    return keys, problems


def _unknown(key: str, written: str) -> str:
    if not key:
        return "a column between others has no heading; name it, or take it out"
    known = nearest(key, _KEYS) or f"; known are {', '.join(COLUMNS)}"
    return f"{quoted(written)} is not a column of the press log{known}"


def _pressing(
    row: list[str], keys: list[str], origin: Origin, row_id: str, units: Units, shared: _Shared
) -> tuple[Pressing | None, Sequence[Problem]]:
    extra = next((cell for cell in row[len(keys) :] if cell.strip()), None)
    if extra is not None:
        sentence = f"the row has more cells than columns, {quoted(extra)} among them; a note with a comma wants quotes"
        return None, [origin.problem((), sentence)]
    cells = {key: cell.strip() for key, cell in zip(keys, row, strict=False) if cell.strip()}
    pressing = shared.again(cells, row_id)
    if pressing is None:
        try:
            pressing = Pressing.model_validate({**cells, "id": row_id}, context={"units": units})
        except ValidationError as error:
            return None, problems_of(error, Pressing, origin, "a row of the press log")
        pressing = shared.share(pressing, cells)
    return pressing, ()


class _Shared:
    """Values that many rows of one file have, held once: a log says the same few things a hundred thousand times."""

    def __init__(self) -> None:
        self._values: dict[tuple[str, str], object] = {}
        self._alike: dict[frozenset[str], Pressing] = {}
        """The first row in which these columns, and no others, are filled in."""
        self._outcomes: set[tuple[str, str]] = set()
        """Pieces pressed and good that go together."""

    def again(self, cells: Mapping[str, str], row_id: str) -> Pressing | None:
        """Return a row made of what earlier ones read from the same words; None where one of them is new.

        A cell means the same in every row, but for the count of good pieces, which is judged by those pressed.
        """
        alike = self._alike.get(frozenset(cells))
        if alike is None or (cells["pressed"], cells["good"]) not in self._outcomes:
            return None
        values: dict[str, object] = {"id": row_id}
        for key, cell in cells.items():
            name = _FIELDS[key]
            if (name, cell) not in self._values:
                return None
            values[name] = self._values[name, cell]
        return like(alike, values)

    def share(self, pressing: Pressing, cells: Mapping[str, str]) -> Pressing:
        """Return a new row that holds what an earlier one read from the same words."""
        values = pressing.__dict__
        known = {(name, cell): values[name] for name, cell in ((_FIELDS[key], cell) for key, cell in cells.items())}
        shared = {each[0]: self._values.setdefault(each, value) for each, value in known.items()}
        self._outcomes.add((cells["pressed"], cells["good"]))
        alike = self._alike.setdefault(frozenset(cells), pressing)
        return like(alike, {**values, **shared})
