"""Quantities as people write them: what is read, what is refused, and with which sentence."""

from decimal import Decimal
from fractions import Fraction

import pytest

from maker_site.records import NotReadable
from maker_site.records.quantities import (
    PAPER_MM,
    amount,
    duration,
    duration_range,
    from_fahrenheit,
    laydown,
    length,
    measure,
    number,
    place,
    plain,
    pressure,
    share,
    size,
    temperature,
    temperature_range,
    temperature_step,
)
from tests.checks import check

INCH = Fraction("25.4")


class TestNumbers:
    @pytest.mark.parametrize(
        ("text", "value"),
        [
            ("12", 12),
            ("12.5", "12.5"),
            ("12,5", "12.5"),
            (".5", "0.5"),
            (",5", "0.5"),
            ("3 1/2", "7/2"),
            ("3  1/2", "7/2"),
            ("1/3", "1/3"),
            ("3½", "7/2"),
            ("3 ½", "7/2"),
            ("½", "1/2"),
            ("⅐", "1/7"),
            ("⅞", "7/8"),
            ("1200", 1200),
            ("1,2", "1.2"),
            ("0,125", "0.125"),  # no thousands begin with a nought
            ("1,2005", "1.2005"),
            (" 7 ", 7),
            ("٣", 3),
        ],
    )
    def test_is_read_exactly(self, text, value):
        assert number(text) == Fraction(value)

    @pytest.mark.parametrize(
        ("text", "message"),
        [
            ("", "“” is not a number"),
            ("twelve", "“twelve” is not a number"),
            ("1e3", "“1e3” is not a number"),
            ("-1", "“-1” is not a number"),
            ("1.2.3", "“1.2.3” is not a number"),
            ("1,200.50", "“1,200.50” is not a number"),
            ("3²", "“3²” is not a number"),
            ("inf", "“inf” is not a number"),
            ("1_000", "“1_000” is not a number"),
            ("1,200", "“1,200” can be read two ways; write 1200 or 1.200"),
            ("1/0", "“1/0” divides by nothing"),
            ("3 1/0", "“3 1/0” divides by nothing"),
            ("1" * 31, "the number “111111111111…” is too long"),
        ],
    )
    def test_is_refused(self, text, message):
        with pytest.raises(NotReadable) as refused:
            number(text)
        assert str(refused.value) == message

    @pytest.mark.parametrize(
        ("value", "places", "shown"),
        [
            ("204.4444", 1, "204.4"),
            ("0.5", 0, "1"),
            ("-0.5", 0, "-1"),
            ("-0.0001", 3, "0"),
            ("100", 3, "100"),
            ("0.05", 2, "0.05"),
            ("2.995", 2, "3"),
            ("1/3", 3, "0.333"),
        ],
    )
    def test_is_shown_rounded_half_away_from_nought(self, value, places, shown):
        assert plain(Fraction(value), places) == shown


