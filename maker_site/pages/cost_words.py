"""The cost sheet in words."""

from __future__ import annotations

from maker_site.pages.marks import BarPart, bar_key, stacked_bar
from maker_site.pages.notebook import Notebook
from maker_site.pages.workshop.views import CostRow, CostShown
from maker_site.records import Project
from maker_site.workings.money import Price

_PRICE_WORDS = {"typed": "typed by hand", "worked out": "worked out for the wanted margin", "none": ""}


def cost_shown(book: Notebook, project: Project) -> CostShown:
    """Return what one sold item costs, as far as known."""
    sheet = book.cost_sheets[project.id]
    price = book.prices[project.id]
    figures = book.figures
    total = figures.money(sheet.cost)
    known = [line for line in sheet.lines if line.exact]
    bar = None
    if known:
        parts = [BarPart(line.name, float(line.exact or 0)) for line in known]
        bar = stacked_bar(parts, title=f"What the cost of {total} is made of")
    return CostShown(
        tuple(
            CostRow(
                line.name,
                None if line.amount is None else figures.money(line.amount),
                line.whole_basis,
                bar_key(known.index(line)) if line in known else None,
            )
            for line in sheet.lines
        ),
        total if sheet.complete else f"at least {total}",
        sheet.complete,
        f"Yield {figures.percent(sheet.share.share)}: {sheet.share.source}",
        None if price.shown is None else figures.money(price.shown),
        _PRICE_WORDS[price.source] or price.reason,
        _left(book, price),
        price.cautions,
        bar,
    )


def _left(book: Notebook, price: Price) -> str | None:
    if price.profit is None:
        return None
    figures = book.figures
    margin = f", a margin of {figures.percent(price.margin)}" if price.margin is not None else ""
    return f"{figures.money(price.profit)} left for the maker{margin}"
