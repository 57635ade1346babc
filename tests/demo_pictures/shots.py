"""Every photograph of the demo: what lies on the bench, how it is lit and from where it is seen.

A shot's function sets the stage and gives back its camera. `SHOTS` lists them by the file they become.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

import numpy as np
from PIL import Image, ImageEnhance, ImageOps

from tests.demo_pictures import surfaces
from tests.demo_pictures.artwork import DESIGNS
from tests.demo_pictures.drawing import Sheet, circle, rectangle
from tests.demo_pictures.lettering import lettered
from tests.demo_pictures.meshes import (
    Mesh,
    box,
    cloth,
    flat_piece,
    folded,
    joined,
    mug,
    pebble,
    ring,
    round_outline,
    rounded_outline,
    swept,
    turned_shape,
    wrinkles,
)
from tests.demo_pictures.noise import fractal
from tests.demo_pictures.prints import rasterised
from tests.demo_pictures.scene import (
    Camera,
    Material,
    Stage,
    bench_material,
    bumpy,
    glazed,
    matt,
    metal,
    satin_print,
    slate_face,
    slate_sides,
    texture,
)
from tests.demo_pictures.surfaces import Colours, placed, planks, plaster, printed, stone, weave

WHITE = "#f1efe9"


@cache
def _sheet(project: str, name: str) -> Sheet:
    return DESIGNS[project][name]()


@cache
def _picture(project: str, name: str, ppi: int = 300) -> Image.Image:
    return rasterised(_sheet(project, name), ppi)


def _dyed(project: str, name: str, ground: str = WHITE, ppi: int = 300, strength: float = 0.97) -> Material:
    """A design dyed into a plain ground, as a texture."""
    colours = printed(_picture(project, name, ppi), np.ones((8, 8, 3)) * surfaces.tone(ground), strength=strength)
    return texture(colours)


def _bench(
    stage: Stage,
    colours: Colours,
    *,
    rough: float = 0.35,
    span: float = 1500,
    wall: str | None = None,
    behind: float = 420,
    depth: float = 0.3,
) -> None:
    stage.plane(span, span, bench_material(colours, rough=rough, depth=depth), (0, 0, 0))
    if wall:
        stage.plane(2600, 1600, matt(texture(plaster(wall))), (0, behind, 700), upright=True)


@cache
def _oak() -> Colours:
    return planks("#6b4527", "#c9996a", boards=8, seed=4)


@cache
def _walnut() -> Colours:
    return planks("#2f1d12", "#7c5233", boards=7, seed=9)


@cache
def _scrubbed() -> Colours:
    return planks("#a58a68", "#e6d3b3", boards=9, seed=12, gap="#5d4a35")


@cache
def _painted(colour: str, light: str) -> Colours:
    return planks(colour, light, boards=7, seed=15, gap="#20262a")


def _slate(stage: Stage, project: str, name: str, seed: int, place: Callable[[Mesh], Mesh]) -> None:
    """A slate coaster with its design on."""
    picture = _picture(project, name)
    rng = np.random.default_rng(seed)
    ground = np.clip(surfaces.tone("#ece9e0") + 0.02 * fractal((600, 600), rng, 2.2)[..., None], 0, 1)
    outline = rounded_outline(100, 100, 2.5, 10)
    edge = []
    for a, b in zip(outline, np.roll(outline, -1, 0), strict=True):
        steps = max(1, int(np.hypot(*(b - a)) / 1.6))
        edge += [a + (b - a) * k / steps for k in range(steps)]
    rough = np.array(edge)
    rough *= 1 + rng.normal(0, 0.0035, (len(rough), 1)) - np.abs(rng.normal(0, 0.002, (len(rough), 1)))
    face, body = flat_piece(rough, 6.2, bevel=0.7, chip=0.65, seed=seed)
    stage.add(place(face.with_bleed(100, 100, 3)), slate_face(printed(picture, ground, strength=0.95)))
    stage.add(place(body), slate_sides())


def _beans(stage: Stage, spots: list[tuple[float, float]], colour: str, size: float, seed: int) -> None:
    rng = np.random.default_rng(seed)
    for k, (x, y) in enumerate(spots):
        stage.add(
            pebble(size, size * 0.7, size * 0.42, seed=seed + k).moved(x, y, 0, turn=rng.uniform(0, 180)),
            glazed(colour, 0.15),
        )


def _linen(
    stage: Stage, colour: str, width: float, height: float, x: float, y: float, turn: float, seed: int, depth: float = 5
) -> None:
    mesh = cloth(width, height, wrinkles(depth, 60, seed, direction=20, rest=0.6)).moved(x, y, 0, turn=turn)
    stage.add(mesh, matt(texture(weave(colour, threads=150, depth=0.16))))


def tally_set(stage: Stage) -> Camera:
    """Four slates in two rows on a scrubbed table."""
    _bench(stage, _scrubbed())
    stage.daylight(side=-1)
    spots = [("beetroot", -57, 55, 3), ("leek", 54, 58, -4), ("squash", -54, -56, -3), ("broad-bean", 58, -52, 5)]
    for k, (name, x, y, turn) in enumerate(spots):
        _slate(
            stage, "allotment-tally-coasters", name, 20 + k, lambda m, x=x, y=y, turn=turn: m.moved(x, y, 0, turn=turn)
        )
    _beans(stage, [(132, 12), (146, 22), (139, -6), (-132, -92)], "#7d8f45", 20, 5)
    return Camera((2, -4, 0), 560, 58, round=-9, view=27, aperture=3)


def tally_single(stage: Stage) -> Camera:
    """One slate on linen with others behind it."""
    _bench(stage, _walnut(), wall="#5f6b60", behind=330)
    stage.daylight(side=1, warmth=0.16)
    _linen(stage, "#b9a98a", 330, 260, 20, 20, 12, 4, 7)
    _slate(stage, "allotment-tally-coasters", "squash", 31, lambda m: m.moved(70, 120, 4))
    _slate(stage, "allotment-tally-coasters", "leek", 33, lambda m: m.moved(66, 118, 11, turn=9))
    _slate(stage, "allotment-tally-coasters", "beetroot", 32, lambda m: m.moved(0, -8, 8, turn=-7))
    return Camera((14, 16, 6), 390, 42, round=10, view=25, aperture=5, focus=(0, -16, 12))


def tally_edge(stage: Stage) -> Camera:
    """A stack of four, close to, for the hewn edge."""
    _bench(stage, _oak(), wall="#c9bfae", behind=300)
    stage.daylight(side=-1, height=480, warmth=0.2)
    for k, (name, turn) in enumerate((("squash", 4), ("leek", -5), ("broad-bean", 2), ("beetroot", -3))):
        _slate(
            stage,
            "allotment-tally-coasters",
            name,
            40 + k,
            lambda m, k=k, turn=turn: m.moved(k - 1, -k, 0.2 + 6.5 * k, turn=turn + 28),
        )
    return Camera((6, -6, 20), 260, 22, round=-4, view=25, aperture=4, focus=(0, -58, 24))


def _mug(
    stage: Stage, project: str, name: str, turn: float, x: float = 0, y: float = 0, tea: str | None = None
) -> None:
    """A glazed mug with its wrap; its handle points to +x before it is turned."""
    band, body = mug()
    stage.add(band.with_bleed(230, 93, 3).moved(x, y, 0, turn=turn), glazed(_dyed(project, name), 0.045))
    stage.add(body.moved(x, y, 0, turn=turn), glazed(WHITE, 0.045))
    if tea:
        stage.add(turned_shape(np.array([(0.001, 80.0), (36, 80.0), (36.9, 80.6)])).moved(x, y, 0), glazed(tea, 0.02))


def plot_mug_front(stage: Stage) -> Camera:
    """The medallion, the handle to the right."""
    _bench(stage, _oak(), wall="#71806d", behind=360)
    stage.daylight(side=-1, warmth=0.14)
    _mug(stage, "plot-holder-mug", "trellis-wrap", 12, tea="#3b1a0a")
    pot = np.array([(34, 74), (37, 74), (38, 72), (38, 62), (35, 61), (27, 0.1), (1e-3, 0)])
    stage.add(turned_shape(pot).moved(-118, 150, 0), matt("#b06a45"))
    rng = np.random.default_rng(8)
    for _ in range(34):
        a, r = rng.uniform(0, 6.28), rng.uniform(4, 34)
        stem = np.array(
            [
                (-118, 150, 66),
                (-118 + r * 0.5 * np.cos(a), 150 + r * 0.5 * np.sin(a), 100),
                (-118 + r * 1.6 * np.cos(a), 150 + r * 1.6 * np.sin(a), rng.uniform(104, 150)),
            ]
        )
        stage.add(swept(stem, (1.2, 1.2), count=6, steps=5), matt("#4f7040"))
        stage.add(
            pebble(15, 11, 4, seed=int(r * 10), count=14).moved(
                *stem[2], turn=np.degrees(a), tilt=rng.uniform(-30, 30)
            ),
            matt(str(rng.choice(["#5d8a48", "#6f9a52", "#47733c"]))),
        )
    return Camera((8, 0, 52), 430, 14, round=0, view=21, aperture=7, focus=(0, -40, 48))


def plot_mug_handle(stage: Stage) -> Camera:
    """The handle's side from above, tea in it."""
    _bench(stage, _scrubbed(), wall="#b9bfae", behind=420)
    stage.daylight(side=1, warmth=0.1)
    _linen(stage, "#8f9d86", 260, 200, -70, 60, -24, 9, 6)
    _mug(stage, "plot-holder-mug", "trellis-wrap", -52, tea="#5a2c10")
    _beans(stage, [(78, -42), (96, -30), (84, -58)], "#7d8f45", 19, 15)
    return Camera((4, 0, 42), 470, 30, round=-3, view=22, aperture=6, focus=(10, -36, 60))


