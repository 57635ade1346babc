"""What stands where there is no photo: the hatched blank to scale."""

from __future__ import annotations

from fractions import Fraction

from markupsafe import Markup

from maker_site.language import say
from maker_site.pages.marks import Hole, blank_outline
from maker_site.pages.notebook import Notebook
from maker_site.records.quantities import Length

_PI = Fraction("3.14159265358979")
_UNKNOWN_SIDE = 100.0


def blank_drawing(book: Notebook, blank: str) -> Markup:
    """Return a blank drawn to scale; one of unknown size as a square without figures."""
    return book.shown("blank drawn", _drawing, blank)


def _drawing(book: Notebook, name: str) -> Markup:
    blank, wording = book.workshop.blanks[name], book.wording
    title = say("{blank}, drawn to scale", blank=blank.name)
    if blank.girth and blank.height:
        across = Length(blank.girth.mm / _PI)
        return blank_outline(
            float(across.mm),
            float(blank.height.mm),
            substrate=blank.substrate,
            title=title,
            shape="mug",
            width_words=wording.length(across).first,
            height_words=wording.length(blank.height).first,
        )
    if blank.size is None:
        return blank_outline(
            _UNKNOWN_SIDE,
            _UNKNOWN_SIDE,
            substrate=blank.substrate,
            title=say("{blank}, size not written down", blank=blank.name),
            width_words="?",
            height_words="?",
        )
    return blank_outline(
        float(blank.size.width.mm),
        float(blank.size.height.mm),
        substrate=blank.substrate,
        title=title,
        is_round=blank.size.round,
        corner_radius_mm=float(blank.corner_radius.mm) if blank.corner_radius else 0,
        outline=blank.outline,
        holes=[Hole(float(hole.at[0].mm), float(hole.at[1].mm), float(hole.diameter.mm)) for hole in blank.holes],
        width_words=wording.length(blank.size.width).first,
        height_words=wording.length(blank.size.height).first,
    )
