"""Four woodcut vegetables with tallies, for the set of slate coasters."""

from __future__ import annotations

import numpy as np

from tests.demo_pictures.artwork.carving import Rng, block, burst, leaf, tally, tally_width
from tests.demo_pictures.drawing import Form, Sheet, bow, circle, ellipse, smooth, stroke
from tests.demo_pictures.lettering import lettered

INK = "#1f2a2b"
PAPER = "#f6efdf"
SIZE = 100.0


def _begin(title: str, ground: str, centre: tuple[float, float], reach: float, rng: Rng) -> Sheet:
    sheet = Sheet(title, SIZE, SIZE, ground=PAPER)
    edge = block(sheet, ground, 6, 6, 88, 72, rng)
    burst(sheet, PAPER, edge, centre, (reach, 66), rng, count=64, width=0.95)
    return sheet


def _label(sheet: Sheet, name: str, count: int, rng: Rng) -> None:
    sheet.fill(INK, lettered(name, "poster", 8.0, 6.2, 92.2, align=0, spacing=0.7))
    tally(sheet, INK, 94 - tally_width(7.4, count), 84.4, 7.4, count, rng)


def beetroot() -> Sheet:
    """A beetroot with its leaves on."""
    rng = np.random.default_rng(11)
    red, dark, green = "#9c2348", "#5c1230", "#3f6b43"
    sheet = _begin("Beetroot", INK, (50, 50), 25, rng)
    root = Form.through([(50, 37), (50, 46), (50, 56), (50.4, 64), (50, 70), (48.6, 76)], [5, 14.5, 17, 12.5, 3.6, 0.2])
    ends = [(15, 24), (29, 10), (50, 8), (71, 10), (85, 24)]
    for x, y in [ends[0], ends[4], ends[1], ends[3], ends[2]]:
        d = np.array([x - 50, y - 38.0])
        foot = (50 + d[0] * 0.06, 39.0)
        mid = (50 + d[0] * 0.38, 38 + d[1] * 0.58)
        shape = leaf(
            Sheet("", 1, 1),
            [mid, (50 + d[0] * 0.72, 38 + d[1] * 0.88), (x, y)],
            16,
            (green, red),
            np.random.default_rng(3),
            wave=0.07,
        )
        sheet.fill(INK, shape.outline(1.1))
        sheet.fill(INK, stroke(bow(foot, mid, -0.004 * d[0]), 4.2, sharp=0.1))
        sheet.fill(red, stroke(bow(foot, mid, -0.004 * d[0]), 2.3, sharp=0.1))
        leaf(
            sheet,
            [mid, (50 + d[0] * 0.72, 38 + d[1] * 0.88), (x, y)],
            16,
            (green, PAPER),
            np.random.default_rng(3),
            wave=0.07,
        )
        sheet.fill(red, stroke(bow(mid, (50 + d[0] * 0.86, 38 + d[1] * 0.95), -0.002 * d[0]), 1.3, head=1))
    sheet.fill(INK, root.outline(1.2))
    sheet.fill(red, root.outline())
    with sheet.within(root.outline()):
        sheet.cut(dark, root.hatching(rng, (0.15, 0.97), 12, 1.3, (0.06, 0.92)))
        sheet.cut(PAPER, root.hatching(rng, (-0.45, -0.72), 4, 1.0, (0.15, 0.6)))
        sheet.cut(
            dark, [root.across(t, -0.9, -0.1 + 0.3 * rng.random(), 0.55, 0.03) for t in (0.12, 0.2, 0.62, 0.7, 0.77)]
        )
    sheet.cut(dark, [root.along(s, 0.55, 1.0, 0.5) for s in (-0.3, 0.4)])
    _label(sheet, "BEETROOT", 12, rng)
    return sheet


