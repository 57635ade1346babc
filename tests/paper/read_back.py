"""PDF read back by others than the typesetter: sizes, words and pictures by PDFium, files by qpdf and Poppler."""

import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import pypdfium2
import pypdfium2.raw as pdfium
from PIL import Image

from tests.conftest import lacking

MM_PER_POINT = 25.4 / 72


@dataclass(frozen=True)
class Placed:
    """A picture on a page, in mm from the upper left corner."""

    x: float
    y: float
    width: float
    height: float


@contextmanager
def opened(pdf: bytes | Path) -> Iterator[pypdfium2.PdfDocument]:
    document = pypdfium2.PdfDocument(pdf)
    try:
        yield document
    finally:
        document.close()


def page_sizes(pdf: bytes | Path) -> list[tuple[float, float]]:
    """Width and height of each page in mm."""
    with opened(pdf) as document:
        return [tuple(side * MM_PER_POINT for side in page.get_size()) for page in document]  # type: ignore[misc]


def words(pdf: bytes | Path) -> list[str]:
    """The text of each page, in the order it is drawn."""
    with opened(pdf) as document:
        return [" ".join(page.get_textpage().get_text_bounded().split()) for page in document]


def word_place(pdf: bytes | Path, page: int, word: str) -> tuple[float, float]:
    """Where a word's first letter is found, in mm from the upper left corner."""
    with opened(pdf) as document:
        shown = document[page]
        text = shown.get_textpage()
        found = text.search(word).get_next()
        assert found is not None, f"{word} is not on page {page + 1}"
        left, _, _, top = text.get_charbox(found[0])
        return left * MM_PER_POINT, (shown.get_height() - top) * MM_PER_POINT


def pictures(pdf: bytes | Path, page: int = 0) -> list[Placed]:
    """Every raster picture of a page, from the top down, then from the left."""
    with opened(pdf) as document:
        shown = document[page]
        height = shown.get_height()
        found = []
        for each in shown.get_objects(filter=[pdfium.FPDF_PAGEOBJ_IMAGE]):
            left, bottom, right, top = each.get_bounds()
            box = (left, height - top, right - left, top - bottom)
            found.append(Placed(*(side * MM_PER_POINT for side in box)))
        return sorted(found, key=lambda each: (round(each.y, 2), round(each.x, 2)))


def drawn(pdf: bytes | Path, page: int = 0, ppi: int = 150) -> Image.Image:
    """The page as a picture."""
    with opened(pdf) as document:
        return document[page].render(scale=ppi / 72).to_pil().convert("RGB")


def cut(picture: Image.Image, place: Placed, ppi: int = 150) -> Image.Image:
    """A part of a drawn page."""
    x, y, right, foot = (
        round(side / 25.4 * ppi) for side in (place.x, place.y, place.x + place.width, place.y + place.height)
    )
    return picture.crop((x, y, right, foot))


def tool(name: str, *arguments: str | Path) -> str:
    """What a program of the machine says; the test skips where there is none."""
    found = shutil.which(name)
    if found is None:
        lacking(f"no {name} on this machine", "install qpdf and poppler-utils")
    done = subprocess.run([found, *arguments], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def check_file(pdf: bytes, folder: Path) -> None:
    """Sound by qpdf, every font in it by Poppler."""
    path = folder / "checked.pdf"
    path.write_bytes(pdf)
    tool("qpdf", "--check", path)
    rows = tool("pdffonts", path).splitlines()[2:]
    assert rows
    for row in rows:
        embedded, subset = row.split()[-5:-3]
        assert (embedded, subset) == ("yes", "yes"), row
