"""What the papers of earlier makes were made of, kept beside the site by address.

It can be thrown away at any time, which costs time only; what can't be read of it is set again.
"""

from __future__ import annotations

import json
import os
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Final

_FILE: Final = Path(".maker-site") / "papers.json"


@dataclass(frozen=True, slots=True)
class KnownPaper:
    """One paper as it was made."""

    inputs: str
    """A hash of all that it was made of."""
    missing: str
    """Characters that no font had."""


def known_papers(out: Path) -> dict[str, KnownPaper]:
    """Return what an output folder has kept; nothing where it has kept none that can be read."""
    try:
        kept = json.loads((out / _FILE).read_text("utf-8"))
        return {str(address): KnownPaper(str(each["inputs"]), str(each["missing"])) for address, each in kept.items()}
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return {}


def keep_papers(out: Path, known: Mapping[str, KnownPaper]) -> None:
    """Keep what the papers were made of, whole or not at all; a disk that is full costs only the time to set again."""
    target = out / _FILE
    text = json.dumps({address: asdict(each) for address, each in sorted(known.items())}, ensure_ascii=False)
    unfinished = target.with_name(f"{target.name}.{os.getpid()}")
    with suppress(OSError):
        if target.exists() and target.read_text("utf-8") == text:
            return
        unfinished.write_text(text, "utf-8")
        unfinished.replace(target)
    with suppress(OSError):
        unfinished.unlink()
