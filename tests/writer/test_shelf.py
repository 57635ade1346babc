"""What was read of the records is kept: who begins anew reads only what was touched, and understands the same."""

from __future__ import annotations

import os
import pickle
import shutil
import sqlite3
import zlib
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from maker_site.records import Findings, load
from maker_site.writer import look
from maker_site.writer.look import look_at_records
from maker_site.writer.shelf import Shelf, shelved

pytestmark = pytest.mark.xdist_group("shelf")
PROJECTS = 8


@pytest.fixture(autouse=True)
def _settled(monkeypatch: pytest.MonkeyPatch) -> None:
    """Take every file for settled: the edits below change sizes, so none hides behind an equal time."""
    monkeypatch.setattr(look, "is_settled", lambda newest, now: True)


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / "kept.sqlite"


def read(content: Path, file: Path) -> tuple[Findings, frozenset[str]]:
    """Read with a shelf and keep; return what was found and the units that were read anew."""
    shelf = Shelf(file, look_at_records(str(content)))
    found = load(content, shelf.remembered)
    anew = frozenset(shelf.remembered.read)
    shelf.keep()
    return found, anew


def project(content: Path, number: int = 0) -> Path:
    return sorted(content.glob("projects/*/project.yaml"))[number]


def add_to(path: Path, text: str) -> None:
    path.write_text(path.read_text("utf-8") + text, "utf-8")


def note(content: Path) -> None:
    add_to(project(content), "note: pressed on a windy day\n")


def unreadable(content: Path) -> None:
    add_to(project(content, 1), "pieces: many\n")


def mended(content: Path) -> None:
    record = project(content, 1)
    record.write_text(record.read_text("utf-8").replace("pieces: many\n", ""), "utf-8")


def another_project(content: Path) -> None:
    shutil.copytree(project(content).parent, content / "projects" / "zz-another")


def no_project(content: Path) -> None:
    shutil.rmtree(content / "projects" / "zz-another")


def pressing(content: Path) -> None:
    log = sorted(content.glob("press-log/*.csv"))[-1]
    add_to(log, log.read_text("utf-8").splitlines()[-1] + "\n")


def another_log(content: Path) -> None:
    log = sorted(content.glob("press-log/*.csv"))[-1]
    (content / "press-log" / "more.csv").write_text("\n".join(log.read_text("utf-8").splitlines()[:3]), "utf-8")


def no_blank(content: Path) -> None:
    next(iter(sorted(content.glob("blanks/*.yaml")))).unlink()


def a_photo(content: Path) -> None:
    photos = project(content, 2).parent / "photos"
    photos.mkdir(exist_ok=True)
    (photos / "new.jpg").write_bytes(b"looked at by others")


def other_units(content: Path) -> None:
    add_to(content / "shop.yaml", "units: {temperature: F}\n")


def other_money(content: Path) -> None:
    shop = content / "shop.yaml"
    shop.write_text(shop.read_text("utf-8").replace("GBP", "EUR"), "utf-8")


def an_article(content: Path) -> None:
    (content / "articles").mkdir(exist_ok=True)
    (content / "articles" / "paper.md").write_text("# Paper\n\nDry it.\n", "utf-8")


def a_folder_for_a_file(content: Path) -> None:
    blank = sorted(content.glob("blanks/*.yaml"))[0]
    (content / "blanks" / blank.stem).mkdir()
    blank.rename(content / "blanks" / blank.stem / "blank.yaml")


def a_name_that_is_no_text(content: Path) -> None:
    (content / "press-log" / os.fsdecode(b"\xff.csv")).write_text("date\n", "utf-8")


EDITS = (
    *(note, unreadable, mended, another_project, no_project, pressing, another_log, no_blank, a_photo, an_article),
    *(a_folder_for_a_file, other_money, other_units, a_name_that_is_no_text),
)


def test_after_every_edit_the_records_are_understood_as_by_one_who_reads_all(content: Path, file: Path) -> None:
    read(content, file)
    for edit in EDITS:
        edit(content)
        found, _ = read(content, file)
        assert found == load(content), edit.__name__