def _plate(stage: Stage, project: str, name: str, place: Callable[[Mesh], Mesh]) -> None:
    """An aluminium plate of A5 size."""
    face, body = flat_piece(rounded_outline(210, 148, 6), 1.2, bevel=0.25)
    stage.add(place(face.with_bleed(210, 148, 3)), satin_print(_dyed(project, name, "#f4f4f2"), 0.26))
    stage.add(place(body), metal("Al", 0.25))


def heron_plate(stage: Stage) -> Camera:
    """The plate in a grooved block before a wall."""
    _bench(stage, _walnut(), wall="#aab4b2", behind=210)
    stage.daylight(side=-1, warmth=0.18)
    _plate(stage, "heron-river-plate", "heron", lambda m: m.moved(0, 0, 82, tilt=78, turn=-6))
    stage.add(box(180, 40, 18).moved(0, 4, 0, turn=-6), glazed("#a97c50", 0.35))
    for k, (x, y, s) in enumerate(((112, -52, 34), (136, -24, 26), (100, -80, 20))):
        stage.add(
            pebble(s, s * 0.8, s * 0.5, seed=60 + k).moved(x, y, 0, turn=30 * k),
            matt(("#8d8a84", "#6f7274", "#a89f92")[k]),
        )
    return Camera((8, 0, 74), 560, 10, round=5, view=22, aperture=5, focus=(0, -10, 80))