def leek() -> Sheet:
    """A leek with its roots, fanned at the top."""
    rng = np.random.default_rng(12)
    ground, green, light = "#24524a", "#86a95c", "#dfe6b4"
    sheet = _begin("Leek", ground, (50, 40), 27, rng)
    ends = [(15, 25), (85, 27), (23, 12.5), (78, 13), (36, 9), (64, 9), (50, 8.5)]
    for k, (x, y) in enumerate(ends):
        d = x - 50
        spine = [(50 + d * 0.07, 50), (50 + d * 0.12, 36), (50 + d * 0.42, 36 - (36 - y) * 0.62), (x, y)]
        strap = Form.through(spine, [3.3, 4.1, 4.3, 0.2])
        sheet.fill(INK, strap.outline(1.0))
        sheet.fill(green if k % 2 else "#5f8a52", strap.outline())
        with sheet.within(strap.outline()):
            sheet.cut(
                light,
                [
                    strap.along(s, 0.12 + 0.1 * rng.random(), 0.75 + 0.2 * rng.random(), 0.75)
                    for s in (-0.6, -0.25, 0.1)
                ],
            )
            sheet.cut(INK, [strap.along(s, 0.2, 0.9 + 0.1 * rng.random(), 0.8) for s in (0.45, 0.72, 0.92)])
    shank = Form.through([(50, 36), (50, 48), (50, 60), (50, 68.5)], [5.5, 5.4, 5.6, 6.4])
    sheet.fill(INK, shank.outline(1.1))
    sheet.fill(PAPER, shank.outline())
    with sheet.within(shank.outline()):
        sheet.fill(light, Form.through([(50, 30), (50, 52)], [6.5, 5]).outline())
        sheet.cut(
            green,
            [stroke(bow((50 + s, 34), (50 + s * 0.9, 50 + 5 * rng.random()), 0), 1.1) for s in np.linspace(-5, 5, 9)],
        )
        sheet.cut(INK, shank.hatching(rng, (0.25, 0.96), 7, 0.75, (0.1, 0.98)))
        sheet.cut(INK, [shank.along(s, 0.75, 1.0, 0.5) for s in (-0.8, -0.5, -0.15)])
    for _ in range(34):
        x = rng.uniform(-5.6, 5.6)
        sheet.fill(
            PAPER,
            stroke(
                bow((50 + x, 68.2), (50 + x * 2.1 + rng.normal(0, 1), rng.uniform(72, 77)), rng.normal(0, 0.1)),
                0.55,
                head=1,
            ),
        )
    _label(sheet, "LEEK", 9, rng)
    return sheet


def squash() -> Sheet:
    """A ribbed squash with leaf and tendril."""
    rng = np.random.default_rng(13)
    ground, orange, dark, green = "#46305a", "#dd8327", "#93401a", "#4c7044"
    sheet = _begin("Squash", ground, (50, 49), 31, rng)
    tendril = smooth([(53, 27), (63, 17), (73, 20), (72, 27), (66, 26), (67, 20.5), (76, 15), (87, 19)], steps=12)
    sheet.line(ground, tendril, 2.6)
    sheet.line(green, tendril, 1.1)
    vine = [(47, 27), (36, 19), (20, 19)]
    sheet.fill(
        ground, leaf(Sheet("", 1, 1), vine, 22, (green, PAPER), np.random.default_rng(4), wave=0.09).outline(1.1)
    )
    leaf(sheet, vine, 22, (green, PAPER), np.random.default_rng(4), wave=0.09)
    sheet.fill(INK, ellipse(50, 51, 33.4, 24.2))
    for x, rx in [(-25.5, 7.5), (25.5, 7.5), (-15.5, 10), (15.5, 10), (0, 10.5)]:
        spine = [
            (50 + x * 0.45, 28.5),
            (50 + x * 0.95, 37),
            (50 + x * 1.06, 51),
            (50 + x * 0.98, 64),
            (50 + x * 0.6, 73),
        ]
        lobe = Form.through(spine, [rx * 0.3, rx * 0.86, rx, rx, rx * 0.86, rx * 0.25])
        sheet.fill(INK, lobe.outline(0.9))
        sheet.fill(orange, lobe.outline())
        with sheet.within(lobe.outline()):
            sheet.cut(dark, lobe.hatching(rng, (0.2, 0.98), 7, 1.15, (0.03, 0.97)))
            sheet.cut(PAPER, lobe.hatching(rng, (-0.3, -0.66), 3, 0.9, (0.12, 0.62)))
    stem = Form.through([(50, 33), (49.5, 28), (50.5, 22), (55, 17.5)], [6.2, 3.0, 2.4, 3.2])
    sheet.fill(INK, stem.outline(1.0))
    sheet.fill(green, stem.outline())
    sheet.cut(INK, [stem.along(s, 0.05, 0.95, 0.6) for s in (-0.1, 0.3, 0.65)])
    sheet.cut(PAPER, [stem.along(-0.5, 0.1, 0.8, 0.6)])
    _label(sheet, "SQUASH", 7, rng)
    return sheet


