"""Money in words, against Babel, ISO 4217 and the decimal module's own rounding."""

from datetime import date
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from babel.numbers import format_currency, get_currency_precision
from hypothesis import given
from hypothesis import strategies as st

from maker_site.language import Language, speaking
from maker_site.workings.money import Figures, decimal_of, digits_of, minor_unit, money, rounded
from tests.checks import check
from tests.workings.money.bench import POUNDS

NO_BREAK = "\u00a0"


@pytest.mark.parametrize(
    ("row", "currency"),
    [("pricing-12", "USD"), ("pricing-12", "EUR"), ("pricing-12", "GBP"), ("pricing-13", "JPY"), ("pricing-14", "KWD")],
)
def test_a_currency_has_as_many_digits_as_iso_4217_says(row, currency):
    assert digits_of(currency) == check(row).figure
    assert minor_unit(currency) == Decimal(1) / 10 ** digits_of(currency)


def test_where_cldr_has_dropped_small_coins_its_digits_are_shown_unless_more_were_typed():
    # checks: pricing-14 - IQD has 3 digits in ISO 4217 and 0 in CLDR
    assert digits_of("IQD") == get_currency_precision("IQD") == 0
    iraq = Figures("IQD", "en_GB")
    assert iraq.money(Decimal("1250.250")) == f"IQD{NO_BREAK}1,250"
    assert iraq.typed(Decimal("1250.250")) == f"IQD{NO_BREAK}1,250.25"


@pytest.mark.parametrize(
    ("value", "currency", "locale", "written"),
    [
        ("1234.5", "GBP", "en_GB", "£1,234.50"),
        ("1234.5", "EUR", "de_DE", f"1.234,50{NO_BREAK}€"),
        ("1234.5", "JPY", "ja_JP", "￥1,235"),
        ("1.2345", "KWD", "en_GB", f"KWD{NO_BREAK}1.235"),
        ("-0.5", "GBP", "en_GB", "-£0.50"),
        ("0", "GBP", "en_GB", "£0.00"),
    ],
)
def test_amounts_are_written_as_in_their_place(value, currency, locale, written):
    assert money(Decimal(value), currency, locale) == written  # forms of CLDR, typed in by hand


def test_halves_go_away_from_zero():
    assert rounded(Decimal("8.125"), 2) == Decimal("8.13")  # checks: pricing-27, half up
    assert rounded(Decimal("2.675"), 2) == Decimal("2.68")  # checks: pricing-28, which a float gets wrong
    # checks: pricing-26, the note's half up
    assert [rounded(Decimal(value), 0) for value in ("1.5", "2.5", "3.5", "-2.5")] == [2, 3, 4, -3]


@given(st.decimals(-(10**9), 10**9, places=6), st.integers(0, 4))
def test_rounding_agrees_with_the_decimal_module(value, digits):
    assert rounded(value, digits) == value.quantize(Decimal(1).scaleb(-digits), ROUND_HALF_UP)


@given(
    st.decimals(0, 10**7, places=5),
    st.sampled_from(["GBP", "EUR", "JPY", "KWD", "CHF", "IQD", "CLF"]),
    st.sampled_from(["en_GB", "en_US", "de_DE", "de_CH", "fr_FR", "ja_JP", "ar_EG", "hi_IN"]),
)
def test_what_is_written_is_what_babel_writes_of_the_rounded_amount_save_for_spaces(value, currency, locale):
    step = Decimal(1).scaleb(-get_currency_precision(currency))
    written = format_currency(value.quantize(step, ROUND_HALF_UP), currency, locale=locale)
    assert money(value, currency, locale).replace(NO_BREAK, "") == written.replace(NO_BREAK, "")


@given(st.fractions(0, 1000, max_denominator=10**6))
def test_a_fraction_as_a_decimal_is_within_the_28th_digit(value):
    assert abs(Fraction(decimal_of(value)) - value) <= value / 10**27


class TestFigures:
    @pytest.mark.parametrize(
        ("value", "written"),
        [
            ("1.889583", "£1.89"),
            ("0.105", "£0.105"),
            ("0.054", "£0.054"),
            ("0.9", "£0.90"),
            ("0.0001269", "£0.000127"),
            ("14", "£14.00"),
            ("0", "£0.00"),
        ],
    )
    def test_small_amounts_keep_three_digits(self, value, written):
        assert POUNDS.fine(Fraction(value)) == written

    def test_plain_figures_and_shares_follow_the_place(self):
        assert POUNDS.number(Fraction("1234.5")) == "1,234.5"
        assert Figures("EUR", "de_DE").number(Fraction("1234.5")) == "1.234,5"
        assert POUNDS.number(106) == "106"
        assert POUNDS.percent(Fraction("0.065")) == "6.5 %"
        assert POUNDS.percent(Fraction(11, 12)) == "91.7 %"


@pytest.mark.parametrize(  # CLDR, percentFormat; in English the site's own house style
    ("locale", "written"),
    [
        ("en_GB", "6.5 %"),
        ("de_DE", f"6,5{NO_BREAK}%"),
        ("tr_TR", "%6,5"),
        ("he_IL", "6.5%"),
    ],
)
def test_a_share_is_written_as_in_its_place(locale: str, written: str) -> None:
    assert Figures("EUR", locale).percent(Fraction(13, 200)) == written


def test_a_day_within_a_sentence_is_written_by_the_language_spoken() -> None:
    figures, day = Figures("EUR", "de_DE"), date(2026, 4, 18)
    assert figures.day(day) == "2026-04-18"
    with speaking(Language("de", "ltr")):
        assert figures.day(day) == "18. Apr. 2026"  # CLDR, availableFormats yMMMd
