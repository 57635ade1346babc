"""`maker-site starting-point`: what to set for a blank, why, and what else could be tried."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from maker_site.cli import main
from tests.small_workshop import write_workshop

KEYS = [
    *("blank", "source", "reason", "temperature_c", "dial_c", "time_s"),
    *("pressure", "face", "pressed", "good", "low", "high"),
]
CLAM = "name: Clam\nkind: flat clamshell\nreadings: [{set: 200 C, measured: 193 C}]\n"
TWIN = "name: Twin\nkind: flat clamshell\nreadings: [{set: 200 C, measured: 198 C}]\n"


@pytest.fixture(autouse=True)
def _own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


@pytest.fixture
def content(tmp_path: Path) -> Path:
    return write_workshop(
        tmp_path / "content",
        {
            "presses/clam.yaml": CLAM,
            "presses/twin.yaml": TWIN,
            "blanks/tile.yaml": "name: Tile\nsubstrate: glass\nsheet: {temperature: 190 to 200 C, time: 4 to 6 min}\n",
            "blanks/thick.yaml": "name: Thick slate\nsubstrate: slate\nthickness: 9 mm\n",
            "blanks/board.yaml": "name: Board\nsubstrate: hardboard\n",
            "blanks/odd.yaml": "name: Odd\nsubstrate: basalt\n",
        },
    )


def begin(content: Path, *options: str) -> Result:
    return CliRunner().invoke(main, ["starting-point", "--content", str(content), *options])


def facts(content: Path, *options: str) -> dict[str, object]:
    result = begin(content, *options, "--json")
    assert result.exit_code == 0, result.output
    return dict(json.loads(result.stdout))


def test_json_is_the_contract(content: Path) -> None:
    found = facts(content, "slate")

    assert list(found) == KEYS
    assert (found["source"], found["temperature_c"], found["dial_c"], found["time_s"]) == ("own", 193, 200, 300)
    assert (found["pressed"], found["good"], found["pressure"], found["face"]) == (4, 3, "medium", "print up")
    assert found["low"] == pytest.approx(0.300642, abs=1e-6)  # Wilson, by hand; see test_find.py


@pytest.mark.parametrize(
    ("blank", "source", "celsius", "seconds"),
    [
        ("tile", "sheet", 195, 300),  # the middle of 190 to 200 C and 4 to 6 min
        ("thick", "relative", 193, 300),
        ("board", "common", pytest.approx(204.4444, abs=1e-3), 67.5),  # 400 F; the middle of 60 to 75 s
    ],
)
def test_without_own_pressings_the_next_best_source_speaks(
    content: Path, blank: str, source: str, celsius: float, seconds: float
) -> None:
    found = facts(content, blank)

    assert (found["source"], found["temperature_c"], found["time_s"]) == (source, celsius, seconds)
    assert "test one" in str(found["reason"]).lower()


def test_nothing_known_is_said_and_is_no_failure(content: Path) -> None:
    found = facts(content, "odd")

    assert found["source"] is None
    assert (found["temperature_c"], found["dial_c"], found["time_s"], found["pressed"], found["low"]) == (
        *(None, None, None, 0),
        None,
    )
    assert "Nothing is known" in begin(content, "odd").stdout


def test_another_press_of_the_kind_is_set_to_the_same_true_temperature(content: Path) -> None:
    """The platen is wanted at 193 C; this dial reads 2 C high, so it is set to 195 C."""
    found = facts(content, "slate", "--press", "twin")

    assert (found["temperature_c"], found["dial_c"], found["source"]) == (193, 195, "own")
    assert "Carried from Clam" in str(found["reason"])


def test_a_person_sees_both_units_the_runner_up_the_range_and_the_cautions(content: Path) -> None:
    said = " ".join(begin(content, "slate").stdout.split())
    for part in ("200 °C (392 °F) on clam", "platen 193 °C", "5:00 (300 s)", "Runner-up", "Common practice", "gloves"):
        assert part in said
    assert "4:00 to 8:00 (240 s to 480 s)" in said  # slate, heat.csv: 4 to 8 min
    assert said.endswith("not an instruction to others.")


def test_a_setting_above_the_blanks_limit_is_cautioned_first(content: Path) -> None:
    (content / "blanks/slate.yaml").write_text("name: Slate\nsubstrate: slate\nlimit: 190 C\n")

    assert "Cautions: Above what this blank bears, 190 °C (374 °F)" in begin(content, "slate").stdout


@pytest.mark.parametrize(
    ("options", "meant"),
    [(["slat"], "no blank “slat”; did you mean “slate”"), (["slate", "--press", "clan"], "did you mean “clam”")],
)
def test_an_unknown_name_is_wrong_use_with_the_nearest_right_one(content: Path, options: list[str], meant: str) -> None:
    result = begin(content, *options)

    assert result.exit_code == 2
    assert meant in result.stderr


def test_records_with_errors_are_told_and_exit_one(content: Path) -> None:
    (content / "shop.yaml").unlink()

    result = begin(content, "slate", "--json")

    assert result.exit_code == 1
    assert result.stdout == ""
    assert "there is no shop.yaml" in result.stderr
