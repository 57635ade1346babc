"""What paper says in another language: every word of the site's own comes out of the catalogue."""

import re
from collections.abc import Iterator, Mapping
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from maker_site.language import Language, speaking, speech
from maker_site.pages.menu import menu
from maker_site.paper.card import card_document
from maker_site.paper.menu import menu_document
from maker_site.paper.sizes import sheet_size
from maker_site.paper.transfer import transfer_document
from maker_site.writer.making import read_notebook
from maker_site.writer.printing import card_of_project, language_of, menu_card_of
from maker_site.writer.transfer_job import Asked, sheets_of
from tests.everything import Everything, outside
from tests.paper.bench import LOG, workshop

MAKERS = {
    "shop.yaml": "name: QZSHOP\ncurrency: GBP\nlocale: ja_JP\nlead time: QZDAYS\nprinter: {margin: 5 mm, gap: 4 mm}\n",
    "blanks/slate.yaml": "name: QZBLANK\nsubstrate: slate\nsize: 90 x 60 mm\nbleed: 3 mm\ncode: QZ1\n",
    "presses/clam.yaml": "name: QZPRESS\nkind: flat clamshell\nreadings: [{set: 200 C, measured: 193 C}]\n",
    "press-log/2026.csv": LOG,
    "projects/harbour/project.yaml": (
        "title: QZTITLE\nblank: slate\nmade: 2026-04-18\nartwork: [{file: artwork/wall.png}]\n"
        "share: {published: 2026-04-18, menu: {section: QZPART, name: QZNAME, options: [QZRED]}}\n"
    ),
}
NOT_SHOWN = {"file", "font", "colour", "language", "region", "role", "number", "face_words"}
"""Data that is not read, and what is cut from a sentence that stands whole on the page."""
IDS = {"harbour", "slate"}


@pytest.fixture
def everything(monkeypatch: pytest.MonkeyPatch) -> Language:
    """A language whose catalogue has everything, between brackets."""
    monkeypatch.setattr(speech, "_catalogue", lambda tag: None if tag == "en" else Everything())
    return Language("de", "ltr")


def test_nothing_that_paper_says_goes_past_the_catalogue(tmp_path: Path, everything: Language) -> None:
    book, _ = read_notebook(workshop(tmp_path / "content", MAKERS), date(2026, 5, 1))
    assert book is not None
    project, a4 = book.workshop.projects["harbour"], sheet_size("A4")
    with speaking(everything):
        language = language_of(book)
        sheets = sheets_of(book, [project], Asked(2, a4, None, None))
        documents = [
            card_document([card_of_project(book, project)], a4, "", language),
            menu_document(menu_card_of(book, menu(book, lambda _: None)), a4, 0, "", language, {}),
            transfer_document(sheets.job, sheets.words, "", "", language, {}),
        ]
    assert language == ("de", None)
    shown = {words for document in documents for words in _words(document.data)}
    assert {"[Cautions]", "[How to order]", "[What the sheets have no room for]"} <= shown
    assert {words for words in shown if set(re.findall("[a-z]{2,}", outside(words))) - IDS} == set()


def _words(shown: Any) -> Iterator[str]:
    """Yield every text of a document's data that is there to be read, the lettering of drawings too."""
    if isinstance(shown, str):
        yield from re.findall(r"<(?:title|text)\b[^>]*>(.*?)</", shown) if shown.startswith("<svg") else (shown,)
    elif isinstance(shown, Mapping):
        for name, each in shown.items():
            if name not in NOT_SHOWN:
                yield from _words(each)
    elif isinstance(shown, (list, tuple)):
        for each in shown:
            yield from _words(each)