def heron_corner(stage: Stage) -> Camera:
    """A corner close to, lying on dark slate."""
    _bench(stage, stone("#2b2f33", "#555b60", seed=6), rough=0.3)
    stage.daylight(side=-1, height=420, warmth=0.12)
    _plate(stage, "heron-river-plate", "heron", lambda m: m.moved(-40, 20, 3, turn=14, roll=0))
    return Camera((8, -2, 2), 300, 40, round=18, view=27, aperture=3.6, focus=(24, -22, 3))


def _hanging(
    stage: Stage,
    width: float,
    height: float,
    colours: Colours,
    top: float,
    seed: int,
    *,
    depth: float = 9,
    y: float = -6,
    flare: float = 0.0,
) -> None:
    """Cloth that hangs before a wall in soft upright folds, its upper edge at `top`."""
    base = wrinkles(depth * 0.5, 90, seed, direction=80, stretch=3, rest=1)

    def lift(x: np.ndarray, yy: np.ndarray) -> np.ndarray:
        down = np.clip((height / 2 - yy) / height, 0, 1)
        waves = np.sin(x / width * 2 * np.pi * 2.2 + 0.6) + 0.5 * np.sin(x / width * 2 * np.pi * 4.3 + yy / 160)
        return base(x, yy) + depth * (0.15 + down) * waves + flare * down

    mesh = cloth(width, height, lift).moved(0, y, top - height / 2, tilt=90)
    stage.add(mesh, matt(texture(colours)))


def crumb_tote(stage: Stage) -> Camera:
    """The bag on a peg before painted boards."""
    stage.plane(
        2400, 2400, bench_material(np.rot90(_painted("#4c6468", "#7d979a")), rough=0.4), (0, 0, 300), upright=True
    )
    stage.wall_light(-1)
    ground = weave("#e6d9bd", threads=230, depth=0.2)
    print_ = placed(_picture("crust-and-crumb-tote", "sheaf-and-loaf", 200), 226, 246, 77, 92, (380, 420), 4.2)
    _hanging(stage, 380, 420, printed(print_, ground, opaque=True), 470, 3, depth=6, y=-16)
    back = cloth(376, 416, lambda x, y: 0 * x).moved(0, -4, 260, tilt=90)
    stage.add(back, matt(texture(ground)))
    for y in (-17, -7):
        path = np.array(
            [(-78, y, 456), (-66, y, 540), (-26, y, 640), (0, y - 3, 668), (26, y, 640), (66, y, 540), (78, y, 456)]
        )
        stage.add(swept(path, (1.2, 12), count=16), matt(texture(weave("#dccfb2", threads=90, depth=0.2))))
    stage.add(swept(np.array([(0, 10, 652), (0, -20, 654), (0, -44, 660)]), (8, 8)), glazed("#a97c50", 0.35))
    return Camera((0, 0, 392), 1330, 3, round=8, view=26, aperture=4, focus=(0, -20, 330))


