"""From a probe to the files that will be made of it, without decoding. Inner module."""

from __future__ import annotations

import hashlib

from maker_site.media.pictures import Derivative, PictureSet, Probe
from maker_site.media.recipe import RECIPE, Recipe


def plan(probe: Probe, recipe: Recipe = RECIPE) -> PictureSet:
    """Name and size every derivative of a picture; `make` then gives exactly these.

    None is wider than the picture. The widest is the picture's own width, or the recipe's widest if less.
    """
    stem = hashlib.blake2b(f"{probe.digest} {recipe.fingerprint}".encode(), digest_size=8).hexdigest()
    widest = min(probe.width, recipe.widths[-1], max(1, recipe.tallest * probe.width // probe.height))

    def derivative(width: int, ending: str, media_type: str) -> Derivative:
        height = min(_height(probe, width), recipe.tallest)
        return Derivative(f"{stem}-{width}.{ending}", width, height, media_type)

    return PictureSet(
        digest=probe.digest,
        width=probe.width,
        height=probe.height,
        modern=tuple(derivative(width, "avif", "image/avif") for width in _widths(recipe.widths, widest)),
        fallback=derivative(min(recipe.fallback_width, widest), "jpg", "image/jpeg"),
        recipe=recipe,
    )


def _widths(wanted: tuple[int, ...], widest: int) -> tuple[int, ...]:
    """Give the wanted widths that are clearly (an eighth) under the widest, then the widest."""
    return (*(width for width in wanted if width * 8 <= widest * 7), widest)


def _height(probe: Probe, width: int) -> int:
    """Give the height that keeps the proportions, to the nearest pixel, half up, at least 1."""
    return max(1, (2 * probe.height * width + probe.width) // (2 * probe.width))
