"""The cost sheet: every line by hand, every missing figure said, and what must hold whatever the figures."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from maker_site.workings.money import (
    COMMON_YIELD,
    CostSheet,
    WhatIf,
    Yield,
    amounts_anew,
    assumed_yield,
    by_project,
    cost_sheet,
    ink_ml,
    kilowatt_hours,
    landed,
    parts_of,
    pieces_to_start,
    quantity_breaks,
    transfer_size,
)
from tests.checks import check
from tests.workings.money.bench import SUPPLIES, blank, pressing, project, shop, without, workshop

LOGGED = Yield(Fraction(24, 25), "24 of 25 good", assumed=False)
HALF = Fraction(1, 2)
UNIT = pint.UnitRegistry(non_int_type=Fraction)


def sheet_of(bench=None, *, share=LOGGED, coverage=HALF, what_if=None) -> CostSheet:
    bench = bench or workshop()
    made = next(iter(bench.projects.values()))
    return cost_sheet(bench, made, share, coverage, by_project(bench.pressings).get(made.id, ()), what_if)


def line(sheet: CostSheet, name: str):
    return next(each for each in sheet.lines if each.name == name)


def names(sheet: CostSheet) -> list[str]:
    return [each.name for each in sheet.lines]


class TestByHand:
    """Four coasters in a box, six sets at a go, 24 of 25 good; worked out by hand from the records in bench.py."""

    @pytest.mark.parametrize(
        ("name", "amount"),
        [
            # four blanks of 45.35/24 (checks: pricing-10)
            ("Blank", 4 * Fraction("45.35") / 24 / Fraction("0.96")),
            # 0.061798 ml a piece (checks: print-26) at 42/400 a ml
            ("Ink", 4 * Fraction("0.061798") * Fraction("0.105") / Fraction("0.96")),
            # 24 transfers, 2 to a sheet (checks: print-12): 12 sheets of 0.09 for six sets
            ("Transfer paper", 12 * Fraction("0.09") / 6 / Fraction("0.96")),
            ("Protective paper", 4 * 2 * Fraction("13.50") / 250 / Fraction("0.96")),
            ("Cover sheet", 4 * Fraction(8) / 200 / Fraction("0.96")),
            # 1.4 kW x 0.35 x 1/12 h x 0.28
            ("Power, pressing", 4 * Fraction("1.4") * Fraction("0.35") / 12 * Fraction("0.28") / Fraction("0.96")),
            # 1.4 kW x 0.2 h x 0.28, over six sets
            ("Power, warm-up", Fraction("0.0784") / 6),
            ("Design", Fraction(5, 60) * 14),
            ("Press work", Fraction(12, 60) * 14 / Fraction("0.96")),
            ("Finishing", Fraction(8, 60) * 14),
            ("Gift box", Fraction("0.90")),
        ],
    )
    def test_each_line(self, name, amount):
        assert abs(line(sheet_of(), name).exact - amount) < Fraction(1, 10**6)

    def test_overhead_is_a_share_of_the_sum_and_the_cost_is_all_of_it(self):
        sheet = sheet_of()
        others = sum(each.exact for each in sheet.lines[:-1])
        assert sheet.lines[-1].name == "Overhead"
        assert sheet.lines[-1].exact == others * Fraction(6, 100)
        assert sheet.exact == others * Fraction(106, 100)
        assert sheet.cost == pytest.approx(Decimal("16.5521"), abs=Decimal("0.0001"))
        assert sheet.complete

    def test_the_basis_shows_the_figures(self):
        sheet = sheet_of()
        assert line(sheet, "Blank").basis == (
            "£1.89 landed (£38.40 paid + £6.95 delivery, ÷ 24) × 4 pieces ÷ 96 % yield (24 of 25 good)"
        )
        assert line(sheet, "Transfer paper").basis == (
            "24 transfers of 106 × 106 mm, 2 to a sheet: 12 sheets × £0.09 ÷ batch of 6 ÷ 96 % yield (24 of 25 good)"
        )
        assert line(sheet, "Design").basis == "30 min ÷ batch of 6 × £14.00 an hour"

    def test_only_what_a_failed_pressing_uses_up_is_divided_by_the_yield(self):
        all_good, half_good = (
            sheet_of(share=Yield(Fraction(1), "all", assumed=False)),
            sheet_of(share=Yield(HALF, "half", assumed=False)),
        )
        grown = {
            one.name for one, two in zip(all_good.lines, half_good.lines, strict=True) if two.exact == 2 * one.exact
        }
        same = {one.name for one, two in zip(all_good.lines, half_good.lines, strict=True) if two.exact == one.exact}
        assert same == {"Power, warm-up", "Design", "Finishing", "Gift box"}
        assert grown == set(names(all_good)) - same - {"Overhead"}


class TestAgainstTheTable:
    def test_landed_cost(self):
        assert check("pricing-10").accepts(landed(blank()).each)

    def test_lots_are_averaged_by_their_pieces(self):
        lots = [{"count": "20", "paid": "36.00"}, {"count": "30", "paid": "42.00"}]
        assert landed(blank(bought=lots)).each == check("pricing-11").figure

    def test_what_the_pieces_carry_adds_up_to_what_was_paid(self):
        # the trap of checks: pricing-20, where shared cents must still add up
        lots = [{"count": "7", "paid": "10.00", "delivery": "2.50", "import charges": "0.01"}]
        assert landed(blank(bought=lots)).each * 7 == Fraction("12.51")

    def test_spoilage_is_carried_by_the_good_pieces(self):
        row = check("pricing-09")  # 4.50 used up at a spoilage of 10 %
        dear = workshop(blanks=(blank(bought=[{"count": "1", "paid": "4.50", "delivery": "0"}]),))
        one = replace(dear, projects={"coasters": project(pieces="1")})
        made = sheet_of(one, share=Yield(Fraction(9, 10), "made up", assumed=False))
        assert line(made, "Blank").exact == row.figure

    def test_power(self):
        assert kilowatt_hours(200, Fraction(4 * 3600 * 120)) == check("pricing-23").figure
        assert check("pricing-24").accepts(kilowatt_hours(1200, Fraction(24 * 3600), Fraction(1, 5)))

    def test_ink(self):
        size = transfer_size(project(), blank())
        assert (size.width, size.height) == (106, 106)
        assert check("print-26").accepts(ink_ml(size.square_metres, HALF, Fraction(11)))


@given(st.integers(1, 5000), st.fractions(1, 10_000, max_denominator=60), st.fractions(0, 1, max_denominator=100))
def test_energy_agrees_with_pint(watts, seconds, duty):
    energy = (watts * UNIT.watt * seconds * UNIT.second * duty).to("kilowatt_hour")
    assert kilowatt_hours(watts, seconds, duty) == energy.magnitude


class TestPressedTogether:
    """Pieces in the press together share its power and its sheets; layers count as often as they lie there."""

    def test_power_and_cover_sheet_are_shared(self):
        alone, four = sheet_of(), sheet_of(workshop(projects=(project(at_once="4"),)))
        for name in ("Power, pressing", "Cover sheet"):
            assert line(four, name).exact == line(alone, name).exact / 4

    def test_two_cover_sheets_wear_twice(self):
        stack = ["cover sheet", "blank", "transfer", "cover sheet"]
        twice = sheet_of(workshop(projects=(project(stack=stack),)))
        assert line(twice, "Cover sheet").exact == 2 * line(sheet_of(), "Cover sheet").exact

    def test_papers_of_unsaid_use_are_counted_by_layers_over_the_pieces_under_them(self):
        bench = workshop(supplies=without("blotting", "use"), projects=(project(at_once="2"),))
        # two layers of 13.50/250 for two pieces, four pieces to a set
        assert line(sheet_of(bench), "Protective paper").exact == 4 * Fraction("0.054") / Fraction("0.96")


class TestMissingFigures:
    @pytest.mark.parametrize(
        ("bench", "name", "why"),
        [
            (workshop(blanks=(blank(bought=None),)), "Blank", "nothing bought is written of slate"),
            (
                workshop(blanks=(blank(bought=[{"count": "5"}]),)),
                "Blank",
                "no price is written for any lot of slate",
            ),
            (workshop(supplies=without("dye-ink", "laydown")), "Ink", "dye-ink has no laydown"),
            (workshop(supplies=without("dye-ink", "price")), "Ink", "dye-ink has no price"),
            (workshop(supplies=without("dye-ink", "contents")), "Ink", "dye-ink has no contents in ml"),
            (workshop(blanks=(blank(size=None),)), "Transfer paper", "the blank has no size"),
            (workshop(supplies=without("transfer-a4", "price")), "Transfer paper", "transfer-a4 has no price"),
            (
                workshop(blanks=(blank(size="30 x 290 mm"),)),
                "Transfer paper",
                "a transfer of 36 × 296 mm does not fit a sheet of transfer-a4",
            ),
            (workshop(supplies=without("cover", "lasts")), "Cover sheet", "cover says not how many pressings it lasts"),
            (workshop(supplies=without("blotting", "price")), "Protective paper", "blotting has no price"),
            (workshop(electricity=None), "Power, pressing", "the shop has no price of electricity"),
            (workshop(electricity=None), "Power, warm-up", "the shop has no price of electricity"),
            (workshop(press={"watts": None}), "Power, pressing", "clam has no watts"),
            (
                workshop(press={"duty": None}),
                "Power, pressing",
                "clam has no duty (the share of the time that it heats)",
            ),
            (workshop(press={"warm up": None}), "Power, warm-up", "clam has no warm-up time"),
            (workshop(labour=None), "Design", "the shop has no rate for labour"),
            (
                workshop(projects=(project(minutes={"press": "12"}),)),
                "Finishing",
                "the project says no minutes; write 0 where it takes none",
            ),
            (workshop(supplies=without("gift-box", "price")), "Gift box", "gift-box has no price"),
            (workshop(overhead=None), "Overhead", "the shop says no overhead; write 0 % where there is none"),
        ],
    )
    def test_a_missing_figure_is_named_and_the_cost_is_at_least(self, bench, name, why):
        sheet, whole = sheet_of(bench), sheet_of()
        assert line(sheet, name).exact is None
        assert line(sheet, name).basis == f"not known: {why}"
        assert not sheet.complete
        assert sheet.exact < whole.exact

    def test_unmeasured_artwork_costs_an_unknown_amount_of_ink(self):
        sheet = sheet_of(coverage=None)
        assert line(sheet, "Ink").basis == "not known: the artwork's coverage is not measured"
        assert [each.name for each in sheet.missing] == ["Ink"]

    def test_without_a_stack_the_usual_one_is_taken_and_said_to_be_assumed(self):
        """Tape, protective paper and cover sheet cost what they cost in a stack that is written."""
        layers = ["tape", "transfer", "blank", "protective paper", "cover sheet"]
        assumed = sheet_of(workshop(projects=(project(stack=None),)))
        written = sheet_of(workshop(projects=(project(stack=layers),)))
        assert assumed.complete
        for each in written.lines:
            assert line(assumed, each.name).exact == each.exact
        for kind in ("tape", "protective paper", "cover sheet"):
            name = next(each["name"] for each in SUPPLIES.values() if each["kind"] == kind)
            assert "the usual stack, none is written" in line(assumed, name).assumed

    def test_without_a_stack_or_anything_to_lay_in_it_papers_are_not_known(self):
        bare = {name: each for name, each in SUPPLIES.items() if each["kind"] in ("ink", "transfer paper", "packaging")}
        sheet = sheet_of(workshop(supplies=bare, projects=(project(stack=None),)))
        assert line(sheet, "Papers and sheets").exact is None

    def test_of_several_supplies_none_is_guessed(self):
        tape = {"name": "Tape", "kind": "tape", "price": "4.00", "contents": "33 m", "use": "120 mm"}
        bench = workshop(supplies={"tape-a": tape, "tape-b": tape}, projects=(project(stack=["tape"], supplies=None),))
        assert "could be any of tape-a, tape-b" in line(sheet_of(bench), "Tape").basis

    def test_a_typed_nothing_is_a_price(self):
        gift = workshop(blanks=(blank(bought=[{"count": "5", "paid": "0"}]),))
        assert line(sheet_of(gift), "Blank").exact == 0

    def test_where_nothing_came_out_good_no_cost_is_made_up(self):
        sheet = sheet_of(share=Yield(Fraction(0), "0 of 3 good", assumed=False))
        assert line(sheet, "Blank").basis.startswith("not known: nothing came out good yet (0 of 3 good)")
        assert line(sheet, "Finishing").known


class TestWhereFiguresComeFrom:
    def test_assumed_figures_are_said(self):
        bench = workshop(projects=(project(batch=None, at_once=None),), blanks=(blank(bleed=None),))
        sheet = sheet_of(bench, share=assumed_yield(shop()))
        assert line(sheet, "Transfer paper").assumed == ("made one at a time", "no bleed", "yield 90 %")
        assert line(sheet, "Cover sheet").assumed == ("pressed one at a time", "yield 90 %")
        assert line(sheet, "Design").whole_basis.endswith("assumed: made one at a time")

    def test_free_delivery_and_lots_without_a_price_are_said(self):
        lots = [{"count": "5", "paid": "10"}, {"count": "5"}]
        sheet = sheet_of(workshop(blanks=(blank(bought=lots),)))
        assert line(sheet, "Blank").assumed == ("1 lot without a price cost the same", "delivery of 1 lot was free")

    def test_the_latest_pressing_lends_its_stack_and_its_count(self):
        rows = (
            pressing(stack="tape > blank > transfer", at_once="2"),
            pressing(id="2", date="2026-05-01", stack="blank > transfer > cover sheet", at_once="4"),
        )
        bench = workshop(projects=(project(stack=None, at_once=None),), pressings=rows)
        sheet = sheet_of(bench)
        assert "Tape" not in names(sheet)
        assert "÷ 4 at once" in line(sheet, "Cover sheet").basis

    def test_power_is_that_of_the_latest_pressing_with_anything_good(self):
        rows = (
            pressing(date="2026-01-01", time="60 s"),
            pressing(id="2", date="2026-02-01", time="90 s"),
            pressing(id="3", date="2026-03-01", time="120 s", pressed="2", good="0"),
        )
        assert "90 s (pressed 2026-02-01)" in line(sheet_of(workshop(pressings=rows)), "Power, pressing").basis

    def test_before_the_first_pressing_the_supplier_s_time_is_assumed(self):
        slate = blank(sheet={"time": "4 to 5 min"})
        sheet = sheet_of(workshop(blanks=(slate,), pressings=()))
        assert "300 s (the supplier's sheet, nothing pressed yet)" in line(sheet, "Power, pressing").basis
        assert "the supplier's time" in line(sheet, "Power, pressing").assumed

    def test_a_yield_is_assumed_from_the_shop_else_from_common_practice(self):
        assert assumed_yield(shop()).share == Fraction(9, 10)
        assert assumed_yield(shop(usual_yield="80 %")).share == Fraction(4, 5)
        assert assumed_yield(shop(usual_yield=None)) == Yield(COMMON_YIELD, "common practice, no log yet", assumed=True)


VINYL = {"name": "Vinyl, brown", "kind": "vinyl", "price": "21.00", "contents": "5 m", "use": "200 mm"}


class TestOtherMethods:
    def test_vinyl_takes_no_ink_and_no_transfer_paper(self):
        cloth = blank(substrate="cotton", method="heat-transfer vinyl")
        bench = workshop(
            blanks=(cloth,),
            supplies={"vinyl": VINYL},
            projects=(project(pieces="1", stack=["blank", "transfer"], supplies=None),),
        )
        sheet = sheet_of(bench)
        assert "Ink" not in names(sheet)
        assert "Transfer paper" not in names(sheet)
        # 0.2 m of 21.00 for 5 m
        assert line(sheet, "Vinyl").exact == Fraction("0.84") / Fraction("0.96")

    def test_two_colours_named_by_the_project_are_two_lines(self):
        cloth = blank(substrate="cotton", method="heat-transfer vinyl")
        gold = {**VINYL, "name": "Vinyl, gold"}
        uses = [{"supply": "brown", "use": "200 mm"}, {"supply": "gold", "use": "100 mm"}]
        bench = workshop(
            blanks=(cloth,),
            supplies={"brown": VINYL, "gold": gold},
            projects=(project(pieces="1", stack=["blank", "transfer"], supplies=uses),),
        )
        sheet = sheet_of(bench)
        assert [line(sheet, name).exact for name in ("Vinyl, brown", "Vinyl, gold")] == [
            Fraction("0.84") / Fraction("0.96"),
            Fraction("0.42") / Fraction("0.96"),
        ]

    def test_a_supply_named_by_the_project_is_not_counted_again_in_the_stack(self):
        uses = [{"supply": "tape", "use": "330 mm"}]
        bench = workshop(projects=(project(stack=["tape", "blank", "transfer"], supplies=uses),))
        assert names(sheet_of(bench)).count("Tape") == 1
        assert line(sheet_of(bench), "Tape").exact == Fraction("0.04") / Fraction("0.96")

    def test_nothing_that_the_project_names_is_left_out(self):
        uses = [{"supply": "vinyl", "use": "100 mm"}, {"supply": "dye-ink", "use": "2 ml"}]
        bench = workshop(supplies={**SUPPLIES, "vinyl": VINYL}, projects=(project(supplies=uses),))
        sheet = sheet_of(bench)
        assert line(sheet, "Vinyl, brown").exact == Fraction("0.42") / Fraction("0.96")
        assert line(sheet, "Dye ink").exact == Fraction("0.21") / Fraction("0.96")
        assert "Ink" not in names(sheet)

    @pytest.mark.parametrize(("use", "amount"), [({"use": "3"}, "0.12"), ({}, "0.16")])
    def test_what_lasts_is_paid_for_over_its_life_wherever_it_is_named(self, use, amount):
        # 8.00 over 200 pressings: three of them, or one for each of four pieces
        bench = workshop(projects=(project(supplies=[{"supply": "cover", **use}]),))
        sheet = sheet_of(bench)
        assert names(sheet).count("Cover sheet") == 1
        assert line(sheet, "Cover sheet").exact == Fraction(amount) / Fraction("0.96")

    def test_a_life_that_is_not_counted_in_pressings_is_not_known(self):
        bench = workshop(supplies={**SUPPLIES, "cover": {**SUPPLIES["cover"], "lasts": "2 kg"}})
        assert line(sheet_of(bench), "Cover sheet").basis == "not known: cover says not how many pressings it lasts"

    def test_bought_by_area_it_is_paid_for_by_area(self):
        film = {"name": "Film", "kind": "film", "price": "30.00", "contents": "3 m2"}
        bench = workshop(blanks=(blank(method="film transfer"),), supplies={**SUPPLIES, "film": film})
        # 0.106 x 0.106 m at 10.00 a square metre, four pieces
        assert line(sheet_of(bench), "Film").exact == 4 * Fraction("0.11236") / Fraction("0.96")

    def test_a_roll_of_unsaid_use_is_not_known(self):
        roll = {"name": "Roll", "kind": "transfer paper", "price": "64.00", "contents": "100 m"}
        bench = workshop(supplies={**SUPPLIES, "transfer-a4": roll})
        assert line(sheet_of(bench), "Transfer paper").exact is None

    def test_of_several_papers_the_one_in_the_printer_is_meant(self):
        wide = {**SUPPLIES["transfer-a4"], "size": "A3", "price": "18.00"}
        bench = workshop(supplies={**SUPPLIES, "transfer-a3": wide})
        assert line(sheet_of(bench), "Transfer paper") == line(sheet_of(), "Transfer paper")

    def test_of_several_papers_none_in_the_printer_s_size_is_guessed(self):
        bench = workshop(
            supplies={**SUPPLIES, "transfer-a3": {**SUPPLIES["transfer-a4"], "size": "A3"}}, paper="Letter"
        )
        assert "could be any of transfer-a4, transfer-a3" in line(sheet_of(bench), "Transfer paper").basis

    def test_amounts_in_units_that_do_not_meet_are_not_known(self):
        bench = workshop(projects=(project(supplies=[{"supply": "gift-box", "use": "3 m"}]),))
        assert line(sheet_of(bench), "Gift box").basis == ("not known: gift-box is bought in pieces and used in mm")

    def test_a_wrapped_transfer_is_the_girth_less_the_handle_gap(self):
        mug = blank(size=None, girth="258 mm", handle_gap="28 mm", height="93 mm", bleed=None)
        size = transfer_size(project(), mug)
        assert (size.width, size.height, size.bleed_written) == (230, 93, False)


class TestWhatIf:
    def test_more_pieces_in_a_set_take_more_of_everything_but_packaging(self):
        eight = sheet_of(what_if=WhatIf(pieces=8))
        four = sheet_of()
        assert eight.pieces == 8
        for name in ("Blank", "Ink", "Cover sheet", "Press work", "Finishing"):
            assert line(eight, name).exact == 2 * line(four, name).exact
        for name in ("Design", "Gift box", "Power, warm-up"):
            assert line(eight, name).exact == line(four, name).exact

    def test_another_rate_changes_labour_alone(self):
        dear, usual = sheet_of(what_if=WhatIf(labour=Fraction(28))), sheet_of()
        assert dear.labour == 2 * usual.labour
        assert line(dear, "Blank") == line(usual, "Blank")

    def test_larger_batches_share_design_and_warm_up(self):
        bench, usual = workshop(), sheet_of()
        parts = parts_of(usual, Fraction(6, 100), Fraction(14))
        breaks = quantity_breaks(parts, bench.shop, LOGGED.share, (1, 2, 12))
        costs = [each.cost for each in breaks]
        assert costs == sorted(costs, reverse=True)
        assert costs == [sheet_of(what_if=WhatIf(batch=quantity)).exact for quantity in (1, 2, 12)]
        assert all(each.complete for each in breaks)
        assert breaks[0].price.shown > breaks[2].price.shown

    def test_a_sheet_of_nothing_good_or_unpaid_hours_can_not_be_taken_apart(self):
        for share, rate in ((Yield(Fraction(0), "0 of 3 good", assumed=False), 14), (LOGGED, 0)):
            with pytest.raises(ValueError, match="came out good"):
                parts_of(sheet_of(share=share), None, Fraction(rate))


shares = st.fractions(Fraction(1, 100), 1, max_denominator=100)


@given(shares, shares)
def test_cost_never_falls_as_yield_falls(one, two):
    worse, better = sorted((one, two))
    dear = sheet_of(share=Yield(worse, "made up", assumed=False))
    cheap = sheet_of(share=Yield(better, "made up", assumed=False))
    assert dear.exact >= cheap.exact


@given(
    shares,
    st.fractions(0, 1, max_denominator=50),
    st.integers(1, 30),
    st.integers(1, 12),
    st.decimals(0, 60, places=2),
)
def test_no_line_is_negative_and_the_lines_add_up_to_the_cost(share, coverage, batch, pieces, rate):
    what_if = WhatIf(pieces=pieces, batch=batch, labour=Fraction(rate))
    sheet = sheet_of(share=Yield(share, "made up", assumed=False), coverage=coverage, what_if=what_if)
    assert all(each.exact is not None and each.exact >= 0 for each in sheet.lines)
    assert sum(each.exact for each in sheet.lines) == sheet.exact
    assert abs(sum(each.amount for each in sheet.lines) - sheet.cost) < Decimal("1e-20")


@given(st.integers(1, 500), shares)
def test_enough_pieces_are_started(wanted, share):
    start = pieces_to_start(wanted, share)
    assert start * share >= wanted
    assert start >= wanted + 1
    assert (start - 1) * share < wanted or start == wanted + 1


def test_nothing_good_yet_starts_no_count():
    assert pieces_to_start(4, Fraction(0)) is None
    assert pieces_to_start(0, HALF) == 0


def test_a_share_outside_nought_to_one_is_refused():
    with pytest.raises(ValueError, match="not between 0 and 1"):
        Yield(Fraction(11, 10), "made up", assumed=True)


@given(st.integers(1, 60), shares, st.fractions(0, 99, max_denominator=100))
def test_a_sheet_summed_anew_is_the_sheet_worked_out_with_those_figures(batch, share, labour):
    parts = parts_of(sheet_of(), Fraction(6, 100), Fraction(14))
    again = amounts_anew(parts, batch=batch, share=share, labour=labour)
    sheet = sheet_of(share=Yield(share, "made up", assumed=False), what_if=WhatIf(batch=batch, labour=labour))
    assert again == tuple(line.exact for line in sheet.lines)
