"""Where to begin with a blank, and why."""

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from maker_site.records import Press, Workshop
from maker_site.records.quantities import temperature
from maker_site.workings.calibration import Footing, dial_for, true_temperature
from maker_site.workings.evidence import evidence_of
from maker_site.workings.starting_point import Source, StartingPoint, percent_down, percent_up, starting_points
from tests.workings.notebook import blank, calibrated, press, readings, rows, workshop

SHEET = {"temperature": "195 to 205 C", "time": "6 to 7 min", "face": "print up"}
OTHER = blank("tile", name="Slate tile", thickness="8 mm")
MUG = press("mug", name="Mug press", kind="mug", readings=None)
TWIN = press("twin", name="Second clamshell", readings=readings(("150 C", "150 C"), ("220 C", "220 C")))


def points(shop: Workshop, of: str = "slate", **options: Any) -> tuple[StartingPoint, ...]:
    return starting_points(shop.blanks[of], shop, evidence_of(shop), **options)


def best(shop: Workshop, of: str = "slate", **options: Any) -> StartingPoint:
    return points(shop, of, **options)[0]


def full(*log: dict[str, Any], sheet: dict[str, str] | None = SHEET, **changes: Any) -> Workshop:
    return workshop(blanks=(blank(sheet=sheet, **changes), OTHER), pressings=rows(*log), presses=(press(), MUG, TWIN))


def test_own_goes_before_sheet_before_relative_before_common_practice() -> None:
    shop = full({"pressed": "3", "good": "3"}, {"blank": "tile"})
    assert [point.source for point in points(shop)] == [Source.OWN, Source.SHEET, Source.RELATIVE, Source.COMMON]


def test_own_names_its_count_and_interval() -> None:
    """3 of 3 is 0.4385 to 1 (scipy.stats.binomtest(3, 3).proportion_ci(method="wilson"))."""
    found = best(full({"pressed": "3", "good": "3"}))
    assert found.reason == (
        "Your best setting: 3 of 3 good on this blank; the true share is likely between 43 and 100 %."
    )
    assert (found.true, found.press) == (temperature("193 C"), "clam")
    assert found.dial is not None
    assert found.dial.temperature.typed == "200 C"


def test_a_setting_with_no_good_piece_is_never_proposed_as_own() -> None:
    first, *others = points(full({"pressed": "5", "good": "0"}))
    assert Source.OWN not in {first.source, *(point.source for point in others)}
    assert first.reason == (
        "Stone Co’s sheet says so; the middle of its range. A claim, not your evidence: test one. "
        "Your own 5 pieces all failed."
    )


def test_one_failed_piece_is_one_piece() -> None:
    assert best(full({"pressed": "1", "good": "0"})).reason.endswith("Your own piece failed.")


def test_failures_elsewhere_do_not_make_a_good_setting_failed() -> None:
    """Asked for the mug press: the good pieces on the clamshell don't count there, but nothing failed either."""
    shop = full({"pressed": "9", "good": "9"}, {"pressed": "2", "good": "0", "time": "2 min"})
    assert best(shop, press=MUG).reason.endswith("test one.")
    failed = full({"press": "mug", "pressed": "2", "good": "0"}, {"pressed": "9", "good": "9"})
    assert best(failed, press=MUG).reason.endswith("Your own 2 pieces in this kind of press all failed.")


def test_the_sheets_middle_is_proposed_and_its_range_kept() -> None:
    found = best(full())
    assert (found.source, found.true, found.face) == (Source.SHEET, temperature("200 C"), "print up")
    assert found.time is not None
    assert found.time.seconds == 390
    assert found.temperature_range is not None
    assert found.temperature_range.typed == "195 to 205 C"


def test_a_setting_of_another_method_is_not_this_methods() -> None:
    shop = full({"method": "film transfer", "temperature": "160 C", "time": "15 s"}, sheet=None)
    assert [point.source for point in points(shop)] == [Source.COMMON]
    assert best(shop, method="film transfer").source is Source.OWN


