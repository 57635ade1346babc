"""Parts that several of the block prints share: a cut block, its radiating gouges, leaves, ears and tallies."""

from __future__ import annotations

import numpy as np

from tests.demo_pictures.drawing import Form, Points, Sheet, bow, ellipse, hand_cut, rectangle, stroke

Rng = np.random.Generator


def block(sheet: Sheet, colour: str, x: float, y: float, width: float, height: float, rng: Rng) -> Points:
    """A printed block with hand-cut edges; its outline is given back."""
    edge = hand_cut(rectangle(x, y, width, height), rng, 0.35, 2.2)
    sheet.fill(colour, edge)
    return edge


def burst(
    sheet: Sheet,
    colour: str,
    edge: Points,
    centre: tuple[float, float],
    radii: tuple[float, float],
    rng: Rng,
    *,
    count: int = 90,
    width: float = 0.9,
) -> None:
    """Gouge marks that radiate from a centre, between two radii, kept inside the block."""
    marks = []
    for ring in range(3):
        for k in range(count):
            a = 2 * np.pi * (k + ring / 3 + rng.uniform(-0.25, 0.25)) / count
            span = (radii[1] - radii[0]) / 3
            start = radii[0] + ring * span + rng.uniform(0, span * 0.6)
            end = start + rng.uniform(span * 0.5, span * 1.2)
            d = np.array([np.cos(a), np.sin(a)])
            marks.append(
                stroke(
                    bow(d * start + centre, d * end + centre, rng.normal(0, 0.01), count=6),
                    width * rng.uniform(0.5, 1.1),
                )
            )
    with sheet.within(edge):
        sheet.cut(colour, marks)


def leaf(
    sheet: Sheet,
    spine: list[tuple[float, float]],
    width: float,
    colours: tuple[str, str],
    rng: Rng,
    *,
    veins: int = 6,
    wave: float = 0.0,
    profile: tuple[float, ...] = (0.05, 0.6, 1.0, 0.95, 0.6, 0.0),
) -> Form:
    """A leaf in one colour with midrib and veins cut in another, shaded by fine cuts on one side."""
    form = Form.through(spine, [width / 2 * r for r in profile])
    if wave:
        ripple = 1 + wave * np.sin(np.linspace(0, 9.5 * np.pi, len(form.radii)) + rng.uniform(0, 6))
        form = Form(form.spine, form.radii * ripple)
    sheet.fill(colours[0], form.outline())
    with sheet.within(form.outline()):
        marks = [stroke(form.spine, width * 0.075, sharp=0.5, head=0.8)]
        for k in range(veins):
            t = 0.1 + 0.78 * k / max(veins, 1)
            for side in (-1, 1):
                a, b = form.at(t, 0)[0], form.at(min(1, t + 0.17), side * 0.92)[0]
                marks.append(stroke(bow(a, b, 0.08 * side), width * 0.055, head=0.7))
                if side > 0 and veins > 3:
                    for f in (0.3, 0.6):
                        c, e = (
                            form.at(t + 0.05 + 0.05 * f, f)[0],
                            form.at(min(1, t + 0.17 + 0.03 * f), min(1, f + 0.25))[0],
                        )
                        marks.append(stroke(bow(c, e, 0.05), width * 0.03))
        sheet.cut(colours[1], marks)
    return form


def ear_of_wheat(
    sheet: Sheet,
    spine: list[tuple[float, float]],
    size: float,
    colours: tuple[str, str],
    *,
    grains: int = 8,
    awns: float = 1.6,
) -> None:
    """An ear on its stalk: the upper part of the spine carries grains in pairs with a cut in each."""
    line = Form.through(spine, [0.1, 0.1])
    sheet.fill(colours[0], stroke(line.spine, size * 0.22, sharp=0.0))
    t = np.linspace(0.56, 0.97, grains)
    for k, at in enumerate(t):
        here, ahead = line.at(at, 0)[0], line.at(min(1.0, at + 0.02), 0)[0]
        d = (ahead - here) / max(np.hypot(*(ahead - here)), 1e-6) if at < 0.99 else (here - line.at(at - 0.02, 0)[0])
        side = np.array([-d[1], d[0]])
        for s in (-1, 1):
            tip = here + d * size * 1.25 + side * s * size * 0.55
            grain = Form.through(
                [tuple(here + side * s * size * 0.1), tuple((here + tip) / 2 + side * s * size * 0.18), tuple(tip)],
                [0.1, size * 0.3, 0.02],
            )
            sheet.fill(colours[0], grain.outline())
            sheet.cut(colours[1], [grain.along(0.1, 0.2, 0.8, size * 0.12)])
            if awns:
                sheet.fill(
                    colours[0],
                    stroke(
                        bow(tip, tip + d * size * awns + side * s * size * 0.5 * (1 - k / grains / 2), 0.06 * s),
                        size * 0.09,
                        head=1.0,
                    ),
                )
    top = line.at(1.0, 0)[0]
    d = top - line.at(0.95, 0)[0]
    d = d / np.hypot(*d)
    grain = Form.through(
        [tuple(top - d * size * 0.2), tuple(top + d * size * 0.5), tuple(top + d * size * 1.2)], [0.1, size * 0.3, 0.02]
    )
    sheet.fill(colours[0], grain.outline())


def tally(sheet: Sheet, colour: str, x: float, y: float, height: float, count: int, rng: Rng) -> float:
    """Five-barred gates for a count; the width taken is given back."""
    pitch, at, marks = height * 0.34, x, []
    for k in range(count):
        if k % 5 == 4:
            marks.append(
                stroke(
                    bow((at - 4.45 * pitch, y + height * 0.78), (at - 0.05 * pitch, y + height * 0.2), 0.02),
                    height * 0.17,
                    sharp=0.3,
                )
            )
            at += pitch * 0.7
        else:
            lean = rng.normal(0, 0.06) * height
            marks.append(
                stroke(
                    bow((at, y + rng.normal(0, 0.04) * height), (at + lean, y + height), rng.normal(0, 0.02)),
                    height * 0.17,
                    sharp=0.3,
                )
            )
            at += pitch
    sheet.cut(colour, marks)
    return at - x


def tally_width(height: float, count: int) -> float:
    """Width that `tally` takes."""
    return height * 0.34 * (count - count // 5) + height * 0.34 * 0.7 * (count // 5)


def speckle(
    sheet: Sheet, colour: str, inside: Points, box: tuple[float, float, float, float], count: int, size: float, rng: Rng
) -> None:
    """Small stray cuts, as are left in the cleared parts of a block."""
    x0, y0, x1, y1 = box
    with sheet.within(inside):
        sheet.cut(
            colour,
            [
                ellipse(
                    rng.uniform(x0, x1),
                    rng.uniform(y0, y1),
                    size * rng.uniform(0.3, 1),
                    size * rng.uniform(0.2, 0.5),
                    rng.uniform(0, 180),
                    10,
                )
                for _ in range(count)
            ],
        )
