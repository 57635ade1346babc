"""QR codes read back by a reader that is not ours (ZXing)."""

from dataclasses import dataclass

import zxingcpp
from PIL import Image
from playwright.sync_api import Page


@dataclass(frozen=True)
class Code:
    """A code met in a picture."""

    text: str
    side_px: int
    """Its side in points of the picture."""


def codes_in(picture: Image.Image) -> list[Code]:
    """Read the QR codes, dark on light only, as ISO/IEC 18004 and the plainest phone want them."""
    found = zxingcpp.read_barcodes(
        picture.convert("L"),
        formats=zxingcpp.BarcodeFormat.QRCode,
        try_rotate=False,
        try_invert=False,
    )
    return [Code(code.text, code.position.top_right.x - code.position.top_left.x) for code in found]


def addresses_stated(page: Page) -> set[str]:
    """Gather the addresses that the page itself states: in its links and its data attributes."""
    found: list[str] = page.evaluate(
        """() => [...document.querySelectorAll('*')].flatMap((element) => [
            ...(element instanceof HTMLAnchorElement ? [element.href] : []),
            ...Object.values(element.dataset || {}),
        ])"""
    )
    return set(found)
