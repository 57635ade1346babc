"""Curves, carved marks and a printable sheet: what all of the demo artwork is drawn with.

Everything is in millimetres of the finished piece, x to the right and y downwards, with (0, 0) at the
top left corner of the trimmed print; the bleed lies outside it. A *form* is a spine with a radius at each
point: leaves, roots, necks and loaves are all forms, and hatching follows them as a gouge follows a block.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from html import escape

import numpy as np
from numpy.typing import NDArray

Points = NDArray[np.float64]
Path = str
"""The `d` of an SVG path."""


def smooth(points: Sequence[Sequence[float]] | Points, *, closed: bool = False, steps: int = 10) -> Points:
    """Catmull-Rom curve through the points, `steps` samples a segment."""
    p = np.asarray(points, dtype=float)
    padded = np.vstack([p[-1], p, p[0], p[1]]) if closed else np.vstack([2 * p[0] - p[1], p, 2 * p[-1] - p[-2]])
    t = np.linspace(0, 1, steps, endpoint=False)[:, None]
    pieces = []
    for i in range(len(padded) - 3):
        a, b, c, d = padded[i : i + 4]
        pieces.append(0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t**2 + (3 * b - a - 3 * c + d) * t**3))
    if not closed:
        pieces.append(p[-1:])
    return np.vstack(pieces)


def resample(points: Points, count: int) -> Points:
    """The same line as `count` points at equal distances along it."""
    along = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
    at = np.linspace(0, along[-1], count)
    return np.column_stack([np.interp(at, along, points[:, k]) for k in (0, 1)])


def normals(points: Points) -> Points:
    """Unit normals of a line, to the right of its direction when y points down."""
    d = np.gradient(points, axis=0)
    d /= np.maximum(np.hypot(d[:, 0], d[:, 1]), 1e-9)[:, None]
    return np.column_stack([-d[:, 1], d[:, 0]])


def stroke(
    points: Sequence[Sequence[float]] | Points, width: float, *, sharp: float = 0.7, head: float = 0.0
) -> Points:
    """Outline of a stroke that swells to `width` and runs out at both ends, as a gouge does.

    `sharp` 0 keeps the width all along; `head` 0 to 1 keeps that much of the width at the start.
    """
    p = np.asarray(points, dtype=float)
    p = resample(p, 9) if len(p) < 5 else p
    t = np.linspace(0, 1, len(p))
    swell = np.sin(np.pi * t) ** sharp if sharp else np.ones_like(t)
    if head:
        swell = np.maximum(swell, head * (t < 0.5))
    n = normals(p) * (swell * width / 2)[:, None]
    return np.vstack([p + n, (p - n)[::-1]])


def bow(start: Sequence[float], end: Sequence[float], bend: float = 0.0, count: int = 9) -> Points:
    """A curved line from start to end, its middle put aside by `bend` times its length."""
    a, b = np.asarray(start, dtype=float), np.asarray(end, dtype=float)
    side = np.array([-(b - a)[1], (b - a)[0]])
    t = np.linspace(0, 1, count)[:, None]
    return a + (b - a) * t + side * bend * 4 * t * (1 - t)


def circle(x: float, y: float, radius: float, count: int = 72) -> Points:
    """A circle as a polygon."""
    return ellipse(x, y, radius, radius, count=count)


def ellipse(x: float, y: float, rx: float, ry: float, turn: float = 0.0, count: int = 72) -> Points:
    """An ellipse as a polygon, turned by `turn` degrees."""
    a = np.linspace(0, 2 * np.pi, count, endpoint=False)
    return turned(np.column_stack([rx * np.cos(a), ry * np.sin(a)]), turn) + np.array([x, y])


def rectangle(x: float, y: float, width: float, height: float) -> Points:
    """A plain rectangle."""
    return np.array([[x, y], [x + width, y], [x + width, y + height], [x, y + height]], dtype=float)


def turned(points: Points, degrees: float, about: Sequence[float] = (0, 0)) -> Points:
    """Points turned clockwise on the page."""
    a = np.radians(degrees)
    m = np.array([[np.cos(a), -np.sin(a)], [np.sin(a), np.cos(a)]])
    return (np.asarray(points) - about) @ m.T + about


def hand_cut(points: Points, rng: np.random.Generator, wobble: float = 0.25, pitch: float = 1.6) -> Points:
    """A closed outline with the small unevenness of a hand-cut block."""
    closed = np.vstack([points, points[:1]])
    length = np.hypot(*np.diff(closed, axis=0).T).sum()
    p = resample(closed, max(12, int(length / pitch)))[:-1]
    return p + rng.normal(0, wobble / 2, p.shape)


@dataclass(frozen=True)
class Form:
    """A spine with a radius along it; `s` runs across from -1 to 1, `t` along from 0 to 1."""

    spine: Points
    radii: NDArray[np.float64]

    @classmethod
    def through(cls, spine: Sequence[Sequence[float]], radii: Sequence[float], count: int = 48) -> Form:
        """A form whose spine is smooth through the points and whose radii are spread evenly over it."""
        line = resample(smooth(spine) if len(spine) > 2 else np.asarray(spine, dtype=float), count)
        t = np.linspace(0, 1, len(radii))
        curve = smooth(np.column_stack([t, radii]), steps=12)
        return cls(line, np.maximum(np.interp(np.linspace(0, 1, count), curve[:, 0], curve[:, 1]), 0.0))

    def at(self, t: NDArray[np.float64] | float, s: NDArray[np.float64] | float) -> Points:
        """Points of the form at t along and s across."""
        t, s = np.broadcast_arrays(np.atleast_1d(t), np.atleast_1d(s))
        grid = np.linspace(0, 1, len(self.spine))
        n = normals(self.spine)
        pick = [np.interp(t, grid, column) for column in (*self.spine.T, *n.T, self.radii)]
        return np.column_stack([pick[0] + pick[2] * pick[4] * s, pick[1] + pick[3] * pick[4] * s])

    def outline(self, grow: float = 0.0) -> Points:
        """The closed outline, `grow` mm larger all round."""
        n = normals(self.spine) * (self.radii + grow)[:, None]
        return np.vstack([self.spine + n, (self.spine - n)[::-1]])

    def along(self, s: float, start: float, end: float, width: float, sharp: float = 0.7) -> Points:
        """A carved mark that runs with the spine."""
        return stroke(self.at(np.linspace(start, end, 12), s), width, sharp=sharp)

    def across(self, t: float, start: float, end: float, width: float, sag: float = 0.0) -> Points:
        """A carved mark across the spine, sagging by `sag` of t as on something round."""
        s = np.linspace(start, end, 9)
        return stroke(self.at(t + sag * (1 - s**2), s), width)

    def hatching(
        self,
        rng: np.random.Generator,
        sides: tuple[float, float],
        count: int,
        width: float,
        span: tuple[float, float] = (0.05, 0.95),
    ) -> list[Points]:
        """Marks with the spine, spread between two values of s, heavier towards the second, ragged at the ends."""
        marks = []
        for k in range(count):
            f = (k + 0.5) / count
            s = sides[0] + (sides[1] - sides[0]) * f + rng.normal(0, 0.01)
            reach = (span[1] - span[0]) * (0.55 + 0.45 * f) * rng.uniform(0.75, 1)
            middle = (span[0] + span[1]) / 2 + rng.normal(0, 0.04)
            marks.append(
                self.along(
                    s, max(span[0], middle - reach / 2), min(span[1], middle + reach / 2), width * (0.6 + 0.6 * f)
                )
            )
        return marks


def path(*outlines: Points) -> Path:
    """Closed outlines as one SVG path."""
    return "".join(_steps(outline) + "z" for outline in outlines)


def thinned(points: Points, tolerance: float = 0.04) -> Points:
    """The line without those points that lie within `tolerance` mm of a straight run (Douglas and Peucker)."""
    keep = np.zeros(len(points), dtype=bool)
    keep[[0, len(points) // 2, -1]] = True
    runs = [(0, len(points) // 2), (len(points) // 2, len(points) - 1)]
    while runs:
        first, last = runs.pop()
        if last - first < 2:
            continue
        a, d = points[first], points[last] - points[first]
        off = points[first + 1 : last] - a
        length = float(np.hypot(*d))
        away = np.abs(off[:, 0] * d[1] - off[:, 1] * d[0]) / length if length > 1e-6 else np.hypot(*off.T)
        k = int(np.argmax(away))
        if away[k] > tolerance:
            keep[first + 1 + k] = True
            runs += [(first, first + 1 + k), (first + 1 + k, last)]
    return points[keep]


def _steps(points: Points) -> Path:
    """A line in relative steps of a hundredth of a millimetre, which keeps the files small."""
    whole = np.rint(thinned(np.asarray(points)) * 100).astype(int)
    steps = np.vstack([whole[:1], np.diff(whole, axis=0)])
    words = [f"{x / 100:.7g} {y / 100:.7g}" for x, y in steps]
    return f"M{words[0]}l" + " ".join(words[1:]).replace(" -", "-")


class Sheet:
    """A print of a given size in mm, built up colour by colour, read out as SVG."""

    def __init__(
        self, title: str, width: float, height: float, *, bleed: float = 3.0, ground: str | None = None
    ) -> None:
        self.title, self.width, self.height, self.bleed = title, width, height, bleed
        self._parts: list[str] = []
        self._clips = 0
        if ground:
            self.fill(ground, rectangle(-bleed, -bleed, width + 2 * bleed, height + 2 * bleed))

    def fill(self, colour: str, *shapes: Points | Path) -> None:
        """Print shapes in one flat colour."""
        d = "".join(s if isinstance(s, str) else path(s) for s in shapes)
        self._parts.append(f'<path fill="{colour}" d="{d}"/>')

    def cut(self, colour: str, shapes: Iterable[Points]) -> None:
        """Print many small marks in one colour."""
        self.fill(colour, *shapes)

    def line(self, colour: str, points: Points, width: float, *, closed: bool = False) -> None:
        """Print a line of even width with round ends."""
        d = _steps(points) + ("z" if closed else "")
        self._parts.append(
            f'<path fill="none" stroke="{colour}" stroke-width="{width:.2f}" stroke-linecap="round" '
            f'stroke-linejoin="round" d="{d}"/>'
        )

    @contextmanager
    def within(self, *shapes: Points | Path) -> Iterator[None]:
        """Keep what is printed meanwhile inside the shapes."""
        self._clips += 1
        d = "".join(s if isinstance(s, str) else path(s) for s in shapes)
        self._parts.append(
            f'<clipPath id="c{self._clips}"><path d="{d}"/></clipPath><g clip-path="url(#c{self._clips})">'
        )
        yield
        self._parts.append("</g>")

    @contextmanager
    def moved(
        self, x: float = 0.0, y: float = 0.0, *, turn: float = 0.0, scale: float = 1.0, flip: bool = False
    ) -> Iterator[None]:
        """Print a part elsewhere: moved, turned in degrees, scaled, flipped left to right."""
        sx = -scale if flip else scale
        self._parts.append(f'<g transform="translate({x:.2f} {y:.2f}) rotate({turn:.2f}) scale({sx:.4f} {scale:.4f})">')
        yield
        self._parts.append("</g>")

    def svg(self) -> str:
        """The sheet with its bleed as an SVG document in real millimetres."""
        b, w, h = self.bleed, self.width + 2 * self.bleed, self.height + 2 * self.bleed
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{w:g}mm" height="{h:g}mm" '
            f'viewBox="{-b:g} {-b:g} {w:g} {h:g}">'
            f"<title>{escape(self.title)}</title>" + "\n".join(self._parts) + "</svg>\n"
        )
