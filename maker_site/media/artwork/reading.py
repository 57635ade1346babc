"""Tell what a design file is. Inner module."""

from __future__ import annotations

import os
from pathlib import Path

from maker_site.language import marked
from maker_site.media.artwork.file import UNTAGGED, ArtworkFile, Note, UnreadArtwork
from maker_site.media.artwork.pdf import pdf_facts
from maker_site.media.artwork.pixels import pixel_facts
from maker_site.media.artwork.svg import checked_svg
from maker_site.media.kinds import LOOK_AT, kind_of, other_kind
from maker_site.media.opening import MAX_PIXELS
from maker_site.media.probing import content_hash
from maker_site.media.problems import PictureProblem

READ_ARTWORK = "PNG, JPEG, TIFF, WebP, HEIC, SVG or PDF"
"""The formats of artwork, as shown to the maker."""
LARGEST_DRAWING = 64 * 1024 * 1024
"""Bytes above which an SVG or PDF is refused."""


def read_artwork(path: Path, *, max_pixels: int = MAX_PIXELS) -> ArtworkFile:
    """Read format, size, colour mode, profile, transparency and content hash of the design file at `path`.

    PNG, JPEG, TIFF, WebP, HEIC, AVIF and GIF by their header; SVG by its text; PDF by its first page's crop box, else
    media box. Raises `PictureProblem`, for a sound design file of another kind `UnreadArtwork`.
    """
    kind = drawing_kind(path)
    if kind is None:
        _refuse_others(path)
        return pixel_facts(path, max_pixels=max_pixels)
    size = path.stat().st_size
    if size > LARGEST_DRAWING:
        limit = LARGEST_DRAWING // 1024 // 1024
        raise PictureProblem(path, f"the drawing is {size / 1024 / 1024:,.0f} MB, and the limit is {limit} MB")
    digest = content_hash(path)
    if kind == "SVG":
        svg = checked_svg(path)
        return ArtworkFile(
            "SVG",
            None,
            svg.size_mm,
            "RGB",
            "sRGB",
            transparency=True,
            pages=1,
            digest=digest,
            bytes=size,
            notes=svg.notes,
        )
    pdf = pdf_facts(path)
    notes = (Note("pages", pdf.pages),) if pdf.pages > 1 else ()
    return ArtworkFile(
        "PDF",
        None,
        pdf.size_mm,
        marked("colours of each part"),
        UNTAGGED,
        transparency=True,
        pages=pdf.pages,
        digest=digest,
        bytes=size,
        notes=notes,
    )


def _refuse_others(path: Path) -> None:
    """Raise `UnreadArtwork` for a design file of a kind that is known and not looked into."""
    start = _start(path)
    other = other_kind(start)
    if start and not kind_of(start) and other not in (None, "text", "a film"):
        sentence = f"this is {other}, which is not looked into: save a copy as {READ_ARTWORK} to have it checked"
        raise UnreadArtwork(path, sentence)


def drawing_kind(path: Path) -> str | None:
    """Return SVG or PDF for a drawing by its first bytes, None for anything else."""
    start = _start(path)
    if kind_of(start):
        return None
    if b"%PDF-" in start:  # ISO 32000-1, annex H: other bytes may stand before it
        return "PDF"
    markup = start.lstrip(b"\xef\xbb\xbf\xff\xfe\x00 \t\r\n").startswith(b"<")
    named = os.fspath(path).lower().endswith(".svg")
    return "SVG" if markup and (named or b"<svg" in start.replace(b"\0", b"")) else None


def _start(path: Path) -> bytes:
    try:
        with path.open("rb") as stream:
            return stream.read(LOOK_AT)
    except OSError as error:
        raise PictureProblem(path, f"the file can't be read: {error.strerror}") from error
