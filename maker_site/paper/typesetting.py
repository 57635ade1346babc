"""A document to PDF: tagged, with its fonts in it, the same bytes for the same input."""

from __future__ import annotations

import json
import re
import shutil
import tempfile
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from maker_site.frozen import frozen
from maker_site.language import direction

if TYPE_CHECKING:  # imported when something is to be set
    import typst

STANDARD: Final = "ua-1"
"""PDF/UA-1, ISO 14289-1: what a reader that can't see needs is there, or nothing is made."""
STAND_IN: Final = "□"
"""Printed for a character that no font has."""
_MISSING: Final = re.compile(r'the text `"((?:[^"\\]|\\.)*)"` could not be displayed')
_SAID: Final = re.compile(r'panicked with: "?([^"\\]*)"?')
_ESCAPED: Final = re.compile(r"\\(?:u\{([0-9a-fA-F]+)\}|(.))")
_UNWRITTEN: Final = {"n": "\n", "r": "\r", "t": "\t", "0": "\0"}
_MOST_TRIES: Final = 20
"""A long list of missing characters may come in parts."""
_FILES: Final = "files"


class PaperProblem(ValueError):
    """A document that can't be set, with a sentence that says why."""


@dataclass(frozen=True, slots=True)
class Document:
    """What is to be set."""

    template: str
    """A file of the theme, ``card.typ``."""
    title: str
    language: str
    """ISO 639, ``en``."""
    region: str | None
    """ISO 3166, ``GB``."""
    data: Mapping[str, Any]
    """What the template shows; nothing but what JSON holds."""
    files: Mapping[str, Path] = field(default_factory=dict)
    """Pictures by the name that the data calls them."""


@frozen
class Paper:
    """A document that was set."""

    pdf: bytes
    missing: str
    """Characters that no font has, each once, in the order of their numbers."""


class Typesetter:
    """Sets documents by the templates of a theme. Make one with `typesetter`, which clears up after it."""

    def __init__(self, folder: Path, fonts: Path | None) -> None:
        """For `typesetter` only."""
        import typst

        self._folder = folder
        self._fonts = typst.Fonts(
            include_system_fonts=False, include_embedded_fonts=True, font_paths=[fonts] if fonts else []
        )
        self._compilers: dict[str, typst.Compiler] = {}

    @property
    def families(self) -> tuple[str, ...]:
        """Return the names of all fonts there are: the typesetter's own and the maker's."""
        return tuple(sorted(set(self._fonts.families())))

    def set(self, document: Document) -> Paper:
        """Return the document as PDF. Raises `PaperProblem` where the template is wrong."""
        import typst

        self._place(document.files)
        data = {
            **document.data,
            "title": document.title,
            "language": document.language,
            "region": document.region,
            "direction": direction(document.language),
        }
        missing: set[str] = set()
        for _ in range(_MOST_TRIES):
            try:
                pdf = self._compiler(document.template).compile(
                    format="pdf",
                    sys_inputs={"data": json.dumps(_without(data, missing), ensure_ascii=False)},
                    pdf_standards=[STANDARD],
                    timestamp=0,
                )
            except typst.TypstError as error:
                found = set("".join(_missing(error.diagnostic))) - missing
                if not found:
                    raise PaperProblem(_sentence(document.template, error)) from error
                missing |= found
            else:
                assert isinstance(pdf, bytes)
                return Paper(pdf, "".join(sorted(missing)))
        raise PaperProblem(f"{document.title}: too many characters that no font has")

    def _compiler(self, template: str) -> typst.Compiler:
        if template not in self._compilers:
            path = self._folder / template
            if not path.is_file():
                raise PaperProblem(f"the theme has no paper template “{template}”")
            import typst

            self._compilers[template] = typst.Compiler(
                path, root=self._folder, font_paths=self._fonts, ignore_system_fonts=True
            )
        return self._compilers[template]

    def _place(self, files: Mapping[str, Path]) -> None:
        """Put pictures where a template may read them; it can read nothing else."""
        for name, path in files.items():
            target = self._folder / _FILES / name
            if not target.exists():
                target.parent.mkdir(exist_ok=True)
                shutil.copyfile(path, target)


@contextmanager
def typesetter(templates: Mapping[str, Path], fonts: Path | None) -> Iterator[Typesetter]:
    """Give a typesetter for templates by name, and a folder of the maker's own fonts where there is one."""
    with tempfile.TemporaryDirectory(prefix="maker-site-") as name:
        folder = Path(name).resolve()
        for template, path in templates.items():
            target = folder / template
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(path, target)
        yield Typesetter(folder, fonts)


def missing_words(missing: str) -> str:
    """Return a sentence that names the characters that no font has."""
    named = ", ".join(f"“{each}” (U+{ord(each):04X})" for each in missing)
    return f"no font has {named}, so {STAND_IN} stands there; put a font that has it into content/fonts/"


def _missing(diagnostic: str) -> Iterable[str]:
    """Return the texts that a compiler could not show, out of the words of its error."""
    for match in _MISSING.finditer(diagnostic):
        yield _ESCAPED.sub(
            lambda part: chr(int(part[1], 16)) if part[1] else _UNWRITTEN.get(part[2], part[2]), match[1]
        )


def _without(value: Any, missing: set[str]) -> Any:
    """Return data with every missing character replaced."""
    if not missing:
        return value
    if isinstance(value, str):
        return value.translate({ord(each): STAND_IN for each in missing})
    if isinstance(value, Mapping):
        return {key: _without(each, missing) for key, each in value.items()}
    if isinstance(value, (list, tuple)):
        return [_without(each, missing) for each in value]
    return value


def _sentence(template: str, error: typst.TypstError) -> str:
    """Return what is wrong with a template and where; what a template itself says of its input stands alone."""
    if said := _SAID.fullmatch(error.message):
        return said[1]
    place = re.search(r"┌─ (\S+?:\d+)(?::\d+)?", error.diagnostic or "")
    hints = f" ({'; '.join(error.hints)})" if error.hints else ""
    where = place[1].rpartition("/")[2] if place else template
    return f"{where}: {error.message}{hints}"
