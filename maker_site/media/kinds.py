"""Tell what a file holds from its first bytes, whatever its name says. Inner module.

The file signatures are those of the formats' own standards (from memory): ISO/IEC 10918-1, ISO/IEC 15948,
RFC 9649, TIFF 6.0, ISO/IEC 14496-12 with 23008-12 (HEIF) and the AVIF specification, GIF89a.
"""

from __future__ import annotations

from typing import Literal

Format = Literal["JPEG", "PNG", "WebP", "TIFF", "HEIC", "AVIF", "GIF"]
"""A picture format that is read."""

LOOK_AT = 1024
"""How many bytes from the start are looked at."""

_SIGNATURES: tuple[tuple[bytes, Format], ...] = (
    (b"\xff\xd8\xff", "JPEG"),
    (b"\x89PNG\r\n\x1a\n", "PNG"),
    (b"GIF87a", "GIF"),
    (b"GIF89a", "GIF"),
    (b"II*\x00", "TIFF"),
    (b"MM\x00*", "TIFF"),
    (b"II+\x00", "TIFF"),
    (b"MM\x00+", "TIFF"),
)
_HEIF_BRANDS = {b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"mif1", b"msf1"}
_AVIF_BRANDS = {b"avif", b"avis"}

_UNREAD: tuple[tuple[bytes, str], ...] = (
    (b"%PDF", "a PDF drawing"),
    (b"%!PS", "a PostScript drawing"),
    (b"BM", "a BMP picture"),
    (b"8BPS", "a layered design file"),
    (b"\x00\x00\x00\x0cjP  ", "a JPEG 2000 picture"),
    (b"\x00\x00\x00\x0cJXL ", "a JPEG XL picture"),
    (b"\xff\x0a", "a JPEG XL picture"),
    (b"PK\x03\x04", "a zip archive or office document"),
    (b"\x1f\x8b", "a packed file"),
    (b"FUJIFILM", "an unfinished camera file (raw)"),
)


def kind_of(start: bytes) -> Format | None:
    """Give the format that the first `LOOK_AT` bytes show, or None where it is none of those read."""
    if _is_raw(start):
        return None
    for signature, name in _SIGNATURES:
        if start.startswith(signature):
            return name
    if start[:4] == b"RIFF" and start[8:12] == b"WEBP":
        return "WebP"
    brands = _brands(start)
    if brands & _AVIF_BRANDS:
        return "AVIF"
    return "HEIC" if brands & _HEIF_BRANDS else None


def other_kind(start: bytes) -> str | None:
    """Name in plain words what a file is that is not read, or None where that is not known."""
    if _brands(start):
        return "a film"
    for signature, words in _UNREAD:
        if start.startswith(signature):
            return words
    if _is_raw(start):
        return "an unfinished camera file (raw)"
    if b"<svg" in start:
        return "an SVG drawing"
    return "text" if _is_text(start) else None


def _is_raw(start: bytes) -> bool:
    """Say whether a TIFF is one camera maker's raw file, which carries its letters after the header."""
    return start[:4] in {b"II*\x00", b"MM\x00*"} and start[8:10] == b"CR"


def _brands(start: bytes) -> set[bytes]:
    """Give the brands of an ISO base media file, major and compatible; none where it is no such file."""
    if start[4:8] != b"ftyp":
        return set()
    box = start[: int.from_bytes(start[:4], "big")]
    return {box[8:12]} | {box[at : at + 4] for at in range(16, len(box) - 3, 4)}


def _is_text(start: bytes) -> bool:
    try:
        words = start.decode("utf-8")
    except UnicodeDecodeError as error:
        if error.start < len(start) - 3:  # not merely a letter cut in half at the end
            return False
        words = start[: error.start].decode("utf-8")
    return all(letter.isprintable() or letter in "\t\r\n\f\ufeff" for letter in words)
