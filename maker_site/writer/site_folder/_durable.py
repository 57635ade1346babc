"""Small files that must outlive a loss of power: the manifest and the journal. Inner module.

Pages and pictures are not written this way. They are flushed by closing them and no more: waiting for the
disk ten thousand times would cost minutes, and a page that a loss of power left short is found by its size
against the manifest and made again. The manifest and the journal can't be made again, and a recovery relies
on their reaching the disk in order.
"""

import os
from pathlib import Path


def unfinished(path: Path) -> Path:
    """Give the name under which a file is written before it takes its place."""
    return path.with_name(f"{path.name}.new")


def install(path: Path, data: bytes) -> None:
    """Put a file into place whole, and return once it and its name are on the disk."""
    new = unfinished(path)
    with new.open("wb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())
    new.replace(path)
    _sync_folder(path.parent)


def _sync_folder(folder: Path) -> None:
    if os.name != "posix":  # elsewhere a folder can't be opened to be synced
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
