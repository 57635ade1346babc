"""The drawn pictures of the public copy: those that are not there yet are drawn."""

from __future__ import annotations

import tempfile
from collections.abc import Callable, Iterable
from functools import partial
from pathlib import Path

from maker_site.media.social import draw
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Drawn
from maker_site.writer.gather import side_by_side
from maker_site.writer.printing import make_picture
from maker_site.writer.site_folder import SiteFolder

COPY = "public"


def write_signs(
    site: SiteFolder, book: Notebook, signs: Iterable[Drawn], told: Callable[[str, int, int], None]
) -> None:
    """Put every drawn picture; one whose name is there is right."""
    missing = [each for each in signs if not site.keep(f"{COPY}/{each.address}")]
    for done, _ in enumerate(side_by_side(partial(put_sign, site, book), missing), 1):
        told("Drawing pictures for shared links", done, len(missing))


def put_sign(site: SiteFolder, book: Notebook, drawn: Drawn) -> None:
    """Put a drawn picture, unless it is there."""
    address, sign = f"{COPY}/{drawn.address}", drawn.sign
    if site.keep(address):
        return
    if sign.cover is None:
        site.put(address, draw(sign, None))
        return
    with tempfile.TemporaryDirectory() as folder:
        cover = make_picture(book, book.pictures[sign.cover].fallback.name, sign.cover, Path(folder))
        site.put(address, draw(sign, cover))
