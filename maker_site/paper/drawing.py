"""Drawn marks made ready for paper: black on white, in the fonts of the typesetter."""

from __future__ import annotations

import re
from typing import Final

_START: Final = re.compile(r"<svg\b[^>]*>")

PAPER_STYLE: Final = (
    ".m-line,.m-thin,.m-hatch,.m-open,.m-icon,.m-wide,.m-thick,.m-heat,.m-tick,.m-dotted,.m-outer,.m-grid"
    "{fill:none;stroke:#000;stroke-width:1.5}"
    ".m-thin,.m-outer,.m-faint{stroke-width:1}.m-hatch{stroke-width:.9}.m-solid,.m-good{fill:#000;stroke:none}"
    ".m-dot-good{fill:none;stroke:#000;stroke-width:10;stroke-linecap:round}"
    ".m-dot-spoiled{fill:none;stroke:#000;stroke-width:1.5}"
    ".m-speck{fill:none;stroke:#000;stroke-width:1.9;stroke-linecap:round}"
    ".m-ground{fill:#fff;stroke:none}.m-area{stroke:#000;stroke-width:1}"
    ".m-sheet{fill:#fff;stroke:#000;stroke-width:1}.m-wide{stroke-width:9}.m-thick{stroke-width:3.5}"
    ".m-heat{stroke-width:2}.m-bold{stroke-width:3}.m-tick{stroke-width:2.5}"
    ".m-tick-under{fill:none;stroke:#fff;stroke-width:5.5}"
    ".m-interval{fill:#000;fill-opacity:.35}.m-dashed{stroke-dasharray:3 2.5}"
    ".m-dotted{stroke-dasharray:.1 3;stroke-linecap:round}"
    ".m-words,.m-small,.m-figures{fill:#000;font-family:'Libertinus Serif';font-size:14.5px}"
    ".m-small{font-size:12px}.m-figures{font-size:18px;font-weight:600}"
    "path:not([class]){stroke:#000}"
)
"""The inks and line weights of the marks, as `marks.css` has them on a page, in black alone.

Words are a little larger than there, since the serif is narrower than the pages' sans.
"""


def inked(drawing: str) -> str:
    """Return an SVG with the style of paper in it."""
    return _START.sub(lambda match: f"{match[0]}<style>{PAPER_STYLE}</style>", drawing, count=1)
