"""The maker's own pressings: which of them are one setting, and what came of it."""

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from maker_site.records import Press, Pressing
from maker_site.records.quantities import Duration, Temperature
from maker_site.workings.calibration import dial_for, true_temperature
from maker_site.workings.evidence import Evidence, evidence
from tests.workings.notebook import blank, calibrated, press, readings, row, rows

BLANKS = {"slate": blank()}
MUG = press("mug", name="Mug press", kind="mug", readings=None)
TWIN = press("twin", name="Second clamshell", readings=readings(("180 C", "180 C"), ("200 C", "200 C")))
COARSE = press("coarse", name="Old clamshell", resolution={"temperature": "5 F", "time": "5 s"}, readings=None)
PRESSES = {each.id: each for each in (press(), MUG, TWIN, COARSE)}


def grouped(*changes: dict[str, Any]) -> tuple[Evidence, ...]:
    return evidence(rows(*changes), BLANKS, PRESSES)


def test_failures_count() -> None:
    (found,) = grouped({"pressed": "3", "good": "3"}, {"pressed": "2", "good": "0", "defects": "faded; faded"})
    assert (found.good, found.pressed) == (3, 5)
    assert found.defects == (("pale all over", 1),)
    assert found.outcomes == (True, True, True, False, False)


def test_a_setting_that_only_failed_is_kept_and_comes_last() -> None:
    best, worst = grouped({"time": "3 min", "pressed": "9", "good": "0"}, {"pressed": "1", "good": "1"})
    assert (best.good, worst.good) == (1, 0)
    assert worst.interval.low == 0


def test_more_evidence_goes_before_a_perfect_little() -> None:
    """checks: statistics-28."""
    best, second = grouped({"pressed": "5", "good": "5"}, {"time": "4 min", "pressed": "50", "good": "47"})
    assert (best.pressed, second.pressed) == (50, 5)


@pytest.mark.parametrize(
    ("one", "other", "settings"),
    [
        ({"temperature": "195 C"}, {"temperature": "195 C"}, 1),
        ({"temperature": "195 C"}, {"temperature": "195.9 C"}, 1),
        ({"temperature": "204 C"}, {"temperature": "400 F"}, 1),  # 204.4 C: less than a step of 1 C apart
        # One step of the dial changes the platen by 19/20 of a degree only, and is a step all the same.
        ({"temperature": "195 C"}, {"temperature": "196 C"}, 2),
        ({"time": "70 s"}, {"time": "1:10"}, 1),
        ({"time": "70 s"}, {"time": "70.9 s"}, 1),
        ({"time": "70 s"}, {"time": "71 s"}, 2),
        ({"press": "coarse", "time": "70 s"}, {"press": "coarse", "time": "74 s"}, 1),
        ({"press": "coarse", "temperature": "400 F"}, {"press": "coarse", "temperature": "404 F"}, 1),
        ({"press": "coarse", "temperature": "400 F"}, {"press": "coarse", "temperature": "405 F"}, 2),
        ({"face": "print up"}, {"face": "blank face down"}, 1),
        ({"face": "print up"}, {"face": "print down"}, 2),
        ({"face": "print up"}, {"face": None}, 2),
        ({"pressure": "medium"}, {"pressure": "medium"}, 1),
        ({"pressure": "medium"}, {"pressure": "firm"}, 2),
        ({"method": None}, {"method": "sublimation"}, 1),
        ({"method": "sublimation"}, {"method": "film transfer"}, 2),
        ({"lot": "A7"}, {"lot": "A8"}, 1),
        ({"press": "clam"}, {"press": "mug"}, 2),
    ],
)
def test_what_makes_two_pressings_one_setting(one: dict[str, Any], other: dict[str, Any], settings: int) -> None:
    assert len(grouped(one, other)) == settings


def test_a_long_row_of_small_steps_is_not_one_setting() -> None:
    """Each is within half a step of the next, yet the first and the third are a whole step apart."""
    assert len(grouped({"time": "70 s"}, {"time": "70.5 s"}, {"time": "71 s"})) == 2


def test_presses_of_one_kind_meet_at_the_platen() -> None:
    """The dials 200 and 193 both make 193 C at the platen."""
    (found,) = grouped({}, {"press": "twin", "temperature": "193 C"})
    assert found.setting.press == "twin"
    assert found.setting.dial.typed == "193 C"


def test_a_coarse_press_of_the_same_kind_does_not_join_two_settings_of_a_fine_one() -> None:
    found = grouped(
        {"press": "coarse", "temperature": "195 C"},
        {"press": "twin", "temperature": "195.5 C"},
        {"press": "twin", "temperature": "197 C"},
    )
    assert [len(each.pressings) for each in found] == [2, 1]


def test_presses_of_unsaid_kind_meet_at_the_platen() -> None:
    """Nothing tells them apart but their readings; one that says its kind is not taken for the same."""
    unsaid = {name: press(name, kind=None) for name in ("one", "two")}
    log = rows({"press": "one"}, {"press": "two"}, {"press": "mug"})
    found = evidence(log, BLANKS, {**unsaid, "mug": MUG})
    assert sorted(len(each.pressings) for each in found) == [1, 2]