class TestTemperature:
    @pytest.mark.parametrize(
        ("text", "celsius"),
        [
            ("200 C", 200),
            ("200C", 200),
            ("200 c", 200),
            ("200 °C", 200),
            ("200°C", 200),
            ("200 ºC", 200),
            ("200", 200),
            ("200 degrees Celsius", 200),
            ("200 deg. C", 200),
            ("392 F", 200),
            ("392 fahrenheit", 200),
            ("410°F", 210),
            ("-40 F", -40),
            ("−40 C", -40),
            ("204,5 C", "204.5"),
            ("400 F", "1840/9"),
            ("204 °C", 204),  # a no-break space, as word processors put it
        ],
    )
    def test_is_read(self, text, celsius):
        assert temperature(text).celsius == Fraction(celsius)

    def test_keeps_what_was_typed(self):
        assert temperature("  400 °F ").typed == "400 °F"

    @pytest.mark.parametrize(("bare", "celsius"), [("C", 392), ("F", 200)])
    def test_takes_the_shops_unit_where_none_is_written(self, bare, celsius):
        assert temperature("392", bare).celsius == celsius

    @pytest.mark.parametrize(
        ("text", "message"),
        [
            ("hot", "“hot” is not a temperature; write it like 200 C or 400 F"),
            ("200 K", "“200 K” is not a temperature; write it like 200 C or 400 F"),
            ("200 C 5", "“200 C 5” is not a temperature; write it like 200 C or 400 F"),
            ("190 to 200 C", "“190 to 200 C” is not a temperature; write it like 200 C or 400 F"),
            ("-300 C", "“-300 C” is below absolute zero"),
            ("-460 F", "“-460 F” is below absolute zero"),
            ("1,200 F", "“1,200” can be read two ways; write 1200 or 1.200"),
        ],
    )
    def test_is_refused(self, text, message):
        with pytest.raises(NotReadable) as refused:
            temperature(text)
        assert str(refused.value) == message

    # NIST SP 811, Appendix B.8
    @pytest.mark.parametrize("row", [f"units-{n:02}" for n in (1, 2, 3, 4, 5, 24)])
    def test_fahrenheit_is_read_as_the_formula_says(self, row):
        wanted = check(row)
        assert wanted.accepts(temperature(wanted.inputs.replace("degF", "F")).celsius)

    @pytest.mark.parametrize("row", ["units-06", "units-07", "units-26"])
    def test_celsius_is_shown_in_fahrenheit_as_the_formula_says(self, row):
        wanted = check(row)
        assert wanted.accepts(temperature(wanted.inputs.replace("degC", "C")).fahrenheit)

    def test_absolute_zero_is_the_lowest(self):
        below = -check("units-25").figure
        assert temperature("-273.15 C").celsius == below
        with pytest.raises(NotReadable):
            temperature("-273.16 C")

    def test_whole_fahrenheit_never_comes_back_as_another(self):
        # checks: units-26, the trap that 400 F shown as 204 C comes back as 399 F
        read = {degrees: temperature(f"{degrees} F") for degrees in range(-40, 601)}
        assert {degrees: each.fahrenheit for degrees, each in read.items() if each.fahrenheit != degrees} == {}
        assert {degrees: from_fahrenheit(Fraction(degrees)) for degrees in read} == read

    @pytest.mark.parametrize(
        ("text", "low", "high"),
        [
            ("190 to 200 C", 190, 200),
            ("190-200", 190, 200),
            ("190 – 200 °C", 190, 200),
            ("190..200 C", 190, 200),
            ("374 to 392 F", 190, 200),
            ("190 C to 392 F", 190, 200),
            ("200 C", 200, 200),
            ("200 to 200 C", 200, 200),
        ],
    )
    def test_range_is_read(self, text, low, high):
        found = temperature_range(text)
        assert (found.low.celsius, found.high.celsius) == (low, high)
        assert found.typed == text

    @pytest.mark.parametrize(
        ("text", "message"),
        [
            ("200 to 190 C", "“200 to 190 C” runs downwards; write the lower temperature first"),
            ("190 or 200 C", "“190 or 200 C” is not a temperature; write it like 200 C or 400 F"),
        ],
    )
    def test_range_is_refused(self, text, message):
        with pytest.raises(NotReadable) as refused:
            temperature_range(text)
        assert str(refused.value) == message

    def test_a_difference_is_not_a_temperature(self):
        wanted = check("units-08")  # NIST SP 811, temperature intervals
        assert wanted.accepts(temperature_step(wanted.inputs.replace("degF", "F")).kelvin)

    @pytest.mark.parametrize(
        ("text", "message"),
        [
            ("0 C", "a step of temperature must be more than nothing"),
            ("-1 C", "“-1 C” is not a step of temperature; write it like 1 C or 5 F"),
        ],
    )
    def test_step_is_refused(self, text, message):
        with pytest.raises(NotReadable) as refused:
            temperature_step(text)
        assert str(refused.value) == message


