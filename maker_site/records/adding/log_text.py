"""The text of the press log: in which form a file is written, and rows in that form. Pure.

Inner module of the records room.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Final

from maker_site.frozen import frozen
from maker_site.records.meanings import key_of
from maker_site.records.read_log import COLUMNS, delimiter_of, read_log, table_rows
from maker_site.records.shop import Units

HEADING: Final = (
    "date", "project", "blank", "lot", "press", "method", "temperature", "time", "pressure", "face", "pre-press",
    "stack", "at once", "peel", "cool", "pressed", "good", "defects", "note", "photo",
)  # fmt: skip
"""All columns of the log, in the order of the work."""
Cells = Mapping[str, str]
"""A row by its columns; what is empty is left out."""

_COLUMN_BY_KEY: Final = {key_of(column): column for column in COLUMNS}
_FORMULA: Final = re.compile(r"[=+\-@\t\r]")
_PLAIN_NUMBER: Final = re.compile(r"[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)")


class NoHeading(ValueError):
    """The file's heading can't be read, so no row can be put under it; the sentence says why."""


@frozen
class LogForm:
    """How a file of the press log is written."""

    columns: tuple[str, ...] = HEADING
    """In the file's order; an empty word where a column has no heading."""
    delimiter: str = ","
    line_end: str = "\n"
    quote_all: bool = False
    encoding: str = "utf-8"
    marked: bool = False
    """A byte order mark begins the file."""
    headed: bool = False
    """The heading is there already."""
    open_end: bool = False
    """The last line has no end yet."""

    def lacking(self, used: Iterable[str]) -> list[str]:
        """Return the columns that are used and have no place in this file."""
        return [column for column in used if column not in self.columns]


def form_of(raw: bytes) -> LogForm:
    """Return the form of a file; an empty one has the usual form. Raises `NoHeading` and `NotATableError`."""
    marks = {b"\xff\xfe": "utf-16-le", b"\xfe\xff": "utf-16-be"}
    encoding = marks.get(raw[:2], "utf-8")
    text = raw.decode(encoding).removeprefix("\ufeff")
    ends = re.search(r"\r\n|\n|\r", text)
    line_end = ends[0] if ends else "\n"
    written = list(table_rows(text))
    delimiter = delimiter_of(text)
    marked = raw.startswith((b"\xef\xbb\xbf", *marks))
    open_end = bool(text) and not text.endswith(("\n", "\r"))
    if not written:
        return LogForm(line_end=line_end, encoding=encoding, marked=marked, open_end=open_end)
    heading = written[0][1]
    _, problems = read_log(_line(heading, ",", quote_all=False), "", Units())
    if problems:
        raise NoHeading(problems[0].message)
    columns = tuple(_COLUMN_BY_KEY.get(key_of(cell), "") for cell in heading)
    lines = text.strip("\r\n").splitlines()
    quoted = [_line(row, delimiter, quote_all=True) for row in (heading, written[-1][1])]
    quote_all = lines[0].lstrip() == quoted[0] and lines[-1] == quoted[1]
    return LogForm(columns, delimiter, line_end, quote_all, encoding, marked, headed=True, open_end=open_end)


def file_like(form: LogForm) -> LogForm:
    """Return the form of a new file with all columns that opens as this one does."""
    return LogForm(HEADING, form.delimiter, form.line_end, form.quote_all, form.encoding, form.marked)


def addition(form: LogForm, rows: Sequence[Cells], *, new: bool = False) -> bytes:
    """Return the bytes that put these rows at the end of a file of this form, with the heading where it lacks one."""
    written = [[harmless(row.get(column, "")) for column in form.columns] for row in rows]
    if not form.headed:
        written.insert(0, list(form.columns))
    text = "".join(_line(row, form.delimiter, quote_all=form.quote_all) + form.line_end for row in written)
    start = ("\ufeff" if new and form.marked else "") + (form.line_end if form.open_end else "")
    return (start + text).encode(form.encoding)


def harmless(cell: str) -> str:
    """Return a cell that no spreadsheet takes for a formula.

    What begins like one (``=``, ``+``, ``-``, ``@``) gets a space before it: it stays readable, a spreadsheet shows it
    as text (from memory, no source), and the log's reader drops the space again. A plain number keeps its sign.
    """
    return f" {cell}" if _FORMULA.match(cell) and not _PLAIN_NUMBER.fullmatch(cell) else cell


def table(rows: Iterable[Sequence[str]]) -> Iterator[str]:
    """Yield the lines of a table of its own: commas, one line a row, every cell harmless."""
    return (_line([harmless(cell) for cell in row], ",", quote_all=False) + "\n" for row in rows)


def line_after(before: bytes) -> int:
    """Return the number of the line that begins after these bytes, counted from 1."""
    encoding = {b"\xff\xfe": "utf-16-le", b"\xfe\xff": "utf-16-be"}.get(before[:2], "utf-8")
    return len(re.findall(r"\r\n|\n|\r", before.decode(encoding, "replace"))) + 1


def _line(cells: Sequence[str], delimiter: str, *, quote_all: bool) -> str:
    out = io.StringIO(newline="")
    writer = csv.writer(
        out,
        delimiter=delimiter,
        quoting=csv.QUOTE_ALL if quote_all else csv.QUOTE_MINIMAL,
        lineterminator="\r\n",  # so that a cell with either in it is quoted
    )
    writer.writerow(cells)
    return out.getvalue().removesuffix("\r\n")
