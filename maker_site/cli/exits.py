"""Exit codes."""

from __future__ import annotations

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Final

PROBLEMS: Final = 1
"""The records have problems, or the site could not be written."""
WRONG_USE: Final = 2
"""The command was used wrongly."""
STOPPED: Final = 130
"""Stopped by Ctrl-C."""
