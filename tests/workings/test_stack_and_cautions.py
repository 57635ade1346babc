"""What the stack bears, which way the artwork goes, and what is said about burns and fumes."""

from typing import Any

import pytest

from maker_site.records import Severity, Workshop
from maker_site.records.quantities import temperature
from maker_site.workings.cautions import Caution, cautions
from maker_site.workings.evidence import evidence_of
from maker_site.workings.remake import Remake, mirrored, over_limit_words, remake
from maker_site.workings.review import review
from maker_site.workings.stack import Limit, holds_ptfe, stack_of, weakest
from maker_site.workings.starting_point import Source, starting_points
from tests.checks import check
from tests.workings.notebook import blank, press, project, readings, rows, supply, workshop

SUPPLIES = (
    supply("tape", "tape", limit="250 C"),
    supply("cover", "cover sheet", material="PTFE", limit="260 C"),
    supply("parchment", "protective paper", limit="220 C"),
    supply("old-cover", "cover sheet"),
    supply("silicone-cover", "cover sheet", material="silicone"),
)
BY_ID = {each.id: each for each in SUPPLIES}
TRUE = press(readings=readings(("150 C", "150 C"), ("290 C", "290 C")))


def limit_of(*names: str, **changes: Any) -> Limit | None:
    used = blank(**changes)
    return weakest(stack_of(names, "print down", used, BY_ID, "sublimation"), used)


def test_the_weakest_thing_governs() -> None:
    """checks: heat-33."""
    found = limit_of("tape", "cover", "blank", "parchment")
    assert found is not None
    assert check("heat-33").accepts(found.temperature.celsius)
    assert found.what == "Parchment"


def test_the_blank_governs_too_written_in_the_stack_or_not() -> None:
    for names in (("tape", "parchment"), ("tape", "blank")):
        found = limit_of(*names, limit="210 C")
        assert found is not None
        assert (found.temperature, found.what) == (temperature("210 C"), "Slate coaster")


def test_where_nobody_states_a_limit_there_is_none() -> None:
    assert limit_of("protective paper", "blank", "silicone-cover") is None
    assert limit_of() is None


@pytest.mark.parametrize("sheet", ["old-cover", "cover sheet"])
def test_a_sheet_that_may_be_ptfe_bears_its_service_limit(sheet: str) -> None:
    found = limit_of("tape", sheet, "blank")
    assert found is not None
    assert found.temperature == temperature("250 C")
    alone = limit_of(sheet)
    assert alone is not None
    assert check("heat-01").accepts(alone.temperature.celsius)


@pytest.mark.parametrize(
    ("names", "ptfe"),
    [(("cover",), True), (("old-cover",), True), (("cover sheet",), True), (("silicone-cover", "parchment"), False)],
)
def test_a_cover_sheet_counts_as_ptfe_until_it_is_said_to_be_another(names: tuple[str, ...], ptfe: bool) -> None:
    assert holds_ptfe(stack_of(names, None, blank(), BY_ID, "sublimation")) is ptfe


def test_the_usual_stack_follows_the_face() -> None:
    def kinds(face: str | None) -> list[str]:
        found = stack_of((), face, blank(), BY_ID, "sublimation")
        assert not found.written
        return [layer.kind for layer in found.layers]

    assert kinds("print up").index("transfer") < kinds("print up").index("blank")
    assert kinds("print down").index("transfer") > kinds("print down").index("blank")


@pytest.mark.parametrize(
    ("face", "method", "reversed_"),
    [
        ("print up", "sublimation", True),
        ("print down", "sublimation", True),
        ("wrapped", "sublimation", True),
        (None, "sublimation", True),
        (None, "heat-transfer vinyl", True),
        ("print down", "heat-transfer vinyl", True),
        ("print down", "film transfer", True),
        ("print up", "film transfer", False),
        (None, "film transfer", None),  # a bought one comes ready
        ("up", "film transfer", None),  # used both ways by makers
        ("face down", "film transfer", None),
        ("up", "sublimation", True),
    ],
)
def test_artwork_is_reversed_where_the_print_goes_against_the_blank(
    face: str | None, method: str, reversed_: bool | None
) -> None:
    """The trade's word “mirror”: it follows from the face, not from the method's name."""
    assert mirrored(face, method) is reversed_


def card(shop: Workshop, name: str = "coasters") -> Remake:
    made = shop.projects[name]
    points = starting_points(shop.blanks[made.blank], shop, evidence_of(shop))
    return remake(made, shop, points, [row for row in shop.pressings if row.project == name])


def shop_at(dial: str, *, limit: str | None = "210 C", **of_project: Any) -> Workshop:
    return workshop(
        blanks=(blank(limit=limit),),
        presses=(TRUE,),
        projects=(project(**of_project),),
        pressings=rows({"project": "coasters", "temperature": dial}),
        supplies=SUPPLIES,
    )


@pytest.mark.parametrize(("dial", "over"), [("209 C", False), ("210 C", False), ("211 C", True)])
def test_a_setting_above_the_limit_is_a_caution_on_the_card_and_in_check(dial: str, over: bool) -> None:
    shop = shop_at(dial)
    found = card(shop)
    assert found.over_limit is over
    assert (found.cautions[0].kind == "limit") is over
    problems = list(review(shop, [found]))
    assert [problem.severity for problem in problems] == [Severity.CAUTION] * over
    if over:
        words = (
            "211 °C at the platen is above what Slate coaster bears (210 °C, 410 °F). Set less, or change the stack."
        )
        assert found.cautions[0].words == problems[0].message == words


