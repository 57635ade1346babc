"""The village fair's tea towel, set as a letterpress poster."""

from __future__ import annotations

import numpy as np

from tests.demo_pictures.artwork.carving import Rng, burst
from tests.demo_pictures.drawing import Form, Points, Sheet, bow, circle, ellipse, hand_cut, rectangle, smooth, stroke
from tests.demo_pictures.lettering import lettered

CREAM, NAVY, RED, MUSTARD, GREEN, SKY = "#f6eedb", "#22324e", "#c8442f", "#e0a733", "#5f8a54", "#bcd6d8"


def _bunting(
    sheet: Sheet, left: tuple[float, float], right: tuple[float, float], sag: float, flags: int, start: int
) -> None:
    """A swag of flags, their points hanging down."""
    line = bow(left, right, 0, 41)
    line[:, 1] += sag * 4 * np.linspace(0, 1, 41) * (1 - np.linspace(0, 1, 41))

    def at(t: float) -> Points:
        return np.array(
            [np.interp(t, np.linspace(0, 1, 41), line[:, 0]), np.interp(t, np.linspace(0, 1, 41), line[:, 1])]
        )

    for k in range(flags):
        a, b = at((k + 0.08) / flags), at((k + 0.92) / flags)
        tip = (a + b) / 2 + [0, 1.18 * np.hypot(*(b - a))]
        flag = hand_cut(np.array([a, b, tip]), np.random.default_rng(k), 0.3, 2.5)
        colour = (RED, MUSTARD, NAVY, GREEN)[(k + start) % 4]
        sheet.fill(colour, flag)
        with sheet.within(flag):
            kind = (k + start) % 4
            if kind == 0:
                sheet.fill(
                    CREAM,
                    *[circle(a[0] + dx, a[1] + dy, 1.5, 14) for dx in range(2, 46, 7) for dy in (4, 11, 18, 25, 32)],
                )
            elif kind == 2:
                for dy in (4.5, 12, 19.5, 27):
                    sheet.fill(
                        CREAM, np.array([a, b, b, a]) + np.array([(0, dy), (0, dy), (0, dy + 2.6), (0, dy + 2.6)])
                    )
    sheet.line(NAVY, line, 1.4)


def _marquee(sheet: Sheet) -> None:
    """A striped marquee seen from the front, its foot on y = 470."""
    x0, x1, eaves, foot, peak = 118.0, 382.0, 372.0, 470.0, 300.0
    stripes = 14
    for k in range(stripes):
        a, b = x0 + (x1 - x0) * k / stripes, x0 + (x1 - x0) * (k + 1) / stripes
        ta, tb = 190 + 120 * k / stripes, 190 + 120 * (k + 1) / stripes
        colour = RED if k % 2 == 0 else CREAM
        sheet.fill(colour, np.array([(a, eaves), (b, eaves), (tb, peak), (ta, peak)]))
        sheet.fill(CREAM if k % 2 == 0 else RED, rectangle(a, eaves + 6, b - a, foot - eaves - 6))
        scallop = np.vstack(
            [[(a, eaves - 1), (b, eaves - 1), (b, eaves + 10)], ellipse((a + b) / 2, eaves + 10, (b - a) / 2, 9)[:37]]
        )
        sheet.fill(colour, scallop)
        sheet.line(NAVY, ellipse((a + b) / 2, eaves + 10, (b - a) / 2, 9)[:37], 1.1)
    outline = np.array([(x0, eaves), (190, peak), (310, peak), (x1, eaves)])
    sheet.line(NAVY, outline, 2.2, closed=True)
    sheet.line(NAVY, np.array([(x0, eaves + 8), (x0, foot)]), 2.2)
    sheet.line(NAVY, np.array([(x1, eaves + 8), (x1, foot)]), 2.2)
    door = np.vstack(
        [
            [(206, foot)],
            smooth([(212, 440), (236, 400), (250, 384)], steps=6),
            smooth([(250, 384), (264, 400), (288, 440), (294, foot)], steps=6),
        ]
    )
    sheet.fill(NAVY, door)
    sheet.line(CREAM, door, 1.4)
    for x in (190, 310, 250):
        top = 268 if x != 250 else 252
        sheet.line(NAVY, np.array([(x, peak), (x, top)]), 1.8)
        sheet.fill(MUSTARD if x != 250 else GREEN, np.array([(x, top), (x + 24, top + 6.5), (x, top + 13)]))
    for sx, ex in ((x0, 84), (x1, 416)):
        sheet.line(NAVY, np.array([(sx, eaves), (ex, foot)]), 1.1)
    table = rectangle(222, 448, 56, 22)
    sheet.fill(CREAM, table)
    with sheet.within(table):
        sheet.cut(RED, [rectangle(222 + 8 * k, 448, 4, 22) for k in range(7)])
    for x, colour in ((231, MUSTARD), (250, RED), (269, GREEN)):
        sheet.fill(colour, ellipse(x, 443, 7.2, 5.4), rectangle(x - 7.2, 443, 14.4, 5))
        sheet.cut(NAVY, [stroke(bow((x + dx, 439.6), (x + dx * 1.3, 447), 0.0), 0.9) for dx in (-3, 0, 3)])


