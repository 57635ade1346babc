"""Prices for several at a time: what is shared over a batch weighs less on each."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from maker_site.records import Pressing, Project, Workshop
from maker_site.workings.money.case import WhatIf
from maker_site.workings.money.costing import CostSheet, cost_sheet
from maker_site.workings.money.pricing import Price, price_for, terms_of
from maker_site.workings.money.words import Figures
from maker_site.workings.money.yields import Yield


@dataclass(frozen=True, slots=True)
class Break:
    """One row of a table of quantities."""

    quantity: int
    """Sold items made at one go."""
    sheet: CostSheet
    price: Price
    """Of one, worked out."""


def quantity_breaks(
    workshop: Workshop,
    project: Project,
    share: Yield,
    coverage: Fraction | None,
    pressings: Sequence[Pressing],
    quantities: Iterable[int],
    what_if: WhatIf | None = None,
) -> tuple[Break, ...]:
    """Return cost and worked-out price of one sold item for each number made at one go."""
    shop = workshop.shop
    terms, figures = terms_of(shop), Figures(shop.currency, shop.locale)
    found = []
    for quantity in quantities:
        tried = replace(what_if or WhatIf(), batch=quantity)
        sheet = cost_sheet(workshop, project, share, coverage, pressings, tried)
        found.append(Break(quantity, sheet, price_for(sheet.exact, terms, figures, complete=sheet.complete)))
    return tuple(found)
