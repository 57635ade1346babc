"""`maker-site import FILE.csv`: old notebook rows out of a spreadsheet, looked at before anything is written."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import NoReturn

import click

from maker_site.cli import asking
from maker_site.cli.add import tell_added
from maker_site.cli.exits import PROBLEMS
from maker_site.frozen import frozen
from maker_site.records.adding import (
    NAMED,
    Bench,
    Choices,
    Meaning,
    NotAdded,
    OldTable,
    Order,
    Read,
    add_rows,
    already_there,
    clashes,
    folded,
    guess,
    known_names,
    meaning,
    old_table,
    order_of,
    read_bench,
    read_old_rows,
    settled,
    unclear,
    unnamed,
)
from maker_site.records.adding.old_rows import Refused, words_for
from maker_site.records.content_folder import ContentFolder, as_id
from maker_site.records.problems import NotReadable, Problem, Severity, nearest, quoted
from maker_site.records.read_log import NotATableError


@frozen
class Said:
    """What the maker said in the command about how the table is to be read."""

    meanings: Mapping[str, str]
    """Their heading and our column."""
    names: Mapping[str, Mapping[str, str]]
    """For ``blank``, ``press`` and ``project``: their word and our id."""
    dates: str | None
    yes: bool
    """Take the guesses as they are."""


def run(content: Path, file: Path, said: Said, *, write: bool) -> bool:
    """Show how the table is read and what would be added; with `write` add it. Return whether a row was refused."""
    old = _table(file)
    bench = read_bench(content)
    may_ask = asking.possible() and not said.yes
    with asking.nothing_written_when_stopped():
        meanings = _meanings(old, said, may_ask=may_ask)
        _tell_meanings(old, meanings, bench)
        order = _order(old, meanings, said, may_ask=may_ask)
        choices = Choices(meanings, order, _names(old, meanings, said, bench))
        _tell_names(old, choices, bench)
        if write and not said.yes and not may_ask and _guessed(old, choices, said):
            raise click.UsageError("headings or names were guessed, as shown above; say --yes to take the guesses")
        read, cautions = _looked_at(read_old_rows(old, choices, bench.units, _ids(bench)), bench)
        there = already_there(read.pressings, bench.workshop.pressings)
        new = [row for row, found in zip(read.rows, there, strict=True) if not found]
        _tell_report(file, old, choices, read, cautions, new, write=write)
        if write and may_ask and new and _guessed(old, choices, said):
            click.confirm(f"Add {_rows(len(new))}?", default=True, abort=True, err=True)
    if write and new:
        try:
            tell_added(content, add_rows(content, f"imported-{as_id(file.stem)}", new))
        except NotAdded as refused:
            _fail(str(refused))
    return bool(read.refused)


def pairs(texts: Iterable[str], option: str) -> dict[str, str]:
    """Read ``Theirs=ours`` for each text; the last equals sign parts them."""
    found: dict[str, str] = {}
    for text in texts:
        theirs, sign, ours = text.rpartition("=")
        if not sign:
            raise click.UsageError(f"{option}: {quoted(text)} has no equals sign; write it like {option} “Theirs=ours”")
        found[theirs.strip()] = ours.strip()
    return found


def _table(file: Path) -> OldTable:
    folder = ContentFolder(file.parent)
    try:
        with file.open("rb") as opened:
            packed = opened.read(4) == b"PK\x03\x04"
    except OSError:
        packed = False  # the next step says why it can't be opened
    if packed:
        _fail(f"{file} is a spreadsheet's own file; save the sheet as CSV, in UTF-8, and import that")
    text = folder.text(file)
    if text is None:
        _fail(f"{file}: {folder.problems[-1].message}")
    try:
        return old_table(text)
    except NotATableError as error:
        _fail(f"{file}, line {error.line}: the row can't be read as part of a table: {error}")


def _meanings(old: OldTable, said: Said, *, may_ask: bool) -> tuple[Meaning | None, ...]:
    ours = {folded(theirs): text for theirs, text in said.meanings.items()}
    for theirs in said.meanings:
        if folded(theirs) not in map(folded, old.headings):
            there = nearest(theirs, old.headings) or f"; there are {', '.join(map(quoted, old.headings))}"
            raise click.UsageError(f"--map: there is no heading {quoted(theirs)}{there}")
    found: list[Meaning | None] = []
    for heading in old.headings:
        try:
            found.append(meaning(ours[folded(heading)]) if folded(heading) in ours else guess(heading))
        except NotReadable as refused:
            raise click.UsageError(f"--map: {refused}") from refused
    found = settled(found)
    if may_ask:
        for index, heading in enumerate(old.headings):
            if folded(heading) not in ours and not _is_sure(found[index]) and old.column(index):
                found[index] = _asked_meaning(heading, old.column(index)[0], found[index])
    twice = clashes(found)
    if twice:
        _tell_meanings(old, found, None)
        column = twice[0]
        same = [quoted(heading) for heading, each in zip(old.headings, found, strict=True) if _is(each, column)]
        raise click.UsageError(
            f"{' and '.join(same)} both mean {column}; keep one, and leave the other out with --map “Theirs=-”"
        )
    return tuple(found)


def _is(each: Meaning | None, column: str) -> bool:
    return each is not None and each.column == column


def _is_sure(each: Meaning | None) -> bool:
    return each is not None and each.sure


def _asked_meaning(heading: str, example: str, guessed: Meaning | None) -> Meaning | None:
    def refuse(answer: str) -> str | None:
        try:
            meaning(answer)
        except NotReadable as refused:
            return str(refused)
        return None

    question = f"{quoted(heading)}, like {quoted(example)}, is (- leaves it out)"
    answer = asking.ask(question, refuse, default=str(guessed) if guessed else "-")
    return meaning(answer)


def _tell_meanings(old: OldTable, meanings: Sequence[Meaning | None], bench: Bench | None) -> None:
    click.echo("Headings:")
    for index, (heading, each) in enumerate(zip(old.headings, meanings, strict=True)):
        if each is None:
            filled = len(old.column(index))
            click.echo(f"  {quoted(heading)} is left out ({filled} cell{'' if filled == 1 else 's'} filled)")
            continue
        units = {"temperature": bench.units.temperature, "time": "s", "pressure": bench.units.pressure} if bench else {}
        unit = each.unit or units.get(each.column)
        bare = f", bare figures in {unit}" if unit else ""
        click.echo(f"  {quoted(heading)} is {each.column}{bare}{'' if each.sure else ' (a guess)'}")


def _order(old: OldTable, meanings: Sequence[Meaning | None], said: Said, *, may_ask: bool) -> Order | None:
    texts = [text for index, each in enumerate(meanings) if _is(each, "date") for text in old.column(index)]
    if said.dates:
        return Order(said.dates)
    order = order_of(texts)
    example = unclear(texts)
    if example is None:
        return order
    if order is None:
        question = f"{quoted(example)} can be read two ways, and the column does not tell which"
        if not may_ask:
            raise click.UsageError(f"{question}; say --dates dmy (day first) or --dates mdy (month first)")
        answer = asking.ask(
            f"{question}: dmy (day first) or mdy (month first)?",
            lambda text: None if text.lower() in tuple(Order) else "write dmy or mdy",
            needed=True,
        )
        return Order(answer.lower())
    click.echo(f"Dates are {'day' if order is Order.DMY else 'month'} first.")
    return order


def _ids(bench: Bench) -> dict[str, dict[str, str | None]]:
    workshop = bench.workshop
    names: dict[str, dict[str, str]] = {
        "blank": {name: each.name for name, each in workshop.blanks.items()},
        "press": {name: each.name for name, each in workshop.presses.items()},
        "project": {name: each.title for name, each in workshop.projects.items()},
    }
    return {
        column: {record_id: names[column].get(record_id) for record_id in bench.ids(folder)}
        for column, folder in NAMED.items()
    }


def _names(old: OldTable, meanings: Sequence[Meaning | None], said: Said, bench: Bench) -> dict[str, Mapping[str, str]]:
    found: dict[str, Mapping[str, str]] = {}
    for column, ids in _ids(bench).items():
        chosen = {folded(theirs): ours for theirs, ours in said.names.get(column, {}).items()}
        for ours in chosen.values():
            if ours and ours not in ids:
                raise click.UsageError(f"--{column}: there is no {column} {quoted(ours)}{nearest(ours, ids)}")
        texts = [text for index, each in enumerate(meanings) if _is(each, column) for text in old.column(index)]
        found[column] = known_names(texts, ids, chosen)
    return found


def _tell_names(old: OldTable, choices: Choices, bench: Bench) -> None:
    for text, column, record_id in _translations(old, choices):
        click.echo(f"  {column} {quoted(text)} is {record_id or 'left empty'}")
    for column, ids in _ids(bench).items():
        for text in unnamed(old, choices, column):
            hint = nearest(text, words_for(ids)) or "."
            click.echo(f"  {column} {quoted(text)} is not known{hint} Say --{column} “{text}=ID”, or add it.")


def _translations(old: OldTable, choices: Choices) -> list[tuple[str, str, str]]:
    """Return each word of the table that is written otherwise than the record it means, with that record."""
    found = []
    for index, each in enumerate(choices.meanings):
        if each is not None and each.column in NAMED:
            known = choices.names[each.column]
            for text in dict.fromkeys(old.column(index)):
                if folded(text) in known and known[folded(text)] != text:
                    found.append((text, each.column, known[folded(text)]))
    return found


def _guessed(old: OldTable, choices: Choices, said: Said) -> bool:
    """Tell whether anything rests on a guess that the maker has not said himself."""
    chosen = {(column, folded(theirs)) for column, names in said.names.items() for theirs in names}
    return any(each is not None and not each.sure for each in choices.meanings) or any(
        (column, folded(text)) not in chosen for text, column, _ in _translations(old, choices)
    )


def _looked_at(read: Read, bench: Bench) -> tuple[Read, list[Problem]]:
    """Refuse the rows that don't agree with the other records, too; return the cautions beside."""
    problems = bench.cross_problems(read.pressings)
    errors: dict[int, list[str]] = {}
    for problem in problems:
        if problem.severity is Severity.ERROR:
            errors.setdefault(problem.line, []).append(f"{problem.field}: {problem.message}")
    kept = [
        (row, pressing)
        for row, pressing in zip(read.rows, read.pressings, strict=True)
        if pressing.origin.line(()) not in errors
    ]
    refused = [*read.refused, *(Refused(line, tuple(reasons)) for line, reasons in errors.items())]
    cautions = [problem for problem in problems if problem.severity is Severity.CAUTION and problem.line not in errors]
    rows, pressings = tuple(row for row, _ in kept), tuple(pressing for _, pressing in kept)
    return Read(rows, pressings, tuple(sorted(refused, key=lambda each: each.line))), cautions


def _tell_report(
    file: Path,
    old: OldTable,
    choices: Choices,
    read: Read,
    cautions: Sequence[Problem],
    new: Sequence[object],
    *,
    write: bool,
) -> None:
    for refused in read.refused:
        click.echo(f"{file}:{refused.line}: refused: {'; '.join(refused.reasons)}", err=True)
    for problem in cautions:
        click.echo(f"{file}:{problem.line}: caution: {problem.field}: {problem.message}", err=True)
    for column in ("blank", "press"):
        if old.rows and not any(_is(each, column) for each in choices.meanings) and "" not in choices.names[column]:
            click.echo(f"No heading means {column}; where all rows are of one, say --{column} “=ID”.", err=True)
    there = len(read.rows) - len(new)
    click.echo(f"{_rows(len(old.rows))} read: {len(new)} to add, {there} already there, {len(read.refused)} refused.")
    if not write:
        click.echo("Nothing was written. Say --write to add them." if new else "Nothing was written.")


def _rows(number: int) -> str:
    return f"{number} row{'' if number == 1 else 's'}"


def _fail(sentence: str) -> NoReturn:
    click.secho(f"Nothing was added: {sentence}.", fg="red", err=True)
    raise SystemExit(PROBLEMS)
