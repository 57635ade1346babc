"""Check that a picture decodes to its end, as fast as its format allows. Inner module."""

from __future__ import annotations

from pathlib import Path

from maker_site.media.colour import flattened
from maker_site.media.memory import alone_if_large
from maker_site.media.opening import MAX_PIXELS, opened


def sound(path: Path, *, max_pixels: int = MAX_PIXELS) -> None:
    """Decode the whole picture (a JPEG at an eighth of its size) and drop it. Raises `PictureProblem`."""
    with opened(path, max_pixels=max_pixels) as (_, picture, _), alone_if_large(picture.width * picture.height):
        picture.draft(None, (1, 1))
        picture.load()
        flattened(picture)
