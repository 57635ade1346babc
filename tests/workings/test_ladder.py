"""A few settings around one, which vary one thing, in the fewest blanks."""

from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from maker_site.records import Press, Workshop
from maker_site.records.quantities import duration, temperature
from maker_site.records.read_log import COLUMNS, read_log
from maker_site.records.shop import Units
from maker_site.workings.calibration import true_temperature
from maker_site.workings.evidence import evidence_of
from maker_site.workings.faults import Direction
from maker_site.workings.ladder import FEWEST, LOG_COLUMNS, MOST, OFTEN, Rung, as_log_rows, ladder
from maker_site.workings.next_try import next_tries
from maker_site.workings.stack import Limit
from maker_site.workings.starting_point import Source, StartingPoint, starting_points
from tests.workings.notebook import blank, calibrated, press, rows, supply, workshop

PLAIN = press(readings=None, lowest="60 C", highest="225 C")
HAND = press("hand", name="Hand press", kind="hand press", readings=None, resolution={"temperature": "5 F"})


def shop(*log: dict[str, Any], used: Press = PLAIN, **of_blank: Any) -> Workshop:
    return workshop(blanks=(blank(**of_blank),), presses=(used,), pressings=rows(*log))


def built(of: Workshop, **options: Any) -> tuple[StartingPoint, tuple[Rung, ...]]:
    groups = evidence_of(of)
    point = starting_points(of.blanks["slate"], of, groups)[0]
    return point, ladder(point, of, groups, **options)


def settings(found: tuple[Rung, ...]) -> list[str]:
    return [f"{rung.dial.typed}, {rung.time.typed}" for rung in found]


def test_pale_is_tried_both_ways_around_the_setting() -> None:
    """A sixth of 5 minutes is 50 s, and the nearest round figure a minute."""
    _, found = built(shop({"pressed": "1"}))
    assert settings(found) == ["200 C, 240 s", "200 C, 5 min", "200 C, 360 s"]
    assert [rung.why for rung in found] == [
        "60 s shorter",
        "the setting to compare with; 1 of 1 good so far",
        "60 s longer",
    ]


@pytest.mark.parametrize(
    ("time", "apart"), [("15 s", 2), ("45 s", 5), ("60 s", 10), ("75 s", 10), ("3 min", 30), ("8 min", 60)]
)
def test_times_are_a_sixth_apart_in_figures_that_a_person_sets(time: str, apart: int) -> None:
    """By hand: 2.5, 7.5, 10, 12.5, 30 and 80 s, each to the nearest of 1, 2, 5, 10, 15, 30, 60 and 120 s."""
    _, found = built(shop({"time": time, "pressed": "1"}))
    assert [rung.time.seconds - found[1].time.seconds for rung in found] == [-apart, 0, apart]


@pytest.mark.parametrize(
    ("direction", "expected"),
    [
        (Direction.LONGER, ["200 C, 5 min", "200 C, 360 s", "200 C, 420 s"]),
        (Direction.SHORTER, ["200 C, 180 s", "200 C, 240 s", "200 C, 5 min"]),
        (Direction.HOTTER, ["200 C, 5 min", "205 C, 5 min", "210 C, 5 min"]),
        (Direction.COOLER, ["190 C, 5 min", "195 C, 5 min", "200 C, 5 min"]),
        (Direction.TEMPERATURE_BOTH_WAYS, ["195 C, 5 min", "200 C, 5 min", "205 C, 5 min"]),
    ],
)
def test_one_thing_changes_and_in_the_direction_asked(direction: Direction, expected: list[str]) -> None:
    _, found = built(shop({"pressed": "1"}), direction=direction)
    assert settings(found) == expected


