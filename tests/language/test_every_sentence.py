"""Nothing that the site says goes by the catalogue: in a made-up language the demo has no plain English left."""

import datetime
import re
from collections.abc import Iterator

import pytest

from maker_site.language import Language, speaking, speech
from maker_site.pages.menu import menu
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.public.plan import public_frame, public_pages
from maker_site.pages.workshop.plan import workshop_batches, workshop_frame
from maker_site.pages.workshop.views import CardPage
from maker_site.paper.card import card_document
from maker_site.paper.menu import menu_document
from maker_site.paper.sizes import sheet_size
from maker_site.records import words
from maker_site.writer.making import read_notebook
from maker_site.writer.printing import card_of, menu_card_of
from maker_site.writer.rendering import Renderer
from maker_site.writer.themes import shipped, theme
from tests.catalogues import gathered
from tests.conftest import CONTENT
from tests.language.pseudo import (
    alike,
    pairs_of,
    pseudo_catalogue,
    shown,
    texts_in,
    unexplained,
    workshop_in,
    written_by_hand,
)

THEME = shipped() / "print-room"
SYMBOLS = frozenset(pairs_of("RGB CMYK PDF PNG JPEG TIFF SVG QR PTFE bar psi kPa min ppi sRGB maker-site find check"))
"""Units, formats and names of things that are the same everywhere."""


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Notebook]:
    """The demo workshop where nobody's language but the made-up one is spoken, under a tag that CLDR knows."""
    folder = tmp_path_factory.mktemp("speech")
    pseudo_catalogue(gathered(), folder / "catalogues", "he")
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(speech, "CATALOGUES", folder / "catalogues")
        speech._catalogue.cache_clear()
        found, _ = read_notebook(workshop_in("he_IL", CONTENT, folder / "content"), datetime.date(2026, 11, 25))
        assert found
        with speaking(Language("he", "rtl")):
            yield found
    speech._catalogue.cache_clear()


@pytest.fixture(scope="module")
def pages(book: Notebook) -> list[tuple[Page, str]]:
    """Every page of both copies, as HTML."""
    found = []
    for frame, built in (
        (workshop_frame(book), (page for batch in workshop_batches(book) for page in batch.build())),
        (public_frame(book), public_pages(book)),
    ):
        renderer = Renderer(theme("print-room", book.workshop.root), frame)
        found += [(page, renderer.html(page)) for page in built if isinstance(page, Page)]
    return found


def test_a_sentence_that_nobody_made_translatable_is_found() -> None:
    known = frozenset(pairs_of("Slate coaster"))
    told = [alike("Made of {what}.").format(what="Slate coaster"), "Made of slate", "slate coaster", "193 °C"]
    assert list(unexplained(told, known)) == ["Made of slate"]


def test_no_page_says_what_the_catalogue_does_not_know(book: Notebook, pages: list[tuple[Page, str]]) -> None:
    known = written_by_hand(book.workshop.root) | SYMBOLS
    found = {(text, page.address) for page, html in pages for text in unexplained(shown(html), known)}
    assert not {(text, address) for text, address in found if not _from_check(text, book)}


def _from_check(text: str, book: Notebook) -> bool:
    """Tell whether it is a problem as `maker-site check` tells it, in English, with its file before it."""
    return any(problem.message in text for problem in book.cautions)


def test_words_of_the_trade_are_said_where_they_are_shown(pages: list[tuple[Page, str]]) -> None:
    lists = (words.METHODS, words.SUBSTRATES, words.PRESS_KINDS, words.SUPPLY_KINDS, words.FACES, words.COOLS)
    trade = {word for words in lists for word in words} | set(words.DEFECTS) | {"light", "medium", "firm"}
    assert not {
        (text, page.address) for page, html in pages for text in map(str.strip, shown(html)) if text.lower() in trade
    }


def test_no_paper_says_what_the_catalogue_does_not_know(book: Notebook, pages: list[tuple[Page, str]]) -> None:
    known = written_by_hand(book.workshop.root) | SYMBOLS
    cards = [card_of(page.view) for page, _ in pages if isinstance(page.view, CardPage)]
    menu_card = menu_card_of(book, menu(book, lambda _: None))
    papers = [
        card_document(cards, sheet_size("A6"), "", ("he", "IL")),
        menu_document(menu_card, sheet_size("A4"), 0, "", ("he", "IL"), {}),
    ]
    assert cards
    assert not {text for paper in papers for text in unexplained(texts_in(paper.data), known)}


def test_sentences_are_whole(book: Notebook, pages: list[tuple[Page, str]]) -> None:
    """A message neither begins nor ends with a space: it would be half of a sentence."""
    glued = [each.id for each in gathered() if each.id and re.search(r"^\s|\s$", str(each.id))]
    assert set(glued) <= {", ", "; "}


SENTENCE = re.compile(r"""["'`>\[] ?([A-Z][a-z]+ [a-z]+|[A-Z][a-z]+ (?:[a-z]+ )*\$\{|[a-z]+ [a-z]+ [a-z]+\b)""")
"""How a text that is there to be read looks between quotes, or in Typst's brackets."""
TOLD = ("panic(", "serif")
"""What the command line tells, in English; names of fonts."""


@pytest.mark.parametrize(
    "line", ['x = "Nothing found.";', "`Sorted by ${name}`", "' shown of all '", "#text[Stack from below]"]
)
def test_a_sentence_in_a_script_or_on_paper_is_found(line: str) -> None:
    assert SENTENCE.search(line)


@pytest.mark.parametrize("name", sorted(path.name for path in THEME.rglob("*") if path.suffix in {".js", ".typ"}))
def test_scripts_and_papers_are_handed_their_words(name: str) -> None:
    (path,) = THEME.rglob(name)
    lines = [re.sub(r"^\s*//.*|\s//\s.*", "", line) for line in path.read_text("utf-8").splitlines()]
    assert [line for line in lines if SENTENCE.search(line) and not any(each in line for each in TOLD)] == []
