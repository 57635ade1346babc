"""A bounded search for one piece more than straight cuts give: the sheet is filled from its lowest hollow up.

Inner module of the sheet layout. Lengths are whole numbers of one common unit.

The filled part's upper outline is kept as runs of equal height. At the left end of the lowest run lies a piece, a
turned piece, or nothing; what lies idle may not exceed the sheet's area less that of the pieces wanted. A run whose
length no sum of the sides makes up loses the rest in every row above it, and so do columns, which ends most
attempts early. An outline that failed once is not tried again with as much idle already.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import NamedTuple

from maker_site.workings.sheet_layout.cuts import Box
from maker_site.workings.sheet_layout.steps import after, filled, steps


class _Run(NamedTuple):
    x: int
    width: int
    height: int


_Outline = tuple[_Run, ...]


class _Try(NamedTuple):
    outline: _Outline
    idle: int
    box: Box | None


class Found(NamedTuple):
    """The outcome of a search."""

    boxes: list[Box] | None
    """The layout; None where none was found."""
    ended: bool
    """Everything was tried, or a layout was found; False where the limit ended the search."""


def search(room: tuple[int, int], piece: tuple[int, int], wanted: int, limit: int) -> Found:
    """Look for a layout of `wanted` pieces, examining at most `limit` outlines."""
    hollow = _Hollows(room, piece)
    spare = room[0] * room[1] - wanted * piece[0] * piece[1]
    if spare < 0:
        return Found(None, ended=True)
    start: _Outline = (_Run(0, room[0], 0),)
    failed: dict[_Outline, int] = {}
    boxes: list[Box] = []
    path: list[tuple[_Try, Iterator[_Try]]] = [(_Try(start, 0, None), hollow.fillings(start, 0))]
    for _ in range(limit):
        attempt = next(path[-1][1], None)
        if attempt is None:  # all ways on from here failed
            (outline, idle, box), _ways = path.pop()
            failed[outline] = min(idle, failed.get(outline, idle))
            if box:
                boxes.pop()
            if not path:
                return Found(None, ended=True)
            continue
        outline, idle, box = attempt
        if box and len(boxes) + 1 == wanted:
            return Found([*boxes, box], ended=True)
        if failed.get(outline, spare + 1) <= idle or idle + hollow.sure_loss(outline) > spare:
            continue
        if box:
            boxes.append(box)
        path.append((attempt, hollow.fillings(outline, idle)))
    return Found(None, ended=False)


class _Hollows:
    """What can be done with the lowest run of an outline, and what is lost above one."""

    def __init__(self, room: tuple[int, int], piece: tuple[int, int]) -> None:
        self.width, self.height = room
        self.ways = (piece, piece[::-1]) if piece[0] != piece[1] else (piece,)
        self.short = min(piece)
        self.sums = steps(max(room), max(piece), min(piece))

    def fillings(self, outline: _Outline, idle: int) -> Iterator[_Try]:
        """Yield the outlines that come next, with what then lies idle."""
        index = min(range(len(outline)), key=lambda each: outline[each].height)
        x, width, low = outline[index]
        left = outline[index - 1].height if index else self.height
        right = outline[index + 1].height if index + 1 < len(outline) else self.height
        if width < self.short:
            to = min(left, right)
            if to > low:
                yield _Try(_raised(outline, index, width, to), idle + width * (to - low), None)
            return
        for wide, high in self.ways:
            if wide <= width and low + high <= self.height:
                box = Box(x, low, wide, high)
                yield _Try(_raised(outline, index, wide, low + high), idle, box)
        beyond = after(x, self.sums, x + width)
        to = after(low, self.sums, left)
        if to > low:
            yield _Try(_raised(outline, index, beyond - x, to), idle + (beyond - x) * (to - low), None)

    def sure_loss(self, outline: _Outline) -> int:
        """Return an area above the outline that no filling can use."""
        columns = sum(run.width * self._rest(self.height - run.height) for run in outline)
        levels = sorted({run.height for run in outline} | {self.height})
        rows = sum((upper - lower) * self._row_rest(outline, lower) for lower, upper in pairwise(levels))
        return max(columns, rows)

    def _row_rest(self, outline: _Outline, level: int) -> int:
        lost = free = 0
        for run in outline:
            if run.height <= level:
                free += run.width
            else:
                lost += self._rest(free)
                free = 0
        return lost + self._rest(free)

    def _rest(self, room: int) -> int:
        return room - filled(room, self.sums)


def _raised(outline: _Outline, index: int, width: int, to: int) -> _Outline:
    """Return the outline with the left `width` of one run raised, runs of equal height joined."""
    run = outline[index]
    before, behind = outline[:index], outline[index + 1 :]
    raised = _Run(run.x, width, to)
    if before and before[-1].height == to:
        raised = _Run(before[-1].x, before[-1].width + width, to)
        before = before[:-1]
    if width < run.width:
        return (*before, raised, _Run(run.x + width, run.width - width, run.height), *behind)
    if behind and behind[0].height == to:
        raised = _Run(raised.x, raised.width + behind[0].width, to)
        behind = behind[1:]
    return (*before, raised, *behind)
