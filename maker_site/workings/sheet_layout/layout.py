"""The layout of identical transfers on one sheet.

Inner module of the sheet layout.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from math import lcm
from typing import Final

from maker_site.frozen import frozen
from maker_site.workings.sheet_layout.cuts import Box, cut_layout
from maker_site.workings.sheet_layout.outline import search
from maker_site.workings.sheet_layout.steps import filled, steps

_MOST_SEARCHED: Final = 120
"""Pieces beyond which straight cuts are good enough: a piece more is then under a hundredth of the sheet."""
_LIMITS: Final = (400, 4_000, 25_000)
"""Outlines examined, lengthwise and then crosswise, before the search is given up; together about half a second."""


@frozen
class Placed:
    """One transfer on the sheet."""

    x: Fraction
    """mm from the sheet's left edge to the piece's."""
    y: Fraction
    """mm from the sheet's upper edge to the piece's."""
    turned: bool
    """Turned by a quarter, so that its width runs down the sheet."""


@frozen
class SheetLayout:
    """Where identical pieces lie on one sheet, margins and gaps kept."""

    piece: tuple[Fraction, Fraction]
    """Width and height in mm, with bleed."""
    sheet: tuple[Fraction, Fraction]
    """Width and height in mm."""
    margin: Fraction
    """mm left free along each edge."""
    gap: Fraction
    """mm left free between pieces."""
    places: tuple[Placed, ...]
    """From the top down, then from the left."""
    proven: bool
    """No layout holds more; False where the search was ended before all was tried."""

    @property
    def count(self) -> int:
        """Pieces on the sheet."""
        return len(self.places)


@lru_cache(maxsize=1024)
def lay_out(
    piece: tuple[Fraction, Fraction],
    sheet: tuple[Fraction, Fraction],
    margin: Fraction = Fraction(0),
    gap: Fraction = Fraction(0),
) -> SheetLayout:
    """Return the layout of as many pieces as fit, upright, turned and mixed; lengths in mm.

    Never fewer than the better of the two grids. A gap is kept between pieces, not along the margins: piece and
    usable sheet both grow by it, and then pieces touch.
    """
    if min(piece) <= 0 or min(sheet) <= 0 or margin < 0 or gap < 0:
        raise ValueError("sides must be more than nothing; margin and gap not less")
    usable = [side - 2 * margin + gap for side in sheet]
    grown = [side + gap for side in piece]
    unit = lcm(*(length.denominator for length in (*usable, *grown)))
    room = (int(usable[0] * unit), int(usable[1] * unit))
    sides = (int(grown[0] * unit), int(grown[1] * unit))
    boxes, proven = _packed(room, sides)
    places = sorted(
        (
            Placed(margin + Fraction(box.x, unit), margin + Fraction(box.y, unit), turned=box.width != sides[0])
            for box in boxes
        ),
        key=lambda placed: (placed.y, placed.x),
    )
    return SheetLayout(piece, sheet, margin, gap, tuple(places), proven)


def sheets_needed(pieces: int, per_sheet: int) -> int:
    """Return the whole sheets that so many pieces take; `per_sheet` is 1 or more."""
    return -(-pieces // per_sheet)


def _packed(room: tuple[int, int], sides: tuple[int, int]) -> tuple[list[Box], bool]:
    """Return the boxes, and whether more can't fit."""
    if min(room) <= 0 or max(sides) > max(room) or min(sides) > min(room):
        return [], True
    sums = steps(max(room), max(sides), min(sides))
    tight = (filled(room[0], sums), filled(room[1], sums))  # what is beyond holds no piece in any layout
    best = cut_layout(tight, sides)
    bound = tight[0] * tight[1] // (sides[0] * sides[1])
    if len(best) == bound or sides[0] == sides[1]:
        return best, True
    if len(best) > _MOST_SEARCHED:
        return best, False
    return _improved(tight, sides, best, bound)


def _improved(room: tuple[int, int], sides: tuple[int, int], best: list[Box], bound: int) -> tuple[list[Box], bool]:
    while len(best) < bound:
        for limit in _LIMITS:
            upright = search(room, sides, len(best) + 1, limit)
            if upright.ended:
                better = upright.boxes
                break
            across = search(room[::-1], sides, len(best) + 1, limit)
            if across.ended:
                better = across.boxes and [Box(box.y, box.x, box.height, box.width) for box in across.boxes]
                break
        else:
            return best, False
        if better is None:
            return best, True
        best = better
    return best, True
