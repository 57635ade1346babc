"""`maker-site export`."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from importlib.metadata import version
from pathlib import Path

import click

from maker_site.cli.exits import PROBLEMS
from maker_site.cli.problems import counted, tell_problems
from maker_site.records import load
from maker_site.records.adding import NotAdded, create_export
from maker_site.records.exporting import as_json, as_tables, read_as_typed
from maker_site.writer.shelf import shelved


def run(content: Path, out: Path, form: str) -> None:
    """Write everything into the new folder `out`, as ``csv`` or ``json``; all of it or nothing."""
    _insist_on_no_errors(content)
    typed = read_as_typed(content)
    ours = version("maker-site")
    files: Mapping[str, Iterable[str]]
    files = {"maker-site.json": as_json(typed, ours)} if form == "json" else as_tables(typed, ours)
    try:
        create_export(out, files)
    except NotAdded as refused:
        click.secho(f"Nothing was exported: {refused}.", fg="red", err=True)
        raise SystemExit(PROBLEMS) from refused
    records = sum(len(each) for each in typed.records.values())
    click.echo(f"{len(typed.log)} pressings and {records} records written to {out}:")
    for name in files:
        click.echo(f"  {out / name}")
    click.echo("Photos and artwork are not copied; they stay in the folder of your records.")


def _insist_on_no_errors(content: Path) -> None:
    with shelved(content) as remembered:
        findings = load(content, remembered)
    if findings.workshop is None:
        tell_problems(findings.problems)
        click.secho(f"{counted(findings.problems).capitalize()}. Nothing was exported.", fg="red", err=True)
        raise SystemExit(PROBLEMS)
