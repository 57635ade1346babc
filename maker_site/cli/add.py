"""`maker-site add pressing` and `maker-site add blank|project|press|supply`."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from pathlib import Path
from typing import NoReturn

import click

from maker_site.cli import asking
from maker_site.cli.columns import option_name
from maker_site.cli.exits import PROBLEMS
from maker_site.records import Pressing
from maker_site.records.adding import (
    HEADING,
    KINDS,
    Added,
    Bench,
    Kind,
    NotAdded,
    add_rows,
    cells_of,
    column_of,
    create_file,
    create_folders,
    last_used,
    pressing_of,
    problems_in_answers,
    problems_in_needed,
    read_bench,
    record_text,
)
from maker_site.records.content_folder import ContentFolder, wrong_id
from maker_site.records.problems import Problem, Severity, listed, nearest, quoted
from maker_site.records.read_log import NEEDED
from maker_site.workings.calibration import true_temperature
from maker_site.workings.cautions import CLOSING, cautions
from maker_site.workings.remake import over_limit_words
from maker_site.workings.stack import holds_ptfe, stack_of, weakest

_MOST_NAMED = 12
"""Names of records that are listed in a question; more would hide it."""
_OFFERED_WHEN_USED = ("method", "pre-press", "at once", "peel", "cool")
"""Asked for only where the last pressing had them."""


def run_pressing(content: Path, given: Mapping[str, str], today: date) -> None:
    """Append one row to the log of its year, and show it; asks for what is missing where there is somebody to ask."""
    bench = read_bench(content)
    cells = {"date": today.isoformat(), **given}
    _refuse_options(problems_in_answers(cells, bench))
    project = bench.workshop.projects.get(cells.get("project", ""))
    if project is not None:
        cells.setdefault("blank", project.blank)
    missing = [column for column in NEEDED if column not in cells]
    if missing:
        if not asking.possible():
            wanted = ", ".join(f"--{option_name(column)}" for column in missing)
            raise click.UsageError(f"missing: {wanted}; there is no terminal to ask in, so say {_them(missing)}")
        with asking.nothing_written_when_stopped():
            cells = _asked(cells, bench)
    problems = problems_in_answers(cells, bench)
    _refuse_options(problems)
    try:
        added = add_rows(content, cells["date"][:4], [cells])
    except NotAdded as refused:
        _fail(str(refused))
    tell_added(content, added)
    for column in HEADING:
        if cells.get(column):
            click.echo(f"  {column:<12} {cells[column]}")
    _caution(problems)
    row = pressing_of(cells, bench)
    if row is not None:
        _tell_cautions(row, bench)


def _tell_cautions(row: Pressing, bench: Bench) -> None:
    """Show the usual cautions beside the setting, and whether the stack bears it."""
    blank, press = bench.workshop.blanks.get(row.blank), bench.workshop.presses.get(row.press)
    if blank is None or press is None:  # its record can't be read, so less is known than it should be
        found = cautions("", ptfe=True, pre_press=True)
    else:
        stack = stack_of(row.stack, row.face, blank, bench.workshop.supplies, row.method or blank.method)
        limit, true = weakest(stack, blank), true_temperature(press, row.temperature).temperature
        over = over_limit_words(true, limit) if limit and true > limit.temperature else None
        found = cautions(
            blank.substrate,
            ptfe=holds_ptfe(stack),
            pre_press=row.pre_press is not None,
            water=row.cool == "water",
            over_limit=over,
        )
    for each in found:
        if each.kind == "limit":
            click.echo(f"{click.style('caution', fg='yellow')}  {each.words}", err=True)
    click.echo(f"Mind: {'. '.join(each.short for each in found if each.kind != 'limit')}.", err=True)
    click.echo(CLOSING, err=True)


def tell_added(content: Path, added: Added) -> None:
    """Say where rows were put, and which files had no place for them."""
    for file, columns in added.no_place.items():
        word = "column" if len(columns) == 1 else "columns"
        click.echo(f"{file} has no {word} {listed(quoted(each) for each in columns)}; its heading was left as it is.")
    click.echo(f"Written: {content / added.file}:{added.line}")


def _asked(cells: dict[str, str], bench: Bench) -> dict[str, str]:
    click.echo("Enter takes what is in brackets; - leaves empty what may stay empty.", err=True)
    found = dict(cells)

    def ask(column: str, question: str, default: str = "") -> None:
        if column in found:
            return
        answer = asking.ask(
            question, lambda text: _refused(column, text, found, bench), default=default, needed=column in NEEDED
        )
        if answer:
            found[column] = answer

    workshop = bench.workshop
    ask("project", _with_names("Project (Enter for a test pressing)", bench.ids("projects")))
    project = workshop.projects.get(found.get("project", ""))
    ask("blank", _with_names("Blank", bench.ids("blanks")), project.blank if project else "")
    last = last_used(workshop.pressings, found["blank"], found.get("project"))
    presses = bench.ids("presses")
    latest = cells_of(workshop.pressings[-1]).get("press", "") if workshop.pressings else ""
    ask(
        "press", _with_names("Press", presses), last.get("press") or latest or (presses[0] if len(presses) == 1 else "")
    )
    blank = workshop.blanks.get(found["blank"])
    lots = [lot.lot for lot in blank.bought if lot.lot] if blank else []
    if lots or "lot" in last:
        ask("lot", _with_names("Lot", lots), last.get("lot", ""))
    ask("temperature", "Temperature on the dial", last.get("temperature", ""))
    ask("time", "Time", last.get("time", ""))
    ask("pressure", "Pressure", last.get("pressure", ""))
    ask("face", "Face (print up, print down, wrapped)", last.get("face", ""))
    ask("stack", "Stack, bottom to top", last.get("stack", ""))
    for column in _OFFERED_WHEN_USED:
        if column in last:
            ask(column, column.capitalize(), last[column])
    ask("pressed", "Pressed")
    ask("good", "Good")
    if found["good"] != found["pressed"]:
        ask("defects", "Defects, parted by ;")
    ask("note", "Note")
    return found


def _with_names(question: str, names: Iterable[str]) -> str:
    known = list(names)
    return f"{question} ({', '.join(known)})" if 0 < len(known) <= _MOST_NAMED else question


def _refused(column: str, answer: str, before: Mapping[str, str], bench: Bench) -> str | None:
    """Return the first error that this answer makes; cautions are shown and let through."""
    found = [each for each in problems_in_answers({**before, column: answer}, bench) if column_of(each) == column]
    _caution(found)
    return next((each.message for each in found if each.severity is Severity.ERROR), None)


def _refuse_options(problems: Iterable[Problem]) -> None:
    errors = [problem for problem in problems if problem.severity is Severity.ERROR]
    if errors:
        raise click.UsageError("\n".join(f"--{option_name(column_of(each))}: {each.message}" for each in errors))


def _caution(problems: Iterable[Problem]) -> None:
    for problem in problems:
        if problem.severity is Severity.CAUTION:
            click.echo(f"{click.style('caution', fg='yellow')}  {column_of(problem)}: {problem.message}", err=True)


def run_record(content: Path, word: str, record_id: str, given: Mapping[str, str | None]) -> None:
    """Create the file of a new record, with every field that may be left out in a comment; overwrites nothing."""
    kind = KINDS[word]
    if (refused := wrong_id(record_id)) is not None:
        raise click.UsageError(refused)
    bench = read_bench(content)
    _refuse_twice(content, kind, record_id)
    answers = {field: text.strip() for field, text in given.items() if text is not None and text.strip()}
    for field, answer in answers.items():
        if (sentence := _wrong(kind, field, answer, bench)) is not None:
            raise click.UsageError(f"--{field}: {sentence}")
    missing = [field for field in kind.needed if field not in answers]
    if missing and not asking.possible():
        wanted = ", ".join(f"--{field}" for field in missing)
        raise click.UsageError(f"missing: {wanted}; there is no terminal to ask in, so say {_them(missing)}")
    with asking.nothing_written_when_stopped():
        for field in missing:
            answers[field] = _asked_field(kind, field, bench)
    file = kind.file(record_id)
    try:
        if kind.is_folder:
            home = content / kind.folder / record_id
            create_folders(content, [home / "photos", home / "artwork"])
        create_file(content, content / file, record_text(kind, answers).encode())
    except NotAdded as problem:
        _fail(str(problem))
    click.echo(f"Written: {content / file}")
    for field in kind.needed:
        click.echo(f"  {field:<12} {answers[field]}")
    click.echo("Open it in any editor; the lines that begin with # show what else it may say.")


def _asked_field(kind: Kind, field: str, bench: Bench) -> str:
    question = _with_names(kind.needed[field], bench.ids("blanks")) if field == "blank" else kind.needed[field]
    return asking.ask(question, lambda text: _wrong(kind, field, text, bench), needed=True)


def _them(missing: Sequence[str]) -> str:
    return "it as an option" if len(missing) == 1 else "them as options"


def _wrong(kind: Kind, field: str, answer: str, bench: Bench) -> str | None:
    if not answer.isprintable():
        return f"{quoted(answer)} has a line break or a control mark in it; write one line"
    problems = problems_in_needed(kind, {field: answer}, bench.units)
    if problems:
        return problems[0].message
    if field == "blank" and answer not in (blanks := bench.ids("blanks")):
        return f"there is no blank {quoted(answer)}{nearest(answer, blanks) or '; add it first'}"
    return None


def _refuse_twice(content: Path, kind: Kind, record_id: str) -> None:
    folder = ContentFolder(content)
    there = [content / kind.folder / f"{record_id}.yaml"]
    if kind.inner:
        there += [content / kind.folder / record_id / kind.inner]
        there += [] if kind.is_folder else [content / kind.folder / record_id]
    for path in there:
        if folder.holds(path):
            _fail(f"{folder.name(path)} is there already and was left as it is")


def _fail(sentence: str) -> NoReturn:
    click.secho(f"Nothing was added: {sentence}.", fg="red", err=True)
    raise SystemExit(PROBLEMS)