def test_the_sheet_speaks_of_the_blanks_own_method_only() -> None:
    assert Source.SHEET not in {point.source for point in points(full(), method="film transfer")}


def test_nothing_known_gives_nothing() -> None:
    shop = workshop(blanks=(blank(substrate="soapstone"),))
    assert points(shop) == ()


class TestRelatives:
    THIN = blank("thin", name="Thin slate", thickness="4 mm", supplier="Other Co")
    NEAR = blank("near", name="Near slate", thickness="6 mm")
    THICK = blank("thick", name="Thick slate", thickness="12 mm")
    UNSAID = blank("unsaid", name="Slate of unsaid thickness", thickness=None)
    GLASS = blank("glass", name="Glass board", substrate="glass", thickness="5 mm")
    ALL = (blank(), THIN, NEAR, THICK, UNSAID, GLASS)

    def shop(self, *log: dict[str, Any]) -> Workshop:
        return workshop(blanks=self.ALL, pressings=rows(*log), presses=(press(), MUG))

    def test_the_nearest_thickness_goes_first_then_the_same_supplier(self) -> None:
        """Thin and near are both 1 mm away; near is from the blank's own supplier. Glass is no relative."""
        log = [{"blank": each.id, "pressed": "40", "good": "40"} for each in self.ALL[1:] if each is not self.NEAR]
        shop = self.shop(*log, {"blank": "near", "pressed": "1", "good": "1"})
        found = [point for point in points(shop) if point.source is Source.RELATIVE]
        assert [point.relative for point in found] == ["near", "thin", "thick", "unsaid"]
        assert found[0].reason == (
            "Nothing of your own on this blank yet; Near slate is slate too, the nearest in thickness, "
            "and there 1 of 1 were good. Test one."
        )
        assert "nearest" not in found[2].reason

    def test_at_one_thickness_the_better_supported_goes_first(self) -> None:
        twin = self.NEAR.model_copy(update={"id": "twin"})
        shop = workshop(
            blanks=(*self.ALL, twin),
            pressings=rows({"blank": "near"}, {"blank": "twin", "pressed": "9", "good": "9"}),
        )
        assert best(shop).relative == "twin"

    def test_only_a_relatives_best_is_shown(self) -> None:
        shop = self.shop({"blank": "near"}, {"blank": "near", "time": "4 min", "pressed": "9", "good": "9"})
        (found,) = [point for point in points(shop) if point.source is Source.RELATIVE]
        assert found.evidence is not None
        assert found.evidence.pressed == 9

    def test_a_relative_that_only_failed_is_none(self) -> None:
        assert best(self.shop({"blank": "near", "good": "0"})).source is Source.COMMON

    @pytest.mark.parametrize(
        ("log", "begins"),
        [
            ([{"good": "0"}], "No good piece of your own on this blank yet; Near slate"),
            ([{}], "Near slate"),
        ],
    )
    def test_the_reason_does_not_deny_the_makers_own(self, log: list[dict[str, Any]], begins: str) -> None:
        shop = self.shop({"blank": "near"}, *log)
        (found,) = [point for point in points(shop) if point.source is Source.RELATIVE]
        assert found.reason.startswith(begins)

    def test_in_another_kind_of_press_the_makers_own_counts_as_nothing(self) -> None:
        shop = self.shop({}, {"blank": "near", "press": "mug"})
        assert best(shop, press=MUG).reason.startswith("Nothing of your own on this blank in this kind of press yet;")


