"""Proofs: the artwork on its blank to scale, for the maker and for a customer, before anything is pressed."""

from __future__ import annotations

from fractions import Fraction

from markupsafe import Markup

from maker_site.language import marked, say
from maker_site.pages import addresses
from maker_site.pages.marks import Hole, ProofArea, ProofArtwork, ProofBlank, placement_proof, swatch
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.parts import Link
from maker_site.pages.stand_in import blank_drawing
from maker_site.pages.workshop.views import ProofPage, ProofShown
from maker_site.records import Blank, Project
from maker_site.records.quantities import Length, Size
from maker_site.workings.artwork_size import ArtworkSize

COLOUR_WORDS = marked(
    "Colours on a screen, on paper and on the piece differ: a screen shines, and the blank gives its own tint. "
    "Where a colour matters, ask for a pressed sample."
)
KEY_WORDS = marked(
    "Full colour: what will be seen. Pale: printed past the edge, so that no edge stays bare. Palest: cut away. "
    "Dashed: the edge of what takes a picture, where it is not the edge of the piece."
)
HANDLE_WORDS = marked("The side is laid flat, as it is wrapped; the ends stay free for the handle.")
SPELLING_WORDS = marked("Read every name, date and figure letter by letter. What is approved here is what is pressed.")


def proof_page(book: Notebook, project: Project) -> Page | None:
    """Return proofs/ID.html, or None where no artwork of the project can be shown."""
    here = addresses.proof(project.id)
    blank = book.workshop.blanks[project.blank]
    shown = tuple(
        each for index in range(len(project.artwork)) if (each := _shown(book, project, index, here)) is not None
    )
    if not shown:
        return None
    view = ProofPage(
        project.id,
        project.title,
        Link(say("The project, for the maker"), addresses.project(project.id)),
        blank.name,
        say(blank.substrate),
        swatch(blank.substrate, width=184, height=56),
        book.wording.one_line(book.wording.size(blank.size)) if blank.size else None,
        book.wording.set_of(project.pieces) if project.pieces > 1 else say("one piece"),
        shown,
        f"{say(KEY_WORDS)} {say(HANDLE_WORDS)}" if blank.girth and blank.height else say(KEY_WORDS),
        say(SPELLING_WORDS),
        say(COLOUR_WORDS),
    )
    title = say("Proof: {project}", project=project.title)
    return Page(here, "workshop/proof.html", title, view, door="catalogue/index.html")


def stand_in(book: Notebook, project: Project, here: str) -> Markup:
    """Return what stands where a project has no photo: the proof of its first artwork, else the hatched blank.

    `here` is the page that it stands on.
    """
    for index in range(len(project.artwork)):
        drawn = proof_drawing(book, project, index, here, prefix="piece")
        if drawn:
            return drawn
    return blank_drawing(book, project.blank)


def proof_drawing(book: Notebook, project: Project, index: int, here: str, *, prefix: str = "proof") -> Markup | None:
    """Return a project's artwork of that number on its blank; None where its size or picture is not known.

    `prefix` begins the drawing's ids: it parts two drawings of one artwork on a page.
    """
    size = book.artwork_size(project, index)
    path = f"projects/{project.id}/{project.artwork[index].file}"
    planned, found = book.pictures.get(path), book.artwork.get(path)
    if size is None or planned is None:
        return None
    blank = book.workshop.blanks[project.blank]
    area = blank.print_area or blank.size
    sides = _flat(blank, size)
    wording = book.wording
    return placement_proof(
        sides,
        ProofArea(
            float(size.place.width),
            float(size.place.height),
            float(size.place.bleed),
            bool(area and area.round),
        ),
        ProofArtwork(
            addresses.relative(here, f"{addresses.PICTURES}/{planned.fallback.name}"),
            float(size.width),
            float(size.height),
            clear=bool(found and found.transparency and not size.place.covered),
        ),
        substrate=blank.substrate,
        title=say("{project}: the artwork on {blank}, to scale", project=project.title, blank=blank.name),
        prefix=f"{prefix}-{addresses.slug(project.id)}-{index + 1}",
        width_words=wording.one_line(wording.length(_length(sides.width_mm))),
        height_words=wording.one_line(wording.length(_length(sides.height_mm))),
    )


def _shown(book: Notebook, project: Project, index: int, here: str) -> ProofShown | None:
    drawn = proof_drawing(book, project, index, here)
    size = book.artwork_size(project, index)
    if drawn is None or size is None:
        return None
    wording = book.wording
    blank = book.workshop.blanks[project.blank]
    area = blank.print_area or blank.size
    seen = Size(Length(size.place.width), Length(size.place.height), bool(area and area.round))
    bleed = wording.one_line(wording.length(Length(size.place.bleed))) if size.place.bleed else None
    name = project.artwork[index].file.rpartition("/")[2].rpartition(".")[0]
    words = name.replace("-", " ").replace("_", " ").capitalize()
    of = len(project.artwork)
    return ProofShown(
        say("{n} of {all}: {name}", n=wording.count(index + 1), all=wording.count(of), name=words) if of > 1 else words,
        drawn,
        wording.one_line(wording.size(seen)),
        bleed,
    )


def _flat(blank: Blank, size: ArtworkSize) -> ProofBlank:
    """Return the blank as it is drawn: of a mug its side laid flat; without a size the print area alone."""
    if blank.girth and blank.height:
        gap = float(blank.handle_gap.mm) if blank.handle_gap else 0
        return ProofBlank(float(blank.girth.mm), float(blank.height.mm), handle_gap_mm=gap)
    if blank.size is None:
        return ProofBlank(float(size.place.width), float(size.place.height))
    return ProofBlank(
        float(blank.size.width.mm),
        float(blank.size.height.mm),
        blank.size.round,
        float(blank.corner_radius.mm) if blank.corner_radius else 0,
        blank.outline,
        [Hole(float(hole.at[0].mm), float(hole.at[1].mm), float(hole.diameter.mm)) for hole in blank.holes],
    )


def _length(mm: float) -> Length:
    return Length(Fraction(mm).limit_denominator(1000))
