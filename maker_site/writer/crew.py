"""Work on every core: processes that are forked from this one and know all that it knew then.

A fork shares the memory of its parent, so the records need not be handed over. It is safe on Linux and while there is
no other thread; elsewhere, and in a process that watches, the same work is done in this one.
"""

from __future__ import annotations

import gc
import os
import pickle
import signal
import sys
import threading
import traceback
from collections import deque
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager, suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, Generic, TypeAlias, TypeVar

from maker_site.writer.site_folder import SiteFolderProblem

if TYPE_CHECKING:  # imported when there is something to share out, which is seldom
    from multiprocessing.connection import Connection

T = TypeVar("T")
R = TypeVar("R")
Begin: TypeAlias = Callable[[int], AbstractContextManager[Callable[[T], R]]]
"""What a process begins with, given its number: what does the work there, until it ends."""
_THREADS: Final = Path("/proc/self/task")
_MEMORY: Final = Path("/proc/self/statm")
_ANSWER, _GROWN, _FAULT = "answer", "grown", "fault"
_END_SECONDS: Final = 5


def cores() -> int:
    """Return how many processes can work at once; 0 where this one had better not be forked."""
    if sys.platform != "linux" or threading.current_thread() is not threading.main_thread():
        return 0
    try:
        alone = len(list(_THREADS.iterdir())) == 1
    except OSError:
        return 0
    return len(os.sched_getaffinity(0)) if alone else 0


class Crew(Generic[T, R]):
    """Processes that do what they are handed, each one thing at a time."""

    def __init__(self, size: int, begin: Begin[T, R], most_growth: int | None = None) -> None:
        """Fork `size` processes; `begin`, called in each with a number of its own, gives what does the work there.

        One that has grown by more than `most_growth` bytes is replaced. Use `crew`, which ends them.
        """
        self._begin = begin
        self._most_growth = most_growth
        self._number = 0
        self._waiting: deque[T] = deque()
        self._members: dict[Connection, Any] = {}
        self._busy: set[Connection] = set()
        for _ in range(size):
            self._add()

    def ask(self, task: T) -> None:
        """Have something done when its turn comes."""
        self._waiting.append(task)
        self._hand_out()

    @property
    def pending(self) -> int:
        """What was asked for and is not answered."""
        return len(self._waiting) + len(self._busy)

    @property
    def size(self) -> int:
        """How many processes there are."""
        return len(self._members)

    def ready(self) -> tuple[Connection, ...]:
        """Return what is to be waited for."""
        return tuple(self._busy)

    def take(self, ready: Connection) -> R:
        """Return the answer that has come, and hand out the next task.

        Raises what the work raised, and `SiteFolderProblem` where a process ended without an answer.
        """
        try:
            kind, said = ready.recv()
        except (EOFError, OSError) as error:
            raise SiteFolderProblem(
                "a process that was making pages ended before it was done; was the memory full? Make again."
            ) from error
        self._busy.discard(ready)
        if kind == _FAULT:
            raise _fault(*said)
        if kind == _GROWN:
            self._end(ready)
            self._add()
        self._hand_out()
        answer: R = said
        return answer

    def close(self) -> None:
        """End every process, at once where one still works."""
        for connection in self._busy:
            self._members[connection].terminate()
        for connection in list(self._members):
            self._end(connection)
        self._busy.clear()

    def _hand_out(self) -> None:
        for connection in self._members:
            if not self._waiting:
                return
            if connection not in self._busy:
                self._busy.add(connection)
                with suppress(OSError):  # one that has ended is told when its answer is taken
                    connection.send(self._waiting.popleft())

    def _add(self) -> None:
        from multiprocessing import Pipe, get_context

        self._number += 1
        here, there = Pipe()
        inherited = [*self._members, here]
        member = get_context("fork").Process(
            target=_work, args=(there, inherited, self._begin, self._number, self._most_growth), daemon=True
        )
        member.start()
        there.close()
        self._members[here] = member

    def _end(self, connection: Connection) -> None:
        member = self._members.pop(connection)
        connection.close()
        member.join(_END_SECONDS)
        if member.is_alive():
            member.kill()
            member.join()


@contextmanager
def crew(size: int, begin: Begin[T, R], most_growth: int | None = None) -> Iterator[Crew[T, R] | None]:
    """Give a crew and end it; None where `size` is 0."""
    if not size:
        yield None
        return
    gathered = Crew(size, begin, most_growth)
    try:
        yield gathered
    finally:
        gathered.close()


@contextmanager
def shared() -> Iterator[None]:
    """Keep what there is now where forks can share it: the collector does not touch it in this block."""
    gc.collect()
    _give_back()
    gc.freeze()
    try:
        yield
    finally:
        gc.unfreeze()


def _give_back() -> None:
    """Give the system back what is free between what is held, so that forks don't begin with it."""
    import ctypes  # late: few makes fork

    trim = getattr(ctypes.CDLL(None), "malloc_trim", None)  # the C library of GNU has it
    if trim is not None:
        trim(0)


def any_of(*crews: Crew[Any, Any]) -> Iterator[tuple[Crew[Any, Any], Any]]:
    """Wait until at least one answer has come, and yield those that have, each with its crew."""
    from multiprocessing.connection import Connection, wait

    whose = {connection: each for each in crews for connection in each.ready()}
    for connection in wait(list(whose)):
        assert isinstance(connection, Connection)
        yield whose[connection], whose[connection].take(connection)


def _work(
    connection: Connection,
    inherited: list[Connection],
    begin: Begin[Any, Any],
    number: int,
    most_growth: int | None,
) -> None:
    """Answer until there is nobody who asks. Ctrl-C is for the parent, which then ends us."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    for each in inherited:
        each.close()
    before = resident()
    try:
        with begin(number) as work:
            while True:
                answer = work(connection.recv())
                grown = most_growth is not None and resident() - before > most_growth
                connection.send((_GROWN if grown else _ANSWER, answer))
                if grown:
                    return
    except EOFError:
        return
    except BaseException as error:  # whatever it is, it is for the parent to tell
        with suppress(OSError):
            connection.send((_FAULT, (_portable(error), traceback.format_exc())))


def _portable(error: BaseException) -> BaseException | None:
    try:
        pickle.loads(pickle.dumps(error))
    except Exception:  # an error of somebody else's may refuse in any way
        return None
    return error


def _fault(error: BaseException | None, trace: str) -> BaseException:
    found = error or RuntimeError("a process that was making pages failed")
    found.add_note(trace)
    return found


def resident() -> int:
    """Return the bytes of memory that this process holds, shared ones included."""
    pages = _MEMORY.read_text("ascii").split()
    return int(pages[1]) * os.sysconf("SC_PAGE_SIZE")
