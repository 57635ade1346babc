"""Plots drawn when the site is made: legible in black and white, with a table beneath on the page."""

import math
from collections.abc import Callable, Sequence

from markupsafe import Markup

from maker_site.frozen import frozen
from maker_site.language import say
from maker_site.pages.marks._frame import (
    FOOT,
    HEIGHT,
    LEFT,
    RIGHT,
    TOP,
    WIDTH,
    Scale,
    Side,
    around,
    clock_ticks,
    frame,
    side,
)
from maker_site.pages.marks._svg import circle, drawing, line, num, path

_SMALLEST, _LARGEST = 5.0, 15.0
"""Radii of a spot: one piece, and forty or more."""
_MANY = 40
_DEGREES, _SECONDS = 20.0, 40.0
"""A plot never shows less than this much, so that a single setting is not blown up."""


@frozen
class Spot:
    """A setting in the plot of temperature and time."""

    celsius: float
    seconds: float
    good: int
    pressed: int
    words: str
    """Told to readers of the drawing."""


@frozen
class Unit:
    """In what temperatures are written along the lower side, and along the upper: °C or °F."""

    first: str
    second: str

    def value(self, celsius: float, unit: str) -> float:
        """Return degrees Celsius in a unit."""
        return celsius * 9 / 5 + 32 if unit.endswith("F") else celsius

    def celsius(self, value: float, unit: str) -> float:
        """Return a unit's degrees in degrees Celsius."""
        return (value - 32) * 5 / 9 if unit.endswith("F") else value

    def side(self, low: float, high: float, unit: str, name: str) -> Side:
        """Return ticks at round figures of a unit, placed on a scale of degrees Celsius."""
        pattern = say("{n} °F") if unit.endswith("F") else say("{n} °C")
        ends = self.value(low, unit), self.value(high, unit)
        rounded = side(*ends, name, lambda value: pattern.format(n=num(value)), 5)
        return Side([(self.celsius(value, unit), text) for value, text in rounded.ticks], name)


def setting_plot(spots: Sequence[Spot], *, title: str, unit: Unit, clock: Callable[[float], str]) -> Markup:
    """Temperature across, time upwards; a spot for each setting, larger for more pieces, filled by its good share.

    A spot's filled part is good over pressed, clockwise from the top; one with nothing good is crossed out.
    """
    low, high = around([spot.celsius for spot in spots], _DEGREES)
    least, most = around([spot.seconds for spot in spots], _SECONDS)
    least = max(0.0, least)
    times = clock_ticks(least, most)
    x, y = Scale(low, high, LEFT, RIGHT), Scale(least, most, FOOT, TOP)
    drawn = frame(
        x,
        y,
        bottom=unit.side(low, high, unit.first, say("Temperature at the platen")),
        top=unit.side(low, high, unit.second, ""),
        left=Side([(value, clock(value)) for value in times], say("Time, m:ss")),
        right=Side([(value, num(value)) for value in times], say("seconds")),
    )
    for spot in sorted(spots, key=lambda each: -each.pressed):
        drawn.append(
            f"<g><title>{_escaped(spot.words)}</title>{_spot(x.at(spot.celsius), y.at(spot.seconds), spot)}</g>"
        )
    return drawing(drawn, width=WIDTH, height=HEIGHT, title=title, css_class="m-plot")


def radius(pressed: int) -> float:
    """Return a spot's radius: its area grows with the pieces, up to forty."""
    share = (min(pressed, _MANY) - 1) / (_MANY - 1)
    return math.sqrt(_SMALLEST**2 + share * (_LARGEST**2 - _SMALLEST**2))


