"""Marks of our own: SVG drawn by pure functions, in the page's ink, legible in black and white.

Colours and line weights come from `marks.css` by class; nothing here names a colour. A mark either has a title (it
is an image of that name) or is hidden from readers because words stand beside it.
"""

from maker_site.pages.marks._to_scale import Hole
from maker_site.pages.marks.bars import FILLINGS, BarPart, bar_key, stacked_bar
from maker_site.pages.marks.evidence import evidence_dots, interval_bar
from maker_site.pages.marks.hatching import family_field, family_swatch, swatch
from maker_site.pages.marks.icons import caution_icon, face_mark, mirror_mark
from maker_site.pages.marks.materials import family_of
from maker_site.pages.marks.once import drawn_once, standing_alone
from maker_site.pages.marks.outline import blank_outline
from maker_site.pages.marks.proof import ProofArea, ProofArtwork, ProofBlank, placement_proof
from maker_site.pages.marks.square_code import square_code
from maker_site.pages.marks.stack import NARROW, WIDE, Layer, PlateWords, stack_drawing
from maker_site.pages.marks.strip import control_strip

__all__ = [
    "FILLINGS",
    "NARROW",
    "WIDE",
    "BarPart",
    "Hole",
    "Layer",
    "PlateWords",
    "ProofArea",
    "ProofArtwork",
    "ProofBlank",
    "bar_key",
    "blank_outline",
    "caution_icon",
    "control_strip",
    "drawn_once",
    "evidence_dots",
    "face_mark",
    "family_field",
    "family_of",
    "family_swatch",
    "interval_bar",
    "mirror_mark",
    "placement_proof",
    "square_code",
    "stack_drawing",
    "stacked_bar",
    "standing_alone",
    "swatch",
]
