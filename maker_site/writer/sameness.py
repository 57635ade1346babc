"""Digests of what every page depends on beside the records: the program, the theme, the maker's fonts.

Nothing that is slow to import is imported here.
"""

from __future__ import annotations

import hashlib
import os
import sys

TYPE_CHECKING = False
if TYPE_CHECKING:  # importing these takes as long as looking at a thousand files
    from collections.abc import Iterable, Iterator
    from pathlib import Path

_PROGRAM = os.path.dirname(os.path.dirname(os.path.realpath(__file__)))  # noqa: PTH120
_OF_THE_PROGRAM = (".py", ".csv", ".mo")
_LIBRARIES = ("site-packages", "dist-packages")
"""How a folder is called that libraries are installed in: another version of one changes the folder's time."""


def program() -> str:
    """Return a digest of this program and of the Python and the libraries that it runs with; nothing is read."""
    seen = [sys.version, *(_stamp(folder) for folder in sys.path if folder.endswith(_LIBRARIES))]
    seen += _stamps(_PROGRAM)
    return hashlib.blake2b("\n".join(seen).encode("utf-8", "surrogateescape"), digest_size=12).hexdigest()


def _stamps(folder: str) -> Iterator[str]:
    with os.scandir(folder) as found:
        entries = sorted(found, key=lambda entry: entry.name)
    for entry in entries:
        if entry.is_dir():
            if not entry.name.startswith((".", "__")):
                yield from _stamps(entry.path)
        elif entry.name.endswith(_OF_THE_PROGRAM):
            yield _stamp(entry)


def _stamp(at: str | os.DirEntry[str]) -> str:
    path = os.fspath(at)
    try:
        found = os.stat(path) if isinstance(at, str) else at.stat()  # noqa: PTH116
    except OSError:
        return f"{path} -"
    return f"{path} {found.st_size} {found.st_mtime_ns} {found.st_ino}"


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
