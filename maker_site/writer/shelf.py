"""What was read of the records, kept on disk, so that who begins anew reads only what was touched since.

A shelf can be thrown away at any time, which costs time only. It goes by what was seen of each file when it was read
(`look.stamps`) and by the program that read it. It holds pieces, each the units (`records.remembered`) of some places;
its head names each piece with a checksum, so a piece that another run has put there since is not taken for ours.
"""

from __future__ import annotations

import contextlib
import hashlib
import marshal
import sqlite3
import zlib
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Final

from maker_site.records.remembered import Remembered, Unit
from maker_site.records.uncollected import uncollected
from maker_site.writer.cache_folder import is_among_records, kept_file
from maker_site.writer.look import Look, look_at_records, stamps
from maker_site.writer.pickles import DAMAGED, put_in, taken_out
from maker_site.writer.sameness import program

_FORM: Final = 1
"""Of what is kept; goes up when it changes its shape."""
_PIECES: Final = 256
_LOG: Final = "press-log/"
_ABOVE: Final = ("articles", "projects", "blanks", "presses", "supplies", "press-log")
"""Places that are read as a whole, or listed."""
_TABLE: Final = "CREATE TABLE IF NOT EXISTS shelf (name TEXT PRIMARY KEY, data BLOB) WITHOUT ROWID"
_HEAD: Final = "head"
_NOT_FIRM: Final = ("", False)
"""Stands for what was seen where it can't be told from it that something has changed."""
_DAMAGED: Final = (*DAMAGED, sqlite3.Error)
"""What reading a shelf may raise that says no more than that it can't be used."""


class Shelf:
    """The units of one content folder as the last reading left them."""

    def __init__(self, file: Path, seen: Look) -> None:
        """`file` is an SQLite file, which may hold other tables too; `seen` was looked at before the reading."""
        self._file = file
        self._now = stamps(seen)
        self._sums: dict[str, int] = {}
        self.mark = ""
        """Differs between any two states of the shelf; empty where there is none, or not the whole of one."""
        self.remembered = Remembered()
        """What was read before, told what was touched since: for `load`."""
        self.earlier = Remembered()
        """The same, told that nothing was touched: who reads with it understands what was understood then."""
        self._restore()

    def see(self, touched: Iterable[str]) -> None:
        """Rely no more on what was seen at some paths from the content folder, which are about to be read."""
        for path in touched:
            self._now[path] = _NOT_FIRM
            for above in Path(path).parents[:-1]:
                self._now.setdefault(above.as_posix(), _NOT_FIRM)

    def look(self, seen: Look) -> None:
        """Take a new look at all, before it is read."""
        self._now = stamps(seen)

    def keep(self) -> None:
        """Put on disk what was read anew; where that can't be done only time is lost."""
        units = self.remembered.units
        changed = {_piece(name) for name in self.remembered.read}
        for name in [name for name in units if not self._is_there(name)]:
            changed.add(_piece(name))
            del units[name]
        if not changed and self.mark:
            return
        self.remembered.read.clear()
        pieces: dict[str, dict[str, Unit]] = {piece: {} for piece in changed}
        for name, unit in units.items():
            if (piece := _piece(name)) in pieces:
                pieces[piece][name] = unit
        with contextlib.suppress(OSError, sqlite3.Error):
            try:
                self._write(self._rows(pieces))
            except sqlite3.OperationalError:
                raise  # locked, or full: what is there is whole
            except sqlite3.DatabaseError:
                self._file.unlink(missing_ok=True)  # damaged, so nothing was read from it and all is written anew
                self._write(self._rows(pieces))

    def _rows(self, pieces: Mapping[str, Mapping[str, Unit]]) -> Iterator[tuple[str, bytes]]:
        """Yield what is to be written, one piece after the other, so that not all of it is held at once."""
        for piece, held in pieces.items():
            data = put_in(held)
            self._sums[piece] = zlib.crc32(data)
            yield piece, data
        known = {path: said if firm else None for path, (said, firm) in self._now.items()}
        head = _signed(marshal.dumps((_form(), known, self._sums)))
        self.mark = _mark(head)
        yield _HEAD, head

    def _write(self, pieces: Iterable[tuple[str, bytes]]) -> None:
        with contextlib.closing(sqlite3.connect(self._file)) as file, file:
            file.execute(_TABLE)
            file.executemany("INSERT OR REPLACE INTO shelf VALUES (?, ?)", pieces)

    def _is_there(self, name: str) -> bool:
        place = name.partition("#")[0]
        return place in self._now or place in _ABOVE

    @uncollected()
    def _restore(self) -> None:
        try:
            with contextlib.closing(sqlite3.connect(f"{self._file.resolve().as_uri()}?mode=ro", uri=True)) as file:
                ((head,),) = file.execute("SELECT data FROM shelf WHERE name = ?", (_HEAD,))
                form, known, sums = marshal.loads(_unsigned(head))
                if form != _form():
                    return
                units: dict[str, Unit] = {}
                for piece, data in file.execute("SELECT name, data FROM shelf WHERE name <> ?", (_HEAD,)):
                    if zlib.crc32(data) == sums.get(piece):
                        units |= taken_out(data)
                        self._sums[piece] = sums[piece]
            touched = frozenset(_touched(known, self._now))
        except _DAMAGED:
            self._sums.clear()  # begun anew
        else:
            self.mark = _mark(head) if self._sums == sums else ""
            self.earlier.stand_by({**units}, frozenset())
            self.remembered.stand_by(units, touched)


@contextlib.contextmanager
def shelved(content: Path, cache: Path | None = None) -> Iterator[Remembered]:
    """Give what was read of a content folder before, for `load`, and keep afterwards what was read anew.

    `cache` is the folder of kept files, the user's own where None.
    """
    file = kept_file("records", content, cache)
    shelf = Shelf(file, look_at_records(str(content)))
    yield shelf.remembered
    if not is_among_records(file, content):
        with contextlib.suppress(OSError):
            file.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        shelf.keep()


def _touched(before: Mapping[str, str | None], now: Mapping[str, tuple[str, bool]]) -> Iterator[str]:
    """Yield every path at which something was added, changed or removed, or may have been."""
    for path in before.keys() | now.keys():
        was, (said, _) = before.get(path), now.get(path, (None, False))
        if was is None or was != said:
            yield path.encode("utf-8", "replace").decode()  # as records are told of it


def _piece(name: str) -> str:
    """Return the piece that a unit is in: what is read of one record is together, a file of the log is alone."""
    place = "/".join(name.partition("#")[0].split("/")[:2])
    return place if place.startswith(_LOG) else str(zlib.crc32(place.encode("utf-8", "surrogatepass")) % _PIECES)


def _form() -> str:
    return f"{_FORM} {program()}"


def _mark(head: bytes) -> str:
    return hashlib.blake2b(head, digest_size=12).hexdigest()


def _signed(data: bytes) -> bytes:
    return zlib.crc32(data).to_bytes(4, "big") + data


def _unsigned(data: bytes) -> bytes:
    if zlib.crc32(data[4:]).to_bytes(4, "big") != data[:4]:
        raise ValueError("damaged")
    return data[4:]
