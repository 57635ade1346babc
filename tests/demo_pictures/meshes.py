"""Shapes of the blanks and of what stands about them, as triangles in millimetres with z upwards.

A printed side is a mesh of its own whose texture coordinates run over the trimmed print, u to the right and
v downwards as the print is read; `with_bleed` turns them into those of a picture that has its bleed.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from tests.demo_pictures.noise import fractal

Array = NDArray[np.float64]
Profile = Sequence[tuple[float, float]]


@dataclass(frozen=True)
class Mesh:
    """Vertices in mm, a texture coordinate each, and triangles; `smooth` shades it as round."""

    vertices: Array
    uv: Array
    faces: NDArray[np.int32]
    smooth: bool = True

    def moved(
        self, x: float = 0, y: float = 0, z: float = 0, *, turn: float = 0, tilt: float = 0, roll: float = 0
    ) -> Mesh:
        """Rolled about y, tilted about x, turned about z (degrees, in that order), then moved."""
        v = self.vertices
        for axis, angle in ((1, roll), (0, tilt), (2, turn)):
            c, s = np.cos(np.radians(angle)), np.sin(np.radians(angle))
            a, b = [(1, 2), (2, 0), (0, 1)][axis]
            m = np.eye(3)
            m[a, a], m[a, b], m[b, a], m[b, b] = c, -s, s, c
            v = v @ m.T
        return replace(self, vertices=v + np.array([x, y, z]))

    def with_bleed(self, width: float, height: float, bleed: float) -> Mesh:
        """Texture coordinates for a picture that reaches `bleed` mm beyond the trim on each side."""
        size = np.array([width, height])
        return replace(self, uv=(self.uv * size + bleed) / (size + 2 * bleed))


def joined(*meshes: Mesh) -> Mesh:
    """Several meshes as one, shaded as the first."""
    offsets = np.cumsum([0] + [len(m.vertices) for m in meshes[:-1]])
    return Mesh(
        np.vstack([m.vertices for m in meshes]),
        np.vstack([m.uv for m in meshes]),
        np.vstack([m.faces + o for m, o in zip(meshes, offsets, strict=True)]).astype(np.int32),
        meshes[0].smooth,
    )


def grid(points: Array, uv: Array, *, smooth: bool = True, closed: bool = False) -> Mesh:
    """A mesh over rows and columns of points (rows, columns, 3), facing as rows x columns does."""
    rows, columns = points.shape[:2]
    r, c = np.meshgrid(np.arange(rows - 1), np.arange(columns if closed else columns - 1), indexing="ij")
    n = (c + 1) % columns
    a, b, d, e = r * columns + c, r * columns + n, (r + 1) * columns + c, (r + 1) * columns + n
    faces = np.concatenate([np.stack([a, d, b], -1).reshape(-1, 3), np.stack([b, d, e], -1).reshape(-1, 3)])
    return Mesh(points.reshape(-1, 3), uv.reshape(-1, 2), faces.astype(np.int32), smooth)


def rounded_outline(width: float, height: float, radius: float, arc: int = 12) -> Array:
    """Outline of a rounded rectangle about the origin, anticlockwise seen from above."""
    radius = min(radius, width / 2, height / 2)
    corners = []
    for k, (sx, sy) in enumerate([(1, -1), (1, 1), (-1, 1), (-1, -1)]):
        a = np.radians(np.linspace(-90, 0, arc) + 90 * k)
        centre = [sx * (width / 2 - radius), sy * (height / 2 - radius)]
        corners.append(np.column_stack([radius * np.cos(a), radius * np.sin(a)]) + centre)
    return np.vstack(corners)


def round_outline(diameter: float, count: int = 120) -> Array:
    """A round outline about the origin, anticlockwise."""
    a = np.linspace(0, 2 * np.pi, count, endpoint=False)
    return np.column_stack([np.cos(a), np.sin(a)]) * diameter / 2


def _strip(outer: Array, inner: Array, size: Array) -> Mesh:
    """A strip between two outlines, facing up when the first is the outer one."""
    points = np.stack([inner, outer])
    uv = np.stack([points[..., 0] / size[0] + 0.5, 0.5 - points[..., 1] / size[1]], -1)
    return grid(points, uv, smooth=False, closed=True)


def flat_piece(
    outline: Array,
    thickness: float,
    *,
    bevel: float = 0.4,
    hole: tuple[float, float, float] | None = None,
    chip: float = 0.0,
    seed: int = 0,
) -> tuple[Mesh, Mesh]:
    """Printed face and remaining body of a flat blank lying on z = 0.

    The outline must be convex. `hole` is (x, y, radius). `chip` roughens the sides by so many mm, as hewn slate.
    """
    size = outline.max(0) - outline.min(0)
    z = lambda p, h: np.column_stack([p, np.full(len(p), h)])  # noqa: E731
    inset = outline * (1 - 2 * bevel / size)
    if hole:
        towards = inset - hole[:2]
        rim = np.array(hole[:2]) + hole[2] * towards / np.hypot(*towards.T)[:, None]
    else:
        rim = inset * 1e-4
    top, low = z(inset, thickness), z(outline, thickness - bevel)
    face = joined(_strip(top, z(rim, thickness), size), _strip(low, top, size))
    levels = [low, z(outline, 0.0)]
    if chip:
        rng = np.random.default_rng(seed)
        levels = [low]
        for k, h in enumerate(np.linspace(thickness - bevel, 0, 6)[1:]):
            out = 1 + (chip * (0.25 + 0.5 * k / 5) + rng.uniform(-chip, chip, (len(outline), 1)) * 0.8) * 2 / size
            levels.append(z(outline * out, max(0.0, h + rng.normal(0, 0.12))))
    sides = grid(np.stack(levels), np.zeros((len(levels), len(outline), 2)), smooth=False, closed=True)
    under = _strip(z(rim, 0.0), levels[-1], size)
    parts = [sides, under]
    if hole:
        parts.append(
            grid(np.stack([z(rim, 0.0), z(rim, thickness)]), np.zeros((2, len(rim), 2)), smooth=False, closed=True)
        )
    return face, joined(*parts)


def turned_shape(profile: Array, count: int = 160) -> Mesh:
    """A shape turned on the z axis from (radius, z) pairs, outside first when the profile runs downwards."""
    a = np.linspace(0, 2 * np.pi, count, endpoint=False)
    points = np.stack(
        [np.outer(profile[:, 0], np.cos(a)), np.outer(profile[:, 0], np.sin(a)), np.repeat(profile[:, 1:], count, 1)],
        -1,
    )
    return grid(points, np.zeros((*points.shape[:2], 2)), closed=True)


def mug(
    diameter: float = 82.0, height: float = 96.0, wall: float = 4.0, *, wrap: float = 230.0, print_height: float = 93.0
) -> tuple[Mesh, Mesh]:
    """Printed band and remaining body of a straight mug whose handle points to +x, standing on z = 0.

    The print runs from one side of the handle round to the other, `wrap` mm of the girth.
    """
    r = diameter / 2
    gap = np.pi - wrap / diameter
    low = (height - print_height) / 2
    around = np.linspace(gap, 2 * np.pi - gap, 200)
    ring = np.stack([r * np.cos(around), r * np.sin(around)], -1)
    band_points = np.stack([np.column_stack([ring, np.full(200, z)]) for z in (height - low, low)])
    u = np.linspace(0, 1, 200)
    band = grid(band_points, np.stack([np.column_stack([u, np.full(200, v)]) for v in (0.0, 1.0)]))
    back = np.linspace(-gap, gap, 40)
    back_points = np.stack(
        [np.column_stack([r * np.cos(back), r * np.sin(back), np.full(40, z)]) for z in (height - low, low)]
    )
    bare = grid(back_points, np.zeros((2, 40, 2)))
    lip = [
        (r - wall / 2 + wall / 2 * np.cos(a), height - low + (low + 0.4) * np.sin(a)) for a in np.linspace(0, np.pi, 14)
    ]
    inside = [(r - wall, height - 8), (r - wall, 14), (r - wall - 2.5, 7.5), (r - wall - 9, 5), (1e-3, 4.6)]
    foot = [(r, low), (r - 0.4, low * 0.4), (r - 1.6, 0.1), (r - 5, 0.0), (r - 6, 1.8), (1e-3, 2)]
    rim = turned_shape(np.array([*lip, *inside])[::-1])
    base = turned_shape(np.array(foot))
    handle = swept(
        np.array(
            [
                (r - 2, 0, 78),
                (r + 9, 0, 79.5),
                (r + 21, 0, 75),
                (r + 28.5, 0, 62),
                (r + 28.5, 0, 44),
                (r + 22, 0, 29),
                (r + 10, 0, 21.5),
                (r - 2, 0, 20),
            ]
        ),
        (5.6, 4.2),
    )
    return band, joined(bare, rim, base, handle)


def swept(path: Array, radii: tuple[float, float], *, count: int = 28, steps: int = 14, closed: bool = False) -> Mesh:
    """A rod of elliptical section (sideways, in the path's plane) along a smooth path in space."""
    p = (
        np.vstack([path[-1:], path, path[:2]])
        if closed
        else np.vstack([2 * path[0] - path[1], path, 2 * path[-1] - path[-2]])
    )
    t = np.linspace(0, 1, steps, endpoint=False)[:, None]
    line = np.vstack(
        [
            0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t**2 + (3 * b - a - 3 * c + d) * t**3)
            for a, b, c, d in zip(p, p[1:], p[2:], p[3:], strict=False)
        ]
        + ([] if closed else [path[-1:]])
    )
    if closed:
        line = np.vstack([line, line[:1]])
    d = np.gradient(line, axis=0)
    if closed:
        d[0] = d[-1] = line[1] - line[-2]
    d /= np.linalg.norm(d, axis=1)[:, None]
    flat = np.linalg.svd(line - line.mean(0))[2][2]
    side = np.tile(flat, (len(line), 1))
    other = np.cross(d, side)
    other /= np.linalg.norm(other, axis=1)[:, None]
    a = np.linspace(0, 2 * np.pi, count, endpoint=False)
    points = (
        line[:, None]
        + radii[0] * np.cos(a)[None, :, None] * side[:, None]
        - radii[1] * np.sin(a)[None, :, None] * other[:, None]
    )
    return grid(points, np.zeros((*points.shape[:2], 2)), closed=True)