def broad_bean() -> Sheet:
    """A closed pod and an open one, with leaves."""
    rng = np.random.default_rng(14)
    ground, green, light, dark = "#7a3b22", "#7fa150", "#d9dea6", "#2f4a33"
    sheet = _begin("Broad bean", ground, (50, 44), 27, rng)
    for spine, width in [
        ([(50, 18), (36, 12), (18, 17)], 13),
        ([(52, 17), (66, 11), (84, 15)], 13),
        ([(44, 22), (28, 25), (14, 36)], 13),
    ]:
        sheet.fill(INK, leaf(Sheet("", 1, 1), spine, width, (dark, light), rng).outline(1.0))
        leaf(sheet, spine, width, ("#4f7a46", light), rng, veins=6)
    closed = Form.through([(47, 14), (38, 30), (31, 48), (30, 64), (34, 75)], [1.4, 5.4, 6.4, 5.6, 0.3])
    sheet.fill(INK, closed.outline(1.1))
    sheet.fill(green, closed.outline())
    with sheet.within(closed.outline()):
        for t in (0.26, 0.45, 0.63, 0.8):
            p = closed.at(t, 0.05)[0]
            sheet.fill(dark, ellipse(p[0] + 0.7, p[1] + 0.9, 4.2, 4.8, 15))
            sheet.fill("#94b463", ellipse(p[0], p[1], 4.0, 4.6, 15))
            sheet.cut(light, [stroke(bow((p[0] - 2.2, p[1] + 1.6), (p[0] - 0.6, p[1] - 3), 0.18), 0.9)])
        sheet.cut(dark, closed.hatching(rng, (-0.6, -0.98), 5, 0.8))
        sheet.cut(light, closed.hatching(rng, (0.66, 0.86), 2, 0.7, (0.1, 0.7)))
    pod = Form.through([(54, 14), (63, 28), (68, 46), (67, 62), (61, 75)], [1.4, 8.2, 9.6, 8.2, 0.3])
    sheet.fill(INK, pod.outline(1.1))
    sheet.fill(green, pod.outline())
    sheet.fill(light, Form(pod.spine, pod.radii * 0.76).outline())
    with sheet.within(pod.outline()):
        sheet.cut(dark, [pod.along(s, 0.08, 0.94, 0.7) for s in (-0.78, -0.9, 0.79, 0.91)])
        sheet.cut(green, [pod.along(s, 0.15, 0.9, 0.5) for s in (-0.6, -0.45, 0.45, 0.6)])
        for t in (0.24, 0.42, 0.6, 0.77):
            p = pod.at(t, 0)[0]
            turn = -12 + 40 * t
            sheet.fill(INK, ellipse(p[0], p[1], 5.5, 4.4, turn))
            sheet.fill("#b9c777", ellipse(p[0] - 0.1, p[1] - 0.2, 4.8, 3.7, turn))
            sheet.cut(dark, [stroke(ellipse(p[0], p[1], 3.9 - k, 2.9 - k * 0.75, turn)[2:26], 0.5) for k in (0, 1.0)])
            sheet.fill(INK, ellipse(p[0] - 4.2, p[1] - 0.2, 0.6, 1.5, turn))
            sheet.cut(PAPER, [stroke(ellipse(p[0], p[1], 3.4, 2.4, turn)[40:54], 0.8)])
    stem = Form.through([(50, 6), (50.5, 12), (50, 19)], [1.2, 1.4, 1.5])
    sheet.fill(INK, stem.outline(0.9))
    sheet.fill("#4f7a46", stem.outline())
    sheet.fill(INK, circle(50, 18, 2.2))
    _label(sheet, "BROAD BEAN", 5, rng)
    return sheet
