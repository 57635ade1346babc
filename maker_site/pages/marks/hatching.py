"""Hatching by material, drawn stroke by stroke so that it prints as sharp as lettering.

A `<pattern>` is shorter, but browsers turn it into coarse pixels on the way to paper: it is for large drawings that
are looked at on a screen.
"""

import math
import re
from collections.abc import Iterable, Iterator, Sequence
from functools import cache, lru_cache

from markupsafe import Markup

from maker_site.pages.marks._svg import box, drawing, num, path
from maker_site.pages.marks.materials import HATCHES, Hatch, hatch_of


def swatch(substrate: str, *, width: int = 40, height: int = 24, title: str | None = None) -> Markup:
    """A hatched sample of SUBSTRATE, WIDTH x HEIGHT pixels.

    The substrate's name is to stand beside it; where it can't, give a TITLE. It names its strokes, which stand once on
    a page however many samples there are: see `shared_parts`.
    """
    return family_swatch(hatch_of(substrate).family, width=width, height=height, title=title)


@lru_cache(maxsize=1024)
def family_swatch(family: str, *, width: int = 40, height: int = 24, title: str | None = None) -> Markup:
    """A hatched sample of a FAMILY (a key of HATCHES), for the key to the hatchings."""
    strokes = f'<use href="#hatch-{_named(family)}-{width}x{height}"/>'
    return drawing([strokes], width=width, height=height, title=title, css_class="m-swatch")


def family_field(family: str, *, width: int, height: int) -> Markup:
    """A large field of a FAMILY's hatching, for the screen."""
    fill = hatching_fill(HATCHES[family])
    field = f'<rect class="m-area" fill="{fill}" x="0.5" y="0.5" width="{width - 1}" height="{height - 1}"/>'
    return drawing([field], width=width, height=height, css_class="m-swatch")


def hatching_fill(hatch: Hatch) -> str:
    """The fill of a large shape by a hatching that stands once on a page: see `shared_parts`."""
    return f"url(#hatching-{_named(hatch.family)})"


_SAMPLE = re.compile(r'href="#(hatch-([a-z-]+)-([0-9]+)x([0-9]+))"')
_FILL = re.compile(r'"url\(#hatching-([a-z-]+)\)"')


def shared_parts(marks: str) -> str:
    """The strokes that samples and large shapes among MARKS (any text that holds them) name, each once."""
    found: dict[str, str] = {}
    for name, family, width, height in _SAMPLE.findall(marks):
        if name not in found and family in _FAMILIES:
            found[name] = _sample(name, family, int(width), int(height))
    for family in _FILL.findall(marks):
        name = f"hatching-{family}"
        if name not in found and family in _FAMILIES:
            found[name] = hatch_pattern(HATCHES[_FAMILIES[family]], name)
    return "".join(found.values())


@cache
def _sample(name: str, family: str, width: int, height: int) -> str:
    sample = hatched_box(HATCHES[_FAMILIES[family]], 0.5, 0.5, width - 1, height - 1)
    return f'<g id="{name}">{sample}</g>'


def _named(family: str) -> str:
    return family.replace(" ", "-")


_FAMILIES = {_named(family): family for family in HATCHES}
"""Families by their names in ids."""


def hatched_box(hatch: Hatch, x: float, y: float, width: float, height: float) -> str:
    """A rectangle on paper ground, hatched and outlined; it needs no id of its own."""
    place = f'x="{num(x)}" y="{num(y)}" width="{num(width)}" height="{num(height)}"'
    return (
        box(x, y, width, height, "m-ground")
        + f"<svg {place}>{hatched_field(hatch, width, height)}</svg>"
        + box(x, y, width, height, "m-outer")
    )


def hatched_shape(hatch: Hatch, shape: str, *, bounds: tuple[float, float, float, float], clip: str) -> str:
    """A shape (SVG path words) on paper ground, hatched and outlined.

    BOUNDS are its left, top, width and height; CLIP is an id that nothing else on the page has.
    """
    left, top, width, height = bounds
    return (
        f'<clipPath id="{clip}"><path d="{shape}"/></clipPath>{path(shape, "m-ground")}'
        f'<g clip-path="url(#{clip})"><g transform="translate({num(left)} {num(top)})">'
        f"{hatched_field(hatch, width, height)}</g></g>{path(shape, 'm-outer')}"
    )


