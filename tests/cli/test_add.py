"""`maker-site add`: asks only what it can't know, appends one line, makes files that read well, overwrites nothing."""

import os
import re
import select
import signal
import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from maker_site.cli import asking, main
from maker_site.records import load
from tests.small_workshop import write_workshop

TODAY = date.today().isoformat()  # noqa: DTZ011 - the command's own day
WHOLE = {
    "--date": "2026-05-02", "--blank": "slate", "--press": "clam", "--temperature": "200 C", "--time": "5:30",
    "--pressed": "6", "--good": "6",
}  # fmt: skip


def add(content: Path, *words: str, answers: str = "") -> Result:
    result = CliRunner().invoke(main, ["add", words[0], "--content", str(content), *words[1:]], input=answers)
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def options(**changed: str | None) -> list[str]:
    said = {**WHOLE, **{f"--{name.replace('_', '-')}": text for name, text in changed.items()}}
    return [word for name, text in said.items() if text is not None for word in (name, text)]


@pytest.fixture
def somebody(monkeypatch: pytest.MonkeyPatch) -> None:
    """Somebody sits at the terminal."""
    monkeypatch.setattr(asking, "possible", lambda: True)


def test_a_script_gives_all_and_is_told_file_and_line(tmp_path: Path) -> None:
    content = write_workshop(tmp_path)
    log = content / "press-log/2026.csv"
    before = log.read_bytes()

    result = add(content, "pressing", *options(project="harbour", defects="faded"))

    assert result.exit_code == 0
    assert log.read_bytes() == before + b"2026-05-02,harbour,slate,clam,200 C,5:30,,,6,6,faded\n"
    assert f"{log}:3" in result.output
    assert re.search(r"temperature +200 C", result.output)
    assert load(content).errors == ()


def test_the_usual_cautions_stand_beside_the_setting(tmp_path: Path) -> None:
    content = write_workshop(tmp_path, {"blanks/slate.yaml": "name: Slate\nsubstrate: slate\nlimit: 190 C\n"})

    result = add(content, "pressing", *options())

    assert "gloves" in result.output
    assert "is above what Slate bears" in result.output
    assert "manual, local codes and licensed practice come first" in result.output


def test_without_a_terminal_nothing_is_asked_and_what_is_missing_is_said(tmp_path: Path) -> None:
    content = write_workshop(tmp_path)
    before = (content / "press-log/2026.csv").read_bytes()

    result = add(content, "pressing", *options(time=None, good=None))

    assert result.exit_code == 2
    assert "missing: --time, --good" in result.output
    assert (content / "press-log/2026.csv").read_bytes() == before


def test_the_day_is_today_and_the_blank_is_the_projects(tmp_path: Path) -> None:
    content = write_workshop(tmp_path)

    result = add(content, "pressing", *options(date=None, blank=None, project="harbour"))

    assert result.exit_code == 0
    row = load(content).workshop.pressings[-1]
    assert (row.date.isoformat(), row.blank) == (TODAY, "slate")


def test_every_wrong_option_is_told_at_once_in_the_records_words(tmp_path: Path) -> None:
    content = write_workshop(tmp_path)

    result = add(content, "pressing", *options(blank="slat", temperature="hot", good="7", face="sideways", at_once="0"))

    assert result.exit_code == 2
    for said in (
        "--blank: there is no blank “slat”; did you mean “slate”?",
        "--temperature: “hot” is not a temperature; write it like 200 C or 400 F",
        "--good: 7 good of 6 pressed can't be",
        "--face: “sideways” is not a way for the print to look",
        "--at-once: 0 is too few",
    ):
        assert said in result.output


def test_a_first_pressing_makes_the_log(tmp_path: Path) -> None:
    content = write_workshop(tmp_path, {"press-log/2026.csv": None})

    assert add(content, "pressing", *options(note="slid, on opening")).exit_code == 0

    (row,) = load(content).workshop.pressings
    assert (row.note, row.origin.file) == ("slid, on opening", "press-log/2026.csv")


