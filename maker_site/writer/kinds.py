"""All that a page may have looked at, by its kind, and how what differs between two makes is told."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from maker_site.pages.notebook import MATERIAL, POINTS, Notebook
from maker_site.pages.noting import WHOLE, Noted, NotedOutlines, NotedSupplies, Read
from maker_site.records.base import Record
from maker_site.records.remembered import digest_of
from maker_site.workings.starting_point import StartingPoint

_ABSENT: Final = object()


ASIDES: Final = frozenset({f"{WHOLE}blank", f"{WHOLE}project"})
"""Kinds of which nothing in `order_of`, nor in the order of the public copy, is made."""


def records_of(book: Notebook) -> dict[str, Mapping[str, object]]:
    """Return what is read, as it may be noted by an id, by its kind; rows of the log are noted in `order_of`."""
    workshop = book.workshop
    return {
        "blank": workshop.blanks,
        "press": workshop.presses,
        "supply": workshop.supplies,
        "project": workshop.projects,
        f"{WHOLE}blank": workshop.blanks,
        f"{WHOLE}project": workshop.projects,
        "article": workshop.articles,
        "picture": book.pictures,
        "artwork": book.artwork,
    }


def order_of(book: Notebook) -> dict[str, Mapping[str, object]]:
    """Return what may be noted of how records go together, by its kind."""
    supplies = book.workshop.supplies
    return {
        "rows of project": book.pressings_by_project,
        "rows of blank": book.pressings_by_blank,
        "rows of press": book.pressings_by_press,
        "blanks on": book.blanks_on,
        "projects on": book.names_by_blank,
        "supplies of": supplies.by_kind if isinstance(supplies, NotedSupplies) else {},
    }


def singles_of(book: Notebook) -> dict[str, str]:
    """Return digests of all that is noted as one."""
    found = {"today": book.day, "cautions": book.said, MATERIAL: book.shown_material}
    return {kind: digest_of(value) for kind, value in found.items()}


def differences(
    before: Mapping[str, Mapping[str, object]], now: Mapping[str, Mapping[str, object]]
) -> set[tuple[str, str | None]]:
    """Return what differs between two states of some kinds of things, each with its whole kind."""
    found: set[Read] = set()
    for kind, things in now.items():
        old, new = _plain(kind, before.get(kind, {})), _plain(kind, things)
        names = {name for name, value in new.items() if not _same(old.get(name, _ABSENT), value)}
        names |= old.keys() - new.keys()
        if names:
            found |= {(kind, name) for name in names} | {(kind, None)}
    return found


def digest_of_sum(book: Notebook, kind: str, name: str, of_row: Callable[[str], str | None]) -> str:
    """Return a digest of a sum that is noted by itself; `of_row` gives that of a row of the log by its id."""
    sums = book.apart[kind]
    if name not in sums.names():
        return "-"
    if kind == POINTS:
        return digest_of([_point(point, of_row) for point in book.points[name]])
    return digest_of(sums[name])


def _point(point: StartingPoint, of_row: Callable[[str], str | None]) -> object:
    behind = point.evidence
    pressed = digest_of([of_row(row.id) for row in behind.pressings]) if behind else None
    setting = behind.setting if behind else None
    return (
        *(point.source.value, point.reason, point.true, point.temperature_range, point.time, point.time_range),
        *(point.pressure, point.face, point.press, point.dial, point.relative, setting, pressed),
    )


def _plain(kind: str, things: Mapping[str, object]) -> Mapping[str, object]:
    if isinstance(things, NotedOutlines) and kind.startswith("whole "):
        return things.wholes
    return things.unnoted if isinstance(things, Noted) else things


def _same(one: object, other: object) -> bool:
    if one is other:
        return True
    if isinstance(one, Record) and isinstance(other, Record):
        return one.__dict__ == other.__dict__  # wherever in the file it is written
    return one == other
