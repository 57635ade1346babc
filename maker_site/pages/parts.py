"""Small frozen pieces that views are built of; none of them is private by itself.

Everything that a template prints is here as words, ready in the shop's language and units. Addresses are paths from the
root of the copy (``blanks/slate.html``), which the writer turns into relative links, or whole web addresses.
"""

from __future__ import annotations

from markupsafe import Markup

from maker_site.frozen import frozen


@frozen
class Link:
    """Words that lead somewhere."""

    text: str
    address: str
    paid: bool = False
    """It earns the maker something, and says so."""


@frozen
class Paging:
    """Where one page of a long list stands."""

    number: int
    """From 1."""
    of: int
    newer: Link | None
    """To the page before this one."""
    older: Link | None
    """To the page after it."""


@frozen
class Both:
    """A quantity in both unit systems."""

    first: str
    """In the shop's unit: ``200 °C``, ``5:00``."""
    second: str
    """In the other: ``392 °F``, ``300 s``."""


@frozen
class Day:
    """A date."""

    iso: str
    """2026-04-18."""
    words: str
    """18 Apr 2026, as the shop's language writes it."""


@frozen
class Source:
    """One file of a picture."""

    address: str
    width: int


@frozen
class Picture:
    """A picture in several sizes."""

    text: str
    """What it shows, for those who can't see it."""
    caption: str | None
    width: int
    """Of the original, upright, in pixels: the ratio keeps the layout still."""
    height: int
    modern: tuple[Source, ...]
    """Narrowest first."""
    modern_type: str
    """Media type of `modern`."""
    fallback: Source
    """The one JPEG."""


@frozen
class Hazard:
    """A caution beside a setting."""

    kind: str
    """For the icon: hot, pinch, fumes, ptfe, electrical, fire, breakage, steam, food, dishwasher, sun, limit."""
    title: str
    words: str
    short: str
    """A few words for a small printed card."""


@frozen
class Hazards:
    """All cautions of a setting, gravest first, and the sentence that ends them."""

    each: tuple[Hazard, ...]
    closing: str


@frozen
class EvidenceShown:
    """What came of a setting."""

    pressed: int
    good: int
    low_percent: int
    high_percent: int
    words: str
    """24 of 25 good; the true share is likely between 80 and 99 %."""
    short: str
    """24 of 25."""
    dots: Markup
    """Counted marks."""
    bar: Markup
    """The interval from 0 to 100 %."""
    last_used: Day
    defects: tuple[str, ...]
    """``blurred (3)``, most frequent first."""


@frozen
class MenuItem:
    """One thing a customer can have. Both copies show the same."""

    anchor: str
    """For links to it; unique on the page."""
    address: str
    """Where it stands, page and anchor."""
    name: str
    line: str | None
    size: str | None
    """100 x 100 mm (3.94 x 3.94 in)."""
    material: str
    """Slate."""
    options: tuple[str, ...]
    price: str | None
    """In the shop's money and language; None: ask."""
    picture: Picture | None
    stand_in: Markup | None
    """The hatched blank, drawn to scale, where there is no picture."""
    page: Link | None
    """Its tutorial in the public copy, its project in the workshop copy."""


@frozen
class MenuSection:
    """A part of the menu."""

    title: str
    items: tuple[MenuItem, ...]
    more: Link | None = None
    """To all of them, where a page shows only the first."""


@frozen
class Menu:
    """The printed list for customers."""

    shop: str
    line: str | None
    sections: tuple[MenuSection, ...]
    lead_time: str | None
    how_to_order: str | None
    contact: str | None
    dated: Day | None
    """The newest day that its entries say for everybody, so that an old print is known as old."""
