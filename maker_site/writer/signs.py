"""The drawn pictures of the public copy: those that are not there yet are drawn."""

from __future__ import annotations

import tempfile
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path

from maker_site.media.social import draw
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Drawn, Page, Text
from maker_site.writer.gather import side_by_side
from maker_site.writer.printing import make_picture
from maker_site.writer.site_folder import SiteFolder

COPY = "public"


def noting_signs(pages: Iterable[Page | Text | Drawn], signs: list[Drawn]) -> Iterator[Page | Text]:
    """Yield the pages as they come, and note the pictures that are to be drawn."""
    for page in pages:
        if isinstance(page, Drawn):
            signs.append(page)
        else:
            yield page


def write_signs(site: SiteFolder, book: Notebook, signs: list[Drawn], told: Callable[[str, int, int], None]) -> None:
    """Put every drawn picture; one whose name is there is right."""
    missing = [each for each in dict.fromkeys(signs) if not site.keep(f"{COPY}/{each.address}")]

    def work(each: Drawn) -> None:
        sign = each.sign
        if sign.cover is None:
            site.put(f"{COPY}/{each.address}", draw(sign, None))
            return
        with tempfile.TemporaryDirectory() as folder:
            cover = make_picture(book, book.pictures[sign.cover].fallback.name, sign.cover, Path(folder))
            site.put(f"{COPY}/{each.address}", draw(sign, cover))

    for done, _ in enumerate(side_by_side(work, missing), 1):
        told("Drawing pictures for shared links", done, len(missing))
