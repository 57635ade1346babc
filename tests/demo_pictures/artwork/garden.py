"""Garden prints: the allotment society's mug wrap, seed heads, and herbs in a row."""

from __future__ import annotations

import numpy as np

from tests.demo_pictures.artwork.carving import Rng, burst, leaf
from tests.demo_pictures.drawing import Form, Points, Sheet, bow, circle, ellipse, hand_cut, rectangle, smooth, stroke
from tests.demo_pictures.lettering import lettered, lettered_round

CREAM = "#f5edd9"
INK = "#20302c"
LEAF = "#4d7a4a"
MOSS = "#a9bd82"
RUST = "#b4532a"


def _handle(sheet: Sheet, colour: str, cut: str) -> None:
    """A tool's shaft with a D-shaped grip, from (0, -24) down to (0, 4)."""
    sheet.fill(colour, rectangle(-1.1, -17, 2.2, 21))
    grip = np.vstack([smooth([(-1.3, -16.5), (-4, -20), (-4.3, -24.5), (4.3, -24.5), (4, -20), (1.3, -16.5)], steps=8)])
    hole = smooth([(-2.2, -20.2), (-2.6, -22.6), (2.6, -22.6), (2.2, -20.2), (0, -17.8)], closed=True, steps=6)[::-1]
    sheet.fill(colour, grip, hole)
    sheet.cut(cut, [stroke(bow((-0.35, -15), (-0.35, 2), 0), 0.5), stroke(bow((-3, -23.6), (2.6, -23.6)), 0.4)])


def spade(sheet: Sheet, colour: str, blade: str, cut: str) -> None:
    """A digging spade, about 48 mm long, its grip up."""
    _handle(sheet, colour, cut)
    shape = np.vstack(
        [[(-5.6, 4), (5.6, 4)], smooth([(5.8, 13), (4.6, 19.5), (0, 23.5), (-4.6, 19.5), (-5.8, 13)], steps=6)]
    )
    sheet.fill(blade, shape)
    with sheet.within(shape):
        sheet.cut(
            cut,
            [
                stroke(bow((x, 6.5 + abs(x) * 0.3), (x * 0.9, 20 - abs(x) * 0.9), 0.01), 0.55)
                for x in (1.4, 2.5, 3.6, 4.6)
            ],
        )
        sheet.cut(cut, [stroke(bow((-4.6, 6), (-4.4, 14)), 0.6)])
    sheet.fill(colour, rectangle(-1.7, 0, 3.4, 6))
    sheet.fill(colour, Form.through([(0, 5), (0, 9)], [1.7, 0.3]).outline())


def fork(sheet: Sheet, colour: str, tines: str, cut: str) -> None:
    """A digging fork with four tines, about 48 mm long, its grip up."""
    _handle(sheet, colour, cut)
    sheet.fill(
        tines, smooth([(-6, 8.4), (-5.6, 5.2), (-2, 4), (2, 4), (5.6, 5.2), (6, 8.4), (0, 7)], closed=True, steps=6)
    )
    for x in (-5.2, -1.75, 1.75, 5.2):
        sheet.fill(tines, Form.through([(x, 6), (x * 1.02, 15), (x * 0.98, 24)], [0.85, 0.8, 0.1]).outline())
    sheet.fill(colour, rectangle(-1.7, 0, 3.4, 6))


def _vine(sheet: Sheet, foot: tuple[float, float], rng: Rng, height: float) -> None:
    """A climbing bean that winds up a lath, with leaves, flowers and pods."""
    x, y = foot
    steps = int(height / 6)
    line = smooth([(x + 2.4 * np.sin(k * 1.3), y - k * 6) for k in range(steps + 1)], steps=8)
    sheet.line(INK, line, 1.0)
    for k in range(1, steps + 1):
        at = line[k * 8 - 4]
        side = 1 if k % 2 else -1
        size = rng.uniform(0.85, 1.1) * (1 - 0.3 * k / steps)
        if k % 3 == 2:
            pod = Form.through(
                [tuple(at), (at[0] + side * 3.6, at[1] + 3), (at[0] + side * 4.2, at[1] + 11)], [0.5, 1.1, 1.0, 0.1]
            )
            sheet.fill(RUST, pod.outline())
            sheet.cut(CREAM, [pod.along(0.3, 0.3, 0.9, 0.35)])
        for dx, dy, width in ((7.5, -3.5, 5.6), (8, 1.5, 5.0), (3.6, -6.5, 5.0)):
            tip = (at[0] + side * dx * size, at[1] + dy * size)
            leaf(
                sheet,
                [tuple(at), ((at[0] + tip[0]) / 2, (at[1] + tip[1]) / 2 - 0.8), tip],
                width * size,
                (LEAF, CREAM),
                rng,
                veins=3,
            )
    for k in range(2):
        p = line[-1] + [rng.normal(0, 1.5), -1 - 2 * k]
        sheet.fill(RUST, ellipse(p[0], p[1], 1.5, 1.1, 30))