def _key_tag(stage: Stage, x: float, y: float, turn: float, z: float = 0.1, tilt: float = 0.0) -> None:
    """An aluminium tag with its split ring."""
    face, body = flat_piece(rounded_outline(54, 25, 4), 1.1, bevel=0.2, hole=(-21.5, 0, 2))
    stage.add(
        face.with_bleed(54, 25, 3).moved(x, y, z, turn=turn, tilt=tilt),
        satin_print(_dyed("regatta-key-tags", "crossed-oars", "#f4f4f2", 600), 0.24),
    )
    stage.add(body.moved(x, y, z, turn=turn, tilt=tilt), metal("Al", 0.22))
    a = np.radians(turn)
    cx, cy = x - 31.5 * np.cos(a), y - 31.5 * np.sin(a)
    for dz in (0.0, 1.3):
        stage.add(ring(11.5, 1.3).moved(cx, cy, z + 1.0 + dz, tilt=7, turn=turn + 90), metal("Cr", 0.12))


def regatta_tags(stage: Stage) -> Camera:
    """Five tags in a loose fan on painted boards."""
    _bench(stage, _painted("#a9b7b6", "#dbe2dc"), rough=0.3)
    stage.daylight(side=-1, height=560, warmth=0.1)
    for x, y, turn in ((-34, 42, 14), (44, 50, -8), (-42, -4, -6), (40, 4, 11), (4, -46, 3)):
        _key_tag(stage, x, y, turn)
    return Camera((-4, -2, 0), 272, 52, round=6, view=28, aperture=2.6)


def fair_towel(stage: Stage) -> Camera:
    """The towel over a rail."""
    stage.plane(2600, 2600, matt(texture(plaster("#d3cabb"))), (0, 0, 400), upright=True)
    stage.wall_light(-1)
    ground = weave("#f4f0e6", threads=260, depth=0.1)
    towel = printed(
        _picture("fair-bunting-tea-towel", "fair-bunting", 110).crop((13, 13, 2178, 3044)), ground, strength=0.95
    )
    _hanging(stage, 500, 700, towel, 790, 11, depth=6, y=-42)
    stage.add(swept(np.array([(-420, -18, 776), (0, -18, 776), (420, -18, 776)]), (11, 11)), glazed("#a97c50", 0.35))
    for x in (-330, 330):
        stage.add(swept(np.array([(x, 4, 776), (x, -10, 776), (x, -20, 776)]), (7, 7)), metal("Cu", 0.3))
    for x in (-208, 205):
        for dy in (0, 8):
            stage.add(box(11, 7, 62).moved(x, -62 + 2.4 * dy, 744, turn=2), glazed("#d8bf97", 0.4))
    return Camera((0, 0, 436), 1860, 2, round=-7, view=25, aperture=5, focus=(0, -26, 430))


def fair_fold(stage: Stage) -> Camera:
    """The towel folded on a bench, close to."""
    _bench(stage, _oak(), wall="#8b9a98", behind=420)
    stage.daylight(side=-1, height=520, warmth=0.16)
    ground = weave("#f4f0e6", threads=260, depth=0.1)
    towel = printed(
        _picture("fair-bunting-tea-towel", "fair-bunting", 130).crop((15, 15, 2575, 3598)), ground, strength=0.95
    )
    mesh = folded(500, 700, 3, 7, wrinkles(2.0, 90, 6, direction=15, rest=0.4)).moved(0, 0, 1, turn=90)
    stage.add(mesh.moved(0, 0, 0, turn=-90 + 180 - 90 - 90 + 7), matt(texture(towel)))
    return Camera((10, -6, 8), 760, 37, round=-14, view=26, aperture=6, focus=(20, -60, 22))


def _round_coaster(stage: Stage, name: str, place: Callable[[Mesh], Mesh]) -> None:
    face, body = flat_piece(round_outline(95), 3.4, bevel=0.3)
    stage.add(place(face.with_bleed(95, 95, 3)), glazed(_dyed("seed-swap-coasters", name), 0.12))
    stage.add(place(body), matt("#6a4a30"))


