"""Stacked bars, outlines to scale, hatching by the ruler, and marks of how things lie."""

import pytest

from maker_site.pages.marks import (
    BarPart,
    Hole,
    blank_outline,
    caution_icon,
    face_mark,
    mirror_mark,
    stacked_bar,
)
from maker_site.pages.marks.hatching import hatched_field
from maker_site.pages.marks.materials import HATCHES

from .drawings import SVG, numbers, of_class, read


def test_a_part_is_as_wide_as_its_share():
    # a quarter and three quarters of 640: 160 and 480, by hand
    drawing = read(stacked_bar([BarPart("a", 1.5), BarPart("b", 4.5)], title="Bar"))
    (solid,) = of_class(drawing, "m-solid")
    hatched = of_class(drawing, "m-outer")[0]
    assert (float(solid.get("x", "")), float(solid.get("width", ""))) == (0, 160)
    assert (float(hatched.get("x", "")), float(hatched.get("width", ""))) == (160, 480)


def test_the_bar_tells_its_parts_to_readers():
    title = read(stacked_bar([BarPart("Ink", 1, "0.62")], title="Cost")).findtext(f"{SVG}title")
    assert title == "Cost; Ink 0.62"


def test_a_bar_of_nothing_is_an_empty_outline_and_less_than_nothing_is_refused():
    assert len(read(stacked_bar([BarPart("a", 0)], title="Bar"))) == 2
    with pytest.raises(ValueError, match="less than nothing"):
        stacked_bar([BarPart("a", -1)], title="Bar")


def test_metal_is_ruled_at_45_degrees_six_units_apart():
    # seen along the rule, a square of 60 is 60 x sqrt 2 = 84.85 wide: rules at 3, 9, ... 81 are 14, by hand
    field = hatched_field(HATCHES["light metal"], 60, 60)
    assert field.count("M") == 14
    assert 'transform="rotate(45)"' in field


def test_a_blank_is_drawn_to_scale_with_its_hole_in_place():
    # by hand: field 356 x 268 units; 200 x 100 mm fits at 1.78 units a mm: 356 x 178 from 44, 77;
    # a hole of 5 mm at 10, 10 mm: 44 + 17.8 = 61.8, 77 + 17.8 = 94.8, radius 4.45
    drawing = read(blank_outline(200, 100, substrate="slate", title="Blank", holes=[Hole(10, 10, 5)]))
    assert numbers(of_class(drawing, "m-area")[0].get("d", ""))[:4] == [44, 77, 356, 0]
    (hole,) = list(drawing.iter(f"{SVG}circle"))[-1:]
    assert [hole.get("cx"), hole.get("cy"), hole.get("r")] == ["61.8", "94.8", "4.45"]


@pytest.mark.parametrize("size", [(0, 10), (10, -1)])
def test_a_blank_without_a_size_is_refused(size):
    with pytest.raises(ValueError, match="can't be drawn"):
        blank_outline(*size, substrate="slate", title="Blank")


def test_a_mirrored_letter_is_the_plain_one_reversed():
    plain, _axis, turned = (path.get("d", "") for path in read(mirror_mark(mirrored=True)).iter(f"{SVG}path"))
    # M x 20 V4 H x1 A r r 0 1 sweep x1 13 H x M x2 13 L x3 20: across the axis at 21, x becomes 42 - x
    at, sweep = (0, 3, 9, 11, 12, 14), 8
    there, back = numbers(plain), numbers(turned)
    assert [42 - there[index] for index in at] == [back[index] for index in at]
    assert {there[sweep], back[sweep]} == {0, 1}


@pytest.mark.parametrize("face", ["print up", "print down"])
def test_the_print_looks_at_the_blank_from_the_named_side(face):
    blank, paper, thick = (numbers(path.get("d", "")) for path in read(face_mark(face)).iter(f"{SVG}path"))
    paper_top, printed = paper[1], thick[1]
    if face == "print up":  # paper below, its upper side printed
        assert paper_top > blank[1]
        assert printed == paper_top
    else:  # paper on top, its lower side printed
        assert paper_top < blank[1]
        assert printed > paper_top


def test_a_caution_without_a_drawing_gets_the_note():
    assert caution_icon("falling pianos") == caution_icon("note")
