"""What is known at the bench when something is to be added: as much of the maker's folder as can be read.

A record with an error in it keeps no one from writing down a pressing: it is known by its name alone.
Inner module of the records room.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from pathlib import Path

from pydantic import ValidationError

from maker_site.frozen import frozen
from maker_site.records.blank import Blank
from maker_site.records.content_folder import ContentFolder
from maker_site.records.crosscheck import crosscheck
from maker_site.records.press import Press
from maker_site.records.pressing import Pressing
from maker_site.records.problems import Problem
from maker_site.records.project import Project
from maker_site.records.read_log import read_log
from maker_site.records.read_record import R, record_from
from maker_site.records.shop import Shop, Units
from maker_site.records.supply import Supply
from maker_site.records.workshop import Workshop
from maker_site.records.yaml_text import read_yaml


@frozen
class Bench:
    """The records that can be read, and the files of those that can't."""

    workshop: Workshop
    units: Units
    """What a bare number means."""
    unreadable: frozenset[str]
    """Paths from the content folder."""

    @property
    def root(self) -> Path:
        """The content folder."""
        return self.workshop.root

    def ids(self, folder: str) -> list[str]:
        """Return the ids of the records in ``blanks``, ``presses``, ``supplies`` or ``projects``."""
        readable: Iterable[str] = getattr(self.workshop, folder)
        parts = [file.split("/") for file in self.unreadable]
        return sorted({*readable, *(each[1].removesuffix(".yaml") for each in parts if each[0] == folder)})

    def cross_problems(self, rows: Sequence[Pressing]) -> list[Problem]:
        """Return what is wrong between these rows, all of one file, and the other records."""
        if not rows:
            return []
        named = {row.project for row in rows}
        projects = {name: each for name, each in self.workshop.projects.items() if name in named}
        known = {f"projects/{name}/project.yaml" for name in self.ids("projects")}
        beside = replace(self.workshop, projects=projects, pressings=tuple(rows), articles={})
        found = crosscheck(beside, ContentFolder(self.root), {*self.unreadable, *known})
        return [problem for problem in found if problem.file == rows[0].origin.file]


def read_bench(root: Path) -> Bench:
    """Read what can be read of the content folder."""
    folder = ContentFolder(root)
    unreadable: set[str] = set()
    shop, units = _shop(folder)

    def records(model: type[R], where: str, inner: str | None = None) -> dict[str, R]:
        found: dict[str, R] = {}
        for record_id, path in folder.records(where, inner):
            given: dict[str, object] = {"id": record_id}
            if model is Project:
                given |= {"tutorial": None, "folder photos": ()}
            if model is Blank and path.name == inner:
                given |= {"folder pictures": ()}
            file = folder.name(path)
            text = folder.text(path) if folder.holds(path) else None
            record = record_from(model, read_yaml(text, file), file, given, units, kind="")[0] if text else None
            if record is None:
                unreadable.add(file)
            else:
                found[record_id] = record
        return found

    blanks = records(Blank, "blanks", "blank.yaml")
    presses, supplies = records(Press, "presses"), records(Supply, "supplies")
    projects = records(Project, "projects", "project.yaml")
    workshop = Workshop(root, shop, blanks, presses, supplies, projects, _pressings(folder, units), {}, None)
    return Bench(workshop, units, frozenset(unreadable))


def _shop(folder: ContentFolder) -> tuple[Shop, Units]:
    path = folder.root / "shop.yaml"
    text = folder.text(path) if folder.holds(path) else None
    tree = read_yaml(text or "", "shop.yaml")
    try:
        units = Units.model_validate(tree.fields.get("units", {}))
    except ValidationError:
        units = Units()
    shop, _ = record_from(Shop, tree, "shop.yaml", {"id": "shop"}, units, kind="a shop")
    return shop or Shop(id="shop", name="Workshop", currency="XXX"), units  # ISO 4217: no currency


def _pressings(folder: ContentFolder, units: Units) -> tuple[Pressing, ...]:
    rows: list[Pressing] = []
    for path in folder.files("press-log", ".csv"):
        text = folder.text(path)
        rows += read_log(text, folder.name(path), units)[0] if text is not None else []
    return tuple(sorted(rows, key=lambda row: row.date))
