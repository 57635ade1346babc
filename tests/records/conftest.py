"""A small workshop on the disk, to be spoiled one way at a time."""

from collections.abc import Callable
from pathlib import Path

import pytest

SMALLEST = {
    "shop.yaml": "name: Bench\ncurrency: GBP\n",
    "blanks/coaster.yaml": "name: Slate coaster\nsubstrate: slate\n",
    "presses/clam.yaml": "name: Clamshell\n",
    "supplies/tape.yaml": "name: Tape\nkind: tape\n",
    "projects/harbour/project.yaml": "title: Harbour\nblank: coaster\n",
    "press-log/2026.csv": "date,blank,press,temperature,time,pressed,good\n2026-04-18,coaster,clam,200 C,5 min,4,3\n",
}
"""A whole workshop in which nothing is wrong."""

Write = Callable[..., Path]


@pytest.fixture
def workshop(tmp_path: Path) -> Write:
    """Write the smallest workshop with some files changed (text or bytes), added, or left out (None)."""

    def write(changes: dict[str, str | bytes | None] | None = None) -> Path:
        root = tmp_path / "content"
        for name, text in {**SMALLEST, **(changes or {})}.items():
            if text is None:
                continue
            file = root / name
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_bytes(text if isinstance(text, bytes) else text.encode())
        return root

    return write
