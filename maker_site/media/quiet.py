"""Keep the picture libraries' remarks about odd files off the screen, from many threads. Inner module.

``warnings.catch_warnings`` swaps filters for the whole process, so two threads that each use it can leave the
wrong ones behind. Here the first thread in swaps them and the last one out puts them back.
"""

from __future__ import annotations

import threading
import warnings
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager


class _Door:
    """How many are inside, and what puts the filters back when the last one leaves."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._inside = 0
        self._restore = ExitStack()

    def enter(self) -> None:
        with self._lock:
            if not self._inside:
                self._restore.enter_context(warnings.catch_warnings())
                warnings.filterwarnings("ignore", module=r"(PIL|pillow_heif)(\.|$)")
            self._inside += 1

    def leave(self) -> None:
        with self._lock:
            self._inside -= 1
            if not self._inside:
                self._restore.close()


_door = _Door()


@contextmanager
def quiet_pictures() -> Iterator[None]:
    """Ignore what Pillow and pillow-heif warn of; what they raise still comes through."""
    _door.enter()
    try:
        yield
    finally:
        _door.leave()
