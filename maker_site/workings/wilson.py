"""How sure a share is, from few pieces."""

from __future__ import annotations

from functools import lru_cache
from math import sqrt
from typing import Final, NamedTuple

Z_95: Final = 1.959963984540054
"""The two-sided 95 % point of the normal distribution (scipy.stats.norm.ppf(0.975))."""


class Interval(NamedTuple):
    """Where the true share is likely to be, 0 to 1."""

    low: float
    high: float


@lru_cache(maxsize=16384)
def interval(good: int, pressed: int, z: float = Z_95) -> Interval | None:
    """Return Wilson's score interval for `good` of `pressed`, two-sided; None where nothing was pressed.

    Centre (p + z²/2n) / (1 + z²/n), half width z √(p(1-p)/n + z²/4n²) / (1 + z²/n), as in the NIST/SEMATECH
    e-Handbook of Statistical Methods, 7.2.4.1. The ends at 0 of n and n of n are exactly 0 and 1.
    """
    if pressed <= 0:
        return None
    share = good / pressed
    spread = z * z / pressed
    centre = (share + spread / 2) / (1 + spread)
    half = z * sqrt(share * (1 - share) / pressed + spread / (4 * pressed)) / (1 + spread)
    low = 0.0 if good == 0 else max(0.0, centre - half)
    high = 1.0 if good == pressed else min(1.0, centre + half)
    return Interval(low, high)
