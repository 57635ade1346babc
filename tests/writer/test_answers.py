"""Answers after an edit are those of one who works all out, and only what the edit concerns is worked out again."""

from __future__ import annotations

import random
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from maker_site.workings.finding.query import read
from maker_site.writer import answers, answers_mended, answers_reworked
from maker_site.writer.answers import Answers, RecordsBroken, ask

pytestmark = pytest.mark.xdist_group("answers")
PROJECTS = 20
QUERIES = (
    "slate",
    "tea towel",
    "200 c",
    "sublimation",
    "blurred",
    "medium print up",
    "fair",
    "zebra",
    "slaet",
    "blank-1",
)


@pytest.fixture
def afresh(monkeypatch: pytest.MonkeyPatch) -> list[Path]:
    """Each time that all is worked out, its content folder is added."""
    seen: list[Path] = []
    made = answers._made

    def counted(content: Path, *others: Any) -> sqlite3.Connection:
        seen.append(content)
        return made(content, *others)

    monkeypatch.setattr(answers, "_made", counted)
    return seen


def everything(found: Answers) -> dict[str, object]:
    """Return what can be asked, asked."""
    said: dict[str, object] = {"shop": found.shop, "blanks": found.blanks, "presses": found.presses}
    for query in QUERIES:
        matches = found.match(read(query))
        likes = found.likes()
        rows = list(found.rows(matches.rows))
        said[query] = (rows, [likes.get(row) for row in matches.rows], dict(matches.read_as), dict(matches.unknown))
    for blank in found.blanks:
        for press in (None, *found.presses):
            said[f"{blank} on {press}"] = [dict(each) for each in found.starting_points(blank, press)]
    return said


def answered(content: Path, cache: Path) -> object:
    """Return all answers, or what is wrong with the records."""
    try:
        return ask(content, everything, cache)
    except RecordsBroken as broken:
        return broken.problems


def project(content: Path, number: int = 0) -> Path:
    return sorted(content.glob("projects/*/project.yaml"))[number]


def blank(content: Path, number: int = 0) -> Path:
    return sorted(content.glob("blanks/*.yaml"))[number]


def log(content: Path, number: int = -1) -> Path:
    return sorted(content.glob("press-log/*.csv"))[number]


def put(path: Path, old: str, new: str) -> None:
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), "utf-8")


def add(path: Path, text: str) -> None:
    path.write_text(path.read_text("utf-8") + text, "utf-8")


def row_like(content: Path, number: int, **changes: str) -> str:
    """Return a row of the log as another one is, with some columns changed."""
    heading, *rows = log(content).read_text("utf-8").splitlines()
    cells = dict(zip(heading.split(","), rows[number].split(","), strict=False))
    return ",".join({**cells, **changes}.get(name, "") for name in heading.split(",")) + "\n"


def a_note(content: Path) -> None:
    add(project(content), "note: pressed on a windy day\n")


def a_row(content: Path) -> None:
    add(log(content), row_like(content, 0, temperature="171 C", pressed="9", good="9"))


def a_row_of_a_test(content: Path) -> None:
    add(log(content), row_like(content, 1, project="", temperature="333 F", time="1:10", defects="blurred; faded"))


def a_row_in_the_middle(content: Path) -> None:
    lines = log(content, 0).read_text("utf-8").splitlines(keepends=True)
    log(content, 0).write_text("".join([*lines[:9], lines[5], *lines[9:]]), "utf-8")


def a_row_less(content: Path) -> None:
    lines = log(content).read_text("utf-8").splitlines(keepends=True)
    log(content).write_text("".join([*lines[:2], *lines[4:]]), "utf-8")


def an_outcome(content: Path) -> None:
    lines = log(content).read_text("utf-8").splitlines(keepends=True)
    cells = lines[3].split(",")
    names = lines[0].strip().split(",")
    cells[names.index("good")] = "0"
    log(content).write_text("".join([*lines[:3], ",".join(cells), *lines[4:]]), "utf-8")


def a_title(content: Path) -> None:
    record = project(content, 3)
    lines = record.read_text("utf-8").splitlines(keepends=True)
    record.write_text("title: Zebra lantern\n" + "".join(lines[1:]), "utf-8")


