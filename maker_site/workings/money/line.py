"""One line of a cost sheet.

Inner module of the money workings.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from maker_site.frozen import frozen
from maker_site.language import listed, say
from maker_site.workings.money.words import Figures, decimal_of
from maker_site.workings.money.yields import Yield


@frozen
class CostLine:
    """What one thing costs in one sold item, and how that comes about."""

    name: str
    """Said, as are all words here."""
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
        if not self.assumed:
            return self.basis
        return say("{sum}; assumed: {assumed}", sum=self.basis, assumed=listed(self.assumed))


def unknown(name: str, why: str, *, labour: bool = False) -> CostLine:
    """Return a line that is not known, with the figure that is missing."""
    return CostLine(name, None, say("not known: {why}", why=why), labour=labour)


def over_yield(line: CostLine, share: Yield, figures: Figures) -> CostLine:
    """Return the line with what failed pressings use up; others are given back as they are."""
    if not line.used_up or line.exact is None:
        return line
    if not share.share:
        basis = say("not known: nothing came out good yet ({source}); {sum}", source=share.source, sum=line.basis)
        return replace(line, exact=None, basis=basis)
    good = figures.percent(share.share)
    assumed = (say("yield {share}", share=good),) if share.assumed else ()
    return replace(
        line,
        exact=line.exact / share.share,
        basis=say("{sum} ÷ {share} yield ({source})", sum=line.basis, share=good, source=share.source),
        assumed=(*line.assumed, *assumed),
    )
