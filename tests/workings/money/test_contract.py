"""The cost as data for other programs: names and forms are kept."""

import json
from decimal import Decimal
from fractions import Fraction

from maker_site.workings.money import Yield, cost_as_data, cost_sheet, price_of
from tests.workings.money.bench import workshop


def data(**of_shop):
    bench = workshop(**of_shop)
    coasters = bench.projects["coasters"]
    share = Yield(Fraction(24, 25), "24 of 25 good", assumed=False)
    sheet = cost_sheet(bench, coasters, share, Fraction(1, 2), bench.pressings)
    return json.loads(json.dumps(cost_as_data(sheet, price_of(coasters, sheet, bench.shop))))


def test_names_and_forms():
    made = data()
    assert list(made) == [
        *("project", "currency", "pieces", "yield", "lines", "cost", "complete"),
        *("price", "price_source", "fee", "tax", "profit", "margin"),
    ]
    assert made["project"] == "coasters"
    assert (made["currency"], made["pieces"], made["complete"]) == ("GBP", 4, True)
    assert made["yield"] == {"value": "0.96", "source": "24 of 25 good"}
    assert all(list(line) == ["name", "amount", "known", "basis"] for line in made["lines"])
    assert made["lines"][-2] == {
        "name": "Gift box",
        "amount": "0.9",
        "known": True,
        "basis": "1 × £0.90 a piece",
    }


def test_the_figures_hold_together():
    made = data()
    price, parts = Decimal(made["price"]), [Decimal(made[name]) for name in ("fee", "tax", "profit", "cost")]
    assert abs(sum(Decimal(line["amount"]) for line in made["lines"]) - Decimal(made["cost"])) < Decimal("1e-20")
    assert abs(sum(parts) - price) < Decimal("1e-20")
    assert price % Decimal("0.50") == 0
    assert made["price_source"] == "worked out"
    assert Decimal(made["margin"]) >= Decimal("0.5")


def test_what_is_not_known_is_null():
    made = data(electricity=None, margin=None)
    warm_up = next(line for line in made["lines"] if line["name"] == "Power, warm-up")
    assert (warm_up["amount"], warm_up["known"], made["complete"]) == (None, False, False)
    assert made["price"] is None
    assert made["profit"] is None
    assert made["price_source"].startswith("no margin or markup is wanted")
