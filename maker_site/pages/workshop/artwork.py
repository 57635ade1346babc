"""The rows of a project's design files: how large, how sharp, in which colours, and where they will lie."""

from __future__ import annotations

import math
from fractions import Fraction

from maker_site.language import all_of, listed, say, say_in
from maker_site.media.artwork import ArtworkFile
from maker_site.pages.notebook import Notebook
from maker_site.pages.pictures import picture_at
from maker_site.pages.wording import Wording
from maker_site.pages.workshop.proofs import proof_drawing
from maker_site.pages.workshop.views import ArtworkRow
from maker_site.records import Project
from maker_site.records.quantities import Length, Size
from maker_site.workings.artwork_size import COARSE_BELOW_PPI, ArtworkSize, ShortEdge, Verdict

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
        picture_at(book.pictures, path, say("Artwork {file}", file=name)),
        _ppi(book.wording, size) if size else None,
        size.verdict.value if size else None,
        _verdict_words(book.wording, size) if size else None,
        _cut_words(book.wording, size) if size else None,
        _colour_words(found) if found else None,
        _transparency_words(found) if found else None,
        tuple(note.words for note in found.notes) if found else (),
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
    if not place.bleed:
        return shown
    return say("{size}, with {bleed} bleed", size=shown, bleed=wording.one_line(wording.length(Length(place.bleed))))


def _given(wording: Wording, found: ArtworkFile) -> str:
    if found.pixels:
        return listed((found.format, _pixels(wording, found.pixels)))
    width, height = (Length(side) for side in found.sides)
    return listed((found.format, wording.one_line(wording.size(Size(width, height)))))


def _pixels(wording: Wording, sides: tuple[int, int]) -> str:
    return say("{n} px").format(n=f"{wording.count(sides[0])} × {wording.count(sides[1])}")


def _ppi(wording: Wording, size: ArtworkSize) -> str | None:
    """Return the effective pixels an inch, cut to a whole number, so that too few never read as enough."""
    return None if size.ppi is None else say("{n} ppi at this size", n=wording.count(math.floor(size.ppi)))


def _verdict_words(wording: Wording, size: ArtworkSize) -> str:
    if size.verdict is Verdict.SCALES:
        return say("Sharp at any size: a drawing has no pixels.")
    wanted = wording.count(size.wanted)
    if size.verdict is Verdict.FINE:
        return say("Fine: at least the {n} ppi that are wanted.", n=wanted)
    parts = {
        "needed": _pixels(wording, size.needed),
        "short": all_of(_short_words(wording, each) for each in size.short),
    }
    if size.verdict is Verdict.SOFT:
        return say("Soft: under the {n} ppi that are wanted. Make it at least {needed}: {short}.", n=wanted, **parts)
    least = wording.count(COARSE_BELOW_PPI)
    return say("Too coarse: under {n} ppi. Make it at least {needed}: {short}.", n=least, **parts)


def _short_words(wording: Wording, short: ShortEdge) -> str:
    both = wording.length(Length(short.mm))
    parts = {"n": wording.count(short.pixels), "first": both.first, "second": both.second}
    if short.edge == "width":
        return say("its width is short by {n} px ({first}, {second})", **parts)
    return say("its height is short by {n} px ({first}, {second})", **parts)


def _cut_words(wording: Wording, size: ArtworkSize) -> str | None:
    parts = []
    if size.cut_width >= _SEEN:
        parts.append(say("{length} of its width", length=wording.one_line(wording.length(Length(size.cut_width)))))
    if size.cut_height >= _SEEN:
        parts.append(say("{length} of its height", length=wording.one_line(wording.length(Length(size.cut_height)))))
    if not parts:
        return None
    if size.better_turned:
        return say("Cut away, half at each end: {parts}; turned by a quarter less would be lost.", parts=all_of(parts))
    return say("Cut away, half at each end: {parts}.", parts=all_of(parts))


def _colour_words(found: ArtworkFile) -> str:
    if found.profile == "untagged":
        return say("{colour}, no profile", colour=say(found.colour))
    return say("{colour}, profile {profile}", colour=say(found.colour), profile=found.profile)


def _transparency_words(found: ArtworkFile) -> str:
    if found.drawn:
        return say("where nothing is drawn")
    return say("possible; there the blank shows") if found.transparency else say_in("transparency", "none")
