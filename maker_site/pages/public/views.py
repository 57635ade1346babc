"""What each page of the public copy shows. Nothing private has a field here: that is the wall."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from maker_site.pages.parts import Both, Day, Hazards, Link, Menu, MenuSection, Picture


@dataclass(frozen=True, slots=True)
class PublicFrame:
    """What surrounds every page of the public copy."""

    shop: str
    line: str | None
    notice: str | None
    language: str
    direction: str
    doors: tuple[Link, ...]
    """Home, Tutorials, Articles, Menu, About: those that have something behind them."""
    address: str | None
    """Where the copy lives, for canonical links."""
    contact: str | None


@dataclass(frozen=True, slots=True)
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


@dataclass(frozen=True, slots=True)
class ArticleRow:
    """An article in a list."""

    link: Link
    summary: str | None
    published: Day | None


@dataclass(frozen=True, slots=True)
class FrontPage:
    """index.html."""

    tutorials: tuple[PublicTile, ...]
    articles: tuple[ArticleRow, ...]
    menu: tuple[MenuSection, ...]
    """Empty: no menu."""


@dataclass(frozen=True, slots=True)
class TutorialList:
    """tutorials/index.html."""

    tiles: tuple[PublicTile, ...]


@dataclass(frozen=True, slots=True)
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


@dataclass(frozen=True, slots=True)
class SharedSupply:
    """A thing a reader needs."""

    name: str
    amount: str | None
    link: Link | None


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a tutorial; its number is its place."""

    title: Markup
    text: Markup


@dataclass(frozen=True, slots=True)
class Tutorial:
    """tutorials/ID.html."""

    title: str
    summary: str | None
    material: str
    swatch: Markup
    """The material's hatching, wide."""
    method: str
    difficulty: str | None
    time_needed: str | None
    published: Day | None
    updated: Day | None
    occasions: tuple[str, ...]
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
    disclosure: str | None
    """The sentence that a link pays, where one does."""
    care: tuple[str, ...]
    """Care and food contact, as the maker chose to say."""
    video: Link | None
    previous: Link | None
    next: Link | None


@dataclass(frozen=True, slots=True)
class ArticleList:
    """articles/index.html."""

    rows: tuple[ArticleRow, ...]


@dataclass(frozen=True, slots=True)
class Article:
    """articles/ID.html."""

    title: str
    text: Markup
    published: Day | None
    updated: Day | None
    summary: str | None


@dataclass(frozen=True, slots=True)
class About:
    """about.html."""

    text: Markup | None
    contact: str | None
    lead_time: str | None


@dataclass(frozen=True, slots=True)
class MenuPage:
    """menu.html."""

    menu: Menu
    paper: Link | None
    """The same as a PDF to print; None where there is nothing on it."""
