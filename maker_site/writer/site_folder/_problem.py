"""What the output folder refuses, told in a sentence that a maker can act on. Inner module."""

import errno
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path


class SiteFolderProblem(Exception):
    """The output folder can't be written as asked; its text is a sentence for the maker."""


DISK_FULL = frozenset({errno.ENOSPC, errno.EDQUOT})
OUTPUT_FAILURES = DISK_FULL | {errno.EROFS}
"""Failures that can only come from writing, never from reading what is to be written."""


def sentence_about(error: OSError, path: Path | str) -> str:
    """Say what failed and what to do about it; `path` is named where the system named no file itself."""
    where = error.filename if isinstance(error.filename, str) else str(path)
    if error.errno in DISK_FULL:
        return f"The disk is full: “{where}” could not be written. Free some space and make again."
    if error.errno == errno.EROFS:
        return f"“{where}” is on a drive that can only be read. Choose another output folder."
    if error.errno in {errno.EACCES, errno.EPERM}:
        return (
            f"“{where}” may not be changed: permission denied. Allow writing there, close any program that "
            "has it open, or choose another output folder."
        )
    if error.errno == errno.ENAMETOOLONG:
        return (
            f"The name “{where}” is too long for this drive. "
            "Give it a shorter name, or an output folder with a shorter one."
        )
    if error.errno in {errno.ENOTDIR, errno.EEXIST}:
        return f"“{where}” can't be made: there is a file where a folder is needed. Move that file away and make again."
    return f"“{where}” could not be read or written: {error.strerror or error}."


@contextmanager
def told_plainly(path: Path | str, *, afterwards: str = "") -> Iterator[None]:
    """Turn a failure of the system into a `SiteFolderProblem`; `afterwards` says how things stand now."""
    try:
        yield
    except OSError as error:
        sentence = sentence_about(error, path)
        raise SiteFolderProblem(f"{sentence} {afterwards}".rstrip()) from error
