"""The cost sheet's script and the sheet itself: two programs in two languages must say the same to the last digit.

The figures expected are those of `cost_sheet()` and `price_for()`, which have outside checks of their own in
tests/workings/money; here they judge the page.
"""

import re
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import expect

from maker_site.cli.reading import read_book
from maker_site.pages.notebook import Notebook
from maker_site.workings.money import Price, WhatIf, Yield, cost_sheet, price_for, terms_of
from tests.conftest import CONTENT

from .kinds import KINDS, page_of
from .visits import PHONE, visit

pytestmark = pytest.mark.browser

# A set with a price typed, one that is worked out, a single piece, one that loses money, two with figures missing.
PROJECTS = (
    "allotment-tally-coasters",
    "chopping-board-herbs",
    "plot-holder-mug",
    "seed-swap-coasters",
    "fair-bunting-tea-towel",
    "test-swatch-tags",
)
# Batch, yield in percent, labour an hour; None leaves the record's own.
TRIED = (
    (None, None, None),
    ("1", None, None),
    ("7", "83.3", None),
    ("25", "100", "11.44"),
    ("240", "0.5", "0"),
    (None, None, "19.995"),
)


@pytest.fixture(scope="module")
def book() -> Notebook:
    return read_book(CONTENT)


def worked_out(book: Notebook, project_id: str, tried, typed: Decimal | None):
    """Give the sheet and the price by the workings."""
    project = book.workshop.projects[project_id]
    batch, share, labour = tried
    sheet = cost_sheet(
        book.workshop,
        project,
        Yield(Fraction(share) / 100, "tried", assumed=True) if share else book.yield_of(project),
        book.coverage_of(project),
        book.pressings_by_project.get(project_id, ()),
        WhatIf(batch=int(batch) if batch else None, labour=Fraction(labour) if labour else None),
    )
    price = price_for(sheet.exact, terms_of(book.workshop.shop), book.figures, typed=typed, complete=sheet.complete)
    return sheet, price


def told(page, name: str) -> str:
    return " ".join(page.locator(f"#tried-{name}").inner_text().split())


def all_told(page) -> dict[str, Any]:
    """Read at once what the page tells of the figures tried; `cells` are the sheet's lines, where it shows them."""
    found: dict[str, Any] = page.evaluate(
        """() => {
            const told = (name) => document.querySelector(`#tried-${name}`).innerText.trim().split(/\\s+/).join(" ");
            const figures = Object.fromEntries(["cost", "price", "left", "words"].map((name) => [name, told(name)]));
            const cells = [...document.querySelectorAll("#cost-lines td.tried")].map((cell) => cell.innerText);
            return { ...figures, cells: document.querySelector("#tried-total").checkVisibility() ? cells : null };
        }"""
    )
    return found


def fill(page, tried, price: str | None) -> None:
    for name, value in zip(("batch", "share", "labour", "price"), (*tried, price), strict=True):
        if value is not None:
            page.fill(f"#tries [name={name}]", value)


def expected_left(price: Price, complete: bool, money) -> str:
    left = money(price.profit)
    return left if complete else f"at most {left}"


@pytest.mark.parametrize("project_id", PROJECTS)
def test_the_page_says_what_the_workings_say(browser, demo_site: Path, book: Notebook, project_id: str):
    money = book.figures.money
    with visit(browser, demo_site / "workshop" / "costs" / f"{project_id}.html") as seen:
        page = seen.page
        for tried in TRIED:
            for typed in (None, Decimal("12.34")):
                page.click("#tries [type=reset]")
                expect(page.locator("#tries [name=batch]")).to_be_focused()
                fill(page, tried, "" if typed is None else str(typed))
                sheet, price = worked_out(book, project_id, tried, typed)

                least = "" if sheet.complete else "at least "
                said = all_told(page)
                assert said["cost"] == least + money(sheet.cost), tried
                assert said["price"] == ("" if typed else least) + money(price.shown), tried
                assert said["left"] == expected_left(price, sheet.complete, money), tried
                margin = book.figures.percent(price.margin)
                assert f"margin of {'' if sheet.complete else 'at most '}{margin} " in said["words"]
                assert (f"loses {'' if sheet.complete else 'at least '}{money(-price.profit)}" in said["words"]) == (
                    typed is not None and price.profit < 0
                )
                if said["cells"] is not None:
                    lines = ["not known" if line.amount is None else money(line.amount) for line in sheet.lines]
                    assert said["cells"] == lines, tried
        assert seen.complaints == []


def test_the_figures_of_the_records_come_back(browser, demo_site: Path):
    with visit(browser, demo_site / "workshop" / "costs" / "plot-holder-mug.html") as seen:
        page = seen.page
        before = [told(page, name) for name in ("cost", "price", "left")]
        fill(page, ("1", "50", "30"), "5")
        assert [told(page, name) for name in ("cost", "price", "left")] != before
        assert page.locator("th.tried").is_visible()

        page.get_by_role("button", name="Back to the records").click()
        expect(page.locator("#tries [name=batch]")).to_be_focused()

        assert [told(page, name) for name in ("cost", "price", "left")] == before
        assert page.locator("th.tried").is_hidden()
        page.get_by_text("Back to the records’ figures.", exact=True).wait_for(state="attached")


