"""River prints: a heron at dawn, oars and an eight for the rowing club, a weir in contours, a narrow boat."""

from __future__ import annotations

import itertools

import contourpy
import numpy as np

from tests.demo_pictures.artwork.carving import Rng, burst, speckle
from tests.demo_pictures.drawing import (
    Form,
    Points,
    Sheet,
    bow,
    circle,
    ellipse,
    hand_cut,
    normals,
    rectangle,
    resample,
    smooth,
    stroke,
)
from tests.demo_pictures.lettering import lettered

NAVY = "#17304a"
FOAM = "#f3efe2"
CORAL = "#d9573b"


def _reed(
    sheet: Sheet, colour: str, foot: tuple[float, float], top: tuple[float, float], width: float, bend: float
) -> None:
    """One blade of reed, broad at the foot."""
    line = bow(foot, top, bend, 14)
    form = Form(line, np.interp(np.linspace(0, 1, 14), [0, 0.6, 1], [width / 2, width / 2.4, 0.0]))
    sheet.fill(colour, form.outline())


def _reed_mace(
    sheet: Sheet, colour: str, head: str, foot: tuple[float, float], top: tuple[float, float], bend: float
) -> None:
    """A reed-mace: a stalk with its brown head."""
    line = bow(foot, top, bend, 20)
    sheet.fill(colour, stroke(line, 0.9, sharp=0))
    sheet.fill(head, Form.through([tuple(line[14]), tuple(line[16]), tuple(line[18])], [1.2, 1.5, 1.5, 1.2]).outline())


def heron() -> Sheet:
    """A heron among reeds before a low sun, in flat screen-printed colours."""
    rng = np.random.default_rng(51)
    w, h = 210.0, 148.0
    sky = ["#f6d9a8", "#f3c08a", "#eaa076", "#d98071", "#b96a75"]
    ink, mist, slate, far = "#1d2b3d", "#f9ead0", "#4c6377", "#8c6a80"
    sheet = Sheet("Heron at dawn", w, h, ground=sky[0])
    for k, y in enumerate((58, 38, 20, 6)):
        edge = smooth(
            [(-5, y), (30, y + 3 * np.sin(k)), (80, y - 4), (130, y + 2), (180, y - 3), (216, y + 2)], steps=8
        )
        sheet.fill(sky[k + 1], np.vstack([edge, [(216, -5), (-5, -5)]]))
    sheet.fill("#fbeecb", circle(134, 61, 25))
    sheet.fill("#f7b55c", circle(134, 61, 22.5))
    bank = smooth(
        [
            (-5, 72),
            (14, 66),
            (30, 69),
            (48, 62),
            (66, 68),
            (92, 71),
            (120, 72),
            (150, 69),
            (168, 63),
            (186, 66),
            (216, 60),
        ],
        steps=8,
    )
    sheet.fill(far, np.vstack([bank, [(216, 84), (-5, 84)]]))
    trees = [
        stroke(bow((x, 78), (x + rng.normal(0, 1.2), 78 - rng.uniform(8, 17)), 0.02), rng.uniform(1.5, 4))
        for x in np.concatenate([np.arange(-3, 60, 3.3), np.arange(160, 214, 3.1)])
    ]
    sheet.cut(far, trees)
    sheet.fill(
        "#6d5a78", np.vstack([smooth([(-5, 78), (60, 75.5), (110, 78), (216, 74)], steps=8), [(216, 88), (-5, 88)]])
    )
    sheet.fill("#e3a184", rectangle(-5, 82, w + 10, 80))
    for k, (y, tint) in enumerate(((92, "#c98480"), (106, "#97748a"), (122, slate))):
        edge = smooth([(-5, y + 2), (40, y - 1.5), (90, y + 2), (140, y - 1), (216, y + 1.5)], steps=8)
        sheet.fill(tint, np.vstack([edge, [(216, 160), (-5, 160)]]))
        ripples = [
            stroke(bow((x, yy), (x + rng.uniform(7, 26), yy), rng.normal(0, 0.012)), rng.uniform(0.6, 1.5))
            for x, yy in zip(rng.uniform(-8, 205, 26), rng.uniform(y + 2, y + 15, 26), strict=True)
        ]
        sheet.cut((mist, "#e3a184", "#97748a")[k], ripples)
    glints = []
    for yy in np.arange(84, 128, 2.2):
        reach = 20 * (1 - (yy - 84) / 70)
        for _ in range(3):
            x = 134 + rng.normal(0, 0.45) * reach
            glints.append(
                stroke(bow((x - reach * 0.32, yy), (x + reach * 0.32, yy), rng.normal(0, 0.01)), rng.uniform(0.9, 1.9))
            )
    sheet.cut("#f9cf82", glints)
    for _ in range(46):
        x = rng.choice([rng.uniform(-4, 46), rng.uniform(150, 214)])
        _reed(sheet, "#3c5266", (x, 152), (x + rng.normal(0, 9), rng.uniform(62, 100)), 1.8, rng.normal(0, 0.05))
    _heron(sheet, ink, mist, slate, rng)
    for _ in range(40):
        x = rng.choice([rng.uniform(-5, 30), rng.uniform(172, 214)])
        _reed(
            sheet,
            ink,
            (x, 153),
            (x + rng.normal(0, 12), rng.uniform(52, 112)),
            rng.uniform(1.8, 3.4),
            rng.normal(0, 0.06),
        )
    for x, top, lean in (
        (10, 34, 5),
        (22, 52, -3),
        (188, 30, -4),
        (198, 46, 3),
        (178, 60, -6),
        (205, 66, 2),
        (2, 58, 3),
    ):
        _reed_mace(sheet, ink, "#6e3a24", (x, 152), (x + lean, top), 0.02 * np.sign(lean))
    sheet.fill(
        ink,
        np.vstack(
            [
                smooth([(-5, 143), (30, 139), (80, 145), (130, 142.5), (176, 138), (216, 142)], steps=8),
                [(216, 156), (-5, 156)],
            ]
        ),
    )
    return sheet


