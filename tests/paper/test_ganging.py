"""Sheets that transfers are ganged on: against the outside counts, against brute force, and never one over another."""

from fractions import Fraction
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from maker_site.paper.ganging import Ganged, Room, Sides, fewest, gang
from maker_site.records.quantities import PAPER_MM
from tests.checks import check

IN = Fraction("25.4")


def sides(width: object, height: object) -> Sides:
    return Fraction(str(width)), Fraction(str(height))


def a4(margin: int = 5, gap: int = 0) -> Room:
    return Room(PAPER_MM["A4"], Fraction(margin), Fraction(gap))


# Rows of tests/checks/print.csv: the piece, the room.
COUNTS = {
    "print-08": (sides(100, 100), a4()),
    "print-09": (sides(208, 158), a4()),
    "print-11": ((IN * Fraction(7, 2), IN * 2), Room(PAPER_MM["Letter"], IN / 4, Fraction(0))),
    "print-12": (sides(106, 106), a4(gap=4)),
    "print-13": (sides(105, 148), a4()),
    "print-20": (sides(75, 110), a4()),
    "print-21": (sides(80, 120), a4()),
    "print-22": (sides(55, 85), a4()),
}


@pytest.mark.parametrize("row", COUNTS)
def test_a_full_sheet_holds_what_the_outside_table_says(row: str) -> None:
    piece, room = COUNTS[row]
    count = int(check(row).figure)
    found = gang([piece] * count, room)
    assert found is not None
    assert (found.per_sheet, found.sheets) == (count, 1)
    more = gang([piece] * (count + 1), room)
    assert more is not None
    assert more.sheets == 2


def test_a_batch_takes_whole_sheets() -> None:
    """print-24: 25 pieces, 4 to a sheet."""
    found = gang([sides(100, 100)] * 25, a4())
    assert found is not None
    assert found.sheets == int(check("print-24").figure)


def test_what_fits_no_sheet_is_none() -> None:
    assert gang([sides(300, 300)], a4()) is None
    assert gang([sides(50, 50), sides(210, 290)], a4()) is None


def assert_sound(pieces: list[Sides], room: Room, found: Ganged) -> None:
    assert [each.piece for each in found.places] == list(range(len(pieces)))
    assert {each.sheet for each in found.places} == set(range(found.sheets))
    boxes = []
    for each in found.places:
        width, height = pieces[each.piece][::-1] if each.turned else pieces[each.piece]
        assert each.x >= room.margin
        assert each.y >= room.margin
        assert each.x + width <= room.part[0] - room.margin
        assert each.y + height <= room.part[1] - room.margin
        boxes.append((each.sheet, each.x, each.y, width, height))
    for one, other in combinations(boxes, 2):
        if one[0] == other[0]:
            apart_x = one[1] + one[3] + room.gap <= other[1] or other[1] + other[3] + room.gap <= one[1]
            apart_y = one[2] + one[4] + room.gap <= other[2] or other[2] + other[4] + room.gap <= one[2]
            assert apart_x or apart_y, (one, other)


SIDE = st.integers(15, 190)


@settings(max_examples=25, deadline=None)
@given(st.lists(st.tuples(SIDE, SIDE), min_size=1, max_size=12), st.integers(0, 9), st.integers(0, 6))
def test_no_transfer_lies_over_another_or_outside(given_sides: list[tuple[int, int]], margin: int, gap: int) -> None:
    pieces = [sides(*each) for each in given_sides]
    room = a4(margin, gap)
    found = gang(pieces, room)
    assert found is not None
    assert_sound(pieces, room, found)
    assert fewest(pieces, room) <= found.sheets <= len(pieces)


def fits_one_sheet(pieces: list[tuple[int, int]], room: tuple[int, int]) -> bool:
    """Whether whole-millimetre pieces fit: every piece at every grid place, both ways round. Brute force."""

    def place(left: list[tuple[int, int]], taken: frozenset[tuple[int, int]]) -> bool:
        if not left:
            return True
        (width, height), *rest = left
        for wide, high in {(width, height), (height, width)}:
            for x in range(room[0] - wide + 1):
                for y in range(room[1] - high + 1):
                    cells = {(x + i, y + j) for i in range(wide) for j in range(high)}
                    if not cells & taken and place(rest, taken | cells):
                        return True
        return False

    return place(sorted(pieces, key=lambda each: -each[0] * each[1]), frozenset())


SMALL = st.integers(1, 5)


@settings(max_examples=30, deadline=None)
@given(st.lists(st.tuples(SMALL, SMALL), min_size=2, max_size=4), st.integers(5, 7), st.integers(5, 7))
def test_few_mixed_pieces_take_one_sheet_wherever_brute_force_finds_a_way(
    pieces: list[tuple[int, int]], width: int, height: int
) -> None:
    room = Room(sides(width, height), Fraction(0), Fraction(0))
    found = gang([sides(*each) for each in pieces], room)
    assert found is not None
    possible = sum(w * h for w, h in pieces) <= width * height and fits_one_sheet(pieces, (width, height))
    assert (found.sheets == 1) == possible


def test_sizes_share_sheets_instead_of_having_each_their_own() -> None:
    pieces = [sides(98, 98)] * 4 + [sides(60, 31)] * 5
    found = gang(pieces, a4(gap=4))
    assert found is not None
    assert_sound(pieces, a4(gap=4), found)
    assert found.sheets == 1