def test_a_dial_in_fahrenheit_goes_by_ten_of_its_degrees() -> None:
    _, found = built(
        shop({"press": "hand", "temperature": "400 F", "pressed": "1"}, used=HAND),
        direction=Direction.TEMPERATURE_BOTH_WAYS,
    )
    assert [rung.dial.typed for rung in found] == ["390 F", "400 F", "410 F"]
    assert found[0].dial == temperature("390 F")
    assert found[0].why == "10 °F (5.6 °C) cooler on the dial"


def test_a_setting_typed_in_the_other_unit_stays_as_typed() -> None:
    _, found = built(
        shop({"temperature": "400 F", "pressed": "1"}, used=press(readings=None, resolution={"temperature": "1 C"})),
        direction=Direction.TEMPERATURE_BOTH_WAYS,
    )
    assert found[1].dial.typed == "400 F"
    assert found[0].dial < found[1].dial < found[2].dial


def test_a_bare_figure_gets_its_unit() -> None:
    _, found = built(shop({"temperature": "200", "pressed": "1"}))
    assert {rung.dial.typed for rung in found} == {"200 C"}


def test_the_supplier_s_figure_is_put_on_the_steps_of_the_press() -> None:
    """The middle of 60 to 75 s is 67.5 s, and 200 C on a dial of 5 F is 392, so 390 F."""
    of = shop(used=HAND, sheet={"temperature": "200 C", "time": "60 to 75 s"})
    point, found = built(of)
    assert point.source is Source.SHEET
    assert settings(found) == ["390 F, 58 s", "390 F, 68 s", "390 F, 78 s"]


def test_the_platen_is_told_beside_the_dial() -> None:
    of = workshop(blanks=(blank(),), presses=(press(),), pressings=rows({"pressed": "1"}))
    _, found = built(of, direction=Direction.HOTTER)
    assert [rung.true for rung in found] == [temperature("193 C"), temperature("198 C"), temperature("203 C")]
    assert "a guess" not in found[0].why
    assert found[1].why.endswith("beyond the press’s readings, so the platen’s temperature is a guess")


class TestLimits:
    def test_nothing_is_hotter_than_the_blank_bears(self) -> None:
        _, found = built(shop({"pressed": "1"}, limit="205 C"), direction=Direction.HOTTER)
        assert [rung.dial.typed for rung in found] == ["200 C", "205 C"]

    def test_nothing_is_hotter_than_the_last_stack_bears(self) -> None:
        of = workshop(
            presses=(PLAIN,),
            supplies=(supply("parchment", "protective paper", limit="206 C"),),
            pressings=rows({"pressed": "1", "stack": "blank > transfer > parchment"}),
        )
        _, found = built(of, direction=Direction.HOTTER, rungs=MOST)
        assert [rung.dial.typed for rung in found] == ["200 C", "205 C"]

    def test_a_limit_of_the_cards_stack_counts_besides(self) -> None:
        card = Limit(temperature("201 C"), "Tape")
        _, found = built(shop({"pressed": "1"}), direction=Direction.TEMPERATURE_BOTH_WAYS, limit=card)
        assert [rung.dial.typed for rung in found] == ["190 C", "195 C", "200 C"]

    def test_nothing_is_beyond_the_dial(self) -> None:
        low = press(readings=None, lowest="196 C", highest="206 C")
        _, found = built(shop({"pressed": "1"}, used=low), direction=Direction.TEMPERATURE_BOTH_WAYS, rungs=MOST)
        assert [rung.dial.typed for rung in found] == ["200 C", "205 C"]

    def test_where_no_rung_is_left_there_is_no_ladder(self) -> None:
        assert built(shop({"pressed": "1"}, limit="200 C"), direction=Direction.HOTTER)[1] == ()
        assert built(shop({"pressed": "1"}, limit="190 C"))[1] == ()


