"""Projects in a grid, and the filters of the catalogue."""

from __future__ import annotations

from markupsafe import Markup

from maker_site.frozen import frozen
from maker_site.pages.parts import Day, Hazards, Link, Picture


@frozen
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


@frozen
class CatalogueEntry:
    """What the catalogue shows of one project and finds it by; made of that project's own records and sums."""

    id: str
    tile: Tile
    family: str
    """Of the blank's material: how it is hatched."""
    year: str
    """It was made in, or last pressed in; empty where neither is known."""
    words: str
    """That it is found by, besides those that it shows."""


@frozen
class FilterWord:
    """One choice of a filter."""

    word: str
    count: int


@frozen
class Filter:
    """A filter of the catalogue."""

    name: str
    """substrate, method, occasion or year: the key in the address."""
    title: str
    """Substrate, Method …"""
    words: tuple[FilterWord, ...]


@frozen
class MaterialMark:
    """The hatching of one family of materials, for tiles that the page's script builds."""

    family: str
    """As in the data script's rows."""
    swatch: Markup
    field: Markup
    """The same, large: it stands where there is no picture."""


@frozen
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


@frozen
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
