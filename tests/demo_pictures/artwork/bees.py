"""Bee prints: a skep for a charm, and the honey show's award plate."""

from __future__ import annotations

import numpy as np

from tests.demo_pictures.artwork.carving import Rng, burst
from tests.demo_pictures.drawing import Form, Sheet, bow, circle, ellipse, hand_cut, rectangle, smooth, stroke
from tests.demo_pictures.lettering import lettered

GOLD, HONEY, INK, CREAM, LEAF = "#e3a630", "#f2c75c", "#2b1d14", "#fbf3df", "#55804f"


def bee(sheet: Sheet, x: float, y: float, size: float, turn: float) -> None:
    """A bee seen from above, flying up the page when not turned; `size` is its length."""
    with sheet.moved(x, y, turn=turn, scale=size / 20):
        for s in (-1, 1):
            for tip, width in (((s * 12.5, -5.5), 4.0), ((s * 10, 1.5), 2.8)):
                wing = Form.through(
                    [(s * 1.5, -1.6), (tip[0] * 0.6, tip[1] * 0.8 - 0.4), tip], [0.6, width * 0.72, width * 0.8, 0.4]
                )
                sheet.fill(INK, wing.outline(0.4))
                sheet.fill("#dfe9ea", wing.outline())
                sheet.cut(INK, [wing.along(k, 0.1, 0.85, 0.45) for k in (-0.3, 0.3)])
            for k in range(3):
                sheet.fill(
                    INK,
                    stroke(
                        np.array([(s * 2, -3 + 2 * k), (s * 5, -2.4 + 3 * k), (s * 5.6, -0.6 + 3.4 * k)]), 0.7, head=1
                    ),
                )
            sheet.fill(INK, stroke(bow((s * 0.8, -8), (s * 3.4, -11.6), 0.1 * s), 0.6, head=1))
        body = Form.through([(0, -0.5), (0, 5), (0, 10.5)], [2.8, 3.9, 3.2, 0.2])
        sheet.fill(INK, body.outline(0.4))
        sheet.fill(GOLD, body.outline())
        with sheet.within(body.outline()):
            for yy in (2.0, 5.0, 8.0):
                sheet.fill(INK, rectangle(-5, yy, 10, 1.55))
        sheet.fill(INK, circle(0, -3.2, 3.3), ellipse(0, -7.2, 2.4, 1.9))
        sheet.cut(
            GOLD,
            [
                stroke(
                    np.array([(2.6 * np.cos(a), -3.2 + 2.6 * np.sin(a)), (3.7 * np.cos(a), -3.2 + 3.7 * np.sin(a))]),
                    0.5,
                )
                for a in np.linspace(0, 6.1, 18)
            ],
        )


def skep(sheet: Sheet, x: float, y: float, scale: float, rng: Rng) -> None:
    """A straw skep of coiled rope, 40 wide and 44 high before scaling, standing on (x, y)."""
    with sheet.moved(x, y, scale=scale):
        rows = 9
        for k in range(rows):
            yy = -2.6 - 4.7 * k
            half = 20 * np.sqrt(max(0.06, 1 - (k / (rows - 0.2)) ** 2.5))
            coil = Form.through([(-half, yy), (0, yy + 0.9), (half, yy)], [2.2, 2.75, 2.75, 2.75, 2.2])
            sheet.fill(INK, coil.outline(0.75))
            sheet.fill(GOLD, coil.outline())
            with sheet.within(coil.outline()):
                step = 3.0
                for xx in np.arange(-half - 2, half + 2, step):
                    dark = xx < -half * 0.2
                    sheet.fill(
                        INK if dark else "#9a651c",
                        stroke(bow((xx, yy + 3.2), (xx + 2.4, yy - 2.6), 0.1), 0.95 if dark else 0.6),
                    )
                sheet.cut(
                    CREAM,
                    [
                        stroke(
                            bow((half * 0.25, yy - 1.2), (half * 0.25 + half * rng.uniform(0.2, 0.45), yy - 1.3), 0),
                            0.75,
                        )
                    ],
                )
        sheet.fill(INK, Form.through([(0, -44), (0, -48)], [2.4, 2.0, 1.4]).outline())
        door = np.vstack(
            [[(-5, 0.4)], smooth([(-5, -3), (-3.6, -7.2), (0, -8.8), (3.6, -7.2), (5, -3)], steps=5), [(5, 0.4)]]
        )
        sheet.fill(INK, door)
        sheet.fill(INK, rectangle(-26, 0, 52, 1.2))
        sheet.fill("#8a5a34", rectangle(-26, 1.2, 52, 3.4))
        sheet.fill(INK, rectangle(-26, 4.6, 52, 0.9), rectangle(-20, 5, 3.2, 5), rectangle(16.8, 5, 3.2, 5))
        sheet.cut(
            INK,
            [
                stroke(bow((a, 2.4), (a + rng.uniform(5, 11), 2.4 + rng.uniform(0, 1.2)), 0), 0.5)
                for a in (-24, -14, -3, 8, 16)
            ],
        )


