"""Settings in words: what was set, what came of it, where to begin, what to try next."""

from __future__ import annotations

from markupsafe import Markup

from maker_site.frozen import frozen
from maker_site.pages.parts import Both, Day, EvidenceShown, Hazards, Link, Paging, Picture


@frozen
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


@frozen
class SettingRow:
    """A setting of a blank with what came of it."""

    setting: SettingShown
    evidence: EvidenceShown
    projects: tuple[Link, ...]
    best: bool


@frozen
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


@frozen
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


@frozen
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


@frozen
class Fact:
    """A name and a value of a list of facts."""

    name: str
    value: str
    link: Link | None = None
    """Where the value leads, when it leads somewhere."""


@frozen
class NextTryShown:
    """One thing to change, with its reason."""

    change: str
    reason: str
    defect: str
    """What it answers; empty where no defect is noted."""


@frozen
class RungRow:
    """One setting of a test ladder, to be filled in by hand."""

    dial: Both
    true: Both | None
    """At the platen, where the press has readings."""
    time: Both
    why: str


@frozen
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


@frozen
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


@frozen
class SettingsIndex:
    """settings/index.html: a row for each substrate."""

    rows: tuple[SubstrateRow, ...]
    hazards: Hazards


@frozen
class BlankEntry:
    """What the settings of a material show of one blank; made of that blank's own records and sums."""

    id: str
    blank: Link
    supplier: str | None
    code: str | None
    method: str
    left: int | None
    best: SettingRow | None
    """The best supported of its settings, where one came out good."""
    claim: StartShown | None
    """Where to start, where none did."""
    sheet: SheetShown | None
    disagreement: str | None
    """Where the maker's best and the sheet differ by more than the press's step."""
    settings: int
    """How many were tried."""
    all: Link
    """To every one of them."""


@frozen
class SubstratePage:
    """settings/SUBSTRATE.html, settings/SUBSTRATE/2.html …: the best setting of each blank, blank by blank."""

    substrate: str
    band: Markup
    """The hatching, broad, for the header."""
    blanks: tuple[BlankEntry, ...]
    total: int
    """Of all pages."""
    paging: Paging
    plot: Markup | None
    """Temperature and time of every setting with n and outcome; on the first page."""
    common: StartShown | None
    """The common-practice range, marked as such; on the first page."""
    hazards: Hazards


@frozen
class BlankSettings:
    """blanks/ID/settings/2.html …: the settings of a blank that its own page has no room for, less and less sure."""

    blank: Link
    band: Markup
    rows: tuple[SettingRow, ...]
    first: int
    """The place of the first among all, from 1."""
    total: int
    paging: Paging
    hazards: Hazards
