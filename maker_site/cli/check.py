"""`maker-site check`."""

from __future__ import annotations

import json
import sys
from dataclasses import asdict
from datetime import date
from pathlib import Path

import click

from maker_site.cli.problems import counted, tell_problems
from maker_site.records import Problem, load
from maker_site.records.problems import Severity
from maker_site.writer.making import find_problems


def run(content: Path, *, as_json: bool, plain: bool, links: bool) -> bool:
    """Print every problem; return whether there is an error among them."""
    problems = find_problems(content, date.today())  # noqa: DTZ011 - the maker's own calendar day is meant
    if links:
        problems = tuple(sorted([*problems, *_dead_links(content)]))
    if as_json:
        click.echo(json.dumps({"problems": [asdict(problem) for problem in problems]}, ensure_ascii=False, indent=2))
    elif plain:
        for problem in problems:
            click.echo(f"{problem.file}:{problem.line}: {problem.severity}: {problem.field}: {problem.message}")
    else:
        tell_problems(problems)
        click.echo(f"{counted(problems).capitalize()} in {content}.")
    return any(problem.severity is Severity.ERROR for problem in problems)


def _dead_links(content: Path) -> list[Problem]:
    """Ask every address that the records name. Records with errors name none: mend them first."""
    from maker_site.cli.links import cautions_about
    from maker_site.records.outward_links import outward_links

    workshop = load(content).workshop
    if workshop is None:
        return []
    return cautions_about(outward_links(workshop), _tell)


def _tell(done: int, of: int) -> None:
    if sys.stderr.isatty():
        click.echo(f"\rAsked {done} of {of} addresses", nl=done == of, err=True)