def test_the_setting_is_the_one_typed_last() -> None:
    (found,) = grouped({"temperature": "400 F"}, {"temperature": "204 C", "time": "5:00"})
    assert (found.setting.dial.typed, found.setting.time.typed) == ("204 C", "5:00")
    assert found.last_used == found.pressings[-1].date


def test_projects_come_latest_first_and_once() -> None:
    (found,) = grouped({"project": "a"}, {"project": "b"}, {}, {"project": "a"})
    assert found.projects == ("a", "b")


KINDS = ("flat clamshell", "mug", "hand press")


@st.composite
def logs(draw: st.DrawFn) -> tuple[dict[str, Press], list[Pressing]]:
    """A few presses and a log of close-lying settings on them."""
    presses = {
        name: draw(calibrated(name, kind)) for name, kind in zip("abc", (KINDS[0], KINDS[0], KINDS[1]), strict=True)
    }
    log = []
    for number in range(draw(st.integers(1, 12))):
        pressed = draw(st.integers(1, 6))
        log.append(
            row(
                f"log:{number}",
                date=f"2026-01-{draw(st.integers(1, 28)):02}",
                press=draw(st.sampled_from("abc")),
                temperature=f"{draw(st.integers(380, 400)) / 2} C",
                time=f"{draw(st.integers(60, 66))} s",
                face=draw(st.sampled_from((None, "print up", "print down"))),
                pressed=str(pressed),
                good=str(draw(st.integers(0, pressed))),
            )
        )
    return presses, log


@settings(max_examples=50)
@given(logs(), st.randoms(use_true_random=False))
def test_the_order_of_rows_never_matters(given_log: tuple[dict[str, Press], list[Pressing]], random: Any) -> None:
    presses, log = given_log
    shuffled = list(log)
    random.shuffle(shuffled)
    assert evidence(shuffled, BLANKS, presses) == evidence(log, BLANKS, presses)


@settings(max_examples=50)
@given(logs())
def test_every_pressing_is_in_one_group_and_no_group_mixes(
    given_log: tuple[dict[str, Press], list[Pressing]],
) -> None:
    presses, log = given_log
    found = evidence(log, BLANKS, presses)
    assert sorted(each.id for group in found for each in group.pressings) == sorted(each.id for each in log)
    for group in found:
        assert len({presses[each.press].kind for each in group.pressings}) == 1
        assert len({each.face for each in group.pressings}) == 1
        for one in group.pressings:
            for other in group.pressings:
                if one.press == other.press:
                    steps = presses[one.press].resolution
                    assert steps.time is not None
                    assert steps.temperature is not None
                    assert abs(one.time.seconds - other.time.seconds) < steps.time.seconds
                    assert abs(one.temperature.celsius - other.temperature.celsius) < steps.temperature.kelvin


@settings(max_examples=50)
@given(logs())
def test_best_comes_first(given_log: tuple[dict[str, Press], list[Pressing]]) -> None:
    presses, log = given_log
    lows = [each.interval.low for each in evidence(log, BLANKS, presses)]
    assert lows == sorted(lows, reverse=True)


@given(calibrated(), st.integers(300, 440), st.fractions(0, 3), st.fractions(0, 3))
def test_within_a_step_is_one_setting_and_a_whole_step_apart_is_two(
    used: Press, half_degrees: int, steps_hotter: Fraction, steps_longer: Fraction
) -> None:
    """Whatever the platen makes of a step of the dial."""
    resolution = used.resolution
    assert resolution.temperature is not None
    assert resolution.time is not None
    first = row("log:1", temperature=f"{half_degrees / 2} C", time="60 s")
    second = first.model_copy(
        update={
            "id": "log:2",
            "temperature": Temperature(first.temperature.celsius + steps_hotter * resolution.temperature.kelvin),
            "time": Duration(first.time.seconds + steps_longer * resolution.time.seconds),
        }
    )
    one = steps_hotter < 1 and steps_longer < 1
    assert len(evidence((first, second), BLANKS, {"clam": used})) == (1 if one else 2)


@given(calibrated("a"), calibrated("b"), st.integers(150, 210))
def test_a_setting_carried_to_a_twin_press_is_the_same_setting(one: Press, other: Press, degrees: int) -> None:
    first = row("log:1", press="a", temperature=f"{degrees} C")
    carried = dial_for(other, true_temperature(one, first.temperature).temperature).temperature
    second = first.model_copy(update={"id": "log:2", "press": "b", "temperature": carried})
    (found,) = evidence((first, second), BLANKS, {"a": one, "b": other})
    assert found.pressed == 8


@settings(max_examples=50)
@given(logs(), st.integers(1, 9))
def test_more_good_pressings_never_lower_a_settings_bound(
    given_log: tuple[dict[str, Press], list[Pressing]], more: int
) -> None:
    presses, log = given_log
    before = evidence(log, BLANKS, presses)[0]
    again = before.pressings[-1].model_copy(update={"id": "log:more", "pressed": more, "good": more})
    after = replace(before, pressings=(*before.pressings, again))
    assert after.interval.low >= before.interval.low - 1e-15
    grown = evidence([*log, again], BLANKS, presses)
    assert any(group.pressed == before.pressed + more and group.good == before.good + more for group in grown)
