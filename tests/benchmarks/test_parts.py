"""The parts of a make can be timed alone, or the benchmark has nothing to hold a make against."""

from pathlib import Path

from .parts import parts
from .workshop import write_workshop


def test_each_part_takes_some_time(tmp_path: Path) -> None:
    write_workshop(tmp_path / "content", 3, 7)

    found = parts(tmp_path / "content")

    assert {part for part, seconds in found.items() if seconds > 0} == {"parse", "Markdown", "templates", "papers"}
