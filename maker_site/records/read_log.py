"""The press log's rows out of a spreadsheet's text: commas, semicolons or tabs, columns in any order.

Inner module of the records room.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from typing import Final

from pydantic import ValidationError

from maker_site.records.base import Origin
from maker_site.records.pressing import Pressing
from maker_site.records.problems import Problem, nearest
from maker_site.records.read_record import problems_of
from maker_site.records.shop import Units
from maker_site.records.yaml_text import key_of

COLUMNS: Final = tuple(
    {"pre_press": "pre-press"}.get(name, name.replace("_", " "))
    for name in Pressing.model_fields
    if name != "id"
)
"""The log's columns as their headings are written."""
_KEYS: Final = {key_of(column): column for column in COLUMNS}
NEEDED: Final = tuple(
    column for column in COLUMNS if Pressing.model_fields[key_of(column).replace(" ", "_")].is_required()
)
_WIDEST_CELL: Final = 100_000


def read_log(text: str, file: str, units: Units) -> tuple[list[Pressing], list[Problem]]:
    """Return the pressings of one file, oldest line first, and every problem in it."""
    csv.field_size_limit(_WIDEST_CELL)
    rows = _rows(text)
    try:
        line, heading = next(rows)
    except StopIteration:
        return [], []
    except csv.Error as error:
        return [], [Problem(file, 1, "", f"the file can't be read as a table: {error}")]
    keys, problems = _headings(heading, file, line)
    pressings: list[Pressing] = []
    if problems:
        return [], problems
    try:
        for line, row in rows:  # noqa: PLW2901 - the line of the row at hand
            pressing, found = _pressing(row, keys, file, line, units)
            problems += found
            if pressing is not None:
                pressings.append(pressing)
    except csv.Error as error:
        problems.append(Problem(file, line, "", f"the row after this line can't be read as a table: {error}"))
    return pressings, problems


def _rows(text: str) -> Iterator[tuple[int, list[str]]]:
    """Yield each row that is not empty with the line it begins in."""
    heading = text.partition("\n")[0]
    delimiter = max(",;\t", key=heading.count)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    begins = 1
    for row in reader:
        if any(cell.strip() for cell in row):
            yield begins, row
        begins = reader.line_num + 1


def _headings(row: list[str], file: str, line: int) -> tuple[list[str], list[Problem]]:
    keys = [key_of(cell) for cell in row]
    while keys and not keys[-1]:
        keys.pop()
    problems = [
        Problem(
            file,
            line,
            written.strip(),
            f"“{written.strip()}” is not a column of the press log{nearest(key, _KEYS) or '; known are ' + ', '.join(COLUMNS)}",
        )
        for key, written in zip(keys, row, strict=False)
        if key not in _KEYS
    ]
    problems += [
        Problem(file, line, _KEYS[key], f"the column “{_KEYS[key]}” is there twice; keep one of them")
        for key in dict.fromkeys(keys)
        if key in _KEYS and keys.count(key) > 1
    ]
    problems += [
        Problem(
            file, line, column, f"the column “{column}” is missing; the press log needs {', '.join(NEEDED)}"
        )
        for column in NEEDED
        if key_of(column) not in keys
    ]
    return keys, problems


def _pressing(
    row: list[str], keys: list[str], file: str, line: int, units: Units
) -> tuple[Pressing | None, list[Problem]]:
    origin = Origin(file, {(): line})
    if any(cell.strip() for cell in row[len(keys) :]):
        extra = row[len(keys) :][0].strip()
        sentence = f"the row has more cells than there are columns, from “{extra}” on; a note with a comma wants quotes"
        return None, [Problem(file, line, "", sentence)]
    cells = {key: cell.strip() for key, cell in zip(keys, row, strict=False) if cell.strip()}
    try:
        pressing = Pressing.model_validate({**cells, "id": f"{file}:{line}"}, context={"units": units})
    except ValidationError as error:
        return None, problems_of(error, Pressing, origin, "a row of the press log")
    pressing._origin = origin  # noqa: SLF001 - the reader alone says where a record stood
    return pressing, []
