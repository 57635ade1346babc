"""Quantities in words: both units, the shop's first, rounded only here."""

from datetime import date
from fractions import Fraction

import pytest
from babel.dates import format_skeleton
from babel.numbers import format_decimal

from maker_site.pages.wording import Wording
from maker_site.records import Shop
from maker_site.records.quantities import (
    Duration,
    duration,
    duration_range,
    length,
    pressure,
    size,
    temperature,
    temperature_range,
)

CELSIUS = Wording.of(Shop.model_validate({"id": "shop", "name": "S", "currency": "GBP"}))
FAHRENHEIT = Wording.of(
    Shop.model_validate(
        {
            "id": "shop",
            "name": "S",
            "currency": "USD",
            "locale": "en_US",
            "units": {"temperature": "F", "length": "in", "pressure": "psi"},
        }
    )
)
GERMAN = Wording.of(Shop.model_validate({"id": "shop", "name": "S", "currency": "EUR", "locale": "de_DE"}))


@pytest.mark.parametrize(
    ("typed", "celsius", "fahrenheit"),
    [
        # NIST SP 811, B.8 (checks: units-04, -05, -06, -26)
        ("400 F", "204 °C", "400 °F"),
        ("410 F", "210 °C", "410 °F"),
        ("205 C", "205 °C", "401 °F"),
        ("-40 C", "-40 °C", "-40 °F"),
    ],
)
def test_a_temperature_is_shown_in_both_units_and_400_never_comes_back_as_399(
    typed: str, celsius: str, fahrenheit: str
) -> None:
    assert CELSIUS.temperature(temperature(typed)) == type(CELSIUS.temperature(temperature(typed)))(celsius, fahrenheit)
    assert FAHRENHEIT.temperature(temperature(typed)).first == fahrenheit


def test_a_difference_of_20_c_is_36_f() -> None:
    shown = CELSIUS.difference(Fraction(20))
    assert (shown.first, shown.second) == ("20 °C", "36 °F")


def test_a_signed_difference_carries_its_sign() -> None:
    assert CELSIUS.difference(Fraction(-7), signed=True).first == "−7 °C"
    assert CELSIUS.difference(Fraction(5), signed=True).second == "+9 °F"


def test_a_range_says_its_unit_once() -> None:
    assert CELSIUS.temperature_range(temperature_range("190 to 200 C")).first == "190 to 200 °C"


@pytest.mark.parametrize(
    ("typed", "clock", "seconds"),
    [("2:30", "2:30", "150 s"), ("5 min", "5:00", "300 s"), ("45 s", "0:45", "45 s"), ("12.5 s", "0:12.5", "12.5 s")],
)
def test_a_time_is_shown_as_a_clock_and_in_seconds(typed: str, clock: str, seconds: str) -> None:
    shown = CELSIUS.time(duration(typed))
    assert (shown.first, shown.second) == (clock, seconds)


def test_an_hour_and_more_is_said_in_hours() -> None:
    assert CELSIUS.time(Duration(Fraction(4200))).first == "1 h 10 min"


def test_a_range_of_times() -> None:
    assert CELSIUS.time_range(duration_range("60 to 75 s")).second == "60 to 75 s"


def test_a_size_is_shown_in_both_systems() -> None:
    shown = CELSIUS.size(size('11 3/4" x 5 7/8"'))
    # 298.45 x 149.225 mm (checks: units-11, -12), shown to a tenth of a millimetre
    assert plain(shown.first) == "298.5 × 149.2 mm"
    assert plain(shown.second) == "11.75 × 5.88 in"
    assert plain(FAHRENHEIT.length(length("100 mm")).first) == "3.94 in"
    assert plain(CELSIUS.size(size("95 mm round")).first) == "95 mm round"


def test_no_line_breaks_within_a_size() -> None:
    assert " " not in CELSIUS.size(size("100 x 80 mm")).first
    assert " " not in FAHRENHEIT.length(length("100 mm")).first


def plain(words: str) -> str:
    """With spaces that a line may break at."""
    return words.replace("\N{NO-BREAK SPACE}", " ")


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("medium", "medium"),
        ("firm, 3 turns", "firm, 3 turns"),
        ("40 psi", "2.76 bar (40 psi)"),  # 275.79 kPa (checks: units-15)
        ("2.8 bar", "2.8 bar (41 psi)"),  # 40.61 psi (checks: units-28)
    ],
)
def test_pressure_keeps_the_word_the_figure_and_the_mark(typed: str, shown: str) -> None:
    assert CELSIUS.pressure(pressure(typed)) == shown


def test_figures_and_dates_are_cldrs() -> None:
    assert GERMAN.figure(Fraction("1234.5"), 1) == format_decimal(1234.5, locale="de_DE")
    day = date(2026, 4, 18)
    assert GERMAN.day(day).words == format_skeleton("yMMMd", day, locale="de_DE") == "18. Apr. 2026"
    assert CELSIUS.day(None) is None


def test_halves_go_away_from_zero_and_there_is_no_minus_nought() -> None:
    assert CELSIUS.figure(Fraction(1, 2)) == "1"
    assert CELSIUS.figure(Fraction(-1, 4)) == "0"
