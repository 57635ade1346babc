"""Every page stays light whatever the workshop grows to: each list is crowded past its page here, with long words.

Nothing is measured against a whole large workshop. A list that goes over pages weighs on a full page what it weighs on
every other one, so a workshop is enough in which each list fills more than one; a list that does not go over pages is
crowded with what ten thousand projects would bring it.
"""

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest

from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.public.plan import public_frame, public_pages
from maker_site.pages.workshop.plan import workshop_batches, workshop_frame
from maker_site.records import load
from maker_site.writer.rendering import Renderer
from maker_site.writer.themes import theme
from tests.small_workshop import write_workshop

MOST_BYTES = 300_000
BLANKS = 210
PROJECTS = 150
PRESSES = 42
SETTINGS = 260
"""Of the one blank that everything is tried on, and of the one press and the one project that it is tried for."""
LONG = "A title as long as a maker would ever write it, with the names of both and the day that it was all made for"
OCCASIONS = ("wedding", "new home", "birthday", "harvest supper", "regatta", "retirement")
CROWDED = ("home", "search", "catalogue", "costs", "settings", "blanks", "blanks/b-000", "projects/p-000", "presses")
CROWDED += ("supplies", "writing", "menu", "costs/p-000")


def crowded() -> Iterator[tuple[str, str]]:
    """Yield the files of a workshop that is crowded everywhere."""
    yield "shop.yaml", f"name: Test Bench\nline: {LONG}\ncurrency: GBP\naddress: https://bench.example/\nlow stock: 6\n"
    for number in range(BLANKS):
        sheet = "sheet: {temperature: 190 to 200 C, time: 50 to 75 s, pressure: medium, face: print down}\n"
        bought = "bought: [{date: 2026-01-01, lot: A7, count: 5, paid: 38.40}]\n"
        words = f"name: {LONG} {number}\nsubstrate: slate\nsize: 100 x 100 mm\nsupplier: {LONG}\ncode: MP-{number}\n"
        yield f"blanks/b-{number:03}.yaml", words + sheet + bought
    for number in range(PRESSES):
        yield f"presses/clam-{number:02}.yaml", f"name: {LONG} {number}\nkind: flat clamshell\n"
    for number in range(110):
        yield (
            f"supplies/box-{number}.yaml",
            f"name: {LONG} {number}\nkind: packaging\nprice: 12.50\ncontents: 25 pieces\n",
        )
    for number in range(PROJECTS):
        occasions = ", ".join(OCCASIONS[number % 3 :])
        day = date(2016, 1, 15) + timedelta(days=number * 20)
        yield (
            f"projects/p-{number:03}/project.yaml",
            f"title: {LONG} {number}\nblank: b-{number:03}\nmade: {day}\nsummary: {LONG}. {LONG}.\n"
            f"occasions: [{occasions}]\nshare: {{tutorial: yes, published: {day}, menu: "
            f"{{section: Part {number % 2}, price: {number + 1}.00, line: {LONG}}}}}\n",
        )
        yield f"projects/p-{number:03}/tutorial.md", f"{LONG}.\n\n## Press\n\n{LONG}.\n"
    for number in range(BLANKS):
        yield f"articles/a-{number}.md", f"# {LONG} {number}\n\nOne thing at a time.\n"
        yield f"articles/a-{number}.yaml", f"summary: {LONG}\nshare: yes\npublished: 2026-01-02\n"
    rows = ["date,project,blank,press,temperature,time,pressure,face,pressed,good,defects,note"]
    for number in range(SETTINGS):
        day = date(2024, 1, 1) + timedelta(days=number)
        dial, seconds = 180 + number % 20, 45 + number
        said = f'p-000,b-000,clam-00,{dial} C,{seconds} s,medium,print up,20,11,blurred; pale all over,"{LONG}"'
        rows.append(f"{day},{said}")
    rows += [
        f"2026-02-03,,b-{number:03},clam-00,200 C,60 s,medium,print up,12,11,blurred," for number in range(1, BLANKS)
    ]
    yield "press-log/2026.csv", "\n".join(rows) + "\n"


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Notebook:
    left_out = dict.fromkeys(("blanks/slate.yaml", "presses/clam.yaml", "projects/harbour/project.yaml"))
    left_out |= dict.fromkeys(("projects/harbour/tutorial.md", "projects/harbour/photos/set.jpg"))
    findings = load(write_workshop(tmp_path_factory.mktemp("crowded"), {**left_out, **dict(crowded())}))
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
