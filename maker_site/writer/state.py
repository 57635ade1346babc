"""How the last make left things, so small that the next can take it up: who looked at what, and what came of it."""

from __future__ import annotations

import marshal
from collections import defaultdict
from typing import Final

from maker_site.writer.kept import Kept
from maker_site.writer.looked import Looked

_KIND, _NAME = "state", "last"
_FORM: Final = 2
"""Goes up when what is kept changes its shape."""


class State:
    """What is true of a site and of the records that it was made of; changed as a make goes on."""

    def __init__(self) -> None:
        self.looked = Looked()
        self.hot: dict[str, str] = {}
        """What is said of a project's setting where it is above a limit."""
        self.apart: dict[str, dict[str, str]] = defaultdict(dict)
        """Digests of the sums that are noted by themselves, by kind and id."""
        self.files: dict[str, dict[str, str]] = defaultdict(dict)
        """Digests of what was found of each picture and each design file, by kind and path."""
        self.singles: dict[str, str] = {}
        """Digests of what is noted as one."""
        self.bases: dict[str, str] = {}
        """What all pages of a copy depend on, by copy."""
        self.pages = 0
        self.asked: dict[str, int] = defaultdict(int)
        """Pictures, with how many batches of pages ask for each, by their addresses in the site."""
        self.menu: bool | None = None
        """Whether there is a menu on paper; None where that is not known."""
        self.manifest = ""
        """Which list of its files the site has."""
        self.site = ""
        """What was seen of the site when it was left."""

    def put(self, kept: Kept, mark: str) -> None:
        """Keep all of it with the mark of the shelf that goes with it."""
        data = (
            *(self.looked.as_data(), self.hot, dict(self.apart), dict(self.files), self.singles, self.bases),
            *(self.pages, dict(self.asked), self.menu, self.manifest, self.site),
        )
        kept.put_bytes(_KIND, _NAME, f"{_FORM} {mark}", marshal.dumps(data))

    @classmethod
    def kept_with(cls, kept: Kept, mark: str) -> State | None:
        """Return what was kept with a mark; None where there is nothing of use."""
        data = kept.get_bytes(_KIND, _NAME, f"{_FORM} {mark}")
        if data is None:
            return None
        found = cls()
        looked, found.hot, apart, files, found.singles, found.bases, found.pages, asked, *rest = marshal.loads(data)
        found.looked = Looked.of(looked)
        found.apart.update(apart)
        found.files.update(files)
        found.asked.update(asked)
        found.menu, found.manifest, found.site = rest
        return found
