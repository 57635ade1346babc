"""What the pieces lie on and are made of, as pictures: wood, stone, plaster, paper and weave, all from noise.

Each function gives colours as sRGB floats 0 to 1, shape (rows, columns, 3); tones are given as hex colours.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from tests.demo_pictures.noise import blurred, fractal

Colours = NDArray[np.float64]


def tone(colour: str) -> Colours:
    """A hex colour as three floats."""
    return np.array([int(colour[k : k + 2], 16) / 255 for k in (1, 3, 5)])


def _between(dark: str, light: str, t: NDArray[np.float64]) -> Colours:
    return tone(dark) + (tone(light) - tone(dark)) * np.clip(t, 0, 1)[..., None]


def planks(dark: str, light: str, *, boards: int = 6, seed: int = 1, size: int = 1536, gap: str = "#1d140d") -> Colours:
    """Boards that run sideways, each with its own grain and tone."""
    rng = np.random.default_rng(seed)
    rows = size // boards
    out = np.zeros((boards * rows, size, 3))
    for k in range(boards):
        shape = (rows, size)
        warp = fractal(shape, rng, 3.2, stretch=7)
        rings = 0.5 + 0.5 * np.sin(
            (np.arange(rows)[:, None] / rows * rng.uniform(6, 11) + 1.5 * warp) * 2 * np.pi * 0.55
        )
        fibre = fractal(shape, rng, 1.1, stretch=34, coarsest=4)
        pores = np.clip(fractal(shape, rng, 0.5, stretch=22, coarsest=20) - 1.5, 0, 1.5)
        t = 0.52 + 0.2 * (rings - 0.5) + 0.085 * fibre + 0.09 * warp * 0.5 - 0.3 * pores + rng.normal(0, 0.09)
        board = _between(dark, light, t)
        edge = np.minimum(np.arange(rows), np.arange(rows)[::-1])[:, None, None]
        shade = np.clip(edge / 2.2, 0, 1)
        out[k * rows : (k + 1) * rows] = board * shade + tone(gap) * (1 - shade)
    return out


def stone(
    dark: str, light: str, *, seed: int = 2, size: int = 1024, slope: float = 2.0, veins: str | None = None
) -> Colours:
    """A mottled stone, with thin veins when a tone is given for them."""
    rng = np.random.default_rng(seed)
    t = 0.5 + 0.16 * fractal((size, size), rng, slope) + 0.05 * rng.normal(size=(size, size))
    out = _between(dark, light, t)
    if veins:
        line = np.abs(fractal((size, size), rng, 2.9, stretch=1.6))
        mask = np.exp(-((line / 0.035) ** 2)) * np.clip(0.5 + 0.5 * fractal((size, size), rng, 2.6), 0, 1) * 0.6
        out = out * (1 - mask[..., None]) + tone(veins) * mask[..., None]
    return np.clip(out, 0, 1)


def terrazzo(ground: str, chips: tuple[str, ...], *, seed: int = 3, size: int = 1024) -> Colours:
    """Chips of several tones in a pale ground."""
    rng = np.random.default_rng(seed)
    out = _between(ground, ground, np.zeros((size, size)))
    out += 0.012 * fractal((size, size), rng, 1.5)[..., None]
    for k, chip in enumerate(chips):
        field = fractal((size, size), rng, 2.4, coarsest=26)
        sharp = np.clip((field - 1.35 - 0.1 * k) * 9, 0, 1)[..., None]
        out = out * (1 - sharp) + tone(chip) * sharp
    return np.clip(out, 0, 1)


def plaster(colour: str, *, seed: int = 4, size: int = 1024, depth: float = 0.035) -> Colours:
    """A brushed wall."""
    rng = np.random.default_rng(seed)
    return np.clip(
        tone(colour)
        + depth * (0.7 * fractal((size, size), rng, 2.4) + 0.3 * fractal((size, size), rng, 1.2))[..., None],
        0,
        1,
    )


def weave(colour: str, *, threads: int = 190, seed: int = 5, size: int = 1536, depth: float = 0.1) -> Colours:
    """Plain-woven cloth with slubs."""
    rng = np.random.default_rng(seed)
    i, j = np.meshgrid(np.arange(size), np.arange(size), indexing="ij")
    warp, weft = np.sin(i / size * threads * 2 * np.pi), np.sin(j / size * threads * 2 * np.pi)
    over = np.where(warp * weft > 0, np.abs(warp), np.abs(weft))
    slub = (
        fractal((size, size), rng, 1.2, stretch=30, coarsest=6)
        + fractal((size, size), rng, 1.2, stretch=30, coarsest=6).T
    )
    return np.clip(tone(colour) * (1 - depth + depth * over[..., None] + 0.035 * slub[..., None]), 0, 1)


def printed(picture: Image.Image, ground: Colours, *, strength: float = 1.0, opaque: bool = False) -> Colours:
    """A design on a material: dyed into it (its colours multiply the ground) or laid over it where `opaque`."""
    rgba = np.asarray(picture, dtype=np.float64) / 255
    rows, columns = rgba.shape[:2]
    resized = Image.fromarray((np.clip(ground, 0, 1) * 255).astype(np.uint8)).resize(
        (columns, rows), Image.Resampling.BICUBIC
    )
    base = np.asarray(resized, dtype=np.float64) / 255
    alpha = rgba[..., 3:] * strength
    ink = rgba[..., :3]
    if opaque:
        ink = ink * (0.86 + 0.14 * base / max(base.mean(), 1e-3)) if base.mean() > 0.3 else ink
        return np.clip(base * (1 - alpha) + ink * alpha, 0, 1)
    return np.asarray(base * (1 - alpha + ink * alpha), dtype=np.float64)


def placed(
    picture: Image.Image, width: float, height: float, x: float, y: float, sheet: tuple[float, float], ppmm: float
) -> Image.Image:
    """A design of width x height mm laid at (x, y) from the top left of an empty sheet of a size in mm."""
    out = Image.new("RGBA", (round(sheet[0] * ppmm), round(sheet[1] * ppmm)), (0, 0, 0, 0))
    out.alpha_composite(
        picture.resize((round(width * ppmm), round(height * ppmm)), Image.Resampling.LANCZOS),
        (round(x * ppmm), round(y * ppmm)),
    )
    return out


def relief(size: int, seed: int, slope: float, *, stretch: float = 1.0, blur: float = 0.0) -> NDArray[np.float64]:
    """Heights 0 to 1 for a bumpy surface."""
    field = fractal((size, size), np.random.default_rng(seed), slope, stretch=stretch)
    if blur:
        field = blurred(field, blur)
    return np.clip(0.5 + 0.18 * field, 0, 1)
