"""Whether artwork is large enough for its blank: pixels, pixels an inch, what is cut away."""

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from maker_site.records.quantities import MM_PER_INCH, length, size
from maker_site.workings.artwork_review import SeenArtwork, cut_words, review_artwork
from maker_site.workings.artwork_size import Motif, Place, Verdict, artwork_size, needed_pixels, place_of
from tests.checks import check
from tests.workings.notebook import blank, project, workshop


def place(width: str, height: str, bleed: str = "0 mm", *, covered: bool = True) -> Place:
    return Place(length(width).mm, length(height).mm, length(bleed).mm, covered)


def motif(width: int, height: int) -> Motif:
    return Motif(Fraction(width), Fraction(height), has_pixels=True)


@pytest.mark.parametrize(
    ("row", "sides", "bleed"),
    [
        ("print-01", "4 x 6 in", "0 mm"),
        ("print-02", "A4", "0 mm"),
        ("print-03", "100 x 100 mm", "3 mm"),
        ("print-04", "11.5 x 5.5 in", "1/8 in"),
    ],
)
def test_needed_pixels_are_the_exact_figure_rounded_up(row: str, sides: str, bleed: str):
    given_size, edge = size(sides), length(bleed).mm
    found = [needed_pixels(side.mm, edge, 300) for side in (given_size.width, given_size.height)]
    assert found == [int(figure) for figure in check(row).expected.split(" x ")]


def test_effective_pixels_an_inch():
    found = artwork_size(motif(2400, 2400), place("8 in", "8 in"), 300)
    assert found.ppi == check("print-05").figure
    assert found.verdict is Verdict.FINE
    assert found.short == ()


def test_the_smaller_axis_counts_once_the_blank_is_covered():
    # 1200 px across 4 in are 300, 1200 px down 6 in are 200: to cover both, 200 hold, and 2 in of the width are cut.
    found = artwork_size(motif(1200, 1200), place("4 in", "6 in"), 300)
    assert found.ppi == 200
    assert (found.cut_width, found.cut_height) == (2 * MM_PER_INCH, 0)
    assert found.verdict is Verdict.SOFT
    # The height has 1200 of 1800 px: 600 are missing, 2 of its 6 inches.
    assert [(each.edge, each.pixels, each.mm) for each in found.short] == [("height", 600, 2 * MM_PER_INCH)]


@pytest.mark.parametrize(
    ("pixels", "verdict"),
    [(1252, Verdict.FINE), (1251, Verdict.SOFT), (627, Verdict.SOFT), (625, Verdict.SOFT), (624, Verdict.COARSE)],
)
def test_verdicts_at_their_edges(pixels: int, verdict: Verdict):
    # 106 mm at 300 an inch are 1251.97 px (checks: print-03), at 150 an inch 625.98.
    # Such a side is exported as 625 or 626 px: common practice, no source.
    assert artwork_size(motif(pixels, pixels), place("100 mm", "100 mm", "3 mm"), 300).verdict is verdict


def test_a_drawing_is_sharp_at_any_size_and_can_still_be_of_the_wrong_shape():
    found = artwork_size(Motif(Fraction(2), Fraction(1), has_pixels=False), place("100 mm", "100 mm"), 300)
    assert (found.ppi, found.short, found.verdict) == (None, (), Verdict.SCALES)
    assert found.cut_width == 100
    assert found.cut_share == Fraction(1, 2)


def test_vinyl_and_film_lie_inside_and_lose_nothing():
    found = artwork_size(motif(1000, 500), place("250 mm", "280 mm", covered=False), 300)
    assert (found.width, found.height) == (250, 125)
    assert (found.cut_width, found.cut_height) == (0, 0)
    assert found.needed == (2953, 1477)  # 250 and 125 mm at 300 an inch: 2952.76 and 1476.38


def test_artwork_that_lies_on_its_side_is_better_turned():
    found = artwork_size(motif(1000, 500), place("50 mm", "100 mm"), 300)
    assert found.better_turned
    assert "turn it by a quarter" in cut_words(found)
    assert not artwork_size(motif(1000, 1000), place("50 mm", "100 mm"), 300).better_turned