def _heron(sheet: Sheet, ink: str, light: str, grey: str, rng: Rng) -> None:
    """The bird, looking right towards the sun, its feet in the shallows at y = 132."""
    for foot, knee, hip in (((83, 133), (85.5, 113), (81, 97)), ((92, 134.5), (89.5, 114), (87, 97))):
        sheet.fill(ink, stroke(np.array([foot, knee, hip]), 1.5, sharp=0.0))
        sheet.fill(ink, circle(knee[0], knee[1], 1.25, 14))
        for ring in (4.5, 8):
            sheet.cut(light, [stroke(ellipse(foot[0], foot[1], ring, ring * 0.2)[34:74], 0.5)])
    body = Form.through([(49, 103), (60, 93), (76, 83), (93, 76), (101, 69)], [0.4, 5.6, 11.5, 11.8, 7, 2.6])
    neck = Form.through(
        [(86, 86), (99, 77), (104, 67), (101, 57), (93, 47), (96, 36), (105, 31.5)], [0.3, 5.4, 5.4, 3.8, 3.0, 2.8, 2.7]
    )
    head = Form.through([(97, 35.5), (103, 30.6), (110, 30), (116, 31)], [2.2, 3.9, 3.5, 1.4])
    bill = np.array([(112, 29.2), (142, 33.6), (112, 33.6)])
    crest = [
        stroke(bow((101, 29), (80, 36), -0.07), 1.4, head=0.8),
        stroke(bow((101, 30), (84, 40), -0.06), 1.2, head=0.8),
    ]
    sheet.fill(
        light,
        neck.outline(0.9),
    )
    sheet.fill(light, body.outline(0.9))
    sheet.fill(light, head.outline(0.8))
    sheet.fill(grey, body.outline())
    sheet.fill("#e9e6dc", neck.outline())
    sheet.fill("#e9e6dc", head.outline())
    sheet.cut(ink, crest)
    sheet.fill(ink, stroke(bow((99, 28.6), (113, 29.4), -0.1), 2.3))
    sheet.fill("#e59a34", bill)
    sheet.fill("#a85f22", np.array([(112, 31.4), (142, 33.6), (112, 33.6)]))
    sheet.fill(ink, circle(110.4, 30.9, 1.0, 18))
    sheet.fill("#f7b55c", circle(110.5, 30.8, 0.5, 12))
    with sheet.within(neck.outline()):
        sheet.cut(ink, [neck.along(-0.35 + rng.normal(0, 0.12), a, a + 0.1, 0.9) for a in np.arange(0.08, 0.85, 0.085)])
        sheet.cut(ink, [neck.along(-0.1 + rng.normal(0, 0.1), a, a + 0.07, 0.7) for a in np.arange(0.1, 0.8, 0.085)])
        sheet.cut(grey, neck.hatching(rng, (0.5, 0.95), 4, 0.8, (0.02, 0.85)))
    with sheet.within(body.outline()):
        sheet.cut(ink, body.hatching(rng, (0.5, 0.98), 6, 1.3, (0.03, 0.85)))
        for row, s in enumerate((-0.72, -0.4, -0.08, 0.25)):
            for t in np.arange(0.16 + 0.03 * (row % 2), 0.86, 0.075):
                p, q = body.at(t, s)[0], body.at(t - 0.09, s + 0.12)[0]
                sheet.fill("#e9e6dc", stroke(bow(tuple(p), tuple(q), 0.14), 0.85))
        sheet.fill(
            ink,
            Form.through(
                [tuple(body.at(0.02, 0.2)[0]), tuple(body.at(0.3, 0.5)[0]), tuple(body.at(0.6, 0.55)[0])],
                [0.4, 2.4, 0.3],
            ).outline(),
        )
    for k in range(7):
        p = body.at(0.98 - 0.035 * k, 0.8)[0]
        sheet.fill(
            "#e9e6dc", stroke(bow((p[0] - 1, p[1] - 2), (p[0] - 4 + k * 0.2, p[1] + 11 - k), 0.08), 1.1, head=0.7)
        )


