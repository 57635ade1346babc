"""Problems in the terminal: grouped by file, the errors first to be seen."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

import click

from maker_site.records.problems import Problem, Severity


def tell_problems(problems: Sequence[Problem]) -> None:
    """Print problems for a person, on the error stream."""
    for file, found in groupby(sorted(problems), key=lambda problem: problem.file):
        click.secho(file, bold=True, err=True)
        for problem in found:
            error = problem.severity is Severity.ERROR
            mark = click.style("error" if error else "caution", fg="red" if error else "yellow")
            where = f"line {problem.line}, " if problem.line else ""
            field = f"{problem.field}: " if problem.field else ""
            click.echo(f"  {mark}  {where}{field}{problem.message}", err=True)


def counted(problems: Sequence[Problem]) -> str:
    """Return ``2 errors and 1 caution``."""
    errors = sum(problem.severity is Severity.ERROR for problem in problems)
    cautions = len(problems) - errors
    parts = [
        f"{number} {word}{'' if number == 1 else 's'}"
        for number, word in ((errors, "error"), (cautions, "caution"))
        if number
    ]
    return " and ".join(parts) or "no problems"
