"""The cost sheet in words."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from fractions import Fraction
from functools import reduce

from markupsafe import Markup

from maker_site.language import listed, say
from maker_site.pages.marks import FILLINGS, BarPart, bar_key, stacked_bar
from maker_site.pages.notebook import Notebook
from maker_site.pages.workshop.views import CostRow, CostShown, Fact
from maker_site.records import Project
from maker_site.records.words import with_capital
from maker_site.workings.money import CostLine, CostSheet, Price, price_for, terms_of


def cost_shown(book: Notebook, project: Project) -> CostShown:
    """Return what one sold item costs, as far as known."""
    sheet = book.cost_sheets[project.id]
    price = book.prices[project.id]
    figures = book.figures
    total = figures.money(sheet.cost)
    fillings = _fillings(sheet)
    margin = margin_shown(book, price, sheet)
    return CostShown(
        tuple(
            CostRow(
                line.name,
                None if line.amount is None else figures.money(line.amount),
                line.basis,
                listed(line.assumed),
                None if filling is None else bar_key(filling),
            )
            for line, filling in zip(sheet.lines, fillings, strict=True)
        ),
        at_least(total, sheet),
        sheet.complete,
        say("Yield {share}: {source}", share=figures.percent(sheet.share.share), source=sheet.share.source),
        price_shown(book, price, sheet),
        _price_words(book, price),
        left_shown(book, price, sheet),
        say("a margin of {margin} of net sales", margin=margin) if margin else None,
        price.profit is not None and price.profit < 0,
        price.cautions,
        _assumed(sheet),
        _bar(book, sheet, fillings),
    )


def _fillings(sheet: CostSheet) -> list[int | None]:
    """Return the number of each line's filling; the smallest lines share the last one, so that none stands twice."""
    largest = sorted((line.exact for line in sheet.lines if line.exact), reverse=True)
    least = largest[FILLINGS - 2] if len(largest) > FILLINGS else Fraction(0)
    own = itertools.count()
    found: list[int | None] = []
    for line in sheet.lines:
        if not line.exact:
            found.append(None)
        elif line.exact >= least and (number := next(own)) < FILLINGS - 1 + (len(largest) <= FILLINGS):
            found.append(number)
        else:
            found.append(FILLINGS - 1)
    return found


def _bar(book: Notebook, sheet: CostSheet, fillings: Sequence[int | None]) -> Markup | None:
    """Return the bar, its parts in the order of the lines, the small ones together at its end; None without any."""
    parts: dict[int, list[CostLine]] = {}
    for line, filling in zip(sheet.lines, fillings, strict=True):
        if filling is not None:
            parts.setdefault(filling, []).append(line)
    if not parts:
        return None
    shown = []
    for _, lines in sorted(parts.items()):
        amount = sum((line.exact for line in lines if line.exact), Fraction(0))
        shown.append(BarPart(reduce(_with, (line.name for line in lines)), float(amount), book.figures.money(amount)))
    return stacked_bar(shown, title=say("What the cost of {cost} is made of", cost=book.figures.money(sheet.cost)))


def _with(one: str, other: str) -> str:
    """Return two names of lines as one; no commas, since a name may hold one."""
    return say("{one} and {other}", one=one, other=other)


def at_least(words: str, sheet: CostSheet) -> str:
    """Return an amount as what it can be at the least, where a figure is missing."""
    return words if sheet.complete else say("at least {amount}", amount=words)


def price_shown(book: Notebook, price: Price, sheet: CostSheet) -> str | None:
    """Return the price in words; one worked out from what is known of the cost is the least that it can be."""
    if price.shown is None:
        return None
    if price.source == "typed":
        return book.figures.typed(price.shown)
    return at_least(book.figures.money(price.shown), sheet)


def left_shown(book: Notebook, price: Price, sheet: CostSheet) -> str | None:
    """Return what is left for the maker, the most that it can be where a figure is missing."""
    if price.profit is None:
        return None
    left = book.figures.money(price.profit)
    return left if sheet.complete else say("at most {amount}", amount=left)


def margin_shown(book: Notebook, price: Price, sheet: CostSheet) -> str | None:
    """Return the margin in words, the most that it can be where a figure is missing."""
    if price.margin is None:
        return None
    margin = book.figures.percent(price.margin)
    return margin if sheet.complete else say("at most {amount}", amount=margin)


def price_split(book: Notebook, project: Project) -> tuple[Fact, ...]:
    """Return where the price goes, part by part; empty where there is no price."""
    sheet, price = book.cost_sheets[project.id], book.prices[project.id]
    if price.paid is None or price.tax is None or price.fee is None:
        return ()
    money = book.figures.money
    return (
        Fact(say("The customer pays"), money(price.paid)),
        Fact(say("Tax"), money(price.tax)),
        Fact(say("Selling fee"), money(price.fee)),
        Fact(say("Cost"), at_least(money(sheet.cost), sheet)),
        Fact(say("Left for the maker"), left_shown(book, price, sheet) or ""),
    )


def wanted_price(book: Notebook, project: Project) -> str | None:
    """Return a sentence with the price that brings what the shop wants, where another one is typed."""
    sheet, shop = book.cost_sheets[project.id], book.workshop.shop
    if book.prices[project.id].source != "typed":
        return None
    price = price_for(sheet.exact, terms_of(shop), book.figures, complete=sheet.complete)
    if price.shown is None:
        return say("No other price is worked out: {reason}.", reason=price.reason)
    amount = at_least(book.figures.money(price.shown), sheet)
    if shop.margin:
        margin = book.figures.percent(shop.margin.of_one)
        return say("The price that makes a margin of {margin} of net sales is {price}.", margin=margin, price=amount)
    markup = book.figures.percent(shop.markup.of_one) if shop.markup else ""
    return say("The price that makes a markup of {markup} on cost is {price}.", markup=markup, price=amount)


def _price_words(book: Notebook, price: Price) -> str:
    shop = book.workshop.shop
    if price.source == "typed":
        return say("typed by hand")
    if price.source != "worked out":
        return price.reason
    if shop.margin:
        margin = book.figures.percent(shop.margin.of_one)
        return say("the one that makes a margin of {margin} of net sales", margin=margin)
    markup = book.figures.percent(shop.markup.of_one) if shop.markup else ""
    return say("the one that makes a markup of {markup} on cost", markup=markup)


def _assumed(sheet: CostSheet) -> tuple[str, ...]:
    lines: dict[str, list[str]] = {}
    for line in sheet.lines:
        for words in line.assumed:
            lines.setdefault(words, []).append(line.name)
    return tuple(
        say("{assumed}: {lines}", assumed=with_capital(words), lines=listed(names)) for words, names in lines.items()
    )
