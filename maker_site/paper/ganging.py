"""Transfers of one size or of several on as few sheets as can be found.

Identical ones lie as `sheet_layout` has them, which is proven best where it says so. Mixed ones are laid out in many
ways, and the best is taken: whole sheets of each size first, rows, every order of a small handful, and a packer in
several orders. The packer alone is not enough: by itself it places fewer pieces than a plain grid.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from fractions import Fraction
from itertools import permutations, product
from math import ceil, lcm
from typing import Final, NamedTuple

from maker_site.frozen import frozen
from maker_site.workings.sheet_layout import lay_out

Sides = tuple[Fraction, Fraction]
"""Width and height in mm."""

_MOST_PACKED: Final = 160
"""Pieces beyond which whole sheets of each size are taken out first, and the packer sees only the rest."""
_MOST_TRIED: Final = 5
"""Pieces of which every order and turn is tried: 5! x 2^5 = 3,840 layouts."""


@frozen
class Room:
    """A sheet and what is left free of it."""

    sheet: Sides
    margin: Fraction
    """mm along every edge."""
    gap: Fraction
    """mm between pieces."""
    foot: Fraction = Fraction(0)
    """mm more left free at the lower edge."""
    side: Fraction = Fraction(0)
    """mm more left free at the right edge."""

    @property
    def part(self) -> Sides:
        """The sheet less what is free at its foot and side, margins still on it."""
        return self.sheet[0] - self.side, self.sheet[1] - self.foot


@frozen
class Lying:
    """Where one piece lies."""

    piece: int
    """Its place in what was given, from 0."""
    sheet: int
    """From 0."""
    x: Fraction
    """mm from the sheet's left edge."""
    y: Fraction
    """mm from the sheet's upper edge."""
    turned: bool


@frozen
class Ganged:
    """Every piece in its place."""

    places: tuple[Lying, ...]
    """In the order of the pieces."""
    sheets: int
    per_sheet: int
    """Of one size: what a full sheet holds; of several: the most that lie on one."""


class _Box(NamedTuple):
    piece: int
    sheet: int
    x: int
    y: int
    width: int
    height: int


def fits(piece: Sides, room: Room) -> bool:
    """Tell whether one piece fits the sheet, either way round."""
    return bool(lay_out(piece, room.part, room.margin, room.gap).count)


def gang(pieces: Sequence[Sides], room: Room) -> Ganged | None:
    """Return where the pieces lie on as few sheets as were found; None where one of them fits none."""
    if any(min(room.part) <= 2 * room.margin or not fits(sides, room) for sides in set(pieces)):
        return None
    if len(set(pieces)) <= 1:
        return _alike(pieces, room)
    return _mixed(pieces, room)


def fewest(pieces: Sequence[Sides], room: Room) -> int:
    """Return a number of sheets below which no layout can be: by area, a gap grown on each piece."""
    usable = [side - 2 * room.margin + room.gap for side in room.part]
    area = sum((w + room.gap) * (h + room.gap) for w, h in pieces)
    return max(1, ceil(area / (usable[0] * usable[1])))


