"""The pictures that are drawn for the public copy: the shop's sign, and what a shared link is shown with."""

from __future__ import annotations

from markupsafe import escape

from maker_site.media.social import ICON_SIZE, Sign
from maker_site.pages.marks import standing_alone, swatch
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Drawn, Text
from maker_site.records import Project

_INK = (
    "<style>.m-ground{fill:#faf7f0}.m-outer{fill:none}.m-hatch,.m-speck{fill:none;stroke:#1f1d1a;stroke-width:.9}"
    ".m-speck{stroke-width:1.9;stroke-linecap:round}</style>"
)
_SMALL_WORDS = {"the", "a", "an", "and", "of", "at", "&"}


def initials(name: str) -> str:
    """Return one or two letters of a name: of its first two words that say something."""
    words = [word for word in name.split() if word[0].isalnum()]
    telling = [word for word in words if word.lower() not in _SMALL_WORDS] or words
    return "".join(word[0] for word in telling[:2]).upper()


def icon(book: Notebook) -> Drawn:
    """Return the shop's sign as a picture."""
    sign = Sign("icon", initials(book.workshop.shop.name), "", _hatch(book.shown_material, 96, 32), _language(book))
    return Drawn(f"icons/{sign.name}", sign)


def icon_drawing(book: Notebook) -> Text:
    """Return the shop's sign as an SVG."""
    width, height = ICON_SIZE
    letters = escape(initials(book.workshop.shop.name))
    hatch = _hatch(book.shown_material, 96, 32)
    size = 98 if len(initials(book.workshop.shop.name)) > 1 else 124
    drawn = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}">'
        f'<rect width="{width}" height="{height}" fill="#faf7f0"/>'
        f'<g transform="translate(0 {height - 64}) scale(2)">{hatch}</g>'
        f'<text x="{width / 2}" y="92" fill="#1f1d1a" font-family="Charter, Georgia, serif" font-weight="700" '
        f'font-size="{size}" text-anchor="middle">{letters}</text></svg>\n'
    )
    return Text("icons/shop.svg", drawn)


def social_of_project(book: Notebook, project: Project) -> Drawn:
    """Return the picture of a tutorial: its cover, or its material's hatching."""
    substrate = book.workshop.blanks[project.blank].substrate
    for photo in project.photos:
        path = f"projects/{project.id}/{photo.file}"
        if photo.share and photo.text and path in book.pictures:
            return _social(book, project.title, substrate, path)
    return _social(book, project.title, substrate, None)


def social_of_page(book: Notebook, title: str) -> Drawn:
    """Return the picture of a page that belongs to no project."""
    return _social(book, title, book.shown_material, None)


def _social(book: Notebook, title: str, substrate: str, cover: str | None) -> Drawn:
    digest = book.pictures[cover].digest if cover else ""
    shop = book.workshop.shop.name
    under = shop if title != shop else ""
    sign = Sign("social", title, under, _hatch(substrate, 260, 210), _language(book), cover, digest)
    return Drawn(f"social/{sign.name}", sign)


def _hatch(substrate: str, width: int, height: int) -> str:
    """Return a hatching as an SVG that needs no style sheet."""
    drawn = standing_alone(swatch(substrate, width=width, height=height))
    start, mark, rest = drawn.partition(">")
    return f"{start}{mark}{_INK}{rest}"


def _language(book: Notebook) -> str:
    return book.language.tag