def _oar(sheet: Sheet, blade: str, band: str) -> None:
    """A sculling oar 62 units long, blade up, middle at the origin."""
    sheet.fill(FOAM, rectangle(-0.62, -20, 1.24, 48))
    sheet.fill(band, rectangle(-0.9, 10, 1.8, 3), rectangle(-0.85, 24, 1.7, 5))
    shape = np.vstack(
        [
            smooth([(-0.7, -17), (-2.8, -20), (-3.6, -25), (-3.6, -34)], steps=6),
            smooth([(3.6, -34), (3.4, -22), (0.7, -17)], steps=6),
        ]
    )
    sheet.fill(FOAM, shape)
    with sheet.within(shape):
        sheet.fill(blade, rectangle(-4, -34.5, 8, 9.5))
        sheet.fill(FOAM, rectangle(-4, -30.5, 8, 1.5))


def crossed_oars() -> Sheet:
    """The rowing club's tag: crossed blades, a pennant and the club's name."""
    rng = np.random.default_rng(52)
    sheet = Sheet("Regatta key tag", 54, 25, ground=NAVY)
    edge = hand_cut(rectangle(-3.5, -3.5, 61, 32), rng, 0.1, 4)
    burst(sheet, "#2b4a69", edge, (21.5, 12.5), (4, 40), rng, count=44, width=0.5)
    for turn, flip in ((58, False), (-58, True)):
        with sheet.moved(21.3, 13.0, turn=turn, scale=0.37, flip=flip):
            sheet.fill(NAVY, stroke(np.array([(0, -35.0), (0, 30.0)]), 5, sharp=0))
            _oar(sheet, CORAL, "#e9b55a")
    with sheet.moved(17.6, 1.6, scale=1):
        sheet.fill(FOAM, rectangle(0, 0.6, 0.5, 10))
        pennant = np.vstack(
            [
                smooth([(0.5, 0.8), (3.2, 1.4), (6, 1.2), (9, 3)], steps=6),
                smooth([(9, 3), (6, 4.4), (3.2, 5.0), (0.5, 5.4)], steps=6),
            ]
        )
        sheet.fill("#e9b55a", pennant)
        with sheet.within(pennant):
            sheet.fill(CORAL, rectangle(0, 2.4, 10, 1.3))
    for k in range(3):
        x = np.linspace(9, 34, 60)
        sheet.line("#7fb0c4", np.column_stack([x, 21.3 + 1.0 * k + 0.35 * np.sin(x * 1.4 + k * 2)]), 0.36)
    sheet.fill(
        FOAM,
        lettered("NETHER", "poster", 3.5, 44.4, 7.4, spacing=0.4),
        lettered("QUILLET", "poster", 3.5, 44.4, 12.2, spacing=0.33),
    )
    sheet.fill("#e9b55a", lettered("ROWING CLUB", "poster", 1.9, 44.4, 16.0, spacing=0.22))
    sheet.fill(CORAL, rectangle(37.6, 17.5, 13.6, 0.45))
    sheet.fill(FOAM, lettered("REGATTA", "poster", 2.4, 44.4, 21.3, spacing=0.85))
    return sheet


