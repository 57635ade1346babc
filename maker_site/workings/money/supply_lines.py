"""The lines of supplies that are counted out: what the project names, and what lies in the stack.

Inner module of the money workings.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from maker_site.records import Supply
from maker_site.records.project import Use
from maker_site.records.quantities import Measure
from maker_site.workings.money.case import Case
from maker_site.workings.money.choice import Missing, UnitPrice, choose, cost_of_use, unit_price
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


@dataclass(frozen=True, slots=True)
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
        return unknown(supply.name, f"the project says not how much {supply.id} it takes")
    each = cost_of_use(taken, price, supply)
    if isinstance(each, Missing):
        return unknown(supply.name, each.why)
    times, words = _times(case, supply, of_piece=use.use is None)
    return CostLine(
        supply.name,
        each * times,
        f"{taken.typed or case.figures.number(taken.amount)} × {price.words(case.figures)}{words}",
        used_up=supply.kind not in _ON_GOOD_PIECES,
    )


def _worn_use_line(case: Case, use: Use, supply: Supply, worn: _Worn) -> CostLine:
    """Return the line of something that lasts: a use is a pressing of its life, one a piece if unsaid."""
    taken = use.use or Measure(Fraction(1), "pressings")
    if taken.unit not in _COUNTED_USES:
        return unknown(supply.name, f"{supply.id} lasts pressings and is used in {taken.unit}")
    times, words = _times(case, supply, of_piece=use.use is None)
    uses = f" × {case.figures.number(taken.amount)}" if taken.amount != 1 else ""
    return CostLine(
        supply.name,
        worn.each * taken.amount * times,
        f"{worn.words}{uses}{words}",
        used_up=supply.kind not in _ON_GOOD_PIECES,
    )


def _worn(supply: Supply, price: UnitPrice, figures: Figures) -> _Worn | Missing | None:
    """Return what one pressing wears off a supply; None for one that is not said to last."""
    if supply.lasts is None:
        return None
    if supply.lasts.unit not in _COUNTED_USES:
        return Missing(f"{supply.id} says not how many pressings it lasts")
    whole_packet = price.unit not in ("sheets", "pieces") and supply.contents is not None
    one = price.each * supply.contents.amount if whole_packet and supply.contents else price.each
    lasts = supply.lasts.amount
    return _Worn(one / lasts, f"{figures.fine(one)} ÷ {figures.number(lasts)} pressings")


def _times(case: Case, supply: Supply, *, of_piece: bool) -> tuple[Fraction, str]:
    """Return how often the amount is taken for one sold item: a supply's own use is for one piece."""
    if of_piece:
        return Fraction(case.pieces), case.times_pieces
    if supply.kind == "packaging" or case.scale == 1:
        return Fraction(1), ""
    return case.scale, f" × {case.pieces} pieces instead of {case.project.pieces}"


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
    shelf = {supply.kind for supply in case.workshop.supplies.values()}
    stack = case.stack or tuple(layer for layer in _USUAL_LAYERS if layer in shelf)
    if not stack:
        yield unknown("Papers and sheets", "no stack is written in the project or its pressings")
        return
    for line in _layer_lines(case, stack):
        yield line if case.stack else replace(line, assumed=(*line.assumed, "the usual stack, none is written"))


def _layer_lines(case: Case, stack: tuple[str, ...]) -> Iterator[CostLine]:
    counted = {use.supply for use in case.project.supplies}
    for layer, times in Counter(stack).items():
        if layer in _NOT_BOUGHT_AS_SUCH or layer in counted:
            continue
        supply = case.workshop.supplies.get(layer) or choose(layer, counted, case.workshop.supplies)
        if isinstance(supply, Missing):
            recorded = any(each.kind == layer for each in case.workshop.supplies.values())
            if layer != "pad" or recorded:
                yield unknown(layer.capitalize(), supply.why)
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
            f"{worn.words}{_layers(times)}{case.over_at_once}{case.times_pieces}",
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
            f"{supply.use.typed} a piece × {price.words(figures)}{case.times_pieces}",
            used_up=True,
        )
    if supply.kind in _WORN:
        return unknown(supply.name, f"{supply.id} says not how many pressings it lasts")
    if price.unit not in ("sheets", "pieces"):
        return unknown(supply.name, f"{supply.id} says not how much of it one piece takes; write its “use”")
    return CostLine(
        supply.name,
        price.each * times / case.at_once * case.pieces,
        f"{price.words(figures)}{_layers(times)}{case.over_at_once}{case.times_pieces}",
        case.at_once_assumed,
        used_up=True,
    )


def _layers(times: int) -> str:
    return "" if times == 1 else f" × {times} layers"
