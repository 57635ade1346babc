"""One make at a time in one output folder. Inner module."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from filelock import FileLock, Timeout

from maker_site.writer.site_folder._problem import SiteFolderProblem, told_plainly


@contextmanager
def locked(path: Path, out: Path) -> Iterator[None]:
    """Hold the lock, or say at once that another make has it. A process that dies lets go of it."""
    # One lock for all threads: the one that closes the folder need not be the one that opened it.
    lock = FileLock(path, thread_local=False)
    with told_plainly(path):
        try:
            lock.acquire(timeout=0)
        except Timeout:
            raise SiteFolderProblem(
                f"Another make is writing “{out}”. Wait until it has finished, then make again."
            ) from None
    try:
        yield
    finally:
        lock.release()
