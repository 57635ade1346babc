"""What can be made from what is on the shelf, and for how much."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from math import floor

from maker_site.frozen import frozen
from maker_site.records import Project, Workshop
from maker_site.workings.money.pricing import Price
from maker_site.workings.money.stock import Stock
from maker_site.workings.money.yields import Yield


@frozen
class Makeable:
    """A project whose blanks are on the shelf."""

    project: str
    """The project's id."""
    items: int
    """Sold items that the blanks are enough for when nothing fails; 1 or more."""
    likely: int
    """Those to count on, spoilage taken off; may be 0. The same as `items` where no yield is known."""


@frozen
class Gift:
    """Something that can be made now for no more than a given sum."""

    makeable: Makeable
    price: Price


def can_make(workshop: Workshop, stock: Mapping[str, Stock], yields: Mapping[str, Yield]) -> tuple[Makeable, ...]:
    """Return the projects that can be made now, in order of their ids.

    Blanks are counted, other supplies are not. A blank of unknown stock makes nothing; `yields` are by project.
    """
    found = (makeable_of(each, stock[each.blank], yields.get(each.id)) for each in workshop.projects.values())
    return tuple(each for each in found if each)


def makeable_of(project: Project, stock: Stock, good: Yield | None) -> Makeable | None:
    """Return how many of one project can be made now; None where not one. See `can_make`."""
    left = max(stock.left or 0, 0)
    if left < project.pieces:
        return None
    share = good.share if good else Fraction(1)
    return Makeable(project.id, left // project.pieces, floor(left * share) // project.pieces)


def gifts_under(limit: Decimal, makeable: tuple[Makeable, ...], prices: Mapping[str, Price]) -> tuple[Gift, ...]:
    """Return what can be made now and costs a customer, tax and all, no more than `limit`; the dearest first."""
    found = [
        (price.paid, Gift(each, price))
        for each in makeable
        if (price := prices.get(each.project)) and price.paid is not None and price.paid <= limit
    ]
    return tuple(gift for _paid, gift in sorted(found, key=lambda pair: (-pair[0], pair[1].makeable.project)))