class TestPressedBefore:
    def test_what_was_pressed_often_is_not_pressed_again(self) -> None:
        _, found = built(shop({"pressed": "20", "good": "19"}))
        assert settings(found) == ["200 C, 180 s", "200 C, 240 s", "200 C, 360 s"]

    def test_often_is_five_pieces_good_or_not(self) -> None:
        of = shop({"pressed": "1", "good": "1"}, {"time": "6 min", "pressed": str(OFTEN), "good": "0"})
        _, found = built(of)
        assert settings(found) == ["200 C, 180 s", "200 C, 240 s", "200 C, 5 min"]

    def test_what_was_pressed_seldom_says_how_it_went(self) -> None:
        _, found = built(shop({"pressed": "2", "good": "2"}, {"time": "6 min", "pressed": "2", "good": "1"}))
        assert found[2].why == "60 s longer; 1 of 2 good so far"
        assert (found[2].pressed, found[2].good) == (2, 1)

    @pytest.mark.parametrize(
        "other", [{"face": "print down"}, {"pressure": "firm"}, {"method": "film transfer"}, {"time": "361 s"}]
    )
    def test_only_the_same_setting_counts(self, other: dict[str, Any]) -> None:
        of = shop({"pressed": "5"}, {"time": "6 min", "pressed": "9", "good": "0", **other})
        assert built(of)[1][-1].pressed == 0

    def test_a_neighbour_on_the_dial_is_another_setting(self) -> None:
        """One step of this dial is 19/20 of a degree at the platen."""
        of = workshop(pressings=rows({"pressed": "1"}, {"temperature": "196 C", "pressed": "9", "good": "0"}))
        _, found = built(of, direction=Direction.COOLER)
        assert [(rung.dial.typed, rung.pressed) for rung in found] == [("190 C", 0), ("195 C", 0), ("200 C", 1)]


def test_more_rungs_on_request() -> None:
    _, found = built(shop({"pressed": "1"}), rungs=MOST)
    assert [rung.time.seconds for rung in found] == [180, 240, 300, 360, 420]


@pytest.mark.parametrize("rungs", [2, 6])
def test_a_ladder_has_three_to_five_rungs(rungs: int) -> None:
    with pytest.raises(ValueError, match="3 to 5 rungs, not"):
        built(shop({}), rungs=rungs)


def test_nothing_to_set_gives_no_ladder() -> None:
    without_time = shop(sheet={"temperature": "200 C"}, substrate="soapstone")
    assert built(without_time)[1] == ()
    two = workshop(presses=(PLAIN, HAND))
    assert built(two)[0].press is None
    assert built(two)[1] == ()


def test_a_next_try_says_which_way_the_ladder_goes() -> None:
    log = {"pressed": "3", "good": "1", "defects": "faded"}
    of = shop(log)
    direction = next_tries(of.pressings)[-1].direction
    assert direction is not None
    times = [rung.time for rung in built(of, direction=direction)[1]]
    assert min(times) < duration("5 min") < max(times)


