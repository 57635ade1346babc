"""How many transfers fit a sheet: the table's rows, whole-number programming, and what holds for any layout."""

from fractions import Fraction
from itertools import combinations, product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import lil_array

from maker_site.records.quantities import MM_PER_INCH
from maker_site.workings.sheet_layout import SheetLayout, lay_out, sheets_needed
from tests.checks import check

A4 = (Fraction(210), Fraction(297))
LETTER = (MM_PER_INCH * Fraction("8.5"), MM_PER_INCH * 11)


def mm(width, height):
    return Fraction(width), Fraction(height)


def inches(width, height):
    return MM_PER_INCH * Fraction(width), MM_PER_INCH * Fraction(height)


@pytest.mark.parametrize(
    ("row", "piece", "sheet", "margin", "gap"),
    [
        # Letter with the pre-cut stock's unequal margins is tested as its usable area, 7 x 10 in
        ("print-07", inches("3.5", 2), inches(7, 10), 0, 0),
        ("print-08", mm(100, 100), A4, 5, 0),
        ("print-09", mm(208, 158), A4, 5, 0),
        ("print-11", inches("3.5", 2), LETTER, MM_PER_INCH / 4, 0),
        ("print-12", mm(106, 106), A4, 5, 4),  # 3 mm of bleed all round
        ("print-13", mm(105, 148), A4, 5, 0),
        ("print-14", mm(5, 3), mm(8, 8), 0, 0),
        ("print-15", mm(5, 4), mm(9, 9), 0, 0),
        ("print-16", mm(4, 3), mm(11, 10), 0, 0),
        ("print-17", mm(4, 3), mm(12, 10), 0, 0),
        ("print-18", mm(5, 3), mm(22, 16), 0, 0),
        ("print-19", mm(7, 3), mm(43, 26), 0, 0),
        ("print-20", mm(75, 110), A4, 5, 0),
        ("print-21", mm(80, 120), A4, 5, 0),
        ("print-22", mm(55, 85), A4, 5, 0),
    ],
)
def test_as_many_fit_as_the_table_says_whichever_way_the_sheet_lies(row, piece, sheet, margin, gap):
    expected = check(row).figure  # sources in the table: pallet loading, SciPy milp, arithmetic
    for way in (sheet, sheet[::-1]):
        layout = lay_out(piece, way, Fraction(margin), Fraction(gap))
        assert layout.count == expected
        assert layout.proven
        assert_lies_well(layout)


def test_sheets_for_a_batch_are_whole():
    assert sheets_needed(25, 4) == check("print-24").figure
    assert sheets_needed(24, 4) == 6
    assert sheets_needed(0, 4) == 0


@st.composite
def sheets_and_pieces(draw):
    quarter = st.integers(4, 400).map(lambda figure: Fraction(figure, 4))
    piece = (draw(quarter), draw(quarter))
    sheet = (draw(quarter), draw(quarter))
    return piece, sheet, Fraction(draw(st.integers(0, 12)), 4), Fraction(draw(st.integers(0, 12)), 4)


@settings(max_examples=60, deadline=None)
@given(sheets_and_pieces())
def test_a_layout_lies_well_and_between_its_bounds(case):
    piece, sheet, margin, gap = case
    layout = lay_out(piece, sheet, margin, gap)
    assert_lies_well(layout)
    usable = [max(side - 2 * margin + gap, Fraction(0)) for side in sheet]
    grown = [side + gap for side in piece]
    upright = (usable[0] // grown[0]) * (usable[1] // grown[1])
    turned = (usable[0] // grown[1]) * (usable[1] // grown[0])
    assert max(upright, turned) <= layout.count  # checks: print-23
    assert layout.count <= usable[0] * usable[1] // (grown[0] * grown[1])


@settings(max_examples=40, deadline=None)
@given(st.integers(2, 7), st.integers(1, 6), st.integers(3, 13), st.integers(3, 13))
def test_no_small_sheet_holds_more_by_whole_number_programming(long, short, width, height):
    layout = lay_out(mm(long, short), mm(width, height))
    assert layout.count == most_by_programming(long, short, width, height)


def test_a_piece_that_does_not_fit_lies_nowhere():
    assert lay_out(mm(300, 10), A4).places == ()
    assert lay_out(mm(50, 50), mm(60, 60), margin=Fraction(30)).places == ()
    assert lay_out(mm(210, 297), A4).count == 1


def test_a_gap_is_kept_between_pieces_but_not_along_the_margin():
    assert lay_out(mm(100, 50), mm(204, 50), gap=Fraction(4)).count == 2
    assert lay_out(mm(100, 50), mm(203, 50), gap=Fraction(4)).count == 1


def test_places_are_told_from_the_top_left_corner_of_the_sheet():
    layout = lay_out(mm(100, 50), mm(120, 130), margin=Fraction(5), gap=Fraction(4))
    assert [(place.x, place.y, place.turned) for place in layout.places] == [(5, 5, False), (5, 59, False)]


def test_many_small_pieces_are_laid_out_without_a_long_search():
    layout = lay_out(mm(10, 7), mm(330, 483), Fraction(5), Fraction(1))
    assert layout.count >= (321 // 11) * (474 // 8)
    assert_lies_well(layout)


@pytest.mark.parametrize(("piece", "sheet", "margin"), [((0, 1), (5, 5), 0), ((1, 1), (5, 0), 0), ((1, 1), (5, 5), -1)])
def test_sides_of_nothing_are_refused(piece, sheet, margin):
    with pytest.raises(ValueError, match="more than nothing"):
        lay_out(mm(*piece), mm(*sheet), Fraction(margin))


def assert_lies_well(layout: SheetLayout) -> None:
    """Every piece is whole on the sheet, clear of the margin, and a gap away from every other."""
    boxes = []
    for place in layout.places:
        width, height = layout.piece[::-1] if place.turned else layout.piece
        assert layout.margin <= place.x <= layout.sheet[0] - layout.margin - width
        assert layout.margin <= place.y <= layout.sheet[1] - layout.margin - height
        boxes.append((place.x, place.y, place.x + width, place.y + height))
    for one, other in list(combinations(boxes, 2))[:20_000]:
        apart = max(one[0] - other[2], other[0] - one[2], one[1] - other[3], other[1] - one[3])
        assert apart >= layout.gap


def most_by_programming(long: int, short: int, width: int, height: int) -> int:
    """The most pieces that fit, by SciPy's milp: each place, each way round, is a yes or no; no cell is taken twice."""
    ways = {(long, short), (short, long)}
    spots = [
        (x, y, wide, high) for wide, high in ways for x, y in product(range(width - wide + 1), range(height - high + 1))
    ]
    if not spots:
        return 0
    cells = lil_array((width * height, len(spots)))
    for index, (x, y, wide, high) in enumerate(spots):
        for cell in product(range(x, x + wide), range(y, y + high)):
            cells[cell[0] * height + cell[1], index] = 1
    found = milp(
        -np.ones(len(spots)),
        constraints=LinearConstraint(cells.tocsr(), -np.inf, 1),
        integrality=np.ones(len(spots)),
        bounds=Bounds(0, 1),
        options={"time_limit": 20},
    )
    assert found.success
    return round(-found.fun)
