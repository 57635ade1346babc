"""What an edit means, judged at a glance: whether the records are as right as they were, and what the edited says now.

A file that was right before and says the same in all but some fields is right where those fields are: each field is
read from its own text alone, by `meanings` and `quantities`, as the kinds of records read it. Whatever can't be told
at a glance raises Unsure, and all is read as ever. Imports nothing that is slow to import.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Any, Final, TypeAlias

from maker_site.frozen import frozen
from maker_site.records import meanings as m
from maker_site.records import quantities as q
from maker_site.records.gist import BlankGist, ProjectGist, Row, Sheet
from maker_site.records.problems import NotReadable

LARGEST: Final = 8 * 1024 * 1024
"""Of a file that is read, in bytes."""


class Unsure(Exception):
    """It can't be told at a glance."""


@frozen
class Bare:
    """What figures without a unit are in, and the shop's currency."""

    temperature: Any
    length: Any
    pressure: Any
    currency: str


Reader: TypeAlias = Callable[[str, Bare], Any]


def _as(read: Callable[[str], Any]) -> Reader:
    return lambda text, _: read(text)


def _amount(text: str, bare: Bare) -> q.Amount:
    found = q.amount(text)
    if found.currency not in (None, bare.currency):
        raise Unsure
    return found


def _temperature(text: str, bare: Bare) -> q.Temperature:
    return q.temperature(text, bare.temperature)


def _pressure(text: str, bare: Bare) -> q.Pressure:
    return q.pressure(text, bare.pressure)


def _length(text: str, bare: Bare) -> q.Length:
    return q.length(text, bare.length)


def _size(text: str, bare: Bare) -> q.Size:
    return q.size(text, bare.length)


def _layers(text: str, _: Bare) -> tuple[str, ...]:
    return tuple(map(m.plain_text, m.layers(text)))


def _defects(text: str, _: Bare) -> tuple[str, ...]:
    return tuple(m.defect(part.strip()) for part in text.split(";") if part.strip())


_TEXT, _DATE, _COUNT, _FROM_ONE = _as(m.plain_text), _as(m.iso_date), _as(m.count), _as(m.count_from_one)
_SECONDS, _MINUTES = _as(q.duration), _as(lambda text: q.duration(text, "min"))
ROW: Final[Mapping[str, Reader]] = {
    "date": _DATE,
    "blank": _TEXT,
    "press": _TEXT,
    "temperature": _temperature,
    "time": _SECONDS,
    "pressed": _as(m.pressed),
    "good": _COUNT,
    "project": _TEXT,
    "lot": _TEXT,
    "method": _as(m.method),
    "pressure": _pressure,
    "face": _as(m.face),
    "pre press": _SECONDS,
    "stack": _layers,
    "at once": _FROM_ONE,
    "peel": _as(m.peel),
    "cool": _as(m.cool),
    "defects": _defects,
    "note": _TEXT,
    "photo": _as(m.relative_path),
}
"""How each column of the log is read."""
NEEDED: Final = ("date", "blank", "press", "temperature", "time", "pressed", "good")
_TOLD: Final = ("project", "method", "pressure", "face", "defects")

PROJECT: Final[Mapping[str, Any]] = {
    "title": _TEXT,
    "made": _DATE,
    "pieces": _FROM_ONE,
    "occasions": [_TEXT],
    "summary": _TEXT,
    "difficulty": _as(m.difficulty),
    "time needed": _TEXT,
    "minutes": {"design": _MINUTES, "press": _MINUTES, "finish": _MINUTES},
    "at once": _FROM_ONE,
    "batch": _FROM_ONE,
    "for": _TEXT,
    "note": _TEXT,
    "care": _TEXT,
}
"""How fields of a project are read that no other record and no file has to agree with."""
_LOT: Final[Mapping[str, Any]] = {
    "date": _DATE,
    "lot": _TEXT,
    "count": _FROM_ONE,
    "paid": _amount,
    "delivery": _amount,
    "import charges": _amount,
    "note": _TEXT,
}
BLANK: Final[Mapping[str, Any]] = {
    "name": _TEXT,
    "substrate": _as(m.substrate),
    "method": _as(m.method),
    "size": _size,
    "print area": _size,
    "thickness": _length,
    "bleed": _length,
    "supplier": _TEXT,
    "code": _TEXT,
    "bought": (_LOT, ("count",)),
    "low stock": _COUNT,
    "coating": _as(m.coating),
    "coated side": _TEXT,
    "limit": _temperature,
    "sheet": {
        "temperature": lambda text, bare: q.temperature_range(text, bare.temperature),
        "time": _as(q.duration_range),
        "pressure": _pressure,
        "face": _as(m.face),
        "pre press": _SECONDS,
        "peel": _as(m.peel),
        "cool": _as(m.cool),
        "dated": _DATE,
        "note": _TEXT,
    },
    "care": _TEXT,
    "food contact": _TEXT,
    "note": _TEXT,
}
"""How fields of a blank are read that no other record and no file has to agree with."""
_OF_A_BLANK: Final = ("thickness", "supplier", "code", "limit")
_USUAL_METHOD: Final = "sublimation"


def text_of(raw: bytes) -> str:
    """Return the text of a file; raises Unsure where it is none, or another encoding's."""
    if len(raw) > LARGEST or raw[:2] in (b"\xff\xfe", b"\xfe\xff"):
        raise Unsure
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise Unsure from None


def project_of(old: str | None, new: str, bare: Bare) -> tuple[ProjectGist, str | None]:
    """Return what an edited project says, and the blank of one that is new, for which `old` is None."""
    fields, changed = _edit(old, new)
    blank = None
    if old is None:
        blank = _read(fields.get("blank"), _TEXT, bare)
        changed -= {"blank"}
    values = {key: _read(fields[key], _spec(PROJECT, key), bare) for key in changed if key in fields}
    _spec_all(PROJECT, changed)
    title = values["title"] if "title" in values else _read(fields.get("title"), _TEXT, bare)
    occasions = _read(fields["occasions"], [_TEXT], bare) if "occasions" in fields else ()
    return ProjectGist(title, occasions), blank


