"""One line of a cost sheet.

Inner module of the money workings.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from maker_site.workings.money.words import Figures, decimal_of
from maker_site.workings.money.yields import Yield


@dataclass(frozen=True, slots=True)
class CostLine:
    """What one thing costs in one sold item, and how that comes about."""

    name: str
    exact: Fraction | None
    """Per sold item, unrounded, spoilage counted in; None where a figure is missing."""
    basis: str
    """The arithmetic in words, or which figure is missing."""
    assumed: tuple[str, ...] = ()
    """The figures in it that nobody wrote down, in words."""
    used_up: bool = False
    """A failed pressing uses it up too, so it is divided by the yield."""
    shared: bool = False
    """Spent once for the batch and shared over it."""
    labour: bool = False
    """Paid by the hour."""
    sheets: tuple[int, Fraction] | None = None
    """Pieces that fit a sheet and the price of one, where whole sheets are used up for the batch."""
    overhead: bool = False
    """A share of all other lines."""

    @property
    def known(self) -> bool:
        """Whether every figure was there."""
        return self.exact is not None

    @property
    def amount(self) -> Decimal | None:
        """The exact amount as a decimal of at most 28 digits; None where not known."""
        return None if self.exact is None else decimal_of(self.exact)

    @property
    def whole_basis(self) -> str:
        """The arithmetic with what is assumed in it."""
        return f"{self.basis}; assumed: {', '.join(self.assumed)}" if self.assumed else self.basis


def unknown(name: str, why: str, *, labour: bool = False) -> CostLine:
    """Return a line that is not known, with the figure that is missing."""
    return CostLine(name, None, f"not known: {why}", labour=labour)


def over_yield(line: CostLine, share: Yield, figures: Figures) -> CostLine:
    """Return the line with what failed pressings use up; others are given back as they are."""
    if not line.used_up or line.exact is None:
        return line
    if not share.share:
        return replace(line, exact=None, basis=f"not known: nothing came out good yet ({share.source}); {line.basis}")
    assumed = (f"yield {figures.percent(share.share)}",) if share.assumed else ()
    return replace(
        line,
        exact=line.exact / share.share,
        basis=f"{line.basis} ÷ {figures.percent(share.share)} yield ({share.source})",
        assumed=(*line.assumed, *assumed),
    )
