"""The maker's folder: which files are records, read as text, never outside the folder.

Inner module of the records room.
"""

from __future__ import annotations

import os
import re
import stat
from collections.abc import Iterator
from pathlib import Path
from typing import Final

from maker_site.records.problems import Problem, Severity, nearest, quoted
from maker_site.records.remembered import Forgetful, Remembered

FOLDERS: Final = ("blanks", "presses", "supplies", "projects", "articles", "press-log", "theme", "fonts")
FILES: Final = ("shop.yaml", "about.md")
PICTURE_ENDINGS: Final = (
    ".jpg",
    ".jpeg",
    ".png",
    ".webp",
    ".tif",
    ".tiff",
    ".heic",
    ".heif",
    ".avif",
    ".gif",
)
_LISTS: Final = "index"
"""A page of this name lists the others of its folder, so no record may have it."""
RECORD_ID: Final = re.compile(r"[^\W_][\w-]*(?:\.[\w-]+)*")
_ALSO_MEANT: Final = {
    ".yaml": (".yaml", ".yml"),
    ".md": (".md", ".markdown", ".txt"),
    ".csv": (".csv", ".tsv", ".txt", ".xlsx", ".ods"),
}
"""For the ending of a record's file: endings, in capitals too, of files that were perhaps meant to be read."""
_LARGEST_TEXT: Final = 8 * 1024 * 1024


