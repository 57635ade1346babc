"""The share of pressings that come out good, as costing takes it in."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil
from typing import Final

from maker_site.language import say
from maker_site.records import Shop

COMMON_YIELD: Final = Fraction(9, 10)
"""Where neither log nor shop says anything. Common practice, no source: none was found for a home bench."""


@dataclass(frozen=True, slots=True)
class Yield:
    """Good over pressed, and where the figure is from."""

    share: Fraction
    """0 to 1."""
    source: str
    """In words, said, such as ``24 of 25 good``."""
    assumed: bool
    """The log says nothing yet."""

    def __post_init__(self) -> None:
        if not 0 <= self.share <= 1:
            raise ValueError(f"a yield of {self.share} is not between 0 and 1")


def assumed_yield(shop: Shop) -> Yield:
    """Return what is assumed without a log: the shop's usual yield, else common practice."""
    if shop.usual_yield is not None and 0 < shop.usual_yield.of_one <= 1:
        return Yield(shop.usual_yield.of_one, say("the shop's usual yield, no log yet"), assumed=True)
    return Yield(COMMON_YIELD, say("common practice, no log yet"), assumed=True)


def pieces_to_start(wanted: int, share: Fraction) -> int | None:
    """Return how many pieces to begin with: wanted over yield, rounded up, and never fewer than one spare.

    None where nothing came out good yet; 0 where nothing is wanted.
    """
    if not share:
        return None
    return max(ceil(wanted / share), wanted + 1) if wanted else 0
