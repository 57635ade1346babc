"""Cost sheets with figures to try, and the overview of cost, price, yield and stock."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Sequence
from decimal import Decimal
from fractions import Fraction

from maker_site.language import say
from maker_site.pages import addresses
from maker_site.pages.cost_words import (
    at_least,
    cost_shown,
    left_shown,
    margin_shown,
    price_shown,
    price_split,
    wanted_price,
)
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page, Text
from maker_site.pages.parts import Link
from maker_site.pages.workshop.pieces import project_link
from maker_site.pages.workshop.views import BreakRow, CostLineShown, CostOverview, CostSheetPage, CostShown
from maker_site.records import Project
from maker_site.records.quantities import plain
from maker_site.workings.money import (
    CostSheet,
    Once,
    Parts,
    WhatIf,
    Yield,
    cost_sheet,
    digits_of,
    parts_of,
    price_for,
    quantity_breaks,
    terms_of,
)

DATA = "costs/data.js"
ROWS_A_PAGE = 100
"""Keeps a page light at any number of projects."""
MAKEABLE_AT_FIRST = 60
QUANTITIES = (1, 2, 5, 10, 25)
_DOOR = "costs/index.html"
_SECONDS_PER_HOUR = 3600
_PLACES = 4
"""Decimals of a figure that is only sorted by; no currency has more than three."""


def cost_pages(book: Notebook) -> Iterator[Page | Text]:
    """Yield the overview and every cost sheet."""
    yield from cost_overview(book)
    for project in book.workshop.projects.values():
        yield cost_sheet_page(book, project, cost_shown(book, project))


def cost_overview(book: Notebook) -> Iterator[Page | Text]:
    """Yield costs/index.html, its further pages, and the script with every project's row."""
    projects = sorted(book.workshop.projects.values(), key=lambda project: project.title.casefold())
    found = tuple(book.shown("costs", _row_of, each.id) for each in projects)
    rows = tuple(row for row, _ in found)
    yield from _overviews(book, rows, sum(not complete for _, complete in found))
    yield Text(DATA, _rows_script(rows))


