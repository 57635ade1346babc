"""What is kept for answers goes to disk while it is worked out, and is still there where no disk has room for it."""

from __future__ import annotations

import random
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

import pytest

from maker_site.writer.answers_kept import FORM, Kept, Name, at_hand, keep, opened


def parts() -> Iterator[tuple[str, Name, bytes]]:
    """Yield more than SQLite holds in memory before it writes to a file."""
    sure = random.Random(7)
    yield "form", FORM, b"a program"
    yield "mark", 0, b"a mark"
    for number in range(60):
        yield "row", number, sure.randbytes(100_000)


@contextmanager
def no_room() -> Iterator[None]:
    """Let this process write nothing to any file."""
    resource = pytest.importorskip("resource")
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (0, before[1]))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)


def test_parts_go_to_disk_and_are_read_back_whole(tmp_path: Path) -> None:
    base = tmp_path / "cache" / "base.sqlite"
    with closing(at_hand(parts)) as made:
        keep(made, base, tmp_path / "content")
    with closing(opened(base, tmp_path / "no patch", "a program")) as kept:
        assert all(kept.part(kind, name) == data for kind, name, data in parts())
    assert [file.name for file in base.parent.iterdir()] == ["base.sqlite"]


def test_a_full_disk_costs_no_answer(tmp_path: Path) -> None:
    begun: list[str] = []

    def counted() -> Iterator[tuple[str, Name, bytes]]:
        begun.append("begun")
        return parts()

    base = tmp_path / "cache" / "base.sqlite"
    with no_room():
        made = at_hand(counted)
        keep(made, base, tmp_path / "content")
    with closing(Kept(made, None)) as kept:
        assert all(kept.part(kind, name) == data for kind, name, data in parts())
    assert begun == ["begun", "begun"], "there was room for the first"
    assert list(base.parent.iterdir()) == []