def blank_of(name: str, old: str | None, new: str, bare: Bare) -> BlankGist:
    """Return what an edited or new blank says."""
    fields, changed = _edit(old, new)
    _spec_all(BLANK, changed)
    wanted = changed | {"name", "substrate", "method", "sheet", *_OF_A_BLANK}
    values = {key: _read(fields[key], BLANK[key], bare) for key in wanted if key in fields}
    if "name" not in values or "substrate" not in values:
        raise Unsure
    said = values.get("sheet")
    sheet = Sheet(*(said.get(each) for each in ("temperature", "time", "pressure", "face"))) if said else None
    method = values.get("method", _USUAL_METHOD)
    others: list[Any] = [values.get(each) for each in _OF_A_BLANK]
    return BlankGist(*(name, values["name"], values["substrate"], method, *others, sheet))


def _edit(old: str | None, new: str) -> tuple[Mapping[str, Any], set[str]]:
    """Return the fields of a file as it is, and the names of those that are not as they were."""
    from maker_site.records.yaml_text import read_yaml  # late: a log has no YAML

    before = read_yaml(old, "").fields if old is not None else {}
    tree = read_yaml(new, "")
    if tree.problems:
        raise Unsure
    return tree.fields, {key for key in before.keys() | tree.fields if before.get(key) != tree.fields.get(key)}


def _spec(specs: Mapping[str, Any], key: str) -> Any:
    if key not in specs:
        raise Unsure
    return specs[key]


def _spec_all(specs: Mapping[str, Any], keys: Iterable[str]) -> None:
    for key in keys:
        _spec(specs, key)


def _read(value: Any, spec: Any, bare: Bare) -> Any:
    """Return what a value means. `spec` is a reader of text, a mapping of a group's fields, a list with the reader of
    each item of a list, or a pair: the fields of each group of a list, and those that are needed.
    """
    if isinstance(spec, list):
        items = m.listed_texts(value) if isinstance(value, str) else value
        if not isinstance(items, list):
            raise Unsure
        return tuple(_read(item, spec[0], bare) for item in items)
    if isinstance(spec, tuple):
        fields, needed = spec
        if not isinstance(value, list) or not all(
            isinstance(each, dict) and {*needed} <= each.keys() for each in value
        ):
            raise Unsure
        return tuple(_read(each, fields, bare) for each in value)
    if isinstance(spec, Mapping):
        if not isinstance(value, dict):
            raise Unsure
        return {key: _read(each, _spec(spec, key), bare) for key, each in value.items()}
    if not isinstance(value, str):
        raise Unsure
    try:
        return spec(value, bare)
    except NotReadable:
        raise Unsure from None


@frozen
class Table:
    """A file of the log, each row in a line of its own."""

    name: str
    lines: Sequence[str]
    begins: int
    """The line after the heading, counted from 0."""
    keys: Sequence[str]
    delimiter: str


@frozen
class Judged:
    """A row that is new, and what in it other records have to know."""

    row: Row
    stack: tuple[str, ...]
    has_photo: bool


def is_a_row_a_line(text: str) -> bool:
    """Tell whether no row of a table goes over several lines."""
    if text.count("\r") != text.count("\r\n"):
        return False
    if '"' not in text:
        return True
    lines = text.split("\n")
    heading = text.lstrip().partition("\n")[0]
    reader = csv.reader((f"{line}\n" for line in lines), delimiter=max(",;\t", key=heading.count), strict=True)
    try:
        return sum(1 for _ in reader) == len(lines)
    except csv.Error:
        return False


def table(name: str, text: str) -> Table:
    """Return a file of the log as a table; raises Unsure where its heading isn't plainly right."""
    if text.count("\r") != text.count("\r\n"):
        raise Unsure
    lines = text.split("\n")
    begins = next((at for at, line in enumerate(lines) if line.strip()), None)
    if begins is None:
        raise Unsure
    heading = lines[begins].lstrip()
    delimiter = max(",;\t", key=heading.count)
    (cells,) = _parsed([lines[begins]], delimiter)
    keys = [m.key_of(cell) for cell in cells]
    while keys and not keys[-1]:
        keys.pop()
    if len({*keys}) < len(keys) or not ROW.keys() >= {*keys} >= {*NEEDED}:
        raise Unsure
    return Table(name, lines, begins + 1, keys, delimiter)


def parted(old: Table | None, new: Table | None, bare: Bare) -> tuple[set[str], list[Judged]]:
    """Return the blanks of the rows that are gone, and the rows that are there anew, each judged.

    What is gone was right before, and a row a line; raises Unsure where a new row isn't plainly right.
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
            judged.append(Judged(row, values.get("stack", ()), "photo" in cells))
    return blanks, judged


def rows_on(blank: str, of: Table, bare: Bare) -> tuple[Row, ...]:
    """Return the rows of one blank, all of which are right."""
    numbered = [(at + 1, of.lines[at]) for at in range(of.begins, len(of.lines)) if blank in of.lines[at]]
    lines = [line for _, line in numbered]
    found = []
    for at, cells in _rows(of, lines, 0):
        if cells.get("blank") == blank:
            found.append(_row(of.name, numbered[at][0], cells, bare, (*NEEDED, *_TOLD))[0])
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
    values: list[Any] = [*(said[key] for key in NEEDED), *(said.get(key) for key in _TOLD[:-1])]
    return Row(*(file, number, *values, said.get("defects", ()))), said
