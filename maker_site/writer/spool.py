"""Bytes that wait to be kept, out of memory: a large make has tens of megabytes of them."""

from __future__ import annotations

import contextlib
import os
import tempfile
from pathlib import Path
from typing import Final

_CAN_SPOOL: Final = hasattr(os, "pread")
"""Whether a file is read and written at a place, so that a fork can read what its parent has put there."""


class _File:
    """A file without a name, which is gone when nobody holds it any more."""

    def __init__(self) -> None:
        self.number, path = tempfile.mkstemp()
        Path(path).unlink()

    def __del__(self) -> None:
        """Close it; that it never came to be opened is no matter."""
        with contextlib.suppress(AttributeError, OSError):
            os.close(self.number)


class Spooled:
    """Bytes that were put away."""

    __slots__ = ("_at", "_file", "_held")

    def __init__(self, held: int | bytes, at: int = 0, file: _File | None = None) -> None:
        """`held` are the bytes themselves; in a file, how many there are from `at` on."""
        self._held, self._at, self._file = held, at, file

    def data(self) -> bytes:
        """Return the bytes."""
        if isinstance(self._held, bytes):
            return self._held
        assert self._file is not None
        return os.pread(self._file.number, self._held, self._at)


class Spool:
    """Where bytes are put away."""

    def __init__(self) -> None:
        self._file: _File | None = None
        self._end = 0

    def put(self, data: bytes) -> Spooled:
        """Put bytes away; where there is no room for them they stay in memory."""
        if not _CAN_SPOOL:
            return Spooled(data)
        try:
            if self._file is None:
                self._file = _File()
            if os.pwrite(self._file.number, data, self._end) < len(data):
                return Spooled(data)
        except OSError:
            return Spooled(data)
        self._end += len(data)
        return Spooled(len(data), self._end - len(data), self._file)
