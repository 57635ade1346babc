"""The rows of the blanks that an edit concerns, worked out again from gists, and laid over those that are kept."""

from __future__ import annotations

import json
import marshal
import zlib
from collections.abc import Mapping, Sequence
from functools import cached_property
from typing import TYPE_CHECKING, cast

from maker_site.records.glance.unsure import Unsure
from maker_site.writer.answers_draft import Draft
from maker_site.writer.answers_judged import Concern
from maker_site.writer.answers_kept import said, understood
from maker_site.writer.answers_points import bench_of, near

if TYPE_CHECKING:
    from maker_site.records import Blank, Press, Pressing
    from maker_site.records.gist import BlankGist, PressGist, Row
    from maker_site.records.glance.reading import Bare
    from maker_site.workings.evidence import Evidence
    from maker_site.workings.finding.told import Teller
    from maker_site.writer.answers_overlay import Came, Order

_A_FEW_ROWS, _PART = 2000, 2
"""Rows on the overlay, beside a part of those in the base. With more it is laid anew, without those gone again; where
more than half as many are left, all is made afresh."""


def rework(draft: Draft, bare: Bare, concern: Concern) -> None:
    """Put into the draft what is another for the concerned blanks, and for those that rest on what these tell.

    Raises Unsure where so many rows have come that all is better made afresh.
    """
    _Reworking(draft, bare, concern).work()


class _Reworking:
    """One go at it."""

    def __init__(self, draft: Draft, bare: Bare, concern: Concern) -> None:
        self._draft, self._bare, self._concern = draft, bare, concern
        self._presses: dict[str, PressGist] = understood(draft.kept.part("press gists"))
        self._substrates: dict[str, str] = marshal.loads(draft.kept.part("substrates"))
        self._tellers: dict[str, dict[str, Teller]] = {}
        self._stirred: set[str] = set()
        """Substrates of which something else is told than before."""
        self._anew: set[str] = set()
        """Substrates of a blank that was worked out again."""
        self._rows: dict[str, tuple[Row, ...]] = {}

    def _alike(self, substrate: str) -> dict[str, Teller]:
        if substrate not in self._tellers:
            found = self._draft.kept.find("tellers", substrate)
            self._tellers[substrate] = understood(found) if found else {}
        return self._tellers[substrate]

    def work(self) -> None:
        """Work out the concerned blanks, and those that rest on what these tell."""
        blanks = self._concern.blanks
        groups = {}
        for blank in sorted(self._concern.ids):
            known = self._substrates.get(blank)
            gist = blanks.get(blank) or self._alike(known or "")[blank].blank
            groups[blank] = self._evidence(gist)
            self._tell(gist, groups[blank], known)
        for substrate in self._stirred:
            for blank, each in self._alike(substrate).items():
                if each.leans and blank not in groups:
                    groups[blank] = self._evidence(each.blank)
        for substrate in self._anew | self._stirred:
            self._draft.parts["tellers", substrate] = said(self._alike(substrate))
        if not blanks.keys() <= self._substrates.keys() or any(
            self._substrates[blank] != gist.substrate for blank, gist in blanks.items()
        ):
            self._substrates |= {blank: gist.substrate for blank, gist in blanks.items()}
            self._draft.parts["substrates", 0] = marshal.dumps(self._substrates)
            self._draft.parts["blanks", 0] = json.dumps(sorted(self._substrates), ensure_ascii=False).encode()
        for blank, found in groups.items():
            self._settle(blank, found)
        self._lay()

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
        from maker_site.records.glance.log import rows_on
        from maker_site.workings.evidence import evidence

        held = self._draft.find("log", gist.id)
        files: dict[str, tuple[Row, ...]] = understood(held) if held else {}
        if gist.id in self._concern.ids and self._concern.logs:
            for name, now in self._concern.logs.items():
                rows = rows_on(gist.id, now, self._bare) if now is not None else ()
                if rows:
                    files[name] = rows
                else:
                    files.pop(name, None)
            self._draft.parts["log", gist.id] = said(files)
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
        projects = {row.project: self._draft.project(row.project) for row in self._rows[blank] if row.project}
        gists = {each: ProjectGist(title, occasions) for each, (title, occasions, _) in projects.items()}
        bench = bench_of(Bench({name: each.blank for name, each in tellers.items()}, self._presses, gists))
        record = bench.blanks[blank]
        points = starting_points(record, bench, near(blank, groups, tellers), most=MOST_POINTS)
        self._draft.parts["start", blank] = json.dumps(starts(record, points), ensure_ascii=False).encode()
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
        self._draft.parts["rows", blank] = zlib.compress(marshal.dumps(rows), 1)

    @cached_property
    def _order(self) -> Order:
        from maker_site.writer.answers_overlay import Order

        return Order(self._draft.kept)

    def _lay(self) -> None:
        """Put the rows that came over those of the base."""
        from maker_site.writer.answers_overlay import Laying, Overlay

        anew = [str(name) for kind, name in self._draft.parts if kind == "rows"]
        if not anew:
            return
        laying = Laying(self._draft.kept, Overlay(self._draft.kept.find("overlay")))
        for blank in anew:
            held = self._draft.kept.find("rows", blank)
            laying.put(blank, came(held) if held else (), came(self._draft.parts["rows", blank]))
        most = _A_FEW_ROWS + len(self._order) // _PART
        if len(laying.overlay.rows) > most:  # with many that are gone again
            blanks = laying.overlay.blanks
            laying = Laying(self._draft.kept, Overlay())
            for blank in blanks:
                laying.put(blank, (), came(self._draft.find("rows", blank) or b""))
            if len(laying.overlay.rows) > most // 2:
                raise Unsure
        self._draft.parts["overlay", 0] = bytes(laying.overlay)


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
