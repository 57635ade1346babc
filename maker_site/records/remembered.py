"""What was read before, so that a file that says what it said is not understood twice.

A record is found again by a digest of all that it was read from: its text, what lies beside it, the shop's units. The
same text gives the very same value, so that who compares two readings sees at once what stayed.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable
from typing import TypeVar, cast

V = TypeVar("V")


class Remembered:
    """Values of one reading after another; what a reading did not ask for is forgotten with the next."""

    def __init__(self) -> None:
        self._before: dict[str, object] = {}
        self._now: dict[str, object] = {}
        self.digests: dict[str, str] = {}
        """Of all that each value was read from, by its place: a file, with the line for a row of the log."""

    def turn(self) -> None:
        """Begin a new reading."""
        self._before, self._now, self.digests = self._now, {}, {}

    def value(self, name: str, made_of: tuple[object, ...], make: Callable[[], V]) -> V:
        """Return the value at a place, as it was made before of the same, or made now."""
        digest = self.digests[name] = digest_of(name, made_of)
        found = self._before[digest] if digest in self._before else make()
        self._now[digest] = found
        return cast("V", found)


class Forgetful(Remembered):
    """Remembers nothing: for who reads once."""

    def value(self, name: str, made_of: tuple[object, ...], make: Callable[[], V]) -> V:
        """Return the value, made now."""
        return make()


def digest_of(*parts: object) -> str:
    """Return a short text that differs where any of some plain values does."""
    return hashlib.blake2b(repr(parts).encode("utf-8", "surrogateescape"), digest_size=12).hexdigest()
