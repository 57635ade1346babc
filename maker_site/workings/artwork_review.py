"""What is worth a look in the maker's artwork: too few pixels, much cut away, colours that will shift."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from fractions import Fraction

from maker_site.frozen import frozen
from maker_site.records import Problem, Project, Severity, Workshop
from maker_site.workings.artwork_size import (
    COARSE_BELOW_PPI,
    MOSTLY_KEPT,
    ArtworkSize,
    Motif,
    Verdict,
    artwork_size,
    place_of,
)


@frozen
class SeenArtwork:
    """What was seen of a design file."""

    motif: Motif
    colour: str
    """Its colour mode in words."""
    notes: tuple[str, ...]
    """What of it is not used, in sentences without a full stop."""


def size_on_blank(workshop: Workshop, project: Project, index: int, motif: Motif) -> ArtworkSize | None:
    """Return how the project's artwork of that number lies on its blank; None where the blank has no size."""
    blank = workshop.blanks[project.blank]
    place = place_of(blank, project.artwork[index], workshop.method_of(project))
    return artwork_size(motif, place, workshop.shop.printer.ppi) if place else None


def review_artwork(workshop: Workshop, seen: Mapping[str, SeenArtwork]) -> Iterator[Problem]:
    """Yield cautions with the line of the artwork's entry; `seen` is by path from the content folder."""
    for project in workshop.projects.values():
        for index, artwork in enumerate(project.artwork):
            found = seen.get(f"projects/{project.id}/{artwork.file}")
            if found is None:
                continue
            size = size_on_blank(workshop, project, index, found.motif)
            printed = workshop.method_of(project) != "heat-transfer vinyl"  # which is cut along its outlines
            for message in _cautions(found, size, printed=printed):
                yield project.origin.problem(("artwork", index, "file"), message, Severity.CAUTION)


def _cautions(found: SeenArtwork, size: ArtworkSize | None, *, printed: bool) -> Iterator[str]:
    if printed and size and size.ppi is not None and size.verdict is Verdict.COARSE:
        yield f"{_too_coarse(size, size.ppi)}; {aim_words(size)}"
    if size and size.cut_share > MOSTLY_KEPT:
        yield cut_words(size)
    if printed and found.colour == "CMYK":
        yield "the artwork is in CMYK; a printer's driver wants RGB, so save it in RGB and see how its colours change"
    yield from found.notes


def _too_coarse(size: ArtworkSize, ppi: Fraction) -> str:
    place = size.place
    return (
        f"the artwork has {math.floor(ppi)} pixels an inch on {mm(place.printed_width)} × {mm(place.printed_height)} mm"
        f"{' with bleed' if place.bleed else ''}; below {COARSE_BELOW_PPI} it prints coarse"
    )


def aim_words(size: ArtworkSize) -> str:
    """Return the pixels to aim at, and which edge is short by how much."""
    short = " and ".join(f"its {each.edge} is short by {each.pixels} px ({mm(each.mm)} mm)" for each in size.short)
    return f"for {size.wanted} make it at least {size.needed[0]} × {size.needed[1]} px: {short}"


def cut_words(size: ArtworkSize) -> str:
    """Return how much is cut away where it covers its place, and what to do about it."""
    lost = [
        f"{mm(cut)} of {mm(whole)} mm of its {edge}"
        for edge, cut, whole in (
            ("width", size.cut_width, size.width),
            ("height", size.cut_height, size.height),
        )
        if cut
    ]
    place = size.place
    shape = f"draw it for {mm(place.printed_width)} × {mm(place.printed_height)} mm"
    do = "turn it by a quarter" if size.better_turned else shape
    return f"to cover the blank, {' and '.join(lost)} is cut away; {do}, or see that nothing is lost there"


def mm(length: Fraction) -> str:
    """Return millimetres with at most one decimal, half up."""
    tenths = math.floor(length * 10 + Fraction(1, 2))
    return f"{tenths // 10}.{tenths % 10}" if tenths % 10 else f"{tenths // 10}"
