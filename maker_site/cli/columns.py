"""The press log's columns as options: plain words, so that a command's help needs no records."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final, TypeVar

import click

COLUMN_HELP: Final = {
    "date": "The day, like 2026-04-18; today where not said.",
    "project": "The project it was for; none for a test pressing.",
    "blank": "The blank; the project's where not said.",
    "lot": "The delivery that the blank came in.",
    "press": "The press.",
    "method": "How the picture got onto it, where it differs from the blank's.",
    "temperature": "What the dial was set to, like “200 C” or “400 F”.",
    "time": "Time under heat, like “5 min”, 2:30 or “150 s”.",
    "pressure": "Like medium, “firm, 3 turns” or “40 psi”.",
    "face": "“print up”, “print down” or wrapped.",
    "pre-press": "Time of heat before, like “5 s”.",
    "stack": "Bottom to top, like “pad > transfer > blank”.",
    "at once": "Pieces in the press together.",
    "peel": "hot, warm or cold.",
    "cool": "air, fan, “cold plate”, flat, “flat under weight” or water.",
    "pressed": "Pieces pressed.",
    "good": "Pieces that came out good.",
    "defects": "What was wrong, parted by semicolons.",
    "note": "Anything else, in one line.",
    "photo": "A picture inside the project's folder, like photos/front.jpg.",
}
"""Each column and what its option is for."""

F = TypeVar("F", bound=Callable[..., Any])


def column_options(command: F) -> F:
    """Give a command an option for each column; what was said arrives as ``cells`` by `cells_of_options`."""
    for column, words in reversed(COLUMN_HELP.items()):
        command = click.option(f"--{option_name(column)}", metavar="TEXT", help=words)(command)
    return command


def option_name(column: str) -> str:
    """Return the name of a column's option, without its hyphens in front."""
    return column.replace(" ", "-")


def cells_of_options(options: dict[str, str | None]) -> dict[str, str]:
    """Return the cells that were said as options, by column."""
    names = {option_name(column).replace("-", "_"): column for column in COLUMN_HELP}
    return {names[name]: text.strip() for name, text in options.items() if text is not None and text.strip()}
