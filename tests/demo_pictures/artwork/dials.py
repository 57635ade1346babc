"""Drawings that are worked out rather than composed: a sundial's face and a chart of colours."""

from __future__ import annotations

import colorsys

import numpy as np

from tests.demo_pictures.artwork.carving import burst
from tests.demo_pictures.drawing import Sheet, circle, hand_cut, rectangle, stroke
from tests.demo_pictures.lettering import lettered, lettered_round

LATITUDE = 51.5
"""Degrees north of the invented village."""


def sundial_face() -> Sheet:
    """Face of a horizontal dial: an hour line lies at atan(sin latitude * tan 15 h) from noon."""
    rng = np.random.default_rng(91)
    ink, gold, ground = "#1e2b38", "#c98f2d", "#e8e6de"
    sheet = Sheet("Sundial face", 100, 100, ground=ground)
    foot = np.array([50.0, 60.0])
    sheet.fill(ink, hand_cut(circle(50, 50, 46), rng, 0.2, 3))
    sheet.fill(ground, hand_cut(circle(50, 50, 44.6), rng, 0.15, 3))
    sheet.fill(ink, circle(50, 50, 43.6), circle(50, 50, 33.4)[::-1])
    inner = circle(50, 50, 33.0)
    burst(sheet, gold, inner, (foot[0], foot[1]), (10.5, 25), rng, count=40, width=0.8)
    numerals = {
        -6: "VI",
        -5: "VII",
        -4: "VIII",
        -3: "IX",
        -2: "X",
        -1: "XI",
        0: "XII",
        1: "I",
        2: "II",
        3: "III",
        4: "IIII",
        5: "V",
        6: "VI",
    }
    for quarter in range(-28, 29):
        hour = quarter / 4
        a = np.arctan2(np.sin(np.radians(LATITUDE)) * np.sin(np.radians(15 * hour)), np.cos(np.radians(15 * hour)))
        d = np.array([np.sin(a), -np.cos(a)])
        b = float(np.dot(foot - 50, d))
        out = lambda radius, b=b: -b + np.sqrt(b * b - (np.hypot(*(foot - 50)) ** 2 - radius**2))  # noqa: E731
        if quarter % 4 == 0:
            sheet.fill(ink, stroke(np.array([foot + d * 9.5, foot + d * out(33.4)]), 0.62, sharp=0))
            if int(hour) in numerals:
                p = foot + d * out(38.6)
                turn = float(np.degrees(np.arctan2(p[1] - 50, p[0] - 50))) + 90
                u = np.array([np.cos(np.radians(turn + 90)), np.sin(np.radians(turn + 90))])
                sheet.fill(ground, lettered(numerals[int(hour)], "slab", 4.3, *(p + u * 2.15), turn=turn))
        else:
            sheet.fill(
                ink,
                stroke(np.array([foot + d * out(29.5 if quarter % 2 else 27.5), foot + d * out(33.4)]), 0.34, sharp=0),
            )
    for k in range(32):
        a = 2 * np.pi * k / 32
        reach = 8.6 if k % 2 else 6.4
        p = [foot + np.array([np.cos(a + s), np.sin(a + s)]) * (5.2 if s else reach) for s in (-0.1, 0, 0.1)]
        sheet.fill(gold, np.array(p))
    sheet.fill(gold, circle(*foot, 5.3))
    sheet.fill(ink, circle(*foot, 3.6), circle(*foot, 3.1)[::-1])
    face = [(-1.25, -0.5), (1.25, -0.5)]
    sheet.fill(ink, *[circle(foot[0] + x, foot[1] + y, 0.42, 16) for x, y in face])
    sheet.line(
        ink, foot + np.array([(1.5 * np.cos(t), 1.5 * np.sin(t) + 0.1) for t in np.linspace(0.5, 2.64, 12)]), 0.36
    )
    sheet.fill(
        gold,
        lettered_round(
            "I COUNT THE BRIGHT HOURS ONLY", "poster", 3.7, 50, 50, 40.3, middle=90, inward=True, spacing=0.62
        ),
    )
    return sheet


def colour_chart() -> Sheet:
    """Six hues at four strengths and a grey ramp, each patch numbered, for judging a setting."""
    ink = "#1c1c1c"
    sheet = Sheet("Colour chart", 54, 25, ground="#ffffff")
    hues = (0.0, 0.08, 0.15, 0.36, 0.55, 0.65, 0.78, 0.92)
    for column, hue in enumerate(hues):
        for row, (value, saturation) in enumerate(((0.45, 0.95), (0.8, 0.9), (0.95, 0.55), (0.98, 0.25))):
            red, green, blue = (round(255 * v) for v in colorsys.hsv_to_rgb(hue, saturation, value))
            sheet.fill(f"#{red:02x}{green:02x}{blue:02x}", rectangle(11 + 4.6 * column, 2.2 + 3.3 * row, 4.3, 3.0))
        sheet.fill(ink, lettered(f"{column + 1}", "poster", 1.2, 13.15 + 4.6 * column, 17.2))
    for step in range(12):
        level = round(255 * step / 11)
        sheet.fill(f"#{level:02x}{level:02x}{level:02x}", rectangle(11 + 3.04 * step, 18.2, 3.04, 3.2))
    sheet.line(ink, rectangle(11, 18.2, 36.5, 3.2), 0.12, closed=True)
    for k, width in enumerate((0.1, 0.2, 0.3, 0.5, 0.8)):
        sheet.fill(ink, rectangle(48.6, 2.6 + 2.3 * k, 4, width))
    sheet.fill(ink, lettered("0.1 to 0.8", "poster", 0.9, 50.6, 14.8))
    sheet.fill(ink, circle(50.6, 19.8, 1.6), circle(50.6, 19.8, 1.1)[::-1], circle(50.6, 19.8, 0.5))
    return sheet
