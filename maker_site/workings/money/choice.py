"""Which supply is meant, and what a unit of it costs.

Inner module of the money workings.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from math import ceil
from typing import Final

from maker_site.frozen import frozen
from maker_site.language import listed, marked, say, say_n, spoken
from maker_site.records import Supply
from maker_site.records.quantities import Measure, Size
from maker_site.records.shelved import of_kind
from maker_site.workings.money.words import Figures

_COUNTED: Final = ("pieces", "sheets")
_PRICE_OF_ONE: Final = {
    "ml": marked("{price} a ml"),
    "mm": marked("{price} a m"),
    "g": marked("{price} a g"),
    "m2": marked("{price} a m²"),
    "sheets": marked("{price} a sheet"),
    "pieces": marked("{price} a piece"),
    "pressings": marked("{price} a pressing"),
}
"""The price of one unit; lengths are told by the metre."""
_UNIT_WORDS: Final = {"sheets": marked("sheets"), "pieces": marked("pieces"), "pressings": marked("pressings")}
"""Units that are words."""
_MM_PER_M = 1000


@frozen
class Missing:
    """What keeps a figure from being worked out."""

    why: str
    """Said."""


@frozen
class UnitPrice:
    """What one unit of a supply costs."""

    each: Fraction
    unit: str
    """As in `Measure`."""

    def words(self, figures: Figures) -> str:
        """Return it as ``£0.127 a m``."""
        shown = self.each * _MM_PER_M if self.unit == "mm" else self.each
        return say(_PRICE_OF_ONE[self.unit], price=figures.fine(shown))


def choose(
    kind: str, named: Iterable[str], supplies: Mapping[str, Supply], paper: Size | None = None
) -> Supply | Missing:
    """Return the supply of a kind that is meant: the first one named, else the only one recorded.

    Of several, the only one of the size `paper` is taken where that is given. Nothing else is guessed.
    """
    for name in named:
        if name in supplies and supplies[name].kind == kind:
            return supplies[name]
    found = [supplies[name] for name in of_kind(supplies, kind)]
    if len(found) > 1 and paper is not None:
        found = [supply for supply in found if supply.size and _same(supply.size, paper)] or found
    if len(found) == 1:
        return found[0]
    if not found:
        return Missing(say("no supply of the kind “{kind}” is recorded", kind=say(kind)))
    names = listed(supply.id for supply in found)
    return Missing(say("it could be any of {names}; name one in the project's supplies or stack", names=names))


def unit_price(supply: Supply) -> UnitPrice | Missing:
    """Return price over contents; the price is for one piece where no contents are written."""
    if supply.price is None:
        return Missing(say("{supply} has no price", supply=supply.id))
    price = Fraction(supply.price.value)
    if supply.contents is None:
        return UnitPrice(price, "pieces")
    return UnitPrice(price / supply.contents.amount, supply.contents.unit)


def cost_of_use(use: Measure, price: UnitPrice, supply: Supply) -> Fraction | Missing:
    """Return what an amount of a supply costs; pieces and sheets are counted alike."""
    if use.unit == price.unit or (use.unit in _COUNTED and price.unit in _COUNTED):
        return use.amount * price.each
    return Missing(
        say(
            "{supply} is bought in {unit} and used in {other}",
            supply=supply.id,
            unit=unit_word(price.unit),
            other=unit_word(use.unit),
        )
    )


def amount_words(use: Measure, figures: Figures) -> str:
    """Return an amount as it was typed; where another language is spoken, what is counted with that one's word."""
    count, figure = ceil(use.amount), figures.number(use.amount)
    if use.typed and (spoken().tag == "en" or not any(each.isalpha() for each in use.typed)):
        return use.typed
    match use.unit:
        case "sheets":
            return say_n("{n} sheet", "{n} sheets", count, n=figure)
        case "pieces":
            return say_n("{n} piece", "{n} pieces", count, n=figure)
        case "pressings":
            return say_n("{n} pressing", "{n} pressings", count, n=figure)
    return use.typed or figure


def unit_word(unit: str) -> str:
    """Return a unit of `Measure` in words: ``sheets``; a symbol as it is."""
    return say(_UNIT_WORDS.get(unit, unit))


def _same(one: Size, other: Size) -> bool:
    return {one.width.mm, one.height.mm} == {other.width.mm, other.height.mm}
