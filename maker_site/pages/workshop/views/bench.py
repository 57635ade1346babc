"""Blanks, presses and supplies."""

from __future__ import annotations

from markupsafe import Markup

from maker_site.frozen import frozen
from maker_site.pages.parts import Both, Day, Hazards, Link, Paging, Picture
from maker_site.pages.workshop.views.catalogue import Tile
from maker_site.pages.workshop.views.settings import Fact, LogRow, NextTryShown, SettingRow, SheetShown, StartShown


@frozen
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


@frozen
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
    """The best supported of its settings."""
    settings: int
    """How many were tried."""
    paging: Paging
    """To the others."""
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


@frozen
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


@frozen
class BlankList:
    """blanks/index.html, blanks/pages/2.html …: by material."""

    rows: tuple[BlankRow, ...]
    total: int
    paging: Paging
    materials: tuple[Link, ...]
    """To the page and the place where each material begins; empty where one page holds all."""


@frozen
class ReadingRow:
    """One reading of a press."""

    date: Day | None
    set: Both
    measured: Both
    off: Both
    """Measured less set, with its sign."""
    where: str | None


@frozen
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


@frozen
class PressSetting:
    """A setting last used on this press."""

    blank: Link
    row: SettingRow


@frozen
class PressList:
    """presses/index.html."""

    rows: tuple[PressRow, ...]


@frozen
class PressRow:
    """A press in the list."""

    link: Link
    kind: str | None
    platen: str | None
    pressed: int
    last_used: Day | None
    cautions: tuple[str, ...]


@frozen
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


@frozen
class SupplyList:
    """supplies/index.html."""

    rows: tuple[SupplyRow, ...]
