"""Stamps: size and hash of a file's bytes in one short text, `SIZE-HASH`. Inner module.

The hash is the first half of SHA-256: 128 bits tell any two files apart, and SHA-256 runs in hardware
nearly everywhere.
"""

import hashlib
from pathlib import Path

_HEX_DIGITS = 32


def stamp_of(data: bytes) -> str:
    """Give the stamp of some bytes."""
    return f"{len(data)}-{hashlib.sha256(data).hexdigest()[:_HEX_DIGITS]}"


def stamp_of_file(path: Path) -> str:
    """Give the stamp of a file, read in pieces."""
    with path.open("rb") as file:
        digest = hashlib.file_digest(file, "sha256").hexdigest()
        return f"{file.tell()}-{digest[:_HEX_DIGITS]}"


def size_in(stamp: str) -> int:
    """Give the size in bytes that a stamp holds, or -1 where it is no stamp."""
    size, _, _ = stamp.partition("-")
    return int(size) if size.isdecimal() else -1
