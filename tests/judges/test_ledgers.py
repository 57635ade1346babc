"""Tables of records are entries on a narrow screen, and tables still on a desk, on paper and to readers that speak."""

from pathlib import Path

import pytest

from .kinds import KINDS, Kind, each, page_of
from .visits import DESK, SMALL_PHONE, visit

pytestmark = pytest.mark.browser

TABLED = {
    "project with photos",
    "supplies",
    "presses",
    "press",
    "blank",
    "test ladder",
    "costs",
    "cost sheet",
    "cost sheet with figures missing",
}
WITH_TABLES = tuple(kind for kind in KINDS if kind.copy == "workshop" and kind.name in TABLED)

SCROLLING = """() => [...document.querySelectorAll('.ledger-frame')]
    .filter((frame) => frame.checkVisibility() && frame.scrollWidth > frame.clientWidth)
    .map((frame) => `${frame.getAttribute('aria-label')}: ${frame.scrollWidth} in ${frame.clientWidth} px`)"""
MISNAMED = """() => [...document.querySelectorAll('.ledger-entries [data-name]')]
    .filter((cell) => cell.closest('table').tHead.rows[0].cells[cell.cellIndex].textContent !== cell.dataset.name)
    .map((cell) => cell.outerHTML)"""
ROWS_DRAWN_AS = """() => [...new Set([...document.querySelectorAll('.ledger-entries tbody tr')]
    .map((row) => getComputedStyle(row).display))]"""


@each(WITH_TABLES)
def test_no_table_scrolls_sideways_on_a_small_phone(browser, demo_site: Path, kind: Kind):
    with visit(browser, page_of(kind, demo_site), screen=SMALL_PHONE) as seen:
        for closed in seen.page.locator("details").all():
            closed.evaluate("(details) => { details.open = true }")
        assert seen.page.evaluate(SCROLLING) == []
        seen.page.evaluate("() => { document.querySelector('.ledger').style.minWidth = '900px' }")
        assert seen.page.evaluate(SCROLLING), "a table that is too wide is noticed"


@each(WITH_TABLES)
def test_a_fact_of_an_entry_is_named_as_its_column_is(browser, demo_site: Path, kind: Kind):
    with visit(browser, page_of(kind, demo_site), screen=SMALL_PHONE) as seen:
        assert seen.page.evaluate(MISNAMED) == []


def test_what_is_read_out_on_a_phone_is_the_table_of_the_desk(browser, demo_site: Path):
    page = page_of(next(kind for kind in WITH_TABLES if kind.name == "supplies"), demo_site)
    read: list[str] = []
    for screen, rows in ((SMALL_PHONE, ["flex"]), (DESK, ["table-row"])):
        with visit(browser, page, screen=screen) as seen:
            assert seen.page.evaluate(ROWS_DRAWN_AS) == rows
            read.append(seen.page.locator("table").aria_snapshot())
            seen.page.emulate_media(media="print")
            assert seen.page.evaluate(ROWS_DRAWN_AS) == ["table-row"]
    phone, desk = read
    assert phone.count("- row ") == desk.count("- row ")
    assert phone.count("columnheader") == desk.count("columnheader") == 7
    assert phone.count("rowheader") == desk.count("rowheader")
