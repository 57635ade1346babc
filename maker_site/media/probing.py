"""Know a picture by its header: enough to write the pages that show it, nothing decoded. Inner module."""

from __future__ import annotations

import hashlib
import os
from io import BufferedReader
from pathlib import Path

from maker_site.media.opening import MAX_PIXELS, opened, orientation, upright_size
from maker_site.media.pictures import Probe


def probe(path: Path, *, max_pixels: int = MAX_PIXELS) -> Probe:
    """Read format, upright size, content hash and byte size of the picture at `path`.

    The header says nothing of damage further on: `sound` does. Raises `PictureProblem`.
    """
    with opened(path, max_pixels=max_pixels) as (kind, picture, stream):
        width, height = upright_size(picture.size, orientation(kind, picture))
        stream.seek(0)
        return Probe(kind, width, height, _digest(stream), os.fstat(stream.fileno()).st_size)


def content_hash(path: Path) -> str:
    """Give the same hash of the file's bytes as `probe` does."""
    with path.open("rb") as stream:
        return _digest(stream)


def _digest(stream: BufferedReader) -> str:
    return hashlib.file_digest(stream, _blake2b).hexdigest()


def _blake2b() -> hashlib.blake2b:
    return hashlib.blake2b(digest_size=32)