def hatch_pattern(hatch: Hatch, name: str) -> str:
    """The same hatching as a `<pattern>` whose id is NAME."""
    turned = f' patternTransform="rotate({hatch.turn})"' if hatch.turn else ""
    size = f'width="{num(hatch.width)}" height="{num(hatch.height)}"'
    start = f'<pattern id="{name}" {size} patternUnits="userSpaceOnUse"{turned}>'
    return f"{start}{_inked(hatch, ((0, 0),), hatch.rules, 0, hatch.height)}</pattern>"


@lru_cache(maxsize=4096)  # the same samples stand on thousands of pages
def hatched_field(hatch: Hatch, width: float, height: float) -> str:
    """The strokes that cover 0 0 to WIDTH HEIGHT; they reach beyond it and are to be clipped."""
    turned = _Turned(hatch.turn, width, height)
    tiles = tuple(turned.tiles(hatch.width, hatch.height))
    drawn = _inked(hatch, tiles, _repeated(hatch.rules, hatch.width, turned), turned.top, turned.foot)
    return f'<g transform="rotate({hatch.turn})">{drawn}</g>' if hatch.turn else drawn


def _inked(hatch: Hatch, tiles: Sequence[tuple[float, float]], rules: Iterable[float], top: float, foot: float) -> str:
    """Strokes and dots of TILES, and RULES from TOP to FOOT, as at most two paths."""
    lines = "".join(f"M{num(x)} {num(top)}V{num(foot)}" for x in rules)
    lines += "".join(f"M{num(x + dx)} {num(y + dy)}{rest}" for x, y in tiles for dx, dy, rest in hatch.strokes)
    lines += "".join(_ring(x + dx, y + dy, radius) for x, y in tiles for dx, dy, radius in hatch.rings)
    dots = "".join(f"M{num(x + dx)} {num(y + dy)}h0" for x, y in tiles for dx, dy in hatch.specks)
    return (path(lines, "m-hatch") if lines else "") + (path(dots, "m-speck") if dots else "")


class _Turned:
    """A rectangle seen from a hatching that is turned about its top left corner."""

    def __init__(self, turn: int, width: float, height: float) -> None:
        self.width, self.height = width, height
        self.cos, self.sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
        corners = [(x * self.cos + y * self.sin, y * self.cos - x * self.sin) for x in (0, width) for y in (0, height)]
        self.left, self.right = min(x for x, _ in corners), max(x for x, _ in corners)
        self.top, self.foot = min(y for _, y in corners), max(y for _, y in corners)

    def tiles(self, tile_width: float, tile_height: float) -> Iterator[tuple[float, float]]:
        """Top left corners of the tiles that touch the rectangle."""
        reach = math.hypot(tile_width, tile_height) / 2
        for row in range(math.floor(self.top / tile_height), math.ceil(self.foot / tile_height)):
            for column in range(math.floor(self.left / tile_width), math.ceil(self.right / tile_width)):
                x, y = column * tile_width, row * tile_height
                if self._near(x + tile_width / 2, y + tile_height / 2, reach):
                    yield x, y

    def _near(self, x: float, y: float, reach: float) -> bool:
        there_x, there_y = x * self.cos - y * self.sin, x * self.sin + y * self.cos
        return -reach < there_x < self.width + reach and -reach < there_y < self.height + reach


def _repeated(rules: tuple[float, ...], width: float, turned: _Turned) -> Iterator[float]:
    for column in range(math.floor(turned.left / width), math.ceil(turned.right / width)):
        for rule in rules:
            if turned.left <= column * width + rule <= turned.right:
                yield column * width + rule


def _ring(x: float, y: float, radius: float) -> str:
    r, across = num(radius), num(2 * radius)
    return f"M{num(x - radius)} {num(y)}a{r} {r} 0 1 0 {across} 0a{r} {r} 0 1 0-{across} 0z"