def _marrow(sheet: Sheet, x: float, y: float, rng: Rng) -> None:
    """A very large marrow with a rosette."""
    form = Form.through(
        [(x - 56, y + 4), (x - 22, y - 1), (x + 18, y), (x + 56, y - 5)], [2.5, 15, 20, 22.5, 23.5, 22, 18.5, 13, 4]
    )
    sheet.fill(NAVY, form.outline(1.8))
    sheet.fill(GREEN, form.outline())
    with sheet.within(form.outline()):
        for s in (-0.8, -0.42, 0.0, 0.42, 0.8):
            line = form.at(np.linspace(0.03, 0.97, 30), s + 0.05 * np.sin(np.linspace(0, 14, 30)))
            sheet.fill(MUSTARD, stroke(line, 4.4, sharp=0.3))
        sheet.cut(NAVY, form.hatching(rng, (0.45, 0.97), 8, 1.7))
    sheet.fill(NAVY, Form.through([(x + 54, y - 5), (x + 64, y - 10), (x + 70, y - 18)], [4.2, 3.2, 4.2]).outline())


def _rosette(sheet: Sheet, x: float, y: float, colour: str, size: float, text: str) -> None:
    """A pleated rosette with tails."""
    for turn in (-16, 16):
        with sheet.moved(x, y, turn=turn):
            sheet.fill(
                colour,
                np.array(
                    [
                        (-size * 0.28, 0),
                        (size * 0.28, 0),
                        (size * 0.28, size * 2.3),
                        (0, size * 2.0),
                        (-size * 0.28, size * 2.3),
                    ]
                ),
            )
            sheet.line(CREAM, np.array([(0, size), (0, size * 1.8)]), size * 0.07)
    teeth = [
        (x + size * (1.0 if k % 2 else 0.88) * np.cos(a), y + size * (1.0 if k % 2 else 0.88) * np.sin(a))
        for k, a in enumerate(np.linspace(0, 2 * np.pi, 44, endpoint=False))
    ]
    sheet.fill(colour, np.array(teeth))
    sheet.cut(
        CREAM,
        [
            stroke(
                np.array(
                    [
                        (x + size * 0.6 * np.cos(a), y + size * 0.6 * np.sin(a)),
                        (x + size * 0.85 * np.cos(a), y + size * 0.85 * np.sin(a)),
                    ]
                ),
                size * 0.06,
            )
            for a in np.linspace(0, 2 * np.pi, 22, endpoint=False)
        ],
    )
    sheet.fill(CREAM, circle(x, y, size * 0.56))
    sheet.fill(colour, lettered(text, "slab", size * 0.5, x, y + size * 0.25))


