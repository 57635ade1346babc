"""`maker-site find`: past settings in the terminal, for people, for scripts, and soon."""

import json
import os
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from maker_site.cli import main
from tests.cli.test_start import HEAVY
from tests.small_workshop import write_workshop

KEYS = [
    *("blank", "substrate", "method", "press", "temperature_c", "dial_c", "time_s", "pressure", "face"),
    *("pressed", "good", "low", "high", "source", "last_used", "projects"),
]
PRESS = (
    "name: Clam\nkind: flat clamshell\nreadings:\n"
    "  - {date: 2026-01-10, set: 180 C, measured: 174 C}\n  - {date: 2026-01-10, set: 200 C, measured: 193 C}\n"
)


@pytest.fixture(autouse=True)
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A cache folder of the test's own, never the developer's."""
    folder = tmp_path / "cache"
    monkeypatch.setenv("XDG_CACHE_HOME", str(folder))
    return folder / "maker-site"


@pytest.fixture
def content(tmp_path: Path) -> Path:
    return write_workshop(tmp_path / "content", {"presses/clam.yaml": PRESS})


def find(content: Path, *words: str) -> Result:
    return CliRunner().invoke(main, ["find", "--content", str(content), *words])


def settings(content: Path, *words: str) -> list[dict[str, object]]:
    result = find(content, *words, "--json")
    assert result.exit_code == 0, result.output
    return list(json.loads(result.stdout)["settings"])


def test_json_is_the_contract(content: Path) -> None:
    """200 C on this dial is 193 C at the platen, by the press's own reading; 3 of 4 by Wilson, checks: statistics."""
    (found,) = settings(content, "slate")

    assert list(found) == KEYS
    assert found == {
        "blank": "slate",
        "substrate": "slate",
        "method": "sublimation",
        "press": "clam",
        "temperature_c": 193,
        "dial_c": 200,
        "time_s": 300,
        "pressure": "medium",
        "face": "print up",
        "pressed": 4,
        "good": 3,
        # by hand: (p + z²/2n ± z √(p(1-p)/n + z²/4n²)) / (1 + z²/n) with p = 3/4, n = 4, z = 1.959964
        "low": pytest.approx(0.300642, abs=1e-6),
        "high": pytest.approx(0.954413, abs=1e-6),
        "source": "own",
        "last_used": "2026-04-18",
        "projects": ["harbour"],
    }


def test_the_table_fits_eighty_columns_and_shows_both_units_evidence_and_cautions(content: Path) -> None:
    said = find(content, "slaet", "coaster").stdout

    assert max(map(len, said.splitlines())) <= 80
    for part in ("“slaet” read as slate", "200 °C", "392 °F", "5:00", "300 s", "3 of 4 good", "30 to 96 %", "harbour"):
        assert part in said
    for caution in ("Hot platen", "Never unattended", "manual", "come"):
        assert caution in said


def test_plain_is_a_row_a_line_parted_by_tabs(content: Path) -> None:
    (line,) = find(content, "slate", "--plain").stdout.splitlines()

    cells = dict(zip(KEYS, line.split("\t"), strict=True))
    assert (cells["blank"], cells["dial_c"], cells["good"], cells["projects"]) == ("slate", "200", "3", "harbour")


def test_nothing_found_says_so_offers_the_nearest_word_and_is_no_failure(content: Path) -> None:
    result = find(content, "harbrrrr")

    assert result.exit_code == 0
    assert "Nothing found for “harbrrrr”; the nearest known: harbour" in result.stdout


def test_nothing_found_in_json_is_an_empty_list_and_the_words_go_to_the_error_stream(content: Path) -> None:
    result = find(content, "harbrrrr", "--json")

    assert json.loads(result.stdout) == {"settings": []}
    assert "nearest known" in result.stderr


def test_records_with_errors_are_told_and_exit_one(content: Path) -> None:
    find(content, "slate")
    (content / "blanks/slate.yaml").write_text("name: Slate coaster\nsubstrte: slate\n")

    result = find(content, "slate", "--json")

    assert result.exit_code == 1
    assert result.stdout == ""
    assert "substrte" in result.stderr


def test_no_words_are_wrong_use(content: Path) -> None:
    assert find(content).exit_code == 2
    assert find(content, " ").exit_code == 2


def test_marks_in_a_record_are_printed_as_they_are(tmp_path: Path) -> None:
    log = (
        "date,blank,press,temperature,time,pressure,pressed,good\n"
        "2026-04-18,slate,clam,200 C,5:00,medium (mark [bold]5[/bold]),4,3\n"
    )
    content = write_workshop(tmp_path / "marked", {"press-log/2026.csv": log})

    assert "[bold]5[/bold]" in find(content, "slate").stdout.replace("\n", "").replace("  ", "")


