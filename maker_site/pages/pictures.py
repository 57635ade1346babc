"""Planned pictures as views."""

from __future__ import annotations

from collections.abc import Mapping

from maker_site.media import PictureSet
from maker_site.pages.addresses import PICTURES
from maker_site.pages.parts import Picture, Source


def picture(planned: PictureSet, text: str, caption: str | None = None) -> Picture:
    """Return a planned picture as a view, with the words that stand for it."""
    return Picture(
        text,
        caption,
        planned.width,
        planned.height,
        tuple(Source(f"{PICTURES}/{each.name}", each.width) for each in planned.modern),
        planned.modern[-1].media_type,
        Source(f"{PICTURES}/{planned.fallback.name}", planned.fallback.width),
    )


def picture_at(pictures: Mapping[str, PictureSet], path: str, text: str, caption: str | None = None) -> Picture | None:
    """Return the picture of a path from the content folder, or None where none was planned."""
    planned = pictures.get(path)
    return picture(planned, text, caption) if planned else None
