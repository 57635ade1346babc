"""Whether anything at all has changed since the last make: every file is looked at, none is read.

What was made last stands in the cache beside a digest of path, size and times of every file that it was made from:
the records, the theme, the program. The same digest on the same day, and every file of the site there as it was made:
then there is nothing to do. Nothing that is slow to import is imported here.
"""

from __future__ import annotations

import hashlib
import os
import time
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from datetime import date
from pathlib import Path
from typing import Any, Final, NamedTuple, Protocol

from maker_site.writer.kept import Kept
from maker_site.writer.sameness import program
from maker_site.writer.site_folder import Changes, SiteFolder
from maker_site.writer.themes import theme

_KIND: Final = "whole"
_FONTS: Final = "fonts"
"""Of the maker, in the content folder; it may be a link to a folder elsewhere."""
_FINE: Final = 1_000_000
"""A time that is no whole number of milliseconds comes from a drive that tells moments apart, in nanoseconds."""
_SETTLED_FINE, _SETTLED_COARSE = 100_000_000, 2_100_000_000
"""How long ago a file must have changed, in nanoseconds, so that a later change can't bear the same time."""


class Problem(NamedTuple):
    """What was wrong or worth a word in the last make, as it was told then."""

    file: str
    line: int
    field: str
    message: str
    severity: str


@dataclass(frozen=True, slots=True)
class Unchanged:
    """What came of the last make, which another would come to again."""

    problems: tuple[Problem, ...]
    changes: Changes
    pages: int
    pictures: int


class _Made(Protocol):
    @property
    def problems(self) -> Sequence[Any]: ...
    @property
    def pages(self) -> int: ...
    @property
    def pictures(self) -> int: ...


@dataclass(frozen=True, slots=True)
class Look:
    """One look at all that a make is made from."""

    digest: str
    settled: bool
    """No file changed so lately that a change after this look could bear the same time."""

    @classmethod
    def at(cls, content: Path, theme_name: str, today: date) -> Look:
        """Look at the content folder, the theme and the program. Raises `ThemeProblem`."""
        seen = hashlib.blake2b(f"{program()}\n{theme_name}\n{today}\n".encode(), digest_size=16)
        newest = 0
        for folder in dict.fromkeys((content, content / _FONTS, *theme(theme_name, content).folders)):
            lines: list[str] = []
            newest = max(newest, _look(os.path.realpath(folder), lines))
            seen.update("\n".join(lines).encode("utf-8", "surrogateescape"))
            seen.update(b"\n\n")
        settled = _SETTLED_FINE if newest % _FINE else _SETTLED_COARSE
        return cls(seen.hexdigest(), time.time_ns() - newest > settled)


def _look(folder: str, lines: list[str]) -> int:
    """Add a line for each thing below a folder, what a link leads to included; return the newest time."""
    newest = 0
    try:
        with os.scandir(folder) as found:
            entries = sorted(found, key=lambda entry: entry.name)
    except OSError as error:
        lines.append(f"{folder} {error.errno}")
        return newest
    for entry in entries:
        try:
            stat = entry.stat()
            inside = entry.is_dir(follow_symlinks=False)
        except OSError as error:
            lines.append(f"{entry.path} {error.errno}")
            continue
        if inside:
            lines.append(entry.path)
            newest = max(newest, _look(entry.path, lines))
            continue
        newest = max(newest, stat.st_mtime_ns, stat.st_ctime_ns)
        lines.append(f"{entry.path} {stat.st_size} {stat.st_mtime_ns} {stat.st_ctime_ns} {stat.st_ino} {stat.st_mode}")
    return newest


def unchanged(content: Path, out: Path, theme_name: str, today: date) -> Unchanged | None:
    """Return what the last make came to, where another would come to the same; None where it has to be made."""
    kept = Kept(out)
    if kept.is_empty:
        return None
    look = Look.at(content, theme_name, today)
    found = kept.get(_KIND, "last", look.digest)
    if found is None:
        return None
    with SiteFolder.open(out) as site:
        if not site.keep_all():
            return None
        changes = site.commit()
    problems = tuple(Problem(*each) for each in found["problems"])
    return Unchanged(problems, changes, int(found["pages"]), int(found["pictures"]))


def keep_made(kept: Kept, look: Look, made: _Made) -> None:
    """Keep what a make came to, beside what was seen before it began."""
    if look.settled:
        kept.put(_KIND, "last", look.digest, _facts(made))


def _facts(made: _Made) -> Mapping[str, Any]:
    problems = [list(asdict(each).values()) for each in made.problems]
    return {"problems": problems, "pages": made.pages, "pictures": made.pictures}
