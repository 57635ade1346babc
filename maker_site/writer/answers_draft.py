"""What goes before what is kept, as it comes to be: parts that an edit makes others."""

from __future__ import annotations

import marshal
from collections.abc import Iterable
from typing import TypeAlias

from maker_site.records.glance.unsure import Unsure
from maker_site.writer.answers_kept import Kept, Name

Named: TypeAlias = "tuple[str, tuple[str, ...], list[str]]"
"""A project as it is kept: its title, its occasions, the blanks with rows that name it, sorted."""


class Draft:
    """Parts that are others now."""

    def __init__(self, kept: Kept) -> None:
        self.kept = kept
        """As it was before the edit."""
        self.parts: dict[tuple[str, Name], bytes] = {}
        """By their kind and their number or name; empty where one is there no more."""

    def find(self, kind: str, name: Name = 0) -> bytes | None:
        """Return a part as it is after the edit; None where there is none."""
        if (kind, name) in self.parts:
            return self.parts[kind, name] or None
        return self.kept.find(kind, name)

    def project(self, project: str) -> Named:
        """Return a project; raises Unsure where there is none."""
        found = self.find("project", project)
        if found is None:
            raise Unsure
        known: Named = marshal.loads(found)
        return known

    def put_project(self, project: str, title: str, occasions: Iterable[str], naming: Iterable[str]) -> None:
        """Put a project in the place of what was kept of it."""
        self.parts["project", project] = project_kept(title, occasions, naming)


def project_kept(title: str, occasions: Iterable[str], naming: Iterable[str]) -> bytes:
    """Return a project as it is kept."""
    return marshal.dumps((title, tuple(occasions), sorted(naming)))