def ring(radius: float, thickness: float) -> Mesh:
    """A ring of round wire lying about the origin in the plane z = 0."""
    a = np.linspace(0, 2 * np.pi, 24, endpoint=False)
    return swept(
        np.column_stack([radius * np.cos(a), radius * np.sin(a), 0 * a]),
        (thickness / 2, thickness / 2),
        closed=True,
        count=16,
        steps=6,
    )


def pebble(length: float, width: float, height: float, *, seed: int = 0, rough: float = 0.05, count: int = 40) -> Mesh:
    """A lumpy rounded body on z = 0: a seed, a stone, a loaf."""
    rng = np.random.default_rng(seed)
    polar, around = np.meshgrid(
        np.linspace(1e-3, np.pi - 1e-3, count // 2), np.linspace(0, 2 * np.pi, count, endpoint=False), indexing="ij"
    )
    lump = 1 + rough * np.sin(polar) ** 2 * sum(
        rng.normal(0, 1) * np.sin(k * polar + rng.uniform(0, 6)) * np.cos(m * around + rng.uniform(0, 6))
        for k in (1, 2, 3)
        for m in (1, 2, 3)
    )
    lying = np.maximum(0.68 * (1 + np.cos(polar) * lump) - 0.36, 0)
    points = np.stack(
        [
            length / 2 * np.sin(polar) * np.cos(around) * lump,
            width / 2 * np.sin(polar) * np.sin(around) * lump,
            height * lying,
        ],
        -1,
    )
    return grid(points, np.zeros((*points.shape[:2], 2)), closed=True)


def box(x: float, y: float, z: float) -> Mesh:
    """A block with slightly broken edges, standing on z = 0; its top carries texture coordinates."""
    face, body = flat_piece(rounded_outline(x, y, 0.8, 4), z, bevel=0.5)
    return joined(face, body)


def cloth(width: float, height: float, lift: Callable[[Array, Array], Array], *, step: float = 2.5) -> Mesh:
    """Fabric spread over (x, y) about the origin, its height in mm given by `lift(x, y)`."""
    x, y = np.meshgrid(
        np.linspace(-width / 2, width / 2, int(width / step)), np.linspace(height / 2, -height / 2, int(height / step))
    )
    points = np.stack([x, y, lift(x, y)], -1)
    return grid(points, np.stack([x / width + 0.5, 0.5 - y / height], -1))


def wrinkles(
    depth: float, scale: float, seed: int, *, direction: float = 0.0, stretch: float = 2.5, rest: float = 1.0
) -> Callable[[Array, Array], Array]:
    """Soft creases `depth` mm high about `scale` mm apart, drawn out along a direction in degrees."""
    size = 512
    noise = fractal((size, size), np.random.default_rng(seed), 3.1, stretch=1.0)
    ridges = np.maximum(noise, -0.5) ** 2

    def lift(x: Array, y: Array) -> Array:
        c, s = np.cos(np.radians(direction)), np.sin(np.radians(direction))
        u, v = (x * c + y * s) / stretch, -x * s + y * c
        i, j = (v / scale * 36) % size, (u / scale * 36) % size
        i0, j0 = np.floor(i).astype(int) % size, np.floor(j).astype(int) % size
        fi, fj = i % 1, j % 1
        i1, j1 = (i0 + 1) % size, (j0 + 1) % size
        return rest + depth * (
            ridges[i0, j0] * (1 - fi) * (1 - fj)
            + ridges[i1, j0] * fi * (1 - fj)
            + ridges[i0, j1] * (1 - fi) * fj
            + ridges[i1, j1] * fi * fj
        )

    return lift


def folded(width: float, length: float, layers: int, gap: float, lift: Callable[[Array, Array], Array]) -> Mesh:
    """A cloth folded over and over along its length, its start on top, its layers `gap` mm apart."""
    run = length / layers
    line: list[tuple[float, float, float]] = []
    for layer in range(layers):
        z = gap * (layers - 1 - layer) + 1
        sign = 1 if layer % 2 == 0 else -1
        for t in np.linspace(0, 1, 60):
            line.append((sign * (run / 2 - t * run), z, (layer + t) / layers))
        if layer < layers - 1:
            for a in np.linspace(0, np.pi, 12)[1:-1]:
                line.append(
                    (
                        -sign * run / 2 - sign * gap * 0.62 * np.sin(a),
                        z - gap / 2 * (1 - np.cos(a)),
                        (layer + 1) / layers,
                    )
                )
    path = np.array(line)
    xs = np.linspace(-width / 2, width / 2, int(width / 3))
    x, y = np.meshgrid(xs, path[:, 0])
    z = np.repeat(path[:, 1:2], len(xs), 1)
    z = z + lift(x, y) * (0.35 + 0.65 * z / z.max())
    v = np.repeat(path[:, 2:3], len(xs), 1)
    return grid(np.stack([x, y, z], -1), np.stack([x / width + 0.5, v], -1))
