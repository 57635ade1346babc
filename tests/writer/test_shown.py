"""What lists show is kept from make to make: a list is not worked out anew for one thing's sake."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from maker_site.writer import copies
from maker_site.writer.kept import FILE
from maker_site.writer.shown import Showing, newly_shown
from tests.writer.test_making_again import make, press_once_more, renote, retitle, tree

pytestmark = pytest.mark.xdist_group("shown")
PROJECTS = 8


@pytest.fixture
def worked_out(monkeypatch: pytest.MonkeyPatch) -> list[Showing]:
    """Return what lists show that the makes of the test work out."""
    found: list[Showing] = []

    def told(book: copies.Notebook) -> list[Showing]:
        new = list(newly_shown(book))
        found.extend(new)
        return new

    monkeypatch.setattr(copies, "newly_shown", told)
    return found


def of(showings: list[Showing], kind: str) -> set[str]:
    return {each.name for each in showings if each.kind == kind}


def afresh(content: Path, out: Path) -> dict[str, bytes]:
    """Return the site as it is made into an empty folder."""
    make(content, out.with_name("afresh"))
    return tree(out.with_name("afresh"))


def test_a_note_is_in_no_list(content: Path, out: Path, worked_out: list[Showing]) -> None:
    renote(content)
    make(content, out)

    assert worked_out == []


def test_a_list_shows_the_one_title_that_is_another_and_the_rest_as_it_was(
    content: Path, out: Path, worked_out: list[Showing]
) -> None:
    name = retitle(content)
    make(content, out)

    assert of(worked_out, "catalogue") == of(worked_out, "costs") == {name}
    assert of(worked_out, "used") == set()
    assert tree(out) == afresh(content, out)


def test_a_pressing_is_shown_of_its_own_blank(content: Path, out: Path, worked_out: list[Showing]) -> None:
    press_once_more(content)
    blank = sorted(content.glob("press-log/*.csv"))[-1].read_text("utf-8").splitlines()[-1].split(",")[2]
    make(content, out)

    assert of(worked_out, "used") == {blank}
    assert blank in of(worked_out, "found")
    assert tree(out) == afresh(content, out)


def test_what_no_list_showed_for_a_while_is_not_shown_as_it_was_then(content: Path, out: Path) -> None:
    record = next(
        each for each in sorted(content.glob("projects/*/project.yaml")) if "menu:" in each.read_text("utf-8")
    )
    first = record.read_text("utf-8")
    start = first.index("  menu:")
    end = next(
        (at for at in range(start + 3, len(first)) if first[at - 1] == "\n" and first[at : at + 4] != "    "), None
    )
    unlisted = first[:start] + first[end if end is not None else len(first) :]
    for text in (unlisted, unlisted.replace("title: ", "title: New "), first.replace("title: ", "title: New ")):
        record.write_text(text, "utf-8")
        make(content, out)

    assert tree(out) == afresh(content, out)


@pytest.mark.parametrize("data", [b"", b"\x80\x05cos\nsystem\n.", b"\x80\x05]."], ids=["nothing", "a call", "a list"])
def test_a_kept_entry_that_is_damaged_is_worked_out(content: Path, out: Path, data: bytes) -> None:
    with closing(sqlite3.connect(out / FILE)) as table, table:
        table.execute("UPDATE kept SET value = ? WHERE kind = 'shown catalogue'", (data,))
    retitle(content)
    make(content, out)

    assert tree(out) == afresh(content, out)