class TestDuration:
    @pytest.mark.parametrize(
        ("text", "seconds"),
        [
            ("150 s", 150),
            ("150s", 150),
            ("150 sec", 150),
            ("150 seconds", 150),
            ("150", 150),
            (check("units-22").inputs, check("units-22").figure),  # 2:30, common practice
            ("2:30 min", 150),
            ("0:45", 45),
            ("1:10:00", 4200),
            ("90:00", 5400),
            ("2 min 30 s", 150),
            ("2m30s", 150),
            ("2' 30\"", 150),
            ("2′30″", 150),
            ("5 min", 300),
            ("5 minutes", 300),
            ("1 1/2 min", 90),
            ("1½ min", 90),
            ("1,5 min", 90),
            ("1 h 10 min", 4200),
            ("2 hours", 7200),
            ("7.5 s", "7.5"),
        ],
    )
    def test_is_read(self, text, seconds):
        assert duration(text).seconds == Fraction(seconds)

    def test_bare_figure_takes_the_fields_unit(self):
        assert duration("30", "min").seconds == 1800
        assert duration("30", "min").minutes == 30

    @pytest.mark.parametrize(
        ("text", "message"),
        [
            ("", "“” is not a time; write it like 150 s, 2:30 or 2 min 30 s"),
            ("long", "“long” is not a time; write it like 150 s, 2:30 or 2 min 30 s"),
            ("-5 s", "“-5 s” is not a time; write it like 150 s, 2:30 or 2 min 30 s"),
            ("2 min 30", "“2 min 30” is not a time; write it like 150 s, 2:30 or 2 min 30 s"),
            ("30 s 2 min", "“30 s 2 min” is not a time; write it like 150 s, 2:30 or 2 min 30 s"),
            ("2:75", "“2:75” has more than 59 seconds or minutes after the colon"),
            ("1:75:00", "“1:75:00” has more than 59 seconds or minutes after the colon"),
            ("2:3", "“2:3” is not a time; write it like 150 s, 2:30 or 2 min 30 s"),
        ],
    )
    def test_is_refused(self, text, message):
        with pytest.raises(NotReadable) as refused:
            duration(text)
        assert str(refused.value) == message

    @pytest.mark.parametrize(
        ("text", "low", "high"),
        [
            ("60 to 75 s", 60, 75),
            ("60-75", 60, 75),
            ("60–75 sec", 60, 75),
            ("4 to 8 min", 240, 480),
            ("1 to 1 1/2 min", 60, 90),
            ("2:30 to 3:00", 150, 180),
            ("45 s to 1 min", 45, 60),
            ("45 s", 45, 45),
        ],
    )
    def test_range_is_read(self, text, low, high):
        found = duration_range(text)
        assert (found.low.seconds, found.high.seconds) == (low, high)
        assert found.typed == text

    @pytest.mark.parametrize(
        ("text", "message"),
        [
            ("75 to 60 s", "“75 to 60 s” runs downwards; write the shorter time first"),
            # The unit of the second cannot be lent to the first: 2 min and 2:30 would both be guesses.
            (
                "2 to 3:30",
                "“2 to 3:30” can be read two ways; write both times in full, like 2 min to 3:30",
            ),
            (
                "1 to 2 min 30 s",
                "“1 to 2 min 30 s” can be read two ways; write both times in full, like 2 min to 3:30",
            ),
            ("1-1/2 min", "“1-1/2 min” runs downwards; write the shorter time first"),
        ],
    )
    def test_range_is_refused(self, text, message):
        with pytest.raises(NotReadable) as refused:
            duration_range(text)
        assert str(refused.value) == message


class TestLength:
    @pytest.mark.parametrize(
        ("text", "mm"),
        [
            ("3 mm", 3),
            ("3mm", 3),
            ("3", 3),
            ("9.5 cm", 95),
            ("1 m", 1000),
            ("3 1/2 in", INCH * Fraction(7, 2)),
            ("3½ in", INCH * Fraction(7, 2)),
            ("3 ½ in", INCH * Fraction(7, 2)),
            ('11 3/4"', INCH * Fraction(47, 4)),
            ("11 3/4″", INCH * Fraction(47, 4)),
            ("2 inches", INCH * 2),
            ("2 IN.", INCH * 2),
            ("1'", INCH * 12),
            ("0 mm", 0),
        ],
    )
    def test_is_read(self, text, mm):
        assert length(text).mm == mm

    def test_takes_the_shops_unit_where_none_is_written(self):
        assert length("2", "in").mm == INCH * 2
        assert length("2", "cm").mm == 20
        assert length("2 mm", "in").mm == 2

    # NIST SP 811, Appendix B.8: 1 in = 25.4 mm
    @pytest.mark.parametrize("row", ["units-09", "units-10", "units-11", "units-12"])
    def test_inches_and_feet_are_exact(self, row):
        wanted = check(row)
        assert wanted.accepts(length(wanted.inputs).mm)

    @pytest.mark.parametrize(
        ("text", "message"),
        [
            ("", "“” is not a length; write it like 100 mm or 3 1/2 in"),
            ("wide", "“wide” is not a length; write it like 100 mm or 3 1/2 in"),
            ("-3 mm", "“-3 mm” is not a length; write it like 100 mm or 3 1/2 in"),
            ("3 km", "“3 km” is not a length; write it like 100 mm or 3 1/2 in"),
            ("2 ınch", "“2 ınch” is not a length; write it like 100 mm or 3 1/2 in"),  # a dotless i
            ("1/0 in", "“1/0” divides by nothing"),
        ],
    )
    def test_is_refused(self, text, message):
        with pytest.raises(NotReadable) as refused:
            length(text)
        assert str(refused.value) == message


