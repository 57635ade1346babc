"""How the artwork will lie on the blank: both to scale, the right way round, with bleed and what is cut away."""

from collections.abc import Iterator, Sequence

from markupsafe import Markup, escape

from maker_site.frozen import frozen
from maker_site.pages.marks._svg import box, drawing, line, num, path
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
from maker_site.pages.marks.hatching import hatch_pattern
from maker_site.pages.marks.materials import hatch_of

_PALE, _PALEST = 0.45, 0.15
"""How much is seen of the bleed, and of what is cut away."""
_QUIET = 0.35
"""How strong the hatching is, so that the artwork stands out."""
_REACH = 14.0
"""Units of what is cut away that are shown past the bleed."""


@frozen
class ProofBlank:
    """The blank seen from the front; of a mug its side laid flat, the handle's gap at both ends."""

    width_mm: float
    height_mm: float
    is_round: bool = False
    corner_radius_mm: float = 0
    outline: str | None = None
    """SVG path words in mm from the top left corner."""
    holes: Sequence[Hole] = ()
    handle_gap_mm: float = 0
    """Of a mug, left free along the girth."""


@frozen
class ProofArea:
    """Where the artwork is to be seen, in the middle of the blank."""

    width_mm: float
    height_mm: float
    bleed_mm: float
    """Printed past each edge."""
    is_round: bool = False


@frozen
class ProofArtwork:
    """The artwork at its printed size, in the middle of the area; without an address only its edges are drawn."""

    address: str | None
    """Of a picture of it, from the page that the drawing stands on."""
    width_mm: float
    height_mm: float
    clear: bool = False
    """The blank shows through where it is white."""


def placement_proof(
    blank: ProofBlank,
    area: ProofArea,
    artwork: ProofArtwork,
    *,
    substrate: str,
    title: str,
    prefix: str,
    width_words: str,
    height_words: str,
) -> Markup:
    """The blank to scale with the artwork on it, in a field of 4 : 3.

    Drawn full where it will be seen, pale where it is bleed or past the blank, palest where it is cut away. A thin line
    is the blank, a dashed one the edge of the area (where it is not the blank's), a dotted one the edge of the print.
    Ids begin with PREFIX, which no other drawing on the page may have. Raises ValueError for a side that is not
    positive.
    """
    sides = (blank.width_mm, blank.height_mm, area.width_mm, area.height_mm, artwork.width_mm, artwork.height_mm)
    if min(sides) <= 0:
        msg = f"sides of {sides} mm can't be drawn"
        raise ValueError(msg)
    printed = (area.width_mm + 2 * area.bleed_mm, area.height_mm + 2 * area.bleed_mm)
    whole = fitted(max(blank.width_mm, printed[0]), max(blank.height_mm, printed[1]))
    on_blank = _centred(whole, blank.width_mm, blank.height_mm)
    on_area = _centred(whole, area.width_mm, area.height_mm)
    on_print = _centred(whole, *printed)
    body = _body(blank, on_blank)
    same = (area.width_mm, area.height_mm) == (blank.width_mm, blank.height_mm)
    seen = body if same else (disc(on_area) if area.is_round else oblong(on_area, 0))
    drawn = [
        hatch_pattern(hatch_of(substrate), f"{prefix}-hatch"),
        path(body, "m-ground"),
        f'<path class="m-area" fill="url(#{prefix}-hatch)" fill-opacity="{_QUIET}" d="{body}"/>',
        *_handle_gap(blank, on_blank),
        *(_pictures(artwork, whole, on_print, body, seen, prefix) if artwork.address else ()),
        *(hole_mark(on_blank, hole) for hole in blank.holes),
        path(body, "m-outer"),
        "" if same else path(seen, "m-thin m-dashed"),
        box(on_print.left, on_print.top, on_print.width, on_print.height, "m-thin m-dotted") if area.bleed_mm else "",
        *dimensions(on_blank, width_words, height_words, beyond=_beyond(on_blank, on_print)),
    ]
    return drawing(drawn, width=WIDTH, height=HEIGHT, title=title, css_class="m-outline m-proof")


def _centred(whole: Field, width_mm: float, height_mm: float) -> Field:
    width, height = width_mm * whole.scale, height_mm * whole.scale
    left, top = whole.left + (whole.width - width) / 2, whole.top + (whole.height - height) / 2
    return Field(left, top, width, height, whole.scale)


def _body(blank: ProofBlank, field: Field) -> str:
    if blank.outline:
        return free_shape(field, blank.outline)
    return disc(field) if blank.is_round else oblong(field, blank.corner_radius_mm * field.scale)


def _beyond(inner: Field, outer: Field) -> float:
    """How far the print reaches past the blank's right edge or foot, whichever is more."""
    return max(0.0, (outer.width - inner.width) / 2, (outer.height - inner.height) / 2)


def _handle_gap(blank: ProofBlank, field: Field) -> Iterator[str]:
    half = blank.handle_gap_mm / 2 * field.scale
    if not half:
        return
    for edge in (field.left + half, field.left + field.width - half):
        yield line(edge, field.top, edge, field.top + field.height, "m-thin m-dashed")


def _pictures(artwork: ProofArtwork, whole: Field, on_print: Field, body: str, seen: str, prefix: str) -> Iterator[str]:
    """Yield the artwork three times: all of it, what is printed, what will be seen."""
    place = _centred(whole, artwork.width_mm, artwork.height_mm)
    size = f'width="{num(place.width)}" height="{num(place.height)}"'
    around = Field(
        on_print.left - _REACH, on_print.top - _REACH, on_print.width + 2 * _REACH, on_print.height + 2 * _REACH, 1
    )
    yield (
        f'<defs><image id="{prefix}-art" href="{escape(artwork.address)}" preserveAspectRatio="none" '
        f'x="{num(place.left)}" y="{num(place.top)}" {size}/>'
        f'<clipPath id="{prefix}-around"><path d="{oblong(around, 0)}"/></clipPath>'
        f'<clipPath id="{prefix}-print"><path d="{oblong(on_print, 0)}"/></clipPath>'
        f'<clipPath id="{prefix}-body"><path d="{body}"/></clipPath>'
        f'<clipPath id="{prefix}-seen" clip-path="url(#{prefix}-body)"><path d="{seen}"/></clipPath></defs>'
    )
    if artwork.clear:  # laid once: what is pale would show through what is full
        yield f'<g class="m-clear" clip-path="url(#{prefix}-seen)"><use href="#{prefix}-art"/></g>'
        return
    for part, strength in (("around", _PALEST), ("print", _PALE), ("seen", 1)):
        yield f'<g clip-path="url(#{prefix}-{part})" opacity="{strength}"><use href="#{prefix}-art"/></g>'
