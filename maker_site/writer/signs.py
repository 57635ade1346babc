"""The drawn pictures of the public copy: those that are not there yet are drawn."""

from __future__ import annotations

import tempfile
from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import NamedTuple

from maker_site.media import PictureSet, make
from maker_site.media.social import Sign, draw
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Drawn
from maker_site.writer.gather import side_by_side
from maker_site.writer.site_folder import SiteFolder

COPY = "public"


class SignToDraw(NamedTuple):
    """A picture that is to be drawn, in whichever process."""

    address: str
    """With its copy."""
    sign: Sign
    cover: tuple[Path, PictureSet] | None
    """Its photo, and what pictures of that are planned."""


def write_signs(
    site: SiteFolder, book: Notebook, signs: Iterable[Drawn], told: Callable[[str, int, int], None]
) -> None:
    """Put every drawn picture; one whose name is there is right."""
    missing = [each for each in signs if not site.keep(f"{COPY}/{each.address}")]
    for done, _ in enumerate(side_by_side(partial(put_sign, site, book), missing), 1):
        told("Drawing pictures for shared links", done, len(missing))


def put_sign(site: SiteFolder, book: Notebook, drawn: Drawn) -> None:
    """Put a drawn picture, unless it is there."""
    asked = sign_to_draw(site, book, drawn)
    if asked is not None:
        site.put(asked.address, draw_sign(asked))


def sign_to_draw(site: SiteFolder, book: Notebook, drawn: Drawn) -> SignToDraw | None:
    """Return what it takes to draw a picture; None where it is there."""
    address, cover = f"{COPY}/{drawn.address}", drawn.sign.cover
    if site.keep(address):
        return None
    planned = None if cover is None else (book.workshop.root / cover, book.pictures[cover])
    return SignToDraw(address, drawn.sign, planned)


def draw_sign(asked: SignToDraw) -> bytes:
    """Return a drawn picture. Raises `PictureProblem`."""
    if asked.cover is None:
        return draw(asked.sign, None)
    photo, planned = asked.cover
    with tempfile.TemporaryDirectory() as folder:
        make(photo, replace(planned, modern=(planned.fallback,)), Path(folder))
        return draw(asked.sign, Path(folder) / planned.fallback.name)
