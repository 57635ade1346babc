"""Themes: where they are found, which parent they lean on, what the maker puts in front of them."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import yaml

from maker_site.frozen import frozen

USUAL: Final = "print-room"
_SHIPPED: Final = "_themes"
_DEEPEST: Final = 5


class ThemeProblem(ValueError):
    """A theme that can't be used; the sentence says why."""


@frozen
class Theme:
    """The folders of a theme, those that win first."""

    name: str
    folders: tuple[Path, ...]
    passed: tuple[Path, ...] = ()
    """Files that are not there: were one of them, another folder would have been taken."""

    @property
    def templates(self) -> tuple[Path, ...]:
        """Folders of templates, those that win first."""
        return tuple(folder / "pages" for folder in self.folders)

    def assets(self) -> dict[str, Path]:
        """Return every asset by name; the same name nearer to the maker wins."""
        return self._files("assets")

    def papers(self) -> dict[str, Path]:
        """Return every template for paper by name; the same name nearer to the maker wins."""
        return self._files("paper")

    def _files(self, kind: str) -> dict[str, Path]:
        found: dict[str, Path] = {}
        for folder in reversed(self.folders):
            base = folder / kind
            if base.is_dir():
                found |= {
                    path.relative_to(base).as_posix(): path
                    for path in sorted(base.rglob("*"))
                    if path.is_file() and not path.name.startswith(".")
                }
        return dict(sorted(found.items()))


def theme(name_or_path: str, content: Path) -> Theme:
    """Return the theme of a name (one that ships) or a path, its parents, and content/theme in front of them all."""
    folders: list[Path] = []
    passed: list[Path] = []
    folder = _folder(name_or_path, passed)
    while True:
        folders.append(folder)
        parent = _parent(folder)
        if parent is None:
            break
        if len(folders) > _DEEPEST:
            raise ThemeProblem(f"the theme {name_or_path} has more than {_DEEPEST} parents; does one name itself?")
        folder = _folder(parent, passed, beside=folder)
    own = content / "theme"
    return Theme(name_or_path, (own, *folders) if own.is_dir() else tuple(folders), tuple(passed))


def shipped() -> Path:
    """Return the folder of the themes that ship with the program."""
    package = Path(__file__).resolve().parent.parent
    installed = package / _SHIPPED
    return installed if installed.is_dir() else package.parent / "themes"


def _folder(name_or_path: str, passed: list[Path], beside: Path | None = None) -> Path:
    places = [shipped() / name_or_path, Path(name_or_path)]
    if beside:
        places.insert(0, beside.parent / name_or_path)
    for place in places:
        if (place / "theme.yaml").is_file():
            return place
        passed.append(place / "theme.yaml")
    known = ", ".join(sorted(path.parent.name for path in shipped().glob("*/theme.yaml")))
    raise ThemeProblem(f"there is no theme “{name_or_path}” (no theme.yaml in it); those that ship are: {known}")


def _parent(folder: Path) -> str | None:
    head = yaml.safe_load((folder / "theme.yaml").read_text(encoding="utf-8")) or {}
    parent = head.get("parent") if isinstance(head, dict) else None
    return str(parent) if parent else None
