"""The files that answers are kept in: a base, made of all records, and a patch, made of what was edited since.

Both are SQLite files, replaced whole and never written to in place. The patch names the base that it belongs to. Each
part stands with its checksum, so that damage is seen by who reads it. Nothing is unpickled but plain values.
"""

from __future__ import annotations

import contextlib
import io
import os
import pickle
import sqlite3
import tempfile
import time
import zlib
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path
from typing import Any, Final, TypeAlias

from maker_site.writer.cache_folder import is_among_records

FORM: Final = 4
"""Of what is kept; goes up when it changes its shape."""
Name: TypeAlias = "int | str | bytes"
Parts: TypeAlias = "Mapping[tuple[str, Name], bytes]"
"""What is kept, by its kind and its number or name; empty where it is there no more."""
NO_TEXT: Final = b"-"
"""Kept for a file that isn't there, or can't be read."""
_A_DAY: Final = 86400
_TABLE: Final = "CREATE TABLE kept (kind TEXT, name, data BLOB, sum INTEGER, PRIMARY KEY (kind, name)) WITHOUT ROWID"
_PLAIN: Final = {
    "maker_site.records.gist": ("BlankGist", "Sheet", "PressGist", "Reading", "Resolution", "Row"),
    "maker_site.records.quantities.temperature": ("Temperature", "TemperatureRange", "TemperatureStep"),
    "maker_site.records.quantities.duration": ("Duration", "DurationRange"),
    "maker_site.records.quantities.length": ("Length",),
    "maker_site.records.quantities.pressure": ("Pressure",),
    "maker_site.workings.finding.told": ("Teller", "Told"),
    "maker_site.workings.evidence": ("Setting",),
    "maker_site.workings.calibration": ("Footing",),
    "fractions": ("Fraction",),
    "datetime": ("date",),
}
"""What a kept value may be made of, by module: nothing that does anything."""


class NotKept(Exception):
    """What is kept is missing, of other records, or damaged."""


MAKE_AGAIN: Final = (
    NotKept,
    sqlite3.Error,
    ValueError,
    TypeError,
    LookupError,
    EOFError,
    OSError,
    pickle.PickleError,
    zlib.error,
)
"""What reading a kept file may raise that says no more than that it can't be used."""


class Kept:
    """A base, and the patch that goes before it."""

    def __init__(self, base: sqlite3.Connection, patch: sqlite3.Connection | None) -> None:
        self.base, self.patch = base, patch

    def close(self) -> None:
        """Let go of the files."""
        self.base.close()
        if self.patch is not None:
            self.patch.close()

    def find(self, kind: str, name: Name = 0) -> bytes | None:
        """Return a part as it is now; None where there is none."""
        found = _one(self.patch, kind, name) if self.patch is not None else None
        return (_one(self.base, kind, name) if found is None else found) or None

    def part(self, kind: str, name: Name = 0) -> bytes:
        """Return a part as it is now; raises NotKept."""
        return _there(self.find(kind, name))

    def based(self, kind: str, name: Name = 0) -> bytes:
        """Return a part as it was when all was made; raises NotKept."""
        return _there(_one(self.base, kind, name))

    def patched(self) -> dict[tuple[str, Name], bytes]:
        """Return all parts of the patch."""
        if self.patch is None:
            return {}
        found = self.patch.execute("SELECT kind, name, data, sum FROM kept")
        return {(kind, name): whole(data, check) for kind, name, data, check in found}


def whole(data: bytes, check: int) -> bytes:
    """Return data that agrees with its checksum; raises NotKept."""
    if not isinstance(data, bytes) or zlib.crc32(data) != check:
        raise NotKept
    return data


def _one(file: sqlite3.Connection, kind: str, name: Name) -> bytes | None:
    found = file.execute("SELECT data, sum FROM kept WHERE kind = ? AND name = ?", (kind, name)).fetchone()
    return None if found is None else whole(*found)


def _there(found: bytes | None) -> bytes:
    if found is None:
        raise NotKept
    return found


def opened(base: Path, patch: Path, program: str) -> Kept:
    """Return what was kept by a program; raises one of MAKE_AGAIN."""
    file = _open(base)
    try:
        if _one(file, "form", FORM) != program.encode():
            raise NotKept
        return Kept(file, _fitting(patch, _there(_one(file, "mark", 0))))
    except BaseException:
        file.close()
        raise


def _fitting(patch: Path, mark: bytes) -> sqlite3.Connection | None:
    with contextlib.suppress(*MAKE_AGAIN):
        file = _open(patch)
        try:
            if _one(file, "mark", 0) == mark:
                return file
        except BaseException:
            file.close()
            raise
        file.close()
    return None


def _open(file: Path) -> sqlite3.Connection:
    if not file.is_file():
        raise NotKept
    return sqlite3.connect(f"{file.resolve().as_uri()}?mode=ro&immutable=1", uri=True)


def at_hand(parts: Callable[[], Iterable[tuple[str, Name, bytes]]]) -> sqlite3.Connection:
    """Return parts as a file without a name, gone once it is closed; in memory where no disk has room for it.

    `parts` yields them, and does so anew where it is called again.
    """
    try:
        return _filled("", parts())
    except sqlite3.OperationalError:
        return _filled(":memory:", parts())


def _filled(file: str, parts: Iterable[tuple[str, Name, bytes]]) -> sqlite3.Connection:
    made = sqlite3.connect(file)
    try:
        made.execute(_TABLE)
        with made:
            made.executemany(
                "INSERT INTO kept VALUES (?, ?, ?, ?)",
                ((kind, name, data, zlib.crc32(data)) for kind, name, data in parts),
            )
    except BaseException:
        made.close()
        raise
    return made


def keep(made: sqlite3.Connection, file: Path, content: Path) -> None:
    """Put parts on disk whole or not at all; what can't be kept is worked out again next time."""
    if is_among_records(file, content):
        return
    with contextlib.suppress(OSError, sqlite3.Error):
        file.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        _sweep(file.parent)
        handle, name = tempfile.mkstemp(prefix=".settings-", suffix=".part", dir=file.parent)
        os.close(handle)
        part = Path(name)
        try:
            with contextlib.closing(sqlite3.connect(part)) as out:
                out.execute("PRAGMA journal_mode = OFF")  # a part that is not whole is thrown away
                made.backup(out)
            part.replace(file)
        finally:
            part.unlink(missing_ok=True)


def _sweep(folder: Path) -> None:
    """Remove what runs that were killed half-way left behind, a day later."""
    for left in folder.glob(".settings-*.part"):
        if time.time() - left.stat().st_mtime > _A_DAY:
            left.unlink(missing_ok=True)


def said(value: object) -> bytes:
    """Return a value of plain kinds as bytes."""
    return pickle.dumps(value, pickle.HIGHEST_PROTOCOL)


def understood(data: bytes) -> Any:
    """Return what `said` was given."""
    return _Values(io.BytesIO(data)).load()


class _Values(pickle.Unpickler):
    """Reads plain values, and refuses to call anything else."""

    def find_class(self, module: str, name: str) -> Any:
        """Return a kind of value; raises UnpicklingError."""
        if name in _PLAIN.get(module, ()):
            return super().find_class(module, name)
        raise pickle.UnpicklingError(f"{module}.{name} is no kind of value")
