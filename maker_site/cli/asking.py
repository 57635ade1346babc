"""Asking in the terminal: one question at a time, each answer looked at once."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

import click

from maker_site.cli.exits import STOPPED

Refuse = Callable[[str], str | None]
"""Returns a sentence when an answer won't do."""


def possible() -> bool:
    """Tell whether there is somebody to ask."""
    return sys.stdin is not None and sys.stdin.isatty()


def ask(question: str, refuse: Refuse, *, default: str = "", needed: bool = False) -> str:
    """Ask until the answer will do. Enter takes the default; a hyphen leaves empty what may be empty."""

    def read(answer: str) -> str:
        clean = answer.strip()
        if clean == "-" and not needed:
            return ""
        if not clean and needed:
            raise click.UsageError("this is needed")
        if clean and (sentence := refuse(clean)) is not None:
            raise click.UsageError(sentence)
        return clean

    answer: str = click.prompt(question, default=default, show_default=bool(default), value_proc=read, err=True)
    return answer


@contextmanager
def nothing_written_when_stopped() -> Iterator[None]:
    """Say that nothing was written when a question is answered with Ctrl-C."""
    try:
        yield
    except (click.Abort, KeyboardInterrupt):
        click.echo("\nStopped. Nothing was written.", err=True)
        raise SystemExit(STOPPED) from None
