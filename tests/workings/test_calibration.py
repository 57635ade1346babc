"""What a dial's figure means at the platen."""

from datetime import date
from fractions import Fraction
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from maker_site.records import Press
from maker_site.records.quantities import Temperature, from_fahrenheit, temperature
from maker_site.workings.calibration import Footing, cautions, curve, dial_for, true_temperature
from tests.checks import check
from tests.workings.notebook import calibrated, press, readings

TWO = press()
TODAY = date(2026, 4, 18)


def true(used: Press, dial: str) -> tuple[Fraction, Footing]:
    found = true_temperature(used, temperature(dial))
    return found.temperature.celsius, found.footing


def test_between_readings_lies_a_straight_line() -> None:
    """checks: heat-30, numpy.interp(190, [180, 200], [174, 193])."""
    found, footing = true(TWO, "190 C")
    assert check("heat-30").accepts(found)
    assert footing is Footing.MEASURED


def test_turned_round_it_says_what_to_set() -> None:
    """checks: heat-31, numpy.interp(190, [174, 193], [180, 200])."""
    found = dial_for(TWO, temperature("190 C"))
    assert check("heat-31").accepts(found.temperature.celsius)
    assert not found.is_guess


@pytest.mark.parametrize(
    ("dial", "platen"),
    [
        ("210 C", 203),  # 7 C too cool at 200, so 7 C too cool at 210: the note of checks: heat-32
        ("170 C", 164),  # 6 C too cool at 180, so 6 C too cool at 170; by hand
    ],
)
def test_beyond_the_readings_the_nearest_offset_holds_and_it_says_it_guesses(dial: str, platen: int) -> None:
    assert true(TWO, dial) == (platen, Footing.BEYOND)
    back = dial_for(TWO, Temperature(Fraction(platen)))
    assert (back.temperature, back.footing) == (temperature(dial), Footing.BEYOND)
    assert back.is_guess


def test_without_readings_the_dial_is_taken_at_its_word() -> None:
    assert true(press(readings=None), "190 C") == (190, Footing.NONE)


def test_one_reading_gives_its_offset_everywhere() -> None:
    one = press(readings=readings(("200 C", "193 C")))
    assert true(one, "200 C") == (193, Footing.MEASURED)
    assert true(one, "150 C") == (143, Footing.BEYOND)


def test_corners_of_one_day_are_averaged_and_older_days_forgotten() -> None:
    used = press(
        readings=[
            *readings(("200 C", "180 C"), on="2025-01-10"),
            *readings(("200 C", "150 C"), on=None),
            *readings(("200 C", "193 C"), ("200 C", "192 C")),
        ]
    )
    assert true(used, "200 C") == (Fraction("192.5"), Footing.MEASURED)


def test_readings_that_fall_are_pooled() -> None:
    """By hand: 180 read 176 and 190 read 174, so both are taken as 185 and 175; 200 read 193 stands."""
    found = curve(press(readings=readings(("180 C", "176 C"), ("190 C", "174 C"), ("200 C", "193 C"))))
    assert (found.set, found.measured) == ((185, 200), (175, 193))


def test_a_dial_in_fahrenheit_is_carried_exactly() -> None:
    used = press(readings=readings(("350 F", "340 F"), ("400 F", "390 F")))
    found = true_temperature(used, temperature("375 F"))
    assert found.temperature == temperature("365 F")
    assert found.temperature.fahrenheit == 365


@given(st.fractions(-459, 2000, max_denominator=1000))
def test_celsius_and_fahrenheit_are_exact(fahrenheit: Fraction) -> None:
    assert from_fahrenheit(fahrenheit).fahrenheit == fahrenheit


@given(calibrated(), st.integers(60, 260))
def test_inside_the_readings_it_agrees_with_numpy(used: Press, dial: int) -> None:
    pairs = [(float(each.set.celsius), float(each.measured.celsius)) for each in used.readings]
    found = true_temperature(used, Temperature(Fraction(dial)))
    inside = bool(pairs) and pairs[0][0] <= dial <= pairs[-1][0]
    assert (found.footing is Footing.MEASURED) == inside
    if inside:
        expected = np.interp(dial, *zip(*pairs, strict=True))
        assert float(found.temperature.celsius) == pytest.approx(float(expected), abs=1e-9)


@st.composite
def measured(draw: st.DrawFn) -> Press:
    """A press with any readings, falling ones too."""
    pairs = draw(st.lists(st.tuples(st.integers(100, 220), st.integers(90, 230)), max_size=6))
    return press(readings=readings(*((f"{dial} C", f"{platen} C") for dial, platen in pairs)))


@given(measured(), st.fractions(0, 300, max_denominator=100))
def test_what_to_set_undoes_what_is_set(used: Press, figure: Fraction) -> None:
    at = Temperature(figure)
    there = true_temperature(used, at)
    assert dial_for(used, there.temperature).temperature == at
    assert true_temperature(used, dial_for(used, at).temperature).temperature == at


@given(measured(), st.fractions(0, 300, max_denominator=100), st.fractions(Fraction(1, 100), 50, max_denominator=100))
def test_a_hotter_dial_is_always_a_hotter_platen(used: Press, figure: Fraction, more: Fraction) -> None:
    cooler, hotter = (true_temperature(used, Temperature(figure + each)).temperature for each in (Fraction(0), more))
    assert cooler < hotter


@given(measured())
def test_the_order_of_readings_never_matters(used: Press) -> None:
    turned = used.model_copy(update={"readings": used.readings[::-1]})
    assert curve(turned) == curve(used)
    assert cautions(turned, TODAY) == cautions(used, TODAY)


NEW, OLD = "2026-03-01", "2024-03-01"


@pytest.mark.parametrize(
    ("taken", "said"),
    [
        (readings(("180 C", "174 C"), ("200 C", "193 C"), on=NEW), ()),
        (readings(("180 C", "174 C"), ("200 C", "193 C"), on="2025-04-18"), ()),  # a year to the day
        (None, ("No readings yet",)),
        (readings(("180 C", "174 C"), ("200 C", "193 C"), on=OLD), ("The last readings are of 2024-03-01, more than",)),
        (
            [*readings(("180 C", "174 C"), on=OLD), *readings(("200 C", "193 C"), on=NEW)],
            ("180 C was measured more than a year ago, last on 2024-03-01",),
        ),
        (
            [
                *readings(("180 C", "174 C"), ("200 C", "190 C"), on=OLD),
                *readings(("180 C", "174 C"), ("200 C", "193 C"), on=NEW),
            ],
            (),  # the old ones count no more
        ),
        (readings(("180 C", "174 C"), ("200 C", "193 C"), on=None), ("The readings have no date",)),
        (
            [*readings(("180 C", "174 C"), on=None), *readings(("200 C", "193 C"), on=NEW)],
            ("A reading has no date",),
        ),
        (readings(("200 C", "193 C"), on=NEW), ("There is one reading only",)),
        (readings(("200 C", "193 C"), ("200 C", "191 C"), on=NEW), ("All readings are at one dial figure",)),
        (readings(("180 C", "193 C"), ("200 C", "174 C"), on=NEW), ("A higher dial figure read lower or the same",)),
        (readings(("180 C", "174 C"), ("200 C", "174 C"), on=NEW), ("A higher dial figure read lower or the same",)),
    ],
)
def test_doubtful_readings_draw_a_caution(taken: list[dict[str, Any]] | None, said: tuple[str, ...]) -> None:
    found = cautions(press(readings=taken), TODAY)
    assert len(found) == len(said)
    assert all(sentence.startswith(start) for sentence, start in zip(found, said, strict=True))
