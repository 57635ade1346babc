"""Answers after an edit: only what it concerns is worked out again, and put before what is kept.

Concerned are the blanks of rows that came or went, blanks that were edited, those pressed for projects of another
name, and, where what one of these tells others is another, the blanks of its substrate whose beginning rests on that.
The records were right when all was kept, so it is enough that what was edited is (`records.glance`). Where that can't
be told so quickly, or where very many rows came since all was made, all is made afresh.
"""

from __future__ import annotations

import json
import marshal
import os
import re
import zlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Final, cast

from maker_site.writer.answers_kept import NO_TEXT, Kept, Name, Parts, said, understood
from maker_site.writer.fingerprint import Fingerprint, touched

if TYPE_CHECKING:
    from maker_site.records import Blank, Press, Pressing, Workshop
    from maker_site.records.gist import BlankGist, PressGist, Row
    from maker_site.records.glance import ProjectSeen, Table
    from maker_site.workings.evidence import Evidence
    from maker_site.workings.finding.told import Teller
    from maker_site.writer.answers_overlay import Came, Order

_MOST_FILES: Final = 100
"""Edited at once; more are read with all the others."""
_A_FEW_ROWS, _PART = 2000, 2
"""Rows on the overlay, beside a part of those in the base. With more it is laid anew, without those gone again; where
more than half as many are left, all is made afresh."""
_LOG: Final = re.compile(r"press-log/(?![._])[^/]+\.csv")
_BLANK: Final = re.compile(r"blanks/(?![._])([^/]+?)(?:\.yaml|/blank\.yaml)")
_SUPPLY: Final = re.compile(r"supplies/(?![._])([^/]+)\.yaml")
_PRESS: Final = re.compile(r"presses/(?![._])[^/]+\.yaml")
_PROJECT: Final = re.compile(r"projects/(?![._])([^/]+)/project\.yaml")


def mended(kept: Kept, content: Path, now: Fingerprint) -> Parts | None:
    """Return what goes before what is kept, so that it is as if made now; empty where nothing was really changed, and
    may be soon. None where all has to be made afresh. Raises what damage raises.
    """
    before = kept.part("stamps").decode("utf-8", "surrogateescape").split("\n")
    edits = dict(_edits(kept, content, touched(before, now.lines)))
    if not edits and not now.is_settled:
        return {}
    changed: dict[tuple[str, Name], bytes] = {}
    if edits:
        from maker_site.records.glance import Unsure

        try:
            if len(edits) > _MOST_FILES:
                return None
            changed = _Mending(kept, content).after(edits)
        except Unsure:
            return None
    changed["stamps", 0] = "\n".join(now.lines).encode("utf-8", "surrogateescape")
    changed["records", 0] = now.records.encode()
    changed["mark", 0] = kept.based("mark")
    return {**kept.patched(), **changed}


def _edits(kept: Kept, content: Path, paths: Iterable[str]) -> Iterator[tuple[str, tuple[bytes, bytes | None]]]:
    """Yield the files that say something else than they did: what was kept of each, and its bytes now."""
    for path in paths:
        held = kept.find("text", path.encode("utf-8", "surrogateescape")) or NO_TEXT
        try:
            raw = Path(os.path.join(content, path)).read_bytes()  # noqa: PTH118
        except OSError:
            raw = None
        if raw is None or held == NO_TEXT or zlib.decompress(held) != raw:
            yield path, (held, raw)


