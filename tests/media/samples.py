"""Pictures drawn for the tests, and readers of the results that are not the code under test."""

import struct
import zlib
from collections.abc import Iterator
from pathlib import Path

import numpy as np
from PIL import Image

from maker_site.media import PictureSet, make, plan, probe

Colour = tuple[int, int, int]

# Six colours far apart, so that no compression turns one into another.
FIGURE: dict[str, Colour] = {
    "1": (220, 30, 30),
    "2": (30, 190, 30),
    "3": (30, 30, 220),
    "4": (240, 240, 240),
    "5": (20, 20, 20),
    "6": (230, 210, 30),
}
BLOCK = 80  # pixels a side: far more than a block of any codec used


def figure(rows: str = "123/456") -> Image.Image:
    """Draw large flat squares, a row for each part between slashes."""
    names = rows.split("/")
    picture = Image.new("RGB", (BLOCK * len(names[0]), BLOCK * len(names)))
    for row, line in enumerate(names):
        for column, name in enumerate(line):
            picture.paste(FIGURE[name], (column * BLOCK, row * BLOCK, (column + 1) * BLOCK, (row + 1) * BLOCK))
    return picture


def figure_seen(picture: Image.Image) -> str:
    """Read the squares of a picture back as text."""
    rows = []
    for y in range(BLOCK // 2, picture.height, BLOCK):
        row = ""
        for x in range(BLOCK // 2, picture.width, BLOCK):
            met = np.array(picture.convert("RGB").getpixel((x, y)), float)
            row += min(FIGURE, key=lambda name: float(np.abs(met - FIGURE[name]).sum()))
        rows.append(row)
    return "/".join(rows)


def derive(path: Path, folder: Path) -> tuple[PictureSet, list[Image.Image]]:
    """Run the three steps and read every file of the set, in the set's order."""
    folder.mkdir(exist_ok=True)
    wanted = plan(probe(path))
    make(path, wanted, folder)
    pictures = []
    for one in wanted.all:
        with Image.open(folder / one.name) as picture:
            picture.load()
            pictures.append(picture)
    return wanted, pictures


def middle(picture: Image.Image) -> np.ndarray:
    """Give the mean colour of the middle of a picture."""
    width, height = picture.size
    box = (width // 3, height // 3, max(width // 3 + 1, width * 2 // 3), max(height // 3 + 1, height * 2 // 3))
    return np.asarray(picture.convert("RGB").crop(box), float).mean(axis=(0, 1))


def png(width: int, height: int, depth: int, colour_type: int, rows: bytes) -> bytes:
    """Build a PNG (ISO/IEC 15948) by hand; `rows` are unfiltered and may be too few."""

    def chunk(name: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))

    header = struct.pack(">IIBBBBB", width, height, depth, colour_type, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")


def icc_profile(
    red: list[float], green: list[float], blue: list[float], gamma_u8f8: int, white: list[float] | None = None
) -> bytes:
    """Build a matrix and curve profile (ICC.1, version 2.1) from D50 colorants and a u8Fixed8 gamma.

    With `white`, the measured white point of the medium, it is a scanner's: a display's is D50 by definition.
    """

    def s15(values: list[float]) -> bytes:
        return b"".join(struct.pack(">i", round(value * 65536)) for value in values)

    curve = b"curv\0\0\0\0" + struct.pack(">IH", 1, gamma_u8f8) + b"\0\0"
    bodies = {
        b"desc": b"desc\0\0\0\0" + struct.pack(">I", 5) + b"test\0" + bytes(78) + b"\0",
        b"cprt": b"text\0\0\0\0none\0\0\0\0",
        b"wtpt": b"XYZ \0\0\0\0" + s15(white or [0.9642, 1.0, 0.8249]),
        b"rXYZ": b"XYZ \0\0\0\0" + s15(red),
        b"gXYZ": b"XYZ \0\0\0\0" + s15(green),
        b"bXYZ": b"XYZ \0\0\0\0" + s15(blue),
        b"rTRC": curve,
        b"gTRC": curve,
        b"bTRC": curve,
    }
    at = 128 + 4 + 12 * len(bodies)
    table, data = struct.pack(">I", len(bodies)), b""
    for name, body in bodies.items():
        padded = body + bytes(-len(body) % 4)
        table += name + struct.pack(">II", at + len(data), len(body))
        data += padded
    header = struct.pack(
        ">I4sI4s4s4s", at + len(data), b"none", 0x02100000, b"scnr" if white else b"mntr", b"RGB ", b"XYZ "
    )
    header += bytes(12) + b"acsp" + bytes(28) + s15([0.9642, 1.0, 0.8249])
    return header.ljust(128, b"\0") + table + data


def jpeg_segments(data: bytes) -> list[int]:
    """List the markers of a JPEG (ISO/IEC 10918-1, annex B), the entropy-coded parts skipped."""
    markers, at = [], 2
    assert data[:2] == b"\xff\xd8"
    while at < len(data):
        if data[at] != 0xFF or data[at + 1] in {0x00, 0xFF}:
            at += 1
            continue
        marker = data[at + 1]
        at += 2
        if 0xD0 <= marker <= 0xD7:  # restart, within the coded part
            continue
        markers.append(marker)
        if marker == 0xD9:
            assert at == len(data), "something stands after the end of the picture"
            break
        at += struct.unpack(">H", data[at : at + 2])[0]
    return markers


_HOLDERS = {b"meta": 4, b"iprp": 0, b"ipco": 0, b"iinf": 6}  # boxes that hold boxes: bytes before the first of them


def avif_boxes(data: bytes) -> Iterator[tuple[bytes, bytes]]:
    """Give type and body of every box of a still AVIF (ISO/IEC 14496-12), those within boxes too."""
    at = 0
    while at < len(data):
        size = struct.unpack(">I", data[at : at + 4])[0]
        name, body = data[at + 4 : at + 8], data[at + 8 : at + size]
        yield name, body
        if name in _HOLDERS:
            yield from avif_boxes(body[_HOLDERS[name] :])
        at += size
