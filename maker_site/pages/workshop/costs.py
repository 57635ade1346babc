"""Cost sheets with figures to try, and the overview of cost, price, yield and stock."""

from __future__ import annotations

import json
from collections.abc import Iterator
from fractions import Fraction

from maker_site.pages import addresses
from maker_site.pages.cost_words import cost_shown
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.parts import Link
from maker_site.pages.workshop.pieces import project_link
from maker_site.pages.workshop.views import CostLineShown, CostOverview, CostSheetPage
from maker_site.records import Project
from maker_site.records.quantities import plain
from maker_site.workings.money import CostLine, CostSheet, decimal_of, digits_of, terms_of

_DOOR = "costs/index.html"
_SECONDS_PER_HOUR = 3600


def cost_pages(book: Notebook) -> Iterator[Page]:
    """Yield costs/index.html and a cost sheet for each project."""
    projects = sorted(book.workshop.projects.values(), key=lambda project: project.title.casefold())
    rows = tuple(_row(book, project) for project in projects)
    shelf = sorted(
        (row for row in rows if row.items),
        key=lambda row: (row.price_figure is None, row.price_figure or 0, row.project.text.casefold()),
    )
    yield Page(_DOOR, "workshop/costs.html", "Costs and prices", CostOverview(rows, tuple(shelf)), door=_DOOR)
    for project in projects:
        yield _sheet_page(book, project)


def _row(book: Notebook, project: Project) -> CostLineShown:
    sheet, price, figures = book.cost_sheets[project.id], book.prices[project.id], book.figures
    makeable = book.makeable.get(project.id)
    cost = figures.money(sheet.cost)
    hour = _an_hour(book, project, sheet)
    return CostLineShown(
        project_link(book, project.id),
        Link("Cost sheet", addresses.cost(project.id)),
        cost if sheet.complete else f"at least {cost}",
        float(sheet.exact),
        None if price.shown is None else figures.money(price.shown),
        None if price.shown is None else float(price.shown),
        None if price.profit is None else figures.money(price.profit),
        None if price.profit is None else float(price.profit),
        None if price.margin is None else figures.percent(price.margin),
        None if price.margin is None else float(price.margin),
        None if hour is None else figures.money(hour),
        None if hour is None else float(hour),
        figures.percent(sheet.share.share) + (", assumed" if sheet.share.assumed else ""),
        float(sheet.share.share),
        book.stock[project.blank].left,
        makeable.items if makeable else 0,
        makeable.likely if makeable else 0,
        price.profit is not None and price.profit < 0,
    )


def _an_hour(book: Notebook, project: Project, sheet: CostSheet) -> Fraction | None:
    """Return profit and labour for an hour at the bench, or None where minutes or price are not known."""
    price, minutes = book.prices[project.id], project.minutes
    times = (minutes.design, minutes.press, minutes.finish)
    if price.profit is None or not any(times):
        return None
    design = minutes.design.seconds / sheet.batch if minutes.design else Fraction(0)
    press = minutes.press.seconds / sheet.share.share if minutes.press and sheet.share.share else Fraction(0)
    seconds = design + press + (minutes.finish.seconds if minutes.finish else 0)
    return (price.profit + sheet.labour) * _SECONDS_PER_HOUR / seconds if seconds else None


def _sheet_page(book: Notebook, project: Project) -> Page:
    sheet = book.cost_sheets[project.id]
    shop = book.workshop.shop
    shown = cost_shown(book, project)
    view = CostSheetPage(
        project.id,
        project.title,
        project_link(book, project.id),
        "one piece" if sheet.pieces == 1 else f"a set of {sheet.pieces}",
        shown,
        sheet.batch,
        plain(sheet.share.share * 100, 1),
        plain(Fraction(shop.labour.value), 4) if shop.labour else None,
        _data(book, project, sheet),
    )
    return Page(addresses.cost(project.id), "workshop/cost.html", f"Cost of {project.title}", view, door=_DOOR)


def _data(book: Notebook, project: Project, sheet: CostSheet) -> str:
    """Return what the script needs to work the sheet out anew: each line before yield and sharing, and the terms."""
    shop = book.workshop.shop
    terms = terms_of(shop)
    typed = project.share.menu.price if project.share.menu else None
    data = {
        "currency": sheet.currency,
        "digits": digits_of(sheet.currency),
        "pieces": sheet.pieces,
        "labour": _text(Fraction(shop.labour.value)) if shop.labour else None,
        "overhead": _text(shop.overhead.of_one) if shop.overhead else None,
        "lines": [_line(line, sheet) for line in sheet.lines],
        "terms": {
            "ending": str(terms.ending),
            "margin": _text(terms.margin),
            "markup": _text(terms.markup),
            "feeShare": _text(terms.fee_share),
            "feeFixed": _text(terms.fee_fixed),
            "taxRate": _text(terms.tax_rate),
            "taxIncluded": terms.tax_included,
        },
        "typed": str(typed.value) if typed else None,
    }
    return json.dumps(data, separators=(",", ":"))


def _line(line: CostLine, sheet: CostSheet) -> dict[str, object]:
    once = line.exact
    if once is not None and line.used_up:
        once *= sheet.share.share
    if once is not None and line.shared:
        once *= sheet.batch
    found: dict[str, object] = {
        "once": _text(once),
        "usedUp": line.used_up,
        "shared": line.shared,
        "labour": line.labour,
        "overhead": line.overhead,
    }
    if line.sheets:
        found["sheets"] = [line.sheets[0], _text(line.sheets[1])]
    return found


def _text(value: Fraction | None) -> str | None:
    return None if value is None else f"{decimal_of(value):f}"
