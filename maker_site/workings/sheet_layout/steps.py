"""The places where a packed piece can begin: sums of the piece's two sides.

Inner module of the sheet layout. Lengths are whole numbers of one common unit. Every packing of identical
rectangles can be pushed to the left and down until each piece begins at such a sum ("normal patterns", Herz 1972,
from memory), so no other place need be tried.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence


def steps(room: int, long: int, short: int) -> list[int]:
    """Return the sums of any number of both sides from 0 to `room`, ascending."""
    return sorted(
        {i * long + j * short for i in range(room // long + 1) for j in range((room - i * long) // short + 1)}
    )


def filled(room: int, sums: Sequence[int]) -> int:
    """Return the most of `room` that pieces side by side can take up."""
    return sums[bisect_right(sums, room) - 1]


def after(place: int, sums: Sequence[int], end: int) -> int:
    """Return the next sum beyond `place`, at most `end`."""
    index = bisect_right(sums, place)
    return min(sums[index], end) if index < len(sums) else end
