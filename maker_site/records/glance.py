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
from maker_site.records.outline import outline
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


@frozen
class Items:
    """A list of texts."""

    split: Callable[[object], object]
    """Takes what is written in one line for a list."""


@frozen
class Group:
    """Fields of their own: how each is read, and which are needed."""

    fields: Mapping[str, Any]
    needed: tuple[str, ...] = ()
    many: bool = False
    """It is a list of such groups."""


_LINK, _YES_NO, _SHARE, _METHOD = _as(m.web_address), _as(m.yes_or_no), _as(q.share), _as(m.method)
_FILE = _as(m.relative_path)
_NAME_BOX: Final = Group(
    {
        "at": lambda text, bare: q.place(text, bare.length),
        "size": _size,
        "font": _TEXT,
        "colour": _as(m.colour),
        "outline": _as(m.colour),
        "outline width": _length,
    },
    ("at", "size"),
)
_ARTWORK: Final = {"file": _FILE, "bleed": _length, "name box": _NAME_BOX, "licence": _TEXT, "note": _TEXT}
_MENU: Final = {
    "section": _TEXT,
    "name": _TEXT,
    "line": _TEXT,
    "price": _amount,
    "options": Items(m.listed_texts),
    "photo": _FILE,
    "gift": _YES_NO,
}
_SHARED: Final = {
    "tutorial": _YES_NO,
    "setting": _YES_NO,
    "supplies": _YES_NO,
    "published": _DATE,
    "updated": _DATE,
    "menu": Group(_MENU),
}
PROJECT: Final[Mapping[str, Any]] = {
    "title": _TEXT,
    "made": _DATE,
    "blank": _TEXT,
    "method": _METHOD,
    "pieces": _FROM_ONE,
    "occasions": Items(m.listed_texts),
    "summary": _TEXT,
    "difficulty": _as(m.difficulty),
    "time needed": _TEXT,
    "artwork": Group(_ARTWORK, ("file",), many=True),
    "photos": Group({"file": _FILE, "text": _TEXT, "caption": _TEXT, "share": _YES_NO}, ("file",), many=True),
    "supplies": Group({"supply": _TEXT, "use": _as(q.measure)}, ("supply",), many=True),
    "stack": Items(m.listed_layers),
    "minutes": Group({"design": _MINUTES, "press": _MINUTES, "finish": _MINUTES}),
    "at once": _FROM_ONE,
    "batch": _FROM_ONE,
    "video": _LINK,
    "video still": _FILE,
    "tools": Items(m.listed_texts),
    "for": _TEXT,
    "order": Group({"for": _TEXT, "due": _DATE, "paid": _amount, "names": Items(m.listed_texts), "note": _TEXT}),
    "note": _TEXT,
    "care": _TEXT,
    "share": Group(_SHARED),
}
"""How fields of a project are read; `was` is judged by all others."""
_LOT: Final = {
    "date": _DATE,
    "lot": _TEXT,
    "count": _FROM_ONE,
    "paid": _amount,
    "delivery": _amount,
    "import charges": _amount,
    "note": _TEXT,
}
_SHEET: Final = {
    "temperature": lambda text, bare: q.temperature_range(text, bare.temperature),
    "time": _as(q.duration_range),
    "pressure": _pressure,
    "face": _as(m.face),
    "pre press": _SECONDS,
    "peel": _as(m.peel),
    "cool": _as(m.cool),
    "dated": _DATE,
    "note": _TEXT,
}
_HOLE: Final = {"at": lambda text, bare: q.place(text, bare.length), "diameter": _length}
BLANK: Final[Mapping[str, Any]] = {
    "name": _TEXT,
    "substrate": _as(m.substrate),
    "method": _METHOD,
    "size": _size,
    "print area": _size,
    "corner radius": _length,
    "outline": _as(outline),
    "holes": Group(_HOLE, ("at", "diameter"), many=True),
    "thickness": _length,
    "bleed": _length,
    "girth": _length,
    "girth bottom": _length,
    "height": _length,
    "handle gap": _length,
    "supplier": _TEXT,
    "code": _TEXT,
    "link": _LINK,
    "paid link": _YES_NO,
    "bought": Group(_LOT, ("count",), many=True),
    "low stock": _COUNT,
    "coating": _as(m.coating),
    "coated side": _TEXT,
    "limit": _temperature,
    "sheet": Group(_SHEET),
    "care": _TEXT,
    "food contact": _TEXT,
    "note": _TEXT,
}
"""How fields of a blank are read."""
SUPPLY: Final[Mapping[str, Any]] = {
    "name": _TEXT,
    "kind": _as(m.supply_kind),
    "material": _TEXT,
    "price": _amount,
    "contents": _as(q.measure),
    "size": _size,
    "laydown": _as(q.laydown),
    "use": _as(q.measure),
    "lasts": _as(q.measure),
    "limit": _temperature,
    "supplier": _TEXT,
    "code": _TEXT,
    "link": _LINK,
    "paid link": _YES_NO,
    "note": _TEXT,
}
"""How fields of a supply are read; no setting depends on one."""
PRESS: Final[Mapping[str, Any]] = {
    "platen": _size,
    "even zone": _size,
    "watts": _as(m.watts),
    "duty": _SHARE,
    "warm up": _MINUTES,
    "idle": _temperature,
    "pressure mark": _TEXT,
    "timer starts": _TEXT,
    "note": _TEXT,
}
"""How those fields of a press are read that no setting depends on."""
SHOP: Final[Mapping[str, Any]] = {
    "name": _TEXT,
    "line": _TEXT,
    "notice": _TEXT,
    "contact": _TEXT,
    "how to order": _TEXT,
    "lead time": _TEXT,
    "labour": _amount,
    "electricity": _amount,
    "price ending": _amount,
    "overhead": _SHARE,
    "margin": _SHARE,
    "markup": _SHARE,
    "usual yield": _SHARE,
    "low stock": _COUNT,
}
"""How those fields of the shop are read that nothing else is read by."""
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


