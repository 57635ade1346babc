"""What each page of the workshop copy shows. A template prints these fields and computes nothing."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from maker_site.pages.parts import Both, Day, EvidenceShown, Hazards, Link, Menu, Picture


@dataclass(frozen=True, slots=True)
class WorkshopFrame:
    """What surrounds every page of the workshop copy."""

    shop: str
    line: str | None
    notice: str | None
    """At the foot of every page."""
    language: str
    """BCP 47, for the html element."""
    direction: str
    """ltr or rtl."""
    doors: tuple[Link, ...]
    """The way to everything: Home, Catalogue, Settings, Blanks, Presses, Supplies, Writing, Menu."""


@dataclass(frozen=True, slots=True)
class Tile:
    """A project in a grid."""

    link: Link
    card: Link
    """To its press card."""
    blank: str
    substrate: str
    method: str
    made: Day | None
    occasions: tuple[str, ...]
    picture: Picture | None
    stand_in: Markup | None
    """The hatched blank, where there is no picture."""
    swatch: Markup
    """The substrate's hatching, small."""
    outcome: str | None
    """24 of 25 good; None before the first pressing."""


@dataclass(frozen=True, slots=True)
class Attention:
    """A sentence about what wants doing."""

    words: str
    link: Link | None


@dataclass(frozen=True, slots=True)
class LowBlank:
    """A blank that is running low."""

    link: Link
    left: int
    at: int
    """Low at or below this count."""
    swatch: Markup


@dataclass(frozen=True, slots=True)
class Home:
    """index.html: what was made last, what needs attention, what is running low."""

    newest: tuple[Tile, ...]
    """Three at the most shown large; up to nine."""
    attention: tuple[Attention, ...]
    low: tuple[LowBlank, ...]
    projects: int
    blanks: int
    pressed: int
    """Pieces pressed, ever."""
    good: int


@dataclass(frozen=True, slots=True)
class FilterWord:
    """One choice of a filter."""

    word: str
    count: int


@dataclass(frozen=True, slots=True)
class Filter:
    """A filter of the catalogue."""

    name: str
    """substrate, method, occasion or year: the key in the address."""
    title: str
    """Substrate, Method …"""
    words: tuple[FilterWord, ...]


@dataclass(frozen=True, slots=True)
class MaterialMark:
    """The hatching of one family of materials, for tiles that the page's script builds."""

    family: str
    """As in the data script's rows."""
    swatch: Markup
    field: Markup
    """The same, large: it stands where there is no picture."""


@dataclass(frozen=True, slots=True)
class Catalogue:
    """catalogue/index.html, catalogue/2.html …: newest first. Filters work on the data script, not on these tiles."""

    tiles: tuple[Tile, ...]
    total: int
    number: int
    """Of this page, from 1."""
    pages: int
    previous: Link | None
    next: Link | None
    years: tuple[Link, ...]
    """Each year's first page."""
    filters: tuple[Filter, ...]
    data: str
    """Address of the script with every project's row."""
    materials: tuple[MaterialMark, ...]
    """Of the families that the projects' blanks belong to."""


@dataclass(frozen=True, slots=True)
class SettingShown:
    """A setting in words."""

    temperature: Both
    """What the dial says."""
    true: Both | None
    """At the platen, where readings say it differs."""
    footing: str | None
    """A sentence where the platen's temperature is a guess."""
    time: Both
    """m:ss and seconds."""
    pressure: str | None
    face: str | None
    """print up, print down, wrapped."""
    face_words: str | None
    """Print up: the blank lies face down on the transfer."""
    face_mark: Markup | None
    press: Link | None


@dataclass(frozen=True, slots=True)
class SettingRow:
    """A setting of a blank with what came of it."""

    setting: SettingShown
    evidence: EvidenceShown
    projects: tuple[Link, ...]
    best: bool


@dataclass(frozen=True, slots=True)
class SheetShown:
    """The supplier's sheet: a claim."""

    temperature: Both | None
    """Each may be a range."""
    time: Both | None
    pressure: str | None
    face: str | None
    pre_press: str | None
    peel: str | None
    cool: str | None
    dated: Day | None
    note: str | None
    supplier: str | None


