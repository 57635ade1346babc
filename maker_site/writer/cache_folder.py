"""Where things are kept that cost time only when deleted, for who has no site to keep them beside."""

from __future__ import annotations

import hashlib
import os
import sys
from pathlib import Path


def cache_folder() -> Path:
    """Return the folder, by the habit of the system."""
    if said := os.environ.get("XDG_CACHE_HOME"):
        return Path(said) / "maker-site"
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or Path.home()) / "maker-site" / "cache"
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Caches" / "maker-site"
    return Path.home() / ".cache" / "maker-site"


def kept_file(what: str, content: Path, cache: Path | None = None) -> Path:
    """Return the file for what is kept of a content folder; `cache` is the folder for it where it is another."""
    name = hashlib.blake2b(os.path.realpath(content).encode("utf-8", "surrogateescape"), digest_size=10).hexdigest()
    return (cache or cache_folder()) / f"{what}-{name}.sqlite"


def is_among_records(file: Path, content: Path) -> bool:
    """Tell whether a file would lie among the maker's own; nothing of ours is ever put there."""
    return file.resolve().is_relative_to(content.resolve())
