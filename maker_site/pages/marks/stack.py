"""The stack: a section through everything in the press, from bottom to top, or from a mug's wall out to its wrap."""

import math
from collections.abc import Sequence
from functools import lru_cache
from itertools import accumulate
from typing import Literal, Self

from markupsafe import Markup, escape

from maker_site.frozen import frozen
from maker_site.language import say
from maker_site.pages.marks._callouts import spread
from maker_site.pages.marks._lettering import wrapped
from maker_site.pages.marks._svg import drawing, num, path, words
from maker_site.pages.marks.hatching import hatched_shape
from maker_site.pages.marks.materials import hatch_of

Kind = Literal["pad", "protective paper", "cover sheet", "transfer", "blank", "tape", "other"]
Heat = Literal["above", "below", "both", "around"]
Printed = Literal["up", "down"]


@frozen
class Layer:
    """One layer of the stack."""

    kind: Kind
    label: str
    """Words at the layer's end; 40 characters keep whole, much longer ones end in an ellipsis."""
    substrate: str | None = None
    """What it is made of, where the drawing shows it: a blank, a pad."""
    printed: Printed | None = None
    """Which way the print of a transfer looks; on a wrapped piece `down` is towards the piece."""


@frozen
class PlateWords:
    """What stands beside the parts of the press, in the language of the page."""

    heated: str
    lower: str
    upper: str
    element: str

    @classmethod
    def said(cls) -> Self:
        """Return them in the language spoken now."""
        return cls(
            say("Platen, heated"),
            say("Lower plate, not heated"),
            say("Upper plate, not heated"),
            say("Element, wrapped around, heated"),
        )


@frozen
class _Part:
    """A layer or a plate between two levels, counted upwards from the foot of the section."""

    look: str
    label: str
    low: float
    high: float
    substrate: str | None
    printed: Printed | None


NARROW, WIDE = 320, 460
"""Units across: on a phone labels wrap beside the section; on a card 90 mm wide 40 characters stay on one line."""

_THICKNESS = {
    "pad": 16.0,
    "protective paper": 8.0,
    "cover sheet": 8.0,
    "transfer": 11.0,
    "blank": 34.0,
    "tape": 6.0,
    "other": 11.0,
    "hot plate": 18.0,
    "plate": 18.0,
}
_LEFT = 1.0
_RIGHT = 104.0
_LABELS_LEFT = 128.0
_FONT = 13.0
_LINE = 15.0
_LABEL_GAP = 4.0
_MOST_LINES = 3
_TICKS = 9
_TICK_REACH = 12.0
_TAPE_REACH = 0.22


def stack_drawing(
    layers: Sequence[Layer], *, heat: Heat, title: str, prefix: str, width: int = NARROW, said: PlateWords | None = None
) -> Markup:
    """The section, LAYERS given from bottom to top (from the piece outwards where heat is `around`).

    A hot plate carries a row of ticks towards the stack, the printed side of a transfer is a thick line, the blank
    is hatched by its substrate. The lettering is 13 units high whatever the WIDTH (NARROW or WIDE). Ids begin with
    PREFIX, which no other drawing on the page may have.
    """
    return _stack_drawing(tuple(layers), heat, title, prefix, width, said or PlateWords.said())


@lru_cache(maxsize=1024)  # a workshop presses in a few stacks, and draws each on many cards
def _stack_drawing(
    layers: tuple[Layer, ...], heat: Heat, title: str, prefix: str, width: int, said: PlateWords
) -> Markup:
    parts = _parts(layers, heat, said)
    section = _ArcSection(parts[-1].high) if heat == "around" else _FlatSection()
    drawn = "".join(
        f"<g><title>{escape(part.label)}</title>{_drawn(part, section, f'{prefix}-{index}')}</g>"
        for index, part in enumerate(parts)
    )
    labels, top, foot = _labels(parts, width)
    shift = 1.5 - min(top, -parts[-1].high)
    height = math.ceil(max(foot, section.foot) + shift + 1.5)
    moved = f'<g transform="translate(0 {num(shift)})">{drawn}{labels}</g>'
    return drawing([moved], width=width, height=height, title=title, css_class="m-stack", at_left=True)


class _FlatSection:
    """Levels drawn as level lines; y is minus the level, so the foot is 0."""

    foot = 0.0

    def outline(self, low: float, high: float, start: float = 0, end: float = 1) -> str:
        """The closed shape between two levels, over a share of the width."""
        left, right = (_LEFT + share * (_RIGHT - _LEFT) for share in (start, end))
        return f"M{num(left)} {num(-low)}H{num(right)}V{num(-high)}H{num(left)}Z"

    def bounds(self, low: float, high: float) -> tuple[float, float, float, float]:
        """Left, top, width and height of what lies between two levels."""
        return _LEFT, -high, _RIGHT - _LEFT, high - low

    def level(self, level: float) -> str:
        """The line along a level."""
        return f"M{num(_LEFT)} {num(-level)}H{num(_RIGHT)}"

    def tick(self, share: float, low: float, high: float) -> str:
        """A stroke across levels at a share of the width."""
        x = _LEFT + share * (_RIGHT - _LEFT)
        return f"M{num(x)} {num(-high)}V{num(-low)}"