class ContentFolder:
    """Reads from one folder and collects what is wrong with its files."""

    def __init__(self, root: Path, remembered: Remembered | None = None) -> None:
        self.root = root
        self.remembered: Remembered = remembered or Forgetful()
        """What the reading before this one understood."""
        self._true_root = Path(os.path.realpath(root))
        self.problems: list[Problem] = []

    def tell(self, file: str, message: str, *, line: int = 0, severity: Severity = Severity.ERROR) -> None:
        """Note a problem with a file as a whole."""
        self.problems.append(Problem(file, line, "", message, severity))

    def name(self, path: Path) -> str:
        """Return the path from the content folder, with forward slashes; a byte that is no text becomes ``?``."""
        return path.relative_to(self.root).as_posix().encode("utf-8", "replace").decode()

    def stays_inside(self, path: Path) -> bool:
        """Tell whether the path, its links followed, is inside the content folder."""
        real = os.path.realpath(path)
        self.remembered.is_linked |= real != f"{self._true_root}{os.sep}{path.relative_to(self.root)}"
        return Path(real).is_relative_to(self._true_root)

    def holds(self, path: Path) -> bool:
        """Tell whether there is anything of that name, be it a link that leads nowhere."""
        return os.path.lexists(path)

    def text(self, path: Path) -> str | None:
        """Return a file's text, or None when it can't be read (and the problem is noted)."""
        name = self.name(path)
        if not self.stays_inside(path):
            self.tell(name, "this is a link to a file outside the content folder; copy the file in instead")
            return None
        try:
            status = path.stat()
            if not stat.S_ISREG(status.st_mode):
                self.tell(name, "this is not a file")
                return None
            if status.st_size > _LARGEST_TEXT:
                self.tell(name, f"the file is larger than {_LARGEST_TEXT // 1024 // 1024} MB; is it text?")
                return None
            raw = path.read_bytes()
        except OSError as error:
            self.tell(name, f"the file can't be opened: {reason(error)}")
            return None
        spreadsheet = raw[:2] in (b"\xff\xfe", b"\xfe\xff")  # its "Unicode text"
        encoding = "utf-16" if spreadsheet else "utf-8-sig"
        try:
            return raw.decode(encoding)
        except UnicodeDecodeError as error:
            line = raw[: error.start].count(b"\n") + 1
            self.tell(
                name,
                f"line {line} holds a byte that is not UTF-8 text (hexadecimal {raw[error.start]:02x}); "
                "save the file as UTF-8",
                line=line,
            )
            return None

    def question_strangers(self) -> None:
        """Question entries at the top whose names are near to one that is read."""
        for path in self.entries(self.root):
            known = FOLDERS if path.is_dir() else FILES
            meant = "" if path.name in known else nearest(path.name, known)
            if meant:
                self.tell(self.name(path), f"{quoted(path.name)} is not read{meant}", severity=Severity.CAUTION)

    def entries(self, folder: Path) -> list[Path]:
        """Return what lies in a folder, by name, hidden things (``.``) and things set aside (``_``) left out.

        None where there is no folder, or where it can't be read or lies outside (and the problem is noted).
        """
        if not folder.is_dir():
            return []
        if not self.stays_inside(folder):
            sentence = "this is a link to a folder outside the content folder; move the folder in instead"
            self.tell(self.name(folder), sentence)
            return []
        try:
            return sorted(path for path in folder.iterdir() if not path.name.startswith((".", "_")))
        except OSError as error:
            self.tell(self.name(folder), f"the folder can't be opened: {reason(error)}")
            return []

    def records(self, folder: str, inner: str | None = None, ending: str = ".yaml") -> Iterator[tuple[str, Path]]:
        """Yield the id and the file of each record in a folder, by id.

        A record is ID and `ending`, or, where `inner` names it, ID/`inner`, which may be missing.
        """
        found: dict[str, Path] = {}
        for path in self.entries(self.root / folder):
            record = self._record_at(path, inner, ending)
            if record is None:
                continue
            if (refused := wrong_id(record)) is not None:
                self.tell(self.name(path), refused)
                continue
            if record in found:
                self.tell(self.name(path), f"the record “{record}” is there twice: as a file and as a folder")
                continue
            found[record] = path / inner if inner and path.is_dir() else path
        yield from sorted(found.items())  # a before a-0, though a-0.yaml is before a.yaml

    def _record_at(self, path: Path, inner: str | None, ending: str) -> str | None:
        if path.is_dir():
            return path.name if inner else None
        if path.suffix != ending and path.suffix.lower() in _ALSO_MEANT[ending]:
            self.tell(
                self.name(path), f"this file is not read; save it as {path.stem}{ending}", severity=Severity.CAUTION
            )
        return path.stem if path.suffix == ending else None

    def files(self, folder: str, ending: str) -> list[Path]:
        """Return the files of one ending in a folder, by name; those that were perhaps meant are questioned."""
        return [path for path in self.entries(self.root / folder) if self._record_at(path, None, ending)]

    def inner_file(self, base: Path, inner: str) -> str | None:
        """Return a sentence when `inner` (already without ``..``) is no readable file inside `base`, else None."""
        path = base / inner
        if not self.stays_inside(path):
            return f"{quoted(inner)} is a link that leaves the content folder; copy the file in instead"
        try:
            if path.is_file():
                return None
            if path.exists():
                return f"{quoted(inner)} is not a file"
            here = [each.name for each in path.parent.iterdir()]
        except OSError:  # no such folder, or a name longer than a name can be
            here = []
        return f"there is no file {quoted(inner)} in {self.name(base)}{nearest(path.name, here)}"


def pictures_in(folder: Path) -> list[str]:
    """Return the names of the pictures in a folder, sorted; none where there is no folder."""
    if not folder.is_dir():
        return []
    return sorted(
        path.name
        for path in folder.iterdir()
        if path.suffix.lower() in PICTURE_ENDINGS and not path.name.startswith(".") and path.is_file()
    )


def reason(error: OSError) -> str:
    """Return the plain reason of an operating system's error."""
    return (error.strerror or str(error)).lower()


def wrong_id(record: str) -> str | None:
    """Return a sentence when this can't be the name of a record, else None."""
    if record == _LISTS:
        return f"“{_LISTS}” is the name of the page that lists the others; give the record another name"
    if RECORD_ID.fullmatch(record):
        return None
    return f"{quoted(record)} can't be the name of a record; use letters, digits and hyphens, like {as_id(record)}"


def as_id(text: str) -> str:
    """Return the nearest name that a record can have."""
    return re.sub(r"[^\w]+", "-", text.lower()).strip("-_") or "slate-coaster"