def _alike(pieces: Sequence[Sides], room: Room) -> Ganged:
    layout = lay_out(pieces[0], room.part, room.margin, room.gap)
    places = []
    for number in range(len(pieces)):
        sheet, place = divmod(number, layout.count)
        at = layout.places[place]
        places.append(Lying(number, sheet, at.x, at.y, at.turned))
    return Ganged(tuple(places), -(-len(pieces) // layout.count), layout.count)


def _mixed(pieces: Sequence[Sides], room: Room) -> Ganged:
    """Lay out pieces of several sizes; lengths become whole numbers, each piece and the sheet grown by the gap."""
    usable = [side - 2 * room.margin + room.gap for side in room.part]
    grown = [(w + room.gap, h + room.gap) for w, h in pieces]
    unit = lcm(*(side.denominator for side in (*usable, *(side for sides in grown for side in sides))))
    space = (int(usable[0] * unit), int(usable[1] * unit))
    sides = [(int(w * unit), int(h * unit)) for w, h in grown]
    bound = fewest(pieces, room)
    best: list[_Box] | None = None
    for boxes in _ways(pieces, sides, space, room, unit):
        if len(boxes) == len(sides) and (best is None or _score(boxes) < _score(best)):
            best = boxes
            if _score(best)[0] == bound == 1:
                break
    assert best is not None  # rows always end
    places = sorted(
        (
            Lying(
                box.piece,
                box.sheet,
                room.margin + Fraction(box.x, unit),
                room.margin + Fraction(box.y, unit),
                turned=(box.width, box.height) != sides[box.piece],
            )
            for box in best
        ),
        key=lambda lying: lying.piece,
    )
    on_each = Counter(box.sheet for box in best)
    return Ganged(tuple(places), len(on_each), max(on_each.values()))


def _score(boxes: Sequence[_Box]) -> tuple[int, int]:
    """Return the number of sheets, and how far down the last one is used: the less of either the better."""
    last = max(box.sheet for box in boxes)
    return last + 1, max(box.y + box.height for box in boxes if box.sheet == last)


def _ways(
    pieces: Sequence[Sides], sides: Sequence[tuple[int, int]], space: tuple[int, int], room: Room, unit: int
) -> Iterator[list[_Box]]:
    """Yield layouts of all pieces, the cheapest to find first."""
    every = list(range(len(sides)))
    whole, rest = _whole_sheets(pieces, room, unit)
    first = max((box.sheet for box in whole), default=-1) + 1
    for some, before in ((every, []), (rest, whole)) if whole else ((every, []),):
        if before and not some:
            yield before
            continue
        from_sheet = first if before else 0
        for found in _ways_of(some, sides, space):
            yield [*before, *(box._replace(sheet=box.sheet + from_sheet) for box in found)]


def _ways_of(some: Sequence[int], sides: Sequence[tuple[int, int]], space: tuple[int, int]) -> Iterator[list[_Box]]:
    yield from (_rows(some, sides, space, turn) for turn in (_as_it_is, _lying, _standing))
    if len(some) <= _MOST_TRIED:
        yield from _every_order(some, sides, space)
    if len(some) <= _MOST_PACKED:
        yield from _packed(some, sides, space)


def _whole_sheets(pieces: Sequence[Sides], room: Room, unit: int) -> tuple[list[_Box], list[int]]:
    """Return sheets filled with one size each, and the pieces that are left."""
    boxes: list[_Box] = []
    rest: list[int] = []
    sheet = 0
    for size in dict.fromkeys(pieces):
        alike = [index for index, sides in enumerate(pieces) if sides == size]
        layout = lay_out(size, room.part, room.margin, room.gap)
        full = len(alike) // layout.count * layout.count
        for number, index in enumerate(alike[:full]):
            at = layout.places[number % layout.count]
            width, height = size[::-1] if at.turned else size
            boxes.append(
                _Box(
                    index,
                    sheet + number // layout.count,
                    int((at.x - room.margin) * unit),
                    int((at.y - room.margin) * unit),
                    int((width + room.gap) * unit),
                    int((height + room.gap) * unit),
                )
            )
        sheet += full // layout.count
        rest += alike[full:]
    return boxes, sorted(rest)


def _as_it_is(sides: tuple[int, int]) -> tuple[int, int]:
    return sides


def _lying(sides: tuple[int, int]) -> tuple[int, int]:
    return max(sides), min(sides)


def _standing(sides: tuple[int, int]) -> tuple[int, int]:
    return min(sides), max(sides)


def _rows(
    some: Sequence[int],
    sides: Sequence[tuple[int, int]],
    space: tuple[int, int],
    turn: Callable[[tuple[int, int]], tuple[int, int]],
) -> list[_Box]:
    """Lay pieces in rows, the highest first, each in the first row that has room for it."""

    def as_laid(index: int) -> tuple[int, int]:
        width, height = turn(sides[index])
        return (width, height) if width <= space[0] and height <= space[1] else (height, width)

    rows: list[list[int]] = []  # sheet, top, height, used width
    used: list[int] = []  # of each sheet, its height
    boxes = []
    for index in sorted(some, key=lambda each: (-as_laid(each)[1], -as_laid(each)[0], each)):
        width, height = as_laid(index)
        row = next((each for each in rows if each[3] + width <= space[0] and height <= each[2]), None)
        if row is None:
            sheet = next((number for number, depth in enumerate(used) if depth + height <= space[1]), len(used))
            if sheet == len(used):
                used.append(0)
            row = [sheet, used[sheet], height, 0]
            used[sheet] += height
            rows.append(row)
        boxes.append(_Box(index, row[0], row[3], row[1], width, height))
        row[3] += width
    return boxes


def _every_order(some: Sequence[int], sides: Sequence[tuple[int, int]], space: tuple[int, int]) -> Iterator[list[_Box]]:
    """Yield a layout for every order and every turning of a few pieces, each as far up and left as it goes."""
    for order in permutations(some):
        for turns in product((False, True), repeat=len(order)):
            laid = [sides[index][::-1] if turned else sides[index] for index, turned in zip(order, turns, strict=True)]
            if any(width > space[0] or height > space[1] for width, height in laid):
                continue
            boxes: list[_Box] = []
            for index, (width, height) in zip(order, laid, strict=True):
                boxes.append(_upper_left(index, width, height, boxes, space))
            yield boxes


def _upper_left(index: int, width: int, height: int, boxes: Sequence[_Box], space: tuple[int, int]) -> _Box:
    for sheet in range(len(boxes) + 1):
        here = [box for box in boxes if box.sheet == sheet]
        for y in sorted({0, *(box.y + box.height for box in here)}):
            for x in sorted({0, *(box.x + box.width for box in here)}):
                box = _Box(index, sheet, x, y, width, height)
                if x + width <= space[0] and y + height <= space[1] and not any(_meet(box, other) for other in here):
                    return box
    raise AssertionError("an empty sheet has room for a piece that fits")


def _meet(one: _Box, other: _Box) -> bool:
    return (
        one.x < other.x + other.width
        and other.x < one.x + one.width
        and one.y < other.y + other.height
        and other.y < one.y + one.height
    )


def _packed(some: Sequence[int], sides: Sequence[tuple[int, int]], space: tuple[int, int]) -> Iterator[list[_Box]]:
    """Yield layouts by a packer of rectangles, by several rules and in several orders."""
    import rectpack

    rules = (
        *(rectpack.MaxRectsBssf, rectpack.MaxRectsBaf, rectpack.MaxRectsBlsf, rectpack.MaxRectsBl),
        *(rectpack.SkylineMwfl, rectpack.GuillotineBssfMaxas),
    )
    orders: Iterable[Callable[[int], tuple[int, ...]]] = (
        lambda index: (sides[index][0] * sides[index][1],),
        lambda index: (max(sides[index]), min(sides[index])),
        lambda index: (min(sides[index]), max(sides[index])),
        lambda index: (sides[index][0] + sides[index][1],),
    )
    for order in orders:
        laid = sorted(some, key=order, reverse=True)
        for rule in rules:
            packer = rectpack.newPacker(
                mode=rectpack.PackingMode.Offline,
                bin_algo=rectpack.PackingBin.BFF,
                pack_algo=rule,
                sort_algo=rectpack.SORT_NONE,
                rotation=True,
            )
            for index in laid:
                packer.add_rect(*sides[index], rid=index)
            packer.add_bin(*space, count=len(laid))
            packer.pack()
            yield [_Box(index, sheet, x, y, width, height) for sheet, x, y, width, height, index in packer.rect_list()]
