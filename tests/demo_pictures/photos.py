"""Photographs as a camera would leave them: stored turned, with its place, its make and a private remark inside.

The camera (a "Hollow Pin", model "Box One") is invented, and the place lies in the open sea. The site must
turn such pictures upright and let none of these words reach a reader.
"""

from __future__ import annotations

from dataclasses import dataclass
from html import escape
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from pillow_heif import register_heif_opener

TURNED_TO_STORE = {3: Image.Transpose.ROTATE_180, 6: Image.Transpose.ROTATE_90, 8: Image.Transpose.ROTATE_270}
"""How the upright picture is turned before it is stored (EXIF 2.32, tag 0x0112): a reader turns it back."""

MAKE, MODEL, SOFTWARE = 0x010F, 0x0110, 0x0131
ORIENTATION, TAKEN = 0x0112, 0x9003
EXIF_PART, GPS_PART, USER_COMMENT = 0x8769, 0x8825, 0x9286


@dataclass(frozen=True)
class Inside:
    """What a photograph carries besides its pixels."""

    taken: str
    """Date and time as EXIF writes them."""
    orientation: int = 1
    place: bool = False
    remark: str = ""


CARRIED: dict[str, Inside] = {
    "projects/allotment-tally-coasters/photos/single.jpg": Inside(
        "2026:04:18 16:42:10", 6, place=True, remark="For plot 14, still owes for two sets"
    ),
    "projects/plot-holder-mug/photos/front.jpg": Inside(
        "2026:05:02 10:05:44", 8, place=True, remark="Not for showing: thumb mark on the foot"
    ),
    "projects/crust-and-crumb-tote/photos/tote.jpg": Inside(
        "2026:05:23 14:31:02", 6, place=True, remark="Key to the shed is under the blue pot"
    ),
    "projects/bakers-apron/photos/apron.jpg": Inside(
        "2026:06:06 09:12:37", 8, place=True, remark="Ask the baker for the invoice address"
    ),
    "projects/weir-mouse-mat/photos/mat.jpg": Inside(
        "2026:03:14 17:20:55", 3, place=True, remark="Second try, the first one went yellow"
    ),
    "projects/regatta-mug/photos/mug.heic": Inside(
        "2026:06:20 19:48:03", place=True, remark="Order 31, ring before delivery"
    ),
    "projects/honey-show-plate/photos/plate.jpg": Inside(
        "2026:08:01 11:00:00", place=True, remark="Winner not announced yet"
    ),
    "projects/fair-bunting-tea-towel/photos/towel.jpg": Inside("2026:06:27 12:14:19", 6, remark=""),
}
DEFAULT = Inside("2026:05:09 12:00:00")


def _exif(inside: Inside) -> Image.Exif:
    exif = Image.Exif()
    exif[MAKE], exif[MODEL], exif[SOFTWARE] = "Hollow Pin", "Box One", "Box One 1.0"
    exif[ORIENTATION] = inside.orientation
    part = exif.get_ifd(EXIF_PART)
    part[TAKEN] = inside.taken
    if inside.remark:
        part[USER_COMMENT] = b"ASCII\0\0\0" + inside.remark.encode("ascii")
    if inside.place:
        exif.get_ifd(GPS_PART).update({1: "N", 2: (47.0, 31.0, 12.0), 3: "W", 4: (12.0, 14.0, 48.0)})
    return exif


def _xmp(inside: Inside) -> bytes:
    """An XMP packet (ISO 16684-1) with the remark as its description."""
    return (
        '<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?><x:xmpmeta xmlns:x="adobe:ns:meta/">'
        '<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">'
        '<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/">'
        f'<dc:description><rdf:Alt><rdf:li xml:lang="x-default">{escape(inside.remark)}</rdf:li></rdf:Alt>'
        "</dc:description>"
        '</rdf:Description></rdf:RDF></x:xmpmeta><?xpacket end="w"?>'
    ).encode()


def write_photo(pixels: NDArray[np.uint8], content: Path, file: str, *, quality: int = 82) -> None:
    """Store a picture below the content folder, by the ending of its name, with what its camera puts inside."""
    inside = CARRIED.get(file, DEFAULT)
    picture = Image.fromarray(pixels)
    if inside.orientation in TURNED_TO_STORE:
        picture = picture.transpose(TURNED_TO_STORE[inside.orientation])
    path = content / file
    path.parent.mkdir(parents=True, exist_ok=True)
    more = {"xmp": _xmp(inside)} if inside.remark else {}
    if path.suffix == ".heic":
        register_heif_opener()
        picture.save(path, quality=68, exif=_exif(inside).tobytes(), **more)
    else:
        picture.save(
            path, quality=quality, optimize=True, progressive=True, subsampling="4:2:0", exif=_exif(inside), **more
        )
