"""What to ask for a sold item, and what a price leaves to the maker."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from math import ceil
from typing import Final, Literal

from maker_site.frozen import frozen
from maker_site.language import marked, say
from maker_site.records import Project, Shop
from maker_site.workings.money.costing import CostSheet
from maker_site.workings.money.words import Figures, minor_unit

PriceSource = Literal["typed", "worked out", "none"]
_ONE: Final = Fraction(1)


@frozen
class Terms:
    """What a price has to bear and to bring."""

    ending: Decimal
    """Prices are rounded up to the next multiple of it; above 0."""
    margin: Fraction | None = None
    """Wanted profit as a share of net sales."""
    markup: Fraction | None = None
    """Wanted profit as a share of cost; counts only where there is no margin."""
    fee_share: Fraction = Fraction(0)
    """What the selling place keeps of all that the customer pays, 0 to 1."""
    fee_fixed: Fraction = Fraction(0)
    """What it keeps of each sale besides."""
    tax_rate: Fraction = Fraction(0)
    """Sales tax on the net price."""
    tax_included: bool = True
    """Prices are shown with the tax in them; else it is added at the till."""


@frozen
class Price:
    """A price and what becomes of it. Figures after `source` are None where there is no price."""

    shown: Decimal | None
    """As a customer reads it, rounded; holds the tax where the shop's prices do."""
    source: PriceSource
    exact: Fraction | None = None
    """The price before it was rounded up; None where it was typed."""
    paid: Fraction | None = None
    """By the customer, with tax."""
    tax: Fraction | None = None
    net: Fraction | None = None
    """Without tax."""
    fee: Fraction | None = None
    """What the selling place keeps."""
    profit: Fraction | None = None
    """Net less fee less cost; the most that it can be where the cost is “at least”."""
    margin: Fraction | None = None
    """Profit over net; None at a price of nothing."""
    markup: Fraction | None = None
    """Profit over cost; None where the cost is nothing."""
    reason: str = ""
    """Why there is no price, in a sentence, said."""
    cautions: tuple[str, ...] = ()
    """Said."""


def terms_of(shop: Shop) -> Terms:
    """Return the shop's terms; without a price ending prices go up to the currency's smallest step."""
    ending = shop.price_ending.value if shop.price_ending else Decimal(0)
    fee, tax = shop.fee, shop.tax
    return Terms(
        ending=ending if ending > 0 else minor_unit(shop.currency),
        margin=shop.margin.of_one if shop.margin else None,
        markup=shop.markup.of_one if shop.markup else None,
        fee_share=fee.percent.of_one if fee and fee.percent else Fraction(0),
        fee_fixed=Fraction(fee.fixed.value) if fee and fee.fixed else Fraction(0),
        tax_rate=tax.rate.of_one if tax else Fraction(0),
        tax_included=tax.included if tax else True,
    )


def price_of(project: Project, sheet: CostSheet, shop: Shop) -> Price:
    """Return the price typed for the menu, with what it really brings, else the price that brings what is wanted."""
    terms, figures = terms_of(shop), Figures(shop.currency, shop.locale)
    menu = project.share.menu
    typed = menu.price.value if menu and menu.price else None
    return price_for(sheet.exact, terms, figures, typed=typed, complete=sheet.complete)


def price_for(
    cost: Fraction, terms: Terms, figures: Figures, *, typed: Decimal | None = None, complete: bool = True
) -> Price:
    """Return the price for a cost, worked out unless it is `typed`; a cost that is not `complete` is a least."""
    least = () if complete else (say("figures are missing: the cost is at least this, and the profit at most"),)
    if typed is not None:
        price = _taken_apart(typed, cost, terms)
        return _with(price, "typed", None, (*_typed_cautions(price, terms, figures), *least))
    wanted = _wanted(cost, terms, figures)
    if isinstance(wanted, str):
        return Price(None, "none", reason=wanted, cautions=least)
    exact = wanted if terms.tax_included else wanted / (1 + terms.tax_rate)
    return _with(_taken_apart(rounded_up(exact, terms.ending), cost, terms), "worked out", exact, least)


def rounded_up(price: Fraction, ending: Decimal) -> Decimal:
    """Return the least multiple of `ending` that is not under the price."""
    return ceil(price / Fraction(ending)) * ending


def _wanted(cost: Fraction, terms: Terms, figures: Figures) -> Fraction | str:
    """Return what the customer pays, tax and all, for the wanted margin or markup; a sentence where no price does it.

    P = (C + k) / ((1 - m)/(1 + r) - f) for a margin m on net sales, a fee of f of what is paid and k, a tax r;
    P = (C (1 + u) + k) / (1/(1 + r) - f) for a markup u on cost.
    """
    net_share = _ONE / (1 + terms.tax_rate)
    if terms.margin is not None:
        left, to_bear = (1 - terms.margin) * net_share - terms.fee_share, cost + terms.fee_fixed
    elif terms.markup is not None:
        left, to_bear = net_share - terms.fee_share, cost * (1 + terms.markup) + terms.fee_fixed
    else:
        return say("no margin or markup is wanted: write one of them in the shop's record, or type a price")
    return to_bear / left if left > 0 else _no_price(terms, net_share, figures)


def _no_price(terms: Terms, net_share: Fraction, figures: Figures) -> str:
    fee, most = figures.percent(terms.fee_share), 1 - terms.fee_share / net_share
    if most <= 0:
        return say(
            "the fee of {fee} takes all that the tax leaves of any price, so no price can earn anything", fee=fee
        )
    margin = terms.margin or Fraction(0)
    if margin >= 1:
        return say(
            "a margin of {margin} can't be met by any price: it leaves nothing for the cost",
            margin=figures.percent(margin),
        )
    return say(
        "a margin of {margin} can't be met by any price: after the fee of {fee} it must stay under {most} of net sales",
        margin=figures.percent(margin),
        fee=fee,
        most=figures.percent(most),
    )


def _taken_apart(shown: Decimal, cost: Fraction, terms: Terms) -> Price:
    factor = 1 + terms.tax_rate
    paid = Fraction(shown) if terms.tax_included else Fraction(shown) * factor
    net = paid / factor
    fee = paid * terms.fee_share + terms.fee_fixed
    profit = net - fee - cost
    return Price(
        shown,
        "typed",
        None,
        paid=paid,
        tax=paid - net,
        net=net,
        fee=fee,
        profit=profit,
        margin=profit / net if net else None,
        markup=profit / cost if cost else None,
    )


def _typed_cautions(price: Price, terms: Terms, figures: Figures) -> tuple[str, ...]:
    if price.profit is None:
        return ()
    if price.profit < 0:
        return (say("this price loses {amount} on every sale", amount=figures.money(-price.profit)),)
    for wanted, made, words in (
        (terms.margin, price.margin, marked("this price makes a margin of {made}, not the {wanted} wanted")),
        (
            terms.markup if terms.margin is None else None,
            price.markup,
            marked("this price makes a markup of {made}, not the {wanted} wanted"),
        ),
    ):
        if wanted is not None and made is not None and made < wanted:
            return (say(words, made=figures.percent(made), wanted=figures.percent(wanted)),)
    return ()


def _with(price: Price, source: PriceSource, exact: Fraction | None, cautions: tuple[str, ...]) -> Price:
    return Price(
        price.shown,
        source,
        exact,
        price.paid,
        price.tax,
        price.net,
        price.fee,
        price.profit,
        price.margin,
        price.markup,
        cautions=cautions,
    )
