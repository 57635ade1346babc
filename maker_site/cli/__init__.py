"""The command line: the one place that prints, reads the clock and chooses an exit code."""

from maker_site.cli.command import main

__all__ = ["main"]