class TestLogRows:
    LOG: tuple[dict[str, Any], ...] = (
        {"pressed": "1", "pressure": "firm (mark 5)", "peel": "hot", "cool": "flat", "at_once": "2"},
        {"pressed": "1", "pressure": "firm (mark 5)", "pre_press": "5 s", "stack": "transfer > blank", "cool": "fan"},
    )

    def test_the_columns_are_the_logs(self) -> None:
        assert tuple(column for column in LOG_COLUMNS if column in COLUMNS) == LOG_COLUMNS
        assert set(LOG_COLUMNS) == set(COLUMNS)
        of = shop(*self.LOG)
        point, found = built(of)
        assert all(tuple(each) == LOG_COLUMNS for each in as_log_rows(found, point, of))

    def test_what_is_not_varied_stays_as_it_was_last(self) -> None:
        of = shop(*self.LOG)
        point, found = built(of)
        first = as_log_rows(found, point, of)[0]
        assert {column: value for column, value in first.items() if value} == {
            "blank": "slate",
            "press": "clam",
            "temperature": "200 C",
            "time": "240 s",
            "pressure": "firm (mark 5)",
            "face": "print up",
            "pre-press": "5 s",
            "stack": "transfer > blank",
            "cool": "fan",
            "note": "Test ladder 1 of 3",
        }

    def test_the_supplier_s_peel_and_cool_come_with_the_supplier_s_figures(self) -> None:
        of = shop(sheet={"temperature": "200 C", "time": "60 s", "pre press": "5 s", "peel": "cold", "cool": "flat"})
        point, found = built(of)
        first = as_log_rows(found, point, of)[0]
        assert (first["pre-press"], first["peel"], first["cool"]) == ("5 s", "cold", "flat")

    def test_filled_in_and_pasted_they_are_read_as_the_ladder(self) -> None:
        """The project's own reader of the log takes them once the maker has filled in what is empty."""
        of = shop(*self.LOG)
        point, found = built(of)
        filled = [
            {**each, "pressed": "1", "good": "1"} for each in as_log_rows(found, point, of, day=date(2026, 4, 18))
        ]
        lines = [",".join(LOG_COLUMNS), *(",".join(each.values()) for each in filled)]
        pressings, problems = read_log("\n".join(lines), "press-log/2026.csv", Units())
        assert problems == []
        assert [(each.temperature, each.time) for each in pressings] == [(rung.dial, rung.time) for rung in found]

    def test_a_method_that_is_not_the_blanks_is_written(self) -> None:
        of = shop({"pressed": "1", "method": "film transfer", "temperature": "150 C", "time": "15 s"})
        groups = evidence_of(of)
        point = starting_points(of.blanks["slate"], of, groups, method="film transfer")[0]
        found = ladder(point, of, groups)
        assert {each["method"] for each in as_log_rows(found, point, of)} == {"film transfer"}


@given(
    calibrated(),
    st.integers(150, 215),
    st.integers(5, 500),
    st.sampled_from(list(Direction)),
    st.integers(FEWEST, MOST),
    st.integers(150, 230),
    st.lists(st.tuples(st.integers(-3, 3), st.integers(1, 9)), max_size=4),
)
def test_every_ladder_keeps_within_limits_and_varies_one_thing(
    used: Press,
    dial: int,
    seconds: int,
    direction: Direction,
    rungs: int,
    bears: int,
    before: list[tuple[int, int]],
) -> None:
    used = used.model_copy(update={"lowest": temperature("140 C"), "highest": temperature("220 C")})
    log: list[dict[str, Any]] = [{"temperature": f"{dial} C", "time": f"{seconds} s", "pressed": "1", "good": "1"}]
    log += [
        {"temperature": f"{dial} C", "time": f"{max(1, seconds + 10 * away)} s", "pressed": str(pressed), "good": "0"}
        for away, pressed in before
    ]
    point, found = built(shop(*log, used=used, limit=f"{bears} C"), direction=direction, rungs=rungs)
    assert len(found) <= rungs
    assert min(len({rung.dial for rung in found}), len({rung.time for rung in found})) <= 1
    assert [(rung.dial, rung.time) for rung in found] == sorted({(rung.dial, rung.time) for rung in found})
    assert point.dial is not None
    assert point.time is not None
    for rung in found:
        assert rung.pressed < OFTEN
        assert rung.time.seconds > 0
        assert used.lowest is not None
        assert used.highest is not None
        assert used.lowest <= rung.dial <= used.highest
        assert rung.true == true_temperature(used, rung.dial).temperature
        assert rung.true <= temperature(f"{bears} C")
        assert temperature(rung.dial.typed) == rung.dial
        assert duration(rung.time.typed) == rung.time
        steps = used.resolution
        assert steps.temperature is not None
        assert steps.time is not None
        assert (rung.dial.celsius - point.dial.temperature.celsius) % steps.temperature.kelvin == 0
        assert (rung.time.seconds - point.time.seconds) % steps.time.seconds == 0