class TestSize:
    @pytest.mark.parametrize(
        ("text", "width", "height"),
        [
            ("100 x 100 mm", 100, 100),
            ("100x80", 100, 80),
            ("100 × 80 mm", 100, 80),
            ("100 mm by 8 cm", 100, 80),
            ("4 x 6 in", INCH * 4, INCH * 6),
            ('11 3/4" x 5 7/8"', INCH * Fraction(47, 4), INCH * Fraction(47, 8)),
            ("85.60 x 53.98 mm", Fraction("85.6"), Fraction("53.98")),
            ("a4", 210, 297),
            ("letter", INCH * Fraction("8.5"), INCH * 11),
        ],
    )
    def test_is_read(self, text, width, height):
        found = size(text)
        assert (found.width.mm, found.height.mm, found.round) == (width, height, False)
        assert found.typed == text

    @pytest.mark.parametrize(
        ("text", "across"),
        [
            ("3 1/2 in round", INCH * Fraction(7, 2)),
            ("95 mm round", 95),
            ("round 95 mm", 95),
            ("95 mm dia.", 95),
            ("95 diameter", 95),
            ("Ø 95 mm", 95),
            ("⌀95", 95),
        ],
    )
    def test_round_piece_is_read(self, text, across):
        found = size(text)
        assert (found.width.mm, found.height.mm, found.round) == (across, across, True)

    def test_takes_the_shops_unit_where_none_is_written(self):
        assert size("4 x 6", "in") == size("4 x 6 in")
        assert size("4 round", "in") == size("4 in round")

    @pytest.mark.parametrize(
        ("text", "message"),
        [
            ("", "“” is not a size; write it like 100 x 80 mm, 95 mm round or A4"),
            ("100 mm", "“100 mm” is not a size; write it like 100 x 80 mm, 95 mm round or A4"),
            ("1 x 2 x 3 mm", "“1 x 2 x 3 mm” is not a size; write it like 100 x 80 mm, 95 mm round or A4"),
            ("A9", "“A9” is not a size; write it like 100 x 80 mm, 95 mm round or A4"),
            ("100 x wide", "“wide” is not a length; write it like 100 mm or 3 1/2 in"),
            ("0 x 80 mm", "a side must be more than nothing"),
            ("0 mm round", "a side must be more than nothing"),
            ("round", "“” is not a length; write it like 100 mm or 3 1/2 in"),
        ],
    )
    def test_is_refused(self, text, message):
        with pytest.raises(NotReadable) as refused:
            size(text)
        assert str(refused.value) == message

    # ISO 216 and PWG 5101.1, as the rows say
    @pytest.mark.parametrize("row", [f"paper-{n:02}" for n in (1, 2, 3, 4, 6, 7, 8)])
    def test_named_paper_has_the_standards_sides(self, row):
        wanted = check(row)
        assert size(wanted.inputs) == size(f"{wanted.expected} {wanted.unit}")
        assert PAPER_MM[wanted.inputs] == (size(wanted.inputs).width.mm, size(wanted.inputs).height.mm)

    def test_photo_paper_by_name(self):
        wanted = check("paper-09")
        assert size("13x19") == size(f"{wanted.expected} {wanted.unit}")

    # PWG 5101.1, ISO/IEC 7810: sizes without a name here are written out, and stay what they are
    @pytest.mark.parametrize(
        ("row", "typed"),
        [("paper-10", "4 x 6 in"), ("paper-11", "85.60 x 53.98 mm"), ("paper-12", "100 x 150 mm")],
    )
    def test_sizes_alike_stay_apart(self, row, typed):
        wanted = check(row)
        assert size(typed) == size(f"{wanted.expected} {wanted.unit}")

    def test_place_is_from_the_left_and_from_the_top(self):
        x, y = place("10 x 5 mm")
        assert (x.mm, y.mm) == (10, 5)
        assert [each.mm for each in place("0 x 1/2 in")] == [0, INCH / 2]
        assert [each.mm for each in place("1 x 2", "in")] == [INCH, INCH * 2]

    def test_place_is_refused(self):
        with pytest.raises(NotReadable) as refused:
            place("middle")
        assert str(refused.value) == ("“middle” is not a place; write it like 10 x 10 mm (from the left, from the top)")


