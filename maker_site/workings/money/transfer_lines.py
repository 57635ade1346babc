"""The lines of the picture: ink, and transfer paper, vinyl or film.

Inner module of the money workings.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from maker_site.records import Supply
from maker_site.workings.money.case import Case
from maker_site.workings.money.choice import Missing, UnitPrice, choose, cost_of_use, unit_price
from maker_site.workings.money.ink import ink_ml
from maker_site.workings.money.line import CostLine, unknown
from maker_site.workings.money.supply_lines import use_line
from maker_site.workings.money.transfer_size import TransferSize, transfer_size
from maker_site.workings.sheet_layout import SheetLayout, lay_out, sheets_needed

_NO_SIZE: Final = "the blank has no size"


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
            yield unknown(kind.capitalize(), chosen.why)
            return
        found = [chosen.id]
    for name in found:
        yield _material(case, case.workshop.supplies[name])


def sheet_for(case: Case, supply: Supply) -> SheetLayout | Missing:
    """Return how the transfers of one piece lie on a sheet of the supply, else of the shop's paper."""
    size = transfer_size(case.project, case.blank)
    sheet = supply.size or case.workshop.shop.paper
    if size is None:
        return Missing(_NO_SIZE)
    if sheet is None:
        return Missing(f"{supply.id} has no size and the shop no paper")
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
    if isinstance(ink, Missing) or isinstance(price, Missing):
        return unknown("Ink", price.why if isinstance(price, Missing) else "")
    if price.unit != "ml":
        return unknown("Ink", f"{ink.id} has no contents in ml")
    if ink.laydown is None:
        return unknown("Ink", f"{ink.id} has no laydown")
    if size is None:
        return unknown("Ink", _NO_SIZE)
    if case.coverage is None:
        return unknown("Ink", "the artwork's coverage is not measured")
    figures = case.figures
    millilitres = ink_ml(size.square_metres, case.coverage, ink.laydown)
    return CostLine(
        "Ink",
        millilitres * price.each * case.pieces,
        f"estimate: {figures.number(size.width)} × {figures.number(size.height)} mm with bleed"
        f" × {figures.percent(case.coverage)} coverage × {figures.number(ink.laydown)} ml/m²"
        f" = {figures.number(millilitres, 4)} ml × {price.words(figures)}{case.times_pieces}",
        _bleed_assumed(size),
        used_up=True,
    )


def _material(case: Case, supply: Supply) -> CostLine:
    name = supply.kind.capitalize()
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
            f"{supply.use.typed} a piece × {price.words(case.figures)}{case.times_pieces}",
            used_up=True,
        )
    if price.unit in ("sheets", "pieces"):
        return _sheets(case, supply, price)
    size = transfer_size(case.project, case.blank)
    if size is None:
        return unknown(name, _NO_SIZE)
    if price.unit == "m2":
        return CostLine(
            name,
            size.square_metres * price.each * case.pieces,
            f"{case.figures.number(size.square_metres, 4)} m² × {price.words(case.figures)}{case.times_pieces}",
            _bleed_assumed(size),
            used_up=True,
        )
    return unknown(name, f"{supply.id} says not how much of it one piece takes; write its “use”")


def _sheets(case: Case, supply: Supply, price: UnitPrice) -> CostLine:
    name = supply.kind.capitalize()
    layout = sheet_for(case, supply)
    size = transfer_size(case.project, case.blank)
    if isinstance(layout, Missing) or size is None:
        return unknown(name, layout.why if isinstance(layout, Missing) else _NO_SIZE)
    sides = f"{case.figures.number(size.width)} × {case.figures.number(size.height)} mm"
    if not layout.count:
        return unknown(name, f"a transfer of {sides} does not fit a sheet of {supply.id}")
    pieces = case.batch * case.pieces
    sheets = sheets_needed(pieces, layout.count)
    printer = case.workshop.shop.printer
    unwritten = tuple(
        words for value, words in ((printer.margin, "no printer margin"), (printer.gap, "no gap")) if not value
    )
    return CostLine(
        name,
        sheets * price.each / case.batch,
        f"{_counted(pieces, 'transfer')} of {sides}, {layout.count} to a sheet: {_counted(sheets, 'sheet')}"
        f" × {case.figures.fine(price.each)} ÷ batch of {case.batch}",
        (*case.batch_assumed, *_bleed_assumed(size), *unwritten),
        used_up=True,
        shared=True,
        sheets=(layout.count, price.each),
    )


def _counted(count: int, what: str) -> str:
    return f"{count} {what}" if count == 1 else f"{count} {what}s"


def _bleed_assumed(size: TransferSize) -> tuple[str, ...]:
    return () if size.bleed_written else ("no bleed",)
