"""What to change next, one thing at a time. Expected answers: the trade's table of defects."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from maker_site.records.words import DEFECTS
from maker_site.workings.faults import FAULTS, SOURCE, TOO_LITTLE, TOO_MUCH, Direction
from maker_site.workings.next_try import NextTry, latest_spoiled, next_tries, next_try
from tests.workings.notebook import rows

SPOILED: dict[str, Any] = {"pressed": "2", "good": "1"}


def tries(*defects: str) -> tuple[NextTry, ...]:
    """Changes for pressings with these defects, a pressing each."""
    return next_tries(rows(*({**SPOILED, "defects": each} for each in defects)))


# The table's column “change next”, each change by its leading word, with what becomes of temperature and time.
TABLE = {
    "pale all over": ["spent paper", "sides", "Measure", "ladder: shorter as well as longer"],
    "pale in one place": ["Turn", "pad", "shim"],
    "pale at top or bottom": ["Centre", "tighter", "longer: longer", "smaller"],
    "bare edge": ["bleed", "registration marks", "Centre"],
    "double image": ["tape", "felt", "Open slowly"],
    "stain from elsewhere": ["fresh paper", "Clean"],
    "blurred": ["Cool", "shorter: shorter", "cooler: cooler"],
    "blowout": ["past every edge", "Trim", "Dry"],
    "yellow or brown": ["Cover", "Clean", "cooler: cooler", "shorter: shorter"],
    "wrong colour": ["colour chart", "printer", "ladder: shorter as well as longer"],
    "banding": ["nozzle check", "Align", "paper setting"],
    "dotted tracks": ["paper setting", "less ink", "dry"],
    "specks": ["Lint-roll", "Pre-press"],
    "steam spots": ["Pre-press", "absorbent paper", "Warm"],
    "press lines": ["foam", "torn", "lighter", "cooler: cooler"],
    "tape mark": ["Move", "another tape", "smaller"],
    "paper stuck": ["cooler: cooler", "shorter: shorter", "Peel it warm", "Test the lot"],
    "bowed": ["flat under a weight", "shorter: shorter", "both faces"],
    "cracked": ["lighter", "Pad", "Centre", "slowly and dry"],
    "lifts": ["Peel", "Pre-press", "firmer", "second time"],
    "dye rises through": ["cooler: cooler", "blocks", "another cloth"],
    "fades in use": ["care card", "harder coating", "indoors"],
}


def test_every_defect_that_can_be_written_has_its_line_and_no_other() -> None:
    assert set(FAULTS) == set(DEFECTS) == set(TABLE)


@pytest.mark.parametrize("defect", TABLE)
def test_changes_come_in_the_tables_order(defect: str) -> None:
    found = tries(defect)
    assert len(found) == len(TABLE[defect])
    for each, line in zip(found, TABLE[defect], strict=True):
        words, _, direction = line.partition(": ")
        assert words in each.change
        assert (each.direction or "") == direction
        assert each.defect == defect
        assert FAULTS[defect].causes in each.reason


PRINTER = ("banding", "dotted tracks")
ELSEWHERE = (*PRINTER, "bare edge", "double image", "stain from elsewhere", "blowout", "specks", "tape mark")


@pytest.mark.parametrize("defect", ELSEWHERE)
def test_no_figure_is_touched_where_the_fault_lies_elsewhere(defect: str) -> None:
    assert all(each.direction is None for each in tries(defect))


@pytest.mark.parametrize("defect", PRINTER)
def test_the_printers_faults_are_never_the_presss(defect: str) -> None:
    assert not any("press" in each.change.lower() for each in tries(defect))


def test_pale_is_first_looked_into_and_then_tried_both_ways() -> None:
    first, *_, last = tries("faded")
    assert first.direction is None
    assert last.direction is Direction.TIME_BOTH_WAYS
    assert last.direction.of_time


def test_the_most_frequent_defect_goes_first() -> None:
    assert [each.defect for each in tries("specks", "bare edge; specks", "bare edge", "specks")] == [
        *["specks"] * 2,
        *["bare edge"] * 3,
    ]


def test_of_equally_many_the_one_noted_last_goes_first() -> None:
    first = next_try(rows({**SPOILED, "defects": "specks"}, {**SPOILED, "defects": "bare edge"}))
    assert first is not None
    assert first.defect == "bare edge"


def test_a_defect_counts_once_a_pressing() -> None:
    assert "noted in one pressing;" in tries("specks; lint")[0].reason
    assert "noted in 2 pressings;" in tries("specks", "lint")[0].reason


def test_pale_and_yellow_contradict_each_other_and_ask_for_a_measurement() -> None:
    first, *others = tries("pale all over", "yellow or brown")
    assert first.change.startswith("Measure before changing a figure")
    assert first.defect == "pale all over and yellow or brown"
    assert "too little heat" in first.reason
    assert "too much" in first.reason
    assert all(each.direction is None for each in (first, *others))


@pytest.mark.parametrize(
    ("defects", "asks"),
    [
        (("pale all over; blurred",), True),
        (("lifts; dye rises through",), True),
        (("pale all over; banding",), False),
        (("yellow or brown; blurred",), False),
    ],
)
def test_only_opposite_faults_contradict(defects: tuple[str, ...], asks: bool) -> None:
    assert tries(*defects)[0].change.startswith("Measure before") is asks


@pytest.mark.parametrize(
    ("good", "words"),
    [("0", "2 pieces are spoiled and no defect is noted"), ("1", "One piece is spoiled and no defect is noted")],
)
def test_a_failure_without_a_defect_asks_for_its_word(good: str, words: str) -> None:
    (found,) = next_tries(rows({"pressed": "2", "good": good}))
    assert found.change.startswith("Write the defect")
    assert words in found.reason
    assert (found.defect, found.direction) == ("", None)


def test_a_word_that_hides_several_faults_is_asked_about() -> None:
    (found,) = tries("ghosting")
    assert found.change == "Write in the log which fault it was"
    assert "double image" in found.reason


def test_nothing_spoiled_and_nothing_noted_needs_no_change() -> None:
    assert next_try(rows({}, {})) is None
    assert next_try(()) is None


def test_a_defect_on_a_good_piece_is_answered_too() -> None:
    found = next_try(rows({"defects": "specks"}))
    assert found is not None
    assert found.defect == "specks"


def test_the_latest_pressing_with_a_spoiled_piece_is_found() -> None:
    log = rows({**SPOILED, "defects": "specks"}, {**SPOILED, "defects": "bare edge"}, {})
    assert latest_spoiled(log) == log[1]
    assert latest_spoiled(log[2:]) is None


def test_the_table_says_where_it_comes_from() -> None:
    assert "common practice" in SOURCE
    assert not set(TOO_LITTLE) & set(TOO_MUCH)
    assert {*TOO_LITTLE, *TOO_MUCH} <= set(FAULTS)


@given(st.lists(st.lists(st.sampled_from([*DEFECTS, "ghosting"]), max_size=4), max_size=6))
def test_whatever_was_noted_is_answered_one_change_at_a_time(log: list[list[str]]) -> None:
    found = next_tries(rows(*({**SPOILED, "defects": "; ".join(each)} for each in log)))
    assert bool(found) == bool(log)
    noted = {defect for each in log for defect in each}
    assert not noted or {each.defect for each in found if " and " not in each.defect} <= noted
    assert len({(each.change, each.defect) for each in found}) == len(found)
    assert all(each.reason.endswith(".") and not each.change.endswith(".") for each in found)
    if noted & set(TOO_LITTLE) and noted & set(TOO_MUCH):
        assert all(each.direction is None for each in found)