@dataclass(frozen=True, slots=True)
class StartShown:
    """Where to begin, and why."""

    source: str
    """own, sheet, relative or common."""
    source_words: str
    """Your own pressings; The supplier’s sheet; A like blank; Common practice."""
    reason: str
    setting: SettingShown | None
    """None where only a range of one figure is known."""
    temperature: Both | None
    """What a sheet or common practice says, a range or one figure; None for the maker's own."""
    time: Both | None
    """The same of the time."""
    evidence: EvidenceShown | None


@dataclass(frozen=True, slots=True)
class LogRow:
    """One pressing."""

    date: Day
    blank: Link
    press: Link
    project: Link | None
    setting: str
    """200 °C (392 °F), 5:00, medium, print up, all in one line."""
    lot: str | None
    pressed: int
    good: int
    defects: tuple[str, ...]
    note: str | None
    picture: Picture | None


@dataclass(frozen=True, slots=True)
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


@dataclass(frozen=True, slots=True)
class CostRow:
    """One line of the cost sheet."""

    name: str
    amount: str | None
    """None: not known."""
    basis: str
    """The arithmetic in words, or which figure is missing."""
    assumed: str
    """The figures in it that nobody wrote down; empty where all were."""
    key: Markup | None
    """The filling of its part of the bar; None where it has no part."""


@dataclass(frozen=True, slots=True)
class CostShown:
    """What one sold item costs, as far as known."""

    lines: tuple[CostRow, ...]
    total: str
    complete: bool
    """False: the total is “at least”."""
    yield_words: str
    price: str | None
    price_words: str | None
    """Typed by hand, or worked out for which margin."""
    left: str | None
    """What is left for the maker of one."""
    margin: str | None
    """The same as a share of net sales, in a sentence."""
    loses: bool
    """The price does not cover the cost."""
    cautions: tuple[str, ...]
    assumed: tuple[str, ...]
    """Each figure that nobody wrote down, with the lines that lean on it."""
    bar: Markup | None


@dataclass(frozen=True, slots=True)
class Fact:
    """A name and a value of a list of facts."""

    name: str
    value: str
    link: Link | None = None
    """Where the value leads, when it leads somewhere."""


@dataclass(frozen=True, slots=True)
class BreakRow:
    """Cost and worked-out price of one, for so many made at one go."""

    quantity: str
    cost: str
    price: str | None
    own: bool
    """The number that the project's record says."""


@dataclass(frozen=True, slots=True)
class CostSheetPage:
    """costs/ID.html: what one sold item costs, and a place to try other figures."""

    id: str
    title: str
    project: Link
    one: str
    """What is sold as one: one piece, a set of 4."""
    cost: CostShown
    split: tuple[Fact, ...]
    """Where the price goes: tax, fee, cost, what is left."""
    wanted: str | None
    """A sentence with the price that would bring what is wanted, where another is typed."""
    breaks: tuple[BreakRow, ...]
    batch: int
    """Made at one go."""
    yield_percent: str
    """As a plain figure for an input: 92; empty where nothing came out good yet."""
    labour: str | None
    """Per hour, as a plain figure for an input."""
    typed: str | None
    """The price typed by hand, as a plain figure for an input."""
    data: str
    """JSON for the script that works the sheet out anew; the same rules, never the only way to read it."""


@dataclass(frozen=True, slots=True)
class CostLineShown:
    """A project in the overview of costs; figures for sorting beside the words."""

    project: Link
    sheet: Link
    cost: str
    cost_figure: float
    price: str | None
    price_figure: float | None
    left: str | None
    left_figure: float | None
    margin: str | None
    margin_figure: float | None
    an_hour: str | None
    """What is left with the labour in it, for an hour at the bench."""
    an_hour_figure: float | None
    good: str
    """The yield: 92 %."""
    good_figure: float
    stock: int | None
    """Blanks left."""
    items: int
    """Sold items that the shelf is enough for."""
    likely: int
    """Those to count on, spoilage taken off."""
    loses: bool
    """The price does not cover the cost."""
    paid_figure: float | None
    """What the customer pays, tax and all."""