def fair_bunting() -> Sheet:
    """The fair's poster: bunting, big letters, the marquee, a marrow and what is on."""
    rng = np.random.default_rng(71)
    w, h = 500.0, 700.0
    sheet = Sheet("Village fair tea towel", w, h, ground=CREAM)
    sheet.fill(SKY, hand_cut(rectangle(26, 26, 448, 648), rng, 0.8, 12))
    panel = hand_cut(rectangle(26, 26, 448, 648), rng, 0.8, 12)
    with sheet.within(panel):
        burst(sheet, "#d8e8e4", panel, (250, 420), (120, 520), rng, count=70, width=7)
        sheet.fill(
            "#8fae74",
            np.vstack(
                [
                    smooth([(20, 428), (90, 398), (170, 420), (260, 404), (360, 424), (430, 396), (480, 412)], steps=9),
                    [(480, 700), (20, 700)],
                ]
            ),
        )
        for x, y, s in ((58, 408, 1.0), (84, 402, 1.25), (418, 402, 1.2), (446, 402, 0.95)):
            sheet.fill(CREAM, rectangle(x - 9 * s, y - 12 * s, 18 * s, 16 * s))
            sheet.fill(RED, np.array([(x - 11.5 * s, y - 11 * s), (x, y - 24 * s), (x + 11.5 * s, y - 11 * s)]))
            sheet.fill(
                NAVY, rectangle(x - 2 * s, y - 5 * s, 4 * s, 9 * s), rectangle(x + 4 * s, y - 27 * s, 3 * s, 9 * s)
            )
        for x in np.concatenate([np.arange(30, 120, 13), np.arange(386, 478, 13)]):
            r = rng.uniform(7, 12)
            sheet.fill(GREEN, circle(x, 420 + rng.uniform(-3, 6), r, 20))
        sheet.fill(
            GREEN,
            np.vstack(
                [smooth([(20, 446), (120, 438), (250, 446), (390, 436), (480, 446)], steps=9), [(480, 700), (20, 700)]]
            ),
        )
        sheet.cut(
            "#8fae74",
            [
                stroke(bow((x, y), (x + rng.normal(0, 2), y - rng.uniform(4, 9)), 0.05), 1.3)
                for x, y in zip(rng.uniform(26, 474, 220), rng.uniform(450, 545, 220), strict=True)
            ],
        )
    _bunting(sheet, (26, 44), (250, 44), 24, 8, 0)
    _bunting(sheet, (250, 44), (474, 44), 24, 8, 2)
    sheet.fill(NAVY, lettered("NETHER QUILLET", "poster", 30, 250, 146, spacing=5.0))
    sheet.fill(RED, lettered("VILLAGE FAIR", "slab", 38, 250, 206, spacing=2.6))
    for k in (-1, 1):
        sheet.fill(NAVY, ellipse(250 + k * 132, 232, 66, 1.3))
    sheet.fill(NAVY, lettered("on the green", "italic", 16, 250, 238))
    _marquee(sheet)
    _bunting(sheet, (26, 330), (190, 268), 14, 7, 1)
    _bunting(sheet, (310, 268), (474, 330), 14, 7, 3)
    _marrow(sheet, 132, 524, rng)
    cake_x = 378
    sheet.fill(NAVY, ellipse(cake_x, 546, 64, 8.5), rectangle(cake_x - 5, 546, 10, 16), ellipse(cake_x, 563, 26, 5))
    sheet.fill(MUSTARD, np.vstack([rectangle(cake_x - 48, 488, 96, 56)]))
    sheet.fill(RED, rectangle(cake_x - 48, 511, 96, 8))
    sheet.fill(CREAM, rectangle(cake_x - 48, 519, 96, 4.4))
    icing = np.vstack(
        [
            [(cake_x - 51, 486), (cake_x + 51, 486)],
            smooth(
                [
                    (cake_x + 51, 496),
                    (cake_x + 38, 508),
                    (cake_x + 28, 496),
                    (cake_x + 12, 505),
                    (cake_x - 2, 495),
                    (cake_x - 18, 509),
                    (cake_x - 30, 496),
                    (cake_x - 42, 503),
                    (cake_x - 51, 494),
                ],
                steps=6,
            ),
        ]
    )
    sheet.fill(CREAM, icing, ellipse(cake_x, 486, 51, 11))
    sheet.line(NAVY, ellipse(cake_x, 486, 51, 11), 1.2, closed=True)
    for dx in (-30, -10, 10, 30):
        sheet.fill(RED, circle(cake_x + dx, 482 + 0.05 * dx * np.sign(dx), 5.6))
        sheet.fill(CREAM, circle(cake_x + dx + 1.6, 480, 1.3))
    sheet.cut(NAVY, [stroke(bow((cake_x - 46 + 7 * k, 524), (cake_x - 46 + 7 * k, 541), 0), 1.2) for k in range(6)])
    _rosette(sheet, 250, 506, RED, 25, "1st")
    sheet.fill(NAVY, hand_cut(rectangle(26, 578, 448, 96), rng, 0.8, 12))
    sheet.fill(CREAM, lettered("CAKES  ·  MARROWS  ·  TUG OF WAR", "poster", 19, 250, 614, spacing=2.6))
    sheet.fill(MUSTARD, lettered("BRASS BAND  ·  COCONUTS  ·  DUCK RACE", "poster", 15.4, 250, 640, spacing=2.6))
    sheet.fill(CREAM, lettered("the second Saturday of July, from noon", "italic", 10.5, 250, 662))
    return sheet
