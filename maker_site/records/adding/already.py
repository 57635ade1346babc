"""Which rows of another table are in the log already. Pure.

A row is there already when one of the log's rows is equal in all that it gives. Each of the log's rows answers for one
row only, so two equal rows of a table are two pressings, and bringing in the same table again adds nothing.
Inner module of the records room.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence

from maker_site.records.adding.log_text import HEADING
from maker_site.records.meanings import key_of
from maker_site.records.pressing import Pressing
from maker_site.records.read_log import NEEDED

_NAMES = tuple(key_of(column).replace(" ", "_") for column in HEADING)
_NEEDED = tuple(key_of(column).replace(" ", "_") for column in NEEDED)


def already_there(rows: Sequence[Pressing], log: Sequence[Pressing]) -> list[bool]:
    """Tell for each row whether it is in the log already."""
    free: dict[tuple[object, ...], list[Pressing]] = defaultdict(list)
    for row in log:
        free[_needed(row)].append(row)
    found = [False] * len(rows)
    for whole in (True, False):  # rows that are equal altogether answer first, then those that say more
        for index, row in enumerate(rows):
            if found[index]:
                continue
            there = free.get(_needed(row), [])
            given = _given(row)
            match = next((each for each in there if _holds(each, given, whole=whole)), None)
            if match is not None:
                there[:] = [each for each in there if each is not match]
                found[index] = True
    return found


def _needed(row: Pressing) -> tuple[object, ...]:
    return tuple(getattr(row, name) for name in _NEEDED)


def _given(row: Pressing) -> dict[str, object]:
    return {name: value for name in _NAMES if (value := getattr(row, name)) not in (None, ())}


def _holds(row: Pressing, given: dict[str, object], *, whole: bool) -> bool:
    values = _given(row)
    return values == given if whole else all(values.get(name) == value for name, value in given.items())