def _rower(sheet: Sheet, x: float, y: float, shirt: str, skin: str, dark: str) -> None:
    """One rower at the finish of the drive, facing left; the seat is at (x, y)."""
    sheet.fill(dark, Form.through([(x, y), (x - 3.6, y - 3.4), (x - 7.4, y - 0.4)], [1.3, 1.15, 0.9, 0.5]).outline())
    trunk = Form.through([(x, y + 0.2), (x + 1.6, y - 4), (x + 1.2, y - 8.4)], [1.7, 2.0, 2.3, 1.0])
    sheet.fill(shirt, trunk.outline())
    sheet.cut(FOAM, [trunk.across(0.55, -1, 1, 0.7)])
    sheet.fill(
        skin,
        ellipse(x + 0.5, y - 11.6, 1.7, 2.05, -10),
        stroke(np.array([(x + 0.8, y - 9.9), (x + 1.1, y - 8.4)]), 1.5, sharp=0),
    )
    sheet.fill(dark, np.vstack([ellipse(x + 0.9, y - 12.2, 1.8, 1.75, -10, 40)[18:40]]))
    sheet.fill(
        skin, Form.through([(x + 1.4, y - 8), (x - 1.4, y - 5.2), (x - 4.8, y - 5.4)], [0.95, 0.8, 0.6]).outline()
    )


def rowing_eight_wrap() -> Sheet:
    """An eight with its cox that runs all round the mug, over water in bands."""
    rng = np.random.default_rng(53)
    w, h = 230.0, 93.0
    teal, pale, gold = "#2f7f8c", "#bcd9d8", "#e9b55a"
    sheet = Sheet("Regatta eight", w, h, ground=FOAM)
    for _ in range(44):
        x0, y0 = rng.uniform(-6, w), rng.uniform(8, 40)
        sheet.fill(
            "#e2e6dc", stroke(bow((x0, y0), (x0 + rng.uniform(10, 36), y0), rng.normal(0, 0.01)), rng.uniform(0.6, 1.6))
        )
    sheet.fill(NAVY, rectangle(-5, -5, w + 10, 12))
    flags = np.arange(-8, w + 8, 11.5)
    for k, x in enumerate(flags):
        sheet.fill((CORAL, gold, teal, FOAM)[k % 4], np.array([(x + 0.8, 7.4), (x + 10.7, 7.4), (x + 5.75, 18.5)]))
        if k % 4 == 3:
            sheet.line(NAVY, np.array([(x + 0.8, 7.4), (x + 5.75, 18.5), (x + 10.7, 7.4)]), 0.5)
    sheet.fill(NAVY, rectangle(-5, 6, w + 10, 1.7))
    sheet.fill(CORAL, lettered("NETHER QUILLET REGATTA", "poster", 6.6, w / 2, 32.2, spacing=4.6))
    water = 62.0
    for k, (y, tint) in enumerate(((water, pale), (water + 6.5, "#7fb0c4"), (water + 14, teal), (water + 23, NAVY))):
        x = np.linspace(-5, w + 5, 260)
        edge = np.column_stack([x, y + (0.8 + 0.25 * k) * np.sin(x * 2 * np.pi / (w / (19 - 3 * k)) + k)])
        sheet.fill(tint, np.vstack([edge, [(w + 5, h + 5), (-5, h + 5)]]))
        sheet.cut(
            (FOAM, FOAM, pale, teal)[k],
            [
                stroke(bow((a, b), (a + rng.uniform(3, 12), b), rng.normal(0, 0.02)), rng.uniform(0.4, 1.0))
                for a, b in zip(rng.uniform(-5, w, 46), rng.uniform(y + 2, y + 9, 46), strict=True)
            ],
        )
    shell = np.vstack(
        [
            smooth([(9, 58.2), (40, 59.4), (115, 59.8), (190, 59.4), (223, 57.6)], steps=10),
            smooth([(214, 62.2), (190, 64), (115, 64.4), (40, 64), (18, 62)], steps=10),
        ]
    )
    for k in range(8):
        seat = 40 + k * 19.5
        _rower(
            sheet, seat, 58.2, CORAL if k % 2 else NAVY, ("#c98b62", "#8a5a3c", "#e0ab84", "#6b442f")[k % 4], "#1a2230"
        )
    cox = 201.5
    sheet.fill(gold, Form.through([(cox, 58.6), (cox + 0.6, 54.6), (cox, 51)], [1.8, 2.0, 2.1, 1.0]).outline())
    sheet.fill("#c98b62", ellipse(cox - 0.3, 48.4, 1.6, 1.9))
    sheet.fill("#1a2230", ellipse(cox, 47.3, 1.9, 1.1), np.array([(cox - 3.6, 48), (cox - 1, 47), (cox - 1, 48)]))
    sheet.fill(NAVY, shell)
    sheet.cut(FOAM, [stroke(bow((14, 60.6), (216, 60.6), 0.004, 30), 0.7, sharp=0.1)])
    for k in range(8):
        seat = 40 + k * 19.5
        hand, blade = (seat - 4.8, 52.8), (seat + 9.2, 68.4)
        sheet.line(FOAM, np.array([hand, blade]), 1.05)
        sheet.line("#1a2230", np.array([hand, blade]), 0.6)
        with sheet.moved(blade[0], blade[1], turn=48):
            sheet.fill(CORAL, hand_cut(rectangle(-0.5, -1.7, 6.6, 3.4), rng, 0.1, 2))
            sheet.fill(FOAM, rectangle(2.2, -1.7, 1.1, 3.4))
        for r in (3.2, 5.4):
            sheet.cut(FOAM, [stroke(ellipse(blade[0] + 3.2, blade[1] + 4.6, r, r * 0.3)[38:70], 0.6)])
    return sheet


