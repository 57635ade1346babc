"""The cells of a row to be added: what is wrong with them, and what was used last. Pure, but for photos looked for.

Inner module of the records room.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from maker_site.records.adding.bench import Bench
from maker_site.records.adding.log_text import HEADING, Cells, table
from maker_site.records.meanings import MOST_PRESSED, key_of
from maker_site.records.pressing import Pressing
from maker_site.records.problems import Problem, quoted
from maker_site.records.read_log import read_log

_STAND_IN: Final = {
    "date": "2000-01-01", "blank": "-", "press": "-", "temperature": "20 C", "time": "1 s",
    "pressed": str(MOST_PRESSED), "good": "0",
}  # fmt: skip
"""For needed answers that are still to come, so that the others can be read; never written."""


def problems_in_answers(cells: Cells, bench: Bench) -> list[Problem]:
    """Return what is wrong with the answers given so far; those still to come are not called missing."""
    broken = [
        Problem("", 0, column, f"{quoted(cell)} has a line break or a control mark in it; write one line")
        for column, cell in cells.items()
        if not cell.isprintable()
    ]
    cells = {column: cell for column, cell in cells.items() if cell.isprintable()}
    row, problems = _read({**_STAND_IN, **cells}, bench)
    if row is None:  # the other answers are looked at all the same
        wrong = {column_of(problem) for problem in problems}
        row, _ = _read({**_STAND_IN, **{column: cell for column, cell in cells.items() if column not in wrong}}, bench)
        problems += [each for each in bench.cross_problems([row] if row else []) if column_of(each) not in wrong]
    else:
        problems += bench.cross_problems([row])
    return broken + [problem for problem in problems if column_of(problem) in cells]


def pressing_of(cells: Cells, bench: Bench) -> Pressing | None:
    """Return the row that these cells make as the log's reader will read it; None where it can't."""
    return _read(cells, bench)[0]


def _read(cells: Cells, bench: Bench) -> tuple[Pressing | None, list[Problem]]:
    text = "".join(table([HEADING, [cells.get(column, "") for column in HEADING]]))
    found, problems = read_log(text, "", bench.units)
    return (found[0] if found else None), problems


def column_of(problem: Problem) -> str:
    """Return the column that a problem of a row is in; empty where it is in none."""
    keys = {key_of(column): column for column in HEADING}
    words = problem.field.split(" ")
    return keys.get(problem.field) or keys.get(" ".join(words[:-1])) or ""


def last_used(pressings: Sequence[Pressing], blank: str, project: str | None) -> dict[str, str]:
    """Return the cells of the last pressing on a blank, as typed; one for the same project goes first.

    `pressings` are oldest first. Empty where the blank was never pressed.
    """
    on_blank = [row for row in pressings if row.blank == blank]
    of_project = [row for row in on_blank if project and row.project == project]
    last = (of_project or on_blank)[-1:]
    return cells_of(last[0]) if last else {}


def cells_of(row: Pressing) -> dict[str, str]:
    """Return a row's cells as the maker typed them (words as the records room writes them)."""
    values: Mapping[str, object] = {column: getattr(row, key_of(column).replace(" ", "_")) for column in HEADING}
    return {column: _typed(column, value) for column, value in values.items() if value not in (None, ())}


def _typed(column: str, value: object) -> str:
    if isinstance(value, tuple):
        return {"stack": " > ", "defects": "; "}[column].join(value)
    return getattr(value, "typed", "") or str(value)