def seed_coasters(stage: Stage) -> Camera:
    """Three round coasters, one propped on a fourth, with seed about them."""
    _bench(stage, _painted("#b9b2a2", "#e2dccc"), rough=0.35)
    stage.daylight(side=1, warmth=0.1)
    _round_coaster(stage, "poppy", lambda m: m.moved(-62, 30, 0.1, turn=9))
    _round_coaster(stage, "honesty", lambda m: m.moved(50, 56, 0.1, turn=-12))
    _round_coaster(stage, "teasel", lambda m: m.moved(58, -46, 0.1, turn=2).moved(0, 0, 0))
    rng = np.random.default_rng(3)
    for k in range(46):
        a, r = rng.uniform(0, 6.28), abs(rng.normal(0, 24))
        stage.add(
            pebble(3.4, 2.4, 1.8, seed=k, count=12).moved(
                -28 + r * np.cos(a), -78 + r * 0.7 * np.sin(a), 0, turn=rng.uniform(0, 180)
            ),
            matt("#3a2a1e"),
        )
    return Camera((-2, 4, 0), 520, 47, round=-6, view=27, aperture=4)


def bakers_apron(stage: Stage) -> Camera:
    """The apron on its hook."""
    stage.plane(
        2600, 2600, bench_material(np.rot90(_painted("#c9c0ae", "#ece4d2")), rough=0.45), (0, 0, 400), upright=True
    )
    stage.wall_light(1)
    ground = weave("#2c3a4a", threads=260, depth=0.3)
    art = _picture("bakers-apron", "loaf-emblem", 200)
    print_ = placed(art, 186, 206, 257, 62, (700, 760), 2.9)
    colours = printed(print_, np.asarray(ground), opaque=True)
    folds = wrinkles(7, 110, 21, direction=82, stretch=3.2, rest=1)

    def lift(x: np.ndarray, y: np.ndarray) -> np.ndarray:
        down = np.clip((380 - y) / 760, 0, 1)
        return folds(x, y) + (2 + 17 * down**1.4) * np.sin(x / 62 + 0.5 * np.sin(y / 170)) + 10 * down

    mesh = cloth(700, 760, lift)
    x, y = mesh.vertices[:, 0], mesh.vertices[:, 1]
    half = np.interp(y, [-380, 60, 120, 240, 380], [262, 262, 226, 142, 128])
    shape = mesh.vertices.copy()
    keep = np.abs(x) / 350
    shape[:, 0] = np.sign(x) * keep * half
    uv = mesh.uv.copy()
    uv[:, 0] = shape[:, 0] / 700 + 0.5
    stage.add(Mesh(shape, uv, mesh.faces).moved(0, -22, 420, tilt=90), matt(texture(colours)))
    strap = np.array(
        [
            (-112, -24, 790),
            (-96, -20, 880),
            (-40, -16, 968),
            (0, -20, 990),
            (40, -16, 968),
            (96, -20, 880),
            (112, -24, 790),
        ]
    )
    stage.add(swept(strap, (1.2, 11), count=14), matt("#8b6a45"))
    for s in (-1, 1):
        tie = np.array([(s * 252, -26, 486), (s * 290, -18, 440), (s * 300, -14, 330), (s * 282, -14, 200)])
        stage.add(swept(tie, (1.2, 8), count=12), matt("#8b6a45"))
    stage.add(swept(np.array([(0, 10, 972), (0, -18, 974), (0, -40, 984)]), (9, 9)), metal("Cu", 0.3))
    return Camera((0, 0, 610), 1560, 2, round=-8, view=26, aperture=4, focus=(0, -24, 640))


def weir_mat(stage: Stage) -> Camera:
    """The mat at a desk, a pencil and a round stone on it."""
    _bench(stage, _walnut(), wall="#a3a79b", behind=380)
    stage.daylight(side=-1, warmth=0.12)
    face, body = flat_piece(rounded_outline(230, 190, 12), 4, bevel=0.6)
    ground = weave("#f2f0ea", threads=300, depth=0.1)
    stage.add(
        face.with_bleed(230, 190, 3).moved(0, 0, 0.1, turn=-7),
        matt(texture(printed(_picture("weir-mouse-mat", "weir-contours", 220), ground, strength=0.96))),
    )
    stage.add(body.moved(0, 0, 0.1, turn=-7), matt("#191919"))
    pencil = np.array([(0, 0, 0), (60, 0, 0), (120, 0, 0), (168, 0, 0)])
    stage.add(swept(pencil, (3.6, 3.6), count=6).moved(196, 62, 3.7, turn=240), glazed("#b4452b", 0.2))
    for profile, material in (
        ([(0.6, 180), (3.5, 168)], matt("#d9b98a")),
        ([(0.05, 183), (0.75, 179.4)], matt("#2a2a2a")),
    ):
        stage.add(turned_shape(np.array(profile, dtype=float), 24).moved(196, 62, 3.7, roll=90, turn=240), material)
    stage.add(pebble(66, 50, 24, seed=71, rough=0.03).moved(66, 62, 4.1, turn=30), matt("#85857f"))
    return Camera((10, 6, 0), 640, 40, round=9, view=26, aperture=4.5, focus=(0, -40, 4))


