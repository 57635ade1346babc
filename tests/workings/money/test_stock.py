"""What is on the shelf: bought less pressed, by blank and by lot, and what can be made of it."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from maker_site.workings.money import (
    Gift,
    LotStock,
    Makeable,
    Terms,
    Yield,
    all_stock,
    can_make,
    gifts_under,
    price_for,
    running_low,
    stock_of,
)
from tests.workings.money.bench import POUNDS, blank, pressing, project, shop, workshop

TWO_LOTS = [{"lot": "A7", "count": "24"}, {"lot": "B1", "count": "12"}]


def test_every_pressing_takes_from_the_shelf_spoiled_and_tests_too():
    rows = [pressing(lot="A7", pressed="10", good="9"), pressing(project=None, lot="A7", pressed="2", good="0")]
    stock = stock_of(blank(bought=TWO_LOTS), rows, shop())
    assert (stock.bought, stock.pressed, stock.left) == (36, 12, 24)
    assert stock.lots == (LotStock("A7", 24, 12), LotStock("B1", 12, 0))


def test_a_lot_delivered_twice_is_one_lot():
    lots = [*TWO_LOTS, {"lot": "A7", "count": "6"}]
    assert stock_of(blank(bought=lots), [], shop()).lots[0] == LotStock("A7", 30, 0)


def test_pressings_of_no_known_lot_come_off_the_blank_alone():
    rows = [pressing(lot=None, pressed="3", good="3"), pressing(lot="Z9", pressed="2", good="2")]
    stock = stock_of(blank(bought=TWO_LOTS), rows, shop())
    assert stock.left == 31
    assert stock.of_no_lot == 5
    assert [lot.left for lot in stock.lots] == [24, 12]


def test_where_no_delivery_has_a_name_all_comes_out_of_one_heap():
    stock = stock_of(
        blank(bought=[{"count": "9"}, {"count": "3"}]), [pressing(lot="Z9", pressed="5", good="5")], shop()
    )
    assert stock.lots == (LotStock(None, 12, 5),)
    assert stock.of_no_lot == 0


def test_other_blanks_are_passed_over():
    assert stock_of(blank(bought=TWO_LOTS), [pressing(blank="mug")], shop()).pressed == 0


def test_without_a_delivery_nothing_is_known():
    stock = stock_of(blank(bought=None), [pressing()], shop())
    assert stock.left is None
    assert not stock.low


@pytest.mark.parametrize(
    ("pressed", "own", "of_shop", "low"),
    [
        ("16", None, "8", True),
        ("15", None, "8", False),
        ("20", "2", "8", False),
        ("22", "2", "8", True),
        ("24", None, None, False),
    ],
)
def test_a_blank_runs_low_at_its_own_count_else_at_the_shop_s(pressed, own, of_shop, low):
    rows = [pressing(pressed=pressed, good="0")]
    assert stock_of(blank(low_stock=own), rows, shop(low_stock=of_shop)).low is low


def test_more_pressed_than_bought_is_said():
    stock = stock_of(blank(), [pressing(pressed="25", good="0")], shop(low_stock=None))
    assert stock.left == -1
    assert stock.overdrawn
    assert stock.low


def test_the_low_list_begins_with_the_fewest():
    bench = workshop(blanks=(blank(), blank("mug", bought=[{"count": "3"}]), blank("plate")), pressings=(pressing(),))
    assert [stock.blank for stock in running_low(all_stock(bench))] == ["slate", "mug"]


@given(st.lists(st.tuples(st.sampled_from(["A7", "B1", "Z9", None]), st.integers(1, 30)), max_size=12))
def test_the_lots_and_the_rest_add_up_to_the_blank(rows):
    pressings = [pressing(lot=lot, pressed=str(count), good="0") for lot, count in rows]
    stock = stock_of(blank(bought=TWO_LOTS), pressings, shop())
    assert sum(lot.left for lot in stock.lots) - stock.of_no_lot == stock.left == 36 - sum(n for _lot, n in rows)


class TestWhatCanBeMade:
    # 24 bought, 11 pressed: 13 left
    BENCH = workshop(
        projects=(project("box", pieces="4"), project("big-box", pieces="14"), project("one", pieces="1")),
        pressings=(pressing(pressed="11", good="10"),),
    )

    def test_whole_sets_are_counted_and_spoilage_taken_off(self):
        yields = {"box": Yield(Fraction(9, 10), "made up", assumed=False)}
        assert can_make(self.BENCH, all_stock(self.BENCH), yields) == (Makeable("box", 3, 2), Makeable("one", 13, 13))

    def test_gifts_under_a_sum_are_those_in_stock_whose_customer_pays_no_more(self):
        makeable = can_make(self.BENCH, all_stock(self.BENCH), {})
        added = Terms(Decimal("0.01"), tax_rate=Fraction(1, 5), tax_included=False)
        prices = {
            "box": price_for(Fraction(1), added, POUNDS, typed=Decimal("16.67")),  # 20.004 with tax
            "one": price_for(Fraction(1), added, POUNDS, typed=Decimal("5.00")),
            "big-box": price_for(Fraction(1), added, POUNDS, typed=Decimal("1.00")),  # not enough blanks
        }
        assert gifts_under(Decimal(20), makeable, prices) == (Gift(makeable[1], prices["one"]),)
        both = gifts_under(Decimal(21), makeable, prices)
        assert [gift.makeable.project for gift in both] == ["box", "one"]

    def test_what_has_no_price_is_no_gift(self):
        makeable = can_make(self.BENCH, all_stock(self.BENCH), {})
        none = price_for(Fraction(1), Terms(Decimal("0.01")), POUNDS)
        assert gifts_under(Decimal(20), makeable, {"box": none}) == ()