class TestPressure:
    @pytest.mark.parametrize(
        ("text", "word", "kpa", "mark"),
        [
            ("medium", "medium", None, None),
            ("Firm pressure", "firm", None, None),
            ("2.8 bar", None, 280, None),
            ("2.8", None, 280, None),
            ("280 kPa", None, 280, None),
            ("0.28 MPa", None, 280, None),
            ("medium, 2.8 bar", "medium", 280, None),
            ("medium (2.8 bar)", "medium", 280, None),
            ("medium (mark 5)", "medium", None, "mark 5"),
            ("medium 5", "medium", None, "5"),
            ("firm, 3 turns", "firm", None, "3 turns"),
            ("mark 5", None, None, "mark 5"),
            ("no. 5", None, None, "no. 5"),
            ("no5", None, None, "no5"),
            ("2 1/2 turns", None, None, "2 1/2 turns"),
        ],
    )
    def test_is_read(self, text, word, kpa, mark):
        found = pressure(text)
        assert (found.word, found.kpa, found.mark, found.typed) == (word, kpa, mark, text)

    def test_takes_the_shops_unit_where_none_is_written(self):
        assert pressure("40", "psi") == pressure("40 psi")
        assert pressure("280", "kPa") == pressure("2.8 bar")

    # NIST SP 811, Appendix B.8
    @pytest.mark.parametrize(
        ("row", "kpa_per_unit"),
        [
            ("units-14", 1),
            ("units-15", 1),
            ("units-16", 1),
            ("units-17", pressure("1 psi").kpa),
            ("units-27", 100),
            ("units-28", pressure("1 psi").kpa),
        ],
    )
    def test_gauges_convert_as_the_tables_say(self, row, kpa_per_unit):
        wanted = check(row)
        assert wanted.accepts(pressure(wanted.inputs).kpa / kpa_per_unit)

    ADVICE = "is not a pressure; write light, medium, firm or heavy, or a figure like 2.8 bar or 40 psi"

    @pytest.mark.parametrize(
        ("text", "message"),
        [
            (
                "",
                "the pressure is empty; write light, medium, firm or heavy, or a figure like 2.8 bar",
            ),
            ("hard", f"“hard” {ADVICE}"),
            ("normal", f"“normal” {ADVICE}"),  # not a mark “no” followed by “rmal”
            ("meduim", f"“meduim” {ADVICE}; did you mean “medium”?"),
            ("light-medium", f"“light-medium” {ADVICE}; did you mean “medium”?"),
            ("-2 bar", f"“-2 bar” {ADVICE}"),
            ("40 pſi", f"“40 pſi” {ADVICE}"),  # an old long s
        ],
    )
    def test_is_refused(self, text, message):
        with pytest.raises(NotReadable) as refused:
            pressure(text)
        assert str(refused.value) == message


