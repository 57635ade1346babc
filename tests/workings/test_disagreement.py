"""Where the maker's own best and the supplier's sheet part."""

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from maker_site.records import Sheet
from maker_site.workings.disagreement import Disagreement, disagreement
from maker_site.workings.evidence import evidence
from tests.workings.notebook import blank, press, row

FLAT = press(readings=None, resolution={"temperature": "2 C", "time": "5 s"})


def between(sheet: dict[str, str], used: Any = FLAT, **own: Any) -> Disagreement | None:
    (found,) = evidence([row(**own)], {"slate": blank()}, {"clam": used})
    return disagreement(found, Sheet.model_validate(sheet), used)


@pytest.mark.parametrize(
    ("sheet", "kelvin", "seconds"),
    [
        ({"temperature": "200 C", "time": "5 min"}, 0, 0),
        ({"temperature": "202 C", "time": "305 s"}, 0, 0),  # a step is no disagreement
        ({"temperature": "203 C"}, -3, 0),
        ({"temperature": "196 C", "time": "294 s"}, 4, 6),
        ({"temperature": "190 to 200 C", "time": "4 to 5 min"}, 0, 0),
        ({"temperature": "205 to 215 C", "time": "2 to 3 min"}, -5, 120),
        ({"time": "6 min"}, 0, -60),
        ({}, 0, 0),
    ],
)
def test_it_is_told_from_the_nearer_end_and_beyond_a_step_only(
    sheet: dict[str, str], kelvin: int, seconds: int
) -> None:
    """The maker's own: 200 C for 300 s, on a press of steps of 2 C and 5 s."""
    found = between(sheet)
    assert (found.kelvin, found.seconds) == (kelvin, seconds) if found else (kelvin, seconds) == (0, 0)


def test_the_platen_is_compared_and_not_the_dial() -> None:
    """The dial at 200 makes 193 at the platen (checks: heat-30's readings)."""
    found = between({"temperature": "200 C"}, press())
    assert found is not None
    assert found.kelvin == -7
    assert between({"temperature": "193 C"}, press()) is None


@pytest.mark.parametrize(
    ("own", "sheet", "differs"),
    [
        ("print up", "print down", True),
        ("print up", "blank face down", False),
        ("print up", "wrapped", True),
        ("up", "print down", False),  # used both ways: nothing is known to differ
        ("print up", "face down", False),
        (None, "print down", False),
    ],
)
def test_faces_differ_where_both_are_clear(own: str | None, sheet: str, differs: bool) -> None:
    found = between({"face": sheet}, face=own)
    assert bool(found and found.face) is differs


def test_pressures_differ_by_their_words() -> None:
    found = between({"pressure": "medium"}, pressure="firm (mark 5)")
    assert found is not None
    assert found.pressure == "firm, not medium"
    assert between({"pressure": "medium"}, pressure="2.8 bar") is None


@given(st.integers(150, 250), st.integers(150, 250), st.integers(0, 20), st.integers(1, 9))
def test_nothing_within_a_step_is_called_a_disagreement(own: int, low: int, wide: int, step: int) -> None:
    used = press(readings=None, resolution={"temperature": f"{step} C"})
    found = between({"temperature": f"{low} to {low + wide} C"}, used, temperature=f"{own} C")
    outside = max(low - own, own - low - wide, 0)
    assert (found is not None) == (outside > step)
    if found:
        assert abs(found.kelvin) == Fraction(outside)