def weir_contours() -> Sheet:
    """A contour map of a made-up weir: land in olive tints, water in blue depths, soundings along it."""
    rng = np.random.default_rng(54)
    w, h = 230.0, 190.0
    nx, ny = 240, 200
    gx, gy = np.meshgrid(np.linspace(-5, w + 5, nx), np.linspace(-5, h + 5, ny))
    across = gy - (96 + 26 * np.sin((gx - 20) / 62) - 0.1 * gx)
    half = 23 + 9 * np.exp(-(((gx - 128) / 34) ** 2)) + 3 * np.sin(gx / 23)
    land = np.zeros_like(gx)
    for _ in range(46):
        cx, cy, r = rng.uniform(-10, w + 10), rng.uniform(-10, h + 10), rng.uniform(14, 46)
        land += rng.uniform(-0.35, 0.8) * np.exp(-(((gx - cx) ** 2 + (gy - cy) ** 2) / r**2))
    depth = 1 - (np.abs(across) / half) ** 2
    pool = 0.62 * np.exp(-(((gx - 138) / 20) ** 2))
    z = np.where(
        depth > 0,
        -depth * 3.2 - pool * 3 * depth,
        (np.abs(across) / half - 1) * 2.6 + np.maximum(land, -0.2) * np.minimum(1, (np.abs(across) - half) / 16) * 2.4,
    )
    k = np.ones(7) / 7
    for axis in (0, 1):
        z = np.apply_along_axis(lambda row: np.convolve(np.pad(row, 3, mode="edge"), k, mode="valid"), axis, z)
    lines = contourpy.contour_generator(gx, gy, z, fill_type="OuterOffset")
    sheet = Sheet("Quillet weir, in contours", w, h, ground="#e9e3c4")
    levels = [-99, -4.4, -3.2, -2.0, -0.9, 0, 1.6, 3.2, 4.8, 6.6, 99]
    tints = [
        "#174a63",
        "#22627d",
        "#3a7f98",
        "#68a5b5",
        "#a5cbcd",
        "#e9e3c4",
        "#d7d6a8",
        "#bfc68d",
        "#a3b174",
        "#86995c",
    ]
    for low, high, tint in zip(levels, levels[1:], tints, strict=False):
        outlines, offsets = lines.filled(low, high)
        for points, offset in zip(outlines, offsets, strict=True):
            sheet.fill(tint, *[points[a:b] for a, b in itertools.pairwise(offset)])
    line = contourpy.contour_generator(gx, gy, z)
    for level in np.arange(-5.2, 9, 0.4):
        heavy = abs(round(level / 0.4)) % 5 == 0
        for points in line.lines(float(level)):
            if len(points) > 9:
                sheet.line("#123f55" if level < -0.05 else "#8a5a34", np.asarray(points), 0.62 if heavy else 0.26)
    for points in line.lines(0.0):
        sheet.line("#1b2d33", np.asarray(points), 0.9)
    crest = smooth([(112, 84), (118, 96), (121, 110), (119, 126), (113, 140)], steps=12)
    sheet.line(FOAM, crest, 4.2)
    sheet.line("#1b2d33", crest, 1.7)
    combs = resample_ticks(crest)
    for a, b in combs:
        sheet.line("#1b2d33", np.array([a, b]), 0.9)
    for _ in range(70):
        p = crest[rng.integers(4, len(crest) - 4)] + [rng.uniform(5, 22), rng.normal(0, 2)]
        sheet.fill(
            FOAM, stroke(bow(tuple(p), (p[0] + rng.uniform(2, 6), p[1] + rng.normal(0, 1.2)), rng.normal(0, 0.1)), 0.75)
        )
    label = hand_cut(rectangle(11, 11, 76, 31), rng, 0.2, 4)
    sheet.fill(FOAM, label)
    sheet.line("#1b2d33", label, 0.6, closed=True)
    sheet.fill("#1b2d33", lettered("QUILLET WEIR", "poster", 8.2, 15, 24.5, align=0, spacing=0.75))
    sheet.fill(CORAL, lettered("soundings in fathoms of tea", "italic", 3.5, 15, 32.0, align=0, spacing=0.1))
    for k in range(6):
        sheet.fill("#1b2d33" if k % 2 == 0 else FOAM, rectangle(15 + k * 8, 35.6, 8, 1.9))
    sheet.line("#1b2d33", rectangle(15, 35.6, 48, 1.9), 0.3, closed=True)
    with sheet.moved(203, 160):
        sheet.fill(FOAM, circle(0, 0, 15))
        sheet.line("#1b2d33", circle(0, 0, 13.6), 0.5, closed=True)
        for a in range(0, 360, 45):
            r = 12.6 if a % 90 == 0 else 8
            d, e = (
                np.array([np.sin(np.radians(a)), -np.cos(np.radians(a))]),
                np.array([np.cos(np.radians(a)), np.sin(np.radians(a))]),
            )
            sheet.fill("#1b2d33", np.array([d * r, e * 2.2, [0, 0]]))
            sheet.fill(CORAL if a == 0 else "#c9bf9d", np.array([d * r, -e * 2.2, [0, 0]]))
    for x, y, text in ((44, 121, "2.1"), (78, 118, "2.8"), (150, 92, "5.3"), (176, 76, "3.0"), (209, 58, "2.4")):
        sheet.fill(FOAM, lettered(text, "italic", 3.4, x, y))
    return sheet


