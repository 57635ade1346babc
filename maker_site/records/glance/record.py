"""What an edited or new record says, a file of YAML.

Inner module of the records room.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any, Final

from maker_site.frozen import frozen
from maker_site.records.gist import BlankGist, ProjectGist, Sheet
from maker_site.records.glance.fields import BLANK, PROJECT
from maker_site.records.glance.reading import Bare, read, spec_of
from maker_site.records.glance.unsure import Unsure
from maker_site.records.yaml_text import read_yaml

_OF_A_BLANK: Final = ("thickness", "supplier", "code", "limit")
_USUAL_METHOD: Final = "sublimation"


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
    before = read_yaml(old, "").fields if old is not None else {}
    tree = read_yaml(new, "")
    if tree.problems:
        raise Unsure
    return tree.fields, {key for key in before.keys() | tree.fields if before.get(key) != tree.fields.get(key)}


def _all_of(
    specs: Mapping[str, Any], wanted: Iterable[str], changed: Iterable[str], fields: Mapping[str, Any], bare: Bare
) -> dict[str, Any]:
    """Return what some fields mean, by their names; all that were changed must be known."""
    for key in changed:
        spec_of(specs, key)
    return {key: read(fields[key], specs[key], bare) for key in wanted if key in fields}
