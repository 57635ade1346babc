"""`maker-site find`: past settings in the terminal.

Imports nothing that is slow to import while the answers are kept; `tests/cli/test_find.py` guards that.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

import click

from maker_site.cli.exits import PROBLEMS
from maker_site.cli.figures import Facts, clock, degrees, hazards, share
from maker_site.frozen import frozen
from maker_site.workings.finding.matching import Matches
from maker_site.workings.finding.query import read
from maker_site.writer.answers import Answers, RecordsBroken, ask

if TYPE_CHECKING:
    from rich.table import Table

T = TypeVar("T")
SHOWN = 10
"""Rows of the table; the best match is among them or more words are needed."""
_LISTED = 2
"""Projects named in a row."""
_SOURCES = {"sheet": "supplier’s sheet", "common": "common practice"}
COLUMNS = (
    *("blank", "substrate", "method", "press", "temperature_c", "dial_c", "time_s", "pressure", "face"),
    *("pressed", "good", "low", "high", "source", "last_used", "projects"),
)
"""Of a plain row, in this order; the keys of a row of JSON."""


@frozen
class Found:
    """What came of one question."""

    matches: Matches
    rows: tuple[str, ...]
    """JSON texts, of as many rows as were wanted."""
    likes: Mapping[int, str]
    unit: str


def run(content: Path, words: Sequence[str], *, as_json: bool, plain: bool) -> None:
    """Print the settings that the words find; exits 1 where the records have errors."""
    terms = read(" ".join(words))
    if not terms:
        raise click.UsageError("say what to find: a material, a blank, a supplier, a project, a figure like 200 C")

    def question(answers: Answers) -> Found:
        matches = answers.match(terms)
        wanted = matches.rows if as_json or plain else matches.rows[:SHOWN]
        return Found(matches, tuple(answers.rows(wanted)), answers.likes(), answers.shop["temperature"])

    found = telling_problems(lambda: ask(content, question))
    if as_json:
        lines = ",\n  ".join(found.rows)
        click.echo(f'{{"settings": [\n  {lines}\n]}}' if lines else '{"settings": []}')
    elif plain:
        click.echo("".join(f"{_plain(json.loads(row))}\n" for row in found.rows), nl=False)
    for sentence in _sentences(found, several=len(terms) > 1):
        click.echo(sentence.strip(), err=as_json or plain)
    if found.rows and not (as_json or plain):
        _show(found)


def telling_problems(answer: Callable[[], T]) -> T:
    """Return an answer from the records; tells their problems and exits 1 where they have errors."""
    try:
        return answer()
    except RecordsBroken as broken:
        from maker_site.cli.problems import counted, tell_problems

        tell_problems(broken.problems)
        click.secho(f"{counted(broken.problems).capitalize()}; mend the errors and ask again.", fg="red", err=True)
        raise SystemExit(PROBLEMS) from broken


def _plain(facts: Facts) -> str:
    """Return a row for scripts: values parted by tabs, nothing where nothing is known, projects by spaces."""
    cells = (" ".join(facts[name]) if name == "projects" else facts[name] for name in COLUMNS)
    return "\t".join("" if cell is None else " ".join(str(cell).split()) for cell in cells)


def _sentences(found: Found, *, several: bool) -> Iterator[str]:
    """Yield what is to be said beside the rows: words read otherwise, words not known, nothing found."""
    matches = found.matches
    for word, meant in matches.read_as.items():
        yield f"“{word}” read as {listed(meant)}."
    for word, near in matches.unknown.items():
        nearest = f"; the nearest known: {listed(near)}" if near else ", nor anything like it"
        yield f"Nothing found for “{word}”{nearest}."
    if not matches.rows and not matches.unknown:
        yield "Nothing found. " + ("No one setting has all of these; ask with fewer words." if several else "")


def listed(words: Sequence[str]) -> str:
    """Return words as ``slate, plate or late``."""
    *most, last = words
    return f"{', '.join(most)} or {last}" if most else last


def _show(found: Found) -> None:
    """Print the table, and under it what can burn."""
    from rich.console import Console

    rows: list[Facts] = [json.loads(row) for row in found.rows]
    console = Console(highlight=False)
    console.print(_table(rows, found))
    hidden = len(found.matches.rows) - len(rows)
    if hidden > 0:
        console.print(f"{hidden} more; add a word, or list all with --plain.", style="dim")
    console.print(hazards(dict.fromkeys(str(row["substrate"]) for row in rows)), style="yellow")


def _table(rows: Sequence[Facts], found: Found) -> Table:
    """Return the rows laid out for 80 columns, two or three lines each; what was typed is never read as markup."""
    from rich import box
    from rich.table import Table
    from rich.text import Text

    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, padding=(0, 1, 0, 0), leading=1)
    table.add_column("blank, press, projects", overflow="fold")
    for head, least in (("set", 13), ("time", 6), ("came out", 14), ("last", 10)):
        table.add_column(head, min_width=least)
    for number, facts in zip(found.matches.rows, rows, strict=False):
        cells = (
            Text(facts["blank"], style="bold").append(_manner(facts), style="not bold"),
            Text(_heat(facts, found.unit)),
            Text("\n".join(clock(facts["time_s"])) if facts["time_s"] is not None else "not given"),
            Text(_outcome(facts, found.likes.get(number))),
            Text(facts["last_used"] or ""),
        )
        table.add_row(*cells)
    return table


def _manner(facts: Facts) -> str:
    """Return the lines under a blank: press, pressure and face; the method where it is not the usual; projects."""
    method = facts["method"] if facts["method"] != "sublimation" else None
    how = ", ".join(each for each in (facts["press"] or "any press", facts["pressure"], facts["face"], method) if each)
    projects = facts["projects"]
    more = f", {len(projects) - _LISTED} more" if len(projects) > _LISTED else ""
    used = f"\nfor {', '.join(projects[:_LISTED])}{more}" if projects else ""
    return f"\n{how}{used}"


def _heat(facts: Facts, unit: str) -> str:
    true, dial = facts["temperature_c"], facts["dial_c"]
    if true is None:
        return "not given"
    if dial is None:
        return "\n".join((*degrees(true, unit), "at the platen"))
    first, second = degrees(dial, unit)
    platen = degrees(true, unit)
    return "\n".join((first, second) if platen[0] == first else (first, second, f"platen {platen[0]}"))


def _outcome(facts: Facts, like: str | None) -> str:
    counted = f"{facts['good']} of {facts['pressed']}"
    sure = share(facts)
    if facts["source"] == "own":
        return f"{counted} good\n{sure}"
    if like:
        return f"test one: {counted} on {like}\n{sure}"
    return f"test one: {_SOURCES[facts['source']]}"