def resample_ticks(line: Points) -> list[tuple[Points, Points]]:
    """Comb ticks to the right of a line, as a weir is drawn on a map."""
    even = resample(line, 19)
    return [(p, p - n * 3.2) for p, n in zip(even, normals(even), strict=True)]


def narrow_boat() -> Sheet:
    """A narrow boat under a bridge, in two browns, to be sewn on as a patch."""
    rng = np.random.default_rng(55)
    tan, dark = "#c99a63", "#3a2114"
    sheet = Sheet("Narrow boat patch", 80, 50, ground=tan)
    outer = np.vstack(
        [
            smooth(
                [
                    (3, 25),
                    (4, 9),
                    (14, 3.6),
                    (40, 3),
                    (66, 3.6),
                    (76, 9),
                    (77, 25),
                    (76, 41),
                    (66, 46.4),
                    (40, 47),
                    (14, 46.4),
                    (4, 41),
                ],
                closed=True,
                steps=6,
            )
        ]
    )
    sheet.line(dark, outer, 0.9, closed=True)
    for k in range(0, len(outer), 2):
        d = outer[k] - [40, 25]
        sheet.fill(dark, circle(*(outer[k] - d * 0.045), 0.3, 8))
    with sheet.within(
        smooth(
            [
                (7, 25),
                (8, 11),
                (16, 7),
                (40, 6.6),
                (64, 7),
                (72, 11),
                (73, 25),
                (72, 39),
                (64, 43),
                (40, 43.4),
                (16, 43),
                (8, 39),
            ],
            closed=True,
            steps=6,
        )
    ):
        arch = np.vstack(
            [
                [(0, 14)],
                smooth([(10, 11.4), (40, 8.2), (70, 11.4)], steps=8),
                [(80, 14), (80, 35)],
                smooth([(66, 35), (64, 24), (55, 16.2), (40, 13.4), (25, 16.2), (16, 24), (14, 35)], steps=8),
                [(0, 35)],
            ]
        )
        sheet.fill(dark, arch)
        with sheet.within(arch):
            sheet.cut(
                tan,
                [
                    stroke(
                        np.array(
                            [40, 34]
                            + 24.5 * np.array([[np.cos(a), np.sin(a) * 0.95], [np.cos(a) * 1.13, np.sin(a) * 1.07]])
                        ),
                        0.5,
                        sharp=0,
                    )
                    for a in np.linspace(-3.1, -0.05, 19)
                ],
            )
            for row, y in enumerate(np.arange(13, 33, 2.6)):
                for x in np.arange(-1 + 2.4 * (row % 2), 80, 4.8):
                    if abs(x - 40) > 28.5 or y < 9.5:
                        sheet.fill(tan, stroke(bow((x, y), (x + 3.6, y), 0.02), 0.42, sharp=0.3))
        sheet.cut(
            dark,
            [
                stroke(
                    np.array(
                        [
                            [40, 30] + np.array([np.cos(a), np.sin(a)]) * r0,
                            [40, 30] + np.array([np.cos(a), np.sin(a)]) * (r0 + 4),
                        ]
                    ),
                    0.5,
                )
                for a in np.linspace(-2.7, -0.4, 17)
                for r0 in (8.5,)
            ],
        )
        with sheet.moved(8, 6.2, scale=0.8):
            hull = np.vstack(
                [
                    smooth([(9, 31.6), (14, 33.4), (30, 34.2), (58, 34.2), (66, 33.6), (69.5, 32.4)], steps=6),
                    [(68, 37.4), (13.5, 37.4)],
                ]
            )
            sheet.fill(dark, hull)
            sheet.fill(dark, np.array([(20, 33.6), (21.5, 26.8), (56, 26.8), (57.4, 33.6)]))
            sheet.fill(
                dark,
                rectangle(19.6, 25.8, 39, 1.3),
                rectangle(29, 21.6, 1.5, 4.6),
                rectangle(60, 29, 0.9, 5),
                stroke(np.array([(60.5, 29.4), (68, 28)]), 0.8, sharp=0),
            )
            sheet.fill(
                tan,
                *[circle(x, 30.3, 1.45, 20) for x in (26, 32, 38)],
                rectangle(42.6, 28.4, 4, 4),
                rectangle(49.8, 28.2, 4.2, 5.6),
            )
            sheet.fill(
                dark,
                stroke(np.array([(44.6, 28.4), (44.6, 32.4)]), 0.4, sharp=0),
                stroke(np.array([(42.6, 30.4), (46.6, 30.4)]), 0.4, sharp=0),
            )
            sheet.cut(tan, [stroke(bow((12.5, 35.2), (67, 35.2), 0.003, 12), 0.55, sharp=0.1)])
            for x, y, r in ((31.5, 19.5, 3.4), (34.6, 16.4, 4.6), (39.6, 13.4, 5.2)):
                sheet.fill(dark, stroke(bow((x - r, y + 0.6), (x + r, y - 1.2), 0.14), 1.1))
        for y in (37.4, 38.9, 40.4, 41.9):
            for x in np.arange(4 + rng.uniform(0, 4), 76, 7):
                sheet.fill(dark, stroke(bow((x, y), (x + rng.uniform(3, 6.4), y), 0.05), 0.6))
        speckle(sheet, tan, arch, (6, 8, 74, 14), 14, 0.5, rng)
    return sheet