def trellis_wrap() -> Sheet:
    """Trellis with climbing beans; on either face the crossed spade and fork in a medallion."""
    rng = np.random.default_rng(21)
    w, h = 230.0, 93.0
    sheet = Sheet("Plot holder: trellis wrap", w, h, ground=CREAM)
    laths: list[Points] = []
    pitch = w / 20
    for k in range(-10, 32):
        for lean in (1, -1):
            x = k * pitch
            laths.append(
                hand_cut(stroke(np.array([(x, -4.0), (x + lean * 101 * 0.55, 97.0)]), 1.35, sharp=0), rng, 0.16, 3)
            )
    sheet.cut(MOSS, laths)
    for y in (-4.0, 88.5):
        sheet.fill(INK, hand_cut(rectangle(-5, y, w + 10, 8.5), rng, 0.3, 2.5))
    marks = [
        stroke(bow((x, 90 + rng.uniform(0, 1.6)), (x + rng.uniform(2, 5), 90 + rng.uniform(0, 1.6))), 0.5)
        for x in np.arange(-3, w + 3, 3.1)
    ]
    sheet.cut(CREAM, marks)
    for x, height in ((4, 70), (19, 58), (97, 60), (115, 74), (133, 60), (211, 58), (226, 70)):
        _vine(sheet, (x, 89), rng, height)
    for x in (57.5, 172.5):
        disc = hand_cut(circle(x, 46, 35), rng, 0.35, 2.4)
        sheet.fill(CREAM, hand_cut(circle(x, 46, 37.6), rng, 0.3, 3))
        sheet.fill(INK, disc)
        burst(sheet, CREAM, hand_cut(circle(x, 46, 24), rng, 0.2), (x, 46), (12.5, 25), rng, count=46, width=0.62)
        sheet.fill(CREAM, circle(x, 46, 25.6), circle(x, 46, 25.0)[::-1])
        for turn, tool in ((32, spade), (-32, fork)):
            with sheet.moved(x, 46, turn=turn, scale=0.93):
                sheet.fill(INK, stroke(np.array([(0, -23.0), (0, 22.0)]), 6, sharp=0))
                tool(sheet, "#d99a4e", MOSS, INK)
        sheet.fill(CREAM, lettered_round("PLOT HOLDER", "poster", 6.0, x, 46, 27.2, spacing=1.5))
        sheet.fill(
            MOSS,
            lettered_round(
                "NETHER QUILLET ALLOTMENT SOCIETY", "poster", 3.0, x, 46, 31.4, middle=90, inward=True, spacing=0.75
            ),
        )
    return sheet


def _seed_coaster(title: str, name: str, ground: str) -> Sheet:
    sheet = Sheet(title, 95, 95, ground=ground)
    sheet.fill(INK, circle(47.5, 47.5, 44), circle(47.5, 47.5, 43.3)[::-1])
    sheet.fill(INK, circle(47.5, 47.5, 36.4), circle(47.5, 47.5, 36.0)[::-1])
    sheet.fill(INK, lettered_round("NETHER QUILLET SEED SWAP", "poster", 3.6, 47.5, 47.5, 38.1, spacing=1.15))
    sheet.fill(INK, lettered_round(name, "italic", 3.5, 47.5, 47.5, 41.4, middle=90, inward=True, spacing=0.5))
    for a in (18, 162):
        p = 47.5 + 39.9 * np.array([np.cos(np.radians(a)), np.sin(np.radians(a))])
        sheet.fill(RUST, circle(p[0], p[1], 1.1, 16))
    return sheet


