"""Contrast of the print room's colours, read out of its own style sheet."""

import math
import re
from fractions import Fraction
from itertools import product
from pathlib import Path

import pytest

from tests.checks import check

ASSETS = Path(__file__).parents[2] / "themes" / "print-room" / "assets"
TEXT = ("ink", "muted", "heat", "cool", "good", "warn")
GROUNDS = ("paper", "sheet")
TEXT_WANTS = float(check("web-05").expected)  # 4.5: WCAG 2.2, 1.4.3
DRAWING_WANTS = 3  # parts of controls and drawings: WCAG 2.2, 1.4.11 (web-05, note)


def luminance(colour: str) -> float:
    """Relative luminance as WCAG 2.2 defines it (www.w3.org/TR/WCAG22/#dfn-relative-luminance)."""
    channels = [int(colour[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio as WCAG 2.2 defines it (www.w3.org/TR/WCAG22/#dfn-contrast-ratio)."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def cut(ratio: float) -> float:
    """Cut to two decimals, so that a failing pair never looks like a passing one (checks: web-22, web-23)."""
    return math.floor(ratio * 100) / 100


def rules(sheet: Path) -> str:
    """A style sheet without its comments."""
    return re.sub(r"/\*.*?\*/", "", sheet.read_text(encoding="utf-8"), flags=re.DOTALL)


def tokens(scheme: str) -> dict[str, str]:
    """Colours by name: the first block of the sheet, laid over by the dark one where that is asked for."""
    sheet = rules(ASSETS / "tokens.css")
    light, dark, *_ = re.findall(r":root \{(.*?)\n\s*\}", sheet, flags=re.DOTALL)
    found = dict(re.findall(r"--([a-z]+): #([0-9a-f]{6});", light))
    return found | dict(re.findall(r"--([a-z]+): #([0-9a-f]{6});", dark)) if scheme == "dark" else found


def pair(row_id: str) -> tuple[str, str]:
    """The two colours of a check row, written `333333 on ffffff`."""
    one, other = check(row_id).inputs.split(" on ")
    return one, other


# WCAG 2.2, definitions of contrast ratio and relative luminance; W3C ACT rule afw4f7, examples
@pytest.mark.parametrize("row_id", ["web-01", "web-02", "web-03", "web-04", "web-20", "web-21"])
def test_the_formula_agrees_with_published_ratios(row_id: str):
    assert check(row_id).accepts(Fraction(contrast(*pair(row_id))))


# W3C ACT rule afw4f7, examples: the page cuts, it does not round
@pytest.mark.parametrize("row_id", ["web-22", "web-23"])
def test_a_ratio_is_cut_not_rounded(row_id: str):
    assert cut(contrast(*pair(row_id))) == float(check(row_id).expected)


def test_each_scheme_sets_every_colour_for_itself():
    light, dark = tokens("light"), tokens("dark")
    assert set(light) == {*TEXT, *GROUNDS, "line"}
    assert all(light[name] != dark[name] for name in light)


@pytest.mark.parametrize(("scheme", "name", "ground"), list(product(("light", "dark"), TEXT, GROUNDS)))
def test_text_passes_on_both_grounds(scheme: str, name: str, ground: str):
    colours = tokens(scheme)
    assert cut(contrast(colours[name], colours[ground])) >= TEXT_WANTS


@pytest.mark.parametrize(("scheme", "ground"), list(product(("light", "dark"), GROUNDS)))
def test_lines_that_carry_meaning_pass_on_both_grounds(scheme: str, ground: str):
    colours = tokens(scheme)
    assert cut(contrast(colours["line"], colours[ground])) >= DRAWING_WANTS


@pytest.mark.parametrize(("scheme", "filled"), list(product(("light", "dark"), ("heat", "ink"))))
def test_words_in_paper_colour_pass_on_filled_ground(scheme: str, filled: str):
    # the one action of a page; the skip link and the timer that has run out
    colours = tokens(scheme)
    assert cut(contrast(colours["paper"], colours[filled])) >= TEXT_WANTS


def test_colours_are_named_in_the_tokens_alone():
    literal = re.compile(r"#[0-9a-fA-F]{3,8}\b|\b(?:rgb|hsl|oklch|lab)a?\(|:\s*(?:black|white|red|grey|gray)\b")
    sheets = [sheet for sheet in ASSETS.glob("*.css") if sheet.name != "tokens.css"]
    assert sheets
    assert {sheet.name: literal.findall(rules(sheet)) for sheet in sheets} == {sheet.name: [] for sheet in sheets}


def test_nothing_is_fetched_from_elsewhere():
    for sheet in ASSETS.glob("*.css"):
        assert not re.search(r"@import|@font-face|https?:|url\(", rules(sheet)), sheet.name
