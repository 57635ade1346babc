"""The output folder while a make writes to it. Inner module."""

import errno
import os
import threading
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager, suppress
from itertools import islice
from pathlib import Path
from typing import Self, TypeAlias

from maker_site.writer.site_folder._address import STATE, check_address
from maker_site.writer.site_folder._carry_out import carry_out, discard_staging
from maker_site.writer.site_folder._changes import Changes
from maker_site.writer.site_folder._ground import Ground, InTheWay
from maker_site.writer.site_folder._interrupts import interrupts_held
from maker_site.writer.site_folder._journal import Journal, Move, write_journal
from maker_site.writer.site_folder._lock import locked
from maker_site.writer.site_folder._manifest import read_manifest
from maker_site.writer.site_folder._problem import (
    OUTPUT_FAILURES,
    SiteFolderProblem,
    sentence_about,
    told_plainly,
)
from maker_site.writer.site_folder._recover import recover
from maker_site.writer.site_folder._stamp import size_in, stamp_of, stamp_of_file
from maker_site.writer.site_folder._state import State

Portion: TypeAlias = tuple[tuple[str, str, Move | None], ...]
"""What a fork put and kept: address, stamp, and the move into place where something was staged."""


class SiteFolder:
    """A site being staged; nothing of it is seen in the folder until `commit`.

    `put`, `put_file`, `keep` and `has` may be called from several threads. Text that is no address is a
    ValueError. Where the folder can't be written as asked, `SiteFolderProblem` says why.
    """

    def __init__(self, out: Path) -> None:
        """For `open` only, which holds the lock."""
        self._out = out
        self._state = State(out)
        self._ground = Ground(out)
        manifest = read_manifest(self._state.manifest)
        self._has_manifest = manifest is not None
        self._lost_track = manifest is None and self._state.mark.exists()
        self._before: Mapping[str, str] = manifest or {}
        self._wanted: dict[str, str] = {}
        self._moves: dict[str, Move] = {}
        self._staged = 0
        self._part = ""
        """Of a fork: how the names of what it stages begin."""
        self._handed_over = 0
        self._guard = threading.Lock()
        self._is_open = True
        self._is_trusted = False

    @classmethod
    @contextmanager
    def open(cls, out: Path) -> Iterator[Self]:
        """Make the folder if need be, lock it, finish or discard what was interrupted, let files be staged.

        Left without `commit`, for whatever reason, the site stays as it was.
        """
        state = State(out)
        with told_plainly(out):
            _make_state_folder(out, state)
        with locked(state.lock, out):
            with told_plainly(out, afterwards="The last make was interrupted and can't be finished yet."):
                recover(out)
            with told_plainly(out):
                site = cls(out)
            try:
                yield site
            finally:
                site._is_open = False
                if not state.journal.exists():  # else the next opening has need of what is staged
                    with suppress(OSError):  # what stays now is discarded by the next opening
                        discard_staging(out)

    @property
    def manifest(self) -> str:
        """Tell apart the lists of files that this folder has had; empty where there is none."""
        try:
            found = self._state.manifest.stat()
        except OSError:
            return ""
        return f"{found.st_size} {found.st_mtime_ns} {found.st_ino}"

    def stand(self) -> None:
        """Say that all files made earlier are still wanted as they are, and take them to be there."""
        self._is_trusted = True
        self._wanted = dict(self._before)

    def withdraw(self, address: str) -> None:
        """Take back that the file at an address is wanted; it may be put or kept again."""
        self._wanted.pop(address, None)

    def has(self, address: str, stamp: str | None = None) -> bool:
        """Whether the tool made this file, earlier or just now, and it has the size it was made with.

        With `stamp` also whether it was made with those bytes.
        """
        check_address(address)
        if stamp not in (None, self._wanted.get(address, self._before.get(address))):
            return False
        return address in self._wanted or self._is_as_made(address)

    def keep(self, address: str, stamp: str | None = None) -> bool:
        """Say that a file made earlier is still wanted as it is.

        False where it is not there as it was made (see `has`), or with `stamp` where it was made with other bytes:
        then it has to be put.
        """
        check_address(address)
        self._must_be_open()
        if address in self._wanted:
            return stamp in (None, self._wanted[address])
        if stamp not in (None, self._before.get(address)) or not self._is_as_made(address):
            return False
        self._wanted.setdefault(address, self._before[address])
        return True

    def stamp(self, address: str) -> str:
        """Return the stamp of what was put or kept at an address: its size and hash."""
        return self._wanted[address]

    def put(self, address: str, data: bytes) -> None:
        """Say what is to stand at an address. Equal bytes that are there already are left untouched.

        Twice the same is once; other bytes at an address already put are a ValueError.
        """
        check_address(address)
        self._must_be_open()
        stamp = stamp_of(data)
        with told_plainly(self._ground.path(address)):
            size = self._ground.size(address)
            if self._is_there(address, stamp, size):
                self._want(address, stamp)
                return
            over = self._may_replace(address, size)
            staged = self._new_staged("")
            staged.write_bytes(data)
            self._want_staged(address, stamp, staged, over=over)

    def put_file(self, address: str, make: Callable[[Path], None]) -> None:
        """Let `make` write the file for an address, to the path it is given (with the address's ending).

        What `make` raises comes through as it is, save a full or read-only disk.
        """
        check_address(address)
        self._must_be_open()
        target = self._ground.path(address)
        with told_plainly(target):
            self._ground.size(address)  # a link or a folder in the way is told before the work is done
            staged = self._new_staged(Path(address).suffix)
        try:
            make(staged)
        except OSError as error:
            if error.errno in OUTPUT_FAILURES:
                with told_plainly(target):
                    raise
            raise
        if staged.is_symlink() or not staged.is_file():
            raise ValueError(f"no file was made for {address!r}")
        with told_plainly(target):
            stamp = stamp_of_file(staged)
            size = self._ground.size(address)
            if self._is_there(address, stamp, size):
                staged.unlink()
                self._want(address, stamp)
            else:
                self._want_staged(address, stamp, staged, over=self._may_replace(address, size))

    def part(self, name: str) -> None:
        """In a fork of the process: stage under a name of its own, to be handed over with `portion`."""
        self._part, self._staged = f"{name}-", 0
        self._handed_over = len(self._wanted)

    def portion(self) -> Portion:
        """Return what was put and kept in this fork since the last call."""
        new = islice(self._wanted.items(), self._handed_over, None)
        found = tuple((address, stamp, self._moves.get(address)) for address, stamp in new)
        self._handed_over = len(self._wanted)
        return found

    def take(self, portion: Portion) -> None:
        """Take over what was put and kept in a fork."""
        self._must_be_open()
        for address, stamp, move in portion:
            self._want(address, stamp)
            if move is not None:
                self._moves[address] = move

    def commit(self) -> Changes:
        """Bring the folder to exactly what was put and kept, beside the maker's own files.

        In the main thread Ctrl-C is held until it is done. Where it fails half way, the next opening
        finishes it. Nothing can be put afterwards.
        """
        self._must_be_open()
        self._is_open = False
        _check_that_no_file_is_a_folder(self._wanted)
        journal = self._journal()
        with told_plainly(self._out):
            changes = Changes(
                written=tuple(journal.moves),
                removed=journal.remove,
                kept=len(self._wanted) - len(journal.moves),
                unknown=self._files_beside_the_site() if self._lost_track else (),
            )
            if journal.is_empty and self._has_manifest:
                return changes
            self._check_rights(journal)
        with interrupts_held():
            with told_plainly(self._out):
                write_journal(self._state.journal, journal)
            with told_plainly(self._out, afterwards="The site is half made; the next make finishes it."):
                carry_out(self._out, journal)
        return changes

    def _must_be_open(self) -> None:
        if not self._is_open:
            raise ValueError("the site has been committed or closed; open the folder again")

    def _is_as_made(self, address: str) -> bool:
        stamp = self._before.get(address)
        if stamp is None:
            return False
        if self._is_trusted:
            return True
        try:
            return self._ground.size(address) == size_in(stamp)
        except InTheWay:
            return False
        except OSError as error:
            raise SiteFolderProblem(sentence_about(error, self._ground.path(address))) from error

    def _is_there(self, address: str, stamp: str, size: int | None) -> bool:
        """Whether the file at an address, of this size, already has the bytes of the stamp."""
        if size != size_in(stamp):
            return False
        made = self._before.get(address)
        if made is not None:
            return made == stamp
        return stamp_of_file(Path(self._ground.path(address))) == stamp and not self._has_other_case(address)

    def _may_replace(self, address: str, size: int | None) -> bool:
        """Whether there is a file to be replaced; raises `InTheWay` for one of the maker's."""
        if size is None:
            return False
        if self._lost_track or address in self._before or self._has_other_case(address):
            return True
        raise InTheWay(
            f"“{self._ground.path(address)}” is not one of the files made here, so it is not replaced. "
            "Move it away, or delete it if it isn't needed, and make again."
        )

    def _has_other_case(self, address: str) -> bool:
        """Whether the file found is one of ours in other letters, on a drive that ignores case."""
        folded = address.casefold()
        alike = [made for made in self._before if made != address and made.casefold() == folded]
        return any(_is_same_file(self._ground.path(address), self._ground.path(made)) for made in alike)

    def _new_staged(self, suffix: str) -> Path:
        with self._guard:
            self._staged += 1
            number = self._staged
            if number == 1:
                self._state.staging.mkdir(exist_ok=True)  # forks stage in the same folder
        return self._state.staging / f"{self._part}{number:06}{suffix}"

    def _want(self, address: str, stamp: str) -> None:
        if self._wanted.setdefault(address, stamp) != stamp:  # in one step, whichever thread comes first
            raise ValueError(f"two different files were put at {address!r}")

    def _want_staged(self, address: str, stamp: str, staged: Path, *, over: bool) -> None:
        self._want(address, stamp)
        self._moves[address] = Move(staged.name, over)  # put twice: the same bytes, whichever is moved

    def _journal(self) -> Journal:
        return Journal(
            remove=tuple(sorted(self._before.keys() - self._wanted.keys())),
            moves=dict(sorted(self._moves.items())),
            stamps=dict(sorted(self._wanted.items() - self._before.items())),
        )

    def _check_rights(self, journal: Journal) -> None:
        """Raise before anything is moved where a folder may not be written."""
        folders = {address.rpartition("/")[0] for address in (*journal.moves, *journal.remove)}
        for folder in sorted(folders):
            path = Path(self._ground.path(folder))
            while not path.is_dir() and path != self._out:
                path = path.parent
            if not os.access(path, os.W_OK | os.X_OK):
                raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), str(path))

    def _files_beside_the_site(self) -> tuple[str, ...]:
        found = set[str]()
        for folder, below, names in os.walk(self._out):
            inside = Path(folder).relative_to(self._out)
            if inside == Path():
                below[:] = [name for name in below if name.casefold() != STATE]
            found.update((inside / name).as_posix() for name in names)
        return tuple(sorted(found - self._wanted.keys()))


def _make_state_folder(out: Path, state: State) -> None:
    if out.exists() and not out.is_dir():
        raise SiteFolderProblem(
            f"“{out}” is a file, and a folder is needed for the site. "
            "Move the file away, or choose another output folder."
        )
    if state.folder.is_symlink():
        raise SiteFolderProblem(
            f"“{state.folder}” is a link, and nothing is written through it. Remove it and make again."
        )
    state.folder.mkdir(parents=True, exist_ok=True)


def _check_that_no_file_is_a_folder(wanted: Mapping[str, str]) -> None:
    for folder in {address.rpartition("/")[0] for address in wanted}:
        parts = folder.split("/")
        for depth in range(1, len(parts) + 1):
            if (above := "/".join(parts[:depth])) in wanted:
                raise ValueError(f"{above!r} is put as a file, and other files below it")


def _is_same_file(one: str, other: str) -> bool:
    try:
        return Path(one).samefile(other)
    except OSError:
        return False