class TestOnAnotherPress:
    def test_the_platen_is_kept_and_the_dial_changes(self) -> None:
        found = best(full({}), press=TWIN)
        assert (found.source, found.true, found.press) == (Source.OWN, temperature("193 C"), "twin")
        assert found.dial is not None
        assert (found.dial.temperature, found.dial.footing) == (temperature("193 C"), Footing.MEASURED)
        assert found.reason.endswith("Carried from Clamshell by the platen’s temperature: test one.")

    def test_another_kind_of_press_is_not_comparable(self) -> None:
        assert best(full({}), press=MUG).source is Source.SHEET

    def test_a_press_of_unsaid_kind_is_set_by_the_platen_and_the_doubt_is_said(self) -> None:
        """The platen was at 193 C; this dial reads 5 C low, so it is set to 188 C."""
        unsaid = press("unsaid", name="Unsaid", kind=None, readings=readings(("185 C", "190 C"), ("195 C", "200 C")))
        found = best(workshop(pressings=rows({}), presses=(press(), unsaid)), press=unsaid)
        assert found.source is Source.OWN
        assert found.dial is not None
        assert found.dial.temperature == temperature("188 C")
        assert found.reason.endswith(" Both are taken to be of one kind, as their records do not say.")

    def test_a_guess_stays_a_guess_on_a_measured_press(self) -> None:
        unread = press("unread", name="Unread clamshell", readings=None)
        shop = workshop(pressings=rows({"press": "unread"}), presses=(unread, TWIN))
        found = best(shop, press=TWIN).dial
        assert found is not None
        assert found.footing is Footing.NONE

    def test_a_dial_that_ends_too_low_is_named(self) -> None:
        small = press("small", name="Small clamshell", readings=None, highest="190 C", lowest="100 C")
        shop = workshop(pressings=rows({}), presses=(press(), small))
        assert best(shop, press=small).reason.endswith(" That is above what Small clamshell reaches (190 C).")

    def test_the_sheet_is_dialled_for_the_press_asked_about(self) -> None:
        found = best(full(), press=TWIN).dial
        assert found is not None
        assert found.temperature == temperature("200 C")

    @given(calibrated("a"), calibrated("b"), st.integers(150, 210))
    def test_the_other_press_reaches_the_same_platen_temperature(self, one: Press, other: Press, dial: int) -> None:
        shop = workshop(presses=(one, other), pressings=rows({"press": "a", "temperature": f"{dial} C"}))
        found = best(shop, press=other)
        assert found.true is not None
        assert found.dial is not None
        assert found.true == true_temperature(one, temperature(f"{dial} C")).temperature
        assert found.dial.temperature == dial_for(other, found.true).temperature
        assert true_temperature(other, found.dial.temperature).temperature == found.true


@given(
    st.lists(
        st.tuples(st.sampled_from(("slate", "tile")), st.integers(0, 4), st.integers(1, 9), st.integers(0, 9)),
        max_size=8,
    ),
    st.booleans(),
)
def test_sources_stand_in_their_order_and_own_has_a_good_piece(
    log: list[tuple[str, int, int, int]], with_sheet: bool
) -> None:
    pressings = [
        {"blank": which, "time": f"{60 + minutes * 60} s", "pressed": str(pressed), "good": str(min(good, pressed))}
        for which, minutes, pressed, good in log
    ]
    found = points(full(*pressings, sheet=SHEET if with_sheet else None))
    order = [list(Source).index(point.source) for point in found]
    assert order == sorted(order)
    own = [point.evidence for point in found if point.source is Source.OWN]
    assert all(each is not None and each.good and each.setting.blank == "slate" for each in own)
    lows = [each.interval.low for each in own if each]
    assert lows == sorted(lows, reverse=True)
    for point in found:
        if point.evidence:
            assert f"{point.evidence.good} of {point.evidence.pressed}" in point.reason
    assert found[-1].source is Source.COMMON


@pytest.mark.parametrize(("share", "down", "up"), [(0.29, 29, 29), (0.4385, 43, 44), (0, 0, 0), (1, 100, 100)])
def test_percentages_never_flatter(share: float, down: int, up: int) -> None:
    """0.29 x 100 is 28.999999999999996 in binary, and 29 all the same."""
    assert (percent_down(share), percent_up(share)) == (down, up)


def test_a_middle_is_exact() -> None:
    found = best(workshop(blanks=(blank(substrate="hardboard"),)))
    assert found.time is not None
    assert found.time.seconds == Fraction("67.5")  # of 60 to 75 s