def test_a_note_without_a_column_goes_to_the_next_file_and_that_is_said(tmp_path: Path) -> None:
    content = write_workshop(tmp_path)

    result = add(content, "pressing", *options(note="slid"))

    assert "press-log/2026.csv has no column “note”; its heading was left as it is" in result.output
    assert f"{content / 'press-log/2026-2.csv'}:2" in result.output


def test_an_unclear_word_is_kept_and_questioned(tmp_path: Path) -> None:
    result = add(write_workshop(tmp_path), "pressing", *options(face="down"))

    assert result.exit_code == 0
    assert "“down” is used both ways" in result.output


@pytest.mark.usefixtures("somebody")
def test_asked_enter_takes_the_last_used_values(tmp_path: Path) -> None:
    content = write_workshop(tmp_path)

    # project, blank (its own), press, temperature, time, pressure, face, stack, pressed, good, note
    result = add(content, "pressing", answers="harbour\n\n\n\n\n\n\n\n4\n4\n\n")

    assert result.exit_code == 0, result.output
    row = load(content).workshop.pressings[-1]
    assert (row.blank, row.press, row.temperature.typed, row.time.typed) == ("slate", "clam", "200 C", "5:00")
    assert (row.pressure.word, row.face, row.pressed, row.good, row.note) == ("medium", "print up", 4, 4, None)
    assert "Defects" not in result.output, "all were good"


@pytest.mark.usefixtures("somebody")
def test_a_wrong_answer_is_asked_again_at_once(tmp_path: Path) -> None:
    content = write_workshop(tmp_path)

    answers = ["", "slat", "slate", "", "hot", "390 F", "", "-", "", "", "4", "5", "3", "fadde", "faded", ""]
    result = add(content, "pressing", answers="\n".join(answers) + "\n")

    assert result.exit_code == 0, result.output
    assert "there is no blank “slat”; did you mean “slate”?" in result.output
    assert "“hot” is not a temperature" in result.output
    assert "5 good of 4 pressed can't be" in result.output
    row = load(content).workshop.pressings[-1]
    assert (row.temperature.typed, row.pressure, row.good, row.defects) == ("390 F", None, 3, ("pale all over",))


@pytest.mark.usefixtures("somebody")
def test_stopped_in_the_middle_nothing_is_written(tmp_path: Path) -> None:
    content = write_workshop(tmp_path)
    before = sorted((path, path.stat().st_mtime_ns) for path in content.rglob("*"))

    result = add(content, "pressing", answers="harbour\n")  # and then no more

    assert result.exit_code == 130
    assert "Nothing was written" in result.output
    assert sorted((path, path.stat().st_mtime_ns) for path in content.rglob("*")) == before


@pytest.mark.skipif(os.name != "posix", reason="needs a terminal of the POSIX kind")
def test_ctrl_c_in_a_real_terminal_writes_nothing(tmp_path: Path) -> None:
    content = write_workshop(tmp_path)
    before = (content / "press-log/2026.csv").read_bytes()
    ours, theirs = os.openpty()
    heed = "import signal; signal.signal(signal.SIGINT, signal.default_int_handler)"  # ignored in a background job
    code = f"{heed}; from maker_site.cli import main; main()"
    command = [sys.executable, "-c", code, "add", "pressing"]
    with subprocess.Popen([*command, "--content", str(content)], stdin=theirs, stdout=theirs, stderr=theirs) as process:
        os.close(theirs)
        seen = _read_until(ours, b"Project")
        for _ in range(20):  # the first may come before the question is listened for
            process.send_signal(signal.SIGINT)
            seen += _read_until(ours, b"written", seconds=2)
            if b"written" in seen:
                break
        else:
            process.kill()
    os.close(ours)
    assert process.returncode == 130
    assert b"Nothing was written" in seen
    assert b"Traceback" not in seen
    assert (content / "press-log/2026.csv").read_bytes() == before


def _read_until(terminal: int, word: bytes, seconds: float = 60) -> bytes:
    seen = b""
    while word not in seen and select.select([terminal], [], [], seconds)[0]:
        try:
            more = os.read(terminal, 1024)
        except OSError:  # the other end has closed
            break
        seen += more
    return seen


