"""Whether anything at all has changed since the last make: every file is looked at, none is read.

What was made last stands in the cache beside a digest of path, size and times of every file that it was made from
(the records, the theme, the program) and of every file of the site. The same digests on the same day: then there is
nothing to do. Nothing is written, so no lock is needed: who makes at the same time changes the site as a whole, and
what is said here was true when it was looked at. Nothing that is slow to import is imported here.
"""

from __future__ import annotations

import os
import sqlite3
import zlib

from maker_site.writer.look import look, look_at_site

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence
    from datetime import date
    from pathlib import Path
    from typing import Any, Protocol

    from maker_site.writer.kept import Kept
    from maker_site.writer.look import Look
    from maker_site.writer.themes import Theme

    class _Made(Protocol):
        @property
        def problems(self) -> Sequence[Any]: ...
        @property
        def pages(self) -> int: ...
        @property
        def pictures(self) -> int: ...


KIND, NAME = "whole", "last"
_FORM = "2"
"""Of what is kept here; goes up when it changes its shape."""
_CACHE, _JOURNAL = ".maker-site/cache.sqlite", ".maker-site/journal.json"
_PART, _FIELD = "\x1e", "\x1f"
"""Record and unit separator of ASCII: they part what is kept."""
_PATIENCE_S = 0.2


class Problem:
    """What was wrong or worth a word in the last make, as it was told then."""

    __slots__ = ("field", "file", "line", "message", "severity")

    def __init__(self, file: str, line: str, field: str, message: str, severity: str) -> None:
        self.file, self.line, self.field, self.message, self.severity = file, int(line), field, message, severity


class Unchanged:
    """What came of the last make, which another would come to again."""

    __slots__ = ("pages", "pictures", "places", "problems")

    def __init__(self, pages: int, pictures: int, places: tuple[str, str], problems: tuple[Problem, ...]) -> None:
        self.pages, self.pictures, self.problems = pages, pictures, problems
        self.places = places
        """The addresses of the front pages of both copies, ``file://…``."""


def unchanged(content: Path | str, out: Path | str, theme_name: str, today: date | str) -> Unchanged | None:
    """Return what the last make came to, where another would come to the same; None where it has to be made."""
    site = os.path.realpath(out)
    found = _last(site)
    if found is None:
        return None
    key, value = found
    try:
        where, seen, absent, folders, counts, places, *problems = value.split(_PART)
        if where != _where(content, site, theme_name):
            return None
        pages, pictures = map(int, counts.split(_FIELD))
        workshop, public = places.split(_FIELD)
        said = tuple(Problem(*each.split(_FIELD)) for each in problems)
    except (ValueError, TypeError):
        return None
    if any(os.path.lexists(path) for path in (*filter(None, absent.split(_FIELD)), _in(site, _JOURNAL))):
        return None
    if look(os.fspath(content), folders.split(_FIELD), f"{_FORM} {today}").digest != key or look_at_site(site) != seen:
        return None
    return Unchanged(pages, pictures, (workshop, public), said)


def look_before(content: Path, used: Theme, today: date) -> Look:
    """Look at all that a make will be made from, before anything is read."""
    return look(os.fspath(content), map(os.fspath, used.folders), f"{_FORM} {today}")


def keep_made(kept: Kept, seen: Look, content: Path, out: Path, used: Theme, made: _Made, left: str) -> None:
    """Keep what a make came to, beside what was seen before it began and, in `left`, of the site that it left."""
    if not seen.settled:
        return
    site = os.path.realpath(out)
    problems = [(each.file, each.line, each.field, each.message, each.severity) for each in made.problems]
    parts: list[tuple[object, ...]] = [
        tuple(os.path.abspath(path) for path in used.passed),  # noqa: PTH100
        used.folders,
        (made.pages, made.pictures),
        tuple((out / copy / "index.html").resolve().as_uri() for copy in ("workshop", "public")),
        *problems,
    ]
    texts = [[str(each) for each in part] for part in parts]
    if any(mark in text for mark in (_PART, _FIELD) for part in texts for text in part):
        return  # a record holds such a mark
    head = (_where(content, site, used.name), left)
    kept.put_bytes(KIND, NAME, seen.digest, _encoded(_PART.join([*head, *map(_FIELD.join, texts)])))


def _last(site: str) -> tuple[str, str] | None:
    """Return the key and the value that the last make left; None where there is nothing of use."""
    path = _in(site, _CACHE)
    if not os.path.isfile(path):  # noqa: PTH113
        return None
    asked = "SELECT key, value, sum FROM kept WHERE kind = ? AND name = ?"
    try:
        file = sqlite3.connect(f"file:{_quoted(path)}?mode=ro", uri=True, timeout=_PATIENCE_S)
        try:
            key, value, check = file.execute(asked, (KIND, NAME)).fetchone() or ("", b"", -1)
        finally:
            file.close()
        return (key, value.decode("utf-8", "surrogateescape")) if zlib.crc32(value) == check else None
    except (sqlite3.Error, ValueError, TypeError, AttributeError):
        return None


def _where(content: Path | str, site: str, theme_name: str) -> str:
    """Return where was made from what. A theme's name may be a path from the folder that the command is run in."""
    here = os.getcwd() if theme_name != "print-room" else ""  # noqa: PTH109
    return _FIELD.join((os.fspath(content), os.path.realpath(content), site, theme_name, here))


def _in(site: str, name: str) -> str:
    return os.path.join(site, *name.split("/"))  # noqa: PTH118


def _quoted(path: str) -> str:
    """Return a path for the address of a database: what has a meaning there is escaped."""
    plain = path.replace(os.sep, "/")
    for sign, code in (("%", "%25"), ("?", "%3f"), ("#", "%23")):
        plain = plain.replace(sign, code)
    return plain if plain.startswith("/") else f"/{plain}"


def _encoded(text: str) -> bytes:
    return text.encode("utf-8", "surrogateescape")
