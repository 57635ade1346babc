"""What was counted of artwork in earlier makes, kept beside the site by content hash.

It can be thrown away at any time, which costs time only; what can't be read of it is counted again.
"""

from __future__ import annotations

import json
import os
from collections.abc import Mapping
from contextlib import suppress
from fractions import Fraction
from pathlib import Path
from typing import Final

_FILE: Final = Path(".maker-site") / "coverage.json"
_FORM: Final = 1
"""Goes up when counting changes its result."""


def known_coverage(out: Path) -> dict[str, Fraction]:
    """Return what an output folder has kept; nothing where it has kept none that can be read."""
    try:
        kept = json.loads((out / _FILE).read_text("utf-8"))
        if kept["form"] != _FORM:
            return {}
        found = {str(digest): Fraction(share) for digest, share in kept["coverage"].items()}
    except (OSError, ValueError, KeyError, TypeError, AttributeError, ZeroDivisionError):
        return {}
    return {digest: share for digest, share in found.items() if 0 <= share <= 1}


def keep_coverage(out: Path, known: Mapping[str, Fraction]) -> None:
    """Keep what was counted, whole or not at all; a disk that is full costs only the time to count again."""
    kept = {"form": _FORM, "coverage": {digest: str(share) for digest, share in sorted(known.items())}}
    target = out / _FILE
    text = json.dumps(kept)
    unfinished = target.with_name(f"{target.name}.{os.getpid()}")
    with suppress(OSError):
        if target.exists() and target.read_text("utf-8") == text:
            return
        unfinished.write_text(text, "utf-8")
        unfinished.replace(target)
    with suppress(OSError):
        unfinished.unlink()