class TestMoney:
    @pytest.mark.parametrize(
        ("text", "value", "currency"),
        [
            ("12.50", "12.50", None),
            ("12,50", "12.50", None),
            ("12", "12", None),
            (".5", "0.5", None),
            ("0,125", "0.125", None),
            ("USD 12.50", "12.50", "USD"),
            ("usd12.50", "12.50", "USD"),
            ("12.50 EUR", "12.50", "EUR"),
            ("£12.50", "12.50", "£"),
            ("12,50 €", "12.50", "€"),
        ],
    )
    def test_is_read_as_typed(self, text, value, currency):
        found = amount(text)
        assert (str(found.value), found.currency, found.typed) == (
            str(Decimal(value.replace(" ", ""))),
            currency,
            text,
        )

    @pytest.mark.parametrize(
        ("text", "message"),
        [
            ("", "“” is not an amount of money; write it like 12.50"),
            ("free", "“free” is not an amount of money; write it like 12.50"),
            ("-5", "“-5” is not an amount of money; write it like 12.50"),
            ("$5 USD", "“$5 USD” is not an amount of money; write it like 12.50"),
            ("1,200.50", "“1,200.50” is not an amount of money; write it like 12.50"),
            ("NaN", "“NaN” is not an amount of money; write it like 12.50"),
            ("1,200", "“1,200” can be read two ways; write 1200 or 1.200"),
            ("GBP 1,200", "“1,200” can be read two ways; write 1200 or 1.200"),
        ],
    )
    def test_is_refused(self, text, message):
        with pytest.raises(NotReadable) as refused:
            amount(text)
        assert str(refused.value) == message

    @pytest.mark.parametrize(
        ("text", "of_one"),
        [("6.5 %", "0.065"), ("6.5%", "0.065"), ("6,5 %", "0.065"), ("20", "0.2"), ("20 per cent", "0.2"),
         ("20 percent", "0.2"), ("1/2 %", "0.005"), ("150 %", "1.5"), ("0 %", 0)],
    )  # fmt: skip
    def test_percentage_is_read(self, text, of_one):
        assert share(text).of_one == Fraction(of_one)

    @pytest.mark.parametrize("text", ["", "half", "-5 %", "5 ‰", "5 % of it"])
    def test_percentage_is_refused(self, text):
        with pytest.raises(NotReadable) as refused:
            share(text)
        assert str(refused.value) == f"“{text}” is not a percentage; write it like 6.5 %"


class TestMeasure:
    @pytest.mark.parametrize(
        ("text", "value", "unit"),
        [
            ("400 ml", 400, "ml"),
            ("3 x 20 ml", 60, "ml"),
            ("3×20ml", 60, "ml"),
            ("1 l", 1000, "ml"),
            ("33 m", 33000, "mm"),
            ("120 mm", 120, "mm"),
            ("1 yd", INCH * 36, "mm"),
            ("100 sheets", 100, "sheets"),
            ("1 sheet", 1, "sheets"),
            ("20 boxes", 20, "pieces"),
            ("50 bags", 50, "pieces"),
            ("200 pressings", 200, "pressings"),
            ("1 kg", 1000, "g"),
            ("2 m2", 2, "m2"),
            ("2 m²", 2, "m2"),
            ("12", 12, "pieces"),
            ("12 each", 12, "pieces"),
            ("1  fl  oz", Fraction("29.5735295625"), "ml"),
        ],
    )
    def test_is_read(self, text, value, unit):
        found = measure(text)
        assert (found.amount, found.unit) == (value, unit)

    def test_fluid_ounce_is_the_american_one(self):
        wanted = check("units-20")
        assert wanted.accepts(measure("1 fl oz").amount)

    @pytest.mark.parametrize(
        ("text", "message"),
        [
            ("", "“” is not an amount; write it like 400 ml, 33 m or 100 sheets"),
            ("lots", "“lots” is not an amount; write it like 400 ml, 33 m or 100 sheets"),
            ("-4 ml", "“-4 ml” is not an amount; write it like 400 ml, 33 m or 100 sheets"),
            ("0 ml", "“0 ml” is nothing; write an amount above 0"),
            ("0 x 5 ml", "“0 x 5 ml” is nothing; write an amount above 0"),
        ],
    )
    def test_is_refused(self, text, message):
        with pytest.raises(NotReadable) as refused:
            measure(text)
        assert str(refused.value) == message

    def test_unknown_unit_names_the_nearest(self):
        with pytest.raises(NotReadable) as refused:
            measure("100 sheats")
        assert str(refused.value).startswith("“sheats” is not a unit known here (ml, cl, l, fl oz, ")
        assert str(refused.value).endswith("; did you mean “sheets”?")

    @pytest.mark.parametrize("text", ["11 ml/m2", "11 ml per m²", "11ml/sq m", "11 ML/M2"])
    def test_laydown_is_read(self, text):
        assert laydown(text) == 11

    @pytest.mark.parametrize("text", ["11", "11 ml", "11 g/m2"])
    def test_laydown_is_refused(self, text):
        with pytest.raises(NotReadable) as refused:
            laydown(text)
        assert str(refused.value) == f"“{text}” is not an ink laydown; write it like 11 ml/m2"
