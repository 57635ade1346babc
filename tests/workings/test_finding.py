"""Finding settings by words in any order, loosely spelt: what is found, what comes first, what is offered instead."""

import unicodedata
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from maker_site.records import Workshop
from maker_site.workings.evidence import evidence_of
from maker_site.workings.finding.folding import fold, words_of
from maker_site.workings.finding.index import Indexing
from maker_site.workings.finding.matching import Matches, match
from maker_site.workings.finding.query import read
from maker_site.workings.finding.rows import MOST_POINTS, Row, points_by_blank, rows
from maker_site.workings.starting_point import starting_points
from maker_site.workings.wilson import interval
from tests.workings.notebook import blank, press, project, row, workshop

SLATE = blank("slate-lumm", name="Slate coaster", supplier="Lumm Trade Blanks", code="SC-100", sheet=None)
PLATE = blank("plate-a5", name="Metal plate A5", substrate="aluminium", supplier="Crème & Søn", thickness="1 mm")
MUG = blank("mug-11oz", name="Mug 11oz", substrate="ceramic", supplier="Tidewell", thickness=None)
SHEETED = blank(
    "tile", name="Wall tile", substrate="glass", sheet={"temperature": "190 to 205 C", "time": "4 to 8 min"}
)
BENCH = workshop(
    blanks=(MUG, PLATE, SLATE, SHEETED),
    presses=(press(), press("ring", name="Ring press", kind="mug", readings=None)),
    projects=(
        project("harbour", title="Harbour wall", blank="slate-lumm", occasions=["wedding"]),
        project("heron", title="Heron in the weir", blank="plate-a5"),
    ),
    pressings=(
        row("log:2", blank="slate-lumm", project="harbour", pressed="25", good="24", defects="ghosted"),
        row("log:3", blank="slate-lumm", time="6 min", pressed="3", good="0", defects="scorched"),
        row(
            "log:4", blank="plate-a5", project="heron", temperature="400 F", time="60 s", face="print down", pressed="2"
        ),
        row("log:5", blank="mug-11oz", press="ring", temperature="180 C", time="3:20", face="wrapped", pressed="4"),
    ),
)


def rows_of(bench: Workshop) -> tuple[Row, ...]:
    groups = evidence_of(bench)
    return tuple(rows(bench, groups, points_by_blank(bench, groups)))


def looked(query: str, bench: Workshop = BENCH) -> tuple[list[dict[str, Any]], Matches]:
    found = rows_of(bench)
    indexing = Indexing()
    for each in found:
        indexing.add(each.sayings)
    indexed = indexing.done()
    matches = match(read(query), indexed.vocabulary, lambda number: indexed.postings[number])
    return [found[number].facts for number in matches.rows], matches


def blanks_found(query: str) -> list[object]:
    return [facts["blank"] for facts in looked(query)[0]]


@pytest.mark.parametrize(
    ("query", "blank"),
    [
        ("slate", "slate-lumm"),
        ("coaster slate", "slate-lumm"),
        ("SLATE-LUMM", "slate-lumm"),
        ("sc-100", "slate-lumm"),
        ("sc 100", "slate-lumm"),
        ("lumm", "slate-lumm"),
        ("harbour", "slate-lumm"),
        ("wedding lumm", "slate-lumm"),
        ("double image", "slate-lumm"),
        ("ghosted", "slate-lumm"),
        ("print up", "slate-lumm"),
        ("aluminum", "plate-a5"),
        ("the heron in the weir", "plate-a5"),
        ("creme", "plate-a5"),
        ("søn", "plate-a5"),
        ("son", "plate-a5"),
        ("ring", "mug-11oz"),
        ("mug press", "mug-11oz"),
        ("11", "mug-11oz"),
        ("wrap", "mug-11oz"),
        ("glass", "tile"),
    ],
)
def test_a_setting_is_found_by_what_is_known_of_it(query: str, blank: str) -> None:
    assert blanks_found(query)[0] == blank