def poppy() -> Sheet:
    """Poppy seed heads, one of them shedding its seed."""
    rng = np.random.default_rng(31)
    sheet = _seed_coaster("Poppy", "Papaver somniferum", "#eef0dc")
    with sheet.within(circle(47.5, 47.5, 35.9)):
        for foot, top, scale, turn in (
            ((45, 90), (34, 37), 1.15, -9),
            ((49, 90), (55, 27), 0.95, 8),
            ((52, 90), (66, 50), 0.8, 20),
        ):
            sheet.fill(
                INK, stroke(smooth([foot, ((foot[0] + top[0]) / 2 + 1.5, 66), top], steps=12), 1.5 * scale, sharp=0)
            )
            with sheet.moved(*top, turn=turn, scale=scale):
                pod = Form.through([(0, 4), (0, -3), (0, -10), (0, -14.5)], [1.6, 8.2, 8.0, 3.0])
                sheet.fill(INK, pod.outline(0.8))
                sheet.fill(MOSS, pod.outline())
                with sheet.within(pod.outline()):
                    sheet.cut(INK, pod.hatching(rng, (0.12, 0.97), 10, 0.8, (0.04, 0.98)))
                    sheet.cut("#eef0dc", pod.hatching(rng, (-0.3, -0.65), 3, 0.8, (0.2, 0.7)))
                sheet.fill(INK, smooth([(-2.6, 3.4), (0, 2.4), (2.6, 3.4), (1.8, 6), (-1.8, 6)], closed=True, steps=5))
                crown = [
                    (9.6 * np.cos(a), -16.2 + (2.6 if k % 2 else 1.1) * np.sin(a) - (0.9 if k % 2 else 0))
                    for k, a in enumerate(np.linspace(0, 2 * np.pi, 24, endpoint=False))
                ]
                sheet.fill(INK, smooth(crown, closed=True, steps=4))
                sheet.cut(
                    MOSS,
                    [
                        stroke(np.array([(0, -16.5), (8 * np.cos(a), -16.7 + 1.9 * np.sin(a))]), 0.7, head=0.2)
                        for a in np.linspace(0.2, 6.3, 11)
                    ],
                )
        for _ in range(70):
            t = rng.uniform(0, 1)
            sheet.fill(
                RUST,
                ellipse(20 + 9 * rng.normal(0, 0.4) + 6 * (1 - t), 30 + 40 * t, 0.45, 0.35, rng.uniform(0, 180), 8),
            )
        blade = [(38, 88), (28, 76), (16, 73)]
        leaf(sheet, blade, 9, (LEAF, "#eef0dc"), rng, wave=0.16)
        leaf(sheet, [(55, 88), (66, 78), (79, 73)], 9, (LEAF, "#eef0dc"), rng, wave=0.16)
    return sheet


def honesty() -> Sheet:
    """Branches of honesty with its moon-like seed pods."""
    ground = "#e9e4f0"
    sheet = _seed_coaster("Honesty", "Lunaria annua", ground)
    violet = "#7a5a8c"
    with sheet.within(circle(47.5, 47.5, 35.9)):
        trunk = smooth([(44, 90), (46, 70), (46, 50), (48, 30), (47, 18)], steps=12)
        sheet.fill(INK, stroke(trunk, 1.5, sharp=0))
        pods = [
            (47, 21, 0),
            (60, 28, 24),
            (33, 31, -26),
            (66, 43, 42),
            (27, 47, -44),
            (54, 43, 20),
            (40, 50, -22),
            (62, 60, 50),
            (31, 65, -48),
        ]
        for x, y, turn in pods:
            d = np.array([np.sin(np.radians(turn)), -np.cos(np.radians(turn))])
            join = trunk[np.argmin(np.abs(trunk[:, 1] - (y + 14)))]
            foot = np.array([x, y]) - d * 8.2
            sheet.fill(INK, stroke(bow(tuple(join), tuple(foot), 0.05 * np.sign(turn)), 1.0, sharp=0))
            with sheet.moved(x, y, turn=turn):
                sheet.fill(INK, ellipse(0, 0, 6.6, 8.2), stroke(np.array([(0, -7.5), (0, -11.5)]), 0.9))
                sheet.fill("#fbf8f4", ellipse(0, 0, 5.9, 7.5))
                marks = [stroke(bow((-5, t), (5, t - 2), 0.06), 0.22) for t in np.arange(-5, 7, 1.7)]
                with sheet.within(ellipse(0, 0, 5.5, 7.1)):
                    sheet.cut(violet, marks)
                    sheet.cut(violet, [stroke(ellipse(0, 0, 5.2 - k, 6.8 - k)[20:40], 0.6) for k in (0, 0.9)])
                for sx, sy in ((-2.3, -2.9), (2.2, -1.2), (-2.1, 1.2), (1.7, 3.2)):
                    sheet.fill("#b9a2bf", ellipse(sx, sy, 1.15, 0.85, 40, 20))
                    sheet.fill(INK, stroke(bow((sx, sy), (-5.4 if sx < 0 else 5.4, sy - 1.6), 0.1), 0.28, sharp=0))
    return sheet


