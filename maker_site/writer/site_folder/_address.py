"""Addresses of files in the site: relative paths with forward slashes. Inner module."""

import re

STATE = ".maker-site"
"""The folder, directly in the output folder, that is not part of the site."""

# The folder above; an empty part, `.` or `..`; a backslash, a colon (drive or stream on Windows), a control
# character or NUL.
_UNFIT = re.compile(rf"\A(?i:{re.escape(STATE)})(?:/|\Z)|(?:\A|/)\.{{0,2}}(?:/|\Z)|[\\:\x00-\x1f\x7f]")


def is_address(text: str) -> bool:
    """Whether `text` names a file that stays in the site on every system."""
    return _UNFIT.search(text) is None


def check_address(text: str) -> None:
    """Raise ValueError where `text` is no address; a programmer's error, since makers give no addresses."""
    if not is_address(text):
        raise ValueError(f"not an address within the site: {text!r}")
