"""One look at all that a make is made from, and at what it made: every file's size and times, none is read.

Each file is looked at once. Nothing that is slow to import is imported here.
"""

from __future__ import annotations

import hashlib
import os
import time
from operator import attrgetter

from maker_site.writer.sameness import program

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Iterable

_FONTS = "fonts"
"""Of the maker, in the content folder; it may be a link to a folder elsewhere."""
COPIES = ("workshop", "public")
"""The folders of a site that pages are made in."""
_FINE = 1_000_000
"""A time that is no whole number of milliseconds comes from a drive that tells moments apart, in nanoseconds."""
_SETTLED_FINE, _SETTLED_COARSE = 100_000_000, 2_100_000_000
"""How long ago a file must have changed, in nanoseconds, so that a later change can't bear the same time."""
_BY_NAME = attrgetter("name")


class Look:
    """What was seen of the records, the theme and the program on a day."""

    __slots__ = ("at", "digest", "lines", "settled")

    def __init__(self, digest: str, lines: list[str], at: int, *, settled: bool) -> None:
        self.digest = digest
        self.lines = lines
        """Of the content folder: what was seen of each thing in it."""
        self.at = at
        """When the look ended, in nanoseconds."""
        self.settled = settled
        """No file changed so lately that a change after this look could bear the same time."""


def look(content: str, theme_folders: Iterable[str], said: str) -> Look:
    """Look at the content folder, the theme's folders and the program; `said` is what else a make depends on."""
    seen = hashlib.blake2b(f"{program()}\n{said}\n".encode("utf-8", "surrogateescape"), digest_size=16)
    newest = 0
    found: dict[str, list[str]] = {}
    for folder in (content, os.path.join(content, _FONTS), *theme_folders):  # noqa: PTH118
        if folder not in found:
            lines = found[folder] = []
            newest = max(newest, _below(os.path.realpath(folder), lines))
            seen.update("\n".join(lines).encode("utf-8", "surrogateescape"))
            seen.update(b"\n\n")
    now = time.time_ns()
    return Look(seen.hexdigest(), found[content], now, settled=is_settled(newest, now))


def look_at_records(content: str) -> Look:
    """Look at the content folder alone."""
    lines: list[str] = []
    newest = _below(os.path.realpath(content), lines)
    now = time.time_ns()
    return Look("", lines, now, settled=is_settled(newest, now))


def stamps(seen: Look) -> dict[str, tuple[str, bool]]:
    """Return what was seen of each thing in the content folder, folders included, by its path from there.

    With each stands whether it can be told from what is seen of it that it has changed: not of what was changed too
    lately, nor of a link, behind which anything may change.
    """
    found: dict[str, tuple[str, bool]] = {}
    begins, folder = len(seen.lines[0]) + 1, ""
    for line in seen.lines[1:]:
        if os.sep in line:
            inner = line[begins:].replace(os.sep, "/")
            found[inner] = ("", True)
            folder = f"{inner}/"
            continue
        name, *said = line.rsplit(" ", 6)
        if len(said) < 6:
            found[folder + line.rsplit(" ", 1)[0]] = ("", False)
            continue
        size, changed, marked, place, mode, link = said
        newest = max(int(changed), int(marked))
        found[folder + name] = f"{size} {changed} {marked} {place} {mode}", link == "-" and is_settled(newest, seen.at)
    return found


def is_settled(newest: int, now: int) -> bool:
    """Tell whether a file that bears a time can't change any more and bear the same; a time to come never settles."""
    return now - newest > (_SETTLED_FINE if newest % _FINE else _SETTLED_COARSE)


def look_at_site(out: str) -> str:
    """Return a digest of every file of both copies, whoever made it."""
    lines: list[str] = []
    for copy in COPIES:
        _below(os.path.join(out, copy), lines)  # noqa: PTH118
    return hashlib.blake2b("\n".join(lines).encode("utf-8", "surrogateescape"), digest_size=16).hexdigest()


def _below(folder: str, lines: list[str]) -> int:
    """Add a line for each thing below a folder, what a link leads to included; return the newest time."""
    newest = 0
    try:
        with os.scandir(folder) as found:
            entries = sorted(found, key=_BY_NAME)
    except OSError as error:
        lines.append(f"{folder} {error.errno}")
        return newest
    lines.append(folder)
    inside = []
    for entry in entries:
        try:
            if entry.is_dir(follow_symlinks=False):
                inside.append(entry.path)
                continue
            seen = entry.stat()
        except OSError as error:
            lines.append(f"{entry.name} {error.errno}")
            continue
        changed, marked = seen.st_mtime_ns, seen.st_ctime_ns
        newest = max(newest, changed, marked)
        link = "l" if entry.is_symlink() else "-"
        lines.append(f"{entry.name} {seen.st_size} {changed} {marked} {seen.st_ino} {seen.st_mode} {link}")
    for path in inside:
        newest = max(newest, _below(path, lines))
    return newest
