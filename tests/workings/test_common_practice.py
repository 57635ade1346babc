"""Ranges everybody repeats, held against the figures that were met outside."""

import re
from fractions import Fraction

import pytest

from maker_site.records.quantities import Temperature, duration, temperature
from maker_site.records.words import FACES, METHODS, SUBSTRATES
from maker_site.workings.common_practice import ORIGINS, common_range, common_ranges
from tests.checks import Check, check

# Substrate and the rows of checks/heat.csv that speak of it.
MET = [
    ("aluminium", "heat-09"),
    ("aluminium", "heat-12"),
    ("aluminium", "heat-25"),
    ("steel", "heat-26"),
    ("ceramic", "heat-13"),
    ("glass", "heat-10"),
    ("glass", "heat-27"),
    ("slate", "heat-10"),
    ("slate", "heat-11"),
    ("hardboard", "heat-14"),
    ("neoprene", "heat-15"),
    ("acrylic", "heat-16"),
    ("polyester", "heat-07"),
    ("polyester", "heat-08"),
]


def temperatures(row: Check) -> tuple[Temperature, Temperature] | None:
    """The Fahrenheit figures of a row's inputs, widened by what “about” leaves open: 5 F."""
    found = re.search(r"(about )?(?:(\d+) to )?(\d+) F", row.inputs)
    if not found:
        return None
    slack = 5 if found[1] else 0
    low, high = int(found[2] or found[3]) - slack, int(found[3]) + slack
    return temperature(f"{low} F"), temperature(f"{high} F")


def seconds(row: Check) -> tuple[Fraction, Fraction]:
    low, _, high = row.expected.partition(" to ")
    return duration(f"{low} {row.unit}").seconds, duration(f"{high or low} {row.unit}").seconds


@pytest.mark.parametrize(("substrate", "row_id"), MET)
def test_each_range_meets_the_figures_of_its_substrate(substrate: str, row_id: str) -> None:
    row, ours = check(row_id), common_range(substrate, "sublimation")
    assert ours is not None
    low, high = seconds(row)
    assert ours.time.low.seconds <= high
    assert low <= ours.time.high.seconds
    if degrees := temperatures(row):
        assert ours.temperature.low <= degrees[1]
        assert degrees[0] <= ours.temperature.high


@pytest.mark.parametrize(
    ("substrate", "row_ids"),
    [
        (name, tuple(row_id for other, row_id in MET if other == name))
        for name in dict.fromkeys(each for each, _ in MET)
    ],
)
def test_no_time_is_outside_all_that_was_met(substrate: str, row_ids: tuple[str, ...]) -> None:
    """The span of the sources of one substrate holds our range."""
    ours = common_range(substrate, "sublimation")
    assert ours is not None
    met = [seconds(check(row_id)) for other, row_id in MET if other == substrate]
    assert min(low for low, _ in met) <= ours.time.low.seconds
    assert ours.time.high.seconds <= max(high for _, high in met)


def test_sublimation_on_hard_blanks_stays_in_the_range_normally_recommended() -> None:
    """380 to 420 F (checks: heat-06); acrylic and leatherette soften and are pressed cooler (checks: heat-16)."""
    low, high = (temperature(f"{figure} F") for figure in check("heat-06").expected.split(" to "))
    for row in common_ranges():
        if row.method == "sublimation" and row.substrate not in ("acrylic", "leatherette"):
            # 190 C, the foot of one row, is 374 F: two articles differ
            assert Temperature(low.celsius - 4) <= row.temperature.low
            assert row.temperature.high <= high


def test_every_row_states_its_origin_in_the_trades_own_words() -> None:
    for row in common_ranges():
        assert row.origin
        assert row.substrate in SUBSTRATES
        assert row.method in METHODS
        assert row.face in FACES


def test_each_substrate_and_method_has_one_row() -> None:
    keys = [(row.substrate, row.method) for row in common_ranges()]
    assert len(set(keys)) == len(keys)


def test_every_substrate_of_the_starter_set_has_a_range() -> None:
    assert {row.substrate for row in common_ranges()} == set(SUBSTRATES)


def test_nothing_is_made_up_for_a_substrate_that_is_not_known() -> None:
    assert common_range("soapstone", "sublimation") is None
    assert common_range("slate", "film transfer") is None


def test_what_is_said_of_the_origin_is_known_to_translators():
    assert {row.origin for row in common_ranges()} == set(ORIGINS)
