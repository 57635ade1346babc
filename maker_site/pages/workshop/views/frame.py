"""What surrounds every page of the workshop copy, and its front page."""

from __future__ import annotations

from markupsafe import Markup

from maker_site.frozen import frozen
from maker_site.pages.parts import Link
from maker_site.pages.workshop.views.catalogue import Tile


@frozen
class WorkshopFrame:
    """What surrounds every page of the workshop copy."""

    shop: str
    line: str | None
    notice: str | None
    """At the foot of every page."""
    language: str
    """What the copy speaks, BCP 47, for the html element."""
    direction: str
    """ltr or rtl."""
    records_language: str
    """What the maker writes; another than `language` where the site can't speak it."""
    doors: tuple[Link, ...]
    """The way to everything: Home, Catalogue, Settings, Blanks, Presses, Supplies, Writing, Menu."""


@frozen
class Attention:
    """A sentence about what wants doing."""

    words: str
    link: Link | None
    english: bool = False
    """It is a problem as the command line tells it, in English whatever the page speaks."""


@frozen
class LowBlank:
    """A blank that is running low."""

    link: Link
    left: int
    at: int
    """Low at or below this count."""
    swatch: Markup


@frozen
class Home:
    """index.html: what was made last, what needs attention, what is running low."""

    newest: tuple[Tile, ...]
    """Three at the most shown large; up to nine."""
    attention: tuple[Attention, ...]
    low: tuple[LowBlank, ...]
    """The first of those that are."""
    low_more: int
    """How many more there are; the list of blanks marks them."""
    projects: int
    blanks: int
    pressed: int
    """Pieces pressed, ever."""
    good: int
