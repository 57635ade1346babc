"""How many pages a PDF has and how large the first is. Inner module."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path
from typing import Final

from maker_site.frozen import frozen
from maker_site.media.artwork.drawing import pdf_measured
from maker_site.media.problems import PictureProblem
from maker_site.records.quantities.length import MM_PER_INCH

_POINTS_PER_INCH: Final = 72
"""ISO 32000-1, 8.3.2.3: default user space."""
_LARGEST_POINTS: Final = 60_000


@frozen
class PdfFacts:
    """A PDF's pages."""

    pages: int
    size_mm: tuple[Fraction, Fraction]
    """Of the first, as it is turned when seen: its crop box, else its media box."""


def pdf_facts(path: Path) -> PdfFacts:
    """Measure the PDF at `path`. Raises `PictureProblem`."""
    told = json.loads(pdf_measured(path))
    points = [_exact(each) for each in told["size"]]
    if not all(0 < each <= _LARGEST_POINTS for each in points):
        raise PictureProblem(path, "the PDF's first page has no size that can be drawn: save it again")
    width, height = (each * MM_PER_INCH / _POINTS_PER_INCH for each in points)
    return PdfFacts(told["pages"], (width, height))


def _exact(points: float) -> Fraction:
    """Return points to the thousandth (0.0004 mm): the reader gives them in single precision."""
    return Fraction(f"{points:.3f}")