def another_title(content: Path) -> None:
    put(project(content, 3), "Zebra lantern", "Okapi lantern")


def an_occasion(content: Path) -> None:
    add(
        project(content, 4), "summary: for all\n" if "summary" not in project(content, 4).read_text() else "care: dry\n"
    )


def a_new_project(content: Path) -> None:
    home = content / "projects" / "aa-new"
    home.mkdir()
    (home / "project.yaml").write_text(f"title: Brand new tile\nblank: {blank(content).stem}\n", "utf-8")


def a_row_for_it(content: Path) -> None:
    add(log(content), row_like(content, 2, project="aa-new", blank=blank(content).stem))


def its_folder_renamed(content: Path) -> None:
    (content / "projects" / "aa-new").rename(content / "projects" / "ab-renamed")
    put(log(content), "aa-new", "ab-renamed")


def a_new_sheet(content: Path) -> None:
    record = blank(content, 1)
    text = record.read_text("utf-8").partition("sheet:")[0]
    record.write_text(f"{text}sheet:\n  temperature: 181 to 187 C\n  time: 50 s\n  pressure: firm\n", "utf-8")


def no_sheet(content: Path) -> None:
    record = blank(content, 2)
    record.write_text(record.read_text("utf-8").partition("sheet:")[0], "utf-8")


def a_name(content: Path) -> None:
    record = blank(content, 1)
    lines = record.read_text("utf-8").splitlines(keepends=True)
    record.write_text("name: Quagga plate\n" + "".join(lines[1:]), "utf-8")


def another_substrate(content: Path) -> None:
    record = blank(content, 1)
    text = record.read_text("utf-8")
    (said,) = [line for line in text.splitlines() if line.startswith("substrate:")]
    record.write_text(text.replace(said, "substrate: slate" if "slate" not in said else "substrate: ceramic"), "utf-8")


def a_new_blank(content: Path) -> None:
    (content / "blanks" / "new-plate.yaml").write_text(
        "name: New plate\nsubstrate: slate\nthickness: 6 mm\nsupplier: Quern\nbought:\n- count: '9'\n  paid: '4.50'\n",
        "utf-8",
    )


def a_row_on_it(content: Path) -> None:
    add(log(content), row_like(content, 0, blank="new-plate", project="", pressed="4", good="4"))


def the_log_of_another_year(content: Path) -> None:
    heading = log(content).read_text("utf-8").splitlines()[0]
    (content / "press-log" / "2031.csv").write_text(f"{heading}\n{row_like(content, 1)}", "utf-8")


def no_log_of_that_year(content: Path) -> None:
    (content / "press-log" / "2031.csv").unlink()


def nothing_but_the_time(content: Path) -> None:
    blank(content).touch()


def a_note_over_lines(content: Path) -> None:
    add(log(content), row_like(content, 0, note='"one\ntwo, and ""three"""'))


def another_row(content: Path) -> None:
    add(log(content), row_like(content, 1, note="after"))


def a_photo(content: Path) -> None:
    photos = project(content, 5).parent / "photos"
    photos.mkdir()
    (photos / "front.jpg").write_bytes(b"looked at by others")
    add(project(content, 5), "photos:\n- {file: photos/front.jpg, share: yes, text: the front}\n")


def a_row_with_a_photo(content: Path) -> None:
    home = project(content, 5).parent
    add(log(content), row_like(content, 1, project=home.name, note="photographed"))


def a_place_on_the_menu(content: Path) -> None:
    add(project(content, 5), "order: {for: Ann, paid: '9.50', names: 'Ann, Bob'}\n")


def a_supply(content: Path) -> None:
    (content / "supplies" / "felt-pad.yaml").write_text("name: Felt pad\nkind: packaging\nprice: '4.50'\n", "utf-8")


def a_row_with_it(content: Path) -> None:
    add(log(content), row_like(content, 1, stack="felt-pad > blank"))


def the_shop_and_a_press(content: Path) -> None:
    add(content / "shop.yaml", "lead time: two weeks\n")
    add(sorted(content.glob("presses/*.yaml"))[0], "timer starts: at closing\n")


