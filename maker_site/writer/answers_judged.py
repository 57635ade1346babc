"""What edited files say now, where it is plainly right, and which blanks that concerns.

The records were right when all was kept, so it is enough that what was edited is (`records.glance`). Where that can't
be told so quickly, Unsure is raised.
"""

from __future__ import annotations

import marshal
import os
import re
import zlib
from collections.abc import Iterable, Mapping, Sequence, Set
from pathlib import Path
from typing import TYPE_CHECKING, Final

from maker_site.frozen import frozen
from maker_site.records.glance.unsure import Unsure, text_of
from maker_site.writer.answers_draft import Draft
from maker_site.writer.answers_kept import NO_TEXT, understood

if TYPE_CHECKING:
    from maker_site.records.gist import BlankGist
    from maker_site.records.glance.log import Table
    from maker_site.records.glance.reading import Bare
    from maker_site.records.glance.record import ProjectSeen

_LOG: Final = re.compile(r"press-log/(?![._])[^/]+\.csv")
_BLANK: Final = re.compile(r"blanks/(?![._])([^/]+?)(?:\.yaml|/blank\.yaml)")
_SUPPLY: Final = re.compile(r"supplies/(?![._])([^/]+)\.yaml")
_PRESS: Final = re.compile(r"presses/(?![._])[^/]+\.yaml")
_PROJECT: Final = re.compile(r"projects/(?![._])([^/]+)/project\.yaml")


@frozen
class Edit:
    """A file that says something else than it did."""

    path: str
    """From the content folder, with forward slashes."""
    held: bytes
    """What was kept of it; `NO_TEXT` where it was not there."""
    raw: bytes | None
    """Its bytes now; None where it is gone."""

    @property
    def is_new(self) -> bool:
        """It was not there before."""
        return self.held == NO_TEXT

    @property
    def was(self) -> str | None:
        """What it said; None where it was not there. Raises Unsure where that is no text."""
        return None if self.is_new else text_of(zlib.decompress(self.held))

    @property
    def says(self) -> str:
        """What it says now; raises Unsure where it is gone, or no text."""
        if self.raw is None:
            raise Unsure
        return text_of(self.raw)


@frozen
class Concern:
    """What edits concern."""

    blanks: Mapping[str, BlankGist]
    """Those that were edited or are new, as they are now."""
    ids: Set[str]
    """Of all blanks that are to be worked out again; those that rest on what these tell are not among them."""
    logs: Mapping[str, Table | None]
    """The edited files of the log, as they are now; None for one that is gone."""


def judged(draft: Draft, content: Path, bare: Bare, edits: Iterable[Edit]) -> Concern:
    """Judge edits, and put into the draft what they say; raises Unsure."""
    return _Judging(draft, content, bare).judged(edits)


