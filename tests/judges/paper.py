"""A page printed to PDF by the browser, and the PDF read back by another program (PDFium)."""

import unicodedata
from dataclasses import dataclass

import numpy as np
import pypdfium2
from PIL import Image
from playwright.sync_api import Page

# Width and height in mm. A4 and A6: ISO 216. Letter: ANSI/ASME Y14.1, 8.5 x 11 in. 1 in is 25.4 mm.
A4 = (210.0, 297.0)
A6 = (105.0, 148.0)
LETTER = (215.9, 279.4)
FOUR_BY_SIX = (101.6, 152.4)

POINTS_PER_MM = 72 / 25.4


@dataclass(frozen=True)
class Sheet:
    """One printed side."""

    width_mm: float
    height_mm: float
    text: str
    """The text that lies on the sheet, in the PDF's order."""
    picture: Image.Image
    """The sheet as seen, in RGB at the resolution it was read with."""


def printed(page: Page, paper_mm: tuple[float, float], ppi: int = 72) -> list[Sheet]:
    """Print the page on this paper, whatever paper the page would like, and read the sheets back."""
    width, height = paper_mm
    return sheets(page.pdf(width=f"{width}mm", height=f"{height}mm", print_background=True), ppi)


def sheets(pdf: bytes, ppi: int = 72) -> list[Sheet]:
    """Read the sheets of a PDF."""
    found = []
    with pypdfium2.PdfDocument(pdf) as document:
        for side in document:
            width, height = side.get_size()
            text = side.get_textpage().get_text_bounded()
            picture = side.render(scale=ppi / 72).to_pil().convert("RGB")
            found.append(Sheet(width / POINTS_PER_MM, height / POINTS_PER_MM, text, picture))
    return found


def run_together(text: str) -> str:
    """Drop what a line break may change: spaces, hyphens, ligatures."""
    plain = unicodedata.normalize("NFKC", text)
    return "".join(sign for sign in plain if not sign.isspace() and sign not in "-\u00ad\u2010\ufffe\x02")


def text_to_print(page: Page) -> list[str]:
    """Give the words that the page shows on paper, in its order."""
    page.emulate_media(media="print")
    words: str = page.evaluate("() => document.body.innerText")
    page.emulate_media(media="null")
    return words.split()


def words_lost(words: list[str], on: list[Sheet]) -> list[str]:
    """List the words that no sheet carries, such as those cut off at the paper's edge."""
    text = run_together("".join(sheet.text for sheet in on))
    return [word for word in words if run_together(word) not in text]


def coloured_share(sheet: Sheet) -> float:
    """Give the share (0 to 1) of the sheet's points that are neither black, white nor a grey between them."""
    points = np.asarray(sheet.picture, dtype=np.int16)
    return float(((points.max(axis=2) - points.min(axis=2)) > 24).mean())


def split_items(page: Page, items: str, paper_mm: tuple[float, float]) -> list[str]:
    """List the items (a selector) that begin on one sheet and end on another.

    For the time of printing, two tiny marks that take no room stand at the top and the foot of each item; the
    PDF tells which sheet each fell on.
    Raises LookupError where the page has no such item, or where a mark is on no sheet.
    """
    names: list[str] = page.evaluate(
        """(items) => [...document.querySelectorAll(items)].map((item, n) => {
            if (getComputedStyle(item).position === 'static') item.style.position = 'relative';
            for (const [end, place] of [['a', 'top: 0; left: 0'], ['z', 'bottom: 0; left: 0']]) {
                const mark = document.createElement('span');
                mark.textContent = `q${n}q${end}q`;
                mark.className = 'judge-mark';
                mark.style = `position: absolute; ${place}; font: 1px/1px monospace; white-space: nowrap`;
                item.append(mark);
            }
            return item.innerText.trim().split('\\n')[0];
        })""",
        items,
    )
    if not names:
        raise LookupError(f"the page has no {items}")
    texts = [run_together(sheet.text) for sheet in printed(page, paper_mm)]
    page.evaluate("() => document.querySelectorAll('.judge-mark').forEach((mark) => mark.remove())")
    split = []
    for number, name in enumerate(names):
        first, last = (_sheet_of(f"q{number}q{end}q", texts) for end in "az")
        if first != last:
            split.append(f"{name}: begins on sheet {first + 1}, ends on sheet {last + 1}")
    return split


def _sheet_of(mark: str, texts: list[str]) -> int:
    for number, text in enumerate(texts):
        if mark in text:
            return number
    raise LookupError(f"{mark} is on no sheet")
