"""The drawing program: run by `drawing.py` as a process of its own, it imports nothing of the house.

draw_apart.py MEMORY svg WIDTH HEIGHT TARGET          the SVG comes in by standard input
draw_apart.py MEMORY pdf WIDTH HEIGHT TARGET SOURCE
draw_apart.py MEMORY measure SOURCE                   pages and size in points to standard output
"""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any, Final

_REFUSED: Final = 3
_PASSWORD: Final = 4  # FPDF_ERR_PASSWORD


class _Refusal(Exception):
    """A sentence for the maker."""


def main(memory: str, task: str, *words: str) -> None:
    """Do one task; exit with a sentence where the file can't be used."""
    _bound_memory(int(memory))
    try:
        if task == "svg":
            _svg(int(words[0]), int(words[1]), Path(words[2]))
        elif task == "pdf":
            _pdf(int(words[0]), int(words[1]), Path(words[2]), words[3])
        else:
            _measure(words[0])
    except _Refusal as error:
        sys.stderr.write(str(error))
        sys.exit(_REFUSED)


def _bound_memory(limit: int) -> None:
    try:
        import resource
    except ImportError:  # no such bound on this system; the bound of time still holds
        return
    resource.setrlimit(resource.RLIMIT_AS, (limit, limit))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


def _svg(width: int, height: int, target: Path) -> None:
    import resvg_py

    text = sys.stdin.buffer.read().decode()
    try:
        # A size in mm fails without dpi. Fonts of the system would make it look different on every machine.
        png = resvg_py.svg_to_bytes(svg_string=text, width=width, height=height, dpi=96, skip_system_fonts=True)
    except ValueError as error:
        raise _Refusal(f"the SVG can't be drawn ({error}): save it again") from error
    target.write_bytes(png)


def _pdf(width: int, height: int, target: Path, source: str) -> None:
    page = _opened(source)[0]
    points = page.get_size()
    bitmap = page.render(scale=max(width / points[0], height / points[1]), may_draw_forms=False)
    picture = bitmap.to_pil().convert("RGB")
    picture.resize((width, height)).save(target, "PNG", compress_level=1)


def _measure(source: str) -> None:
    document = _opened(source)
    sys.stdout.write(json.dumps({"pages": len(document), "size": document[0].get_size()}))


def _opened(source: str) -> Any:
    import pypdfium2

    try:
        document = pypdfium2.PdfDocument(source)
        document[0].get_size()
    except pypdfium2.PdfiumError as error:
        if getattr(error, "err_code", None) == _PASSWORD:
            raise _Refusal("the PDF asks for a password: save it without one") from error
        raise _Refusal(f"the PDF can't be read ({str(error).rstrip('.')}): save it again") from error
    return document


if __name__ == "__main__":
    main(*sys.argv[1:])