def bee_charm(stage: Stage) -> Camera:
    """The clear charm with its ring, leaning on a stone."""
    _bench(stage, _scrubbed(), wall="#c3b79c", behind=260)
    stage.daylight(side=-1, height=480, warmth=0.18)
    place = lambda m: m.moved(0, 0, 0.4, tilt=0, turn=-13).moved(0, 0, 0)  # noqa: E731
    face, body = flat_piece(rounded_outline(50, 60, 8), 3.0, bevel=0.35, hole=(0, 25.5, 2))
    art, back = flat_piece(rounded_outline(47.5, 57.5, 7), 0.2, bevel=0.02, hole=(0, 25.5, 3.2))
    uv = (art.uv * [47.5, 57.5] + [1.25 + 3, 1.25 + 3]) / [56, 66]
    stage.add(
        place(Mesh(art.vertices, uv, art.faces, smooth=False).moved(0, 0, 3.05)),
        glazed(_dyed("beekeeper-charm", "skep-and-bees", "#fbfaf6", 600), 0.05),
    )
    del back
    stage.add(place(body), glazed("#dfe8ea", 0.05))
    stage.add(place(face), glazed("#e6ecec", 0.04))
    a = np.radians(-13)
    top = np.array([-np.sin(a), np.cos(a)])
    stage.add(ring(4.6, 1.1).moved(*(top * 28.2), 4.2, tilt=62, turn=-13), metal("Cr", 0.1))
    stage.add(ring(13, 1.8).moved(*(top * 44.6), 2.4, tilt=5, turn=-13), metal("Cr", 0.12))
    for k in range(3):
        stage.add(
            pebble(30 - 6 * k, 24 - 5 * k, 14 - 3 * k, seed=80 + k).moved(58 - 12 * k, 34 - 34 * k, 0, turn=50 * k),
            matt(("#8d8a84", "#a89f92", "#6f7274")[k]),
        )
    return Camera((6, 12, 2), 258, 48, round=4, view=23, aperture=3, focus=(0, -2, 3))


def herb_board(stage: Stage) -> Camera:
    """The glass board on a worktop, lemons and a knife beside it."""
    _bench(
        stage,
        stone("#cfcac0", "#f0ece3", seed=7, slope=2.4, veins="#9a948a"),
        rough=0.12,
        depth=0.02,
        wall="#7f9389",
        behind=330,
    )
    stage.daylight(side=-1, warmth=0.1)
    face, body = flat_piece(rounded_outline(280, 200, 10), 4.5, bevel=0.5)
    place = lambda m: m.moved(0, 0, 3, turn=5)  # noqa: E731
    stage.add(place(face.with_bleed(280, 200, 3)), glazed(_dyed("chopping-board-herbs", "herbs", "#f6f7f3", 240), 0.05))
    stage.add(place(body), glazed("#9fc4b4", 0.05))
    stage.add(pebble(64, 50, 48, seed=91, rough=0.012).moved(150, 92, 4, turn=30), glazed("#f2cb45", 0.35))
    stage.add(pebble(60, 50, 46, seed=94, rough=0.012).moved(100, 130, 4, turn=120), glazed("#f0c640", 0.35))
    return Camera((8, 14, 0), 690, 40, round=-8, view=25, aperture=5, focus=(0, -30, 6))


def regatta_mug(stage: Stage) -> Camera:
    """The eight, seen from the middle of the boat."""
    _bench(stage, _painted("#7d8f93", "#b7c4c4"), rough=0.3, wall="#d9d2c3", behind=340)
    stage.daylight(side=1, warmth=0.12)
    _mug(stage, "regatta-mug", "rowing-eight-wrap", 13, tea="#2a1408")
    _linen(stage, "#53697c", 250, 200, -86, 70, 20, 17, 6)
    return Camera((6, 0, 46), 480, 19, round=-6, view=21, aperture=6, focus=(0, -40, 48))


