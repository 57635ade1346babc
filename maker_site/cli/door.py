"""The front door: a make that finds nothing changed says so before anything slow is imported.

Whatever else is asked, and however it is asked otherwise, goes on to the commands; what is printed is the same.
"""

from __future__ import annotations

import os
import sys
import time

from maker_site.cli.stopping import stop_at_once

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import TextIO

    from maker_site.writer.unchanged import Unchanged

_USUAL = {"--content": "content", "--out": "site", "--theme": "print-room"}
"""Options of `make` and what they are where they are not said; `tests/cli/test_door.py` holds them to the command's."""
_STYLES = {"bold": "\x1b[1m", "red": "\x1b[31m", "yellow": "\x1b[33m"}
_UNREAD = 1


def main() -> None:
    """Answer the command line."""
    stop_at_once()
    asked = _plain_make(sys.argv[1:])
    if asked and not (os.name == "nt" and sys.stderr.isatty()):  # there colours are drawn otherwise
        from maker_site.writer.unchanged import unchanged

        try:
            found = unchanged(asked["--content"], asked["--out"], asked["--theme"], time.strftime("%Y-%m-%d"))
            if found:
                _tell(found)
                return
        except BrokenPipeError:
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())  # nobody reads on
            raise SystemExit(_UNREAD) from None
    from maker_site.cli.command import main as commands

    commands()


def _plain_make(words: Sequence[str]) -> dict[str, str] | None:
    """Return the options of a make, where nothing else is asked."""
    if not words or words[0] != "make" or "_MAKER_SITE_COMPLETE" in os.environ:
        return None
    said = dict(_USUAL)
    rest = iter(words[1:])
    for word in rest:
        name, is_given, value = word.partition("=")
        if name not in said:
            return None
        found = value if is_given else next(rest, "")
        if not found or found.startswith("-"):
            return None
        said[name] = found
    return said if os.path.isdir(said["--content"]) else None  # noqa: PTH112


def _tell(found: Unchanged) -> None:
    from maker_site.cli.said import places, problem_lines, summary

    for line in problem_lines(found.problems, _style_for(sys.stderr)):
        print(line, file=sys.stderr)  # noqa: T201
    sys.stderr.flush()
    print(summary(found.pages, found.pictures, 0, 0, found.problems))  # noqa: T201
    for line in places(*found.places):
        print(line)  # noqa: T201
    sys.stdout.flush()


def _style_for(stream: TextIO) -> _Style:
    return _Style(plain=not stream.isatty())


class _Style:
    def __init__(self, *, plain: bool) -> None:
        self._plain = plain

    def __call__(self, text: str, how: str) -> str:
        return text if self._plain else f"{_STYLES[how]}{text}\x1b[0m"
