"""The script that the catalogue's filters work on: a column for each thing said of a project, each word once."""

from __future__ import annotations

import json
from collections.abc import Hashable, Sequence

from maker_site.pages import addresses
from maker_site.pages.parts import Picture
from maker_site.pages.workshop.views import CatalogueEntry

ANY = "*"
"""Stands for a project's id in the addresses of its pages."""


def catalogue_script(entries: Sequence[CatalogueEntry]) -> str:
    """Return the script that holds a row for each project; read by the page from the disk, without fetching.

    What many projects share (a blank, a day, an outcome) is said once in `texts` and named by its number in a column;
    `for` holds the numbers of a project's occasions. A missing day or outcome is an empty text.
    """
    texts = _Numbers()
    data = {
        "pages": [addresses.project(ANY), addresses.card(ANY)],
        "id": [each.id for each in entries],
        "title": [each.tile.link.text for each in entries],
        "words": [each.words for each in entries],
        "blank": [texts.of(each.tile.blank) for each in entries],
        "substrate": [texts.of(each.tile.substrate) for each in entries],
        "family": [texts.of(each.family) for each in entries],
        "method": [texts.of(each.tile.method) for each in entries],
        "for": [[texts.of(word) for word in each.tile.occasions] for each in entries],
        "year": [texts.of(each.year) for each in entries],
        "made": [texts.of(each.tile.made.words if each.tile.made else "") for each in entries],
        "outcome": [texts.of(each.tile.outcome or "") for each in entries],
        "pictures": {index: _picture(each.tile.picture) for index, each in enumerate(entries) if each.tile.picture},
        "texts": texts.all,
    }
    return f"window.catalogue = {json.dumps(data, ensure_ascii=False, separators=(',', ':'))};\n"


def _picture(shown: Picture) -> list[object]:
    return [shown.modern[0].address, shown.fallback.address, shown.width, shown.height, shown.text]


class _Numbers:
    """Texts in the order first met, each once."""

    def __init__(self) -> None:
        self._numbers: dict[Hashable, int] = {}

    def of(self, text: str) -> int:
        """Return a text's number."""
        return self._numbers.setdefault(text, len(self._numbers))

    @property
    def all(self) -> list[Hashable]:
        """Return all texts, each at its number."""
        return list(self._numbers)
