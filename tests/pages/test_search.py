"""The search page of the workshop copy: works from the disk, as one types; without scripts it says where to look."""

import ast
import json
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Text
from maker_site.pages.workshop.plan import workshop_frame
from maker_site.pages.workshop.search import search_pages
from maker_site.records import load
from maker_site.writer.rendering import Renderer
from maker_site.writer.themes import theme
from tests.judges.visits import visit
from tests.small_workshop import write_workshop

LOG = (
    "date,project,blank,press,temperature,time,pressure,face,pressed,good,defects\n"
    "2026-04-18,harbour,slate,clam,200 C,5:00,medium,print up,4,3,blurred\n"
    "2026-04-19,harbour,slate,clam,200 C,6:00,medium,print up,9,9,\n"
    "2026-04-20,,plate,clam,400 F,60 s,medium,print down,2,1,faded\n"
)
FILES = {
    "press-log/2026.csv": LOG,
    "blanks/plate.yaml": "name: Crème plate\nsubstrate: aluminium\nsupplier: Marlpit Blanks\ncode: MP-7\n",
    "blanks/tile.yaml": "name: Tile\nsubstrate: glass\nsheet: {temperature: 190 C, time: 4 min}\n",
}


def write_search(content: Path, out: Path) -> Path:
    """Write the search page with its script and styles, and nothing else of the copy."""
    workshop = load(content).workshop
    assert workshop
    book = Notebook(workshop, {}, (), date(2026, 5, 1))
    renderer = Renderer(theme("print-room", content), workshop_frame(book))
    for page in search_pages(book):
        file = out / page.address
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(page.text if isinstance(page, Text) else renderer.html(page), encoding="utf-8")
    for address, path in renderer.assets.items():
        (out / address).parent.mkdir(parents=True, exist_ok=True)
        (out / address).write_bytes(path.read_bytes())
    return out / "search.html"