def teasel() -> Sheet:
    """Teasel heads with their hooked bracts."""
    rng = np.random.default_rng(33)
    ground = "#f3e6cf"
    sheet = _seed_coaster("Teasel", "Dipsacus fullonum", ground)
    with sheet.within(circle(47.5, 47.5, 35.9)):
        for foot, top, scale, turn in (((47, 92), (40, 46), 1.1, -6), ((49, 92), (64, 56), 0.78, 14)):
            sheet.fill(INK, stroke(smooth([foot, ((foot[0] + top[0]) / 2, 72), top], steps=12), 1.9 * scale, sharp=0))
            with sheet.moved(*top, turn=turn, scale=scale):
                for a in np.linspace(-78, 78, 9):
                    tip = (19 * np.sin(np.radians(a)), -19 * np.cos(np.radians(a)) * (0.7 + 0.3 * abs(a) / 78) + 1)
                    bract = Form.through(
                        [(0, 2), (tip[0] * 0.65, 3 - abs(tip[0]) * 0.03), (tip[0], tip[1] if abs(a) > 30 else -6)],
                        [0.9, 0.8, 0.05],
                    )
                    sheet.fill(INK, bract.outline())
                head = Form.through([(0, 2), (0, -8), (0, -18), (0, -25)], [5.4, 8.0, 6.6, 2.2])
                sheet.fill(INK, head.outline(0.3))
                for row, t in enumerate(np.linspace(0.04, 0.95, 15)):
                    for s in np.linspace(-0.9, 0.9, 9) + (0.1 if row % 2 else -0.1):
                        p = head.at(t, np.clip(s, -0.95, 0.95))[0]
                        lean = np.array([s * 1.5, -2.2])
                        sheet.fill(RUST if s < 0.25 else "#8a3d20", stroke(np.array([p, p + lean]), 0.95, head=0.7))
                for t in np.linspace(0.05, 0.98, 15):
                    for s in (-1, 1):
                        p = head.at(t, s * 0.97)[0]
                        sheet.fill(INK, stroke(p + np.array([(0, 0), (s * 2.6, -2.2)]), 0.5, head=1))
        leaf(sheet, [(45, 90), (33, 80), (17, 66)], 8, (LEAF, ground), rng, veins=8)
        leaf(sheet, [(50, 90), (64, 84), (80, 66)], 8, (LEAF, ground), rng, veins=8)
    return sheet


def _stem(sheet: Sheet, x: float, top: float, lean: float, width: float = 1.3) -> Points:
    line = smooth([(x, 163), (x + lean * 0.2, 130), (x + lean * 0.6, 90), (x + lean, top)], steps=14)
    sheet.fill(INK, stroke(line, width, sharp=0.15))
    return line