@frozen
class ProjectSeen:
    """What an edited or new project says, and what of that other records and files have to know."""

    gist: ProjectGist
    blank: str | None
    """As the following: where the edit concerns it."""
    files: tuple[str, ...]
    supplies: tuple[str, ...]
    stack: tuple[str, ...]


def project_of(old: str | None, new: str, bare: Bare) -> ProjectSeen:
    """Return what an edited project says, or one that is new, for which `old` is None."""
    fields, changed = _edit(old, new)
    shown = {"photos", "share", "video still"}
    wanted = changed | {"title", "occasions"} | (shown if changed & shown else set())
    said = _all_of(PROJECT, wanted, changed, fields, bare)
    if "title" not in said or "blank" not in fields:
        raise Unsure
    if changed & shown:
        _question_photos(said)
    files = (each["file"] for kind in ("artwork", "photos") if kind in changed for each in said.get(kind, ()))
    return ProjectSeen(
        ProjectGist(said["title"], said.get("occasions", ())),
        said.get("blank"),
        tuple(files),
        tuple(each["supply"] for each in said.get("supplies", ())),
        said.get("stack", ()),
    )


def _question_photos(said: Mapping[str, Any]) -> None:
    shared = {photo["file"] for photo in said.get("photos", ()) if photo.get("share")}
    chosen = {said.get("share", {}).get("menu", {}).get("photo"), said.get("video still")} - {None}
    if not all(file.startswith("photos/") for file in shared) or not chosen <= shared:
        raise Unsure


def is_right(specs: Mapping[str, Any], old: str | None, new: str, bare: Bare, needed: tuple[str, ...] = ()) -> None:
    """Raise Unsure where an edited or new record isn't plainly right, or a field is changed that is not in `specs`."""
    fields, changed = _edit(old, new)
    _all_of(specs, changed, changed, fields, bare)
    if any(key not in fields for key in needed):
        raise Unsure


def blank_of(name: str, old: str | None, new: str, bare: Bare) -> BlankGist:
    """Return what an edited or new blank says."""
    fields, changed = _edit(old, new)
    wanted = changed | {"name", "substrate", "method", "sheet", *_OF_A_BLANK}
    values = _all_of(BLANK, wanted, changed, fields, bare)
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


def _all_of(
    specs: Mapping[str, Any], wanted: Iterable[str], changed: Iterable[str], fields: Mapping[str, Any], bare: Bare
) -> dict[str, Any]:
    """Return what some fields mean, by their names; all that were changed must be known."""
    for key in changed:
        _spec(specs, key)
    return {key: _read(fields[key], specs[key], bare) for key in wanted if key in fields}


def _read(value: Any, spec: Any, bare: Bare) -> Any:
    """Return what a value means. `spec` is a reader of text, items or a group."""
    if isinstance(spec, Items):
        items = spec.split(value)
        if not isinstance(items, list):
            raise Unsure
        return tuple(_read(item, _TEXT, bare) for item in items)
    if isinstance(spec, Group):
        if not spec.many:
            return _read_group(value, spec, bare)
        if not isinstance(value, list):
            raise Unsure
        return tuple(_read_group(each, spec, bare) for each in value)
    if not isinstance(value, str):
        raise Unsure
    try:
        return spec(value, bare)
    except NotReadable:
        raise Unsure from None


def _read_group(value: Any, group: Group, bare: Bare) -> dict[str, Any]:
    if not isinstance(value, dict) or any(key not in value for key in group.needed):
        raise Unsure
    return {key: _read(each, _spec(group.fields, key), bare) for key, each in value.items()}


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
    keys = [m.key_of(cell) for cell in cells]
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