def _clover(sheet: Sheet, x: float, y: float, size: float) -> None:
    for a in (-90, 30, 150):
        d = np.array([np.cos(np.radians(a)), np.sin(np.radians(a))])
        leaf = Form.through(
            [(x, y), tuple(np.array([x, y]) + d * size * 0.6), tuple(np.array([x, y]) + d * size)],
            [0.1, size * 0.42, size * 0.5, size * 0.2],
        )
        sheet.fill(LEAF, leaf.outline())
        sheet.cut(CREAM, [leaf.along(0, 0.25, 0.85, size * 0.09)])


def skep_and_bees() -> Sheet:
    """A skep with bees about it, for a clear charm with its hole at the top."""
    rng = np.random.default_rng(81)
    sheet = Sheet("Skep and bees", 50, 60, ground=CREAM)
    edge = hand_cut(rectangle(-4, -4, 58, 68), rng, 0.1, 6)
    burst(sheet, HONEY, edge, (25, 34), (17, 48), rng, count=52, width=0.9)
    skep(sheet, 25, 47.2, 0.68, rng)
    for x in np.arange(1, 51, 3.2):
        sheet.fill(LEAF, stroke(bow((x, 60), (x + rng.normal(0, 1.5), 52 - rng.uniform(0, 3)), 0.04), 1.1, head=0.9))
    for x, y, s in ((6, 53.6, 2.6), (13.4, 55.5, 2.2), (37, 55.5, 2.2), (44.5, 53.4, 2.6), (25.6, 56, 2.4)):
        _clover(sheet, x, y, s)
    bee(sheet, 9.5, 20, 8.6, 35)
    bee(sheet, 41, 17, 8.2, -40)
    bee(sheet, 44, 34, 6.6, -70)
    bee(sheet, 6.8, 36, 6.2, 60)
    return sheet


def honey_show() -> Sheet:
    """The honey show's award plate: comb to the edges, a laurel of clover, a bee and the class."""
    rng = np.random.default_rng(82)
    w, h = 210.0, 148.0
    sheet = Sheet("Honey show award", w, h, ground="#3a2413")
    r = 8.4
    for row, y in enumerate(np.arange(-6, h + 12, r * 1.5)):
        for x in np.arange(-8, w + 14, r * np.sqrt(3)):
            cx = x + (r * np.sqrt(3) / 2 if row % 2 else 0)
            away = np.hypot((cx - w / 2) / 96, (y - h / 2) / 66)
            if away < 0.93:
                continue
            hexagon = np.array(
                [
                    (cx + (r - 0.9) * np.sin(a), y + (r - 0.9) * np.cos(a))
                    for a in np.linspace(0, 2 * np.pi, 6, endpoint=False)
                ]
            )
            tint = rng.choice(["#b8741d", GOLD, "#cf8f26", HONEY])
            sheet.fill(tint, hand_cut(hexagon, rng, 0.25, 3))
            sheet.cut(CREAM, [stroke(bow((cx - 4, y - 2.5), (cx - 1, y - 5), -0.15), 0.9)])
            if rng.random() < 0.5:
                sheet.cut(
                    "#7c4a12",
                    [
                        stroke(bow((cx + 4.6 - k, y + 4.6 - k * 0.2), (cx + 5.4 - k, y - 2), 0.06), 0.7)
                        for k in (0, 1.5, 3)
                    ],
                )
    panel = hand_cut(ellipse(w / 2, h / 2, 85, 60, count=120), rng, 0.35, 4)
    sheet.fill("#3a2413", hand_cut(ellipse(w / 2, h / 2, 89, 64, count=120), rng, 0.35, 4))
    sheet.fill(CREAM, panel)
    sheet.line("#3a2413", ellipse(w / 2, h / 2, 82, 57, count=120), 0.7, closed=True)
    sheet.fill("#3a2413", lettered("NETHER QUILLET HONEY SHOW", "poster", 6.4, w / 2, 42.5, spacing=1.5))
    bee(sheet, w / 2, 58, 21, 0)
    for s in (-1, 1):
        branch = smooth(
            [(w / 2 + s * 12, 116), (w / 2 + s * 46, 108), (w / 2 + s * 67, 90), (w / 2 + s * 70, 70)], steps=12
        )
        sheet.fill(LEAF, stroke(branch, 1.2, sharp=0.2))
        for k in range(4, len(branch) - 1, 4):
            _clover(sheet, branch[k][0], branch[k][1], 5.2)
        sheet.fill(
            "#b85f7a",
            *[
                circle(branch[-1][0] + 3 * np.cos(a), branch[-1][1] + 3 * np.sin(a), 1.9, 14)
                for a in np.linspace(0, 5.4, 7)
            ],
        )
        sheet.fill(GOLD, ellipse(w / 2 + s * 34, 60, 15, 0.9), circle(w / 2 + s * 16.5, 60, 0.01))
    sheet.fill("#b8541d", lettered("FIRST IN SHOW", "slab", 10.2, w / 2, 86, spacing=0.7))
    sheet.fill("#3a2413", lettered("class 4: two jars of set honey", "italic", 5.6, w / 2, 97.5))
    return sheet
