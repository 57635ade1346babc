"""Whether artwork is large enough for its place: how it lies there, what is cut away, how sharp it prints."""

from __future__ import annotations

import math
from enum import StrEnum
from fractions import Fraction
from typing import Final

from maker_site.frozen import frozen
from maker_site.records import Artwork, Blank
from maker_site.records.quantities import MM_PER_INCH
from maker_site.workings.money.transfer_size import printed_sides

COARSE_BELOW_PPI: Final = 150
"""About the least that looks sharp in the hand. Common practice, no source."""
MOSTLY_KEPT: Final = Fraction(1, 10)
"""A larger share of a side than this is worth a look when it is cut away. A judgement, no source."""


class Verdict(StrEnum):
    """How the artwork will look at its printed size."""

    FINE = "fine"
    """All the pixels that are wanted, or more."""
    SOFT = "soft"
    """Fewer than wanted, and 150 an inch or a part of a pixel to a side less."""
    COARSE = "too coarse"
    """Fewer than that: who exports at 150 an inch loses a part of a pixel, no more. Common practice, no source."""
    SCALES = "sharp at any size"
    """A drawing: it has no pixels."""


@frozen
class Motif:
    """The artwork's sides, of which only pixels can be too few."""

    width: Fraction
    """In pixels; of a drawing in any unit, since only its proportions count."""
    height: Fraction
    has_pixels: bool


@frozen
class Place:
    """Where the artwork is printed: the blank's print area and what is printed past its edges."""

    width: Fraction
    """mm, without bleed."""
    height: Fraction
    """mm, without bleed."""
    bleed: Fraction
    """mm on each side."""
    covered: bool
    """The artwork covers it to every edge; else it lies inside it whole, as vinyl and film do."""

    @property
    def printed_width(self) -> Fraction:
        """mm, bleed and all."""
        return self.width + 2 * self.bleed

    @property
    def printed_height(self) -> Fraction:
        """mm, bleed and all."""
        return self.height + 2 * self.bleed


@frozen
class ShortEdge:
    """An edge for which there are fewer pixels than wanted."""

    edge: str
    """width or height."""
    pixels: int
    """How many are missing."""
    mm: Fraction
    """How much of the edge they would have filled, at the wanted pixels an inch."""


@frozen
class ArtworkSize:
    """How the artwork lies in its place."""

    place: Place
    width: Fraction
    """mm of the whole artwork as it is printed, what is cut away with it."""
    height: Fraction
    """mm."""
    wanted: int
    """Pixels an inch."""
    needed: tuple[int, int]
    """Pixels across and down that fill the place at the wanted pixels an inch."""
    ppi: Fraction | None
    """Effective pixels an inch; None for a drawing."""
    short: tuple[ShortEdge, ...]
    verdict: Verdict

    @property
    def cut_width(self) -> Fraction:
        """mm cut away at left and right together; 0 where it lies inside."""
        return max(self.width - self.place.printed_width, Fraction(0))

    @property
    def cut_height(self) -> Fraction:
        """mm cut away at top and foot together."""
        return max(self.height - self.place.printed_height, Fraction(0))

    @property
    def cut_share(self) -> Fraction:
        """The share of the artwork's width or height that is lost, whichever is more, 0 to 1."""
        return max(self.cut_width / self.width, self.cut_height / self.height)

    @property
    def better_turned(self) -> bool:
        """Much is cut away, and turned by a quarter less would be."""
        less = _scale(self.height, self.width, self.place) < 1  # it need not be scaled up as far as it is now
        return self.place.covered and self.cut_share > MOSTLY_KEPT and less


def needed_pixels(side: Fraction, bleed: Fraction, ppi: int) -> int:
    """Return the pixels for one side in mm with bleed (mm) at both ends: the exact figure rounded up."""
    return math.ceil((side + 2 * bleed) / MM_PER_INCH * ppi)


def place_of(blank: Blank, artwork: Artwork, method: str) -> Place | None:
    """Return where artwork is printed on a blank; None where the blank has no size.

    The bleed is the artwork's own, else the blank's, else none. Dye sublimation is covered to the edge; vinyl and
    film lie within the print area.
    """
    sides = printed_sides(blank)
    if sides is None:
        return None
    bleed = artwork.bleed or blank.bleed
    return Place(sides[0], sides[1], bleed.mm if bleed else Fraction(0), covered=method == "sublimation")


def artwork_size(motif: Motif, place: Place, wanted: int) -> ArtworkSize:
    """Return how artwork lies in its place, centred and with its proportions kept.

    It is scaled until it covers the place with bleed, or, lying inside, until it meets two of its edges. Effective
    pixels an inch are then the same along both axes: those of the smaller axis when covering. An edge is short by
    what it lacks of the pixels wanted.
    """
    scale = _scale(motif.width, motif.height, place)
    width, height = motif.width * scale, motif.height * scale
    filled = (place.printed_width, place.printed_height) if place.covered else (width, height)
    needed = (needed_pixels(filled[0], Fraction(0), wanted), needed_pixels(filled[1], Fraction(0), wanted))
    if not motif.has_pixels:
        return ArtworkSize(place, width, height, wanted, needed, None, (), Verdict.SCALES)
    ppi = MM_PER_INCH / scale
    sides = zip(("width", "height"), needed, (motif.width, motif.height), filled, strict=True)
    short = tuple(
        ShortEdge(edge, want - int(have), side - have / wanted * MM_PER_INCH)
        for edge, want, have, side in sides
        if have < want
    )
    nearly = MM_PER_INCH / _scale(motif.width + 1, motif.height + 1, place)
    return ArtworkSize(place, width, height, wanted, needed, ppi, short, _verdict(ppi, nearly, wanted))


def _scale(width: Fraction, height: Fraction, place: Place) -> Fraction:
    across, down = place.printed_width / width, place.printed_height / height
    return max(across, down) if place.covered else min(across, down)


def _verdict(ppi: Fraction, nearly: Fraction, wanted: int) -> Verdict:
    """Return what is said of pixels an inch; `nearly` would be reached with one more pixel to a side."""
    if ppi >= wanted:
        return Verdict.FINE
    return Verdict.SOFT if nearly > COARSE_BELOW_PPI else Verdict.COARSE
