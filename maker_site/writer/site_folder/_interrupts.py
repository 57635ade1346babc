"""Ctrl-C held back over a few steps that belong together. Inner module."""

import signal
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from types import FrameType


@contextmanager
def interrupts_held() -> Iterator[None]:
    """Hold Ctrl-C until the end of the block, and deliver it then.

    Only the main thread is given signals, so in another thread nothing is changed; nor where the
    handler is not Python's.
    """
    before = signal.getsignal(signal.SIGINT)
    if threading.current_thread() is not threading.main_thread() or before is None:
        yield
        return
    pressed = threading.Event()

    def note(_number: int, _frame: FrameType | None) -> None:
        pressed.set()

    signal.signal(signal.SIGINT, note)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)
        if pressed.is_set():
            signal.raise_signal(signal.SIGINT)
