"""Problems in the terminal: grouped by file, the errors first to be seen."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import click

from maker_site.cli.said import counted, problem_lines

if TYPE_CHECKING:
    from maker_site.cli.said import Problem

__all__ = ["counted", "tell_problems"]


def tell_problems(problems: Sequence[Problem]) -> None:
    """Print problems for a person, on the error stream."""
    for line in problem_lines(problems, _styled):
        click.echo(line, err=True)


def _styled(text: str, how: str) -> str:
    return click.style(text, bold=True) if how == "bold" else click.style(text, fg=how)
