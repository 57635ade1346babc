"""A drawing as a PNG of a stated size, for the time that it is needed. Inner module."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from maker_site.media.artwork.drawing import draw_pdf, draw_svg
from maker_site.media.artwork.pdf import pdf_facts
from maker_site.media.artwork.planning import fitted
from maker_site.media.artwork.svg import checked_svg


@contextmanager
def drawn_as_png(path: Path, kind: str, longest: int) -> Iterator[Path]:
    """Give the path of a PNG of the SVG or PDF, its longer side of `longest` pixels. Raises `PictureProblem`."""
    with tempfile.TemporaryDirectory() as folder:
        target = Path(folder) / "drawn.png"
        if kind == "SVG":
            svg = checked_svg(path)
            pixels = fitted(svg.size_mm, longest)
            draw_svg(path, svg.text_at(pixels), pixels, target)
        else:
            draw_pdf(path, fitted(pdf_facts(path).size_mm, longest), target)
        yield target
