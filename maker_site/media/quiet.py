"""Keep the picture libraries' remarks about odd files off the screen, from many threads. Inner module.

``warnings.catch_warnings`` swaps filters for the whole process, so two threads that each use it can leave the
wrong ones behind. Here the first thread in swaps them and the last one out puts them back.
"""

from __future__ import annotations

import threading
import warnings
from collections.abc import Iterator
from contextlib import contextmanager

_lock = threading.Lock()
_inside: list[warnings.catch_warnings[None]] = []
_depth = [0]


@contextmanager
def quiet_pictures() -> Iterator[None]:
    """Ignore what Pillow and pillow-heif warn of; what they raise still comes through."""
    with _lock:
        if not _depth[0]:
            guard = warnings.catch_warnings()
            guard.__enter__()
            warnings.filterwarnings("ignore", module=r"(PIL|pillow_heif)(\.|$)")
            _inside.append(guard)
        _depth[0] += 1
    try:
        yield
    finally:
        with _lock:
            _depth[0] -= 1
            if not _depth[0]:
                _inside.pop().__exit__(None, None, None)
