"""How artwork is shown, worked out without reading it. Inner module."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from maker_site.media.artwork.file import ArtworkFile
from maker_site.media.pictures import PictureSet, Probe
from maker_site.media.planning import plan

DRAWN_PX: Final = 1600
"""Longer side at which an SVG or PDF is drawn to be looked at."""


def plan_preview(artwork: ArtworkFile) -> PictureSet:
    """Name and size every derivative, as for a photo; the names carry the content hash. Nothing is read."""
    width, height = artwork.pixels or fitted(artwork.sides, DRAWN_PX)
    seen = "PNG" if artwork.format == "SVG" or artwork.format == "PDF" else artwork.format  # noqa: PLR1714 - for types
    return plan(Probe(seen, width, height, artwork.digest, artwork.bytes))


def fitted(size: tuple[Fraction, Fraction], longest: int) -> tuple[int, int]:
    """Return whole pixels in the proportions of `size`, the longer side of `longest`, none less than 1."""
    scale = longest / max(size)
    return max(1, round(size[0] * scale)), max(1, round(size[1] * scale))
