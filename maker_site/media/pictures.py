"""The records passed between the steps: a picture as found, and the set to make of it. Inner module."""

from __future__ import annotations

from maker_site.frozen import frozen
from maker_site.media.kinds import Format
from maker_site.media.recipe import Recipe


@frozen
class Probe:
    """A picture file as its header describes it."""

    format: Format
    """What its bytes are, whatever its name ends in."""
    width: int
    """In pixels, upright: after the EXIF orientation."""
    height: int
    """In pixels, upright."""
    digest: str
    """BLAKE2b-256 of the file's bytes, in hexadecimal."""
    bytes: int
    """Length of the file."""

    @property
    def pixels(self) -> int:
        """How many pixels it has."""
        return self.width * self.height


@frozen
class Derivative:
    """One file to be made of a picture."""

    name: str
    """File name: hash of content and recipe, then the width. No word of the original's name."""
    width: int
    """In pixels, exactly."""
    height: int
    """In pixels, exactly."""
    media_type: str
    """As in a `type` attribute: image/avif or image/jpeg."""


@frozen
class PictureSet:
    """All files to be made of one picture."""

    digest: str
    """Content hash of the original, as in its probe."""
    width: int
    """Of the original, upright, in pixels."""
    height: int
    """Of the original, upright, in pixels."""
    modern: tuple[Derivative, ...]
    """AVIF, narrowest first; never empty."""
    fallback: Derivative
    """The one JPEG, for browsers that read no AVIF, for feeds and for cards shown by other programs."""
    recipe: Recipe
    """How they are made."""

    @property
    def all(self) -> tuple[Derivative, ...]:
        """Every file of the set."""
        return (*self.modern, self.fallback)