sides = st.integers(1, 5000)
lengths = st.fractions(1, 2000, max_denominator=20)


@given(sides, sides, lengths, lengths, st.fractions(0, 20, max_denominator=4), st.integers(1, 1200))
def test_covered_is_covered_and_short_means_short(
    w: int, h: int, wide: Fraction, high: Fraction, bleed: Fraction, ppi: int
):
    found = artwork_size(motif(w, h), Place(wide, high, bleed, covered=True), ppi)
    assert found.width >= wide + 2 * bleed
    assert found.height >= high + 2 * bleed
    assert 0 in (found.cut_width, found.cut_height)
    assert found.width * h == found.height * w  # proportions kept
    assert bool(found.short) == (found.ppi is not None and found.ppi < ppi)
    assert all(each.pixels > 0 and each.mm > 0 for each in found.short)
    enough = artwork_size(motif(*found.needed), found.place, ppi)
    assert enough.verdict is Verdict.FINE or ppi < 150
    assert enough.short == ()
    less = motif(max(1, found.needed[0] - 1), max(1, found.needed[1] - 1))
    assert artwork_size(less, found.place, ppi).short or found.needed == (1, 1)


@given(lengths, st.integers(1, 1200))
def test_no_fewer_pixels_would_do(side: Fraction, ppi: int):
    found = needed_pixels(side, Fraction(0), ppi)
    assert (found - 1) * MM_PER_INCH < side * ppi <= found * MM_PER_INCH
    assert found == math.ceil(side * 10 * ppi / 254)


def test_the_bleed_is_the_artworks_else_the_blanks_else_none():
    slate = blank(size="100 x 100 mm", bleed="3 mm")
    own = project(artwork=[{"file": "a.png", "bleed": "5 mm"}, {"file": "b.png"}]).artwork
    found = [place_of(slate, each, "sublimation") for each in own]
    assert [each.bleed for each in found if each] == [5, 3]
    bare = place_of(blank(size="100 x 100 mm"), own[1], "sublimation")
    assert bare is not None
    assert bare.bleed == 0
    assert place_of(blank(), own[1], "sublimation") is None


def test_a_mug_is_covered_round_its_girth_but_for_the_handle():
    mug = blank(girth="257 mm", height="96 mm", **{"handle gap": "27 mm"})
    found = place_of(mug, project(artwork=[{"file": "a.png"}]).artwork[0], "sublimation")
    assert found == Place(Fraction(230), Fraction(96), Fraction(0), covered=True)


def cautions(pixels: tuple[int, int], colour: str = "RGB", *, notes: tuple[str, ...] = (), method: str = "sublimation"):
    shop = workshop(
        blanks=(blank(size="100 x 100 mm", method=method),),
        projects=(project(artwork=[{"file": "artwork/a.png", "bleed": "3 mm"}]),),
    )
    return list(review_artwork(shop, {"projects/coasters/artwork/a.png": SeenArtwork(motif(*pixels), colour, notes)}))


def test_a_caution_says_what_to_aim_at():
    (found,) = cautions((500, 500))
    assert found.message == (
        "the artwork has 119 pixels an inch on 106 × 106 mm with bleed; below 150 it prints coarse; for 300 make it at "
        "least 1252 × 1252 px: its width is short by 752 px (63.7 mm) and its height is short by 752 px (63.7 mm)"
    )
    assert found.severity == "caution"
    assert found.field.startswith("artwork")


def test_what_is_soft_or_cut_a_little_is_left_to_the_page():
    assert cautions((700, 740)) == []


def test_much_cut_away_cmyk_and_what_is_not_used_are_cautions():
    found = [each.message for each in cautions((2600, 1300), "CMYK", notes=("only the first page is used",))]
    assert found[0].startswith("to cover the blank, 106 of 212 mm of its width is cut away; draw it for 106 × 106 mm")
    assert found[1].startswith("the artwork is in CMYK")
    assert found[2] == "only the first page is used"


def test_vinyl_is_cut_so_its_pixels_and_colours_are_no_matter():
    assert cautions((200, 200), "CMYK", method="heat-transfer vinyl") == []
