"""The maker's design files: what they are, how much ink they ask for, and what they look like.

    read_artwork(path) -> ArtworkFile             header only, for PDF and SVG their size
    coverage(path) -> Fraction                    decodes it whole
    plan_preview(artwork) -> PictureSet           arithmetic only, as for a photo
    make_preview(path, picture_set, folder)       every file of the set

Pixels are read as photos are. Drawings (SVG, PDF) are drawn in a process of their own, so that one that brings its
reader down, or takes for ever, brings nothing else down.
"""

from __future__ import annotations

from maker_site.media.artwork.file import ArtworkFile, ArtworkFormat
from maker_site.media.artwork.inking import coverage
from maker_site.media.artwork.preview import make_preview, plan_preview
from maker_site.media.artwork.reading import UnreadArtwork, read_artwork

__all__ = ["ArtworkFile", "ArtworkFormat", "UnreadArtwork", "coverage", "make_preview", "plan_preview", "read_artwork"]
