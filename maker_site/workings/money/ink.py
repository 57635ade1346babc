"""Ink on a print: an estimate, since every printer lays it down differently."""

from __future__ import annotations

from fractions import Fraction


def ink_ml(square_metres: Fraction, coverage: Fraction, laydown: Fraction) -> Fraction:
    """Return the ink in ml: printed area with bleed (m²) x mean coverage (0 to 1) x laydown (ml per m² at 1)."""
    return square_metres * coverage * laydown
