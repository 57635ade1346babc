"""Reading the records for a command that answers a question."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import TypeVar

import click

from maker_site.cli.exits import PROBLEMS
from maker_site.cli.problems import tell_problems
from maker_site.pages.notebook import Notebook
from maker_site.records.problems import Severity, nearest
from maker_site.writer.making import read_notebook
from maker_site.writer.shelf import shelved

T = TypeVar("T")


def read_book(content: Path) -> Notebook:
    """Return the notebook; where the records have errors they are told and the command ends with exit code 1."""
    with shelved(content) as remembered:
        today = date.today()  # noqa: DTZ011 - the maker's own calendar day is meant
        book, problems = read_notebook(content, today, remembered, reviewed=False)
    if book is None:
        tell_problems([problem for problem in problems if problem.severity is Severity.ERROR])
        raise SystemExit(PROBLEMS)
    return book


def record_named(records: Mapping[str, T], name: str, kind: str) -> T:
    """Return the record of an id; an unknown one is wrong use, and the nearest id is named."""
    if name not in records:
        raise click.UsageError(f"there is no {kind} “{name}”{nearest(name, records) or ''}")
    return records[name]
