"""The nearest right word, and the maker's own words in quotation marks."""

import time

import pytest

from maker_site.records.problems import listed, nearest, quoted


@pytest.mark.parametrize(
    ("word", "known", "said"),
    [
        ("slat-coaster", ["mug", "slate-coaster"], "; did you mean “slate-coaster”?"),
        ("GPB", ["PAB", "GBP"], "; did you mean “GBP”?"),
        ("Thickness", ["thickness"], "; did you mean “thickness”?"),
        ("paper", ["tape", "transfer paper", "protective paper"],
         "; did you mean “transfer paper” or “protective paper”?"),
        ("coaster", ["slate-coaster", "mug"], "; did you mean “slate-coaster”?"),
        ("mug", ["mug-a", "mug-b", "mug-c", "mug-d", "mugs"], "; did you mean “mugs”?"),
        ("zzz", ["mug"], ""),
        ("mug", [], ""),
        ("", ["mug"], ""),
    ],
)  # fmt: skip
def test_nearest(word, known, said):
    assert nearest(word, known) == said


def test_a_long_text_is_no_slip_of_the_pen_and_costs_nothing():
    started = time.process_time()
    assert nearest("a" * 1_000_000, ["a" * 60] * 100) == ""
    assert time.process_time() - started < 0.1


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("400 F", "“400 F”"),
        ("two\n lines", "“two lines”"),
        ("x" * 81, "“" + "x" * 80 + "…”"),
        ("\x1b[31mred", "“\N{REPLACEMENT CHARACTER}[31mred”"),
        ("\udce9", "“\N{REPLACEMENT CHARACTER}”"),
    ],
)
def test_quoted(text, shown):
    assert quoted(text) == shown


def test_listed():
    assert [listed("a"), listed("ab"), listed("abc")] == ["a", "a or b", "a, b or c"]
