"""The rows of a project's design files: how large, how sharp, in which colours, and where they will lie."""

from __future__ import annotations

import math
from fractions import Fraction

from maker_site.media.artwork import ArtworkFile
from maker_site.pages.notebook import Notebook
from maker_site.pages.pictures import picture_at
from maker_site.pages.wording import Wording
from maker_site.pages.workshop.proofs import proof_drawing
from maker_site.pages.workshop.views import ArtworkRow
from maker_site.records import Project
from maker_site.records.quantities import Length, Size
from maker_site.workings.artwork_size import COARSE_BELOW_PPI, ArtworkSize, Verdict

_SEEN = Fraction(1, 2)
"""Millimetres; what is cut away of less is not seen on a pressed piece. Common practice, no source."""


def artwork_row(book: Notebook, project: Project, index: int, here: str) -> ArtworkRow:
    """Return the project's artwork of that number, for the page `here`."""
    artwork = project.artwork[index]
    path = f"projects/{project.id}/{artwork.file}"
    name = artwork.file.rpartition("/")[2]
    found = book.artwork.get(path)
    size = book.artwork_size(project, index)
    return ArtworkRow(
        name,
        _printed(book, project, size),
        _given(book.wording, found) if found else None,
        artwork.licence,
        artwork.note,
        picture_at(book.pictures, path, f"Artwork {name}"),
        _ppi(size) if size else None,
        size.verdict.value if size else None,
        _verdict_words(book.wording, size) if size else None,
        _cut_words(book.wording, size) if size else None,
        _colour_words(found) if found else None,
        _transparency_words(found) if found else None,
        found.notes if found else (),
        proof_drawing(book, project, index, here),
    )


def _printed(book: Notebook, project: Project, size: ArtworkSize | None) -> str | None:
    """Return the printed size with its bleed, in both units."""
    if size is None:
        return None
    wording, place = book.wording, size.place
    blank = book.workshop.blanks[project.blank]
    area = blank.print_area or blank.size
    printed = Size(Length(place.printed_width), Length(place.printed_height), bool(area and area.round))
    shown = wording.one_line(wording.size(printed))
    return f"{shown}, with {wording.one_line(wording.length(Length(place.bleed)))} bleed" if place.bleed else shown


def _given(wording: Wording, found: ArtworkFile) -> str:
    if found.pixels:
        return f"{found.format}, {wording.count(found.pixels[0])} × {wording.count(found.pixels[1])} px"
    width, height = (Length(side) for side in found.sides)
    return f"{found.format}, {wording.one_line(wording.size(Size(width, height)))}"


def _ppi(size: ArtworkSize) -> str | None:
    """Return the effective pixels an inch, cut to a whole number, so that too few never read as enough."""
    return None if size.ppi is None else f"{math.floor(size.ppi)} ppi at this size"


def _verdict_words(wording: Wording, size: ArtworkSize) -> str:
    if size.verdict is Verdict.SCALES:
        return "Sharp at any size: a drawing has no pixels."
    if size.verdict is Verdict.FINE:
        return f"Fine: at least the {size.wanted} ppi that are wanted."
    needed = f"{wording.count(size.needed[0])} × {wording.count(size.needed[1])} px"
    short = " and ".join(
        f"its {each.edge} is short by {wording.count(each.pixels)} px ({_length(wording, each.mm)})"
        for each in size.short
    )
    under = (
        f"Soft: under the {size.wanted} ppi that are wanted"
        if size.verdict is Verdict.SOFT
        else f"Too coarse: under {COARSE_BELOW_PPI} ppi"
    )
    return f"{under}. Make it at least {needed}: {short}."


def _cut_words(wording: Wording, size: ArtworkSize) -> str | None:
    parts = [
        f"{wording.one_line(wording.length(Length(cut)))} of its {edge}"
        for edge, cut in (("width", size.cut_width), ("height", size.cut_height))
        if cut >= _SEEN
    ]
    if not parts:
        return None
    turn = "; turned by a quarter less would be lost" if size.better_turned else ""
    return f"Cut away, half at each end: {' and '.join(parts)}{turn}."


def _length(wording: Wording, mm: Fraction) -> str:
    both = wording.length(Length(mm))
    return f"{both.first}, {both.second}"


def _colour_words(found: ArtworkFile) -> str:
    profile = "no profile" if found.profile == "untagged" else f"profile {found.profile}"
    return f"{found.colour}, {profile}"


def _transparency_words(found: ArtworkFile) -> str:
    if found.drawn:
        return "where nothing is drawn"
    return "possible; there the blank shows" if found.transparency else "none"
