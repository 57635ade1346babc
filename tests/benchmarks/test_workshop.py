"""Generated workshops are sound, varied, and the same every time."""

import csv
import sys
from pathlib import Path

import pytest
import yaml

from maker_site.records import load

from .stopwatch import run, timed
from .workshop import ROWS_A_PROJECT, write_workshop


def files_of(folder: Path) -> dict[str, bytes]:
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_the_same_seed_gives_the_same_workshop_and_another_seed_another(tmp_path):
    for name, seed in (("first", 7), ("again", 7), ("other", 8)):
        write_workshop(tmp_path / name, 12, seed)
    first, again, other = (files_of(tmp_path / name) for name in ("first", "again", "other"))
    assert first == again
    assert first != other


def test_a_generated_workshop_has_no_problem_and_grows_with_its_size(tmp_path):
    write_workshop(tmp_path / "small", 8, 7)
    write_workshop(tmp_path / "large", 300, 7)
    small, large = load(tmp_path / "small"), load(tmp_path / "large")
    assert (small.problems, large.problems) == ((), ())
    assert small.workshop
    assert large.workshop
    assert (len(large.workshop.projects), len(large.workshop.pressings)) == (300, 300 * ROWS_A_PROJECT)
    for kind in ("blanks", "presses", "supplies"):
        assert len(getattr(large.workshop, kind)) > len(getattr(small.workshop, kind))


def test_failures_write_ups_and_all_substrates_are_among_the_records(tmp_path):
    write_workshop(tmp_path / "w", 100, 7)
    rows = [
        row for file in (tmp_path / "w/press-log").iterdir() for row in csv.DictReader(file.read_text().splitlines())
    ]
    assert 0.1 < sum(row["good"] != row["pressed"] for row in rows) / len(rows) < 0.4
    assert len(list((tmp_path / "w/projects").glob("*/tutorial.md"))) == 34, "one in three of 100, the first included"
    blanks = [yaml.safe_load(file.read_text()) for file in (tmp_path / "w/blanks").iterdir()]
    assert len({blank["substrate"] for blank in blanks}) == 8


@pytest.mark.slow
def test_photos_are_drawn_and_listed_where_they_are_wanted(tmp_path):
    write_workshop(tmp_path / "w", 4, 7, photos=True)
    assert load(tmp_path / "w").problems == ()
    assert len(list((tmp_path / "w/projects").glob("*/photos/*.jpg"))) >= 4


def test_the_stopwatch_tells_a_slow_and_a_large_process_from_a_bare_one():
    bare = run([sys.executable, "-c", "pass"])
    slow = run([sys.executable, "-c", "import time; time.sleep(0.5)"])
    large = run([sys.executable, "-c", "held = bytearray(200 * 2**20)"])
    assert slow.seconds > 0.5
    assert 200 < large.peak_mib < 200 + 2 * bare.peak_mib


def test_a_run_that_fails_has_no_time():
    with pytest.raises(RuntimeError, match="exit code 3"):
        timed("wrong", [sys.executable, "-c", "raise SystemExit(3)"], 1)
