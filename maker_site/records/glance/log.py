"""What an edited file of the log says: the rows that came, and of which blanks some are gone.

Inner module of the records room.
"""

from __future__ import annotations

import csv
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from maker_site.frozen import frozen
from maker_site.records.gist import Row
from maker_site.records.glance.fields import NEEDED, ROW, TOLD
from maker_site.records.glance.reading import Bare
from maker_site.records.glance.unsure import Unsure
from maker_site.records.meanings import key_of
from maker_site.records.problems import NotReadable


@frozen
class Table:
    """A file of the log, row by row."""

    name: str
    lines: Sequence[str]
    """The text of each row; a row's number is its place among them."""
    begins: int
    """The row after the heading, counted from 0."""
    keys: Sequence[str]
    delimiter: str


@frozen
class Judged:
    """A row that is new, and what in it other records have to know."""

    row: Row
    stack: tuple[str, ...]
    photo: str | None


def _row_by_row(text: str) -> list[str]:
    """Return a table's text with each row apart, the lines of one that goes over several together."""
    if text.count("\r") != text.count("\r\n"):
        raise Unsure
    lines = text.split("\n")
    if '"' not in text:
        return lines
    heading = text.lstrip().partition("\n")[0]
    reader = csv.reader((f"{line}\n" for line in lines), delimiter=max(",;\t", key=heading.count), strict=True)
    found: list[str] = []
    begins = 0
    try:
        for _ in reader:
            found.append("\n".join(lines[begins : reader.line_num]))
            begins = reader.line_num
    except csv.Error:
        raise Unsure from None
    return found


def table(name: str, text: str) -> Table:
    """Return a file of the log as a table; raises Unsure where its heading isn't plainly right."""
    lines = _row_by_row(text)
    begins = next((at for at, line in enumerate(lines) if line.strip()), None)
    if begins is None:
        raise Unsure
    heading = lines[begins].lstrip()
    delimiter = max(",;\t", key=heading.count)
    (cells,) = _parsed([lines[begins]], delimiter)
    keys = [key_of(cell) for cell in cells]
    while keys and not keys[-1]:
        keys.pop()
    if len({*keys}) < len(keys) or not ROW.keys() >= {*keys} >= {*NEEDED}:
        raise Unsure
    return Table(name, lines, begins + 1, keys, delimiter)


def parted(old: Table | None, new: Table | None, bare: Bare) -> tuple[set[str], list[Judged]]:
    """Return the blanks of the rows that are gone, and the rows that are there anew, each judged.

    What is gone was right before; raises Unsure where a new row isn't plainly right.
    """
    gone, come = old.lines[old.begins :] if old else [], new.lines[new.begins :] if new else []
    if old and new:
        if (old.keys, old.delimiter) != (new.keys, new.delimiter):
            raise Unsure
        least = min(len(gone), len(come))
        head = next((at for at in range(least) if gone[at] != come[at]), least)
        tail = next((at for at in range(least - head) if gone[-1 - at] != come[-1 - at]), least - head)
        gone, come = gone[head : len(gone) - tail], come[head : len(come) - tail]
        first = new.begins + head + 1
    else:
        first = new.begins + 1 if new else 1
    blanks = {cells["blank"] for _, cells in _rows(old, gone, 1)} if old else set()
    judged = []
    if new:
        for number, cells in _rows(new, come, first):
            row, values = _row(new.name, number, cells, bare, ROW)
            judged.append(Judged(row, values.get("stack", ()), values.get("photo")))
    return blanks, judged


def rows_on(blank: str, of: Table, bare: Bare) -> tuple[Row, ...]:
    """Return the rows of one blank, all of which are right."""
    numbered = [(at + 1, of.lines[at]) for at in range(of.begins, len(of.lines)) if blank in of.lines[at]]
    lines = [line for _, line in numbered]
    found = []
    for at, cells in _rows(of, lines, 0):
        if cells.get("blank") == blank:
            found.append(_row(of.name, numbered[at][0], cells, bare, (*NEEDED, *TOLD))[0])
    return tuple(found)


def _rows(of: Table, lines: Sequence[str], first: int) -> Iterator[tuple[int, Mapping[str, str]]]:
    """Yield the rows of some lines with their numbers, their cells by the columns' names."""
    for number, row in enumerate(_parsed(lines, of.delimiter), first):
        if not any(cell.strip() for cell in row):
            continue
        if any(cell.strip() for cell in row[len(of.keys) :]):
            raise Unsure
        yield number, {key: cell.strip() for key, cell in zip(of.keys, row, strict=False) if cell.strip()}


def _parsed(lines: Sequence[str], delimiter: str) -> Iterator[list[str]]:
    reader = csv.reader((f"{line}\n" for line in lines), delimiter=delimiter, strict=True)
    try:
        for number, row in enumerate(reader, 1):
            if reader.line_num != number:
                raise Unsure
            yield row
    except csv.Error:
        raise Unsure from None


def _row(
    file: str, number: int, cells: Mapping[str, str], bare: Bare, wanted: Iterable[str]
) -> tuple[Row, Mapping[str, Any]]:
    if any(key not in cells for key in NEEDED):
        raise Unsure
    try:
        said = {key: ROW[key](cells[key], bare) for key in wanted if key in cells}
    except NotReadable:
        raise Unsure from None
    if said["good"] > said["pressed"]:
        raise Unsure
    values: list[Any] = [*(said[key] for key in NEEDED), *(said.get(key) for key in TOLD[:-1])]
    return Row(*(file, number, *values, said.get("defects", ()))), said
