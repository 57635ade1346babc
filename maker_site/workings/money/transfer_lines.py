"""The lines of the picture: ink, and transfer paper, vinyl or film.

Inner module of the money workings.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from maker_site.language import marked, say, say_n
from maker_site.records import Supply
from maker_site.records.words import with_capital
from maker_site.workings.money.case import Case
from maker_site.workings.money.choice import Missing, UnitPrice, amount_words, choose, cost_of_use, unit_price
from maker_site.workings.money.ink import ink_ml
from maker_site.workings.money.line import CostLine, unknown
from maker_site.workings.money.supply_lines import says_no_use, use_line
from maker_site.workings.money.transfer_size import TransferSize, transfer_size
from maker_site.workings.sheet_layout import SheetLayout, lay_out, sheets_needed

_NO_SIZE: Final = marked("the blank has no size")


def transfer_lines(case: Case) -> Iterator[CostLine]:
    """Yield the lines of ink (dye sublimation only) and of what carries the picture."""
    if case.method == "sublimation":
        yield from _inks(case)
    kind = case.material
    written = [use for use in case.project.supplies if _kind(case, use.supply) == kind]
    if written:
        yield from (use_line(case, use) for use in written)
        return
    found = [name for name in dict.fromkeys(case.stack) if _kind(case, name) == kind]
    if not found:
        chosen = choose(kind, (), case.workshop.supplies, case.workshop.shop.paper)
        if isinstance(chosen, Missing):
            yield unknown(with_capital(say(kind)), chosen.why)
            return
        found = [chosen.id]
    for name in found:
        yield _material(case, case.workshop.supplies[name])


def sheet_for(case: Case, supply: Supply) -> SheetLayout | Missing:
    """Return how the transfers of one piece lie on a sheet of the supply, else of the shop's paper."""
    size = transfer_size(case.project, case.blank)
    sheet = supply.size or case.workshop.shop.paper
    if size is None:
        return Missing(say(_NO_SIZE))
    if sheet is None:
        return Missing(say("{supply} has no size and the shop no paper", supply=supply.id))
    printer = case.workshop.shop.printer
    return lay_out(
        (size.width, size.height),
        (sheet.width.mm, sheet.height.mm),
        printer.margin.mm if printer.margin else Fraction(0),
        printer.gap.mm if printer.gap else Fraction(0),
    )


def _kind(case: Case, name: str) -> str | None:
    supply = case.workshop.supplies.get(name)
    return supply.kind if supply else None


def _inks(case: Case) -> Iterator[CostLine]:
    """Yield the ink by the amounts that the project writes, else the one worked out from the artwork."""
    written = [use for use in case.project.supplies if _kind(case, use.supply) == "ink" and use.use]
    yield from (use_line(case, use) for use in written)
    if not written:
        yield _ink(case)


def _ink(case: Case) -> CostLine:
    named = [use.supply for use in case.project.supplies]
    ink = choose("ink", named, case.workshop.supplies)
    size = transfer_size(case.project, case.blank)
    price = ink if isinstance(ink, Missing) else unit_price(ink)
    name = say("Ink")
    if isinstance(ink, Missing) or isinstance(price, Missing):
        return unknown(name, price.why if isinstance(price, Missing) else "")
    if price.unit != "ml":
        return unknown(name, say("{supply} has no contents in ml", supply=ink.id))
    if ink.laydown is None:
        return unknown(name, say("{supply} has no laydown", supply=ink.id))
    if size is None:
        return unknown(name, say(_NO_SIZE))
    if case.coverage is None:
        return unknown(name, say("the artwork's coverage is not measured"))
    figures = case.figures
    millilitres = ink_ml(size.square_metres, case.coverage, ink.laydown)
    words = say(
        "estimate: {width} × {height} mm with bleed × {coverage} coverage × {laydown} ml/m² = {amount} ml × {price}",
        width=figures.number(size.width),
        height=figures.number(size.height),
        coverage=figures.percent(case.coverage),
        laydown=figures.number(ink.laydown),
        amount=figures.number(millilitres, 4),
        price=price.words(figures),
    )
    return CostLine(
        name,
        millilitres * price.each * case.pieces,
        case.times_pieces(words),
        _bleed_assumed(size),
        used_up=True,
    )


def _material(case: Case, supply: Supply) -> CostLine:
    name = with_capital(say(supply.kind))
    price = unit_price(supply)
    if isinstance(price, Missing):
        return unknown(name, price.why)
    if supply.use is not None:
        each = cost_of_use(supply.use, price, supply)
        if isinstance(each, Missing):
            return unknown(name, each.why)
        return CostLine(
            name,
            each * case.pieces,
            case.times_pieces(
                say(
                    "{amount} a piece × {price}",
                    amount=amount_words(supply.use, case.figures),
                    price=price.words(case.figures),
                )
            ),
            used_up=True,
        )
    if price.unit in ("sheets", "pieces"):
        return _sheets(case, supply, price)
    size = transfer_size(case.project, case.blank)
    if size is None:
        return unknown(name, say(_NO_SIZE))
    if price.unit == "m2":
        return CostLine(
            name,
            size.square_metres * price.each * case.pieces,
            case.times_pieces(
                say(
                    "{area} m² × {price}",
                    area=case.figures.number(size.square_metres, 4),
                    price=price.words(case.figures),
                )
            ),
            _bleed_assumed(size),
            used_up=True,
        )
    return unknown(name, says_no_use(supply))


def _sheets(case: Case, supply: Supply, price: UnitPrice) -> CostLine:
    name = with_capital(say(supply.kind))
    layout = sheet_for(case, supply)
    size = transfer_size(case.project, case.blank)
    if isinstance(layout, Missing) or size is None:
        return unknown(name, layout.why if isinstance(layout, Missing) else say(_NO_SIZE))
    width, height = case.figures.number(size.width), case.figures.number(size.height)
    sides = say("{width} × {height} mm", width=width, height=height)
    if not layout.count:
        why = say("a transfer of {sides} does not fit a sheet of {supply}", sides=sides, supply=supply.id)
        return unknown(name, why)
    pieces = case.batch * case.pieces
    sheets = sheets_needed(pieces, layout.count)
    printer = case.workshop.shop.printer
    unwritten = tuple(
        words
        for value, words in ((printer.margin, say("no printer margin")), (printer.gap, say("no gap")))
        if not value
    )
    words = say(
        "{transfers} of {sides}, {count} to a sheet: {sheets} × {price}",
        transfers=say_n("{n} transfer", "{n} transfers", pieces),
        sides=sides,
        count=layout.count,
        sheets=say_n("{n} sheet", "{n} sheets", sheets),
        price=case.figures.fine(price.each),
    )
    return CostLine(
        name,
        sheets * price.each / case.batch,
        case.over_batch(words),
        (*case.batch_assumed, *_bleed_assumed(size), *unwritten),
        used_up=True,
        shared=True,
        sheets=(layout.count, price.each),
    )


def _bleed_assumed(size: TransferSize) -> tuple[str, ...]:
    return () if size.bleed_written else (say("no bleed"),)
