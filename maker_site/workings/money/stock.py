"""What is on the shelf: bought less pressed, by blank and by lot."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping

from maker_site.frozen import frozen
from maker_site.records import Blank, Pressing, Shop, Workshop


@frozen
class LotStock:
    """What is left of one lot."""

    lot: str | None
    """None for deliveries without a lot."""
    bought: int
    pressed: int
    """Pressed with this lot's name in the log."""

    @property
    def left(self) -> int:
        """Bought less pressed."""
        return self.bought - self.pressed


@frozen
class Stock:
    """What is left of one blank."""

    blank: str
    """The blank's id."""
    bought: int | None
    """None where no delivery is written, and then nothing is known of what is left."""
    pressed: int
    """All pressings, failures and tests too."""
    lots: tuple[LotStock, ...]
    """In the order bought; deliveries of one name together."""
    of_no_lot: int
    """Pressed without a lot's name, or with one that was never bought: taken off the blank, off no named lot."""
    low_at: int | None
    """At or below this the blank runs low; the blank's own count, else the shop's."""

    @property
    def left(self) -> int | None:
        """Bought less pressed; below 0 where more was pressed than bought; None where not known."""
        return None if self.bought is None else self.bought - self.pressed

    @property
    def low(self) -> bool:
        """Whether it runs low; what is overdrawn always does."""
        if self.left is None:
            return False
        return self.left < 0 or (self.low_at is not None and self.left <= self.low_at)

    @property
    def overdrawn(self) -> bool:
        """More was pressed than was bought: a delivery or a pressing is written wrong."""
        return self.left is not None and self.left < 0


def stock_of(blank: Blank, pressings: Iterable[Pressing], shop: Shop) -> Stock:
    """Return the stock of a blank; pressings of other blanks are passed over."""
    pressed: Counter[str | None] = Counter()
    for pressing in pressings:
        if pressing.blank == blank.id:
            pressed[pressing.lot] += pressing.pressed
    bought: dict[str | None, int] = {}
    for lot in blank.bought:
        bought[lot.lot] = bought.get(lot.lot, 0) + lot.count
    named = {lot for lot in bought if lot is not None}
    # Where no delivery has a name, all that was pressed came out of that one heap.
    heap = sum(count for lot, count in pressed.items() if lot not in named)
    only_heap = set(bought) == {None}
    return Stock(
        blank.id,
        sum(bought.values()) if bought else None,
        sum(pressed.values()),
        tuple(
            LotStock(lot, count, heap if lot is None and only_heap else pressed[lot]) for lot, count in bought.items()
        ),
        0 if only_heap else sum(count for lot, count in pressed.items() if lot not in bought),
        blank.low_stock if blank.low_stock is not None else shop.low_stock,
    )


def all_stock(workshop: Workshop) -> Mapping[str, Stock]:
    """Return the stock of every blank by its id; the log is gone through once."""
    rows: dict[str, list[Pressing]] = {blank: [] for blank in workshop.blanks}
    for pressing in workshop.pressings:
        if pressing.blank in rows:
            rows[pressing.blank].append(pressing)
    return {blank.id: stock_of(blank, rows[blank.id], workshop.shop) for blank in workshop.blanks.values()}


def running_low(stock: Mapping[str, Stock]) -> tuple[Stock, ...]:
    """Return the blanks that run low, the fewest left first."""
    low = (each for each in stock.values() if each.low)
    return tuple(sorted(low, key=lambda each: (each.left or 0, each.blank)))