@pytest.mark.parametrize(
    ("edit", "expected"),
    [
        (lambda content: None, ()),
        (note, ("{project}#", "{project}#names")),
        (pressing, ("press-log#list", "{log}#", "{log}#names")),
    ],
)
def test_only_what_was_touched_is_read(
    content: Path, file: Path, edit: Callable[[Path], None], expected: tuple[str, ...]
) -> None:
    read(content, file)
    edit(content)
    _, anew = read(content, file)

    log = sorted(content.glob("press-log/*.csv"))[-1].relative_to(content).as_posix()
    names = {"project": f"projects/{project(content).parent.name}", "log": log}
    assert anew == {each.format(**names) for each in expected}


def test_what_lies_behind_a_link_is_read_every_time(content: Path, file: Path, tmp_path: Path) -> None:
    note(content)
    elsewhere = tmp_path / "elsewhere"
    shutil.move(content / "projects", elsewhere)
    (content / "projects").symlink_to(elsewhere)
    read(content, file)

    _, anew = read(content, file)

    assert "projects#list" in anew


def test_what_was_changed_too_lately_is_read_again(content: Path, file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(look, "is_settled", lambda newest, now: False)
    read(content, file)

    assert len(read(content, file)[1]) > 10


def _spoil(file: Path, how: str) -> None:
    if how == "rubbish":
        file.write_bytes(b"not a database" * 999)
        return
    with closing(sqlite3.connect(file)) as table, table:
        if how == "head":
            table.execute("UPDATE shelf SET data = substr(data, 1, 99) WHERE name = 'head'")
        elif how == "pieces":
            table.execute("UPDATE shelf SET data = x'00' || data WHERE name <> 'head'")
        else:
            table.execute("DELETE FROM shelf WHERE name <> 'head'")


@pytest.mark.parametrize("how", ["rubbish", "head", "pieces", "no pieces"])
def test_a_damaged_shelf_costs_time_only(content: Path, file: Path, how: str) -> None:
    read(content, file)
    _spoil(file, how)

    found, anew = read(content, file)

    assert found == load(content)
    assert len(anew) > 10
    assert read(content, file) == (found, frozenset())  # and it is whole again


class _Trap:
    def __reduce__(self) -> tuple[Callable[[str], int], tuple[str]]:
        return os.system, ("exit 3",)


def test_nothing_but_records_and_plain_values_is_read_from_a_shelf(
    content: Path, file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    read(content, file)
    trap = pickle.dumps({"trap": _Trap()})
    monkeypatch.setattr("os.system", lambda _: pytest.fail("a kept value was called"))
    monkeypatch.setattr(zlib, "crc32", lambda data: 7)  # so that no sum tells
    with closing(sqlite3.connect(file)) as table, table:
        table.execute("UPDATE shelf SET data = ? WHERE name <> 'head'", (trap,))
        table.execute("UPDATE shelf SET data = x'00000007' || substr(data, 5) WHERE name = 'head'")

    assert read(content, file)[0] == load(content)


def test_a_piece_that_a_slower_run_put_there_later_is_not_taken_for_ours(content: Path, file: Path) -> None:
    read(content, file)
    note(content)
    slower = Shelf(file, look_at_records(str(content)))
    load(content, slower.remembered)
    record = project(content)
    record.write_text(record.read_text("utf-8").replace("windy", "calm"), "utf-8")
    read(content, file)
    quick = Shelf(file, look_at_records(str(content)))
    load(content, quick.remembered)
    slower.keep()  # an older piece, with the head that goes with it
    quick.remembered.read.add("shop.yaml#")
    quick.keep()  # a newer head beside the older piece

    assert read(content, file)[0] == load(content)


def test_commands_share_what_they_read(content: Path, tmp_path: Path) -> None:
    with shelved(content, tmp_path / "cache") as remembered:
        load(content, remembered)
    with shelved(content, tmp_path / "cache") as remembered:
        load(content, remembered)
        assert not remembered.read


def test_nothing_is_kept_among_the_records(content: Path) -> None:
    before = sorted(content.rglob("*"))
    with shelved(content, content / ".cache") as remembered:
        load(content, remembered)

    assert sorted(content.rglob("*")) == before
