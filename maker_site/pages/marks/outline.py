"""A picture of a blank that nobody has photographed: its outline to scale, hatched, with its size."""

from collections.abc import Sequence
from typing import Literal

from markupsafe import Markup

from maker_site.language import say
from maker_site.pages.marks._svg import drawing, num, path
from maker_site.pages.marks._to_scale import (
    HEIGHT,
    WIDTH,
    Field,
    Hole,
    dimensions,
    disc,
    fitted,
    free_shape,
    hole_mark,
    oblong,
)
from maker_site.pages.marks.hatching import hatching_fill
from maker_site.pages.marks.materials import hatch_of

Shape = Literal["flat", "mug"]


def blank_outline(
    width_mm: float,
    height_mm: float,
    *,
    substrate: str,
    title: str,
    is_round: bool = False,
    corner_radius_mm: float = 0,
    outline: str | None = None,
    holes: Sequence[Hole] = (),
    shape: Shape = "flat",
    width_words: str = "",
    height_words: str = "",
) -> Markup:
    """The blank WIDTH_MM x HEIGHT_MM to scale in a field of 4 : 3, hatched by SUBSTRATE, with dimension lines.

    An OUTLINE of its own is in SVG's path words, in mm from the blank's top left corner. A `mug` is seen from the side
    with its handle. The words of a dimension are the millimetres, if not given.
    Its hatching is named, and stands once on a page. Raises ValueError for a size that is not positive.
    """
    if width_mm <= 0 or height_mm <= 0:
        msg = f"a blank of {width_mm} x {height_mm} mm can't be drawn"
        raise ValueError(msg)
    field = fitted(width_mm, height_mm)
    body = disc(field) if is_round else oblong(field, corner_radius_mm * field.scale)
    body = free_shape(field, outline) if outline else body
    drawn = [
        _handle(field) if shape == "mug" else "",
        path(body, "m-ground"),
        f'<path class="m-area" fill="{hatching_fill(hatch_of(substrate))}" d="{body}"/>',
        *(hole_mark(field, hole) for hole in holes),
        *dimensions(field, width_words or _millimetres(width_mm), height_words or _millimetres(height_mm)),
    ]
    return drawing(drawn, width=WIDTH, height=HEIGHT, title=title, css_class="m-outline")


def _millimetres(length: float) -> str:
    return say("{n} mm").format(n=num(length))


def _handle(field: Field) -> str:
    x, y, reach = field.left, field.top, min(40.0, field.left - 4)
    out, bend = num(-reach * 0.55), num(-reach * 0.45)
    outer = f"M{num(x)} {num(y + field.height * 0.16)}h{out}q{bend} 0 {bend}"
    down = f" {num(field.height * 0.2)}v{num(field.height * 0.28)}q0 {num(field.height * 0.2)}"
    return path(f"{outer}{down} {num(reach * 0.45)} {num(field.height * 0.2)}h{num(reach * 0.55)}", "m-wide")
