"""A shop in Israel has pages that run from right to left, keep within the screen, and break no rule of access.

Only the pages are made, without pictures and papers: their places are kept, and nothing else is looked at here.
"""

from datetime import date
from pathlib import Path

import pytest

from maker_site.language import speaking
from maker_site.pages.page import Page, Text
from maker_site.pages.public.plan import public_frame, public_pages
from maker_site.pages.workshop.plan import workshop_batches, workshop_frame
from maker_site.writer.making import read_notebook
from maker_site.writer.rendering import Renderer
from maker_site.writer.themes import theme
from tests.conftest import CONTENT, Once
from tests.language.pseudo import workshop_in

from .axe import violations
from .fakes import write_page
from .kinds import KINDS, Kind, each, page_of
from .layout import sideways
from .visits import DESK, PHONE, resize, visit

pytestmark = [pytest.mark.browser, pytest.mark.judge]


def write_pages(content: Path, out: Path) -> None:
    """Write every page of both copies, with the files of the theme."""
    book, problems = read_notebook(content, date(2026, 11, 25))
    assert book, problems
    with speaking(book.language):
        for copy, frame, pages in (
            ("workshop", workshop_frame(book), (page for batch in workshop_batches(book) for page in batch.build())),
            ("public", public_frame(book), public_pages(book)),
        ):
            renderer = Renderer(theme("print-room", content), frame)
            files = {address: path.read_text("utf-8") for address, path in renderer.assets.items()}
            for page in pages:
                if isinstance(page, Page | Text):
                    files[page.address] = page.text if isinstance(page, Text) else renderer.html(page)
            for address, text in files.items():
                path = out / copy / address
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_text(text, "utf-8")


@pytest.fixture(scope="session")
def leftward_site(once: Once) -> Path:
    """The demo's pages as a shop in Israel has them."""
    return once("leftward", lambda out: write_pages(workshop_in("he_IL", CONTENT, out / "content"), out))


def test_a_leftward_page_wider_than_the_screen_is_noticed(browser, tmp_path):
    body = '<div style="width: 500px">Slate</div>'
    page = write_page(tmp_path, body)
    page.write_text(page.read_text("utf-8").replace("<html", '<html dir="rtl"', 1), "utf-8")
    with visit(browser, page, screen=PHONE) as seen:
        assert sideways(seen.page)


@each(KINDS)
def test_a_leftward_page_is_sound(browser, axe_source, leftward_site: Path, kind: Kind):
    with visit(browser, page_of(kind, leftward_site), screen=DESK) as seen:
        page = seen.page
        assert page.evaluate("() => [document.documentElement.lang, document.documentElement.dir]") == ["he-IL", "rtl"]
        assert sideways(page) == []
        resize(page, PHONE)
        assert sideways(page) == []
        assert violations(page, axe_source) == []


def test_a_drawing_keeps_its_direction(browser, leftward_site: Path):
    with visit(browser, leftward_site / "workshop" / "cards" / "allotment-tally-coasters.html") as seen:
        directions = "() => [...document.querySelectorAll('.mark > g')].map((one) => getComputedStyle(one).direction)"
        assert set(seen.page.evaluate(directions)) == {"ltr"}


def test_a_page_is_written_from_its_own_side(browser, leftward_site: Path):
    with visit(browser, leftward_site / "workshop" / "projects" / "heron-river-plate.html", screen=DESK) as seen:
        places = "(names) => names.map((name) => document.querySelector(name).getBoundingClientRect().left)"
        stub, words = seen.page.evaluate(places, [".page-head .stub", ".page-head h1"])
        assert stub > words
