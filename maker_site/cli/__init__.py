"""The command line: the one place that prints, reads the clock and chooses an exit code."""

from __future__ import annotations

TYPE_CHECKING = False
if TYPE_CHECKING:
    from maker_site.cli.command import main as main

__all__ = ["main"]


def __getattr__(name: str) -> object:
    """Import the commands when they are asked for: the front door needs them seldom."""
    if name == "main":
        from maker_site.cli.command import main as commands

        return commands
    raise AttributeError(name)
