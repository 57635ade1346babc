"""Whether an answer may have changed: path, size and times of record files and of the program itself, nothing read.

Writing (write-ups, articles, about.md) is in no answer, so it is not looked at.
"""

from __future__ import annotations

import hashlib
import os
import time
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Final

from maker_site.frozen import frozen
from maker_site.writer.look import is_settled

_FOLDERS: Final = ("blanks", "presses", "supplies", "press-log")
_FILES: Final = ("shop.yaml",)
_OF_A_PROJECT: Final = "project.yaml"
_PROGRAM: Final = Path(__file__).resolve().parents[1]
_READS_RECORDS: Final = ("language", "records", "workings", "writer")
"""Rooms of the program whose change may change an answer."""
_UNSETTLED: Final = "?"
"""Ends the line of a file that was changed so lately that a later change could bear the same time."""


@frozen
class Fingerprint:
    """What was seen of the records behind the answers, and of the program."""

    program: str
    records: str
    """A digest of the lines."""
    lines: Sequence[str]
    """Of each file: its path from the content folder, its size and times; sorted within a folder."""

    @property
    def is_settled(self) -> bool:
        """No file was changed so lately that a later change could bear the same time."""
        return not any(line.endswith(_UNSETTLED) for line in self.lines)


def fingerprint(content: Path) -> Fingerprint:
    """Return what differs whenever a record behind an answer is added, changed or removed, or the program is."""
    seen = hashlib.blake2b(digest_size=16)
    for room in _READS_RECORDS:
        stamps = _below(os.fspath(_PROGRAM / room), room, (".py", ".csv"), None)
        seen.update("\n".join(stamps).encode("utf-8", "surrogateescape"))
    root, now = os.fspath(content), time.time_ns()
    lines = [_stamp(f"{root}/{name}", name, now) for name in _FILES]
    for name in _FOLDERS:
        lines += _below(f"{root}/{name}", name, (".yaml", ".csv"), now)
    lines += _projects(f"{root}/projects", now)
    records = hashlib.blake2b("\n".join(lines).encode("utf-8", "surrogateescape"), digest_size=16).hexdigest()
    return Fingerprint(seen.hexdigest(), records, lines)


def touched(before: Sequence[str], now: Sequence[str]) -> list[str]:
    """Return the paths of all files that were added, changed or removed since, or may have been; sorted."""
    unlike = {*before} ^ {*now}
    unlike.update(line for line in now if line.endswith(_UNSETTLED))
    return sorted({path_of(line) for line in unlike})


def path_of(line: str) -> str:
    """Return the path of a file out of its line."""
    return line.rsplit(" ", 3)[0]


def is_alike(one: Fingerprint, other: Fingerprint) -> bool:
    """Tell whether two looks saw the same, settled or not."""
    return [line.rstrip(_UNSETTLED) for line in one.lines] == [line.rstrip(_UNSETTLED) for line in other.lines]


def _below(folder: str, name: str, endings: tuple[str, ...], now: int | None) -> list[str]:
    """Return the stamps of the files of some endings in a folder and in the folders in it, sorted."""
    found: list[str] = []
    try:
        with os.scandir(folder) as entries:
            for entry in entries:
                if entry.is_dir():
                    if not entry.name.startswith((".", "__")):
                        found += _below(entry.path, f"{name}/{entry.name}", endings, now)
                elif entry.name.endswith(endings):
                    found.append(_stamp(entry.path, f"{name}/{entry.name}", now))
    except OSError:
        found.append(f"{name} - - -")
    return sorted(found)


def _projects(folder: str, now: int) -> Iterator[str]:
    try:
        names = sorted(os.listdir(folder))  # noqa: PTH208 - names alone are wanted
    except OSError:
        return
    for name in names:
        yield _stamp(f"{folder}/{name}/{_OF_A_PROJECT}", f"projects/{name}/{_OF_A_PROJECT}", now)


def _stamp(path: str, name: str, now: int | None) -> str:
    """Return a file's path, size and times; the time of its last change of status shows a copy that kept its date."""
    try:
        found = os.stat(path)  # noqa: PTH116 - a third of the time, ten thousand times
    except OSError:
        return f"{name} - - -"
    changed, marked = found.st_mtime_ns, found.st_ctime_ns
    unsettled = _UNSETTLED if now is not None and not is_settled(max(changed, marked), now) else ""
    return f"{name} {found.st_size} {changed} {marked}{unsettled}"
