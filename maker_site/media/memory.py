"""Bound the memory that many threads need together when they unpack pictures. Inner module."""

from __future__ import annotations

import threading
from contextlib import AbstractContextManager, nullcontext

LARGE = 40_000_000
"""Pixels above which a picture is unpacked alone; at 4 bytes a pixel, 160 MB."""

_one_large = threading.Lock()


def alone_if_large(pixels: int) -> AbstractContextManager[object]:
    """Give a block that only one picture of more than `LARGE` pixels is in at a time; smaller ones don't wait."""
    return _one_large if pixels > LARGE else nullcontext()
