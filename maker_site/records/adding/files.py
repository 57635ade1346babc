"""Adding to the maker's files: a row goes to the end in one write, a new file is there whole or not at all.

Nothing that is there is rewritten or replaced. Inner module of the records room; the only one here that writes.
"""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from itertools import count
from pathlib import Path

from maker_site.frozen import frozen
from maker_site.records.adding.log_text import Cells, LogForm, NoHeading, addition, file_like, form_of, line_after
from maker_site.records.content_folder import ContentFolder, reason
from maker_site.records.problems import quoted
from maker_site.records.read_log import NotATableError


class NotAdded(Exception):
    """Nothing was added; the sentence says why."""


@frozen
class Added:
    """Where rows were put."""

    file: str
    """Path from the content folder, with forward slashes."""
    line: int
    """Line of the first row."""
    text: str
    """What was written, without the heading of a new file."""
    no_place: Mapping[str, tuple[str, ...]]
    """Files that were passed over, and the columns that each has no place for."""


def add_rows(root: Path, stem: str, rows: Sequence[Cells]) -> Added:
    """Put rows at the end of ``press-log/STEM.csv``, or of the first of ``STEM-2.csv`` … with a place for each value.

    The heading of a file is never changed. Raises `NotAdded`.
    """
    folder = ContentFolder(root)
    used = sorted({column for row in rows for column, cell in row.items() if cell})
    no_place: dict[str, tuple[str, ...]] = {}
    for number in count(1):
        path = root / "press-log" / (f"{stem}.csv" if number == 1 else f"{stem}-{number}.csv")
        if not folder.holds(path):
            form = file_like(_newest_form(folder))
            whole = addition(form, rows, new=True)
            body = addition(replace(form, headed=True), rows)
            create_file(root, path, whole)
            return Added(folder.name(path), line_after(whole[: len(whole) - len(body)]), _text(body, form), no_place)
        form = _form_at(folder, path)
        lacking = form.lacking(used)
        if lacking:
            no_place[folder.name(path)] = tuple(lacking)
            continue
        data = addition(form, rows)
        body = addition(replace(form, headed=True, open_end=False), rows)
        before = _append(folder, path, data)
        line = line_after(before + data[: len(data) - len(body)])
        return Added(folder.name(path), line, _text(body, form), no_place)
    raise AssertionError  # the count has no end


def create_file(root: Path, path: Path, data: bytes) -> None:
    """Create a file of the content folder, whole, with the folders above it. Raises `NotAdded` where it is there."""
    folder = ContentFolder(root)
    _refuse_outside(folder, path)
    if folder.holds(path):
        raise NotAdded(f"{folder.name(path)} is there already and was left as it is")
    new = path.with_name(f".{path.name}.{os.getpid()}.new")
    create_folders(root, [path.parent])
    try:
        try:
            _write_new(new, [data])
            _take_place(new, path, data)
        finally:
            new.unlink(missing_ok=True)
        _sync_folder(path.parent)
    except FileExistsError:
        raise NotAdded(f"{folder.name(path)} is there already and was left as it is") from None
    except OSError as error:
        raise NotAdded(f"{folder.name(path)} can't be written: {reason(error)}") from error


def create_folders(root: Path, paths: Sequence[Path]) -> None:
    """Create folders of the content folder where they are not there yet. Raises `NotAdded`."""
    folder = ContentFolder(root)
    for path in paths:
        _refuse_outside(folder, path)
        try:
            path.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise NotAdded(f"{folder.name(path)} can't be made: {reason(error)}") from error


def create_export(out: Path, files: Mapping[str, Iterable[str]]) -> None:
    """Create the folder `out` with these files, all or none; one that is there must be empty. Raises `NotAdded`.

    Of each file there are the pieces of its text, written as they come.
    """
    try:
        if os.path.lexists(out) and (out.is_symlink() or not out.is_dir() or any(out.iterdir())):
            raise NotAdded(f"{quoted(str(out))} is there already and not an empty folder; name a new one")
        out.parent.mkdir(parents=True, exist_ok=True)
        new = Path(tempfile.mkdtemp(prefix=f".{out.name}.", suffix=".new", dir=out.parent))
        try:
            for name, text in files.items():
                _write_new(new / name, (piece.encode() for piece in text))
            new.chmod(0o777 & ~_umask())
            if out.is_dir():
                out.rmdir()  # fails where something came in meanwhile
            new.rename(out)
        finally:
            shutil.rmtree(new, ignore_errors=True)
        _sync_folder(out.parent)
    except OSError as error:
        raise NotAdded(f"{quoted(str(out))} can't be written: {reason(error)}") from error


def _newest_form(folder: ContentFolder) -> LogForm:
    """Return the form of the last log file by name that can be read, so that a new one opens as it does."""
    for path in reversed(folder.files("press-log", ".csv")):
        try:
            return _form_at(folder, path)
        except NotAdded:
            continue
    return LogForm()


def _form_at(folder: ContentFolder, path: Path) -> LogForm:
    name = folder.name(path)
    if folder.text(path) is None:  # not a file, outside, too large, not UTF-8
        raise NotAdded(f"{name}: {folder.problems[-1].message}")
    try:
        return form_of(path.read_bytes())
    except (NoHeading, NotATableError) as refused:
        raise NotAdded(f"{name}: nothing can be added to it while {refused}") from refused
    except OSError as error:
        raise NotAdded(f"{name} can't be opened: {reason(error)}") from error


def _append(folder: ContentFolder, path: Path, data: bytes) -> bytes:
    """Append in one write, wait for the disk, and return the bytes that stand before."""
    _refuse_outside(folder, path)
    try:
        handle = os.open(path, os.O_RDWR | os.O_APPEND | getattr(os, "O_BINARY", 0))
        try:
            written = os.write(handle, data)
            end = os.lseek(handle, 0, os.SEEK_CUR)
            if written < len(data):  # the disk is full: half a row is worse than none
                os.ftruncate(handle, end - written)
                raise NotAdded(f"{folder.name(path)} can't be written: no room is left on the disk")
            os.fsync(handle)
        finally:
            os.close(handle)
        return path.read_bytes()[: end - len(data)]
    except OSError as error:
        raise NotAdded(f"{folder.name(path)} can't be written: {reason(error)}") from error


def _refuse_outside(folder: ContentFolder, path: Path) -> None:
    if not folder.stays_inside(path):
        raise NotAdded(
            f"{folder.name(path)} is a link to a place outside the content folder; nothing was written there"
        )


def _write_new(path: Path, data: Iterable[bytes]) -> None:
    with path.open("xb") as file:
        file.writelines(data)
        file.flush()
        os.fsync(file.fileno())


def _take_place(new: Path, path: Path, data: bytes) -> None:
    """Give the finished file its name, which must be free."""
    try:
        os.link(new, path)
    except FileExistsError:
        raise
    except OSError:  # a disk that knows no second names for a file
        _write_new(path, [data])


def _sync_folder(folder: Path) -> None:
    if os.name != "posix":  # elsewhere a folder can't be opened to be synced
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _text(body: bytes, form: LogForm) -> str:
    return body.decode(form.encoding).rstrip("\r\n")