@dataclass(frozen=True, slots=True)
class CostOverview:
    """costs/index.html, costs/2.html …: cost, price, margin, yield and stock of projects; what can be made now."""

    rows: tuple[CostLineShown, ...]
    """Of this page, by title."""
    total: int
    """Projects on all pages."""
    first: int
    """Place of this page's first row among all, from 0."""
    number: int
    """Of this page, from 1."""
    pages: int
    previous: Link | None
    next: Link | None
    losing: int
    """Projects whose price does not cover their cost."""
    incomplete: int
    """Projects with a figure missing."""
    can_make: tuple[CostLineShown, ...]
    """Those whose blanks are on the shelf, the cheapest price first; those without a price last. First page only."""
    makeable: int
    """How many there are of them; the page holds the first ones."""
    currency: str
    """By ISO 4217."""
    data: str
    """Address of the script with every project's row."""


@dataclass(frozen=True, slots=True)
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


@dataclass(frozen=True, slots=True)
class ProofShown:
    """One design on its blank."""

    name: str
    drawing: Markup
    size: str
    """Of what will be seen, in both units."""
    bleed: str | None


@dataclass(frozen=True, slots=True)
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


@dataclass(frozen=True, slots=True)
class Step:
    """A step to tick."""

    words: str
    seconds: int | None = None
    """A countdown belongs to it."""


@dataclass(frozen=True, slots=True)
class NextTryShown:
    """One thing to change, with its reason."""

    change: str
    reason: str
    defect: str
    """What it answers; empty where no defect is noted."""


@dataclass(frozen=True, slots=True)
class RungRow:
    """One setting of a test ladder, to be filled in by hand."""

    dial: Both
    true: Both | None
    """At the platen, where the press has readings."""
    time: Both
    why: str


@dataclass(frozen=True, slots=True)
class LadderPage:
    """ladders/BLANK-ID.html: a few settings around the best one, as rows to fill in and as rows to paste."""

    blank: Link
    swatch: Markup
    start: StartShown | None
    press: str | None
    pressure: str | None
    face_words: str | None
    tries: tuple[NextTryShown, ...]
    """What else to change first, from the defects noted; the most noted first."""
    tries_source: str
    varies: str
    """time or temperature."""
    rungs: tuple[RungRow, ...]
    """The least heat or time first; empty where nothing is known or a limit leaves no room."""
    limit: str | None
    """The weakest thing in the stack, and what it bears."""
    log_rows: str
    """The same as lines of the press log, heading first; pieces pressed and good are left empty."""
    hazards: Hazards


@dataclass(frozen=True, slots=True)
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


@dataclass(frozen=True, slots=True)
class SubstrateRow:
    """A substrate in the settings index."""

    link: Link
    swatch: Markup
    blanks: int
    best: SettingRow | None
    """The best supported setting on any of its blanks."""
    best_blank: Link | None
    claim: StartShown | None
    """What to begin with, where nothing of the maker's own is known."""


@dataclass(frozen=True, slots=True)
class SettingsIndex:
    """settings/index.html: a row for each substrate."""

    rows: tuple[SubstrateRow, ...]
    hazards: Hazards


@dataclass(frozen=True, slots=True)
class BlankSettings:
    """A blank within a substrate's page."""

    blank: Link
    supplier: str | None
    code: str | None
    method: str
    left: int | None
    start: StartShown | None
    sheet: SheetShown | None
    disagreement: str | None
    """Where the maker's best and the sheet differ by more than the press's step."""
    rows: tuple[SettingRow, ...]
    """Every distinct setting, the best supported first."""


@dataclass(frozen=True, slots=True)
class SubstratePage:
    """settings/SUBSTRATE.html: blank by blank."""

    substrate: str
    band: Markup
    """The hatching, broad, for the header."""
    blanks: tuple[BlankSettings, ...]
    plot: Markup | None
    """Temperature and time of every setting with n and outcome; the tables beneath have the figures."""
    common: StartShown | None
    """The common-practice range, marked as such."""
    hazards: Hazards


@dataclass(frozen=True, slots=True)
class LotRow:
    """One delivery."""

    date: Day | None
    lot: str | None
    count: int
    paid: str | None
    delivery: str | None
    each: str | None
    """Landed cost of one."""
    note: str | None
    outcome: str | None
    """What was pressed of this lot: 22 of 24 good."""


