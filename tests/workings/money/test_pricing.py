"""Prices: the table's examples, an independent solver, and what a maker reads when a price can't be."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import brentq

from maker_site.workings.money import Terms, Yield, cost_sheet, price_for, price_of, rounded_up, terms_of
from tests.checks import check
from tests.workings.money.bench import POUNDS, project, shop, workshop

PENNY = Decimal("0.01")
PLAIN = Terms(ending=PENNY)


def share(percent: str) -> Fraction:
    return Fraction(percent) / 100


class TestAgainstTheTable:
    def test_markup_to_price(self):
        price = price_for(Fraction(40), replace(PLAIN, markup=share("50")), POUNDS)
        assert price.exact == check("pricing-01").figure
        assert check("pricing-02").accepts(price.margin * 100)

    def test_markup_to_price_with_pence(self):
        price = price_for(Fraction("29.99"), replace(PLAIN, markup=share("25")), POUNDS)
        assert check("pricing-03").accepts(price.exact)

    @pytest.mark.parametrize(
        ("row", "margin"),
        [("pricing-04", Fraction(1, 2)), ("pricing-05", Fraction(1, 5)), ("pricing-06", Fraction(1, 3))],
    )
    def test_a_markup_that_equals_a_margin(self, row, margin):
        price = price_for(Fraction(12), replace(PLAIN, margin=margin, ending=Decimal("0.0001")), POUNDS)
        assert price.markup * 100 == check(row).figure

    def test_fee_and_tax(self):
        terms = Terms(PENNY, share("40"), None, share("5"), Fraction("0.25"), share("20"))
        assert check("pricing-07").accepts(price_for(Fraction(8), terms, POUNDS).exact)

    def test_no_such_price(self):
        terms = Terms(PENNY, share("95"), fee_share=share("6.5"))
        price = price_for(Fraction(8), terms, POUNDS)
        assert check("pricing-08").expected == "none"
        assert (price.shown, price.source, price.profit) == (None, "none", None)
        assert price.reason == (
            "a margin of 95 % can't be met by any price: after the fee of 6.5 % it must stay under 93.5 % of net sales"
        )

    @pytest.mark.parametrize(("row", "cost", "margin"), [("pricing-15", "600", "40"), ("pricing-16", "40", "20")])
    def test_margin_to_price(self, row, cost, margin):
        assert price_for(Fraction(cost), replace(PLAIN, margin=share(margin)), POUNDS).exact == check(row).figure

    def test_price_back_to_cost(self):
        row = check("pricing-17")
        price = price_for(row.figure, PLAIN, POUNDS, typed=Decimal("3.24"))
        assert price.margin == pytest.approx(0.35, abs=0.002)

    def test_tax_added_and_taken_out(self):
        # HM Revenue and Customs, 100 + 20 % is 120 of which 20 (checks: pricing-25)
        added = price_for(
            Fraction(50), Terms(PENNY, tax_rate=share("20"), tax_included=False), POUNDS, typed=Decimal(100)
        )
        taken = price_for(Fraction(50), Terms(PENNY, tax_rate=share("20")), POUNDS, typed=Decimal(120))
        for price in (added, taken):
            assert (price.paid, price.tax, price.net) == (120, 20, 100)


costs = st.fractions(0, 500, max_denominator=1000)
parts = st.fractions(0, Fraction(9, 10), max_denominator=200)
fees = st.fractions(0, Fraction(3, 10), max_denominator=200)
fixed = st.fractions(0, 5, max_denominator=100)
taxes = st.fractions(0, Fraction(3, 10), max_denominator=200)


@given(costs, parts, fees, fixed, taxes)
def test_the_margin_s_price_is_where_an_independent_solver_finds_it(cost, margin, fee, kept, tax):
    left = (1 - margin) / (1 + tax) - fee
    assume(left > Fraction(1, 100))
    terms = Terms(PENNY, margin, None, fee, kept, tax)

    def short_of_wanted(paid: float) -> float:
        net = paid / (1 + float(tax))
        return net - float(fee) * paid - float(kept) - float(cost) - float(margin) * net

    found = brentq(short_of_wanted, -1.0, 1e7, xtol=1e-10, rtol=1e-14)
    assert float(price_for(cost, terms, POUNDS).exact) == pytest.approx(found, rel=1e-9, abs=1e-7)
    added = price_for(cost, replace(terms, tax_included=False), POUNDS)
    assert float(added.exact) * (1 + float(tax)) == pytest.approx(found, rel=1e-9, abs=1e-7)


@given(costs, st.fractions(0, 4, max_denominator=100), fees, fixed, taxes)
def test_the_markup_s_price_is_where_an_independent_solver_finds_it(cost, markup, fee, kept, tax):
    terms = Terms(PENNY, None, markup, fee, kept, tax)

    def short_of_wanted(paid: float) -> float:
        return paid / (1 + float(tax)) - float(fee) * paid - float(kept) - float(cost) * (1 + float(markup))

    found = brentq(short_of_wanted, -1.0, 1e7, xtol=1e-10, rtol=1e-14)
    assert float(price_for(cost, terms, POUNDS).exact) == pytest.approx(found, rel=1e-9, abs=1e-7)


@given(
    st.fractions(Fraction(1, 100), 500, max_denominator=1000),
    st.fractions(0, 2, max_denominator=100),
    st.fractions(0, 1, max_denominator=100),
    taxes,
    st.fractions(Fraction(1, 10), 10**6),
)
def test_where_no_price_is_given_none_brings_the_margin(cost, margin, fee, tax, tried):
    terms = Terms(PENNY, margin, None, fee, Fraction(0), tax)
    price = price_for(cost, terms, POUNDS)
    net = tried / (1 + tax)
    if price.shown is None:
        assert net - fee * tried - cost < margin * net
        assert price.reason
    else:
        assert price.profit >= margin * price.net


@given(costs, parts, fees, fixed, taxes, st.sampled_from(["0.01", "0.05", "0.50", "0.95", "1", "5"]), st.booleans())
def test_a_worked_out_price_is_the_least_of_its_ending_that_meets_the_margin(
    cost, margin, fee, kept, tax, ending, included
):
    terms = Terms(Decimal(ending), margin, None, fee, kept, tax, included)
    price = price_for(cost, terms, POUNDS)
    assume(price.shown is not None)
    assert Fraction(price.shown) % Fraction(ending) == 0
    assert price.profit >= margin * price.net
    assert price.exact <= price.shown < price.exact + Fraction(ending)
    assert price.net + price.tax == price.paid
    assert price.net - price.fee - cost == price.profit


class TestTypedPrices:
    TERMS = Terms(Decimal("0.50"), share("50"), None, share("6.5"), Fraction("0.30"), share("20"))

    def test_a_typed_price_stays_as_typed_and_says_what_it_makes(self):
        # 24.00 holds 4.00 tax; the fee is 1.56 + 0.30; 20.00 - 1.86 - 8.00 is 10.14
        price = price_for(Fraction(8), self.TERMS, POUNDS, typed=Decimal("24.00"))
        assert (price.shown, price.source) == (Decimal("24.00"), "typed")
        assert (price.tax, price.fee, price.profit) == (4, Fraction("1.86"), Fraction("10.14"))
        assert price.margin == Fraction("0.507")
        assert price.cautions == ()

    def test_a_price_that_loses_money_draws_a_caution(self):
        price = price_for(Fraction(20), self.TERMS, POUNDS, typed=Decimal("24.00"))
        assert price.cautions == ("this price loses £1.86 on every sale",)

    def test_a_price_below_the_margin_draws_a_caution(self):
        price = price_for(Fraction(10), self.TERMS, POUNDS, typed=Decimal("24.00"))
        assert price.cautions == ("this price makes a margin of 40.7 %, not the 50 % wanted",)

    def test_a_price_of_nothing_has_no_margin(self):
        price = price_for(Fraction(0), PLAIN, POUNDS, typed=Decimal(0))
        assert (price.margin, price.markup, price.profit) == (None, None, 0)

    def test_a_cost_that_is_a_least_is_said_beside_the_price(self):
        for typed in (None, Decimal("24.00")):
            price = price_for(Fraction(8), self.TERMS, POUNDS, typed=typed, complete=False)
            assert price.cautions == ("figures are missing: the cost is at least this, and the profit at most",)


class TestNoPrice:
    def test_without_a_wish_there_is_none(self):
        price = price_for(Fraction(8), PLAIN, POUNDS)
        assert price.reason.startswith("no margin or markup is wanted")

    def test_a_margin_of_all_is_named(self):
        price = price_for(Fraction(8), replace(PLAIN, margin=Fraction(1)), POUNDS)
        assert price.reason == "a margin of 100 % can't be met by any price: it leaves nothing for the cost"

    def test_a_fee_that_takes_all_is_named(self):
        terms = Terms(PENNY, share("10"), None, share("84"), Fraction(0), share("20"))
        reason = "the fee of 84 % takes all that the tax leaves of any price, so no price can earn anything"
        assert price_for(Fraction(8), terms, POUNDS).reason == reason
        assert price_for(Fraction(8), replace(terms, margin=None, markup=share("5")), POUNDS).reason == reason


class TestTermsOfAShop:
    def test_are_read_from_its_record(self):
        assert terms_of(shop()) == Terms(
            Decimal("0.50"), Fraction(1, 2), None, share("6.5"), Fraction("0.30"), Fraction(1, 5), tax_included=True
        )

    @pytest.mark.parametrize(("currency", "step"), [("GBP", "0.01"), ("JPY", "1"), ("KWD", "0.001")])
    def test_without_an_ending_prices_go_up_to_the_currency_s_smallest_step(self, currency, step):
        terms = terms_of(shop(currency=currency, price_ending=None))
        assert terms.ending == Decimal(step)
        assert rounded_up(Fraction(10, 3), terms.ending) == -(-Fraction(10, 3) // Fraction(step)) * Decimal(step)

    def test_no_fee_and_no_tax_are_nothing(self):
        terms = terms_of(shop(fee=None, tax=None, margin=None, markup="80 %"))
        assert (terms.fee_share, terms.fee_fixed, terms.tax_rate, terms.markup) == (0, 0, 0, Fraction(4, 5))

    def test_the_menu_s_typed_price_goes_before_the_worked_out_one(self):
        bench = workshop()
        sheet = cost_sheet(
            bench,
            bench.projects["coasters"],
            Yield(Fraction(1), "made up", assumed=False),
            Fraction(1, 2),
            bench.pressings,
        )
        assert price_of(project(), sheet, bench.shop).source == "worked out"
        typed = project(share={"menu": {"price": "24.00"}})
        assert price_of(typed, sheet, bench.shop).shown == Decimal("24.00")