def herbs() -> Sheet:
    """Five herbs in a row, each with its name, for a glass board."""
    rng = np.random.default_rng(41)
    w, h = 280.0, 200.0
    ground = "#f4f1e4"
    sheet = Sheet("Kitchen herbs", w, h, ground=ground)
    band = hand_cut(rectangle(-5, 166, w + 10, 40), rng, 0.4, 3)
    sheet.fill(INK, band)
    names = ("ROSEMARY", "SAGE", "CHIVES", "PARSLEY", "THYME")
    xs = (32, 88, 140, 194, 250)
    for x, tint in zip(xs, ("#dfe3cf", "#e6e9d6", "#e9dfe8", "#dfe7cc", "#eadfd6"), strict=True):
        sheet.fill(tint, hand_cut(ellipse(x, 92, 27, 76), rng, 0.5, 4))
    for lean, top in ((-9, 40), (9, 34), (0, 22)):
        line = _stem(sheet, xs[0], top, lean, 1.8)
        for k in range(6, len(line), 1):
            for s in (-1, 1):
                p, reach = line[k], 10.5 * (1 - 0.45 * k / len(line))
                needle = Form.through(
                    [tuple(p), (p[0] + s * reach * 0.62, p[1] - reach * 0.34), (p[0] + s * reach, p[1] - reach * 0.8)],
                    [0.55, 0.95, 0.15],
                )
                sheet.fill("#3f6d58" if s < 0 else "#2f5646", needle.outline())
                sheet.cut(ground, [needle.along(0.2, 0.2, 0.9, 0.28)])
    for lean, top in ((-7, 50), (8, 40)):
        line = _stem(sheet, xs[1], top, lean, 1.8)
        for k, t in enumerate(np.linspace(6, len(line) - 1, 6).astype(int)):
            for s in (-1, 1):
                p, reach = line[t], 21 * (1 - 0.09 * k)
                tip = (p[0] + s * reach * 0.85, p[1] - reach * (0.35 + 0.1 * k))
                leaf(
                    sheet,
                    [tuple(p), (p[0] + s * reach * 0.5, p[1] - reach * 0.12 - 1.2 * k), tip],
                    9.2 * (1 - 0.07 * k),
                    ("#7f9a78" if s > 0 else "#6a8a68", ground),
                    rng,
                    veins=7,
                )
    for k, lean in enumerate(np.linspace(-22, 22, 12)):
        top = 46 + 9 * abs(lean) / 8 + rng.uniform(-8, 8)
        line = _stem(sheet, xs[2] + lean * 0.12, top, lean, 1.9)
        sheet.line("#4d7a4a", line, 0.9)
        if k % 2:
            for a in np.linspace(-2.9, -0.2, 15):
                for reach in (5.0, 8.6):
                    tip = line[-1] + reach * np.array([np.cos(a), np.sin(a)]) * rng.uniform(0.9, 1.1)
                    sheet.fill(
                        "#a0649a" if reach > 6 else "#7b4580",
                        Form.through(
                            [tuple(line[-1]), tuple((line[-1] + tip) / 2), tuple(tip)], [0.2, 0.8, 1.15, 0.1]
                        ).outline(),
                    )
    for lean, top in ((-15, 66), (15, 62), (0, 40), (-7, 88), (8, 92)):
        line = _stem(sheet, xs[3], top, lean, 1.6)
        end = line[-1]
        for a in (-90, -150, -30):
            d = np.array([np.cos(np.radians(a)), np.sin(np.radians(a))])
            twig = end + d * 8
            sheet.fill(INK, stroke(np.array([end, twig]), 1.0, sharp=0))
            for b in (-62, -30, 0, 30, 62):
                e = np.array([np.cos(np.radians(a + b)), np.sin(np.radians(a + b))])
                leaf(
                    sheet,
                    [tuple(twig), tuple(twig + e * 4.6), tuple(twig + e * 9.2)],
                    6.2,
                    ("#4f8a3f" if b <= 0 else "#3d7338", ground),
                    rng,
                    veins=3,
                    wave=0.18,
                    profile=(0.1, 0.5, 0.9, 1.0, 0.7, 0.1),
                )
    for lean, top in ((-17, 62), (-6, 44), (7, 38), (18, 58), (0, 76)):
        line = _stem(sheet, xs[4], top, lean, 1.1)
        for k in range(8, len(line), 2):
            for s in (-1, 1):
                p, reach = line[k], 5.6 * (1 - 0.35 * k / len(line))
                sheet.fill(
                    "#5f8061",
                    Form.through(
                        [
                            tuple(p),
                            (p[0] + s * reach * 0.6, p[1] - reach * 0.35),
                            (p[0] + s * reach, p[1] - reach * 0.55),
                        ],
                        [0.2, 1.3, 0.2],
                    ).outline(),
                )
        for _ in range(14):
            p = line[-1] + [rng.normal(0, 2.6), rng.normal(-1, 3)]
            sheet.fill("#c27a86", circle(p[0], p[1], rng.uniform(0.7, 1.3), 10))
    for x, name in zip(xs, names, strict=True):
        sheet.fill(ground, lettered(name, "poster", 7.2, x, 186, spacing=1.5))
    marks = [
        stroke(bow((x, 170 + rng.uniform(0, 3)), (x + rng.uniform(3, 9), 170 + rng.uniform(0, 3))), 0.7)
        for x in np.arange(-4, w, 5.2)
    ]
    sheet.cut(ground, marks)
    return sheet