@pytest.fixture(scope="module")
def search(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("search")
    return write_search(write_workshop(folder / "content", FILES), folder / "site")


def data_of(search: Path) -> dict[str, Any]:
    return read_data((search.parent / "search/data.js").read_text(encoding="utf-8"))


def read_data(script: str) -> dict[str, Any]:
    """Read what a browser parses: JSON in a script's quotes, where only quotes and backslashes have one before them."""
    quoted = script.removeprefix("window.searchData = JSON.parse(").removesuffix(");\n")
    return dict(json.loads(ast.literal_eval(quoted)))


def test_the_script_holds_every_setting_blank_and_project_best_supported_first(search: Path) -> None:
    data = data_of(search)
    texts, blanks = data["texts"], data["blanks"]

    columns = (data["settings"][name] for name in ("blank", "dial", "outcome"))
    shown = [(texts[blanks[of][1][0]], texts[dial], texts[came]) for of, dial, came in zip(*columns, strict=True)]
    assert [each[:2] for each in shown] == [
        ("Slate coaster", "200 °C|392 °F"),
        ("Slate coaster", "200 °C|392 °F"),
        ("Crème plate", "204 °C|400 °F"),
        ("Tile", "190 °C|374 °F"),
    ]
    # 9 of 9 by Wilson: 9 / (9 + z²) = 0.70086, z = 1.959964; by hand
    assert shown[0][2] == "9 of 9 good, likely 70 to 100\N{NO-BREAK SPACE}%"
    assert shown[3][2] == "The supplier’s sheet: test one"
    assert data["projects"]["blank"] == [[texts[each[1][0]] for each in blanks].index("Slate coaster")]
    counts, told = data["projects"]["texts"]
    assert [texts[number] for number in told] == ["Harbour coasters", "harbour"]
    assert counts == [2]


def test_each_text_is_there_once(search: Path) -> None:
    texts = data_of(search)["texts"]
    assert len(texts) == len(set(texts))


def test_cautions_and_ways_without_scripts_are_in_the_page_itself(search: Path) -> None:
    page = search.read_text(encoding="utf-8")
    for part in ("Hot surfaces", "Never unattended", "manual", "catalogue/index.html", "settings/index.html"):
        assert part in page


@pytest.fixture
def opened(search: Path, browser: Browser) -> Iterator[Page]:
    with visit(browser, search) as seen:
        yield seen.page
        assert seen.complaints == []


@pytest.mark.browser
@pytest.mark.parametrize(
    ("words", "blanks"),
    [
        ("slate", ["Slate coaster", "Slate coaster"]),
        ("coaster slaet", ["Slate coaster", "Slate coaster"]),
        ("aluminum", ["Crème plate"]),
        ("alumnium creme", ["Crème plate"]),
        ("marlpit", ["Crème plate"]),
        ("mp-7", ["Crème plate"]),
        ("400 F", ["Crème plate"]),
        ("401 f", ["Crème plate"]),
        ("1:00", ["Crème plate"]),
        ("1 min", ["Crème plate"]),
        ("washed out", ["Crème plate"]),
        ("harbour 6:00", ["Slate coaster"]),
        ("glass", ["Tile"]),
        ("190", ["Tile"]),
        ("print down", ["Crème plate"]),
        ("slate print down", []),
    ],
)
def test_settings_are_found_as_in_the_terminal(opened: Page, words: str, blanks: list[str]) -> None:
    opened.fill("#words", words)

    expect(opened.locator("#settings h3 a")).to_have_text(blanks)


@pytest.mark.browser
def test_a_row_shows_both_units_what_came_of_it_and_leads_to_its_pages(opened: Page) -> None:
    opened.fill("#words", "harbour 6 min")

    row = opened.locator("#settings li")
    for part in ("200 °C", "392 °F", "6:00", "360 s", "medium", "print up", "9 of 9 good"):
        expect(row).to_contain_text(part)
    assert [link.get_attribute("href") for link in row.locator("a").all()] == [
        "blanks/slate.html",
        "projects/harbour.html",
    ]
    expect(opened.get_by_text("Hot surfaces")).to_be_visible()
    expect(opened.get_by_text("Searching needs scripts")).to_be_hidden()


@pytest.mark.browser
def test_the_state_is_in_the_address_and_comes_back(opened: Page, search: Path) -> None:
    opened.fill("#words", "crème plate")
    expect(opened.locator("#blanks a")).to_have_count(1)
    address = opened.url
    opened.goto("about:blank")
    opened.goto(address)

    assert opened.input_value("#words") == "crème plate"
    expect(opened.locator("#blanks a")).to_have_count(1)

    opened.goto(f"{search.as_uri()}?words=slate")
    expect(opened.locator("#projects a")).to_contain_text(["Harbour coasters"])


@pytest.mark.browser
def test_what_was_found_is_announced_politely(opened: Page) -> None:
    opened.fill("#words", "slaet")
    status = opened.get_by_role("status")
    expect(status).to_have_text("“slaet” read as slate. 2 settings, 1 blank, 1 project.")

    opened.fill("#words", "qqqq")
    expect(status).to_contain_text("Nothing found")


@pytest.mark.browser
def test_marks_in_a_record_are_words_not_html(browser: Browser, tmp_path: Path) -> None:
    record = 'title: "<img src=x onerror=alert(1)> slate"\nblank: slate\n'
    content = write_workshop(tmp_path / "content", {"projects/odd/project.yaml": record})
    with visit(browser, write_search(content, tmp_path / "site")) as seen:
        seen.page.fill("#words", "onerror")

        expect(seen.page.locator("#projects a")).to_contain_text(["<img src=x onerror=alert(1)> slate"])
        assert seen.page.locator("main img").count() == 0


@pytest.mark.browser
def test_quotes_and_backslashes_come_through(browser: Browser, tmp_path: Path) -> None:
    title = "Baker's \\ \"slate\" ');alert(1)//"
    content = write_workshop(
        tmp_path / "content", {"projects/odd/project.yaml": f"title: {json.dumps(title)}\nblank: slate\n"}
    )
    with visit(browser, write_search(content, tmp_path / "site")) as seen:
        seen.page.fill("#words", "baker's")

        expect(seen.page.locator("#projects a")).to_contain_text([title])
        assert seen.complaints == seen.dialogs == []


@pytest.mark.browser
def test_no_more_than_sixty_rows_are_shown_of_many(browser: Browser, tmp_path: Path) -> None:
    rows = "".join(f"2026-04-18,,slate,clam,{150 + n % 60} C,{60 + n} s,medium,print up,2,1,\n" for n in range(120))
    extra = {f"projects/p{n}/project.yaml": f"title: Slate {n}\nblank: slate\n" for n in range(80)}
    content = write_workshop(tmp_path / "content", {**FILES, **extra, "press-log/2026.csv": LOG + rows})
    with visit(browser, write_search(content, tmp_path / "site")) as seen:
        seen.page.fill("#words", "slate")

        expect(seen.page.locator("#counted")).to_have_text("30 of 122 settings, 1 blank, 20 of 81 projects.")
        expect(seen.page.locator("#settings li, #blanks li, #projects li")).to_have_count(51)


@pytest.mark.browser
def test_without_scripts_it_says_where_to_look(browser: Browser, search: Path) -> None:
    with visit(browser, search, scripts=False) as seen:
        expect(seen.page.locator("#search")).to_be_hidden()
        expect(seen.page.get_by_role("link", name="Settings by material")).to_be_visible()
        assert "Searching needs scripts" in seen.page.inner_text("main")
