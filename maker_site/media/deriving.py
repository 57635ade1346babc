"""Make the derivatives of a picture: decode once, then each size from the next larger. Inner module."""

from __future__ import annotations

import os
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from PIL import Image

from maker_site.media.colour import flattened, to_srgb
from maker_site.media.memory import alone_if_large
from maker_site.media.opening import opened, orientation, upright_size
from maker_site.media.pictures import Derivative, PictureSet
from maker_site.media.probing import content_hash
from maker_site.media.problems import PictureProblem
from maker_site.media.recipe import Recipe

# JEITA CP-3451 (Exif 2.2), tag 274: which way the stored picture is turned to stand upright.
_TURNS = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,  # Pillow turns anticlockwise
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}


def make(path: Path, picture_set: PictureSet, folder: Path) -> tuple[Path, ...]:
    """Make every file of the set from the picture at `path` into `folder` (it must exist); give their paths.

    Upright, in sRGB, without any metadata. A file appears whole or not at all. Same bytes in, same bytes out.
    Raises `PictureProblem` on a broken picture or one other than planned for, OSError where writing fails.
    """
    with alone_if_large(picture_set.width * picture_set.height):
        current = _widest(path, picture_set)
    made = []
    for derivative in sorted(picture_set.all, key=lambda one: one.width, reverse=True):
        size = (derivative.width, derivative.height)
        if current.size != size:
            current = current.resize(size, Image.Resampling.LANCZOS)
        with _whole_or_not(folder / derivative.name) as unfinished:
            _write(current, derivative, picture_set.recipe, unfinished)
        made.append(folder / derivative.name)
    return tuple(made)


def upright(picture: Image.Image, turn: int) -> Image.Image:
    """Return a decoded picture turned by an EXIF orientation, so that it stands upright."""
    return picture.transpose(_TURNS[turn]) if turn in _TURNS else picture


def _widest(path: Path, picture_set: PictureSet) -> Image.Image:
    """Decode the picture and bring it to the widest size of the set: upright, sRGB, no metadata."""
    widest = picture_set.modern[-1]
    with opened(path, max_pixels=picture_set.width * picture_set.height) as (kind, picture, _):
        if content_hash(path) != picture_set.digest:
            raise PictureProblem(path, "the file was changed while the site was being made: make it again")
        turn = orientation(kind, picture)
        stored = upright_size((widest.width, widest.height), turn)
        # JPEG only: decodes at a half, quarter or eighth that is not under the wanted size.
        picture.draft(None, stored)
        picture.load()
        profile = picture.info.get("icc_profile")
        current = upright(flattened(picture).resize(stored, Image.Resampling.LANCZOS), turn)
        current = to_srgb(current, profile)
        current.info = {}  # whatever stands here would be written into the derivatives
        return current


def _write(picture: Image.Image, derivative: Derivative, recipe: Recipe, target: Path) -> None:
    with target.open("wb") as stream:  # a real file: Pillow then lets other threads run while it encodes
        if derivative.media_type == "image/avif":
            picture.save(
                stream,
                "AVIF",
                quality=recipe.avif_quality,
                speed=recipe.avif_speed,
                subsampling="4:2:0",
                max_threads=1,  # the photos themselves are spread over the cores
                autotiling=False,
            )
        else:
            picture.save(
                stream,
                "JPEG",
                quality=recipe.jpeg_quality,
                subsampling="4:2:0",
                progressive=True,
                optimize=True,
            )


@contextmanager
def _whole_or_not(target: Path) -> Iterator[Path]:
    """Give a name beside `target` to write to: moved onto it when the block ends well, removed when not."""
    unfinished = target.with_name(f".{target.name}.{os.getpid()}-{threading.get_ident()}")
    try:
        yield unfinished
        unfinished.replace(target)
    finally:
        unfinished.unlink(missing_ok=True)
