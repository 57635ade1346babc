"""A design file as it was found. Inner module."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from maker_site.frozen import frozen
from maker_site.language import say, say_n
from maker_site.media.kinds import Format
from maker_site.media.problems import PictureProblem

ArtworkFormat = Format | Literal["SVG", "PDF"]
"""A format that artwork is read in."""

UNTAGGED = "untagged"
"""Stands for a profile where the file has none."""


@frozen
class Note:
    """What of a file is not read or not drawn here."""

    what: Literal["outside", "lettering", "pages", "pictures"]
    """Parts in other files, lettering in an SVG, pages or pictures after the first."""
    count: int
    """Of the parts, of lines of lettering, or of all pages or pictures."""

    @property
    def words(self) -> str:
        """It in a sentence for the maker, without a full stop."""
        if self.what == "pages":
            return say_n(
                "only the first of its {n} page is used", "only the first of its {n} pages is used", self.count
            )
        if self.what == "pictures":
            return say_n(
                "only the first of its {n} picture is used", "only the first of its {n} pictures is used", self.count
            )
        if self.what == "outside":
            return say_n(
                "a picture or part in other files is not read: put it into the SVG itself and save again",
                "{n} pictures or parts in other files is not read: put it into the SVG itself and save again",
                self.count,
            )
        return say("its lettering is not drawn here, since the fonts are not in the file: turn it into outlines")


@frozen
class ArtworkFile:
    """What a design file is, before anything of it is drawn. Either `pixels` or `size_mm` is there."""

    format: ArtworkFormat
    """What its bytes are, whatever its name ends in."""
    pixels: tuple[int, int] | None
    """Width and height, upright; None for a drawing."""
    size_mm: tuple[Fraction, Fraction] | None
    """Width and height that a drawing says it has, in mm; None for pixels."""
    colour: str
    """Its colour mode in words: RGB, grey, CMYK, Lab, indexed RGB, black and white; of a PDF each part has its own."""
    profile: str
    """The name of its colour profile, or `untagged`."""
    transparency: bool
    """Some of it may be clear: it has a channel or colour for that, or is a drawing without a ground of its own."""
    pages: int
    """Pages or frames in the file. Only the first is read."""
    digest: str
    """BLAKE2b-256 of the file's bytes, in hexadecimal."""
    bytes: int
    """Length of the file."""
    notes: tuple[Note, ...] = ()

    @property
    def sides(self) -> tuple[Fraction, Fraction]:
        """Width and height in pixels, of a drawing in mm: for its proportions."""
        width, height = self.pixels or self.size_mm or (1, 1)
        return Fraction(width), Fraction(height)

    @property
    def drawn(self) -> bool:
        """It is a drawing, which is sharp at any size."""
        return self.pixels is None


class UnreadArtwork(PictureProblem):  # the maker's own business: worth a word, and nothing to stop for
    """A design file of a kind that is not looked into."""