RECORDS = {
    "blank": (["tile", "--name", "Tile", "--substrate", "ceramic"], "blanks/tile.yaml"),
    "press": (["swing", "--name", "Swing-away"], "presses/swing.yaml"),
    "supply": (["tape", "--name", "Tape", "--kind", "tape"], "supplies/tape.yaml"),
    "project": (["tray", "--title", "Tray", "--blank", "slate"], "projects/tray/project.yaml"),
}


@pytest.mark.parametrize("word", RECORDS)
def test_a_record_is_made_once_and_never_overwritten(tmp_path: Path, word: str) -> None:
    content = write_workshop(tmp_path)
    said, file = RECORDS[word]

    first = add(content, word, *said)
    written = (content / file).read_bytes()
    second = add(content, word, *said)

    assert (first.exit_code, second.exit_code) == (0, 1)
    assert f"{file} is there already" in second.output
    assert (content / file).read_bytes() == written
    assert load(content).problems == ()
    assert not list(content.rglob(".*"))


def test_a_project_gets_its_folders_and_one_with_photos_gets_its_record(tmp_path: Path) -> None:
    content = write_workshop(tmp_path, {"projects/tray/photos/one.txt": "kept"})

    assert add(content, "project", *RECORDS["project"][0]).exit_code == 0

    assert sorted(path.name for path in (content / "projects/tray").iterdir()) == ["artwork", "photos", "project.yaml"]
    assert (content / "projects/tray/photos/one.txt").read_text() == "kept"


def test_a_blank_that_is_a_folder_is_there_already(tmp_path: Path) -> None:
    content = write_workshop(tmp_path, {"blanks/tile/blank.yaml": "name: Tile\nsubstrate: ceramic\n"})

    assert add(content, "blank", *RECORDS["blank"][0]).exit_code == 1
    assert not (content / "blanks/tile.yaml").exists()


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["blank", "../tile", "--name", "T", "--substrate", "slate"], "“../tile” can't be the name of a record"),
        (["blank", "My Tile", "--name", "T", "--substrate", "slate"], "like my-tile"),
        (["blank", "tile", "--name", "T", "--substrate", "a/b"], "--substrate: “a/b” is not a substrate"),
        (["blank", "tile", "--name", "T\nx"], "--name: “T x” has a line break"),
        (["supply", "tape", "--name", "T", "--kind", "tpe"], "did you mean “tape”"),
        (["project", "tray", "--title", "T", "--blank", "slat"], "there is no blank “slat”; did you mean “slate”?"),
        (["press", "swing"], "missing: --name"),
    ],
)
def test_a_record_that_would_not_read_is_not_made(tmp_path: Path, words: list[str], said: str) -> None:
    content = write_workshop(tmp_path)
    before = sorted(content.rglob("*"))

    result = add(content, *words)

    assert result.exit_code == 2
    assert said in " ".join(result.output.split())
    assert sorted(content.rglob("*")) == before


@pytest.mark.usefixtures("somebody")
def test_what_a_record_needs_is_asked(tmp_path: Path) -> None:
    content = write_workshop(tmp_path)

    result = add(content, "supply", "foil", answers="\nFoil: a roll\nfoyl\nfilm\n")

    assert result.exit_code == 0, result.output
    supply = load(content).workshop.supplies["foil"]
    assert (supply.name, supply.kind) == ("Foil: a roll", "film")


@pytest.mark.skipif(os.geteuid() == 0 if hasattr(os, "geteuid") else True, reason="nothing is forbidden to root")
def test_a_folder_that_may_not_be_written_is_a_sentence(tmp_path: Path) -> None:
    content = write_workshop(tmp_path)
    (content / "presses").chmod(0o500)

    result = add(content, "press", *RECORDS["press"][0])

    assert result.exit_code == 1
    assert "can't be written" in result.output


def test_something_in_the_folders_place_is_a_sentence(tmp_path: Path) -> None:
    content = write_workshop(tmp_path, {"supplies": "a file"})

    result = add(content, "supply", *RECORDS["supply"][0])

    assert result.exit_code == 1
    assert "supplies can't be made: file exists" in result.output