def _overviews(book: Notebook, rows: Sequence[CostLineShown], incomplete: int) -> Iterator[Page]:
    shelf = sorted(
        (row for row in rows if row.items),
        key=lambda row: (row.price_figure is None, row.price_figure or 0, row.project.text.casefold()),
    )
    pages = max(1, -(-len(rows) // ROWS_A_PAGE))
    losing = sum(row.loses for row in rows)
    for number in range(1, pages + 1):
        first = (number - 1) * ROWS_A_PAGE
        view = CostOverview(
            tuple(rows[first : first + ROWS_A_PAGE]),
            len(rows),
            first,
            number,
            pages,
            Link(say("Page before"), _address(number - 1)) if number > 1 else None,
            Link(say("Next page"), _address(number + 1)) if number < pages else None,
            losing,
            incomplete,
            tuple(shelf[:MAKEABLE_AT_FIRST]) if number == 1 else (),
            len(shelf),
            book.workshop.shop.currency,
            DATA,
        )
        title = say("Costs and prices")
        if number > 1:
            title = say("Costs and prices, page {n}", n=book.wording.count(number))
        yield Page(_address(number), "workshop/costs.html", title, view, door=_DOOR)


def _address(number: int) -> str:
    return _DOOR if number == 1 else f"costs/page/{number}.html"


def _row_of(book: Notebook, name: str) -> tuple[CostLineShown, bool]:
    """Return what the overview shows of a project, and whether no figure of its cost is missing."""
    return _row(book, book.workshop.projects[name]), book.cost_sheets[name].complete


def _row(book: Notebook, project: Project) -> CostLineShown:
    sheet, price, figures = book.cost_sheets[project.id], book.prices[project.id], book.figures
    makeable = book.makeable(project)
    hour = _an_hour(book, project, sheet)
    share = figures.percent(sheet.share.share)
    return CostLineShown(
        project_link(book, project.id),
        Link(say("Cost sheet"), addresses.cost(project.id)),
        at_least(figures.money(sheet.cost), sheet),
        float(sheet.exact),
        price_shown(book, price, sheet),
        None if price.shown is None else float(price.shown),
        left_shown(book, price, sheet),
        None if price.profit is None else float(price.profit),
        margin_shown(book, price, sheet),
        None if price.margin is None else float(price.margin),
        None if hour is None else figures.money(hour),
        None if hour is None else float(hour),
        say("{share}, assumed", share=share) if sheet.share.assumed else share,
        float(sheet.share.share),
        book.stock[project.blank].left,
        makeable.items if makeable else 0,
        makeable.likely if makeable else 0,
        price.profit is not None and price.profit < 0,
        None if price.paid is None else float(price.paid),
    )


def _an_hour(book: Notebook, project: Project, sheet: CostSheet) -> Fraction | None:
    """Return profit and labour for an hour at the bench; None where any of the figures is not known."""
    price, minutes = book.prices[project.id], project.minutes
    design, press, finish = minutes.design, minutes.press, minutes.finish
    if price.profit is None or not sheet.complete or design is None or press is None or finish is None:
        return None
    seconds = design.seconds / sheet.batch + press.seconds / sheet.share.share + finish.seconds
    return (price.profit + sheet.labour) * _SECONDS_PER_HOUR / seconds if seconds else None


def _rows_script(rows: Iterable[CostLineShown]) -> str:
    """Return the script that holds a row for each project; the page sorts and filters it from the disk."""
    found = [
        [
            *(row.project.text, row.project.address, row.sheet.address),
            *(row.cost, _rounded(row.cost_figure), row.price, _rounded(row.price_figure)),
            *(row.left, _rounded(row.left_figure), row.margin, _rounded(row.margin_figure)),
            *(row.an_hour, _rounded(row.an_hour_figure), row.good, _rounded(row.good_figure)),
            *(row.stock, row.items, row.likely, int(row.loses), _rounded(row.paid_figure)),
        ]
        for row in rows
    ]
    return f"window.costRows = {json.dumps(found, ensure_ascii=False, separators=(',', ':'))};\n"


def _rounded(figure: float | None) -> float | None:
    """Return a figure to sort by, finely enough for any currency and no longer than that."""
    return None if figure is None else round(figure, _PLACES)


def cost_sheet_page(book: Notebook, project: Project, cost: CostShown) -> Page:
    """Return costs/ID.html."""
    sheet = book.cost_sheets[project.id]
    shop = book.workshop.shop
    parts = _parts(book, project, sheet)
    typed = project.share.menu.price if project.share.menu else None
    view = CostSheetPage(
        project.id,
        project.title,
        project_link(book, project.id),
        say("one piece") if sheet.pieces == 1 else book.wording.set_of(sheet.pieces),
        cost,
        price_split(book, project),
        wanted_price(book, project),
        _breaks(book, sheet, parts),
        sheet.batch,
        plain(sheet.share.share * 100, 1) if sheet.share.share else "",
        _plain(shop.labour.value) if shop.labour else None,
        _plain(typed.value) if typed else None,
        _data(book, sheet, parts, typed.value if typed else None),
    )
    return Page(
        addresses.cost(project.id),
        "workshop/cost.html",
        say("Cost of {project}", project=project.title),
        view,
        door=_DOOR,
    )


def _parts(book: Notebook, project: Project, sheet: CostSheet) -> Parts:
    """Return what the cost is put together from; where nothing came out good yet the sheet is worked out anew."""
    shop = book.workshop.shop
    overhead = shop.overhead.of_one if shop.overhead else None
    rate = Fraction(shop.labour.value) if shop.labour else Fraction(0)
    if not rate or not sheet.share.share:
        rate = Fraction(1)
        sheet = cost_sheet(
            book.workshop,
            project,
            Yield(Fraction(1), "tried", assumed=True),
            book.coverage_of(project),
            book.rows_to_cost(project),
            WhatIf(labour=rate),
        )
    return parts_of(sheet, overhead, rate)


def _breaks(book: Notebook, sheet: CostSheet, parts: Parts) -> tuple[BreakRow, ...]:
    if not sheet.share.share:
        return ()

    def shown(amount: Fraction | Decimal, *, complete: bool) -> str:
        words = book.figures.money(amount)
        return words if complete else say("at least {amount}", amount=words)

    quantities = sorted({*QUANTITIES, sheet.batch})
    return tuple(
        BreakRow(
            book.figures.number(each.quantity),
            shown(each.cost, complete=each.complete),
            None if each.price.shown is None else shown(each.price.shown, complete=each.complete),
            each.quantity == sheet.batch,
        )
        for each in quantity_breaks(parts, book.workshop.shop, sheet.share.share, quantities)
    )


def _data(book: Notebook, sheet: CostSheet, parts: Parts, typed: Decimal | None) -> str:
    """Return what the script needs to work the sheet out anew: the parts and the terms, as exact fractions."""
    shop = book.workshop.shop
    terms = terms_of(shop)
    rate = Fraction(shop.labour.value) if shop.labour else None
    data = {
        "currency": sheet.currency,
        "digits": digits_of(sheet.currency),
        "pieces": parts.pieces,
        "batch": sheet.batch,
        "share": _text(sheet.share.share or None),
        "labour": _text(rate),
        "typed": _text(None if typed is None else Fraction(typed)),
        "overhead": _text(parts.overhead),
        "lines": [_line(line) for line in parts.lines],
        "terms": {
            "ending": _text(Fraction(terms.ending)),
            "margin": _text(terms.margin),
            "markup": _text(terms.markup),
            "feeShare": _text(terms.fee_share),
            "feeFixed": _text(terms.fee_fixed),
            "taxRate": _text(terms.tax_rate),
            "taxIncluded": terms.tax_included,
            "noPrice": price_for(Fraction(0), terms, book.figures).reason,
        },
    }
    return json.dumps(data, separators=(",", ":"))


def _line(line: Once) -> dict[str, object]:
    marks = {"usedUp": line.used_up, "shared": line.shared, "labour": line.labour, "overhead": line.overhead}
    found: dict[str, object] = {"once": None if line.overhead else _text(line.amount)}
    found.update((name, True) for name, holds in marks.items() if holds)
    if line.sheets:
        found["sheets"] = [line.sheets[0], _text(line.sheets[1])]
    return found


def _plain(value: Decimal) -> str:
    return f"{value:f}"


def _text(value: Fraction | None) -> str | None:
    """Return a fraction as ``7/2``, so that nothing is lost on the way to the script."""
    return None if value is None else str(value)
