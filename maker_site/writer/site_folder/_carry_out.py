"""Do what a journal says: the second half of a commit, and the whole of a recovery. Inner module."""

import shutil
from contextlib import suppress
from pathlib import Path

from maker_site.writer.site_folder._address import is_address
from maker_site.writer.site_folder._durable import unfinished
from maker_site.writer.site_folder._ground import Ground, InTheWay
from maker_site.writer.site_folder._journal import Journal, Move
from maker_site.writer.site_folder._manifest import read_manifest, write_manifest
from maker_site.writer.site_folder._state import State

_MARK = """\
The files around this folder were made by maker-site, and are made again from your records at any time.
manifest.json lists them. Delete it, and the next make takes every file at an address of its own for one it
made before; files that are no longer wanted then stay, since nothing says who made them.
"""


def carry_out(out: Path, journal: Journal) -> None:
    """Bring the site to what the journal says and close the journal.

    May be called again after a death at any step. Days may lie between, so everything is looked at afresh:
    what the maker has put in the way since stays, and is left out of the manifest.
    """
    state = State(out)
    waiting = {path.name for path in state.staging.iterdir()} if state.staging.is_dir() else set[str]()
    # What was withdrawn goes first. Once one file has moved, that is behind us and not repeated: by now the
    # maker may have put a file there, or a drive that ignores case may show the new file under the old name.
    if all(move.staged in waiting for move in journal.moves.values()):
        _remove(out, journal.remove)
    in_the_way = _move(out, {at: move for at, move in journal.moves.items() if move.staged in waiting})

    files = {**(read_manifest(state.manifest) or {}), **journal.stamps}
    for address in (*journal.remove, *in_the_way):
        files.pop(address, None)
    write_manifest(state.manifest, files)
    # Only now, and before the journal goes: a folder with the mark and no manifest has lost its manifest.
    state.mark.write_text(_MARK, encoding="utf-8")
    state.journal.unlink()
    discard_staging(out)


def discard_staging(out: Path) -> None:
    """Remove what an unfinished make left behind; the site itself is not touched."""
    state = State(out)
    with suppress(FileNotFoundError):
        shutil.rmtree(state.staging)
    for path in (state.journal, state.manifest):
        unfinished(path).unlink(missing_ok=True)


def _remove(out: Path, addresses: tuple[str, ...]) -> None:
    ground = Ground(out)
    folders = set[str]()
    for address in addresses:
        # A manifest is a file like any other: nothing outside the site is removed on its word.
        if is_address(address) and _is_plain_file(ground, address):
            Path(ground.path(address)).unlink(missing_ok=True)
            folders.update(_folders_above(address))
    for folder in sorted(folders, key=lambda name: name.count("/"), reverse=True):
        with suppress(OSError):  # not empty: it stays
            Path(ground.path(folder)).rmdir()


def _move(out: Path, moves: dict[str, Move]) -> list[str]:
    """Move staged files into place; give the addresses where something of the maker's is in the way."""
    ground = Ground(out)
    staging = State(out).staging
    in_the_way = []
    for address, move in moves.items():
        if not is_address(address) or not _is_free(ground, address, over=move.over):
            in_the_way.append(address)
            continue
        ground.make_folder(address.rpartition("/")[0])
        (staging / move.staged).replace(ground.path(address))
    return in_the_way


def _is_plain_file(ground: Ground, address: str) -> bool:
    try:
        return ground.size(address) is not None
    except InTheWay:
        return False


def _is_free(ground: Ground, address: str, *, over: bool) -> bool:
    try:
        return ground.size(address) is None or over
    except InTheWay:
        return False


def _folders_above(address: str) -> list[str]:
    parts = address.split("/")[:-1]
    return ["/".join(parts[:depth]) for depth in range(1, len(parts) + 1)]
