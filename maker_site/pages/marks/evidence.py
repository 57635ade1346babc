"""Counted evidence: a dot for each piece in the order pressed, and the interval of the true share as a bar."""

from collections.abc import Sequence
from functools import lru_cache

from markupsafe import Markup

from maker_site.language import say
from maker_site.pages.marks._svg import box, drawing, line, num, path, words

MOST_DOTS = 20
"""Above this many pieces figures say more than dots."""

_PITCH = 15.0
_RADIUS = 5.0
_FIVES_GAP = 6.0
_ROW = 10
_ROW_HEIGHT = 17.0

AXIS_LEFT = 10.0
"""Where 0 % stands on the interval bar."""
UNITS_PER_PERCENT = 2.0
_BAR_WIDTH = 2 * AXIS_LEFT + 100 * UNITS_PER_PERCENT
_BAR_HEIGHT = 32.0
_BARE_HEIGHT = 20.0
_AXIS_Y = 10.0
_AXIS = "M10 10h200M10 6v8M110 6v8M210 6v8"


def evidence_dots(outcomes: Sequence[bool], *, title: str | None = None) -> Markup:
    """One dot a piece in the order pressed: good ones filled, spoiled ones open with a stroke, tallied by fives.

    Above MOST_DOTS pieces, "good / pressed" in figures. No pieces: an empty drawing one dot high.
    """
    if len(outcomes) > MOST_DOTS:
        return _figures(sum(outcomes), len(outcomes), title)
    return _dots(tuple(outcomes), title)


@lru_cache(maxsize=16384)
def _dots(outcomes: tuple[bool, ...], title: str | None) -> Markup:
    rows = max(1, -(-len(outcomes) // _ROW))
    columns = min(max(len(outcomes), 1), _ROW)
    width = columns * _PITCH + ((columns - 1) // 5) * _FIVES_GAP + 3
    good = "".join(_good(*_place(index)) for index, came_well in enumerate(outcomes) if came_well)
    spoiled = "".join(_spoiled(*_place(index)) for index, came_well in enumerate(outcomes) if not came_well)
    dots = [path(good, "m-dot-good")] if good else []
    dots += [path(spoiled, "m-dot-spoiled")] if spoiled else []
    return drawing(dots, width=width, height=rows * _ROW_HEIGHT, title=title, css_class="m-dots")


def interval_bar(low: float, high: float, share: float, *, bare: bool = False, title: str | None = None) -> Markup:
    """A bar from LOW to HIGH on an axis of 0 to 100 %, with a tick at the observed SHARE; all three are 0 to 1.

    0 % stands at x = 10 and each per cent is 2 units wide; a BARE one has no figures under it. Raises ValueError
    unless 0 <= low <= high <= 1.
    """
    if not (0 <= low <= high <= 1 and 0 <= share <= 1):
        msg = f"an interval needs 0 <= low <= high <= 1 and a share of 0 to 1, not {low}, {high} and {share}"
        raise ValueError(msg)
    return _bar(low, high, share, None if bare else say("{n} %").format(n=100), title)


@lru_cache(maxsize=4096)
def _bar(low: float, high: float, share: float, whole: str | None, title: str | None) -> Markup:
    left, right, at = (_x(value) for value in (low, high, share))
    parts = [
        path(_AXIS, "m-thin"),
        box(left, _AXIS_Y - 3.5, right - left, 7, "m-solid m-interval"),
        line(at, 1, at, 19, "m-tick-under"),
        line(at, 1, at, 19, "m-tick"),
    ]
    if whole:
        parts += [
            words(AXIS_LEFT, 30, "0", "m-small", anchor="middle"),
            words(_x(0.5), 30, "50", "m-small", anchor="middle"),
            words(_x(1) + AXIS_LEFT, 30, whole, "m-small", anchor="end"),
        ]
    height = _BAR_HEIGHT if whole else _BARE_HEIGHT
    return drawing(parts, width=_BAR_WIDTH, height=height, title=title, css_class="m-bar")


def _x(share: float) -> float:
    return AXIS_LEFT + 100 * UNITS_PER_PERCENT * share


def _place(index: int) -> tuple[float, float]:
    """Return where a dot's middle stands."""
    column = index % _ROW
    x = 1.5 + _PITCH / 2 + column * _PITCH + (column // 5) * _FIVES_GAP
    return x, _ROW_HEIGHT / 2 + (index // _ROW) * _ROW_HEIGHT


def _good(x: float, y: float) -> str:
    """A stroke of no length: its round ends make the dot, as wide as the stroke."""
    return f"M{num(x)} {num(y)}h0"


def _spoiled(x: float, y: float) -> str:
    """An open ring, struck through."""
    radius, across = num(_RADIUS - 0.5), num(2 * _RADIUS - 1)
    ring = f"M{num(x - _RADIUS + 0.5)} {num(y)}a{radius} {radius} 0 1 0 {across} 0a{radius} {radius} 0 1 0-{across} 0"
    return f"{ring}M{num(x - 6)} {num(y + 6)}l12-12"


def _figures(good: int, pressed: int, title: str | None) -> Markup:
    text = f"{good} / {pressed}"
    return drawing([words(0, 17, text, "m-figures")], width=11 * len(text), height=22, title=title, css_class="m-dots")