@pytest.mark.parametrize(
    ("name", "typed", "words"),
    [
        ("batch", "0", "whole number"),
        ("batch", "2.5", "whole number"),
        ("share", "0", "above 0"),
        ("share", "101", "above 0"),
        ("labour", "much", "an amount"),
        ("price", "£", "an amount"),
    ],
)
def test_what_can_not_be_is_told_and_nothing_is_worked_out(browser, demo_site: Path, name, typed, words):
    with visit(browser, demo_site / "workshop" / "costs" / "plot-holder-mug.html") as seen:
        page = seen.page
        page.fill(f"#tries [name={name}]", typed)

        assert words in page.inner_text("#tries-fault")
        assert page.get_attribute(f"#tries [name={name}]", "aria-invalid") == "true"
        assert page.locator("#tried-figures").is_hidden()
        page.fill(f"#tries [name={name}]", "9")
        assert page.inner_text("#tries-fault") == ""
        assert page.get_attribute(f"#tries [name={name}]", "aria-invalid") is None
        assert page.locator("#tried-figures").is_visible()


def test_what_is_worked_out_is_announced_politely(browser, demo_site: Path):
    with visit(browser, demo_site / "workshop" / "costs" / "plot-holder-mug.html") as seen:
        page = seen.page
        assert page.inner_text("#said") == ""
        page.fill("#tries [name=batch]", "3")
        expect(page.locator("#said")).to_have_text(re.compile("^Costs £"))
        assert page.get_attribute("#said", "role") == "status"


def test_without_scripts_the_table_stands_and_nothing_is_offered(browser, demo_site: Path, book: Notebook):
    with visit(browser, demo_site / "workshop" / "costs" / "plot-holder-mug.html", scripts=False) as seen:
        page = seen.page
        sheet = book.cost_sheets["plot-holder-mug"]
        assert page.locator("#what-if").is_hidden()
        assert page.locator(".tried").first.is_hidden()
        assert page.locator("#cost-lines tr").count() == len(sheet.lines)
        assert book.figures.money(sheet.cost) in page.inner_text("tfoot")


def overview(demo_site: Path) -> Path:
    (kind,) = (kind for kind in KINDS if kind.name == "costs")
    return page_of(kind, demo_site)


def test_the_overview_sorts_by_its_headings(browser, demo_site: Path, book: Notebook):
    with visit(browser, overview(demo_site)) as seen:
        page = seen.page
        button = page.get_by_role("button", name="Cost", exact=True)
        button.click()
        titles = page.locator("#cost-rows th > a:first-child")
        by_cost = sorted(book.workshop.projects.values(), key=lambda project: book.cost_sheets[project.id].exact)
        assert titles.all_inner_texts() == [project.title for project in by_cost]
        assert page.locator("#sort-heads [aria-sort=ascending]").inner_text() == "Cost"

        button.click()
        assert titles.all_inner_texts() == [project.title for project in reversed(by_cost)]
        assert page.locator("#sort-heads [aria-sort=descending]").count() == 1
        assert page.inner_text("#sort-said") == "Sorted by Cost, the largest first."

        page.get_by_role("button", name="An hour at the bench").click()
        unknown = {book.workshop.projects[id_].title for id_, sheet in book.cost_sheets.items() if not sheet.complete}
        assert set(titles.all_inner_texts()[-len(unknown) :]) == unknown


def makeable(book: Notebook) -> list[str]:
    """Return the projects whose blanks are on the shelf."""
    return [id_ for id_, project in book.workshop.projects.items() if book.makeable(project)]


def test_gifts_are_those_that_can_be_made_now_for_no_more(browser, demo_site: Path, book: Notebook):
    paid = {id_: book.prices[id_].paid for id_ in makeable(book)}
    with visit(browser, overview(demo_site), screen=replace(PHONE, width=360)) as seen:
        page = seen.page
        for limit in ("14.00", "6,00", "0.01"):
            page.fill("#gifts [name=limit]", limit)
            most = Fraction(limit.replace(",", "."))
            wanted = {id_ for id_, price in paid.items() if price is not None and price <= most}
            links = page.locator("#gift-list a").evaluate_all("all => all.map(a => a.href)")
            assert {link.rpartition("/")[2].removesuffix(".html") for link in links} == wanted
            assert page.inner_text("#gifts-count").startswith(f"{len(wanted)} project")
            expect(page.locator("#gifts-said")).to_contain_text(f"{len(wanted)} project")
        assert page.locator("#gifts-nothing").is_visible()
        page.fill("#gifts [name=limit]", "")
        assert page.locator("#gift-list li").count() == len(paid)


def test_without_scripts_the_overview_and_the_list_stand(browser, demo_site: Path, book: Notebook):
    with visit(browser, overview(demo_site), scripts=False) as seen:
        page = seen.page
        assert page.locator("#cost-rows tr").count() == len(book.workshop.projects)
        assert page.locator("#gift-list li").count() == len(makeable(book))
        assert page.locator("#gifts").is_hidden()
        assert page.locator("#sort-heads button").count() == 0
        assert page.inner_text("#cost-rows").count("loses money") == sum(
            price.profit is not None and price.profit < 0 for price in book.prices.values()
        )
