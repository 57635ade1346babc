"""Bakery prints: a sheaf and loaf in two vinyls, and an emblem for an apron."""

from __future__ import annotations

import numpy as np

from tests.demo_pictures.artwork.carving import burst, ear_of_wheat
from tests.demo_pictures.drawing import Form, Sheet, bow, circle, ellipse, hand_cut, smooth, stroke
from tests.demo_pictures.lettering import lettered, lettered_round


def sheaf_and_loaf() -> Sheet:
    """Wheat sheaf over a loaf for the bakery's tote: two colours only, as cut vinyl wants."""
    ochre, brown = "#c8872b", "#43281a"
    sheet = Sheet("Crust & Crumb: sheaf and loaf", 220, 240, bleed=3)
    sheet.fill(brown, lettered_round("CRUST & CRUMB", "slab", 17, 110, 126, 93, spacing=2.4))
    for a in (-46, 46, -34, 34, -22, 22, -11, 11, 0):
        r = np.radians(a)
        reach = 84 - 0.18 * abs(a)
        tip = (110 + reach * np.sin(r) * 1.05, 138 - reach * np.cos(r))
        ear_of_wheat(
            sheet,
            [(110 + a * 0.16, 138), (110 + a * 0.4 + 6 * np.sin(r), 138 - reach * 0.48), tip],
            7.6,
            (ochre, brown),
            grains=6,
            awns=1.3,
        )
    for a in np.linspace(-40, 40, 15):
        sheet.fill(
            ochre, stroke(bow((110 + a * 0.2, 136), (110 + a * 1.15, 172 - abs(a) * 0.3), 0.002 * a), 3.0, sharp=0.15)
        )
    loaf = smooth(
        [
            (38, 196),
            (40, 176),
            (58, 160),
            (110, 154),
            (162, 160),
            (180, 176),
            (182, 196),
            (166, 203),
            (110, 205),
            (54, 203),
        ],
        closed=True,
        steps=9,
    )
    cuts = [
        Form.through([(x - 13, 193 - 3), (x + 1, 178), (x + 18, 163.5)], [0.2, 5.4, 0.2]).outline()
        for x in (62, 88, 114, 140)
    ]
    sheet.fill(brown, loaf, *[c[::-1] for c in cuts])
    for x in (62, 88, 114, 140):
        inner = Form.through([(x - 10, 187), (x + 1.5, 177.5), (x + 15.5, 166)], [0.1, 2.2, 0.1])
        sheet.fill(ochre, inner.outline())
    band = Form.through([(94, 133), (110, 136.5), (126, 133)], [5.5, 5.5, 5.5])
    sheet.fill(brown, band.outline())
    for s in (-1, 1):
        sheet.fill(
            brown,
            Form.through(
                [(110, 134), (110 + s * 11, 127), (110 + s * 17, 135), (110 + s * 8, 139)], [2.2, 3.2, 3.6, 1.5]
            ).outline(),
        )
    sheet.fill(ochre, circle(110, 135, 3.4))
    for x in np.arange(22, 200, 11.2):
        sheet.fill(ochre, ellipse(x, 213.5, 4.2, 0.9))
    sheet.fill(brown, lettered("BAKED BEFORE DAWN", "poster", 12, 110, 233, spacing=4.0))
    return sheet


def loaf_emblem() -> Sheet:
    """A scored round loaf within ears of wheat, for a film transfer on a dark apron."""
    rng = np.random.default_rng(62)
    cream, ochre, brown, red = "#f3e4c3", "#d99a3d", "#5a3218", "#b4452b"
    sheet = Sheet("Baker's emblem", 180, 200)
    crust = hand_cut(circle(90, 92, 46), rng, 0.5, 4)
    for s in (-1, 1):
        for k, a in enumerate(np.linspace(20, 128, 7)):
            r = np.radians(a)
            foot = np.array([90 + s * 57 * np.sin(r), 92 + 57 * np.cos(r)])
            tip = np.array([90 + s * 78 * np.sin(r + 0.5), 92 + 78 * np.cos(r + 0.5)])
            ear_of_wheat(
                sheet,
                [tuple(foot), tuple((foot + tip) / 2 + [s * 1.5, 1]), tuple(tip)],
                5.2,
                (ochre if k % 2 else cream, brown),
                grains=5,
                awns=0.9,
            )
        arc = [(90 + s * 58 * np.sin(r), 92 + 58 * np.cos(r)) for r in np.linspace(0.1, 2.5, 16)]
        sheet.fill(cream, stroke(np.array(arc), 1.9, sharp=0.2, head=0.9))
    sheet.fill(cream, hand_cut(circle(90, 92, 49.5), rng, 0.4, 4))
    sheet.fill(ochre, crust)
    burst(sheet, brown, crust, (90, 92), (39, 48), rng, count=72, width=1.1)
    with sheet.within(crust):
        for _ in range(26):
            a = rng.uniform(0, 6.28)
            r = rng.uniform(12, 40)
            sheet.fill(
                cream,
                ellipse(
                    90 + r * np.cos(a),
                    92 + r * np.sin(a),
                    rng.uniform(0.6, 1.6),
                    rng.uniform(0.4, 0.8),
                    rng.uniform(0, 180),
                    12,
                ),
            )
    spine = Form.through([(90, 128), (90.6, 92), (90, 56)], [0.2, 3.4, 3.4, 0.2])
    sheet.fill(brown, spine.outline(0.9))
    sheet.fill(cream, spine.outline())
    for t in np.linspace(0.12, 0.82, 6):
        p = spine.at(t, 0)[0]
        for s in (-1, 1):
            cut = Form.through(p + np.array([(s * 4, 3), (s * 14, -4), (s * 22, -17)]), [0.2, 3.3, 2.8, 0.2])
            with sheet.within(crust):
                sheet.fill(brown, cut.outline(0.8))
                sheet.fill(cream, cut.outline())
                sheet.cut(ochre, [cut.along(0.4 * s, 0.2, 0.8, 0.8)])
    ribbon = np.vstack(
        [
            smooth([(22, 160), (55, 168), (90, 170.5), (125, 168), (158, 160)], steps=9),
            smooth([(160, 178), (125, 186), (90, 188.5), (55, 186), (20, 178)], steps=9),
        ]
    )
    for s in (-1, 1):
        tail = np.array(
            [(90 + s * 62, 163), (90 + s * 86, 152), (90 + s * 79, 162), (90 + s * 88, 170), (90 + s * 64, 181)]
        )
        sheet.fill("#7d2d1c", tail)
    sheet.fill(red, ribbon)
    sheet.line(cream, smooth([(23, 163), (55, 170.6), (90, 173), (125, 170.6), (157, 163)], steps=9), 0.7)
    sheet.line(cream, smooth([(22, 175.6), (55, 183.4), (90, 185.9), (125, 183.4), (158, 175.6)], steps=9), 0.7)
    sheet.fill(
        cream, lettered_round("UP WITH THE OVEN", "poster", 8.2, 90, -93.5, 276.5, middle=90, inward=True, spacing=1.7)
    )
    sheet.fill(
        cream,
        *[
            Form.through(
                [
                    (90 + dx, 34 - abs(dx) * 0.0),
                    (90 + dx + 2.5, 27),
                    (90 + dx - 2.5, 20),
                    (90 + dx + 1, 12 + abs(dx) * 0.3),
                ],
                [0.3, 1.3, 1.3, 0.2],
            ).outline()
            for dx in (-13, 0, 13)
        ],
    )
    return sheet
