"""Digests of what every page depends on beside the records: the program, the theme, the maker's fonts."""

from __future__ import annotations

import hashlib
import os
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Final

_PROGRAM: Final = Path(__file__).resolve().parents[1]


def program() -> str:
    """Return a digest of this program and of the Python and the libraries that it runs with; nothing is read."""
    seen = [sys.version, *(_stamp(Path(folder)) for folder in sys.path if folder)]
    seen += stamps(_PROGRAM, ".py", ".csv", ".mo")
    return hashlib.blake2b("\n".join(seen).encode("utf-8", "surrogateescape"), digest_size=12).hexdigest()


def stamps(folder: Path, *endings: str) -> Iterator[str]:
    """Yield path, size and times of each file below a folder that ends as asked, of any where nothing is asked."""
    for here, inside, names in os.walk(folder):
        inside[:] = sorted(name for name in inside if not name.startswith((".", "__")))
        yield from (_stamp(Path(here) / name) for name in sorted(names) if not endings or name.endswith(endings))


def contents(folders: Iterable[Path]) -> str:
    """Return a digest of the names and the bytes of all files below some folders."""
    seen = hashlib.blake2b(digest_size=12)
    for folder in folders:
        for path in sorted(folder.rglob("*")):
            if path.is_file():
                data = path.read_bytes()
                seen.update(f"{path.relative_to(folder).as_posix()}\0{len(data)}\0".encode("utf-8", "surrogateescape"))
                seen.update(data)
        seen.update(b"\0")
    return seen.hexdigest()


def _stamp(path: Path) -> str:
    try:
        found = path.stat()
    except OSError:
        return f"{path} -"
    return f"{path} {found.st_size} {found.st_mtime_ns} {found.st_ino}"
