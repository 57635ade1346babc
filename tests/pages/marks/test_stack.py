"""The section through the press."""

from xml.etree import ElementTree

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import isotonic_regression

from maker_site.pages.marks import Layer, stack_drawing
from maker_site.pages.marks._callouts import spread
from maker_site.pages.marks._lettering import lettering_width, wrapped

from .drawings import SVG, numbers, of_class, read

LAYERS = (
    Layer("protective paper", "Paper below"),
    Layer("transfer", "Transfer, print up", printed="up"),
    Layer("blank", "Slate", "slate"),
    Layer("cover sheet", "Cover sheet"),
)


def parts(drawing: ElementTree.Element) -> list[ElementTree.Element]:
    return [group for group in drawing.iter(f"{SVG}g") if group.find(f"{SVG}title") is not None]


def test_layers_stand_from_bottom_to_top_between_the_plates():
    section = parts(read(stack_drawing(LAYERS, heat="above", title="Stack", prefix="s")))
    assert [part.findtext(f"{SVG}title") for part in section] == [
        "Lower plate, not heated",
        "Paper below",
        "Transfer, print up",
        "Slate",
        "Cover sheet",
        "Platen, heated",
    ]
    levels = [numbers(next(part.iter(f"{SVG}path")).get("d", "")) for part in section]
    # a level path is M left low H right V high H left Z, and y grows downwards
    lows, highs = [level[1] for level in levels], [level[3] for level in levels]
    assert lows[1:] == highs[:-1]
    assert all(high < low for low, high in zip(lows, highs, strict=True))


def test_labels_read_from_top_to_bottom_in_the_order_of_the_stack():
    drawing = read(stack_drawing(LAYERS, heat="above", title="Stack", prefix="s"))
    labels = [(float(text.get("y", "")), text.text) for text in drawing.iter(f"{SVG}text")]
    assert [text for _, text in sorted(labels)][:3] == ["Platen, heated", "Cover sheet", "Slate"]


@pytest.mark.parametrize(("heat", "hot"), [("above", [5]), ("below", [0]), ("both", [0, 5]), ("around", [4])])
def test_heat_ticks_stand_in_the_hot_parts_alone(heat, hot):
    section = parts(read(stack_drawing(LAYERS, heat=heat, title="Stack", prefix="s")))
    assert [index for index, part in enumerate(section) if of_class(part, "m-heat")] == hot


@pytest.mark.parametrize(("printed", "share"), [("up", "top"), ("down", "foot")])
def test_the_printed_side_of_the_transfer_is_the_thick_line(printed, share):
    layer = Layer("transfer", "Transfer", printed=printed)
    drawing = read(stack_drawing([layer], heat="above", title="Stack", prefix="s"))
    (line,) = of_class(drawing, "m-print")
    outline = numbers(next(parts(drawing)[1].iter(f"{SVG}path")).get("d", ""))
    foot, top = outline[1], outline[3]
    assert abs(numbers(line.get("d", ""))[1] - {"top": top, "foot": foot}[share]) == 1.5


def test_a_wrapped_transfer_lies_between_the_mug_and_the_element():
    layers = [Layer("blank", "Mug wall", "ceramic"), Layer("transfer", "Transfer", printed="down")]
    section = parts(read(stack_drawing(layers, heat="around", title="Mug", prefix="m")))
    assert [part.findtext(f"{SVG}title") for part in section] == [
        "Mug wall",
        "Transfer",
        "Element, wrapped around, heated",
    ]
    # the radius is the first figure after the arc's start: M x y A r r
    radii = [numbers(next(part.iter(f"{SVG}path")).get("d", ""))[2] for part in section]
    assert radii == sorted(radii)


def test_labels_of_forty_letters_stay_whole_and_longer_ones_end_in_an_ellipsis():
    forty = "Protective paper, fresh, past every edge"
    assert len(forty) == 40
    drawing = read(stack_drawing([Layer("other", forty)], heat="above", title="Stack", prefix="s"))
    assert forty in " ".join(text.text or "" for text in drawing.iter(f"{SVG}text"))
    long = read(stack_drawing([Layer("other", "paper " * 60)], heat="above", title="Stack", prefix="s"))
    assert any((text.text or "").endswith("\u2026") for text in long.iter(f"{SVG}text"))


@given(st.text(min_size=1, max_size=90), st.integers(1, 3))
def test_no_line_is_wider_than_its_place(text: str, lines: int):
    broken = wrapped(text, width=190, font_size=13, lines=lines)
    assert len(broken) <= lines
    assert all(lettering_width(line, 13) <= 190 for line in broken)


@pytest.mark.parametrize(
    ("text", "thousandths"),
    [
        # Advance widths of DejaVu Sans (x 1000/2048 of its em) and Helvetica's AFM file, both from memory
        ("n", 634),
        ("m", 974),
        ("W", 989),
        ("l", 278),
        ("E", 632),
        ("5", 636),
        ("mmm", 3 * 833),
        ("Heat", 722 + 556 + 556 + 278),
    ],
)
def test_lettering_is_never_wider_than_thought(text: str, thousandths: int):
    assert lettering_width(text, 1000) >= thousandths


@given(st.lists(st.tuples(st.floats(-200, 0), st.sampled_from([15.0, 30.0, 45.0])), min_size=1, max_size=9))
def test_labels_stay_as_near_their_layers_as_their_neighbours_allow(rows):
    # SciPy's isotonic regression is the judge of "as near as possible in order"
    middles = sorted(middle for middle, _ in rows)
    heights = [height for _, height in rows]
    offsets = np.concatenate([[0.0], np.cumsum([height + 4 for height in heights])])[:-1]
    wanted = isotonic_regression(np.array(middles) - np.array(heights) / 2 - offsets).x + offsets
    assert spread(middles, heights, 4) == pytest.approx(wanted.tolist(), abs=1e-6)
