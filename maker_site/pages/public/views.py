"""What each page of the public copy shows. Nothing private has a field here: that is the wall."""

from __future__ import annotations

from markupsafe import Markup

from maker_site.frozen import frozen
from maker_site.pages.parts import Both, Day, Hazards, Link, Menu, MenuSection, Paging, Picture


@frozen
class PublicFrame:
    """What surrounds every page of the public copy."""

    shop: str
    line: str | None
    notice: str | None
    language: str
    """What the copy speaks, BCP 47."""
    direction: str
    records_language: str
    """What the maker writes; another than `language` where the site can't speak it."""
    doors: tuple[Link, ...]
    """Home, Tutorials, Articles, Menu, About, Search: those that have something behind them."""
    address: str | None
    """Where the copy lives."""
    contact: str | None
    icon: str
    """The shop's sign in a browser's tab, an SVG."""
    icon_picture: str
    """The same as a PNG."""
    feed: str | None
    """The address of the feed, where there is one."""


@frozen
class Found:
    """What the programs of others are told of a page: search engines, and those that show a shared link."""

    canonical: str
    """Its whole web address."""
    kind: str
    """By Open Graph: ``website`` or ``article``."""
    locale: str
    """``en_GB``."""
    picture: str
    """The whole web address of a drawn picture."""
    picture_width: int
    picture_height: int
    picture_text: str
    published: Day | None
    updated: Day | None
    data: Markup
    """JSON-LD by schema.org, safe inside a script element."""


@frozen
class PublicTile:
    """A tutorial in a grid."""

    link: Link
    material: str
    swatch: Markup
    """The material's hatching, small."""
    summary: str | None
    difficulty: str | None
    published: Day | None
    picture: Picture | None
    stand_in: Markup | None


@frozen
class ArticleRow:
    """An article in a list."""

    link: Link
    summary: str | None
    published: Day | None


@frozen
class FrontPage:
    """index.html."""

    tutorials: tuple[PublicTile, ...]
    articles: tuple[ArticleRow, ...]
    menu: tuple[MenuSection, ...]
    """Empty: no menu."""
    gifts: Link | None


@frozen
class MaterialWay:
    """The way to what is made of one material."""

    link: Link
    swatch: Markup


@frozen
class TutorialList:
    """tutorials/index.html, and the pages that follow it."""

    tiles: tuple[PublicTile, ...]
    paging: Paging
    materials: tuple[MaterialWay, ...]
    occasions: tuple[Link, ...]
    months: tuple[Link, ...]
    """The latest first."""
    gifts: Link | None


@frozen
class GroupList:
    """What is on one material, for one occasion or of one month: on/, for/, in/."""

    kind: str
    """Material, Occasion, Month."""
    title: str
    swatch: Markup | None
    """The material's hatching, wide."""
    tiles: tuple[PublicTile, ...]
    rows: tuple[ArticleRow, ...]
    paging: Paging
    back: Link


@frozen
class GiftItem:
    """Something on the menu, as an idea for a present."""

    name: Link
    """Leads to it on the menu."""
    line: str | None
    price: str | None
    picture: Picture | None
    stand_in: Markup | None


@frozen
class GiftGroup:
    """Ideas for one occasion, or within one span of prices, the cheapest first."""

    title: str
    anchor: str
    items: tuple[GiftItem, ...]
    more: Link | None = None
    """To all of them, where a page shows only the first."""


@frozen
class GiftIdeas:
    """gifts.html; of a group with more than that page shows also gifts/for-OCCASION.html, gifts/price-1.html …."""

    prices: tuple[GiftGroup, ...]
    occasions: tuple[GiftGroup, ...]
    group: str | None = None
    """The one that the page is of; None on the first."""
    paging: Paging | None = None


@frozen
class SearchPage:
    """search.html."""

    data: str
    """The address of the script that is searched."""
    pages: int
    elsewhere: tuple[Link, ...]
    """Where everything is found by hand."""


@frozen
class SharedSetting:
    """A setting that the maker chose to share, in a reader's words."""

    temperature: Both
    """At the platen, where it is known; the dial's figure of another press means nothing."""
    time: Both
    pressure: str | None
    face_words: str | None
    substrate: str
    press_kind: str | None
    words: str
    """24 of 25 came out well on our press; yours will differ: test one, and start from your own supplier’s sheet."""


@frozen
class SharedSupply:
    """A thing a reader needs."""

    name: str
    amount: str | None
    link: Link | None


@frozen
class Step:
    """One step of a tutorial; its number is its place."""

    title: Markup
    text: Markup


@frozen
class Video:
    """A film elsewhere: a link with a still, never a frame of somebody else's."""

    link: Link
    host: str
    """Where the link leads, as a reader should know before following it."""
    still: Picture | None


@frozen
class Tutorial:
    """tutorials/ID.html."""

    title: str
    summary: str | None
    material: Link
    """Leads to all that is made of it."""
    swatch: Markup
    """The material's hatching, wide."""
    method: str
    difficulty: str | None
    time_needed: str | None
    published: Day | None
    updated: Day | None
    occasions: tuple[Link, ...]
    """Each leads to all that suits it."""
    cover: Picture | None
    stand_in: Markup | None
    pictures: tuple[Picture, ...]
    """Shared photos that the text does not show."""
    opening: Markup
    """What is written before the first step; all of it, where the text has no steps. May be empty."""
    steps: tuple[Step, ...]
    setting: SharedSetting | None
    hazards: Hazards
    supplies: tuple[SharedSupply, ...]
    tools: tuple[str, ...]
    disclosure: str | None
    """The sentence that a link pays, where one does."""
    care: tuple[str, ...]
    """Care and food contact, as the maker chose to say."""
    video: Video | None
    previous: Link | None
    next: Link | None
    related: tuple[PublicTile, ...]


@frozen
class ArticleList:
    """articles/index.html, and the pages that follow it."""

    rows: tuple[ArticleRow, ...]
    paging: Paging


@frozen
class Article:
    """articles/ID.html."""

    title: str
    text: Markup
    published: Day | None
    updated: Day | None
    summary: str | None
    occasions: tuple[Link, ...]
    disclosure: str | None
    previous: Link | None
    next: Link | None


@frozen
class About:
    """about.html."""

    text: Markup | None
    contact: str | None
    lead_time: str | None


@frozen
class MenuPage:
    """menu.html, menu/SECTION.html …."""

    menu: Menu
    """What this page shows of it."""
    section: str | None
    """The one that the page is of; None on the first."""
    first: int
    """The place in its section of the first thing on the page, from 1."""
    paging: Paging | None
    paper: Link | None
    """The same as a PDF to print; None where there is nothing on it."""
    gifts: Link | None


@frozen
class Moved:
    """Where a page stood before: it leads on at once."""

    to: Link
    canonical: str | None


@frozen
class Missing:
    """404.html: shown by a host at any address where nothing is, so its links are whole where they can be."""

    ways: tuple[Link, ...]