def sundial(stage: Stage) -> Camera:
    """The dial in low sun with a brass gnomon on it."""
    _bench(stage, stone("#8f877a", "#c9c1b2", seed=17, slope=1.7), rough=0.5, depth=1.0)
    stage.window((-430, -400, 560), (0, 0, 0), (70, 70), 560, 0.2)
    stage.window((500, -700, 900), (0, 0, 0), (700, 500), 1.6, -0.05)
    stage.sky(0.75)
    _slate(stage, "slate-sundial", "sundial-face", 55, lambda m: m.moved(0, 0, 0.2, turn=8))
    rise = np.tan(np.radians(51.5))
    pts = [(-10.0, 0.0), (26.0, 0.0), (26.0, 36 * rise)]
    t = 0.9
    verts = np.array([(sx * t, y, z) for sx in (-1, 1) for y, z in pts])
    faces = np.array(
        [(0, 2, 1), (3, 4, 5), (0, 1, 4), (0, 4, 3), (1, 2, 5), (1, 5, 4), (2, 0, 3), (2, 3, 5)], dtype=np.int32
    )
    stage.add(Mesh(verts, np.zeros((6, 2)), faces, smooth=False).moved(0, 0, 6.4, turn=8), metal("Au", 0.22))
    return Camera((0, 2, 8), 350, 48, round=-12, view=24, aperture=3)


def honey_plate(stage: Stage) -> Camera:
    """The award with two jars."""
    _bench(stage, _oak(), wall="#c8b48a", behind=260)
    stage.daylight(side=1, warmth=0.2)
    _plate(stage, "honey-show-plate", "honey-show", lambda m: m.moved(-14, 20, 76, tilt=76, turn=5))
    stage.add(box(150, 34, 14).moved(-14, 22, 0, turn=5), glazed("#6b452c", 0.35))
    for x, y in ((118, -10), (136, 56)):
        jar = np.array([(26, 66), (30, 58), (31, 50), (31, 6), (28, 1), (0.001, 0.2)])
        stage.add(turned_shape(jar).moved(x, y, 0), glazed("#c47a17", 0.03))
        lid = np.array([(0.001, 80), (28, 80), (29.5, 78.5), (29.5, 67), (28, 66), (0.001, 66)])
        stage.add(turned_shape(lid).moved(x, y, 0), metal("Au", 0.25))
    return Camera((14, 0, 66), 640, 11, round=-6, view=22, aperture=5, focus=(0, 0, 76))


def spent_paper(stage: Stage) -> Camera:
    """A used transfer beside its coaster: the paper keeps a pale, mirrored ghost."""
    _bench(stage, _scrubbed())
    stage.daylight(side=-1)
    _slate(stage, "allotment-tally-coasters", "broad-bean", 66, lambda m: m.moved(72, -4, 0.2, turn=-6))
    art = ImageOps.mirror(_picture("allotment-tally-coasters", "broad-bean").convert("RGB"))
    ghost = ImageEnhance.Color(art).enhance(0.55)
    ghost = Image.blend(Image.new("RGB", ghost.size, "#f3efe6"), ghost, 0.5).convert("RGBA")
    page = placed(ghost, 106, 106, 22, 22, (150, 150), 10)
    colours = printed(page, np.ones((8, 8, 3)) * surfaces.tone("#f5f2ea"), opaque=False)
    curl = lambda x, y: 0.6 + 0.00055 * np.maximum(x + 30, 0) ** 2 + 0.0006 * np.maximum(-y - 20, 0) ** 2  # noqa: E731
    stage.add(cloth(150, 150, curl).moved(-78, 6, 0, turn=7), matt(texture(colours)))
    return Camera((-2, 0, 0), 560, 52, round=5, view=27, aperture=3)


def _meter_face() -> Sheet:
    sheet = Sheet("Meter", 60, 110, bleed=0, ground="#2d3438")
    sheet.fill("#b7c2a6", rectangle(7, 10, 46, 26))
    sheet.fill("#20261f", lettered("194", "poster", 15, 27, 31, spacing=1.6), lettered("°C", "poster", 5.5, 46.5, 22))
    for k, x in enumerate((16, 30, 44)):
        sheet.fill(("#c8442f", "#d9d4c8", "#d9d4c8")[k], circle(x, 54, 5))
    sheet.fill("#d9d4c8", lettered("SURFACE PROBE", "poster", 3.2, 30, 74, spacing=0.6))
    for y in (88, 93, 98):
        sheet.fill("#20262a", rectangle(14, y, 32, 1.6))
    return sheet


