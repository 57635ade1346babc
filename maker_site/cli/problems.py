"""Problems in the terminal: grouped by file, the errors first to be seen."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import Protocol

import click

_ERROR = "error"


class Problem(Protocol):
    """What is told of a problem; see the records room, whose import takes a while."""

    @property
    def file(self) -> str:
        """Path from the content folder."""

    @property
    def line(self) -> int:
        """Line counted from 1; 0 for the whole file."""

    @property
    def field(self) -> str:
        """The field’s name; empty for the whole file."""

    @property
    def message(self) -> str:
        """The sentence."""

    @property
    def severity(self) -> str:
        """`error` or `caution`."""


def tell_problems(problems: Sequence[Problem]) -> None:
    """Print problems for a person, on the error stream."""
    for file, found in groupby(sorted(problems, key=_place), key=lambda problem: problem.file):
        click.secho(file, bold=True, err=True)
        for problem in found:
            error = problem.severity == _ERROR
            mark = click.style("error" if error else "caution", fg="red" if error else "yellow")
            where = f"line {problem.line}, " if problem.line else ""
            field = f"{problem.field}: " if problem.field else ""
            click.echo(f"  {mark}  {where}{field}{problem.message}", err=True)


def _place(problem: Problem) -> tuple[str, int, str, str]:
    return (problem.file, problem.line, problem.field, problem.message)


def counted(problems: Sequence[Problem]) -> str:
    """Return ``2 errors and 1 caution``."""
    errors = sum(problem.severity == _ERROR for problem in problems)
    cautions = len(problems) - errors
    parts = [
        f"{number} {word}{'' if number == 1 else 's'}"
        for number, word in ((errors, "error"), (cautions, "caution"))
        if number
    ]
    return " and ".join(parts) or "no problems"
