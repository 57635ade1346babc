"""A picture of a blank that nobody has photographed: its outline to scale, hatched, with its size."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from markupsafe import Markup

from maker_site.pages.marks._svg import circle, drawing, line, num, path, words
from maker_site.pages.marks.hatching import hatch_pattern
from maker_site.pages.marks.materials import hatch_of

Shape = Literal["flat", "mug"]

WIDTH = 480.0
HEIGHT = 360.0
"""Four to three, as the pictures beside it."""

_LEFT, _TOP, _RIGHT, _FOOT = 44.0, 32.0, 400.0, 300.0
"""The field the outline may fill; the rest is for the dimensions."""


@dataclass(frozen=True, slots=True)
class Hole:
    """A hole, its centre measured from the blank's top left corner, in millimetres."""

    x_mm: float
    y_mm: float
    diameter_mm: float


@dataclass(frozen=True, slots=True)
class _Field:
    """Where the outline stands and how many units a millimetre is."""

    left: float
    top: float
    width: float
    height: float
    scale: float


def blank_outline(
    width_mm: float,
    height_mm: float,
    *,
    substrate: str,
    title: str,
    prefix: str,
    is_round: bool = False,
    corner_radius_mm: float = 0,
    holes: Sequence[Hole] = (),
    shape: Shape = "flat",
    width_words: str = "",
    height_words: str = "",
) -> Markup:
    """The blank WIDTH_MM x HEIGHT_MM to scale in a field of 4 : 3, hatched by SUBSTRATE, with dimension lines.

    A `mug` is seen from the side with its handle. The words of a dimension are the millimetres, if not given.
    Ids begin with PREFIX, which no other drawing on the page may have. Raises ValueError for a size that is not
    positive.
    """
    if width_mm <= 0 or height_mm <= 0:
        msg = f"a blank of {width_mm} x {height_mm} mm can't be drawn"
        raise ValueError(msg)
    field = _fitted(width_mm, height_mm)
    body = _disc(field) if is_round else _oblong(field, corner_radius_mm * field.scale)
    drawn = [
        _handle(field) if shape == "mug" else "",
        hatch_pattern(hatch_of(substrate), f"{prefix}-hatch"),
        path(body, "m-ground"),
        f'<path class="m-area" fill="url(#{prefix}-hatch)" d="{body}"/>',
        *(_hole(field, hole) for hole in holes),
        *_dimensions(field, width_words or f"{num(width_mm)} mm", height_words or f"{num(height_mm)} mm"),
    ]
    return drawing(drawn, width=WIDTH, height=HEIGHT, title=title, css_class="m-outline")


def _fitted(width_mm: float, height_mm: float) -> _Field:
    scale = min((_RIGHT - _LEFT) / width_mm, (_FOOT - _TOP) / height_mm)
    width, height = width_mm * scale, height_mm * scale
    left = _LEFT + (_RIGHT - _LEFT - width) / 2
    return _Field(left, _TOP + (_FOOT - _TOP - height) / 2, width, height, scale)


def _disc(field: _Field) -> str:
    radius = num(min(field.width, field.height) / 2)
    across = num(min(field.width, field.height))
    half_turn = f"a{radius} {radius} 0 1 0"
    start = f"M{num(field.left)} {num(field.top + field.height / 2)}"
    return f"{start}{half_turn} {across} 0{half_turn}-{across} 0z"


def _oblong(field: _Field, corner: float) -> str:
    radius = min(corner, field.width / 2, field.height / 2)
    across, down = num(field.width - 2 * radius), num(field.height - 2 * radius)
    turn = f"a{num(radius)} {num(radius)} 0 0 1 " if radius else "l"
    r = num(radius)
    start = f"M{num(field.left + radius)} {num(field.top)}"
    return f"{start}h{across}{turn}{r} {r}v{down}{turn}-{r} {r}h-{across}{turn}-{r}-{r}v-{down}{turn}{r}-{r}z"


def _handle(field: _Field) -> str:
    x, y, reach = field.left, field.top, min(40.0, field.left - 4)
    out, bend = num(-reach * 0.55), num(-reach * 0.45)
    outer = f"M{num(x)} {num(y + field.height * 0.16)}h{out}q{bend} 0 {bend}"
    down = f" {num(field.height * 0.2)}v{num(field.height * 0.28)}q0 {num(field.height * 0.2)}"
    return path(f"{outer}{down} {num(reach * 0.45)} {num(field.height * 0.2)}h{num(reach * 0.55)}", "m-wide")


def _hole(field: _Field, hole: Hole) -> str:
    x, y = field.left + hole.x_mm * field.scale, field.top + hole.y_mm * field.scale
    return circle(x, y, hole.diameter_mm / 2 * field.scale, "m-sheet")


def _dimensions(field: _Field, width_words: str, height_words: str) -> list[str]:
    under, beside = field.top + field.height + 26, field.left + field.width + 26
    right, foot = field.left + field.width, field.top + field.height
    middle_x, middle_y = field.left + field.width / 2, field.top + field.height / 2
    return [
        line(field.left, under, right, under, "m-thin"),
        line(beside, field.top, beside, foot, "m-thin"),
        *(line(x, foot + 6, x, under + 6, "m-thin") for x in (field.left, right)),
        *(line(right + 6, y, beside + 6, y, "m-thin") for y in (field.top, foot)),
        *(line(x - 4, under + 4, x + 4, under - 4, "m-line") for x in (field.left, right)),
        *(line(beside - 4, y + 4, beside + 4, y - 4, "m-line") for y in (field.top, foot)),
        words(middle_x, under + 20, width_words, "m-words", anchor="middle"),
        f'<g transform="translate({num(beside + 18)} {num(middle_y)}) rotate(-90)">'
        f"{words(0, 0, height_words, 'm-words', anchor='middle')}</g>",
    ]