class _Judging:
    """One go at it."""

    def __init__(self, draft: Draft, content: Path, bare: Bare) -> None:
        self._draft, self._content, self._bare = draft, content, bare
        self._true_root = os.path.realpath(content)
        self._known: set[str] = {*marshal.loads(draft.kept.part("substrates"))}
        """The ids of all blanks."""
        self._presses: Set[str] = {*understood(draft.kept.part("press gists"))}
        self._concerned: set[str] = set()
        self._logs: dict[str, Table | None] = {}

    def judged(self, edits: Iterable[Edit]) -> Concern:
        """Return what the edits concern."""
        blanks: dict[str, BlankGist] = {}
        later: list[Edit] = []
        for edit in sorted(edits, key=lambda each: not _SUPPLY.fullmatch(each.path)):
            self._question(edit)
            if found := _BLANK.fullmatch(edit.path):
                blanks[found[1]] = self._blank(found[1], edit)
            elif _PROJECT.fullmatch(edit.path) or _LOG.fullmatch(edit.path):
                later.append(edit)
            else:
                self._bystander(edit)
            self._draft.parts["text", edit.path.encode()] = zlib.compress(edit.raw, 1) if edit.raw is not None else b""
        for edit in later:  # the log names projects
            if found := _PROJECT.fullmatch(edit.path):
                self._project(found[1], edit)
        for edit in later:
            if _LOG.fullmatch(edit.path):
                self._log(edit)
        return Concern(blanks, self._concerned, self._logs)

    def _question(self, edit: Edit) -> None:
        """Raise Unsure where a file is not plainly one that is read."""
        if not edit.path.isprintable() or (edit.raw is None and edit.is_new):
            raise Unsure
        full = os.path.join(self._content, edit.path)  # noqa: PTH118
        if edit.raw is None:
            if os.path.lexists(full) or (_PROJECT.fullmatch(edit.path) and os.path.lexists(os.path.dirname(full))):  # noqa: PTH120
                raise Unsure
        elif os.path.realpath(full) != os.path.join(self._true_root, *edit.path.split("/")):  # noqa: PTH118
            raise Unsure

    def _blank(self, blank: str, edit: Edit) -> BlankGist:
        from maker_site.records.content_folder import wrong_id
        from maker_site.records.glance.record import blank_of

        if edit.is_new:
            other = self._content / "blanks" / blank
            if wrong_id(blank) or blank in self._known or edit.path.endswith("/blank.yaml") or os.path.lexists(other):
                raise Unsure
        gist = blank_of(blank, edit.was, edit.says, self._bare)
        self._concerned.add(blank)
        self._known.add(blank)
        return gist

    def _bystander(self, edit: Edit) -> None:
        """Judge a record that no setting depends on, or of which only such is edited."""
        from maker_site.records.content_folder import wrong_id
        from maker_site.records.glance.fields import PRESS, SHOP, SUPPLY
        from maker_site.records.glance.record import is_right

        was, says = edit.was, edit.says
        if found := _SUPPLY.fullmatch(edit.path):
            is_right(SUPPLY, was, says, self._bare, ("name", "kind"))
            if edit.is_new:
                if wrong_id(found[1]):
                    raise Unsure
                self._draft.parts["layers", 0] = marshal.dumps([*self._supplies(), found[1]])
        elif edit.is_new or not (edit.path == "shop.yaml" or _PRESS.fullmatch(edit.path)):
            raise Unsure
        elif edit.path == "shop.yaml":
            is_right(SHOP, was, says, self._bare, ("name", "currency"))
        else:
            is_right(PRESS, was, says, self._bare, ("name",))

    def _project(self, project: str, edit: Edit) -> None:
        from maker_site.records.content_folder import wrong_id
        from maker_site.records.glance.record import project_of

        known = self._draft.find("project", project)
        title, occasions, naming = marshal.loads(known) if known else (None, (), [])
        if edit.raw is None:
            self._concerned.update(naming)
            self._draft.parts["project", project] = b""
            return
        if edit.is_new == bool(known):
            raise Unsure
        if edit.is_new and (wrong_id(project) or project in self._ids_before() or not self._is_plain(project)):
            raise Unsure
        seen = project_of(edit.was, edit.says, self._bare)
        self._question_project(project, seen)
        if edit.is_new or (seen.gist.title, seen.gist.occasions) != (title, tuple(occasions)):
            self._concerned.update(naming)
            self._draft.put_project(project, seen.gist.title, seen.gist.occasions, naming)

    def _question_project(self, project: str, seen: ProjectSeen) -> None:
        """Raise Unsure where a project names what there is not."""
        if seen.blank is not None and seen.blank not in self._known:
            raise Unsure
        if not self._has(f"projects/{project}", seen.files):
            raise Unsure
        if seen.supplies and not {*self._supplies()}.issuperset(seen.supplies):
            raise Unsure
        if seen.stack and not self._layers().issuperset(seen.stack):
            raise Unsure

    def _has(self, home: str, files: Iterable[str]) -> bool:
        """Tell whether all of some files are in a folder."""
        from maker_site.records.content_folder import ContentFolder

        folder = ContentFolder(self._content)
        return all(folder.inner_file(self._content / home, file) is None for file in files)

    def _is_plain(self, project: str) -> bool:
        """Tell whether a new project's folder holds nothing that has to be judged beside its record."""
        home = self._content / "projects" / project
        photos = home / "photos"
        links = [each for each in photos.iterdir() if each.is_symlink()] if photos.is_dir() else []
        return not photos.is_symlink() and not links and not os.path.lexists(home / "tutorial.md")

    def _log(self, edit: Edit) -> None:
        from maker_site.records.glance.log import parted, table

        old = table(edit.path, edit.was) if edit.was is not None else None
        new = self._logs[edit.path] = table(edit.path, edit.says) if edit.raw is not None else None
        gone, come = parted(old, new, self._bare)
        self._concerned |= gone
        layers: set[str] | None = None
        for each in come:
            row = each.row
            if each.photo and row.project and not self._has(f"projects/{row.project}", [each.photo]):
                raise Unsure
            if row.blank not in self._known or row.press not in self._presses:
                raise Unsure
            if each.stack:
                layers = layers or self._layers()
                if not layers.issuperset(each.stack):
                    raise Unsure
            self._concerned.add(row.blank)
            if row.project:
                title, occasions, naming = self._draft.project(row.project)
                if row.blank not in naming:
                    self._draft.put_project(row.project, title, occasions, {*naming, row.blank})

    def _layers(self) -> set[str]:
        from maker_site.records.words import STACK_LAYERS

        return {*STACK_LAYERS, *self._supplies()}

    def _ids_before(self) -> Sequence[str]:
        """Return the ids that projects had once."""
        found: list[str] = marshal.loads(self._draft.kept.part("was"))
        return found

    def _supplies(self) -> list[str]:
        found: list[str] = marshal.loads(self._draft.find("layers") or b"")
        return found
