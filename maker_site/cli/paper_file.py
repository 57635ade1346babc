"""Putting a PDF where it was asked for, whole or not at all, and never over something that is no PDF."""

from __future__ import annotations

import os
from collections.abc import Iterable
from pathlib import Path
from typing import NoReturn

import click

from maker_site.cli.exits import PROBLEMS
from maker_site.paper.sizes import SheetSize, sheet_size
from maker_site.records.problems import NotReadable
from maker_site.records.quantities.length import LengthUnit

_PDF = b"%PDF-"


def paper_asked(text: str | None, bare: LengthUnit) -> SheetSize | None:
    """Return the paper that was asked for by name or sides; one that can't be read is wrong use."""
    try:
        return sheet_size(text, bare) if text else None
    except NotReadable as refused:
        raise click.UsageError(str(refused)) from refused


def check_target(out: Path) -> None:
    """Refuse a target that is there and is no PDF, or a folder: it may be the maker's own work."""
    if out.is_dir():
        raise click.UsageError(f"“{out}” is a folder; name a file, like {out / 'print.pdf'}")
    try:
        if out.exists() and not out.read_bytes()[: len(_PDF)] == _PDF:
            raise click.UsageError(f"“{out}” is there and is no PDF, so it is not replaced; choose another name")
    except OSError as error:
        raise click.UsageError(f"“{out}” can't be read: {(error.strerror or str(error)).lower()}") from error


def write_paper(out: Path, pdf: bytes) -> None:
    """Write the PDF whole or not at all."""
    unfinished = out.with_name(f".{out.name}.{os.getpid()}")
    try:
        try:
            unfinished.write_bytes(pdf)
            unfinished.replace(out)
        finally:
            unfinished.unlink(missing_ok=True)
    except OSError as error:
        fail([f"“{out}” can't be written: {(error.strerror or str(error)).lower()}"])


def tell_cautions(cautions: Iterable[str]) -> None:
    """Print what is worth a look, on the error stream."""
    for caution in cautions:
        click.echo(f"{click.style('caution', fg='yellow')}  {caution}", err=True)


def fail(sentences: Iterable[str]) -> NoReturn:
    """Say why nothing was made, and end with the exit code for problems in the records."""
    for sentence in sentences:
        click.echo(f"{click.style('error', fg='red')}  {sentence}", err=True)
    raise SystemExit(PROBLEMS)
