"""A book of press cards: one a page, or several on a sheet with cut marks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from fractions import Fraction
from math import ceil
from typing import Final

from maker_site.frozen import frozen
from maker_site.language import say
from maker_site.paper.sizes import SheetSize
from maker_site.paper.typesetting import Document

_LEAST: Final = (Fraction("101.6"), Fraction("139.7"))
"""mm: a card is not smaller than a quarter of Letter is high or 4 x 6 in is wide."""


@frozen
class CardFact:
    """A name and what it says."""

    name: str
    value: str


@frozen
class CardFigure:
    """A figure large, with the same in the other unit."""

    name: str
    first: str
    second: str
    more: str | None
    """True 196 °C, 385 °F."""


@frozen
class CardHazard:
    """A caution in a few words, with its icon."""

    icon: str
    """SVG."""
    words: str
    grave: bool


@frozen
class Card:
    """All that one card shows, as words and SVG."""

    title: str
    number: str
    blank: str
    swatch: str
    hazards: tuple[CardHazard, ...]
    """Gravest first."""
    closing: str
    figures: tuple[CardFigure, ...]
    """Temperature and time; none where no full setting is known."""
    unknown: str | None
    """What is said instead of them."""
    pressure: str | None
    face: str | None
    face_words: str | None
    face_mark: str | None
    mirror: str
    mirror_mark: str | None
    facts: tuple[CardFact, ...]
    stack: str
    stack_title: str
    stack_words: str
    """The layers in words, for those who can't see the drawing."""
    source: str
    evidence: str | None
    dots: str | None
    last: str | None
    footing: str | None
    code: str
    """SVG of the square code."""
    code_words: str
    """What the code opens."""


def cards_across(paper: SheetSize) -> tuple[int, int]:
    """Return how many cards lie side by side and one below the other on a sheet; one where it is a card's size."""
    return max(1, int(paper.width / _LEAST[0])), max(1, int(paper.height / _LEAST[1]))


def pages_of(cards: int, paper: SheetSize) -> int:
    """Return the sheets that so many cards take."""
    across, down = cards_across(paper)
    return ceil(cards / (across * down))


def card_document(cards: Sequence[Card], paper: SheetSize, title: str, language: tuple[str, str | None]) -> Document:
    """Return a book of cards on a paper; a paper that has room for several is parted evenly among them."""
    across, down = cards_across(paper)
    data = {
        "width": float(paper.width),
        "height": float(paper.height),
        "across": across,
        "down": down,
        "cards": [
            {**asdict(card), "code_words": say("Square code. {words}.", words=card.code_words)} for card in cards
        ],
        "said": {
            "cautions": say("Cautions"),
            "pressure": say("Pressure"),
            "face": say("Face"),
            "mirror": say("Mirror"),
        },
    }
    return Document("card.typ", title, *language, data)
