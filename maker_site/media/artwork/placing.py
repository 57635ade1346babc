"""A design file ready to be placed on paper: no pixel is changed where its format can go in as it is."""

from __future__ import annotations

import shutil
from fractions import Fraction
from math import ceil
from pathlib import Path
from typing import Final

from maker_site.media.artwork.file import ArtworkFile
from maker_site.media.artwork.rastering import drawn_as_png
from maker_site.media.artwork.svg import checked_svg
from maker_site.media.colour import flattened, to_srgb
from maker_site.media.deriving import upright
from maker_site.media.opening import opened, orientation
from maker_site.media.probing import content_hash
from maker_site.media.problems import PictureProblem
from maker_site.records.quantities.length import MM_PER_INCH

_AS_IT_IS: Final = ("JPEG", "PNG", "WebP", "GIF")
"""Formats that the typesetter takes."""
_PNG_MODES: Final = {"1", "L", "LA", "P", "RGB", "RGBA", "I;16"}
_LARGEST_PX: Final = 20_000


def place_name(artwork: ArtworkFile, width_mm: Fraction, ppi: int) -> str:
    """Return the name of the file that `ready_to_place` makes for artwork of that width in mm."""
    stem = artwork.digest[:20]
    if artwork.format == "SVG":
        return f"{stem}.svg"
    if artwork.format == "PDF":
        return f"{stem}-{_pixels(artwork, width_mm, ppi)}"
    return stem  # without an ending it is known by its first bytes


def ready_to_place(path: Path, artwork: ArtworkFile, width_mm: Fraction, ppi: int, target: Path) -> None:
    """Write artwork to `target`, whose name is that of `place_name`, ready to be scaled to `width_mm`.

    JPEG, PNG, WebP and GIF go as they are, colour profile and all; TIFF, HEIC and AVIF become PNG, pixel for pixel
    with their profile; SVG stays a drawing, without what it would read from elsewhere; a PDF is drawn at `ppi` pixels
    an inch. Raises `PictureProblem`, also where the file is not the one that was looked at.
    """
    if content_hash(path) != artwork.digest:
        raise PictureProblem(path, "the file was changed while it was being used: start again")
    if artwork.format == "SVG":
        target.write_text(checked_svg(path).text, "utf-8")
    elif artwork.format == "PDF":
        with drawn_as_png(path, "PDF", _pixels(artwork, width_mm, ppi)) as png:
            shutil.copyfile(png, target)
    else:
        _pixels_to_place(path, artwork, target)


def _pixels(artwork: ArtworkFile, width_mm: Fraction, ppi: int) -> int:
    """Return the pixels of the longer side of a drawing at its printed size."""
    width, height = artwork.sides
    longest = width_mm * max(width, height) / width
    return min(_LARGEST_PX, ceil(longest / MM_PER_INCH * ppi))


def _pixels_to_place(path: Path, artwork: ArtworkFile, target: Path) -> None:
    with opened(path) as (kind, picture, _):
        turn = orientation(kind, picture)
        # A JPEG's turn is known to every reader; that of other formats is not.
        if kind == "JPEG" or (kind in _AS_IT_IS and turn == 1 and artwork.pages == 1):
            shutil.copyfile(path, target)
            return
        picture.load()
        profile = picture.info.get("icc_profile")
        still = upright(picture, turn)
        if still.mode not in _PNG_MODES:
            still, profile = to_srgb(flattened(still), profile), None
        still.save(target, "PNG", icc_profile=profile, compress_level=1)
