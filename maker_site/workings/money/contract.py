"""A cost sheet and its price as plain data for other programs. Names and form are kept from version to version."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from maker_site.workings.money.costing import CostSheet
from maker_site.workings.money.pricing import Price
from maker_site.workings.money.words import decimal_of, minor_unit


def cost_as_data(sheet: CostSheet, price: Price) -> dict[str, object]:
    """Return the data that ``cost --json`` prints.

    Amounts are decimal strings per sold item, unrounded (28 digits where they do not end); the price is as shown to a
    customer; yield and margin are shares of one. What is not known is null.
    """
    return {
        "project": sheet.project,
        "currency": sheet.currency,
        "pieces": sheet.pieces,
        "yield": {"value": _text(sheet.share.share), "source": sheet.share.source},
        "lines": [
            {
                "name": line.name,
                "amount": _text(line.exact),
                "known": line.known,
                "basis": line.whole_basis,
            }
            for line in sheet.lines
        ],
        "cost": _text(sheet.exact),
        "complete": sheet.complete,
        "price": _as_shown(price.shown, sheet.currency),
        "price_source": price.source if price.source != "none" else price.reason,
        "fee": _text(price.fee),
        "tax": _text(price.tax),
        "profit": _text(price.profit),
        "margin": _text(price.margin),
    }


def _as_shown(price: Decimal | None, currency: str) -> str | None:
    """Return a price with all the digits that its currency is shown with, and more only where it was typed so."""
    if price is None:
        return None
    step = minor_unit(currency)
    fine = step if price == price.quantize(step) else price
    return f"{price.quantize(fine):f}"


def _text(value: Fraction | Decimal | None) -> str | None:
    if value is None:
        return None
    return f"{decimal_of(value) if isinstance(value, Fraction) else value:f}"
