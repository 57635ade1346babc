"""The lines of supplies that are counted out: what the project names, and what lies in the stack.

Inner module of the money workings.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import Final

from maker_site.frozen import frozen
from maker_site.language import say, say_n
from maker_site.records import Supply
from maker_site.records.project import Use
from maker_site.records.quantities import Measure
from maker_site.records.shelved import of_kind
from maker_site.records.words import with_capital
from maker_site.workings.money.case import Case
from maker_site.workings.money.choice import (
    Missing,
    UnitPrice,
    amount_words,
    choose,
    cost_of_use,
    unit_price,
    unit_word,
)
from maker_site.workings.money.line import CostLine, unknown
from maker_site.workings.money.words import Figures

_ON_GOOD_PIECES: Final = ("packaging", "other")
"""Spent after the pressing, so a spoiled piece takes none."""
_NOT_BOUGHT_AS_SUCH: Final = ("transfer", "blank")
_WORN: Final = ("cover sheet", "pad")
"""Used again and again, so paid for over their life."""


_USUAL_LAYERS: Final = ("tape", "protective paper", "cover sheet")
"""What lies in most stacks and costs something. Common practice, no source."""
_COUNTED_USES: Final = ("pressings", "pieces", "sheets")


@frozen
class _Worn:
    """What one pressing wears off something that lasts."""

    each: Fraction
    words: str


def use_line(case: Case, use: Use) -> CostLine:
    """Return the line of a supply that the project names, by how much of it one sold item takes."""
    supply = case.workshop.supplies[use.supply]
    taken = use.use or supply.use
    price = unit_price(supply)
    if isinstance(price, Missing):
        return unknown(supply.name, price.why)
    worn = _worn(supply, price, case.figures)
    if isinstance(worn, Missing):
        return unknown(supply.name, worn.why)
    if worn is not None:
        return _worn_use_line(case, use, supply, worn)
    if taken is None:
        return unknown(supply.name, say("the project says not how much {supply} it takes", supply=supply.id))
    each = cost_of_use(taken, price, supply)
    if isinstance(each, Missing):
        return unknown(supply.name, each.why)
    times, words = _times(case, supply, of_piece=use.use is None)
    amount = amount_words(taken, case.figures)
    return CostLine(
        supply.name,
        each * times,
        words(say("{amount} × {price}", amount=amount, price=price.words(case.figures))),
        used_up=supply.kind not in _ON_GOOD_PIECES,
    )


def _worn_use_line(case: Case, use: Use, supply: Supply, worn: _Worn) -> CostLine:
    """Return the line of something that lasts: a use is a pressing of its life, one a piece if unsaid."""
    taken = use.use or Measure(Fraction(1), "pressings")
    if taken.unit not in _COUNTED_USES:
        why = say("{supply} lasts pressings and is used in {unit}", supply=supply.id, unit=unit_word(taken.unit))
        return unknown(supply.name, why)
    times, words = _times(case, supply, of_piece=use.use is None)
    uses = worn.words
    if taken.amount != 1:
        uses = say("{sum} × {count}", sum=uses, count=case.figures.number(taken.amount))
    return CostLine(
        supply.name,
        worn.each * taken.amount * times,
        words(uses),
        used_up=supply.kind not in _ON_GOOD_PIECES,
    )


def _worn(supply: Supply, price: UnitPrice, figures: Figures) -> _Worn | Missing | None:
    """Return what one pressing wears off a supply; None for one that is not said to last."""
    if supply.lasts is None:
        return None
    if supply.lasts.unit not in _COUNTED_USES:
        return Missing(_says_no_life(supply))
    whole_packet = price.unit not in ("sheets", "pieces") and supply.contents is not None
    one = price.each * supply.contents.amount if whole_packet and supply.contents else price.each
    lasts = supply.lasts.amount
    words = say_n(
        "{price} ÷ {n} pressing",
        "{price} ÷ {n} pressings",
        ceil(lasts),
        price=figures.fine(one),
        n=figures.number(lasts),
    )
    return _Worn(one / lasts, words)


def _times(case: Case, supply: Supply, *, of_piece: bool) -> tuple[Fraction, Callable[[str], str]]:
    """Return how often the amount is taken for one sold item, and what words make of a sum with that.

    A supply's own use is for one piece.
    """
    if of_piece:
        return Fraction(case.pieces), case.times_pieces
    if supply.kind == "packaging" or case.scale == 1:
        return Fraction(1), str
    return case.scale, case.times_pieces_instead


def _says_no_life(supply: Supply) -> str:
    return say("{supply} says not how many pressings it lasts", supply=supply.id)


def says_no_use(supply: Supply) -> str:
    """Return the words for a supply of which nobody knows how much a piece takes."""
    return say("{supply} says not how much of it one piece takes; write its “use”", supply=supply.id)


def project_lines(case: Case) -> Iterator[CostLine]:
    """Yield a line for each supply that the project names, save those counted with the picture."""
    for use in case.project.supplies:
        if case.workshop.supplies[use.supply].kind not in case.of_picture:
            yield use_line(case, use)


def stack_lines(case: Case) -> Iterator[CostLine]:
    """Yield a line for each supply that lies in the stack; one that nobody wrote is a line that is not known.

    A layer that the project's supplies name already is counted there. A pad that no record describes belongs to
    its press. Where no stack is written at all, the usual layers are taken, of the kinds that are on the shelf, and
    said to be assumed.
    """
    supplies = case.workshop.supplies
    stack = case.stack or tuple(layer for layer in _USUAL_LAYERS if of_kind(supplies, layer))
    if not stack:
        yield unknown(say("Papers and sheets"), say("no stack is written in the project or its pressings"))
        return
    for line in _layer_lines(case, stack):
        yield line if case.stack else replace(line, assumed=(*line.assumed, say("the usual stack, none is written")))


def _layer_lines(case: Case, stack: tuple[str, ...]) -> Iterator[CostLine]:
    counted = {use.supply for use in case.project.supplies}
    for layer, times in Counter(stack).items():
        if layer in _NOT_BOUGHT_AS_SUCH or layer in counted:
            continue
        supply = case.workshop.supplies.get(layer) or choose(layer, counted, case.workshop.supplies)
        if isinstance(supply, Missing):
            if layer != "pad" or of_kind(case.workshop.supplies, layer):
                yield unknown(with_capital(say(layer)), supply.why)
        elif supply.kind not in case.of_picture and supply.id not in counted:
            yield _layer(case, supply, times)


def _layer(case: Case, supply: Supply, times: int) -> CostLine:
    price = unit_price(supply)
    if isinstance(price, Missing):
        return unknown(supply.name, price.why)
    figures = case.figures
    worn = _worn(supply, price, figures)
    if isinstance(worn, Missing):
        return unknown(supply.name, worn.why)
    if worn is not None:
        return CostLine(
            supply.name,
            worn.each * times / case.at_once * case.pieces,
            case.times_pieces(case.over_at_once(_layers(worn.words, times))),
            case.at_once_assumed,
            used_up=True,
        )
    if supply.use is not None:
        each = cost_of_use(supply.use, price, supply)
        if isinstance(each, Missing):
            return unknown(supply.name, each.why)
        return CostLine(
            supply.name,
            each * case.pieces,
            case.times_pieces(
                say(
                    "{amount} a piece × {price}",
                    amount=amount_words(supply.use, case.figures),
                    price=price.words(figures),
                )
            ),
            used_up=True,
        )
    if supply.kind in _WORN:
        return unknown(supply.name, _says_no_life(supply))
    if price.unit not in ("sheets", "pieces"):
        return unknown(supply.name, says_no_use(supply))
    return CostLine(
        supply.name,
        price.each * times / case.at_once * case.pieces,
        case.times_pieces(case.over_at_once(_layers(price.words(figures), times))),
        case.at_once_assumed,
        used_up=True,
    )


def _layers(sum_: str, times: int) -> str:
    return sum_ if times == 1 else say_n("{sum} × {n} layer", "{sum} × {n} layers", times, sum=sum_)
