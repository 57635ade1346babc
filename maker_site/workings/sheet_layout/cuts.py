"""Layouts made by straight cuts through the whole of a part: the sheet is halved until each part is a plain grid.

Inner module of the sheet layout. Lengths are whole numbers of one common unit.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from maker_site.workings.sheet_layout.steps import filled, steps

_ALL_PARTS: Final = 60
"""Steps on both axes together up to which parts are cut again and again."""
_TWO_CUTS: Final = 300
"""Steps up to which each part is cut once more; beyond it, the sheet is cut once."""


class Box(NamedTuple):
    """One piece: its corner nearest to the origin, and its sides as it lies."""

    x: int
    y: int
    width: int
    height: int


class _Best(NamedTuple):
    pieces: int
    cut: tuple[str, int] | None
    """Across x or y, and where; None for a plain grid."""


def cut_layout(room: tuple[int, int], piece: tuple[int, int]) -> list[Box]:
    """Return the best layout by straight cuts, never worse than the better of the two grids."""
    cutter = _Cutter(room, piece)
    return list(cutter.boxes(0, 0, *room, cutter.depth))


class _Cutter:
    def __init__(self, room: tuple[int, int], piece: tuple[int, int]) -> None:
        self.piece = piece
        long, short = max(piece), min(piece)
        self.sums = steps(max(room), long, short)
        many = sum(1 for each in self.sums if each <= room[0]) + sum(1 for each in self.sums if each <= room[1])
        self.depth = 99 if many <= _ALL_PARTS else 2 if many <= _TWO_CUTS else 1
        self.known: dict[tuple[int, int, int], _Best] = {}

    def best(self, width: int, height: int, depth: int) -> _Best:
        width, height = filled(width, self.sums), filled(height, self.sums)
        key = (width, height, depth)
        if key not in self.known:
            self.known[key] = self._work_out(width, height, depth)
        return self.known[key]

    def _work_out(self, width: int, height: int, depth: int) -> _Best:
        wide, high = self.piece
        grid = max((width // wide) * (height // high), (width // high) * (height // wide))
        bound = width * height // (wide * high)
        best = _Best(grid, None)
        if not depth or not grid:
            return best
        for axis, room in (("x", width), ("y", height)):
            for at in self.sums[1:]:
                if best.pieces == bound:
                    return best
                if 2 * at > room:
                    break
                first, second = (
                    ((at, height), (width - at, height)) if axis == "x" else ((width, at), (width, height - at))
                )
                count = self.best(*first, depth - 1).pieces + self.best(*second, depth - 1).pieces
                if count > best.pieces:
                    best = _Best(count, (axis, at))
        return best

    def boxes(self, x: int, y: int, width: int, height: int, depth: int) -> Iterator[Box]:
        width, height = filled(width, self.sums), filled(height, self.sums)
        cut = self.best(width, height, depth).cut
        if cut is None:
            yield from _grid(x, y, width, height, self.piece)
        elif cut[0] == "x":
            yield from self.boxes(x, y, cut[1], height, depth - 1)
            yield from self.boxes(x + cut[1], y, width - cut[1], height, depth - 1)
        else:
            yield from self.boxes(x, y, width, cut[1], depth - 1)
            yield from self.boxes(x, y + cut[1], width, height - cut[1], depth - 1)


def _grid(x: int, y: int, width: int, height: int, piece: tuple[int, int]) -> Iterator[Box]:
    wide, high = max(
        (piece, piece[::-1]), key=lambda sides: (width // sides[0]) * (height // sides[1])
    )  # of two that are equal, the one that is not turned
    for row in range(height // high):
        for column in range(width // wide):
            yield Box(x + column * wide, y + row * high, wide, high)
