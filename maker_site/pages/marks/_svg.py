"""Small pieces of SVG text, escaped and with steady figures. Inner module: used by the marks only."""

from collections.abc import Iterable
from functools import lru_cache
from unicodedata import bidirectional

from markupsafe import Markup, escape


@lru_cache(maxsize=65536)  # drawings say the same few coordinates over and over
def num(value: float) -> str:
    """A coordinate with at most two decimals and no trailing zeros, so that the same drawing is the same text."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in {"-0", ""} else text


def drawing(
    content: Iterable[str],
    *,
    width: float,
    height: float,
    title: str | None = None,
    css_class: str = "",
    at_left: bool = False,
) -> Markup:
    """An `<svg>` of WIDTH x HEIGHT user units (CSS pixels at full size).

    With a title it is an image of that name; without one it is hidden from readers, because words stand beside it.
    AT_LEFT keeps it at the left of a place that is too wide for it.
    """
    names = escape(f"mark {css_class}".strip())
    size = f'width="{num(width)}" height="{num(height)}" viewBox="0 0 {num(width)} {num(height)}"'
    placed = ' preserveAspectRatio="xMinYMid"' if at_left else ""
    told = 'role="img"' if title else 'aria-hidden="true"'
    head = f"<title>{escape(title)}</title>" if title else ""
    start = f'<svg xmlns="http://www.w3.org/2000/svg" class="{names}" {size}{placed} {told}>'
    return Markup(f"{start}{head}{''.join(content)}</svg>")


def line(x1: float, y1: float, x2: float, y2: float, css_class: str = "m-line") -> str:
    """A straight line."""
    return f'<path class="{css_class}" d="M{num(x1)} {num(y1)}L{num(x2)} {num(y2)}"/>'


def path(d: str, css_class: str = "m-line") -> str:
    """A path in SVG's own path words."""
    return f'<path class="{css_class}" d="{d}"/>'


def box(x: float, y: float, width: float, height: float, css_class: str) -> str:
    """A rectangle."""
    place = f'x="{num(x)}" y="{num(y)}" width="{num(width)}" height="{num(height)}"'
    return f'<rect class="{css_class}" {place}/>'


def circle(x: float, y: float, radius: float, css_class: str) -> str:
    """A circle."""
    return f'<circle class="{css_class}" cx="{num(x)}" cy="{num(y)}" r="{num(radius)}"/>'


def words(x: float, y: float, text: str, css_class: str = "m-words", *, anchor: str = "start") -> str:
    """A line of text whose baseline starts, ends or is centred at X, Y.

    The left end is the start, also of text that runs from right to left, which is set apart by letters that aren't
    seen: a drawing isn't turned over with its page, and what draws it on paper knows no `direction`.
    """
    placed = "" if anchor == "start" else f' text-anchor="{anchor}"'
    if runs_leftwards(text):
        text = f"\N{RIGHT-TO-LEFT ISOLATE}{text}\N{POP DIRECTIONAL ISOLATE}"
    return f'<text class="{css_class}" x="{num(x)}" y="{num(y)}"{placed}>{escape(text)}</text>'


@lru_cache(maxsize=4096)  # the same few labels stand on thousands of pages
def runs_leftwards(text: str) -> bool:
    """Whether the first letter of TEXT belongs to a script written from right to left; figures alone have none."""
    if text.isascii():
        return False
    kinds = (bidirectional(letter) for letter in text)
    return next((kind in {"R", "AL"} for kind in kinds if kind in {"L", "R", "AL"}), False)
