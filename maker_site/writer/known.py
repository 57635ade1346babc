"""What earlier makes learnt of files and of papers, as `Kept` holds it. Inner module.

Photos go by their stamp, ink by content, papers by address. A value is used only where what it was learnt from is
the same; anything else is learnt again.
"""

from __future__ import annotations

import os
import time
from collections.abc import Callable, Mapping
from contextlib import suppress
from fractions import Fraction
from pathlib import Path
from typing import Final

from maker_site.frozen import frozen
from maker_site.media.pictures import Probe
from maker_site.writer.kept import Kept

_COVERAGE: Final = "coverage"
_PAPER: Final = "paper"
_OF_A_PAPER: Final = 4
_PHOTO: Final = "photo"
_SETTLED_NS: Final = 2_000_000_000
"""Older than this a file can't be changed again under the same times: the coarsest clock of a drive ticks so."""


@frozen
class KnownPaper:
    """One paper as it was made."""

    inputs: str
    """A hash of all that it was made of."""
    missing: str
    """Characters that no font had."""
    stamp: str = ""
    """Size and hash of the file, as the site's manifest has it: a make that broke off after its commit shows here."""
    about: str = ""
    """The record that its words come from."""


def known_papers(kept: Kept) -> dict[str, KnownPaper]:
    """Return what is kept of papers by address."""
    found = {address: kept.get(_PAPER, address) for address in kept.names(_PAPER)}
    return {
        address: KnownPaper(*map(str, each)) for address, each in found.items() if each and len(each) == _OF_A_PAPER
    }


def keep_papers(kept: Kept, known: Mapping[str, KnownPaper], before: Mapping[str, KnownPaper], *, anew: bool) -> None:
    """Keep what papers were made of, all of it `anew` or what differs from `before`, which is what is kept already."""
    for address, paper in known.items():
        if anew or before.get(address) != paper:
            kept.put(_PAPER, address, paper.inputs, [paper.inputs, paper.missing, paper.stamp, paper.about])
    for address in before.keys() - known.keys():
        kept.forget(_PAPER, address)


def known_coverage(kept: Kept, program: str) -> dict[str, Fraction]:
    """Return what this same program has counted of artwork, by content hash."""
    found: dict[str, Fraction] = {}
    for digest in kept.names(_COVERAGE):
        with suppress(ValueError, TypeError, ZeroDivisionError):
            share = Fraction(kept.get(_COVERAGE, digest, program))
            if 0 <= share <= 1:
                found[digest] = share
    return found


def keep_coverage(kept: Kept, program: str, known: Mapping[str, Fraction]) -> None:
    """Keep what was counted of artwork."""
    for digest, share in known.items():
        kept.put(_COVERAGE, digest, program, str(share))


class KnownPhotos:
    """Photos as they were probed, each while its path, size, times and place on the drive are as they were."""

    def __init__(self, kept: Kept, program: str) -> None:
        """`program` is a digest of what probes."""
        self._kept, self._program, self._now = kept, program, time.time_ns()

    def probe(self, root: Path, path: str, look: Callable[[Path], Probe]) -> Probe:
        """Return what `look` says of a photo, or said of it before. Raises what `look` raises."""
        try:
            seen = os.stat(root / path)  # noqa: PTH116 - as quick as can be, for every photo
        except OSError:
            return look(root / path)  # says what is wrong
        key = f"{self._program} {seen.st_size} {seen.st_mtime_ns} {seen.st_ctime_ns} {seen.st_ino} {seen.st_dev}"
        is_settled = max(seen.st_mtime_ns, seen.st_ctime_ns) < self._now - _SETTLED_NS
        name = path.encode("utf-8", "backslashreplace").decode()  # a file's name need be no text
        if is_settled and (said := self._kept.get(_PHOTO, name, key)) is not None:
            with suppress(TypeError):
                found = Probe(*said)
                self._kept.keep(_PHOTO, name)
                return found
        found = look(root / path)
        if is_settled:
            self._kept.put(_PHOTO, name, key, [found.format, found.width, found.height, found.digest, found.bytes])
        return found
