"""How much of the paper artwork covers with ink: a project rule and an estimate, not a standard. Inner module."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import Final

from PIL import Image

from maker_site.media.artwork.rastering import drawn_as_png
from maker_site.media.artwork.reading import drawing_kind
from maker_site.media.colour import flattened, to_srgb
from maker_site.media.memory import LARGE, alone_if_large
from maker_site.media.opening import MAX_PIXELS, opened

DRAWN_PX: Final = 1200
"""Longer side at which an SVG or PDF is measured."""
_BAND: Final = 4_000_000
"""Pixels that are looked at together."""


def coverage(path: Path, *, max_pixels: int = MAX_PIXELS) -> Fraction:
    """Return the mean over all pixels of 1 - (R + G + B)/(3 x 255), from 0 for bare paper to 1 for black all over.

    In 8-bit sRGB, alpha laid on white first; exact for those figures, since they are counted. SVG and PDF are drawn
    with a longer side of 1200 pixels. Raises `PictureProblem`.

    Memory: the decoded picture, at most 4 bytes a pixel (one of more than 40 megapixels at a time), and some 50 MB;
    a JPEG above 40 megapixels is decoded at a half or less, so it is never more than 160 MB.
    """
    kind = drawing_kind(path)
    if kind is None:
        return _measured(path, max_pixels)
    with drawn_as_png(path, kind, DRAWN_PX) as png:
        return _measured(png, max_pixels)


def _measured(path: Path, max_pixels: int) -> Fraction:
    with opened(path, max_pixels=max_pixels) as (_, picture, _), alone_if_large(picture.width * picture.height):
        shrink = 1
        while picture.width * picture.height > LARGE * shrink * shrink:
            shrink *= 2
        picture.draft(None, (max(1, picture.width // shrink), max(1, picture.height // shrink)))  # JPEG only
        picture.load()
        rows = max(1, _BAND // picture.width)
        light = sum(_light(picture, top, min(top + rows, picture.height)) for top in range(0, picture.height, rows))
        return 1 - Fraction(light, 3 * 255 * picture.width * picture.height)


def _light(picture: Image.Image, top: int, foot: int) -> int:
    """Return the sum of R + G + B over some rows, as it is laid on white paper."""
    band = picture.crop((0, top, picture.width, foot))
    counts = to_srgb(flattened(band), picture.info.get("icc_profile")).histogram()
    return sum(count * (place % 256) for place, count in enumerate(counts))