AT_A_GLANCE = (
    *(a_note, a_row, a_row_of_a_test, a_row_in_the_middle, a_row_less, an_outcome, a_title, another_title, an_occasion),
    *(a_new_project, a_row_for_it, its_folder_renamed, a_new_sheet, no_sheet, a_name, another_substrate, a_new_blank),
    *(a_row_on_it, the_log_of_another_year, no_log_of_that_year, nothing_but_the_time),
    *(a_note_over_lines, another_row, a_photo, a_row_with_a_photo, a_place_on_the_menu, a_supply, a_row_with_it),
    the_shop_and_a_press,
)


def a_reading(content: Path) -> None:
    press = sorted(content.glob("presses/*.yaml"))[0]
    text = press.read_text("utf-8").partition("readings:")[0]
    press.write_text(f"{text}readings:\n- {{date: 2026-01-10, set: 180 C, measured: 171 C}}\n", "utf-8")


def a_misspelt_press(content: Path) -> None:
    add(log(content), row_like(content, 0, press="prss-0"))


def it_mended(content: Path) -> None:
    put(log(content), "prss-0", "press-0")


def more_good_than_pressed(content: Path) -> None:
    add(log(content), row_like(content, 0, pressed="3", good="5", note="odd"))


def fewer_good(content: Path) -> None:
    put(log(content), ",3,5,", ",3,2,")


def a_project_gone(content: Path) -> None:
    (content / "projects" / "gone").mkdir()


def its_folder_gone(content: Path) -> None:
    (content / "projects" / "gone").rmdir()


def a_field_that_is_none(content: Path) -> None:
    add(project(content, 6), "colour: red\n")


def no_such_field(content: Path) -> None:
    put(project(content, 6), "colour: red\n", "")


def a_photo_that_is_not_there(content: Path) -> None:
    add(project(content, 7), "artwork:\n- file: drawing.svg\n")


def it_there(content: Path) -> None:
    (project(content, 7).parent / "drawing.svg").write_text("<svg/>")
    add(project(content, 7), "care: by hand\n" if "care" not in project(content, 7).read_text() else "for: Ann\n")


def a_supply_gone(content: Path) -> None:
    (content / "supplies" / "felt-pad.yaml").unlink()


def it_back(content: Path) -> None:
    a_supply(content)


def no_blank(content: Path) -> None:
    put(project(content, 8), "blank: ", "for: ")


def a_blank_again(content: Path) -> None:
    put(project(content, 8), "for: ", "blank: ")


def other_units(content: Path) -> None:
    add(content / "shop.yaml", "units: {temperature: F}\n")


AFRESH = (
    *(a_reading, a_misspelt_press, it_mended, more_good_than_pressed, fewer_good, a_project_gone, its_folder_gone),
    *(a_field_that_is_none, no_such_field, a_photo_that_is_not_there, it_there, a_supply_gone, it_back, no_blank),
    *(a_blank_again, other_units),
)


def test_after_every_edit_the_answers_are_those_worked_out_afresh(content: Path, tmp_path: Path) -> None:
    cache = tmp_path / "cache"
    answered(content, cache)
    for number, edit in enumerate((*AT_A_GLANCE, *AFRESH, *AT_A_GLANCE[:4])):
        edit(content)
        assert answered(content, cache) == answered(content, tmp_path / f"fresh {number}"), edit.__name__


def test_an_edit_that_can_be_judged_at_a_glance_reads_nothing_else(
    content: Path, tmp_path: Path, afresh: list[Path]
) -> None:
    answered(content, tmp_path)
    for edit in AT_A_GLANCE:
        edit(content)
        answered(content, tmp_path)
        assert len(afresh) == 1, edit.__name__


def test_many_edits_at_once(content: Path, tmp_path: Path) -> None:
    answered(content, tmp_path / "cache")
    for edit in AT_A_GLANCE:
        edit(content)

    assert answered(content, tmp_path / "cache") == answered(content, tmp_path / "fresh")