def test_an_added_row_is_found_at_once(content: Path) -> None:
    assert settings(content, "wrapped") == []
    with (content / "press-log/2026.csv").open("a") as log:
        log.write("2026-04-20,,slate,clam,190 C,4:00,firm,wrapped,2,2,\n")

    (found,) = settings(content, "wrapped")
    assert (found["dial_c"], found["last_used"]) == (190, "2026-04-20")


def test_a_row_changed_within_the_same_size_and_date_is_seen(content: Path) -> None:
    settings(content, "slate")
    log = content / "press-log/2026.csv"
    kept = log.stat()
    log.write_text(log.read_text().replace("4,3,blurred", "4,4,blurred"))
    os.utime(log, ns=(kept.st_atime_ns, kept.st_mtime_ns))

    assert [each["good"] for each in settings(content, "slate")] == [4]


@pytest.mark.parametrize("spoil", ["empty", "rubbish", "cut short", "one byte"])
def test_a_damaged_cache_is_made_again_without_a_word(content: Path, cache: Path, spoil: str) -> None:
    before = settings(content, "slate")
    (file,) = cache.glob("settings-*.sqlite")
    whole = file.read_bytes()
    spoilt = {
        "empty": b"",
        "rubbish": b"not a database" * 999,
        "cut short": whole[: len(whole) // 2],
        "one byte": whole.replace(b'"pressed": 4', b'"pressed": 9'),
    }
    file.write_bytes(spoilt[spoil])

    result = find(content, "slate", "--json")

    assert json.loads(result.stdout)["settings"] == before
    assert result.stderr == ""
    assert file.read_bytes() != spoilt[spoil]


def test_deleting_the_cache_changes_no_answer(content: Path, cache: Path) -> None:
    before = find(content, "slate", "--json").stdout
    for file in cache.iterdir():
        file.unlink()

    assert find(content, "slate", "--json").stdout == before


def test_a_cache_that_cannot_be_written_is_done_without(
    content: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "a file").write_text("in the way")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "a file"))

    assert len(settings(content, "slate")) == 1


def test_nothing_is_ever_put_among_the_records(content: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(content / ".cache"))
    before = sorted(content.rglob("*"))

    assert len(settings(content, "slate")) == 1
    assert sorted(content.rglob("*")) == before


def test_two_content_folders_do_not_answer_for_each_other(content: Path, tmp_path: Path) -> None:
    other = write_workshop(tmp_path / "other", {"blanks/slate.yaml": "name: Tile\nsubstrate: ceramic\n"})

    assert len(settings(content, "slate", "coaster")) == 1
    assert settings(other, "ceramic")[0]["substrate"] == "ceramic"
    assert settings(content, "slate")[0]["substrate"] == "slate"


def test_runs_at_the_same_time_all_answer(content: Path, cache: Path) -> None:
    command = [sys.executable, "-c", "from maker_site.cli import main; main()", "find", "slate", "--json"]

    def run(_: int) -> str:
        return subprocess.run(
            [*command, "--content", content], capture_output=True, text=True, check=True, env=dict(os.environ)
        ).stdout

    with ThreadPoolExecutor(4) as pool:
        answers = set(pool.map(run, range(4)))

    assert len(answers) == 1
    assert sorted(file.name.partition("-")[0] for file in cache.iterdir()) == ["records", "settings"]


def test_an_answer_from_the_cache_imports_nothing_heavy(content: Path) -> None:
    settings(content, "slate")
    code = (
        "import sys; from click.testing import CliRunner; from maker_site.cli import main; "
        f"result = CliRunner().invoke(main, ['find', 'slate', '--json', '--content', {str(content)!r}]); "
        "assert result.exit_code == 0 and 'harbour' in result.output, result.output; "
        "print(*sorted(set(m.partition('.')[0] for m in sys.modules)), 'maker_site.records' in sys.modules)"
    )
    *loaded, records = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    ).stdout.split()

    assert not set(HEAVY) & set(loaded)
    assert records == "False"


@pytest.mark.parametrize("edited", ["press-log/2026.csv", "projects/harbour/project.yaml", "blanks/slate.yaml"])
def test_an_answer_after_an_edit_imports_no_kinds_of_records(content: Path, edited: str) -> None:
    settings(content, "slate")
    with (content / edited).open("a") as file:
        file.write(
            "2026-04-20,,slate,clam,190 C,4:00,firm,wrapped,2,2,\n" if edited.endswith("csv") else "note: windy\n"
        )
    code = (
        "import sys; from click.testing import CliRunner; from maker_site.cli import main; "
        "asked = [['find', 'slate', '--json'], ['starting-point', 'slate', '--press', 'clam', '--json']]; "
        f"done = [CliRunner().invoke(main, [*each, '--content', {str(content)!r}]) for each in asked]; "
        "assert not any(each.exit_code for each in done), [each.output for each in done]; "
        "print(*{'pydantic', 'jinja2', 'babel', 'PIL', 'rich', 'maker_site.records.load'} & set(sys.modules))"
    )

    loaded = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout.split()

    assert loaded == []