def thermometer(stage: Stage) -> Camera:
    """A surface probe on a press's lower plate, its meter beside it."""
    _bench(stage, _oak(), wall="#8e9696", behind=520)
    stage.daylight(side=-1, warmth=0.08)
    face, body = flat_piece(rounded_outline(380, 300, 8), 26, bevel=1.5)
    stage.add(face.moved(-90, 60, 0, turn=-5), metal("Al", 0.3))
    stage.add(body.moved(-90, 60, 0, turn=-5), glazed("#6d7276", 0.4))
    pad, side = flat_piece(rounded_outline(340, 260, 10), 7, bevel=1.5)
    stage.add(
        joined(pad, side).moved(-90, 60, 26, turn=-5),
        bumpy(matt("#8d4f3c"), fractal((512, 512), np.random.default_rng(12), 0.8) * 0.15 + 0.5, 0.5),
    )
    meter, shell = flat_piece(rounded_outline(60, 110, 9), 24, bevel=2.5)
    stage.add(
        meter.moved(158, -86, 0.2, turn=-16),
        glazed(texture(printed(rasterised(_meter_face(), 400), np.ones((8, 8, 3)))), 0.2),
    )
    stage.add(shell.moved(158, -86, 0.2, turn=-16), matt("#c8862f"))
    cable = np.array(
        [(170, -32, 14), (182, 14, 10), (176, 66, 14), (128, 90, 40), (60, 76, 42), (14, 44, 38), (-10, 32, 35)]
    )
    stage.add(swept(cable, (2.2, 2.2), count=12, steps=20), matt("#c8b27a"))
    stage.add(swept(np.array([(14, 44, 38), (-4, 35, 36), (-30, 22, 35)]), (3.4, 3.4), count=16), metal("Cr", 0.15))
    disc = turned_shape(np.array([(0.001, 3.2), (10.6, 3.2), (11, 2.8), (11, 0), (0.001, 0)]), 48)
    stage.add(disc.moved(-36, 19, 33), metal("Cu", 0.18))
    return Camera((20, 4, 22), 760, 32, round=-8, view=26, aperture=6, focus=(20, -30, 30))


@dataclass(frozen=True)
class Shot:
    """A photograph to be made."""

    file: str
    """Path below the content folder."""
    stage: Callable[[Stage], Camera]
    size: tuple[int, int]
    """Width and height in pixels as seen upright."""
    bright: float = 1.0


WIDE, TALL, SQUARE = (1280, 960), (960, 1280), (1100, 1100)

SHOTS: tuple[Shot, ...] = (
    Shot("projects/allotment-tally-coasters/photos/set.jpg", tally_set, WIDE),
    Shot("projects/allotment-tally-coasters/photos/single.jpg", tally_single, TALL),
    Shot("projects/allotment-tally-coasters/photos/edge.jpg", tally_edge, WIDE),
    Shot("projects/plot-holder-mug/photos/front.jpg", plot_mug_front, TALL),
    Shot("projects/plot-holder-mug/photos/handle.jpg", plot_mug_handle, WIDE),
    Shot("projects/heron-river-plate/photos/plate.jpg", heron_plate, WIDE),
    Shot("projects/heron-river-plate/photos/corner.jpg", heron_corner, WIDE),
    Shot("projects/crust-and-crumb-tote/photos/tote.jpg", crumb_tote, TALL),
    Shot("projects/regatta-key-tags/photos/tags.jpg", regatta_tags, WIDE),
    Shot("projects/fair-bunting-tea-towel/photos/towel.jpg", fair_towel, TALL),
    Shot("projects/fair-bunting-tea-towel/photos/fold.jpg", fair_fold, WIDE),
    Shot("projects/seed-swap-coasters/photos/coasters.jpg", seed_coasters, WIDE),
    Shot("projects/bakers-apron/photos/apron.jpg", bakers_apron, TALL),
    Shot("projects/weir-mouse-mat/photos/mat.jpg", weir_mat, WIDE),
    Shot("projects/beekeeper-charm/photos/charm.jpg", bee_charm, TALL),
    Shot("projects/chopping-board-herbs/photos/board.jpg", herb_board, WIDE),
    Shot("projects/regatta-mug/photos/mug.heic", regatta_mug, WIDE),
    Shot("projects/slate-sundial/photos/sundial.jpg", sundial, SQUARE),
    Shot("projects/honey-show-plate/photos/plate.jpg", honey_plate, WIDE),
    Shot("articles/photos/spent-paper.jpg", spent_paper, WIDE),
    Shot("articles/photos/thermometer.jpg", thermometer, WIDE),
)
