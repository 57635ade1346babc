"""Shapes of a blank drawn to scale in a field of 4 : 3, and their dimension lines. Inner module: used by the marks."""

from collections.abc import Iterator

from maker_site.frozen import frozen
from maker_site.pages.marks._svg import circle, num, path, words

WIDTH = 480.0
HEIGHT = 360.0
"""Four to three, as the pictures beside it."""

_LEFT, _TOP, _RIGHT, _FOOT = 44.0, 32.0, 400.0, 300.0
"""The field the outline may fill; the rest is for the dimensions."""


@frozen
class Hole:
    """A hole, its centre measured from the blank's top left corner, in millimetres."""

    x_mm: float
    y_mm: float
    diameter_mm: float


@frozen
class Field:
    """Where the outline stands and how many units a millimetre is."""

    left: float
    top: float
    width: float
    height: float
    scale: float


def fitted(width_mm: float, height_mm: float) -> Field:
    """The largest field of these proportions, in the middle of the place that there is for it."""
    scale = min((_RIGHT - _LEFT) / width_mm, (_FOOT - _TOP) / height_mm)
    width, height = width_mm * scale, height_mm * scale
    left = _LEFT + (_RIGHT - _LEFT - width) / 2
    return Field(left, _TOP + (_FOOT - _TOP - height) / 2, width, height, scale)


def disc(field: Field) -> str:
    """A circle that fills the field, as a path."""
    radius = num(min(field.width, field.height) / 2)
    across = num(min(field.width, field.height))
    half_turn = f"a{radius} {radius} 0 1 0"
    start = f"M{num(field.left)} {num(field.top + field.height / 2)}"
    return f"{start}{half_turn} {across} 0{half_turn}-{across} 0z"


def oblong(field: Field, corner: float) -> str:
    """A rectangle with round corners (their radius in units) that fills the field, as a path."""
    radius = min(corner, field.width / 2, field.height / 2)
    across, down = num(field.width - 2 * radius), num(field.height - 2 * radius)
    turn = f"a{num(radius)} {num(radius)} 0 0 1 " if radius else "l"
    r = num(radius)
    start = f"M{num(field.left + radius)} {num(field.top)}"
    return f"{start}h{across}{turn}{r} {r}v{down}{turn}-{r} {r}h-{across}{turn}-{r}-{r}v-{down}{turn}{r}-{r}z"


def free_shape(field: Field, outline: str) -> str:
    """An outline in mm from the blank's top left corner (SVG path letters and figures, parted by spaces) as a path."""
    drawn: list[str] = []
    letter, figures = "", list[str]()
    for token in (*outline.split(), "Z"):
        if not token.isalpha():
            figures.append(token)
            continue
        if letter:
            drawn.append(letter + " ".join(_placed(field, letter, figures, first=not drawn)))
        letter, figures = token, []
    return "".join(drawn) + ("" if drawn and drawn[-1] in ("Z", "z") else "Z")


def _placed(field: Field, letter: str, figures: list[str], *, first: bool) -> Iterator[str]:
    kinds = _KINDS[letter.upper()]
    for index, figure in enumerate(figures):
        kind = kinds[index % len(kinds)]
        absolute = letter.isupper() or (first and index < len(kinds))
        value = float(figure) * (1 if kind == "-" else field.scale)
        if absolute and kind in "xy":
            value += field.left if kind == "x" else field.top
        yield num(value)


_KINDS = {
    "M": "xy",
    "L": "xy",
    "T": "xy",
    "H": "x",
    "V": "y",
    "C": "xyxyxy",
    "S": "xyxy",
    "Q": "xyxy",
    "A": "rr---xy",
    "Z": "-",
}
"""What each figure of a letter is (SVG 1.1, 8.3): a place across or down, a length, or neither."""


def hole_mark(field: Field, hole: Hole) -> str:
    """A hole in the blank."""
    x, y = field.left + hole.x_mm * field.scale, field.top + hole.y_mm * field.scale
    return circle(x, y, hole.diameter_mm / 2 * field.scale, "m-sheet")


def dimensions(field: Field, width_words: str, height_words: str, *, beyond: float = 0) -> list[str]:
    """Dimension lines under and beside the field; BEYOND is how far something else reaches past its edges."""
    under, beside = field.top + field.height + beyond + 26, field.left + field.width + beyond + 26
    right, foot = field.left + field.width, field.top + field.height
    middle_x, middle_y = field.left + field.width / 2, field.top + field.height / 2
    lines = [
        _stroke(field.left, under, right, under),
        _stroke(beside, field.top, beside, foot),
        *(_stroke(x, foot + beyond + 6, x, under + 6) for x in (field.left, right)),
        *(_stroke(right + beyond + 6, y, beside + 6, y) for y in (field.top, foot)),
    ]
    ends = [
        *(_stroke(x - 4, under + 4, x + 4, under - 4) for x in (field.left, right)),
        *(_stroke(beside - 4, y + 4, beside + 4, y - 4) for y in (field.top, foot)),
    ]
    return [
        path("".join(lines), "m-thin"),
        path("".join(ends), "m-line"),
        words(middle_x, under + 20, width_words, "m-words", anchor="middle"),
        f'<g transform="translate({num(beside + 18)} {num(middle_y)}) rotate(-90)">'
        f"{words(0, 0, height_words, 'm-words', anchor='middle')}</g>",
    ]


def _stroke(x1: float, y1: float, x2: float, y2: float) -> str:
    """A straight line in path words."""
    across, down = num(x2 - x1), num(y2 - y1)
    return f"M{num(x1)} {num(y1)}" + (
        f"h{across}" if down == "0" else f"v{down}" if across == "0" else f"l{across} {down}"
    )
