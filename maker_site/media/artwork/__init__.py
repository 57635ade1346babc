"""The maker's design files: what they are, how much ink they ask for, and what they look like.

    read_artwork(path) -> ArtworkFile             header only, for PDF and SVG their size
    coverage(path) -> Fraction                    decodes it whole
    plan_preview(artwork) -> PictureSet           arithmetic only, as for a photo
    make_preview(path, picture_set, folder)       every file of the set

Pixels are read as photos are. Drawings (SVG, PDF) are drawn in a process of their own, so that one that brings its
reader down, or takes for ever, brings nothing else down. What reads and draws is imported when a file is looked at.
"""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from maker_site.media.artwork.file import ArtworkFile, ArtworkFormat, UnreadArtwork
from maker_site.media.artwork.planning import plan_preview
from maker_site.media.pictures import PictureSet

__all__ = ["ArtworkFile", "ArtworkFormat", "UnreadArtwork", "coverage", "make_preview", "plan_preview", "read_artwork"]


def read_artwork(path: Path) -> ArtworkFile:
    """Tell what the design file at `path` is; see `reading`. Raises `PictureProblem` or `UnreadArtwork`."""
    from maker_site.media.artwork import reading

    return reading.read_artwork(path)


def coverage(path: Path) -> Fraction:
    """Return the share of the paper that is covered with ink; see `inking`. Raises `PictureProblem`."""
    from maker_site.media.artwork import inking

    return inking.coverage(path)


def make_preview(path: Path, picture_set: PictureSet, folder: Path) -> tuple[Path, ...]:
    """Make every file of the set into `folder`; see `preview`. Raises `PictureProblem`, OSError."""
    from maker_site.media.artwork import preview

    return preview.make_preview(path, picture_set, folder)
