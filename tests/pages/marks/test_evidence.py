"""Counted evidence and its interval."""

import re
from xml.etree import ElementTree

import pytest

from maker_site.pages.marks import evidence_dots, interval_bar

from .drawings import SVG, numbers, of_class, read


def good_dots(drawing: ElementTree.Element) -> list[tuple[float, float]]:
    """Where strokes of no length stand: their round ends are the dots."""
    return [pair for path in of_class(drawing, "m-dot-good") for pair in pairs(r"M([\d.]+) ([\d.]+)h0", path)]


def spoiled_dots(drawing: ElementTree.Element) -> list[tuple[float, float]]:
    """Where the rings begin."""
    return [pair for path in of_class(drawing, "m-dot-spoiled") for pair in pairs(r"M([\d.]+) ([\d.]+)a", path)]


def pairs(pattern: str, path: ElementTree.Element) -> list[tuple[float, float]]:
    return [(float(x), float(y)) for x, y in re.findall(pattern, path.get("d", ""))]


def test_each_piece_is_a_dot_in_the_order_pressed():
    outcomes = [True, False, True, True]
    drawing = read(evidence_dots(outcomes))
    # A spoiled one is a ring that begins half a stroke (4.5) left of its middle.
    dots = [(x, True) for x, _ in good_dots(drawing)] + [(x + 4.5, False) for x, _ in spoiled_dots(drawing)]
    assert [good for _, good in sorted(dots)] == outcomes
    assert [x for x, _ in sorted(dots)] == [9, 24, 39, 54]  # by hand: 1.5 + 7.5, then 15 a piece


def test_a_spoiled_piece_is_open_and_struck_through():
    (spoiled,) = of_class(read(evidence_dots([True, False])), "m-dot-spoiled")
    assert re.fullmatch(r"M[\d. ]+a[\d. ]+a[\d. -]+M[\d. ]+l12-12", spoiled.get("d", ""))


def test_twenty_pieces_are_dots_in_two_rows_and_twenty_one_are_figures():
    twenty = read(evidence_dots([True] * 20))
    dots = good_dots(twenty)
    assert len(dots) == 20
    assert len({y for _, y in dots}) == 2
    more = read(evidence_dots([True] * 20 + [False]))
    assert not good_dots(more)
    assert [text.text for text in more.iter(f"{SVG}text")] == ["20 / 21"]


def test_nothing_pressed_is_an_empty_drawing():
    assert list(read(evidence_dots([]))) == []


def test_the_bar_stands_where_a_hand_puts_it():
    # 3 good of 10: 0.1077913 to 0.6032219 (R 3.6.2 prop.test, by SciPy's own test; checks: statistics-13).
    # By hand, 0 % at x = 10 and 2 units a per cent: 10 + 21.558 = 31.56, 10 + 120.644 = 130.64, tick 10 + 60 = 70.
    drawing = read(interval_bar(0.1077913, 0.6032219, 0.3))
    (bar,) = of_class(drawing, "m-interval")
    left, width = float(bar.get("x", "")), float(bar.get("width", ""))
    assert left == pytest.approx(31.56, abs=0.01)
    assert left + width == pytest.approx(130.64, abs=0.015)
    (tick,) = of_class(drawing, "m-tick")
    assert numbers(tick.get("d", ""))[0] == 70


@pytest.mark.parametrize(("share", "x"), [(0, 10), (0.5, 110), (1, 210)])
def test_the_ends_and_the_middle_of_the_axis(share: float, x: float):
    (tick,) = of_class(read(interval_bar(0, 1, share)), "m-tick")
    assert numbers(tick.get("d", ""))[0] == x


@pytest.mark.parametrize("values", [(-0.1, 1, 0.5), (0.6, 0.4, 0.5), (0, 1.01, 0.5), (0, 1, 24)])
def test_shares_that_are_no_shares_are_refused(values: tuple[float, float, float]):
    with pytest.raises(ValueError, match="share of 0 to 1"):
        interval_bar(*values)
