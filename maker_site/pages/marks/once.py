"""What many marks of one page share is drawn once on it; a mark by itself carries it along."""

import re
from typing import Final

from maker_site.pages.marks.hatching import shared_parts

_SPACE: Final = ' xmlns="http://www.w3.org/2000/svg"'
_START: Final = re.compile(r"<svg\b[^>]*>")


def drawn_once(page: str) -> str:
    """Return a page of HTML with the strokes that its marks name, once, at its end; what HTML knows is left out."""
    end = page.rfind("</body>")
    parts = shared_parts(page) if end >= 0 else ""
    if parts:
        drawing = f'<svg class="m-shared" width="0" height="0" aria-hidden="true"><defs>{parts}</defs></svg>\n'
        page = page[:end] + drawing + page[end:]
    return page.replace(_SPACE, "")


def standing_alone(mark: str) -> str:
    """Return a mark with all that it names in it, for a file or a sheet of its own."""
    parts = shared_parts(mark)
    return _START.sub(lambda start: f"{start[0]}<defs>{parts}</defs>", mark, count=1) if parts else mark
