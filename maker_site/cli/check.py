"""`maker-site check`."""

from __future__ import annotations

import json
from dataclasses import asdict
from datetime import date
from pathlib import Path

import click

from maker_site.cli.problems import counted, tell_problems
from maker_site.records.problems import Severity
from maker_site.writer.making import find_problems


def run(content: Path, *, as_json: bool, plain: bool) -> bool:
    """Print every problem; return whether there is an error among them."""
    problems = find_problems(content, date.today())  # noqa: DTZ011 - the maker's own calendar day is meant
    if as_json:
        click.echo(json.dumps({"problems": [asdict(problem) for problem in problems]}, ensure_ascii=False, indent=2))
    elif plain:
        for problem in problems:
            click.echo(f"{problem.file}:{problem.line}: {problem.severity}: {problem.field}: {problem.message}")
    else:
        tell_problems(problems)
        click.echo(f"{counted(problems).capitalize()} in {content}.")
    return any(problem.severity is Severity.ERROR for problem in problems)
