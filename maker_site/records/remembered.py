"""What was read before, so that a file that says what it said is not understood twice.

A record is found again by a digest of all that it was read from: its text, what lies beside it, the shop's units. The
same text gives the very same value, so that who compares two readings sees at once what stayed. Where it is told which
paths were touched since the last reading, the others are not even looked at.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Collection, Hashable, Iterable, Iterator
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, TypeVar, cast

if TYPE_CHECKING:
    from maker_site.records.problems import Problem

V = TypeVar("V")


@dataclass(slots=True)
class Unit:
    """What was read of one place."""

    made_of: object
    value: object
    problems: tuple[Problem, ...]
    watched: Collection[str]
    """Further paths that it looked at."""
    is_linked: bool
    """It is reached through a link, so nobody is told when it is touched."""
    digests: dict[str, str] = field(default_factory=dict)
    """Of all that its values were read from, by their places."""
    parts: dict[str, object] = field(default_factory=dict)
    """Its records by their digests."""


class Remembered:
    """Values of one reading after another."""

    def __init__(self) -> None:
        self.is_linked = False
        """Something that was just read is reached through a link, so nobody is told when it is touched."""
        self.units: dict[str, Unit] = {}
        """What was read of each place, by the place and the use that is made of it."""
        self.read: set[str] = set()
        """The units that were read anew; the others stand as they were."""
        self._rows: dict[str, dict[str, str]] = {}
        """The digests of those units that were let go of which have several: files of the log."""
        self._memos: dict[Hashable, tuple[object, object]] = {}
        self._before: dict[str, object] = {}
        self._now: dict[str, object] = {}
        self._digests: dict[str, str] = {}
        self._touched: frozenset[str] | None = None
        self._around: frozenset[str] = frozenset()

    def turn(self, touched: Iterable[str] | None = None) -> None:
        """Begin a new reading.

        `touched` are all paths, from the content folder, at which anything was added, changed or removed since the
        last one began; None where that is not known.
        """
        self._touched = None if touched is None else frozenset(touched)
        self._around = frozenset(above for path in self._touched or () for above in _with_those_above(path))

    def stand_by(self, units: dict[str, Unit], touched: frozenset[str]) -> None:
        """Take units for those of an earlier reading, since which these paths were touched."""
        self.units = units
        self.turn(touched)

    def forget(self) -> None:
        """Let go of all but the digests of rows: for who reads no more."""
        self._rows = {name: unit.digests for name, unit in self.units.items() if len(unit.digests) > 1}
        self.units, self._memos = {}, {}

    def digest_of_row(self, row_id: str) -> str | None:
        """Return a digest of all that a row of the log was read from; None where it was not read."""
        name = f"{row_id.rpartition(':')[0]}#"
        unit = self.units.get(name)
        return (unit.digests if unit else self._rows.get(name, {})).get(row_id)

    def is_quiet(self, place: str, watched: Collection[str] = ()) -> bool:
        """Tell whether it is known that nothing was touched at or below a place, or at any of some paths."""
        if self._touched is None or place in self._around:
            return False
        if not self._touched:
            return True
        paths = (above for path in (place, *watched) for above in _with_those_above(path))
        return self._touched.isdisjoint(paths)

    def unit(
        self,
        place: str,
        made_of: object,
        problems: list[Problem],
        read: Callable[[], V],
        *,
        use: str = "",
        watched: Callable[[V], Collection[str]] = lambda _: (),
        lists: bool = False,
    ) -> V:
        """Return what is read of a place, and add its problems, which are the last ones of `problems` then.

        `made_of` is what else it depends on. `lists` says that it depends on the names in a folder, not on what is in
        the folders of those names; `use` tells several uses of one place apart.
        """
        name = f"{place}#{use}"
        known = self.units.get(name)
        if known is not None and known.made_of == made_of:
            quiet = self._is_list_quiet(place) if lists else self.is_quiet(place, known.watched)
            if quiet and not known.is_linked:
                problems += known.problems
                return cast("V", known.value)
        outer, linked, begun = (self._before, self._now, self._digests), self.is_linked, len(problems)
        self._before, self._now, self._digests, self.is_linked = known.parts if known else {}, {}, {}, False
        try:
            value = read()
            said, seen = tuple(problems[begun:]), watched(value)
            self.units[name] = Unit(made_of, value, said, seen, self.is_linked, self._digests, self._now)
            self.read.add(name)
        finally:
            (self._before, self._now, self._digests), self.is_linked = outer, linked
        return value

    def value(self, name: str, made_of: tuple[object, ...], make: Callable[[], V]) -> V:
        """Return the value at a place, as it was made before of the same, or made now."""
        digest = self._digests[name] = digest_of(name, made_of)
        found = self._before[digest] if digest in self._before else make()
        self._now[digest] = found
        return cast("V", found)

    def memo(self, name: Hashable, made_of: object, make: Callable[[], V]) -> V:
        """Return what was made last under a name, where it was made of the same."""
        known = self._memos.get(name)
        if known is None or known[0] != made_of:
            known = self._memos[name] = (made_of, make())
        return cast("V", known[1])

    def _is_list_quiet(self, place: str) -> bool:
        if self._touched is None or place in self._touched:
            return False
        inside = [path[len(place) + 1 :] for path in self._touched if path.startswith(f"{place}/")]
        return all("/" in path and f"{place}/{path.partition('/')[0]}#" in self.units for path in inside)


class Forgetful(Remembered):
    """Remembers nothing: for who reads once."""

    def unit(
        self,
        place: str,
        made_of: object,
        problems: list[Problem],
        read: Callable[[], V],
        *,
        use: str = "",
        watched: Callable[[V], Collection[str]] = lambda _: (),
        lists: bool = False,
    ) -> V:
        """Return what is read, now."""
        return read()

    def value(self, name: str, made_of: tuple[object, ...], make: Callable[[], V]) -> V:
        """Return the value, made now."""
        return make()

    def memo(self, name: Hashable, made_of: object, make: Callable[[], V]) -> V:
        """Return the value, made now."""
        return make()


def _with_those_above(path: str) -> Iterator[str]:
    while path:
        yield path
        path = path.rpartition("/")[0]


def digest_of(*parts: object) -> str:
    """Return a short text that differs where any of some plain values does."""
    return hashlib.blake2b(repr(parts).encode("utf-8", "surrogateescape"), digest_size=12).hexdigest()
