"""The pages that only a crowded workshop has: HTML, access and layout on a phone, as for every other kind."""

from collections.abc import Iterable
from datetime import date
from pathlib import Path

import pytest

from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page, Text
from maker_site.pages.public.plan import public_frame, public_pages
from maker_site.pages.workshop.plan import workshop_batches, workshop_frame
from maker_site.records import load
from maker_site.writer.rendering import Renderer
from maker_site.writer.themes import theme
from tests.conftest import Once
from tests.crowded_workshop import crowded_files
from tests.small_workshop import write_workshop

from .axe import COLOUR_RULES, violations
from .layout import sideways
from .nu import remarks
from .visits import PHONE, visit

BATCHES = ("settings/slate", "blanks", "blanks/b-000", "writing", "menu", "catalogue")
PAGES = (
    "workshop/settings/slate/2.html",
    "workshop/blanks/b-000.html",
    "workshop/blanks/b-000/settings/2.html",
    "workshop/blanks/pages/2.html",
    "workshop/writing/pages/2.html",
    "workshop/menu.html",
    "workshop/catalogue/2.html",
    "public/menu/part-0/2.html",
    "public/gifts.html",
    "public/gifts/for-regatta/2.html",
)


@pytest.fixture(scope="module")
def crowded_site(once: Once) -> Path:
    """Those pages of both copies, with what they load."""
    return once("crowded", write_pages)


def write_pages(out: Path) -> None:
    workshop = load(write_workshop(out / "records", crowded_files())).workshop
    assert workshop
    book = Notebook(workshop, {}, (), date(2026, 5, 1))
    built = (page for batch in workshop_batches(book) if batch.name in BATCHES for page in batch.build())
    write(out / "workshop", Renderer(theme("print-room", out), workshop_frame(book)), built)
    write(out / "public", Renderer(theme("print-room", out), public_frame(book)), public_pages(book))
    assert [page for page in PAGES if not (out / page).is_file()] == []


def write(copy: Path, renderer: Renderer, pages: Iterable[object]) -> None:
    for page in pages:
        wanted = isinstance(page, Page) and f"{copy.name}/{page.address}" in PAGES
        if isinstance(page, Page | Text) and (wanted or isinstance(page, Text)):
            file = copy / page.address
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_text(page.text if isinstance(page, Text) else renderer.html(page), encoding="utf-8")
    for address, path in renderer.assets.items():
        (copy / address).parent.mkdir(parents=True, exist_ok=True)
        (copy / address).write_bytes(path.read_bytes())


@pytest.mark.judge
@pytest.mark.slow
def test_the_html_checker_finds_no_error(java_and_vnu, crowded_site: Path):
    found = remarks(java_and_vnu, [crowded_site / page for page in PAGES], crowded_site)
    assert [str(remark) for remark in found if remark.kind != "warning"] == []


@pytest.mark.browser
@pytest.mark.judge
@pytest.mark.parametrize("page", PAGES)
def test_it_can_be_read_on_a_phone(browser, axe_source, crowded_site: Path, page: str):
    with visit(browser, crowded_site / page, screen=PHONE) as seen:
        assert sideways(seen.page) == []
        assert violations(seen.page, axe_source) == []
        seen.page.emulate_media(color_scheme="dark")
        assert violations(seen.page, axe_source, COLOUR_RULES) == []
