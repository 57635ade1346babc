"""Designs as pixels: an SVG made into a picture at a given resolution, and written beside it as a small PNG."""

from __future__ import annotations

import io
from pathlib import Path

import resvg_py
from PIL import Image

from tests.demo_pictures.artwork import DESIGNS
from tests.demo_pictures.drawing import Sheet

MM_PER_INCH = 25.4


def rasterised(sheet: Sheet, ppi: float) -> Image.Image:
    """The sheet with its bleed at a resolution in pixels per inch; transparent where nothing is printed."""
    width = round((sheet.width + 2 * sheet.bleed) / MM_PER_INCH * ppi)
    data = resvg_py.svg_to_bytes(svg_string=sheet.svg(), width=width, dpi=96)
    return Image.open(io.BytesIO(bytes(data))).convert("RGBA")


def print_resolution(sheet: Sheet) -> int:
    """300 ppi for small pieces, less for large ones so that the files stay small."""
    longest = max(sheet.width, sheet.height)
    return 300 if longest <= 100 else 200 if longest <= 230 else 150


def write_artwork(content: Path) -> None:
    """Write every design as SVG and as a palette PNG of its print size."""
    for project, designs in DESIGNS.items():
        folder = content / "projects" / project / "artwork"
        folder.mkdir(parents=True, exist_ok=True)
        for name, draw in designs.items():
            sheet = draw()
            (folder / f"{name}.svg").write_text(sheet.svg(), encoding="utf-8")
            ppi = print_resolution(sheet)
            picture = rasterised(sheet, ppi)
            picture.quantize(24, method=Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE).save(
                folder / f"{name}.png", optimize=True, dpi=(ppi, ppi)
            )
            sizes = ", ".join(
                f"{file.stat().st_size // 1000} kB {file.suffix[1:]}" for file in folder.glob(f"{name}.*")
            )
            print(f"{project}/{name}: {sizes}")
