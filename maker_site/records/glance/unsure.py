"""What can't be told at a glance, and the text of a file where it can.

Inner module of the records room.
"""

from __future__ import annotations

from typing import Final

LARGEST: Final = 8 * 1024 * 1024
"""Of a file that is read, in bytes."""


class Unsure(Exception):
    """It can't be told at a glance."""


def text_of(raw: bytes) -> str:
    """Return the text of a file; raises Unsure where it is none, or another encoding's."""
    if len(raw) > LARGEST or raw[:2] in (b"\xff\xfe", b"\xfe\xff"):
        raise Unsure
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise Unsure from None
