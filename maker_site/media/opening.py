"""Open a picture so that its header is known and nothing is decoded yet. Inner module.

The format's own reader is called directly, not by trying all of them: a file can then be no other format
than its first bytes say, and the size is bounded here, by one limit and without a warning.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from contextlib import contextmanager
from importlib import import_module
from io import BufferedReader
from pathlib import Path

from PIL import Image, ImageFile

from maker_site.media.kinds import LOOK_AT, Format, kind_of, other_kind
from maker_site.media.problems import READ_FORMATS, PictureProblem
from maker_site.media.quiet import quiet_pictures

MAX_PIXELS = 200_000_000
"""The largest picture that is decoded, in pixels: above what today's phones give (200 megapixels)."""

# Imported when first met: the HEIC reader costs time that most shops never need.
_READERS: dict[Format, tuple[str, str]] = {
    "JPEG": ("PIL.JpegImagePlugin", "JpegImageFile"),
    "PNG": ("PIL.PngImagePlugin", "PngImageFile"),
    "WebP": ("PIL.WebPImagePlugin", "WebPImageFile"),
    "TIFF": ("PIL.TiffImagePlugin", "TiffImageFile"),
    "HEIC": ("pillow_heif", "HeifImageFile"),
    "AVIF": ("PIL.AvifImagePlugin", "AvifImageFile"),
    "GIF": ("PIL.GifImagePlugin", "GifImageFile"),
}
_DNG_VERSION = 50706  # Adobe DNG specification: the tag that every DNG file has in its first directory
_ORIENTATION = 274  # JEITA CP-3451 (Exif 2.2), table 3
_TURNED_BY_READER: frozenset[Format] = frozenset({"TIFF", "HEIC"})


@contextmanager
def opened(path: Path, *, max_pixels: int = MAX_PIXELS) -> Iterator[tuple[Format, ImageFile.ImageFile, BufferedReader]]:
    """Give format, undecoded picture and open file; any fault of the file in the block is a `PictureProblem`.

    Only reading belongs in the block: an error of writing would be taken for one of the picture.
    """
    with quiet_pictures():
        try:
            with path.open("rb") as stream:
                start = stream.read(LOOK_AT)
                kind = kind_of(start)
                if kind is None:
                    raise PictureProblem(path, _refusal(start))
                stream.seek(0)
                with _reader(kind)(stream, os.fspath(path)) as picture:
                    _refuse_raw(path, picture)
                    _refuse_large(path, picture.size, max_pixels)
                    yield kind, picture, stream
        except PictureProblem:
            raise
        except Exception as error:  # hostile bytes raise nearly every built-in error somewhere in the readers
            raise PictureProblem(path, _fault(error)) from error


def orientation(kind: Format, picture: Image.Image) -> int:
    """Give the EXIF orientation (1 to 8) that is still to be applied; 1 where none, or none that can be read.

    Call it before decoding. TIFF and HEIC are turned by their readers.
    """
    if kind in _TURNED_BY_READER:
        return 1
    try:
        # The base class's reading: PNG's own would decode the whole picture to look for a tag at its end.
        turn = Image.Image.getexif(picture).get(_ORIENTATION, 1)
    except Exception:  # damaged metadata is no reason to refuse a sound picture
        return 1
    return turn if isinstance(turn, int) and 1 <= turn <= 8 else 1


def upright_size(size: tuple[int, int], turn: int) -> tuple[int, int]:
    """Give width and height as seen: orientations 5 to 8 swap them. Its own inverse."""
    return (size[1], size[0]) if turn >= 5 else size


def _reader(kind: Format) -> type[ImageFile.ImageFile]:
    module, name = _READERS[kind]
    reader: type[ImageFile.ImageFile] = getattr(import_module(module), name)
    return reader


def _refusal(start: bytes) -> str:
    if not start:
        return "the file is empty (0 bytes): copy the photo again from the camera or phone"
    other = other_kind(start)
    if other is None:
        return f"this is not a picture, or not one of a kind that is read: save it as one of {READ_FORMATS}"
    if other in {"text", "a film"}:
        return f"this is {other}, not a picture, whatever its name says: put a photo here ({READ_FORMATS})"
    return f"this is {other}, which is not read as a photo: save it as one of {READ_FORMATS}"


def _refuse_raw(path: Path, picture: ImageFile.ImageFile) -> None:
    if _DNG_VERSION in getattr(picture, "tag_v2", ()):
        raise PictureProblem(
            path,
            f"this is an unfinished camera file (raw), which is not read: save it as one of {READ_FORMATS}",
        )


def _refuse_large(path: Path, size: tuple[int, int], max_pixels: int) -> None:
    width, height = size
    if width * height > max_pixels:
        raise PictureProblem(
            path,
            f"the picture is {width:,} x {height:,} pixels ({width * height / 1e6:,.1f} megapixels), "
            f"and the limit is {max_pixels / 1e6:,.1f} megapixels: save a smaller copy",
        )


def _fault(error: Exception) -> str:
    if isinstance(error, OSError) and error.errno is not None:
        return f"the file can't be read: {error.strerror}"
    if isinstance(error, Image.DecompressionBombError):
        return _too_many(error)
    if isinstance(error, MemoryError):
        return "the picture needs more memory than there is: save a smaller copy"
    words = str(error).strip().rstrip(".")
    if not any(letter.isalpha() for letter in words):
        words = type(error).__name__
    if "truncated" in words.lower():
        return f"the picture breaks off before its end ({words}): copy it again from the camera or phone"
    return f"the picture is broken ({words}): copy it again, or open it and save it as a new JPEG"


def _too_many(error: Exception) -> str:
    """Give the sentence for a size that the reader itself would not unpack, with the figures of its message."""
    figures = [f"{int(figure) / 1e6:,.1f} megapixels" for figure in re.findall(r"\d+", str(error))]
    met, limit = figures if len(figures) == 2 else ("too many pixels", "lower")
    return f"the picture has {met}, and the limit for pictures of this kind is {limit}: save a smaller copy"
