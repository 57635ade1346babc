"""Everything given back: the records as the maker typed them, as plain tables or as one JSON text.

Photos and artwork are files already and stay where they are.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from itertools import chain
from pathlib import Path
from typing import Final

from maker_site.frozen import frozen
from maker_site.records.adding.log_text import HEADING, table
from maker_site.records.article import ArticleHead
from maker_site.records.base import Part
from maker_site.records.blank import Blank
from maker_site.records.content_folder import ContentFolder
from maker_site.records.meanings import key_of
from maker_site.records.press import Press
from maker_site.records.project import Project
from maker_site.records.read_log import COLUMNS, table_rows
from maker_site.records.read_record import field_names
from maker_site.records.shop import Shop
from maker_site.records.supply import Supply
from maker_site.records.yaml_text import Place, Tree, dotted, read_yaml

FORMAT: Final = 1
"""Of the JSON text; a higher one when a reader of the old one would fail."""
_KINDS: Final[dict[str, tuple[type[Part], str | None]]] = {
    "blanks": (Blank, "blank.yaml"),
    "presses": (Press, None),
    "supplies": (Supply, None),
    "projects": (Project, "project.yaml"),
}


@frozen
class AsTyped:
    """A workshop's records as text."""

    shop: Mapping[str, Tree]
    records: Mapping[str, Mapping[str, Mapping[str, Tree]]]
    """Of each folder the records by id."""
    log: tuple[tuple[str, int, Mapping[str, str]], ...]
    """File, line and cells of each row."""
    tutorials: Mapping[str, str]
    """Markdown by project."""
    articles: Mapping[str, tuple[Mapping[str, Tree], str]]
    """Fields and Markdown by id."""
    about: str | None


def read_as_typed(root: Path) -> AsTyped:
    """Read the texts of a content folder that has no errors in it."""
    folder = ContentFolder(root)

    def text(path: Path) -> str:
        return (folder.text(path) if folder.holds(path) else None) or ""

    def fields(path: Path) -> dict[str, Tree]:
        return read_yaml(text(path), folder.name(path)).fields

    heads = {name: fields(path) for name, path in folder.records("articles")}
    about = root / "about.md"
    tutorials = {name: text(path.parent / "tutorial.md") for name, path in folder.records("projects", "project.yaml")}
    return AsTyped(
        shop=fields(root / "shop.yaml"),
        records={
            kind: {name: fields(path) for name, path in folder.records(kind, inner)}
            for kind, (_, inner) in _KINDS.items()
        },
        log=tuple(
            (folder.name(path), line, cells)
            for path in folder.files("press-log", ".csv")
            for line, cells in _log_rows(text(path))
        ),
        tutorials={name: written for name, written in tutorials.items() if written},
        articles={name: (heads.get(name, {}), text(path)) for name, path in folder.records("articles", ending=".md")},
        about=text(about) if folder.holds(about) else None,
    )


def as_tables(typed: AsTyped, version: str) -> dict[str, Iterable[str]]:
    """Return the files of an export as plain tables, by name: the log, a table for each kind, and a note.

    Each is its text in pieces, to be gone through once: a log may be large.
    """
    log = ([row.get(name, "") for name in HEADING] for *_, row in typed.log)
    files: dict[str, Iterable[str]] = {"press-log.csv": table(chain([HEADING], log))}
    files["shop.csv"] = _flat({"shop": typed.shop}, Shop, {})
    for kind, (model, _) in _KINDS.items():
        more = {"tutorial.md": typed.tutorials} if kind == "projects" else {}
        files[f"{kind}.csv"] = _flat(typed.records[kind], model, more)
    texts = {"text": {name: text for name, (_, text) in typed.articles.items()}}
    files["articles.csv"] = _flat({name: head for name, (head, _) in typed.articles.items()}, ArticleHead, texts)
    if typed.about is not None:
        files["about.md"] = (typed.about,)
    files["read-me.txt"] = (
        f"Written by maker-site {version}. Every cell is as it was typed. A cell that a spreadsheet would take for a\n"
        "formula has a space before it. press-log.csv can be put back into a press-log folder as it is.\n"
        "Photos, artwork and pictures of sheets are not copied here; they are in the folder of your records.\n",
    )
    return files


def as_json(typed: AsTyped, version: str) -> Iterator[str]:
    """Return one JSON text (RFC 8259) with everything as typed, in pieces."""
    projects = {
        name: {**fields, **({"tutorial.md": typed.tutorials[name]} if name in typed.tutorials else {})}
        for name, fields in typed.records["projects"].items()
    }
    whole: dict[str, object] = {
        "written by": {"maker-site": version, "format": FORMAT},
        "shop": typed.shop,
        **typed.records,
        "projects": projects,
        "press log": [{"file": file, "line": line, "row": row} for file, line, row in typed.log],
        "articles": {name: {**head, "text": text} for name, (head, text) in typed.articles.items()},
        "about": typed.about,
    }
    return chain(json.JSONEncoder(ensure_ascii=False, indent=2).iterencode(whole), "\n")


def _log_rows(text: str) -> list[tuple[int, dict[str, str]]]:
    rows = list(table_rows(text))
    names = {key_of(column): column for column in COLUMNS}
    columns = [names.get(key_of(cell), "") for cell in rows[0][1]] if rows else []
    return [
        (line, {column: cell.strip() for column, cell in zip(columns, row, strict=False) if column and cell.strip()})
        for line, row in rows[1:]
    ]


def _flat(
    records: Mapping[str, Mapping[str, Tree]], model: type[Part], more: Mapping[str, Mapping[str, str]]
) -> Iterator[str]:
    """Return a table with a column for each value that any record has, nested ones named like ``bought 2: count``."""
    flat = {name: _leaves(dict(fields), ()) for name, fields in records.items()}
    order = field_names(model)
    places = sorted(
        {place for leaves in flat.values() for place in leaves},
        key=lambda place: (order.index(str(place[0])), *(str(part).zfill(6) for part in place[1:])),
    )
    heading = ["id", *(dotted(place) for place in places), *more]
    rows = (
        [name, *(leaves.get(place, "") for place in places), *(texts.get(name, "") for texts in more.values())]
        for name, leaves in flat.items()
    )
    yield from table(chain([heading], rows))


def _leaves(tree: Tree, place: Place) -> dict[Place, str]:
    if isinstance(tree, str):
        return {place: tree}
    children = tree.items() if isinstance(tree, dict) else enumerate(tree)
    return {leaf: text for key, child in children for leaf, text in _leaves(child, (*place, key)).items()}
