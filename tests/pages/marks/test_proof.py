"""The artwork on its blank: places worked out by hand in a field of 356 x 268 units at 44, 32."""

import re

import pytest

from maker_site.pages.marks import ProofArea, ProofArtwork, ProofBlank, blank_outline, placement_proof

from .drawings import SVG, numbers, of_class, read

SQUARE = ProofBlank(100, 100, corner_radius_mm=3)
WHOLE = ProofArea(100, 100, 3)
ART = ProofArtwork("../pictures/a&b.jpg", 106, 106)


def proof(blank: ProofBlank = SQUARE, area: ProofArea = WHOLE, artwork: ProofArtwork = ART):
    drawn = placement_proof(
        blank, area, artwork, substrate="slate", title="Leek", prefix="p", width_words="w", height_words="h"
    )
    return read(drawn)


def bounds(path: str) -> tuple[float, float]:
    """Where the path starts."""
    return tuple(numbers(path)[:2])  # type: ignore[return-value]


def test_the_artwork_is_as_large_as_blank_and_bleed_to_scale():
    # 106 mm fill the field's 268 units of height: 2.528 units a mm.
    image = proof().find(f".//{SVG}image")
    assert image is not None
    assert float(image.get("width", "")) == pytest.approx(268, abs=0.01)
    assert float(image.get("x", "")) == pytest.approx(44 + (356 - 268) / 2, abs=0.01)
    assert image.get("href") == "../pictures/a&b.jpg"  # escaped in the text, and read back whole


def test_what_is_cut_away_reaches_past_the_print():
    # Twice as wide as high: 212 mm across, half of it cut away, in the middle.
    image = proof(artwork=ProofArtwork("a.jpg", 212, 106)).find(f".//{SVG}image")
    assert image is not None
    assert float(image.get("width", "")) == pytest.approx(536, abs=0.01)
    assert float(image.get("x", "")) == pytest.approx(222 - 268, abs=0.01)


def test_full_pale_and_palest_are_told_apart_by_strength_and_line():
    drawing = proof(area=ProofArea(94, 94, 3))
    shown = [each for each in drawing.iter(f"{SVG}g") if each.find(f"{SVG}use") is not None]
    assert [each.get("opacity") for each in shown] == ["0.15", "0.45", "1"]
    assert len(of_class(drawing, "m-dashed")) == 1  # the edge of the print area
    assert len(of_class(drawing, "m-dotted")) == 1  # the edge of the print
    assert not of_class(proof(area=ProofArea(100, 100, 0)), "m-dotted")


def test_what_is_seen_is_cut_by_the_blank_too():
    drawing = proof()
    seen = next(each for each in drawing.iter(f"{SVG}clipPath") if each.get("id") == "p-seen")
    assert seen.get("clip-path") == "url(#p-body)"


def test_a_mug_lies_flat_with_its_handle_gap_in_halves_at_both_ends():
    drawing = proof(ProofBlank(257, 96, handle_gap_mm=27), ProofArea(230, 93, 3), ProofArtwork("a.jpg", 236, 99))
    scale = 356 / 257
    edges = [numbers(each.get("d", ""))[0] for each in of_class(drawing, "m-dashed")][:2]
    assert edges == pytest.approx([44 + 13.5 * scale, 400 - 13.5 * scale], abs=0.01)


def test_holes_stand_where_they_are_drilled():
    from maker_site.pages.marks import Hole

    (hole,) = of_class(proof(ProofBlank(100, 50, holes=[Hole(10, 20, 5)]), ProofArea(100, 50, 0)), "m-sheet")
    # 3.56 units a mm; the blank is 178 high, centred in 268.
    assert float(hole.get("cx", "")) == pytest.approx(44 + 35.6)
    assert float(hole.get("cy", "")) == pytest.approx(32 + 45 + 71.2)
    assert float(hole.get("r", "")) == pytest.approx(8.9)


@pytest.mark.parametrize("outline", ["M 0 0 L 100 0 L 50 100 Z", "m 0 0 l 100 0 l -50 100 z", "M 0 0 H 100 L 50 100"])
def test_an_outline_of_its_own_is_drawn_to_scale(outline: str):
    drawn = proof(ProofBlank(100, 100, outline=outline), ProofArea(100, 100, 0), ProofArtwork("a.jpg", 100, 100))
    (shape,) = of_class(drawn, "m-outer")
    d = shape.get("d", "")
    assert bounds(d) == (88, 32)  # 2.68 units a mm, 268 wide, centred in 356
    figures = [abs(each) for each in numbers(d)]
    assert {88.0, 32.0} <= set(figures)
    assert d.upper().endswith("Z")
    again = blank_outline(100, 100, substrate="slate", title="x", outline=outline)
    assert d in again


def test_an_arc_keeps_its_turn_and_flags():
    drawn = proof(ProofBlank(100, 100, outline="M 0 50 A 50 50 30 0 1 100 50 Z"), ProofArea(100, 100, 0))
    (shape,) = of_class(drawn, "m-outer")
    assert numbers(shape.get("d", "")) == [88, 166, 134, 134, 30, 0, 1, 356, 166]


def test_artwork_without_a_picture_leaves_the_drawing_bare():
    drawn = proof(artwork=ProofArtwork(None, 106, 106))
    assert drawn.find(f".//{SVG}image") is None
    assert of_class(drawn, "m-dotted")


def test_a_blank_shows_through_artwork_that_leaves_it_bare():
    drawn = proof(area=ProofArea(94, 94, 0), artwork=ProofArtwork("a.jpg", 94, 94, clear=True))
    assert len(of_class(drawn, "m-clear")) == 1


def test_every_id_begins_with_the_prefix_and_what_is_used_is_there():
    drawn = placement_proof(
        SQUARE, WHOLE, ART, substrate="slate", title="Leek", prefix="p", width_words="w", height_words="h"
    )
    ids = re.findall(r'\bid="([^"]+)"', drawn)
    assert all(each.startswith("p-") for each in ids)
    assert set(re.findall(r"url\(#([^)]+)\)", drawn)) | {"p-art"} == set(ids)


def test_nothing_can_be_drawn_of_no_size():
    with pytest.raises(ValueError, match="can't be drawn"):
        proof(ProofBlank(0, 10))