@dataclass(frozen=True, slots=True)
class BlankPage:
    """blanks/ID.html."""

    id: str
    name: str
    substrate: Link
    swatch: Markup
    drawing: Markup | None
    """The blank to scale."""
    supplier: str | None
    code: str | None
    shop_link: Link | None
    coated: str | None
    facts: tuple[Fact, ...]
    left: int | None
    low: bool
    start: StartShown | None
    tries: tuple[NextTryShown, ...]
    """What to change next, from the defects noted at the best setting; one thing at a time."""
    tries_source: str
    ladder: Link
    runner_up: StartShown | None
    disagreement: str | None
    sheet: SheetShown | None
    rows: tuple[SettingRow, ...]
    lots: tuple[LotRow, ...]
    landed: str | None
    scans: tuple[Picture, ...]
    projects: tuple[Tile, ...]
    yield_plot: Markup | None
    """Good share over time, from three days of pressing on; the history beneath has the figures."""
    history: tuple[LogRow, ...]
    """Latest pressings first."""
    hazards: Hazards
    note: str | None


@dataclass(frozen=True, slots=True)
class BlankRow:
    """A blank in the list of blanks."""

    link: Link
    substrate: Link
    swatch: Markup
    method: str
    size: str | None
    supplier: str | None
    code: str | None
    left: int | None
    low: bool
    outcome: str | None


@dataclass(frozen=True, slots=True)
class BlankList:
    """blanks/index.html."""

    rows: tuple[BlankRow, ...]


@dataclass(frozen=True, slots=True)
class ReadingRow:
    """One reading of a press."""

    date: Day | None
    set: Both
    measured: Both
    off: Both
    """Measured less set, with its sign."""
    where: str | None


@dataclass(frozen=True, slots=True)
class PressPage:
    """presses/ID.html."""

    id: str
    name: str
    facts: tuple[Fact, ...]
    readings: tuple[ReadingRow, ...]
    curve: Markup | None
    """The calibration drawn."""
    cautions: tuple[str, ...]
    """About the readings."""
    pressed: str | None
    """1 204 pieces, 1 120 good."""
    rows: tuple[PressSetting, ...]
    hazards: Hazards
    note: str | None


@dataclass(frozen=True, slots=True)
class PressSetting:
    """A setting last used on this press."""

    blank: Link
    row: SettingRow


@dataclass(frozen=True, slots=True)
class PressList:
    """presses/index.html."""

    rows: tuple[PressRow, ...]


@dataclass(frozen=True, slots=True)
class PressRow:
    """A press in the list."""

    link: Link
    kind: str | None
    platen: str | None
    pressed: int
    last_used: Day | None
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SupplyRow:
    """A supply in the list."""

    id: str
    name: str
    kind: str
    material: str | None
    limit: Both | None
    price: str | None
    contents: str | None
    supplier: str | None
    note: str | None


@dataclass(frozen=True, slots=True)
class SupplyList:
    """supplies/index.html."""

    rows: tuple[SupplyRow, ...]


@dataclass(frozen=True, slots=True)
class WritingRow:
    """An article or a write-up in the list of writing."""

    link: Link
    kind: str
    """Write-up or Article."""
    date: Day | None
    summary: str | None
    public: bool


@dataclass(frozen=True, slots=True)
class WritingList:
    """writing/index.html: articles and write-ups."""

    rows: tuple[WritingRow, ...]
    about: Link | None
    """To the page about the shop, where there is one."""


@dataclass(frozen=True, slots=True)
class ArticlePage:
    """writing/ID.html."""

    title: str
    text: Markup
    published: Day | None
    updated: Day | None
    public: bool


@dataclass(frozen=True, slots=True)
class AboutPage:
    """about.html."""

    text: Markup


@dataclass(frozen=True, slots=True)
class MenuPage:
    """menu.html: as customers see it."""

    menu: Menu
    paper: Link | None
    """The same as a PDF to hand out; None where there is nothing on it."""


@dataclass(frozen=True, slots=True)
class Search:
    """search.html: every setting, blank and project, found as one types."""

    data: str
    """Address of the script that is searched."""
    settings: int
    blanks: int
    projects: int
    elsewhere: tuple[Link, ...]
    """Where to look without scripts."""
    hazards: Hazards
