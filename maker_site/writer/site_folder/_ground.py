"""What lies in the output folder at an address, without following a link. Inner module."""

import os
import stat
from pathlib import Path

from maker_site.writer.site_folder._problem import SiteFolderProblem


class InTheWay(SiteFolderProblem):
    """Something that the tool did not make lies where a file is to be; it is named, and is left as it is."""


class Ground:
    """Looks at the files under one folder.

    Each folder is looked at once, so an instance is good for one piece of work.
    """

    def __init__(self, out: Path) -> None:
        self._out = str(out)
        self._folders: dict[str, bool] = {"": True}

    def path(self, address: str) -> str:
        """Give the path of an address."""
        return f"{self._out}{os.sep}{address}"

    def size(self, address: str) -> int | None:
        """Give the size in bytes of the plain file at an address, or None where there is nothing.

        Raises `InTheWay` for a link or a folder at the address, and for a link or a file in place of a folder
        above it.
        """
        path = self.path(address)
        found = self._look_at(path)
        folder, _, name = address.rpartition("/")
        if not self.has_folder(folder):
            self._look_at(self.path(name))  # for a name too long for the drive: told now, not when it is moved
            return None
        if found is None:
            return None
        if not stat.S_ISREG(found.st_mode):
            raise InTheWay(
                f"“{path}” is a {_kind(found.st_mode)}, and a file is to be made there. Move it away and make again."
            )
        return found.st_size

    def has_folder(self, folder: str) -> bool:
        """Whether a folder of the site is there; raises `InTheWay` for a link or a file in its place."""
        known = self._folders.get(folder)
        if known is None:
            known = self._folders[folder] = self._look_at_folder(folder)
        return known

    def _look_at_folder(self, folder: str) -> bool:
        above, _, name = folder.rpartition("/")
        if not self.has_folder(above):
            self._look_at(self.path(name))  # as in `size`
            return False
        path = self.path(folder)
        found = self._look_at(path)
        if found is not None and not stat.S_ISDIR(found.st_mode):
            raise InTheWay(
                f"“{path}” is a {_kind(found.st_mode)}, and a folder is needed there; nothing is written through it. "
                "Move it away and make again."
            )
        return found is not None

    @staticmethod
    def _look_at(path: str) -> os.stat_result | None:
        try:
            return os.lstat(path)
        except (FileNotFoundError, NotADirectoryError):
            return None

    def make_folder(self, folder: str) -> None:
        """Make a folder of the site and those above it, where they are not there."""
        if not self.has_folder(folder):
            Path(self.path(folder)).mkdir(parents=True, exist_ok=True)
            self._folders[folder] = True


def _kind(mode: int) -> str:
    if stat.S_ISLNK(mode):
        return "link"
    if stat.S_ISDIR(mode):
        return "folder"
    return "file" if stat.S_ISREG(mode) else "device or pipe"
