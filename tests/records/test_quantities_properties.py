"""What holds for every quantity, held against another library where there is one."""

import time
from fractions import Fraction

import pint
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from maker_site.records import NotReadable, meanings
from maker_site.records import quantities as q
from tests.strategies import AWKWARD_TEXTS, decimals, fractions_as_typed

PINT = pint.UnitRegistry()
CLOSE = 1e-9  # relative; checks: units-29

PARSERS = {
    "number": q.number,
    "temperature": q.temperature,
    "temperature range": q.temperature_range,
    "temperature step": q.temperature_step,
    "duration": q.duration,
    "duration in minutes": lambda text: q.duration(text, "min"),
    "duration range": q.duration_range,
    "length": q.length,
    "length in inches": lambda text: q.length(text, "in"),
    "size": q.size,
    "place": q.place,
    "pressure": q.pressure,
    "measure": q.measure,
    "laydown": q.laydown,
    "amount": q.amount,
    "share": q.share,
    "date": meanings.iso_date,
    "yes or no": meanings.yes_or_no,
    "count": meanings.count,
    "count from one": meanings.count_from_one,
    "substrate": meanings.substrate,
    "face": meanings.face,
    "web address": meanings.web_address,
    "relative path": meanings.relative_path,
    "defect": meanings.defect,
    "cool": meanings.one_of(("air", "fan"), "a way to cool"),
    "currency": meanings.currency,
    "locale": meanings.locale,
    "plain text": meanings.plain_text,
}


def sentence_of(parser: str, text: str) -> str | None:
    """Return the sentence that a parser refuses the text with, or None where it reads it."""
    try:
        PARSERS[parser](text)
    except NotReadable as refused:
        return str(refused)
    return None


def same(ours: Fraction, theirs: float) -> bool:
    return float(ours) == pytest.approx(theirs, rel=CLOSE, abs=1e-9)


@given(decimals())
def test_decimals_are_read_back_as_they_were(text):
    assert q.number(text) == Fraction(text)
    assert q.number(q.plain(q.number(text), 6)) == Fraction(text)


@given(fractions_as_typed())
def test_mixed_fractions_are_read_back_as_they_were(typed):
    text, value = typed
    assert q.number(text) == value


@given(st.fractions(min_value=-1000, max_value=1000), st.integers(0, 6))
def test_shown_figure_is_within_half_a_step(value, places):
    assert abs(Fraction(q.plain(value, places)) - value) <= Fraction(1, 2 * 10**places)


@given(decimals(), st.sampled_from(["C", "F"]))
def test_temperatures_agree_with_pint(text, unit):
    ours = q.temperature(f"{text} {unit}")
    theirs = PINT.Quantity(float(text), f"deg{unit}")
    assert same(ours.celsius, theirs.to("degC").magnitude)
    assert same(ours.fahrenheit, theirs.to("degF").magnitude)


@given(st.integers(1, 10**6), st.sampled_from(["C", "F"]))
def test_differences_of_temperature_agree_with_pint(thousandths, unit):
    text = q.plain(Fraction(thousandths, 1000))
    theirs = PINT.Quantity(float(text), f"delta_deg{unit}").to("kelvin").magnitude
    assert same(q.temperature_step(f"{text} {unit}").kelvin, theirs)


@given(st.fractions(min_value=-459, max_value=2000))
def test_fahrenheit_goes_round_exactly(fahrenheit):
    assert q.from_fahrenheit(fahrenheit).fahrenheit == fahrenheit


@given(decimals(), st.sampled_from(["mm", "cm", "m", "in", "ft"]))
def test_lengths_agree_with_pint(text, unit):
    ours = q.length(f"{text} {unit}")
    theirs = PINT.Quantity(float(text), unit)
    assert same(ours.mm, theirs.to("mm").magnitude)
    assert same(ours.inches, theirs.to("in").magnitude)


@given(decimals(), st.sampled_from(["bar", "psi", "kPa", "MPa"]))
def test_pressures_agree_with_pint(text, unit):
    assert same(q.pressure(f"{text} {unit}").kpa, PINT.Quantity(float(text), unit).to("kPa").magnitude)


@given(
    decimals(above_nought=True),
    st.sampled_from(
        [("ml", "ml"), ("cl", "cl"), ("l", "l"), ("fl oz", "fluid_ounce"), ("g", "g"), ("kg", "kg"),
         ("mm", "mm"), ("cm", "cm"), ("m", "m"), ("in", "in"), ("ft", "ft"), ("yd", "yd"), ("m2", "m**2")]
    ),
)  # fmt: skip
def test_contents_agree_with_pint(text, unit):
    ours = q.measure(f"{text} {unit[0]}")
    wanted = {"m2": "m**2"}.get(ours.unit, ours.unit)
    assert same(ours.amount, PINT.Quantity(float(text), unit[1]).to(wanted).magnitude)


@given(st.integers(0, 99), st.integers(0, 59))
def test_clock_and_parts_say_the_same(minutes, seconds):
    wanted = Fraction(minutes * 60 + seconds)
    assert q.duration(f"{minutes}:{seconds:02}").seconds == wanted
    assert q.duration(f"{minutes} min {seconds} s").seconds == wanted
    assert q.duration(f"{wanted} s").seconds == wanted


@given(decimals(), decimals())
def test_money_is_held_as_typed(whole, other):
    for text in (whole, other):
        if "," not in text:
            assert str(q.amount(text).value) == text
            assert q.amount(f"GBP {text}").currency == "GBP"


TRADE_LETTERS = "0123456789.,/:x×-– \"'°½¼CFinmstopsbarkMd()%²٣\0\u00a0ſıK"


@pytest.mark.parametrize("name", PARSERS)
@settings(max_examples=60)
@given(text=st.one_of(st.text(), st.text(TRADE_LETTERS, max_size=30)))
@example(text="1/0")
@example(text="http://[")
@example(text="²")
@example(text="٣")
@example(text="40 pſi")
@example(text="2 ınch")
@example(text="9999-99-99")
def test_any_text_is_read_or_refused(name, text):
    assert sentence_of(name, text) != ""


@pytest.mark.parametrize("awkward", AWKWARD_TEXTS)
def test_awkward_texts_are_answered_at_once(awkward):
    for name in PARSERS:
        started = time.process_time()
        sentence = sentence_of(name, AWKWARD_TEXTS[awkward]) or ""
        assert time.process_time() - started < 1, name
        assert len(sentence) < 1000, name