def test_the_platen_counts_and_not_the_dial() -> None:
    """The dial says 211, the platen 204 (7 C below it beyond the readings)."""
    shop = workshop(
        blanks=(blank(limit="210 C"),),
        projects=(project(),),
        pressings=rows({"project": "coasters", "temperature": "211 C"}),
    )
    assert not card(shop).over_limit


def test_ptfe_above_its_service_limit_draws_both_cautions() -> None:
    found = card(shop_at("270 C", limit=None, stack=["blank", "transfer", "cover sheet"]))
    kinds = [each.kind for each in found.cautions]
    assert kinds[0] == "limit"
    assert "ptfe" in kinds
    assert "fumes" in kinds


def test_a_hair_over_the_limit_reads_as_over() -> None:
    words = over_limit_words(temperature("210.4 C"), Limit(temperature("210 C"), "Slate"))
    assert words.startswith("A little over 210 °C at the platen is above what Slate bears (210 °C, 410 °F).")


def test_a_sheet_that_asks_for_more_than_the_blank_bears_is_found() -> None:
    shop = workshop(blanks=(blank(limit="190 C", sheet={"temperature": "185 to 195 C"}),))
    (problem,) = review(shop, [])
    assert "185 to 195 C" in problem.message
    assert "190 C" in problem.message


class TestRemake:
    def test_what_served_this_very_project_goes_first(self) -> None:
        shop = workshop(
            projects=(project(),),
            pressings=rows(
                {"pressed": "40", "good": "40"},
                {"project": "coasters", "time": "4 min", "pressed": "1", "good": "1"},
                {"project": "coasters", "time": "3 min", "pressed": "9", "good": "0"},
            ),
        )
        found = card(shop)
        assert found.from_this_project
        assert found.setting is not None
        assert found.setting.time is not None
        assert found.setting.time.seconds == 240
        assert found.runner_up is not None
        assert found.runner_up.evidence is not None
        assert found.runner_up.evidence.pressed == 40

    def test_a_project_of_another_method_gets_that_methods_setting(self) -> None:
        """Best on this blank is a sublimation setting; 200 C for 5 minutes would spoil a film."""
        towel = blank("towel", name="Towel", substrate="polyester", sheet={"temperature": "200 C", "time": "45 s"})
        shop = workshop(
            blanks=(towel,),
            projects=(project(blank="towel", method="film transfer"),),
            pressings=rows({"blank": "towel", "pressed": "40", "good": "40", "pre_press": "5 s"}),
        )
        found = card(shop)
        assert found.setting is not None
        assert found.setting.source is Source.COMMON
        assert found.setting.true is not None
        assert found.setting.true < temperature("160 C")
        filmed = workshop(
            blanks=(towel,),
            projects=(project(blank="towel", method="film transfer"),),
            pressings=rows({"blank": "towel", "method": "film transfer", "temperature": "150 C", "time": "15 s"}),
        )
        own = card(filmed).setting
        assert own is not None
        assert own.source is Source.OWN

    def test_nothing_known_is_said_to_be_nothing(self) -> None:
        shop = workshop(blanks=(blank(substrate="soapstone"),), projects=(project(),))
        found = card(shop)
        assert (found.setting, found.over_limit, found.last) == (None, False, None)
        assert found.cautions

    def test_the_smaller_facts_come_from_good_pressings(self) -> None:
        shop = workshop(
            projects=(project(),),
            pressings=rows({"cool": "flat", "peel": "hot"}, {"cool": "water", "peel": "cold", "good": "0"}),
        )
        assert (card(shop).cool, card(shop).peel) == ("flat", "hot")


def kinds(*found: Caution) -> list[str]:
    return [each.kind for each in found]


ALWAYS = {"hot", "pinch", "fumes", "electrical", "fire"}


@pytest.mark.parametrize(
    ("substrate", "options", "also"),
    [
        ("steel", {"ptfe": False}, {"sun"}),
        ("steel", {"ptfe": True}, {"sun", "ptfe"}),
        ("slate", {"ptfe": False}, {"breakage", "sun"}),
        ("slate", {"ptfe": False, "water": True}, {"breakage", "sun", "steam"}),
        ("ceramic", {"ptfe": False}, {"breakage", "food", "dishwasher"}),
        ("hardboard", {"ptfe": False}, {"steam"}),
        ("neoprene", {"ptfe": False, "pre_press": True}, {"steam"}),
        ("", {"ptfe": False, "over_limit": "Too hot."}, {"limit"}),
    ],
)
def test_what_is_always_said_and_what_is_said_besides(substrate: str, options: dict[str, Any], also: set[str]) -> None:
    """The trade's table of cautions: always these five, others by substrate and stack."""
    assert set(kinds(*cautions(substrate, **options))) == ALWAYS | also


@pytest.mark.parametrize("substrate", ["neoprene", "acrylic", "leatherette"])
def test_some_materials_give_off_more(substrate: str) -> None:
    (fumes,) = [each for each in cautions(substrate, ptfe=False) if each.kind == "fumes"]
    assert "strong ventilation" in fumes.words


def test_the_gravest_comes_first() -> None:
    found = cautions("glass", ptfe=True, over_limit="Too hot.")
    assert kinds(*found)[:3] == ["limit", "hot", "pinch"]
    assert found[0].words == "Too hot."


def test_each_short_form_is_of_its_own_caution() -> None:
    found = cautions("ceramic", ptfe=True, pre_press=True, child=True, others_artwork=True, over_limit="x")
    assert len({each.short for each in found}) == len(found)
