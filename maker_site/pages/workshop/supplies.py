"""The list of supplies, with the heat each bears."""

from __future__ import annotations

from maker_site.language import say
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.workshop.views import SupplyList, SupplyRow
from maker_site.records.words import SUPPLY_KINDS


def supplies_page(book: Notebook) -> Page:
    """Return supplies/index.html, by kind."""
    ordered = sorted(
        book.workshop.supplies.values(), key=lambda each: (SUPPLY_KINDS.index(each.kind), each.name.casefold())
    )
    rows = tuple(
        SupplyRow(
            each.id,
            each.name,
            say(each.kind),
            each.material and say(each.material),
            book.wording.temperature(each.limit) if each.limit else None,
            book.money(each.price),
            each.contents.typed if each.contents else None,
            each.supplier,
            each.note,
        )
        for each in ordered
    )
    return Page(
        "supplies/index.html", "workshop/supplies.html", say("Supplies"), SupplyList(rows), door="supplies/index.html"
    )
