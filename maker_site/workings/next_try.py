"""What to change next after a spoiled piece: one thing, with its reason."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from maker_site.frozen import frozen
from maker_site.language import say, say_n
from maker_site.records import Pressing
from maker_site.records.words import UNCLEAR_DEFECTS
from maker_site.workings.faults import FAULTS, TOO_LITTLE, TOO_MUCH, Direction


@frozen
class NextTry:
    """One change."""

    change: str
    """What to do, without a full stop."""
    reason: str
    """Why, as one sentence."""
    defect: str
    """The defect it answers, said; empty where none is noted; two joined by “and” where they contradict each other."""
    direction: Direction | None
    """Which way temperature or time moves; None where neither does."""


def next_try(pressings: Sequence[Pressing]) -> NextTry | None:
    """Return the one change to make first, or None where nothing was spoiled and no defect noted."""
    return next(iter(next_tries(pressings)), None)


def next_tries(pressings: Sequence[Pressing]) -> tuple[NextTry, ...]:
    """Return the changes in the order to try them, one at a time, from the pressings of one setting.

    The defect noted in most pressings is answered first, of equally many the one noted last. Defects that call for
    more and for less heat together are answered by measuring, and by no change of a figure: with both about, either
    change may be the wrong one. Spoiled pieces without a defect are answered by asking for its word.
    """
    noted = _most_frequent_first(pressings)
    if not noted:
        spoiled = sum(row.pressed - row.good for row in pressings)
        return (_unwritten(spoiled),) if spoiled else ()
    contradiction = _contradiction(noted)
    tries = [contradiction] if contradiction else []
    for defect, count in noted:
        if defect in UNCLEAR_DEFECTS:
            tries.append(_unclear(defect))
            continue
        fault = FAULTS[defect]
        word = say(defect)
        reason = say_n(
            "“{defect}” was noted in one pressing; likely {causes}.",
            "“{defect}” was noted in {n} pressings; likely {causes}.",
            count,
            defect=word,
            causes=say(fault.causes),
        )
        tries += [
            NextTry(say(change.words), reason, word, change.direction)
            for change in fault.changes
            if not (contradiction and change.direction)
        ]
    return tuple(tries)


def latest_spoiled(pressings: Sequence[Pressing]) -> Pressing | None:
    """Return the latest pressing with a spoiled piece, of pressings oldest first."""
    return next((row for row in reversed(pressings) if row.good < row.pressed), None)


def _most_frequent_first(pressings: Sequence[Pressing]) -> list[tuple[str, int]]:
    """Return each defect and in how many pressings it was noted."""
    seen: Counter[str] = Counter()
    last: dict[str, int] = {}
    for number, row in enumerate(pressings):
        for place, defect in enumerate(dict.fromkeys(row.defects)):
            seen[defect] += 1
            last[defect] = -number * len(FAULTS) + place
    return sorted(seen.items(), key=lambda each: (-each[1], last[each[0]]))


def _contradiction(noted: Sequence[tuple[str, int]]) -> NextTry | None:
    little = next((defect for defect, _ in noted if defect in TOO_LITTLE), None)
    much = next((defect for defect, _ in noted if defect in TOO_MUCH), None)
    if little is None or much is None:
        return None
    return NextTry(
        say(
            "Measure before changing a figure: the platen with a contact probe, at its centre and corners, "
            "and the timer against a watch"
        ),
        say(
            "“{little}” speaks for too little heat and “{much}” for too much; "
            "at one setting that points to a platen that is uneven or not what its dial says.",
            little=say(little),
            much=say(much),
        ),
        say("{one} and {other}", one=say(little), other=say(much)),
        None,
    )


def _unwritten(spoiled: int) -> NextTry:
    return NextTry(
        say("Write the defect in the log before the next piece"),
        say_n(
            "One piece is spoiled and no defect is noted, so there is nothing to go by.",
            "{n} pieces are spoiled and no defect is noted, so there is nothing to go by.",
            spoiled,
        ),
        "",
        None,
    )


def _unclear(defect: str) -> NextTry:
    return NextTry(
        say("Write in the log which fault it was"),
        say(
            "“{defect}” hides several: {which}; each has another cure.",
            defect=say(defect),
            which=say(UNCLEAR_DEFECTS[defect]),
        ),
        say(defect),
        None,
    )