@pytest.mark.parametrize(
    ("slip", "meant"),
    [
        ("alumnium", "aluminium"),
        ("slaet", "slate"),
        ("coastre", "coaster"),
        ("weding", "wedding"),
        ("ceramc", "ceramic"),
    ],
)
def test_a_slip_of_the_keys_is_read_as_the_word_meant_and_said(slip: str, meant: str) -> None:
    found, matches = looked(slip)
    assert [facts["blank"] for facts in found] == blanks_found(meant)
    assert meant in matches.read_as[slip]


@pytest.mark.parametrize(
    ("query", "blanks"),
    [
        ("400 F", ["plate-a5", "tile"]),
        ("400°F", ["plate-a5", "tile"]),
        ("204 C", ["plate-a5", "tile"]),
        ("205 C", ["tile", "plate-a5"]),  # the end of the tile's range; 400 F is 204.4 C, near enough
        ("202 C", ["tile"]),  # nobody's figure, so the range is all there is
        ("200 C", ["slate-lumm", "slate-lumm", "tile"]),
        ("200 s", ["mug-11oz"]),
        ("3:20", ["mug-11oz"]),
        ("3 min 20 s", ["mug-11oz"]),
        ("5 min", ["slate-lumm", "tile"]),
        ("300", ["slate-lumm", "tile"]),
    ],
)
def test_figures_are_found_in_either_unit_and_within_ranges(query: str, blanks: list[str]) -> None:
    assert blanks_found(query) == blanks


def test_a_bare_figure_is_a_temperature_in_either_unit_or_a_time() -> None:
    assert set(blanks_found("200")) == {"slate-lumm", "mug-11oz", "tile"}
    assert blanks_found("400") == ["plate-a5", "tile"]


def test_the_dial_and_the_platen_are_both_found() -> None:
    """The clamshell's 200 C is 193 C at the platen, by its reading."""
    assert blanks_found("slate 193 C") == blanks_found("slate 200 C") == ["slate-lumm", "slate-lumm"]


def test_of_equal_matches_the_best_supported_comes_first_and_failures_last() -> None:
    good, failed = looked("slate")[0]
    assert (good["good"], good["pressed"]) == (24, 25)
    assert (failed["good"], failed["pressed"]) == (0, 3)
    # the interval itself is held to outside figures in test_wilson.py
    assert (good["low"], good["high"]) == interval(24, 25)


def test_a_word_of_the_blank_comes_before_the_same_word_of_a_project() -> None:
    bench = workshop(
        blanks=(blank("plain", name="Disc"), blank("weir", name="Weir disc")),
        projects=(project("p", title="Weir", blank="plain"),),
        pressings=(
            row("log:2", blank="plain", project="p", pressed="50"),
            row("log:3", blank="weir", pressed="2", good="1"),
        ),
    )
    assert [facts["blank"] for facts in looked("weir", bench)[0]] == ["weir", "plain"]


def test_what_is_not_the_makers_own_is_marked_by_its_source() -> None:
    bench = workshop(
        blanks=(
            blank("pressed", name="Pressed slate"),
            blank("like", name="Like slate", thickness="6 mm"),
            blank("sheeted", name="Sheeted slate", sheet={"temperature": "200 C", "time": "5 min"}),
            blank("common", name="Common board", substrate="hardboard"),
            blank("unheard", name="Unheard of", substrate="basalt"),
        ),
        pressings=(row(blank="pressed"),),
    )
    found = {facts["blank"]: facts for facts in looked("slate", bench)[0] + looked("board", bench)[0]}
    assert {name: facts["source"] for name, facts in found.items()} == {
        "pressed": "own",
        "like": "relative",
        "sheeted": "sheet",
        "common": "common",
    }
    assert found["sheeted"]["low"] is None
    assert (found["sheeted"]["pressed"], found["sheeted"]["last_used"], found["sheeted"]["projects"]) == (0, None, [])
    assert looked("basalt", bench)[0] == []


