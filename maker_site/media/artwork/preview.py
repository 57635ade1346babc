"""Web pictures of artwork, for the workshop copy only. Inner module."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from maker_site.media.artwork.planning import DRAWN_PX
from maker_site.media.artwork.rastering import drawn_as_png
from maker_site.media.artwork.reading import drawing_kind
from maker_site.media.deriving import make
from maker_site.media.pictures import PictureSet
from maker_site.media.probing import content_hash
from maker_site.media.problems import PictureProblem


def make_preview(path: Path, picture_set: PictureSet, folder: Path) -> tuple[Path, ...]:
    """Make every file of the set into `folder`, as `media.make` does for a photo; clear parts are laid on white.

    Raises `PictureProblem`, also where the file is not the one that was planned for.
    """
    kind = drawing_kind(path)
    if kind is None:
        return make(path, picture_set, folder)
    if content_hash(path) != picture_set.digest:
        raise PictureProblem(path, "the file was changed while the site was being made: make it again")
    with drawn_as_png(path, kind, DRAWN_PX) as png:
        return make(png, replace(picture_set, digest=content_hash(png)), folder)
