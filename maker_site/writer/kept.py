"""What earlier makes worked out, kept beside the site in one SQLite file by what it was made of.

It can be thrown away at any time, which costs time only. Everything in it goes by a key that holds all that a value
was made of, the program and the theme among them; a value whose key differs is not looked at. Who writes holds the
lock of the output folder; what is new is written in one transaction, so a crash leaves the file as it was. A file
that is damaged, or that can't be written, is done without.
"""

from __future__ import annotations

import contextlib
import json
import sqlite3
import zlib
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any, Final

from maker_site.writer.spool import Spool, Spooled

FILE: Final = Path(".maker-site") / "cache.sqlite"
_FORM: Final = 1
"""Of the file; goes up when what is kept changes its shape."""
_TABLE: Final = (
    "CREATE TABLE IF NOT EXISTS kept (kind TEXT, name TEXT, key TEXT, value BLOB, sum INTEGER, "
    "PRIMARY KEY (kind, name)) WITHOUT ROWID"
)

_OF_KIND: Final = "SELECT name, key, value, sum FROM kept WHERE kind = ?"


class Kept:
    """Values by kind and name, each with the key of what it was made of."""

    def __init__(self, out: Path) -> None:
        self.file = out / FILE
        """Where it is all kept; it may hold other tables."""
        self._before: dict[str, dict[str, tuple[str, bytes, int]]] = {}
        self._now: dict[str, dict[str, tuple[str, Spooled]]] = {}
        self._spool = Spool()
        self._gone: set[tuple[str, str]] = set()

    def get(self, kind: str, name: str, key: str | None = None) -> Any:
        """Return what was kept under a name, where its key is still `key`; None where there is nothing of use."""
        data = self.get_bytes(kind, name, key)
        if data is None:
            return None
        with contextlib.suppress(ValueError):
            return json.loads(data)
        return None

    def get_bytes(self, kind: str, name: str, key: str | None = None) -> bytes | None:
        """Return the same as the bytes that are kept."""
        now = self._now.get(kind, {}).get(name)
        if now is not None:
            return now[1].data() if key in (None, now[0]) else None
        found = self._one(kind, name)
        if found is None or key not in (None, found[0]) or zlib.crc32(found[1]) != found[2]:
            return None
        return found[1]

    def all_bytes(self, kind: str) -> dict[str, bytes]:
        """Return all that an earlier make kept of a kind, by name: for who is about to ask for much of it."""
        rows = self._rows(_OF_KIND, (kind,))
        return {name: data for name, (_, data, check) in rows.items() if zlib.crc32(data) == check}

    def new_bytes(self, kind: str, name: str) -> bytes | None:
        """Return what was put under a name and is not written yet."""
        now = self._now.get(kind, {}).get(name)
        return None if now is None else now[1].data()

    def names(self, kind: str) -> tuple[str, ...]:
        """Return every name that something is kept under."""
        return tuple(self._of(kind).keys() | self._now.get(kind, {}).keys())

    def put(self, kind: str, name: str, key: str, value: Any) -> None:
        """Keep a value that JSON can hold; what is not put or kept in a make is forgotten with it."""
        data = json.dumps(value, ensure_ascii=False, separators=(",", ":")).encode("utf-8", "surrogatepass")
        self.put_bytes(kind, name, key, data)

    def put_bytes(self, kind: str, name: str, key: str, data: bytes) -> None:
        """Keep bytes as they are, for who reads them without JSON."""
        self._now.setdefault(kind, {})[name] = (key, self._spool.put(data))

    def keep(self, kind: str, name: str) -> None:
        """Keep what is there under a name."""
        now = self._now.setdefault(kind, {})
        if name not in now:
            key, data, _ = self._of(kind)[name]
            now[name] = (key, Spooled(data))

    def forget(self, kind: str, name: str) -> None:
        """Keep nothing under a name."""
        self._now.get(kind, {}).pop(name, None)
        self._gone.add((kind, name))

    def write(self, *, patch: bool = False) -> None:
        """Write what differs, whole or not at all; where it can't be written only time is lost.

        With `patch` what was neither put nor kept stays as it is.
        """
        changed: list[tuple[str, str]] = []
        gone = sorted(self._gone)
        for kind in self._now.keys() | (set() if patch else self._before.keys()):
            now = self._now.get(kind, {})
            before = self._before.get(kind, {}) if patch else self._of(kind)
            changed += [(kind, name) for name, each in now.items() if not _is_same(before.get(name), each)]
            gone += [] if patch else [(kind, name) for name in before if name not in now]
        if not changed and not gone:
            return
        try:
            self._write(changed, gone)
        except (OSError, sqlite3.OperationalError):
            return  # locked, or the disk is full: what is there is whole
        except sqlite3.DatabaseError:
            with contextlib.suppress(OSError, sqlite3.Error):
                self.file.unlink(missing_ok=True)  # damaged: begun anew
                self._write([(kind, name) for kind, now in self._now.items() for name in now], [])
        self._before, self._now, self._gone, self._spool = {}, {}, set(), Spool()

    def _write(self, changed: Iterable[tuple[str, str]], gone: Iterable[tuple[str, str]]) -> None:
        with contextlib.closing(sqlite3.connect(self.file)) as file, file:
            if file.execute("PRAGMA user_version").fetchone()[0] != _FORM:
                file.execute("DROP TABLE IF EXISTS kept")
            file.execute(_TABLE)
            file.execute(f"PRAGMA user_version = {_FORM}")
            file.executemany("DELETE FROM kept WHERE kind = ? AND name = ?", gone)
            file.executemany("INSERT OR REPLACE INTO kept VALUES (?, ?, ?, ?, ?)", self._rows_of(changed))

    def _rows_of(self, names: Iterable[tuple[str, str]]) -> Iterator[tuple[str, str, str, bytes, int]]:
        for kind, name in names:
            key, spooled = self._now[kind][name]
            data = spooled.data()
            yield kind, name, key, data, zlib.crc32(data)

    def _one(self, kind: str, name: str) -> tuple[str, bytes, int] | None:
        if kind in self._before:
            return self._before[kind].get(name)
        rows = self._rows(f"{_OF_KIND} AND name = ?", (kind, name))
        return rows.get(name)

    def _of(self, kind: str) -> dict[str, tuple[str, bytes, int]]:
        if kind not in self._before:
            self._before[kind] = self._rows(_OF_KIND, (kind,))
        return self._before[kind]

    def _rows(self, asked: str, values: tuple[str, ...]) -> dict[str, tuple[str, bytes, int]]:
        if not self.file.is_file():
            return {}
        try:
            with contextlib.closing(sqlite3.connect(f"{self.file.resolve().as_uri()}?mode=ro", uri=True)) as file:
                if file.execute("PRAGMA user_version").fetchone()[0] != _FORM:
                    return {}
                rows = file.execute(asked, values)
                return {name: (key, value, check) for name, key, value, check in rows if isinstance(value, bytes)}
        except (sqlite3.Error, OSError):
            return {}


def _is_same(before: tuple[str, bytes, int] | None, now: tuple[str, Spooled]) -> bool:
    return before is not None and before[0] == now[0] and before[1] == now[1].data()
