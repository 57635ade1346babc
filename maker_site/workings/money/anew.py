"""A cost sheet taken apart and summed anew for other figures: the same rules without the words, so quick."""

from __future__ import annotations

from fractions import Fraction

from maker_site.frozen import frozen
from maker_site.workings.money.costing import CostSheet
from maker_site.workings.money.line import CostLine
from maker_site.workings.sheet_layout import sheets_needed


@frozen
class Once:
    """A line as it is for one sold item made alone with nothing spoiled."""

    amount: Fraction | None
    """Hours where it is paid by the hour; not used where it is an overhead or of whole sheets; None: not known."""
    used_up: bool
    shared: bool
    labour: bool
    overhead: bool
    sheets: tuple[int, Fraction] | None
    """As in `CostLine`."""


@frozen
class Parts:
    """What a sold item's cost is put together from."""

    pieces: int
    """In what is sold as one."""
    overhead: Fraction | None
    """Share of all other lines; None where the shop says none."""
    lines: tuple[Once, ...]


def parts_of(sheet: CostSheet, overhead: Fraction | None, rate: Fraction) -> Parts:
    """Return the parts of a sheet that was worked out with `rate` an hour.

    Raises ValueError where the sheet's yield or the rate is nothing: what was divided by it can't be found again.
    """
    if not sheet.share.share or not rate:
        raise ValueError("a sheet can be taken apart only where something came out good and an hour costs something")
    return Parts(sheet.pieces, overhead, tuple(_once(line, sheet, rate) for line in sheet.lines))


def _once(line: CostLine, sheet: CostSheet, rate: Fraction) -> Once:
    amount = line.exact
    if amount is not None:
        amount *= sheet.share.share if line.used_up else 1
        amount *= sheet.batch if line.shared else 1
        amount /= rate if line.labour else 1
    return Once(amount, line.used_up, line.shared, line.labour, line.overhead, line.sheets)


def amounts_anew(parts: Parts, *, batch: int, share: Fraction, labour: Fraction | None) -> tuple[Fraction | None, ...]:
    """Return each line's amount for one sold item, in the order of the lines; None where it is not known.

    `batch` sold items are made at one go, `share` of the pieces come out good (above 0, up to 1), an hour costs
    `labour` (None: not known).
    """
    found = [None if line.overhead else _amount(line, parts, batch, share, labour) for line in parts.lines]
    known = sum((amount for amount in found if amount is not None), Fraction(0))
    on_top = None if parts.overhead is None else known * parts.overhead
    return tuple(on_top if line.overhead else amount for line, amount in zip(parts.lines, found, strict=True))


def _amount(line: Once, parts: Parts, batch: int, share: Fraction, labour: Fraction | None) -> Fraction | None:
    if line.amount is None or (line.labour and labour is None):
        return None
    amount = line.amount
    if line.sheets is not None:
        fits, price = line.sheets
        amount = sheets_needed(batch * parts.pieces, fits) * price
    if line.labour and labour is not None:
        amount *= labour
    if line.shared:
        amount /= batch
    return amount / share if line.used_up else amount