class _Mending:
    """One go at it."""

    def __init__(self, kept: Kept, content: Path) -> None:
        from maker_site.records.glance import Bare

        self._kept, self._content = kept, content
        self._true_root = os.path.realpath(content)
        self._changed: dict[tuple[str, Name], bytes] = {}
        self._bare = Bare(*marshal.loads(kept.part("bare")))
        self._presses: dict[str, PressGist] = understood(kept.part("press gists"))
        self._substrates: dict[str, str] = marshal.loads(kept.part("substrates"))
        self._tellers: dict[str, dict[str, Teller]] = {}
        self._stirred: set[str] = set()
        """Substrates of which something else is told than before."""
        self._anew: set[str] = set()
        """Substrates of a blank that was worked out again."""
        self._known = {*self._substrates}
        """The ids of all blanks."""
        self._concerned: set[str] = set()
        self._logs: dict[str, Table | None] = {}
        """The edited files of the log, as they are now."""
        self._rows: dict[str, tuple[Row, ...]] = {}

    def after(self, edits: Mapping[str, tuple[bytes, bytes | None]]) -> dict[tuple[str, Name], bytes]:
        """Return the parts that are others after some edits; raises Unsure."""
        blanks: dict[str, BlankGist] = {}
        later: list[tuple[str, bytes, bytes | None]] = []
        for path, (held, raw) in sorted(edits.items(), key=lambda each: not _SUPPLY.fullmatch(each[0])):
            self._question(path, held, raw)
            if found := _BLANK.fullmatch(path):
                blanks[found[1]] = self._blank(found[1], path, held, raw)
            elif _PROJECT.fullmatch(path) or _LOG.fullmatch(path):
                later.append((path, held, raw))
            else:
                self._bystander(path, held, raw)
            self._changed["text", path.encode()] = b""
        for path, held, raw in later:  # the log names projects
            if found := _PROJECT.fullmatch(path):
                self._project(found[1], held, raw)
        for path, held, raw in later:
            if _LOG.fullmatch(path):
                self._log(path, held, raw)
        self._rework(blanks)
        self._lay()
        for path, (_, raw) in edits.items():
            if raw is not None:
                self._changed["text", path.encode()] = zlib.compress(raw, 1)
        return self._changed

    def _question(self, path: str, held: bytes, raw: bytes | None) -> None:
        """Raise Unsure where a file is not plainly one that is read."""
        from maker_site.records.glance import Unsure

        if not path.isprintable() or (raw is None and held == NO_TEXT):
            raise Unsure
        full = os.path.join(self._content, path)  # noqa: PTH118
        if raw is None:
            if os.path.lexists(full) or (_PROJECT.fullmatch(path) and os.path.lexists(os.path.dirname(full))):  # noqa: PTH120
                raise Unsure
        elif os.path.realpath(full) != os.path.join(self._true_root, *path.split("/")):  # noqa: PTH118
            raise Unsure

    def _blank(self, blank: str, path: str, held: bytes, raw: bytes | None) -> BlankGist:
        from maker_site.records.content_folder import wrong_id
        from maker_site.records.glance import Unsure, blank_of, text_of

        if raw is None:
            raise Unsure
        is_new = held == NO_TEXT
        if is_new:
            other = self._content / "blanks" / blank
            if wrong_id(blank) or blank in self._substrates or path.endswith("/blank.yaml") or os.path.lexists(other):
                raise Unsure
        gist = blank_of(blank, None if is_new else _unpacked(held), text_of(raw), self._bare)
        self._concerned.add(blank)
        self._known.add(blank)
        return gist

    def _bystander(self, path: str, held: bytes, raw: bytes | None) -> None:
        """Judge a record that no setting depends on, or of which only such is edited."""
        from maker_site.records.content_folder import wrong_id
        from maker_site.records.glance import PRESS, SHOP, SUPPLY, Unsure, is_right, text_of

        if raw is None:
            raise Unsure
        old, new = None if held == NO_TEXT else _unpacked(held), text_of(raw)
        if found := _SUPPLY.fullmatch(path):
            is_right(SUPPLY, old, new, self._bare, ("name", "kind"))
            if old is None:
                if wrong_id(found[1]):
                    raise Unsure
                self._changed["layers", 0] = marshal.dumps([*self._supplies(), found[1]])
        elif old is None or not (path == "shop.yaml" or _PRESS.fullmatch(path)):
            raise Unsure
        elif path == "shop.yaml":
            is_right(SHOP, old, new, self._bare, ("name", "currency"))
        else:
            is_right(PRESS, old, new, self._bare, ("name",))

    def _project(self, project: str, held: bytes, raw: bytes | None) -> None:
        from maker_site.records.content_folder import wrong_id
        from maker_site.records.glance import Unsure, project_of, text_of

        known = self._find("project", project)
        title, occasions, naming = marshal.loads(known) if known else (None, (), [])
        if raw is None:
            self._concerned.update(naming)
            self._changed["project", project] = b""
            return
        is_new = held == NO_TEXT
        was = marshal.loads(self._kept.part("was"))
        if is_new == bool(known) or (is_new and (wrong_id(project) or project in was or not self._is_plain(project))):
            raise Unsure
        seen = project_of(None if is_new else _unpacked(held), text_of(raw), self._bare)
        self._question_project(project, seen)
        if is_new or (seen.gist.title, seen.gist.occasions) != (title, tuple(occasions)):
            self._concerned.update(naming)
            self._name(project, seen.gist.title, seen.gist.occasions, naming)

    def _question_project(self, project: str, seen: ProjectSeen) -> None:
        """Raise Unsure where a project names what there is not."""
        from maker_site.records.glance import Unsure

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

    def _name(self, project: str, title: str, occasions: Iterable[str], naming: Iterable[str]) -> None:
        self._changed["project", project] = marshal.dumps((title, tuple(occasions), sorted(naming)))

    def _log(self, path: str, held: bytes, raw: bytes | None) -> None:
        from maker_site.records.glance import Unsure, parted, table, text_of

        old = table(path, _unpacked(held)) if held != NO_TEXT else None
        new = self._logs[path] = table(path, text_of(raw)) if raw is not None else None
        gone, come = parted(old, new, self._bare)
        self._concerned |= gone
        layers: set[str] | None = None
        for judged in come:
            row = judged.row
            if judged.photo and row.project and not self._has(f"projects/{row.project}", [judged.photo]):
                raise Unsure
            if row.blank not in self._known or row.press not in self._presses:
                raise Unsure
            if judged.stack:
                layers = layers or self._layers()
                if not layers.issuperset(judged.stack):
                    raise Unsure
            self._concerned.add(row.blank)
            if row.project:
                title, occasions, naming = self._named(row.project)
                if row.blank not in naming:
                    self._name(row.project, title, occasions, {*naming, row.blank})

    def _layers(self) -> set[str]:
        from maker_site.records.words import STACK_LAYERS

        return {*STACK_LAYERS, *self._supplies()}

    def _supplies(self) -> list[str]:
        found: list[str] = marshal.loads(self._find("layers") or b"")
        return found

    def _named(self, project: str) -> tuple[str, tuple[str, ...], list[str]]:
        from maker_site.records.glance import Unsure

        found = self._find("project", project)
        if found is None:
            raise Unsure
        known: tuple[str, tuple[str, ...], list[str]] = marshal.loads(found)
        return known

    def _find(self, kind: str, name: Name = 0) -> bytes | None:
        if (kind, name) in self._changed:
            return self._changed[kind, name] or None
        return self._kept.find(kind, name)

    def _alike(self, substrate: str) -> dict[str, Teller]:
        if substrate not in self._tellers:
            found = self._kept.find("tellers", substrate)
            self._tellers[substrate] = understood(found) if found else {}
        return self._tellers[substrate]

    def _rework(self, blanks: Mapping[str, BlankGist]) -> None:
        """Work out the concerned blanks, and those that rest on what these tell."""
        groups = {}
        for blank in sorted(self._concerned):
            known = self._substrates.get(blank)
            gist = blanks.get(blank) or self._alike(known or "")[blank].blank
            groups[blank] = self._evidence(gist)
            self._tell(gist, groups[blank], known)
        for substrate in self._stirred:
            for blank, each in self._alike(substrate).items():
                if each.leans and blank not in groups:
                    groups[blank] = self._evidence(each.blank)
        for substrate in self._anew | self._stirred:
            self._changed["tellers", substrate] = said(self._alike(substrate))
        if not blanks.keys() <= self._substrates.keys() or any(
            self._substrates[blank] != gist.substrate for blank, gist in blanks.items()
        ):
            self._substrates |= {blank: gist.substrate for blank, gist in blanks.items()}
            self._changed["substrates", 0] = marshal.dumps(self._substrates)
            self._changed["blanks", 0] = json.dumps(sorted(self._substrates), ensure_ascii=False).encode()
        for blank, found in groups.items():
            self._settle(blank, found)

    def _tell(self, gist: BlankGist, groups: Sequence[Evidence], substrate: str | None) -> None:
        from maker_site.workings.finding.told import teller

        before = self._alike(substrate).get(gist.id) if substrate is not None else None
        now = self._alike(gist.substrate)[gist.id] = teller(gist, groups)
        self._anew.add(gist.substrate)
        if _heard(before) == _heard(now):
            return
        if before is not None and substrate is not None and substrate != gist.substrate:
            del self._alike(substrate)[gist.id]
            self._stirred.add(substrate)
        self._stirred.add(gist.substrate)

    def _evidence(self, gist: BlankGist) -> tuple[Evidence, ...]:
        """Return the settings of a blank, of its rows as they are now."""
        from maker_site.records.glance import rows_on
        from maker_site.workings.evidence import evidence

        held = self._find("log", gist.id)
        files: dict[str, tuple[Row, ...]] = understood(held) if held else {}
        if gist.id in self._concerned and self._logs:
            for name, now in self._logs.items():
                rows = rows_on(gist.id, now, self._bare) if now is not None else ()
                if rows:
                    files[name] = rows
                else:
                    files.pop(name, None)
            self._changed["log", gist.id] = said(files)
        self._rows[gist.id] = tuple(row for _, rows in sorted(files.items()) for row in rows)
        return evidence(
            cast("Sequence[Pressing]", self._rows[gist.id]),
            {gist.id: cast("Blank", gist)},
            cast("Mapping[str, Press]", self._presses),
        )

    def _settle(self, blank: str, groups: Sequence[Evidence]) -> None:
        """Put in order what a blank's rows say, and where to begin with it."""
        from maker_site.records.gist import Bench, ProjectGist
        from maker_site.workings.finding.index import words_said
        from maker_site.workings.finding.rows import MOST_POINTS, rows_on, starts
        from maker_site.workings.starting_point import starting_points

        tellers = self._alike(self._substrates[blank])
        projects = {row.project: self._named(row.project) for row in self._rows[blank] if row.project}
        gists = {each: ProjectGist(title, occasions) for each, (title, occasions, _) in projects.items()}
        bench = bench_of(Bench({name: each.blank for name, each in tellers.items()}, self._presses, gists))
        record = bench.blanks[blank]
        points = starting_points(record, bench, near(blank, groups, tellers), most=MOST_POINTS)
        self._changed["start", blank] = json.dumps(starts(record, points), ensure_ascii=False).encode()
        rows = [
            (
                json.dumps(row.facts, ensure_ascii=False),
                row.like,
                self._order.place(row.order),
                {word: int(weight) for word, weight in words_said(row.sayings).items()},
                [(span.kind, span.low, span.high) for span in dict.fromkeys(row.sayings.spans)],
            )
            for row in rows_on(record, bench, groups, points)
        ]
        self._changed["rows", blank] = zlib.compress(marshal.dumps(rows), 1)

    @cached_property
    def _order(self) -> Order:
        from maker_site.writer.answers_overlay import Order

        return Order(self._kept)

    def _lay(self) -> None:
        """Put the rows that came over those of the base."""
        from maker_site.records.glance import Unsure
        from maker_site.writer.answers_overlay import Laying, Overlay

        anew = [str(name) for kind, name in self._changed if kind == "rows"]
        if not anew:
            return
        laying = Laying(self._kept, Overlay(self._kept.find("overlay")))
        for blank in anew:
            held = self._kept.find("rows", blank)
            laying.put(blank, came(held) if held else (), came(self._changed["rows", blank]))
        most = _A_FEW_ROWS + len(self._order) // _PART
        if len(laying.overlay.rows) > most:  # with many that are gone again
            blanks = laying.overlay.blanks
            laying = Laying(self._kept, Overlay())
            for blank in blanks:
                laying.put(blank, (), came(self._find("rows", blank) or b""))
            if len(laying.overlay.rows) > most // 2:
                raise Unsure
        self._changed["overlay", 0] = bytes(laying.overlay)


