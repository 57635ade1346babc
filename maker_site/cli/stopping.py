"""Ctrl-C ends a command with 130 and a line at most, wherever it comes; the front door needs this before all else."""

from __future__ import annotations

import os
import signal
import sys

from maker_site.cli.exits import STOPPED

TYPE_CHECKING = False
if TYPE_CHECKING:
    from types import FrameType

_LATER_S = 0.02
_IMPORTS = "<frozen importlib._bootstrap>"


def stop_at_once() -> None:
    """End on the spot from now on: until a command runs, nothing is begun that would have to be put away."""
    if signal.getsignal(signal.SIGINT) is signal.default_int_handler:
        signal.signal(signal.SIGINT, _end)


def stop_in_order() -> object:
    """Let a command that runs be interrupted from now on, and return what was to be done before, for `as_before`."""
    before = signal.getsignal(signal.SIGINT)
    if before in (signal.default_int_handler, _end) and _is_main_thread():
        signal.signal(signal.SIGINT, _interrupt)
        sys.unraisablehook = _passed_over
    return before


def as_before(before: object) -> None:
    """Do with Ctrl-C what was done before."""
    if before in (signal.default_int_handler, _end) and _is_main_thread():
        signal.signal(signal.SIGINT, before)
        sys.unraisablehook = sys.__unraisablehook__


def _is_main_thread() -> bool:
    import threading

    return threading.current_thread() is threading.main_thread()


def _end(_number: int, _frame: FrameType | None) -> None:
    os._exit(STOPPED)


def _interrupt(_number: int, frame: FrameType | None) -> None:
    """Raise KeyboardInterrupt, a moment later where something is being imported.

    There it would be taken for a fault of what is imported.
    """
    while frame is not None:
        if frame.f_code.co_filename == _IMPORTS:
            _again()
            return
        frame = frame.f_back
    raise KeyboardInterrupt


def _passed_over(unraisable: sys.UnraisableHookArgs) -> None:
    """Try again where an interruption was printed and passed over, as it is in what is called as things are freed."""
    if unraisable.exc_type is KeyboardInterrupt:
        _again()
    else:
        sys.__unraisablehook__(unraisable)


def _again() -> None:
    import threading

    later = threading.Timer(_LATER_S, signal.raise_signal, [signal.SIGINT])
    later.daemon = True
    later.start()
