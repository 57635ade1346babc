"""A project's page, its press card and its proof."""

from __future__ import annotations

from markupsafe import Markup

from maker_site.frozen import frozen
from maker_site.pages.parts import Day, EvidenceShown, Hazards, Link, Picture
from maker_site.pages.workshop.views.costs import CostShown
from maker_site.pages.workshop.views.settings import Fact, LogRow, NextTryShown, SettingShown, StartShown


@frozen
class ArtworkRow:
    """A design file."""

    name: str
    size: str | None
    """Printed size with bleed, in both units."""
    pixels: str | None
    """Format, and pixels or the size that a drawing says it has."""
    licence: str | None
    note: str | None
    picture: Picture | None
    """The artwork itself, small; workshop copy only."""
    ppi: str | None
    """Effective pixels an inch at the printed size."""
    verdict: str | None
    """fine, soft, too coarse, sharp at any size."""
    verdict_words: str | None
    """The same in a sentence, with the figure to aim at."""
    cut: str | None
    """What is cut away so that it covers the blank."""
    colour: str | None
    """Colour mode and profile."""
    transparency: str | None
    notes: tuple[str, ...]
    """What of the file is not used, in sentences without a full stop."""
    proof: Markup | None
    """The artwork on its blank, to scale."""


@frozen
class ProjectPage:
    """projects/ID.html."""

    id: str
    title: str
    made: Day | None
    blank: Link
    substrate: Link
    """To the settings of the substrate."""
    swatch: Markup
    facts: tuple[Fact, ...]
    """Method, pieces, occasions, for whom, order …"""
    pictures: tuple[Picture, ...]
    stand_in: Markup | None
    summary: str | None
    setting: StartShown | None
    card: Link
    hazards: Hazards
    write_up: Markup | None
    log: tuple[LogRow, ...]
    """Latest first."""
    log_earlier: int
    """Pressings that are too early to be among them."""
    log_total: str | None
    """46 of 50 good in 12 pressings."""
    artwork: tuple[ArtworkRow, ...]
    supplies: tuple[Fact, ...]
    cost: CostShown | None
    cost_sheet: Link
    """The same with other figures to try."""
    shared: tuple[str, ...]
    """What of it crosses to the public copy, in words; empty: nothing does."""
    note: str | None
    video: Link | None
    proof: Link | None
    """To the page for a customer to approve."""


@frozen
class ProofShown:
    """One design on its blank."""

    name: str
    drawing: Markup
    size: str
    """Of what will be seen, in both units."""
    bleed: str | None


@frozen
class ProofPage:
    """proofs/ID.html: shown to a customer before anything is pressed; it prints cleanly and says nothing private."""

    id: str
    title: str
    project: Link
    """For the maker; not printed."""
    blank: str
    material: str
    swatch: Markup
    size: str | None
    """Of the blank, in both units."""
    pieces: str
    """A set of 4."""
    proofs: tuple[ProofShown, ...]
    key: str
    """What full, pale and dashed mean."""
    spelling: str
    """What to read before approving."""
    colours: str
    """Why colours differ."""


@frozen
class Step:
    """A step to tick."""

    words: str
    seconds: int | None = None
    """A countdown belongs to it."""


@frozen
class CardPage:
    """cards/ID.html: stands beside the press; one printed side of A6 or 4 x 6 in."""

    id: str
    title: str
    project: Link
    number: str
    """The project’s short number, for the stub."""
    blank: str
    code: str | None
    made: Day | None
    swatch: Markup
    picture: Picture | None
    setting: SettingShown | None
    """None: nothing is known; the page says so large."""
    source_words: str
    reason: str
    evidence: EvidenceShown | None
    seconds: int | None
    """For the countdown."""
    mirror: str
    """Mirror the artwork, Do not mirror, or a sentence where it is not known."""
    mirror_mark: Markup | None
    small_facts: tuple[Fact, ...]
    """Pre-press, peel, cool, at once, coated side, limit."""
    next_try: NextTryShown | None
    """What to change if it is not good enough; None where nothing was spoiled."""
    ladder: Link
    stack: Markup
    stack_for_paper: Markup
    """The same drawn wide, for the printed side."""
    stack_written: bool
    """False: the usual stack is drawn since none was written down."""
    stack_words: tuple[str, ...]
    """The same from bottom to top, for those who can't see the drawing."""
    steps: tuple[Step, ...]
    hazards: Hazards
    last: str | None
    """Last pressed 18 Apr 2026: 4 of 4 good."""
    code_mark: Markup
    """The square code."""
    code_target: str
    """What the code holds."""
    code_words: str
    """Where it leads, in words."""
    paper: Link
    """The same card as a PDF."""
