"""Lettering as outlines, so that a design prints alike on every machine.

The typefaces are open ones (SIL Open Font License or Apache), read from small font packages.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from math import cos, radians, sin
from typing import Literal

from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.svgPathPen import SVGPathPen
from fontTools.pens.transformPen import TransformPen
from fontTools.ttLib import TTFont

Face = Literal["poster", "slab", "hand", "book", "italic"]
FACES: dict[Face, tuple[str, str]] = {
    "poster": ("font_fjallaone", "FjallaOne-Regular.ttf"),
    "slab": ("font_caladea", "Caladea-Bold.ttf"),
    "hand": ("font_amatic_sc", "AmaticSC-Bold.ttf"),
    "book": ("font_source_serif_pro", "SourceSerifPro-Bold.ttf"),
    "italic": ("font_source_serif_pro", "SourceSerifPro-It.ttf"),
}


@cache
def _font(face: Face) -> TTFont:
    package, name = FACES[face]
    return TTFont(
        str(next(f for folder in ("files", "fonts", ".") for f in [files(package) / folder / name] if f.is_file()))
    )


@cache
def _cap_height(face: Face) -> float:
    font = _font(face)
    pen = BoundsPen(font.getGlyphSet())
    font.getGlyphSet()[font.getBestCmap()[ord("H")]].draw(pen)
    assert pen.bounds
    return float(pen.bounds[3])


def _advances(text: str, face: Face, size: float, spacing: float) -> list[tuple[str, float]]:
    font = _font(face)
    cmap, scale = font.getBestCmap(), size / _cap_height(face)
    return [(cmap[ord(c)], font["hmtx"][cmap[ord(c)]][0] * scale + spacing) for c in text]


def width_of(text: str, face: Face, size: float, spacing: float = 0.0) -> float:
    """Width in mm of a line of text whose capitals are `size` mm high."""
    return sum(a for _, a in _advances(text, face, size, spacing)) - spacing


def lettered(
    text: str,
    face: Face,
    size: float,
    x: float,
    y: float,
    *,
    align: float = 0.5,
    spacing: float = 0.0,
    turn: float = 0.0,
) -> str:
    """A line of text on a baseline at y; `align` 0 starts at x, 0.5 is centred, 1 ends there."""
    font, pen = _font(face), SVGPathPen(_font(face).getGlyphSet(), ntos=lambda v: f"{v:.2f}")
    scale = size / _cap_height(face)
    c, s = cos(radians(turn)), sin(radians(turn))
    at = -align * width_of(text, face, size, spacing)
    for glyph, advance in _advances(text, face, size, spacing):
        move = (scale * c, scale * s, scale * s, -scale * c, x + at * c, y + at * s)
        font.getGlyphSet()[glyph].draw(TransformPen(pen, move))
        at += advance
    return pen.getCommands()


def lettered_round(
    text: str,
    face: Face,
    size: float,
    x: float,
    y: float,
    radius: float,
    *,
    middle: float = -90.0,
    spacing: float = 0.0,
    inward: bool = False,
) -> str:
    """Text on a circle about (x, y), its middle at `middle` degrees (-90 is the top).

    With `inward` the letters' heads point to the centre, for text along the bottom.
    """
    font, pen = _font(face), SVGPathPen(_font(face).getGlyphSet(), ntos=lambda v: f"{v:.2f}")
    scale = size / _cap_height(face)
    sense = -1 if inward else 1
    at = -width_of(text, face, size, spacing) / 2
    for glyph, advance in _advances(text, face, size, spacing):
        a = radians(middle) + sense * (at + advance / 2) / radius
        t = a + sense * radians(90)
        c, s = cos(t), sin(t)
        px, py = x + radius * cos(a) - c * advance / 2, y + radius * sin(a) - s * advance / 2
        font.getGlyphSet()[glyph].draw(TransformPen(pen, (scale * c, scale * s, scale * s, -scale * c, px, py)))
        at += advance
    return pen.getCommands()
