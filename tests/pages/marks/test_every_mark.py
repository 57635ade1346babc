"""What must be true of every mark, whatever it shows."""

import re

import pytest

from maker_site.pages import marks
from maker_site.pages.marks.icons import CAUTION_DRAWINGS
from maker_site.pages.marks.materials import HATCHES, NEUTRAL, SUBSTRATES

from .drawings import read

LAYERS = [
    marks.Layer("pad", "Pad, felt", "felt"),
    marks.Layer("blank", "Slate coaster <\"&'>", "slate"),
    marks.Layer("tape", "Tape"),
    marks.Layer("transfer", "Transfer", printed="down"),
    marks.Layer("cover sheet", "Cover sheet"),
]
BAR = [marks.BarPart("Blank & delivery", 3, "3.00"), marks.BarPart("Ink", 1)]
HOLES = [marks.Hole(10, 10, 5)]
EVERY = {
    "dots": marks.evidence_dots([True, False], title="1 of 2 good"),
    "figures": marks.evidence_dots([True] * 21),
    "interval": marks.interval_bar(0.1, 0.9, 0.5),
    "flat": marks.stack_drawing(LAYERS, heat="both", title="Stack <1>", prefix="flat"),
    "wrapped": marks.stack_drawing(LAYERS, heat="around", title="Stack 2", prefix="wrapped"),
    "bar": marks.stacked_bar(BAR, title="Cost"),
    "strip": marks.control_strip(),
    "round": marks.blank_outline(90, 90, substrate="hardboard", title="Blank", is_round=True, holes=HOLES),
    "mug": marks.blank_outline(82, 95, substrate="ceramic", title="Mug", shape="mug"),
    "proof": marks.placement_proof(
        marks.ProofBlank(257, 96, holes=HOLES, handle_gap_mm=27),
        marks.ProofArea(230, 93, 3),
        marks.ProofArtwork("pictures/a&b.jpg", 240, 99),
        substrate="ceramic",
        title="Proof <1>",
        prefix="c",
        width_words="257 mm",
        height_words="96 mm",
    ),
    **{f"key {index}": marks.bar_key(index) for index in range(9)},
    **{f"swatch {name}": marks.swatch(name) for name in ("slate", "cotton", "moon rock")},
    **{f"family {family}": marks.family_swatch(family) for family in HATCHES},
    **{f"caution {name}": marks.caution_icon(name) for name in CAUTION_DRAWINGS},
    **{f"face {face}": marks.face_mark(face) for face in ("print up", "print down", "wrapped")},
    **{f"mirror {way}": marks.mirror_mark(mirrored=way) for way in (True, False)},
}


@pytest.mark.parametrize("name", EVERY)
def test_a_mark_is_well_formed_and_says_what_it_is_or_hides(name: str):
    drawing = read(EVERY[name])
    title = drawing.find("{http://www.w3.org/2000/svg}title")
    if drawing.get("role") == "img":
        assert title is not None
        assert title.text
        assert drawing[0] is title
        assert drawing.get("aria-hidden") is None
    else:
        assert drawing.get("aria-hidden") == "true"
        assert title is None


@pytest.mark.parametrize("name", EVERY)
def test_a_mark_names_no_colour(name: str):
    assert not re.search(r"(?<!href=\")#[0-9a-fA-F]{3}\b|rgb|(?:fill|stroke)=\"(?!url\(#|none)|style=", EVERY[name])


def test_ids_on_one_page_are_unique():
    ids = re.findall(r'\bid="([^"]+)"', "".join(EVERY.values()))
    assert len(ids) > 5
    assert sorted(set(ids)) == sorted(ids)


@pytest.mark.parametrize("name", EVERY)
def test_what_a_mark_refers_to_is_in_it(name: str):
    alone = marks.standing_alone(EVERY[name])
    wanted = set(re.findall(r'(?:url\(|href=")#([^)"]+)', alone))
    assert wanted <= set(re.findall(r'\bid="([^"]+)"', alone))
    read(alone)


def test_what_marks_of_a_page_share_is_drawn_once_at_its_end():
    page = f"<html><body>{marks.swatch('slate')}{marks.swatch('slate')}{EVERY['round']}</body></html>"
    drawn = marks.drawn_once(page)
    assert re.findall(r'\bid="([^"]+)"', drawn) == ["hatch-slate-40x24", "hatching-wood-fibre"]
    assert drawn.index("</defs>") > drawn.rindex("m-outline")
    assert "xmlns" not in drawn  # HTML knows what an svg is
    assert marks.drawn_once("<body><p>No marks</p></body>") == "<body><p>No marks</p></body>"


def test_the_same_facts_draw_the_same_mark():
    again = marks.stack_drawing(LAYERS, heat="around", title="Stack 2", prefix="wrapped")
    assert again == EVERY["wrapped"]


def test_every_public_name_is_there():
    assert all(hasattr(marks, name) for name in marks.__all__)


def test_every_substrate_has_a_hatching_and_an_unknown_one_the_neutral():
    assert set(SUBSTRATES.values()) <= set(HATCHES)
    assert marks.family_of(" Slate ") == "slate"
    assert marks.family_of("moon rock") == NEUTRAL


def test_no_two_hatchings_are_the_same_drawing():
    drawn = [marks.family_swatch(family) for family in HATCHES]
    assert len(set(drawn)) == len(drawn)