def _spot(x: float, y: float, spot: Spot) -> str:
    size = radius(spot.pressed)
    ground = circle(x, y, size, "m-ground")
    outline = circle(x, y, size, "m-line")
    if spot.good == 0:
        reach = size * 0.7
        cross = f"M{num(x - reach)} {num(y + reach)}L{num(x + reach)} {num(y - reach)}"
        return ground + outline + path(cross, "m-line")
    if spot.good == spot.pressed:
        return circle(x, y, size, "m-solid m-good") + outline
    turn = 2 * math.pi * spot.good / spot.pressed
    end_x, end_y = x + size * math.sin(turn), y - size * math.cos(turn)
    sweep = "1" if turn > math.pi else "0"
    wedge = f"M{num(x)} {num(y)}V{num(y - size)}A{num(size)} {num(size)} 0 {sweep} 1 {num(end_x)} {num(end_y)}Z"
    return ground + path(wedge, "m-solid m-good") + outline


@frozen
class YieldPoint:
    """The good share after one more pressing."""

    day: int
    """Days since any fixed day."""
    good: int
    pressed: int
    """Of this day alone."""
    share: float
    """Of all up to and with this day, 0 to 1."""
    low: float
    high: float
    """The interval of `share`."""


def yield_plot(points: Sequence[YieldPoint], *, title: str, dates: Sequence[tuple[int, str]]) -> Markup:
    """Good share against the day: each day's as a spot, all up to then as a line between the interval's dashed ends."""
    first, last = points[0].day, points[-1].day
    room = max(10.0, (last - first) * 0.04)
    x, y = Scale(first - room, last + room, LEFT, RIGHT), Scale(0, 100, FOOT, TOP)
    percent = Side([(value, say("{n} %").format(n=value)) for value in (0, 25, 50, 75, 100)], say("Good share"))
    drawn = frame(x, y, bottom=Side(dates, say("Day pressed")), top=None, left=percent, right=None)
    for ends, style in (
        ([point.high for point in points], "m-thin m-dashed"),
        ([point.low for point in points], "m-thin m-dashed"),
        ([point.share for point in points], "m-line m-bold"),
    ):
        places = [f"{num(x.at(point.day))} {num(y.at(end * 100))}" for point, end in zip(points, ends, strict=True)]
        drawn.append(path("M" + "L".join(places), style))
    for point in points:
        spot = Spot(0, 0, point.good, point.pressed, "")
        drawn.append(_spot(x.at(point.day), y.at(100 * point.good / point.pressed), spot))
    return drawing(drawn, width=WIDTH, height=HEIGHT, title=title, css_class="m-plot")


def calibration_plot(
    readings: Sequence[tuple[float, float]],
    curve: Sequence[tuple[float, float]],
    *,
    title: str,
    unit: Unit,
) -> Markup:
    """Dial across, platen upwards, in degrees Celsius: readings as spots, the curve between them as a line.

    Beyond the readings the curve goes on dashed, at the nearest offset; a thin line shows a dial that tells the truth.
    """
    low, high = around([figure for reading in readings for figure in reading], _DEGREES * 2)
    x, y = Scale(low, high, LEFT, RIGHT), Scale(low, high, FOOT, TOP)
    drawn = frame(
        x,
        y,
        bottom=unit.side(low, high, unit.first, say("Dial")),
        top=unit.side(low, high, unit.second, ""),
        left=unit.side(low, high, unit.first, say("Platen, measured")),
        right=unit.side(low, high, unit.second, ""),
    )
    drawn.append(line(x.at(low), y.at(low), x.at(high), y.at(high), "m-thin m-faint"))
    drawn.append(path("M" + "L".join(f"{num(x.at(dial))} {num(y.at(true))}" for dial, true in curve), "m-line m-bold"))
    (first, first_true), (last, last_true) = curve[0], curve[-1]
    drawn.append(_beyond(x, y, first, first_true, -min(first - low, first_true - low)))
    drawn.append(_beyond(x, y, last, last_true, min(high - last, high - last_true)))
    drawn += [circle(x.at(dial), y.at(true), 5, "m-solid") for dial, true in readings]
    return drawing(drawn, width=WIDTH, height=HEIGHT, title=title, css_class="m-plot")


def _beyond(x: Scale, y: Scale, dial: float, true: float, by: float) -> str:
    return line(x.at(dial), y.at(true), x.at(dial + by), y.at(true + by), "m-line m-dashed")


def _escaped(text: str) -> Markup:
    return Markup("{}").format(text)
