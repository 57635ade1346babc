"""`maker-site make`."""

from __future__ import annotations

import sys
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from maker_site.cli.exits import PROBLEMS
from maker_site.cli.problems import tell_problems
from maker_site.cli.said import counted, places, summary
from maker_site.writer.site_folder import SiteFolderProblem, check_out
from maker_site.writer.themes import ThemeProblem

if TYPE_CHECKING:  # slow to import, and not needed where nothing has changed
    from maker_site.writer.making import Made, Told

_MOST_NAMED = 10
_REDRAW_SECONDS = 0.1


def run(content: Path, out: Path, theme: str) -> None:
    """Make the site and say what came of it; exits 1 where nothing was made, and the last good site stays."""
    if (refused := check_out(out, content)) is not None:
        raise click.UsageError(refused)
    today = date.today()  # noqa: DTZ011 - the maker's own calendar day is meant
    try:
        made = _make(content, out, theme, today)
    except ThemeProblem as problem:
        raise click.UsageError(str(problem)) from problem
    except SiteFolderProblem as problem:
        click.secho(f"Nothing was changed in {out}: {problem}", fg="red", err=True)
        raise SystemExit(PROBLEMS) from problem
    tell_problems(made.problems)
    if made.changes is None:
        click.secho(f"{counted(made.problems).capitalize()}. Nothing was made; {_kept(out)}", fg="red", err=True)
        raise SystemExit(PROBLEMS)
    changes = made.changes
    click.echo(summary(made.pages, made.pictures, len(changes.written), len(changes.removed), made.problems))
    _tell_pages("Written", changes.written)
    _tell_pages("Removed", changes.removed)
    for stray in changes.unknown:
        click.echo(f"  {out / stray} is not part of the site and was left alone.", err=True)
    for line in places(*((out / copy / "index.html").resolve().as_uri() for copy in ("workshop", "public"))):
        click.echo(line)


def _make(content: Path, out: Path, theme: str, today: date) -> Made:
    from maker_site.writer.making import make_site
    from maker_site.writer.rendering import TemplateProblem

    try:
        with _progress() as told:
            return make_site(content, out, theme, today, told)
    except TemplateProblem as problem:
        raise SiteFolderProblem(str(problem)) from problem


def _tell_pages(what: str, addresses: Sequence[str]) -> None:
    """Name the pages that changed, up to ten of them, those of the public copy first: they are what goes on line."""
    pages = sorted((each for each in addresses if each.endswith((".html", ".xml", ".pdf"))), key=_public_first)
    if not pages:
        return
    named = ", ".join(pages[:_MOST_NAMED])
    more = f" and {len(pages) - _MOST_NAMED} more" if len(pages) > _MOST_NAMED else ""
    click.echo(f"{what}: {named}{more}.")


def _public_first(address: str) -> tuple[bool, str]:
    return (not address.startswith("public/"), address)


def _kept(out: Path) -> str:
    there = (out / "workshop" / "index.html").is_file()
    return f"the last good site in {out} is as it was." if there else "mend the errors and make again."


@contextmanager
def _progress() -> Iterator[Told]:
    """Show what is being done while it takes long; say nothing in a pipe."""
    if not sys.stderr.isatty():
        yield lambda what, done, of: None
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn

    columns = (TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn())
    # Drawn by us and not by a thread of its own, since a process with threads can't be forked safely.
    with Progress(*columns, console=Console(stderr=True), transient=True, auto_refresh=False) as shown:
        tasks = {}
        drawn = 0.0

        def tell(what: str, done: int, of: int) -> None:
            if what not in tasks:
                tasks[what] = shown.add_task(what, total=of or None)
            shown.update(tasks[what], completed=done, total=of or None)
            nonlocal drawn
            if time.monotonic() - drawn > _REDRAW_SECONDS:
                shown.refresh()
                drawn = time.monotonic()

        yield tell