def test_a_blank_that_only_failed_shows_its_failures_and_where_else_to_begin() -> None:
    sheet = {"temperature": "190 C", "time": "5 min"}
    bench = workshop(blanks=(blank(sheet=sheet),), pressings=(row(pressed="3", good="0"),))
    assert [facts["source"] for facts in looked("slate", bench)[0]] == ["sheet", "own"]


def test_print_up_and_print_down_are_never_taken_for_each_other() -> None:
    """“Blank face down” is print up, so the words of that saying are not looked among."""
    assert {facts["face"] for facts in looked("print up")[0]} == {"print up"}
    assert {facts["face"] for facts in looked("print down")[0]} == {"print down"}


def test_every_word_must_be_there() -> None:
    found, matches = looked("slate wrapped")
    assert found == []
    assert not matches.unknown


def test_an_unknown_word_is_named_with_the_nearest_known() -> None:
    found, matches = looked("slate harb0rx weddynqqqq")
    assert found == []
    assert "wedding" in matches.unknown["weddynqqqq"]
    assert "slate" not in matches.unknown


def test_nothing_asked_finds_nothing() -> None:
    assert read("  , -- ") == ()
    assert looked("")[0] == []


def test_words_of_joining_alone_are_looked_for() -> None:
    assert [term.word for term in read("in")] == ["in"]
    assert [term.word for term in read("in slate")] == ["slate"]


@pytest.mark.parametrize(
    ("typed", "plain"), [("Crème", "creme"), ("ŁÓDŹ", "lodz"), ("Straße", "strasse"), ("Ａ４", "a4")]
)
def test_accents_and_capitals_fold(typed: str, plain: str) -> None:
    assert fold(typed) == plain


def test_vowel_signs_of_other_scripts_are_kept() -> None:
    assert fold("किताब") == unicodedata.normalize("NFC", "किताब")


@given(st.text(max_size=60))
def test_any_text_can_be_asked(text: str) -> None:
    looked(text)


@given(st.text(max_size=60))
def test_folding_twice_is_folding_once(text: str) -> None:
    assert words_of(fold(text)) == words_of(fold(fold(text)))


@given(st.permutations(["slate", "wedding", "lumm", "200 C", "5:00"]))
def test_the_order_of_words_never_matters(words: list[str]) -> None:
    assert blanks_found(" ".join(words)) == ["slate-lumm"]


@pytest.mark.parametrize(
    "query", ["a" * 100_000, "1" * 5_000, "slate-" * 2_000, "é" * 50_000], ids=lambda text: text[:6]
)
def test_a_hostile_query_is_answered_soon(query: str) -> None:
    assert len(looked(query)[0]) <= len(looked("slate")[0])


_LIKE_SLATES = ("slate-lumm", "slate-thin", "slate-thick", "plate-a5")
_PRESSINGS = st.tuples(
    st.sampled_from(_LIKE_SLATES),
    st.sampled_from(("bench", "ring")),
    st.sampled_from(("190 C", "200 C")),
    st.sampled_from(("60 s", "5 min")),
    st.sampled_from(("sublimation", "film transfer")),
    st.integers(0, 2),
    st.integers(1, 28),
)


@given(st.lists(_PRESSINGS, max_size=14))
def test_where_to_begin_is_the_same_as_from_every_pressing_there_is(pressed: list[tuple[Any, ...]]) -> None:
    bench = workshop(
        blanks=(
            SLATE,
            PLATE,
            blank("slate-thin", thickness="5 mm", sheet=None),
            blank("slate-thick", thickness="9 mm", sheet=None),
        ),
        presses=(press("bench"), press("ring", name="Ring press", kind="mug", readings=None)),
        pressings=tuple(
            row(
                f"log:{line}",
                blank=on,
                press=used,
                temperature=heat,
                time=time,
                method=method,
                pressed="2",
                good=str(good),
                date=f"2026-03-{day:02}",
            )
            for line, (on, used, heat, time, method, good, day) in enumerate(pressed, 2)
        ),
    )
    groups = evidence_of(bench)

    found = points_by_blank(bench, groups)

    assert found == {name: starting_points(each, bench, groups)[:MOST_POINTS] for name, each in bench.blanks.items()}
