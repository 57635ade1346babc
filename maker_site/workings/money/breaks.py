"""Prices for several at a time: what is shared over a batch weighs less on each."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from maker_site.frozen import frozen
from maker_site.records import Shop
from maker_site.workings.money.anew import Parts, amounts_anew
from maker_site.workings.money.pricing import Price, price_for, terms_of
from maker_site.workings.money.words import Figures


@frozen
class Break:
    """One row of a table of quantities."""

    quantity: int
    """Sold items made at one go."""
    cost: Fraction
    """Of one; the least that it can be where it is not complete."""
    complete: bool
    price: Price
    """Of one, worked out."""


def quantity_breaks(parts: Parts, shop: Shop, share: Fraction, quantities: Iterable[int]) -> tuple[Break, ...]:
    """Return cost and worked-out price of one sold item for each number made at one go; `share` is above 0."""
    terms, figures = terms_of(shop), Figures(shop.currency, shop.locale)
    rate = Fraction(shop.labour.value) if shop.labour else None
    found = []
    for quantity in quantities:
        amounts = amounts_anew(parts, batch=quantity, share=share, labour=rate)
        cost = sum((amount for amount in amounts if amount is not None), Fraction(0))
        complete = None not in amounts
        found.append(Break(quantity, cost, complete, price_for(cost, terms, figures, complete=complete)))
    return tuple(found)