def came(data: bytes) -> Sequence[Came]:
    """Return rows out of what is kept of them."""
    found: list[Came] = marshal.loads(zlib.decompress(data))
    return found


def _heard(teller: Teller | None) -> str:
    """Return what concerns others in what a blank tells, as it was typed."""
    if teller is None:
        return ""
    blank = teller.blank
    return repr((blank.name, blank.substrate, blank.thickness, blank.supplier, teller.telling))


def bench_of(bench: object) -> Workshop:
    """Return gists as a workshop: they have what settings are worked out from."""
    return cast("Workshop", bench)


def near(blank: str, groups: Sequence[Evidence], tellers: Mapping[str, Teller]) -> list[Evidence]:
    """Return what counts for a blank: all of its own, of those alike what they tell."""
    others = (each for other, teller in tellers.items() if other != blank for each in teller.telling)
    return [*groups, *cast("Iterable[Evidence]", others)]


def points_on(kept: Kept, blank: str, press: str) -> Sequence[Mapping[str, object]]:
    """Return the facts of where to begin with a blank on one press, out of what is kept; both must be known."""
    from maker_site.records.gist import Bench
    from maker_site.workings.evidence import evidence
    from maker_site.workings.finding.rows import MOST_POINTS, starts
    from maker_site.workings.starting_point import starting_points

    tellers: dict[str, Teller] = understood(kept.part("tellers", marshal.loads(kept.part("substrates"))[blank]))
    presses = understood(kept.part("press gists"))
    bench = bench_of(Bench({name: each.blank for name, each in tellers.items()}, presses, {}))
    held = kept.find("log", blank)
    rows = [row for each in understood(held).values() for row in each] if held else []
    record = bench.blanks[blank]
    groups = evidence(rows, {blank: record}, bench.presses)
    found = starting_points(record, bench, near(blank, groups, tellers), bench.presses[press], most=MOST_POINTS)
    return starts(record, found)


def _unpacked(held: bytes) -> str:
    from maker_site.records.glance import text_of

    return text_of(zlib.decompress(held))
