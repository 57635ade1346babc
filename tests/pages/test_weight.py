"""Every page stays light whatever the workshop grows to: each list is crowded past its page here, with long words.

Nothing is measured against a whole large workshop. A list that goes over pages weighs on a full page what it weighs on
every other one, so a workshop is enough in which each list fills more than one; a list that does not go over pages is
crowded with what ten thousand projects would bring it.
"""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.public.plan import public_frame, public_pages
from maker_site.pages.workshop.plan import workshop_batches, workshop_frame
from maker_site.records import load
from maker_site.writer.rendering import Renderer
from maker_site.writer.themes import theme
from tests.crowded_workshop import crowded_files
from tests.small_workshop import write_workshop

MOST_BYTES = 300_000
CROWDED = ("home", "search", "catalogue", "costs", "settings", "blanks", "blanks/b-000", "projects/p-000", "presses")
CROWDED += ("settings/slate", "presses/clam-00", "supplies", "writing", "menu")


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Notebook:
    findings = load(write_workshop(tmp_path_factory.mktemp("crowded"), crowded_files()))
    assert findings.workshop, findings.errors
    return Notebook(findings.workshop, {}, (), date(2026, 5, 1))


def weights(book: Notebook, frame: object, pages: Iterator[Page]) -> dict[str, int]:
    """Give the bytes of each page as it is written."""
    renderer = Renderer(theme("print-room", Path()), frame)
    return {page.address: len(renderer.html(page).encode()) for page in pages}


def test_no_page_of_the_workshop_copy_is_heavy(book: Notebook) -> None:
    batches = [batch for batch in workshop_batches(book) if batch.name in CROWDED]
    assert {batch.name for batch in batches} == set(CROWDED)
    pages = (page for batch in batches for page in batch.build() if isinstance(page, Page))
    found = weights(book, workshop_frame(book), pages)
    # each of these lists is crowded past its first page
    for second in (
        *("catalogue/2.html", "blanks/pages/2.html", "settings/slate/2.html", "blanks/b-000/settings/2.html"),
        *("writing/pages/2.html", "menu/part-0/2.html", "costs/page/2.html"),
    ):
        assert second in found
    assert {address: weight for address, weight in found.items() if weight > MOST_BYTES} == {}


def test_no_page_of_the_public_copy_is_heavy(book: Notebook) -> None:
    one_of_each = {"tutorials/p-000.html", "articles/a-0.html"}
    pages = (
        page
        for page in public_pages(book)
        if isinstance(page, Page)
        and (page.address in one_of_each or not page.address.startswith(("tutorials/p-", "articles/a-")))
    )
    found = weights(book, public_frame(book), pages)
    for second in (
        *("tutorials/pages/2.html", "articles/pages/2.html", "on/slate/2.html", "for/wedding/2.html"),
        *("menu/part-0/2.html", "gifts/for-regatta/2.html"),
    ):
        assert second in found
    assert {address: weight for address, weight in found.items() if weight > MOST_BYTES} == {}
