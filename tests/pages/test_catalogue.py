"""The catalogue's filters at ten thousand projects: what is found, and how little of the page is touched to show it."""

import json
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from maker_site.pages.page import Page as Made
from maker_site.pages.page import Text
from maker_site.pages.workshop.catalogue import DATA, catalogue_entry, catalogue_of
from maker_site.pages.workshop.plan import workshop_frame
from maker_site.pages.workshop.views import CatalogueEntry
from maker_site.writer.rendering import Renderer
from maker_site.writer.themes import theme
from tests.judges.visits import visit
from tests.pages.test_costs import book_of

PROJECTS = 10_000
MORE = {
    "blanks/plate.yaml": "name: Crème plate\nsubstrate: aluminium\nmethod: sublimation\nsize: A5\n",
    "projects/plate/project.yaml": "title: Été\nblank: plate\noccasions: [wedding]\nmade: 2025-02-03\n",
}
COUNT_WHAT_IS_ADDED = """() => {
    window.added = 0;
    new MutationObserver((all) => {
        for (const each of all) for (const node of each.addedNodes)
            window.added += 1 + (node.querySelectorAll ? node.querySelectorAll("*").length : 0);
    }).observe(document.body, { childList: true, subtree: true });
}"""


def entries(folder: Path) -> list[CatalogueEntry]:
    """As many entries as asked for, of two kinds in turn: what is shown of each is made as for any other."""
    book = book_of(folder, {**MORE})
    two = [catalogue_entry(book, project) for project in book.workshop.projects.values()]
    return [numbered(two[number % 2], number) for number in range(PROJECTS)]


def numbered(entry: CatalogueEntry, number: int) -> CatalogueEntry:
    link = replace(entry.tile.link, text=f"{entry.tile.link.text} {number}")
    return replace(entry, id=f"{entry.id}-{number}", tile=replace(entry.tile, link=link))


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The first page of the catalogue and its script, on disk."""
    out = tmp_path_factory.mktemp("catalogue")
    renderer = Renderer(theme("print-room", out), workshop_frame(book_of(out / "records")))
    for page in catalogue_of(entries(out / "two")):
        if page.address not in ("catalogue/index.html", DATA):
            continue
        file = out / page.address
        file.parent.mkdir(parents=True, exist_ok=True)
        assert isinstance(page, Made | Text)
        file.write_text(page.text if isinstance(page, Text) else renderer.html(page), encoding="utf-8")
    for address, path in renderer.assets.items():
        (out / address).parent.mkdir(parents=True, exist_ok=True)
        (out / address).write_bytes(path.read_bytes())
    return out / "catalogue/index.html"


@pytest.fixture
def opened(written: Path, browser: Browser) -> Iterator[Page]:
    with visit(browser, written) as seen:
        yield seen.page
        assert seen.complaints == []


def test_a_page_of_it_is_light_and_the_rows_stand_in_the_script(written: Path) -> None:
    assert written.stat().st_size < 300_000
    script = (written.parent / "data.js").read_text(encoding="utf-8")
    data = json.loads(script.removeprefix("window.catalogue = ").removesuffix(";\n"))
    assert len(data["title"]) == len(data["blank"]) == PROJECTS
    assert len(data["texts"]) == len(set(data["texts"]))
    assert len(script.encode()) < 200 * PROJECTS


@pytest.mark.browser
def test_a_filter_touches_a_few_screens_of_the_page_whatever_it_finds(opened: Page) -> None:
    opened.evaluate(COUNT_WHAT_IS_ADDED)
    opened.select_option("select[name=substrate]", "slate")
    expect(opened.locator("#total")).to_have_text("5,000")
    expect(opened.locator("#found-pieces > li")).to_have_count(48)
    one = opened.evaluate("document.querySelector('#found-pieces > li').querySelectorAll('*').length")
    # 48 pieces at once of 5,000 found, and a little for what is counted and said
    assert opened.evaluate("window.added") <= 48 * (one + 1) + 20
    assert "substrate=slate" in opened.url


@pytest.mark.browser
@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("ete 17", sum("17" in str(number) for number in range(1, PROJECTS, 2))),  # every second one is a plate
        ("creme wedding", PROJECTS // 2),
        ("harbour creme", 0),
    ],
)
def test_words_are_found_without_case_and_accents(opened: Page, words: str, found: int) -> None:
    opened.fill("input[name=words]", words)
    expect(opened.locator("#total")).to_have_text(f"{found:,}")


@pytest.mark.browser
def test_what_is_chosen_is_in_the_address_and_comes_back(opened: Page, written: Path) -> None:
    opened.goto(f"{written.as_uri()}#occasion=wedding&words=777")
    opened.reload()
    expect(opened.locator("#total")).to_have_text(f"{sum('777' in str(number) for number in range(1, PROJECTS, 2)):,}")
    first = opened.locator("#found-pieces .piece-name a").first
    expect(first).to_have_attribute("href", "../projects/plate-777.html")