class _ArcSection:
    """Levels drawn as quarter rings cut open at the right, so that the cut is the same as a flat section's end."""

    def __init__(self, highest: float) -> None:
        self.inner = max(12.0, _RIGHT - _LEFT - highest)
        self.foot = self.inner

    def outline(self, low: float, high: float, start: float = 0, end: float = 1) -> str:
        """The closed ring piece between two levels, over a share of the quarter turn."""
        near, far = self.inner + low, self.inner + high
        (ax, ay), (bx, by) = self._at(far, start), self._at(far, end)
        (cx, cy), (dx, dy) = self._at(near, end), self._at(near, start)
        there = f"M{num(ax)} {num(ay)}A{num(far)} {num(far)} 0 0 1 {num(bx)} {num(by)}"
        return f"{there}L{num(cx)} {num(cy)}A{num(near)} {num(near)} 0 0 0 {num(dx)} {num(dy)}Z"

    def bounds(self, low: float, high: float) -> tuple[float, float, float, float]:
        """Left, top, width and height of what lies between two levels; the lower one is inside."""
        far = self.inner + max(low, high)
        return _RIGHT - far, self.inner - far, far, far

    def level(self, level: float) -> str:
        """The arc along a level."""
        radius = self.inner + level
        (ax, ay), (bx, by) = self._at(radius, 0), self._at(radius, 1)
        return f"M{num(ax)} {num(ay)}A{num(radius)} {num(radius)} 0 0 1 {num(bx)} {num(by)}"

    def tick(self, share: float, low: float, high: float) -> str:
        """A stroke along a radius at a share of the quarter turn."""
        (ax, ay), (bx, by) = self._at(self.inner + high, share), self._at(self.inner + low, share)
        return f"M{num(ax)} {num(ay)}L{num(bx)} {num(by)}"

    def _at(self, radius: float, share: float) -> tuple[float, float]:
        turn = math.pi / 2 * (1 - share)
        return _RIGHT - radius * math.sin(turn), self.inner - radius * math.cos(turn)


_Section = _FlatSection | _ArcSection


def _parts(layers: Sequence[Layer], heat: Heat, said: PlateWords) -> tuple[_Part, ...]:
    below = [] if heat == "around" else [_plate(said.lower, said.heated, hot=heat in {"below", "both"})]
    upper_hot = said.element if heat == "around" else said.heated
    above = [_plate(said.upper, upper_hot, hot=heat != "below")]
    middle = [(layer.kind, layer.label, layer.substrate, layer.printed) for layer in layers]
    rows: list[tuple[str, str, str | None, Printed | None]] = [*below, *middle, *above]
    levels = [0.0, *accumulate(_THICKNESS[look] for look, *_ in rows)]
    return tuple(
        _Part(look, label, low, high, substrate, printed)
        for (look, label, substrate, printed), low, high in zip(rows, levels, levels[1:], strict=False)
    )


def _plate(cold_label: str, hot_label: str, *, hot: bool) -> tuple[str, str, str, None]:
    return ("hot plate", hot_label, "metal", None) if hot else ("plate", cold_label, "metal", None)


def _drawn(part: _Part, section: _Section, clip: str) -> str:
    if part.look == "tape":
        ends = ((0, _TAPE_REACH), (1 - _TAPE_REACH, 1))
        return "".join(path(section.outline(part.low, part.high, *end), "m-sheet") for end in ends)
    shape = section.outline(part.low, part.high)
    if part.look == "hot plate":
        return path(shape, "m-sheet") + _ticks(part, section)
    if part.substrate:
        return hatched_shape(hatch_of(part.substrate), shape, bounds=section.bounds(part.low, part.high), clip=clip)
    if part.look == "cover sheet":
        middle = section.level((part.low + part.high) / 2)
        return path(shape, "m-sheet") + path(middle, "m-thin m-dashed")
    return path(shape, "m-sheet") + _print(part, section)


def _ticks(part: _Part, section: _Section) -> str:
    """Heat on the side of the stack: the lowest plate sends it up, any other down."""
    low, high = (part.high - _TICK_REACH, part.high) if part.low == 0 else (part.low, part.low + _TICK_REACH)
    strokes = "".join(section.tick((place + 0.5) / _TICKS, low, high) for place in range(_TICKS))
    return path(strokes, "m-heat")


def _print(part: _Part, section: _Section) -> str:
    if part.printed is None:
        return ""
    level = part.high - 1.5 if part.printed == "up" else part.low + 1.5
    return path(section.level(level), "m-thick m-print")


def _labels(parts: Sequence[_Part], width: float) -> tuple[str, float, float]:
    """The lettering with its leaders, its highest and its lowest y, where the section's foot is 0."""
    falling = parts[::-1]
    lettering = [
        wrapped(part.label, width=width - _LABELS_LEFT, font_size=_FONT, lines=_MOST_LINES) for part in falling
    ]
    heights = [_LINE * len(lines) for lines in lettering]
    middles = [-(part.low + part.high) / 2 for part in falling]
    tops = spread(middles, heights, _LABEL_GAP)
    drawn = "".join(_label(lines, top, middle) for lines, top, middle in zip(lettering, tops, middles, strict=True))
    return drawn, tops[0], tops[-1] + heights[-1]


def _label(lines: Sequence[str], top: float, middle: float) -> str:
    at = top + _LINE * len(lines) / 2
    leader = path(
        f"M{num(_RIGHT)} {num(middle)}h6L{num(_LABELS_LEFT - 10)} {num(at)}H{num(_LABELS_LEFT - 5)}", "m-thin"
    )
    rows = (words(_LABELS_LEFT, top + _LINE * row + 11.5, text) for row, text in enumerate(lines))
    return leader + "".join(rows)
