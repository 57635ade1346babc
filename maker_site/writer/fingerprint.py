"""Whether an answer may have changed: path, size and times of record files and of the program itself, nothing read.

Writing (write-ups, articles, about.md) is in no answer, so it is not looked at.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterator
from pathlib import Path
from typing import Final

_FOLDERS: Final = ("blanks", "presses", "supplies", "press-log")
_FILES: Final = ("shop.yaml",)
_OF_A_PROJECT: Final = "project.yaml"
_PROGRAM: Final = Path(__file__).resolve().parents[1]
_READS_RECORDS: Final = ("language", "records", "workings", "writer")
"""Rooms of the program whose change may change an answer."""


def fingerprint(content: Path) -> str:
    """Return a text that differs whenever a record behind an answer is added, changed or removed, or the program is."""
    seen = hashlib.blake2b(digest_size=16)
    root = os.fspath(content)
    for room in _READS_RECORDS:
        seen.update("\n".join(_below(os.fspath(_PROGRAM / room), (".py", ".csv"))).encode("utf-8", "surrogateescape"))
    for name in _FILES:
        seen.update(_stamp(os.path.join(root, name)).encode("utf-8", "surrogateescape"))  # noqa: PTH118 - half the time
    for name in _FOLDERS:
        folder = os.path.join(root, name)  # noqa: PTH118
        seen.update("\n".join(_below(folder, (".yaml", ".csv"))).encode("utf-8", "surrogateescape"))
    seen.update("\n".join(_projects(os.path.join(root, "projects"))).encode("utf-8", "surrogateescape"))  # noqa: PTH118
    return seen.hexdigest()


def _below(folder: str, endings: tuple[str, ...]) -> list[str]:
    """Return the stamps of the files of some endings in a folder and in the folders in it, sorted."""
    found: list[str] = []
    try:
        with os.scandir(folder) as entries:
            for entry in entries:
                if entry.is_dir():
                    if not entry.name.startswith((".", "__")):
                        found += _below(entry.path, endings)
                elif entry.name.endswith(endings):
                    found.append(_stamp(entry.path))
    except OSError:
        found.append(f"{folder} can't be read")
    return sorted(found)


def _projects(folder: str) -> Iterator[str]:
    try:
        names = sorted(os.listdir(folder))  # noqa: PTH208 - names alone are wanted
    except OSError:
        return
    for name in names:
        yield _stamp(f"{folder}/{name}/{_OF_A_PROJECT}")


def _stamp(path: str) -> str:
    """Return a file's path, size and times; the time of its last change of status shows a copy that kept its date."""
    try:
        found = os.stat(path)  # noqa: PTH116 - a third of the time, ten thousand times
    except OSError:
        return f"{path} -"
    return f"{path} {found.st_size} {found.st_mtime_ns} {found.st_ctime_ns}"
