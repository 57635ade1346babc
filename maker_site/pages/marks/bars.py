"""A bar of parts that tells them apart by filling as well as by order, and the key to it."""

from collections.abc import Sequence
from functools import lru_cache

from markupsafe import Markup

from maker_site.frozen import frozen
from maker_site.language import apart
from maker_site.pages.marks._svg import box, drawing, words
from maker_site.pages.marks.hatching import hatched_box
from maker_site.pages.marks.materials import Hatch

_FILLINGS = (
    None,
    Hatch("rising", 6, 6, rules=(3,), turn=45),
    Hatch("dots", 7, 7, specks=((1.75, 1.75), (5.25, 5.25))),
    Hatch("level", 8, 5, strokes=((0, 2.5, "h8"),)),
    Hatch("crossed", 8, 8, rules=(4,), strokes=((0, 4, "h8"),), turn=45),
    Hatch("upright", 5, 8, rules=(2.5,)),
    Hatch("falling pairs", 10, 10, rules=(2.5, 5.5), turn=-45),
    Hatch("rings", 10, 10, rings=((5, 5, 2.6),)),
)
"""Fillings in the order they are given out (None is solid ink); after the last they begin again."""
FILLINGS = len(_FILLINGS)
"""How many parts can be told apart."""

BAR_WIDTH = 640.0
_BAR_TOP = 18.0
_BAR_FOOT = 46.0
_LEAST_FOR_FIGURES = 34.0


@frozen
class BarPart:
    """One part of the bar."""

    label: str
    """Its name, told to readers of the drawing."""
    amount: float
    """Its size in any unit, not negative."""
    figure: str = ""
    """A short figure written above it where there is room."""


def stacked_bar(parts: Sequence[BarPart], *, title: str) -> Markup:
    """PARTS side by side, each as wide as its share of the sum of BAR_WIDTH units.

    Parts of nothing are left out; where all are nothing the bar is an empty outline. Raises ValueError for a
    negative part.
    """
    if any(part.amount < 0 for part in parts):
        msg = "a part of a bar is less than nothing"
        raise ValueError(msg)
    total = sum(part.amount for part in parts)
    drawn = [box(0.5, _BAR_TOP, BAR_WIDTH - 1, _BAR_FOOT - _BAR_TOP, "m-open")]
    left = 0.0
    for index, part in enumerate(parts):
        width = BAR_WIDTH * part.amount / total if total else 0.0
        if width:
            drawn.append(_piece(part, index, left, width))
        left += width
    told = "; ".join((title, *(apart(f"{part.label} {part.figure}".strip()) for part in parts)))
    return drawing(drawn, width=BAR_WIDTH, height=_BAR_FOOT + 1, title=told, css_class="m-stacked")


@lru_cache(maxsize=FILLINGS)
def bar_key(index: int) -> Markup:
    """The sample of the part at INDEX, to stand in its row of the table."""
    return drawing([_filled(index, 0.5, 0.5, 21, 15)], width=22, height=16, css_class="m-key")


def _piece(part: BarPart, index: int, left: float, width: float) -> str:
    shape = _filled(index, left, _BAR_TOP, width, _BAR_FOOT - _BAR_TOP)
    if not part.figure or width < _LEAST_FOR_FIGURES:
        return shape
    return shape + words(left + 1, 12, part.figure, "m-small")


def _filled(index: int, x: float, y: float, width: float, height: float) -> str:
    filling = _FILLINGS[index % len(_FILLINGS)]
    return hatched_box(filling, x, y, width, height) if filling else box(x, y, width, height, "m-solid")
