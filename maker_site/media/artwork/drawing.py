"""Have drawings drawn in a process of their own, within bounds of time and memory. Inner module.

The readers of SVG and PDF are fast, and can be brought down by a file made to do so (measured: the SVG reader by some
250 groups within each other). They also keep other threads from running; a process of their own does not.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Final

from maker_site.media.problems import PictureProblem

_PROGRAM: Final = Path(__file__).with_name("draw_apart.py")
_LONGEST_SECONDS: Final = 60
_MEMORY_BYTES: Final = 3 * 1024**3


def draw_svg(path: Path, text: str, size: tuple[int, int], target: Path) -> None:
    """Draw a checked SVG as a PNG of `size` pixels; what it leaves clear stays clear. Raises `PictureProblem`."""
    _run(path, ["svg", str(size[0]), str(size[1]), str(target.absolute())], text.encode())


def draw_pdf(path: Path, size: tuple[int, int], target: Path) -> None:
    """Draw the first page of a PDF on white as a PNG of `size` pixels. Raises `PictureProblem`."""
    _run(path, ["pdf", str(size[0]), str(size[1]), str(target.absolute()), str(path.absolute())])


def pdf_measured(path: Path) -> bytes:
    """Return a PDF's count of pages and the first's size in points, as JSON. Raises `PictureProblem`."""
    return _run(path, ["measure", str(path.absolute())])


def _run(path: Path, words: list[str], given: bytes = b"") -> bytes:
    with tempfile.TemporaryDirectory() as empty:  # a name without a folder then leads nowhere
        try:
            done = subprocess.run(
                [sys.executable, "-P", str(_PROGRAM), str(_MEMORY_BYTES), *words],
                input=given,
                capture_output=True,
                cwd=empty,
                timeout=_LONGEST_SECONDS,
                check=False,
            )
        except subprocess.TimeoutExpired as error:
            sentence = f"the drawing takes more than {_LONGEST_SECONDS} seconds to draw: save it as a PNG instead"
            raise PictureProblem(path, sentence) from error
    if done.returncode == 0:
        return done.stdout
    said = done.stderr.decode("utf-8", "replace").strip()
    if done.returncode == REFUSED and said:
        raise PictureProblem(path, said)
    raise PictureProblem(path, "the drawing is too deep or too heavy to be drawn: simplify it, or save it as a PNG")


REFUSED: Final = 3
"""Exit code of the drawing program where it has a sentence to say."""