@pytest.mark.parametrize("seed", range(3))
def test_rows_changed_anywhere(content: Path, tmp_path: Path, seed: int) -> None:
    chance = random.Random(seed)
    answered(content, tmp_path / "cache")
    for number in range(6):
        file = chance.choice(sorted(content.glob("press-log/*.csv")))
        heading, *rows = file.read_text("utf-8").splitlines(keepends=True)
        for _ in range(chance.randint(1, 4)):
            at = chance.randrange(len(rows))
            what = chance.choice(("drop", "twice", "move", "hotter"))
            if what == "drop":
                del rows[at]
            elif what == "twice":
                rows.insert(at, chance.choice(rows))
            elif what == "move":
                rows.append(rows.pop(at))
            else:
                rows[at] = rows[at].replace("5 C", "7 C").replace("print up", "print down")
        file.write_text(heading + "".join(rows), "utf-8")
        assert answered(content, tmp_path / "cache") == answered(content, tmp_path / f"fresh {number}")


def test_where_very_much_is_stale_all_is_made_afresh(
    content: Path, tmp_path: Path, afresh: list[Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(answers_reworked, "_A_FEW_ROWS", 0)
    monkeypatch.setattr(answers_reworked, "_PART", 10**9)
    answered(content, tmp_path / "cache")
    a_row(content)

    assert answered(content, tmp_path / "cache") == answered(content, tmp_path / "fresh")
    assert len(afresh) == 3  # the first, the one that gave up, and the one to compare with


def test_rows_that_are_gone_again_are_left_out_in_time(
    content: Path, tmp_path: Path, afresh: list[Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    def lying(found: Answers) -> int:
        return len(found._overlay.rows) if found._overlay else 0

    answered(content, tmp_path)
    a_row(content)
    once = ask(content, lying, tmp_path)
    monkeypatch.setattr(answers_reworked, "_A_FEW_ROWS", 3 * once + 9)
    monkeypatch.setattr(answers_reworked, "_PART", 10**9)
    most = 0
    for _ in range(6):
        a_row(content)
        most = max(most, ask(content, lying, tmp_path))

    assert once < most <= 3 * once + 9
    assert len(afresh) == 1
    assert answered(content, tmp_path) == answered(content, tmp_path / "fresh")


def _spoil(cache: Path, how: str) -> None:
    (base,) = cache.glob("settings-[0-9a-f]*.sqlite")
    (patch,) = cache.glob("settings-since-*.sqlite")
    if how == "another base":
        with closing(sqlite3.connect(base)) as file, file:
            file.execute("UPDATE kept SET data = x'07', sum = ? WHERE kind = 'mark'", (2_696_210_604,))
        return
    for file_path in (base, patch):
        if how == "no patch" and file_path == patch:
            patch.unlink()
        elif how == "rubbish" and file_path == patch:
            patch.write_bytes(b"no database" * 99)
        elif how.startswith("damaged"):
            with closing(sqlite3.connect(file_path)) as file, file:
                file.execute(f"UPDATE kept SET data = x'00' || data WHERE kind = '{how.split()[1]}'")


@pytest.mark.parametrize(
    "how",
    [
        *("no patch", "rubbish", "another base"),
        *(
            f"damaged {kind}"
            for kind in ("overlay", "rows", "stamps", "text", "log", "tellers", "keys", "said", "mark")
        ),
    ],
)
def test_damage_costs_time_only(content: Path, tmp_path: Path, how: str) -> None:
    cache = tmp_path / "cache"
    answered(content, cache)
    a_row(content)
    answered(content, cache)
    _spoil(cache, how)
    expected = answered(content, tmp_path / "fresh")

    assert answered(content, cache) == expected
    a_title(content)
    assert answered(content, cache) == answered(content, tmp_path / "fresh")


@pytest.mark.parametrize("edit", [a_note, a_row, a_new_sheet, a_title])
def test_a_second_answer_after_an_edit_works_nothing_out(
    content: Path, tmp_path: Path, edit: Callable[[Path], None], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("maker_site.writer.fingerprint.is_settled", lambda newest, now: True)
    answered(content, tmp_path)
    edit(content)
    first = answered(content, tmp_path)
    monkeypatch.setattr("maker_site.writer.answers_mended.mended", lambda *_: pytest.fail("worked out again"))

    assert answered(content, tmp_path) == first


def test_a_file_that_says_what_it_said_is_not_taken_for_edited(
    content: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = answered(content, tmp_path)
    monkeypatch.setattr(answers_mended, "_after", lambda *_: pytest.fail("taken for edited"))
    nothing_but_the_time(content)

    assert answered(content, tmp_path) == first
