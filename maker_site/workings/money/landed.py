"""What a blank costs when it lies on the shelf: its price with its share of delivery and import charges."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from fractions import Fraction

from maker_site.frozen import frozen
from maker_site.records import Blank, Lot
from maker_site.records.quantities import Amount


@frozen
class Landed:
    """The average over the lots whose price is known, each counted by its pieces."""

    each: Fraction | None
    """Per blank; None where no lot's price is known."""
    count: int
    """Pieces in the lots counted."""
    paid: Decimal
    """For them, without what follows."""
    delivery: Decimal
    import_charges: Decimal
    lots: int
    """Lots counted."""
    without_price: int
    """Lots left out because nobody wrote what they cost."""
    without_delivery: int
    """Lots counted as if delivery had been free because none is written."""

    @property
    def total(self) -> Decimal:
        """All that was paid for the lots counted."""
        return self.paid + self.delivery + self.import_charges


def landed(blank: Blank) -> Landed:
    """Return (paid + delivery + import charges) over count, over all lots with a price.

    A weighted average: a lot of 30 counts for more than a lot of 20. A typed price of 0 is a price.
    """
    priced = [lot for lot in blank.bought if lot.paid is not None]
    count = sum(lot.count for lot in priced)
    paid = _sum(lot.paid for lot in priced)
    delivery = _sum(lot.delivery for lot in priced)
    charges = _sum(lot.import_charges for lot in priced)
    return Landed(
        each=Fraction(paid + delivery + charges) / count if count else None,
        count=count,
        paid=paid,
        delivery=delivery,
        import_charges=charges,
        lots=len(priced),
        without_price=len(blank.bought) - len(priced),
        without_delivery=sum(_delivery_missing(lot) for lot in priced),
    )


def _delivery_missing(lot: Lot) -> bool:
    return lot.delivery is None and lot.paid is not None and lot.paid.value > 0


def _sum(amounts: Iterable[Amount | None]) -> Decimal:
    return sum((each.value for each in amounts if each), Decimal(0))
