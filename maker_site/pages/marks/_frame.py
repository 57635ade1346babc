"""The frame of a plot: two scales, their ticks on all four sides, so that both units of a figure can be read off."""

import math
from collections.abc import Callable, Sequence

from maker_site.frozen import frozen
from maker_site.pages.marks._svg import box, line, words

WIDTH = 520.0
HEIGHT = 340.0
LEFT, RIGHT, TOP, FOOT = 64.0, 464.0, 46.0, 284.0
"""The field that data is drawn in; what is around it is for figures and names."""


@frozen
class Scale:
    """Values from `low` to `high` along pixels from `start` to `end`."""

    low: float
    high: float
    start: float
    end: float

    def at(self, value: float) -> float:
        """Where a value stands, in pixels."""
        return self.start + (value - self.low) / (self.high - self.low) * (self.end - self.start)


@frozen
class Side:
    """The figures along one side of the frame."""

    ticks: Sequence[tuple[float, str]]
    """Value on the axis's scale, and what is written there."""
    name: str


def nice_ticks(low: float, high: float, most: int = 6) -> list[float]:
    """Round values inside `low` to `high`, at most `most` of them, a step of 1, 2 or 5 times a power of ten apart."""
    span = high - low
    if span <= 0:
        return [low]
    power = 10 ** math.floor(math.log10(span / most))
    step = next(power * factor for factor in (1, 2, 5, 10, 20) if span / (power * factor) < most)
    first = math.ceil(low / step - 1e-9)
    return [round(index * step, 9) for index in range(first, math.floor(high / step + 1e-9) + 1)]


def clock_ticks(low: float, high: float, most: int = 6) -> list[float]:
    """Round times inside `low` to `high` in seconds: steps that a clock has, from 5 s up."""
    step = next((each for each in (5, 10, 15, 30, 60, 120, 300, 600) if (high - low) / each <= most), 1200)
    return [float(each) for each in range(math.ceil(low / step) * step, math.floor(high) + 1, step)]


def around(values: Sequence[float], least_span: float) -> tuple[float, float]:
    """Return a range a little wider than the values, and never narrower than `least_span`."""
    low, high = min(values), max(values)
    room = max((high - low) * 0.12, (least_span - (high - low)) / 2)
    return low - room, high + room


def side(low: float, high: float, name: str, label: Callable[[float], str], most: int = 6) -> Side:
    """Return a side with round ticks."""
    return Side([(value, label(value)) for value in nice_ticks(low, high, most)], name)


def frame(x: Scale, y: Scale, *, bottom: Side, top: Side | None, left: Side, right: Side | None) -> list[str]:
    """Return the field's outline, hairlines at the lower and left ticks, and the figures and names of each side."""
    drawn = [box(LEFT, TOP, RIGHT - LEFT, FOOT - TOP, "m-open m-field")]
    drawn += [line(x.at(value), TOP, x.at(value), FOOT, "m-grid") for value, _ in bottom.ticks]
    drawn += [line(LEFT, y.at(value), RIGHT, y.at(value), "m-grid") for value, _ in left.ticks]
    drawn += [words(x.at(value), FOOT + 16, text, "m-small", anchor="middle") for value, text in bottom.ticks]
    drawn += [words(LEFT - 6, y.at(value) + 4, text, "m-small", anchor="end") for value, text in left.ticks]
    drawn.append(words((LEFT + RIGHT) / 2, FOOT + 36, bottom.name, "m-words", anchor="middle"))
    drawn.append(words(8, 14, left.name, "m-words"))
    if top:
        drawn += [line(x.at(value), TOP, x.at(value), TOP - 5, "m-thin") for value, _ in top.ticks]
        drawn += [words(x.at(value), TOP - 9, text, "m-small", anchor="middle") for value, text in top.ticks]
    if right:
        drawn += [line(RIGHT, y.at(value), RIGHT + 5, y.at(value), "m-thin") for value, _ in right.ticks]
        drawn += [words(RIGHT + 8, y.at(value) + 4, text, "m-small") for value, text in right.ticks]
        drawn.append(words(WIDTH - 8, 14, right.name, "m-words", anchor="end"))
    return drawn
