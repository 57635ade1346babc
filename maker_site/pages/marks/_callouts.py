"""Labels beside a drawing, each as near its part as its neighbours allow. Inner module: used by the marks only."""

from collections.abc import Sequence
from itertools import accumulate


def spread(middles: Sequence[float], heights: Sequence[float], gap: float) -> tuple[float, ...]:
    """Tops of labels in their order from above, so that none overlap and the distances from MIDDLES are least.

    Least squares under an order, solved by pooling neighbours that would cross (isotonic regression).
    """
    offsets = [0.0, *accumulate(height + gap for height in heights)]
    pools: list[tuple[float, int]] = []
    for middle, height, offset in zip(middles, heights, offsets, strict=False):
        pools.append((middle - height / 2 - offset, 1))
        while len(pools) > 1 and _mean(pools[-2]) > _mean(pools[-1]):
            (total, count), (more, others) = pools.pop(-2), pools.pop()
            pools.append((total + more, count + others))
    shifts = [_mean(pool) for pool in pools for _ in range(pool[1])]
    return tuple(shift + offset for shift, offset in zip(shifts, offsets, strict=False))


def _mean(pool: tuple[float, int]) -> float:
    return pool[0] / pool[1]
