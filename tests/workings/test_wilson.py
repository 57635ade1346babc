"""How sure a share is: held to published tables, to R and to SciPy."""

import math

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from scipy.stats import binomtest, norm

from maker_site.workings.wilson import Z_95, interval
from tests.checks import Check, check, table

# The point of the normal distribution that each row's limits are taken at.
Z = {
    "Wilson 95 % interval": Z_95,
    "Wilson 99 % interval": float(norm.ppf(0.995)),
    "Wilson interval, z = 1.96": 1.96,
    "Wilson 95 % lower limit, one-sided": float(norm.ppf(0.95)),
}
ROWS = [row for row in table("statistics").values() if row.quantity in Z and row.inputs != "any"]


def counts(row: Check) -> tuple[int, int]:
    good, pressed = row.inputs.split(" of ")
    return int(good), int(pressed)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.id)
def test_the_interval_is_the_published_one(row: Check) -> None:
    found = interval(*counts(row), z=Z[row.quantity])
    assert found is not None
    expected = [float(figure) for figure in row.expected.split(" to ")]
    assert found[: len(expected)] == pytest.approx(expected, rel=0, abs=float(row.tolerance)), row.source


def test_every_wilson_row_of_the_table_is_asked() -> None:
    """Rows 1 to 11, 13 to 21; 12 is the library's, 27 and 28 stand below, 22 to 26 are no Wilson intervals."""
    assert [row.id for row in ROWS] == [f"statistics-{n:02}" for n in (*range(1, 12), *range(13, 22))]


def test_rounding_the_normal_point_shows_in_the_sixth_digit() -> None:
    """1 of 1 with the full point, not with 1.96 (checks: statistics-06's note)."""
    found = interval(1, 1)
    assert found is not None
    assert found.low == pytest.approx(0.2065493144, abs=5e-11)
    assert pytest.approx(float(norm.ppf(0.975)), abs=1e-15) == Z_95


def test_it_is_not_the_exact_interval() -> None:
    """The exact 90 % interval for 4 of 20 is another (checks: statistics-22)."""
    found = interval(4, 20, z=float(norm.ppf(0.95)))
    exact = [float(figure) for figure in check("statistics-22").expected.split(" to ")]
    assert found == pytest.approx((0.0931180, 0.3783767), abs=1e-6)
    assert found != pytest.approx(exact, abs=1e-2)


def test_nothing_pressed_gives_no_figure() -> None:
    """Division by n (checks: statistics-27)."""
    assert interval(0, 0) is None


def test_much_evidence_goes_before_a_perfect_little() -> None:
    """47 of 50 stands above 5 of 5 by the lower end (checks: statistics-28)."""
    few, many = interval(5, 5), interval(47, 50)
    assert few is not None
    assert many is not None
    assert (few.low, many.low) == pytest.approx((0.5655176, 0.8378291), abs=1e-7)


@st.composite
def tallies(draw: st.DrawFn) -> tuple[int, int]:
    pressed = draw(st.integers(1, 5000))
    return draw(st.integers(0, pressed)), pressed


@given(tallies())
@example((0, 1))
@example((1, 1))
@example((100, 100))
def test_it_agrees_with_scipy(tally: tuple[int, int]) -> None:
    """checks: statistics-12."""
    good, pressed = tally
    expected = binomtest(good, pressed).proportion_ci(method="wilson")
    assert interval(good, pressed) == pytest.approx((expected.low, expected.high), abs=1e-12)


@given(tallies())
def test_it_holds_the_share_and_stays_between_nought_and_one(tally: tuple[int, int]) -> None:
    found = interval(*tally)
    assert found is not None
    assert 0 <= found.low <= tally[0] / tally[1] <= found.high <= 1
    assert (found.low == 0) == (tally[0] == 0)
    assert (found.high == 1) == (tally[0] == tally[1])


@given(tallies(), st.integers(1, 50))
def test_more_good_pieces_never_lower_the_lower_end(tally: tuple[int, int], more: int) -> None:
    before, after = interval(*tally), interval(tally[0] + more, tally[1] + more)
    assert before is not None
    assert after is not None
    assert after.low >= before.low or math.isclose(after.low, before.low, abs_tol=1e-15)


@given(tallies(), st.integers(1, 50))
def test_more_spoiled_pieces_never_raise_the_lower_end(tally: tuple[int, int], more: int) -> None:
    before, after = interval(*tally), interval(tally[0], tally[1] + more)
    assert before is not None
    assert after is not None
    assert after.low <= before.low or math.isclose(after.low, before.low, abs_tol=1e-15)
