"""`maker-site export`: everything back as it was typed, whole or not at all, over nothing."""

import csv
import json
from collections.abc import Iterable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from maker_site.cli import main
from maker_site.records import Shop, load
from maker_site.records.read_log import read_log
from maker_site.records.shop import Units
from tests.small_workshop import FILES, write_workshop

DEMO = Path(__file__).parents[2] / "content"


def export(content: Path, out: Path, *options: str) -> Result:
    result = CliRunner().invoke(main, ["export", "--content", str(content), "--out", str(out), *options])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def values(record) -> dict:
    """A record's values but its name; quantities are compared by value and as typed."""
    found = {name: getattr(record, name) for name in type(record).model_fields if name != "id"}
    return {name: (value, getattr(value, "typed", None)) for name, value in found.items()}


def rows_of(file: Path) -> list[dict[str, str]]:
    with file.open(newline="", encoding="utf-8") as opened:
        return list(csv.DictReader(opened, strict=True))


def test_the_exported_log_reads_back_as_equal_pressings(tmp_path: Path) -> None:
    assert export(DEMO, tmp_path / "out").exit_code == 0

    text = (tmp_path / "out/press-log.csv").read_text(encoding="utf-8")
    pressings, problems = read_log(text, "press-log.csv", Units())

    assert problems == []
    before = load(DEMO).workshop.pressings
    assert len(before) > 100
    assert [values(row) for row in sorted(pressings, key=lambda row: row.date)] == [values(row) for row in before]


def test_each_kind_of_record_has_its_table(tmp_path: Path) -> None:
    export(DEMO, tmp_path / "out")

    workshop = load(DEMO).workshop
    for kind in ("blanks", "presses", "supplies", "projects", "articles"):
        rows = rows_of(tmp_path / "out" / f"{kind}.csv")
        assert [row["id"] for row in rows] == list(getattr(workshop, kind))
    blank = next(row for row in rows_of(tmp_path / "out/blanks.csv") if row["id"] == "mug-11oz-tidewell")
    assert (blank["girth"], blank["bought 2: lot"], blank["bought 2: count"]) == ("258 mm", "T131", "36")
    (shop,) = rows_of(tmp_path / "out/shop.csv")
    assert shop["name"] == workshop.shop.name
    assert (tmp_path / "out/about.md").read_text(encoding="utf-8") == workshop.about


def test_json_holds_every_value_as_it_was_typed(tmp_path: Path) -> None:
    export(DEMO, tmp_path / "out", "--as", "json")

    whole = json.loads((tmp_path / "out/maker-site.json").read_text(encoding="utf-8"))

    workshop = load(DEMO).workshop
    assert set(whole["written by"]) == {"maker-site", "format"}
    assert len(whole["press log"]) == len(workshop.pressings)
    assert (
        whole["projects"]["allotment-tally-coasters"]["tutorial.md"]
        == workshop.projects["allotment-tally-coasters"].tutorial
    )
    assert values(Shop.model_validate({"id": "shop", **whole["shop"]})) == values(workshop.shop)
    for kind in ("blanks", "presses", "supplies"):
        for name, record in getattr(workshop, kind).items():
            again = type(record).model_validate(
                {"id": name, **whole[kind][name], **beside(record)}, context={"units": workshop.shop.units}
            )
            assert values(again) == values(record)


def beside(record) -> dict:
    return {"folder pictures": record.folder_pictures} if hasattr(record, "folder_pictures") else {}


def test_nothing_that_is_there_is_overwritten(tmp_path: Path) -> None:
    content = write_workshop(tmp_path / "content")
    (tmp_path / "full").mkdir()
    (tmp_path / "full/mine.txt").write_text("mine")
    (tmp_path / "file").write_text("mine")
    (tmp_path / "empty").mkdir()

    results = {name: export(content, tmp_path / name) for name in ("full", "file", "empty", "new/deep")}

    assert {name: result.exit_code for name, result in results.items()} == {
        "full": 1, "file": 1, "empty": 0, "new/deep": 0,
    }  # fmt: skip
    assert "is there already and not an empty folder" in results["full"].output
    assert [path.name for path in (tmp_path / "full").iterdir()] == ["mine.txt"]
    assert (tmp_path / "file").read_text() == "mine"
    assert not list(tmp_path.rglob(".*"))


def test_an_export_that_fails_in_the_middle_leaves_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from maker_site.records.adding import files

    written = []

    def full_disk(path: Path, data: Iterable[bytes]) -> None:
        written.append(path)
        if len(written) == 3:
            raise OSError(28, "No space left on device")
        path.write_bytes(b"".join(data))

    monkeypatch.setattr(files, "_write_new", full_disk)

    result = export(write_workshop(tmp_path / "content"), tmp_path / "out")

    assert result.exit_code == 1
    assert "no space left on device" in result.output
    assert sorted(path.name for path in tmp_path.iterdir()) == ["content"]


def test_records_with_an_error_are_told_and_nothing_is_exported(tmp_path: Path) -> None:
    content = write_workshop(tmp_path / "content", {"blanks/slate.yaml": "name: Slate\n"})

    result = export(content, tmp_path / "out")

    assert result.exit_code == 1
    assert "“substrate” is missing" in result.output
    assert not (tmp_path / "out").exists()


def test_a_cell_like_a_formula_is_harmless_and_reads_back(tmp_path: Path) -> None:
    """A cell that begins with = + - @ counts as a formula (from memory, no source)."""
    log = "date,blank,press,temperature,time,pressed,good,note\n"
    notes = ["=1+1", "-- slid", "@home", "+ tape", "-5"]
    log += "".join(f"2026-04-18,slate,clam,200 C,5:00,4,3,{note}\n" for note in notes)
    content = write_workshop(tmp_path / "content", {
        "press-log/2026.csv": log, "blanks/slate.yaml": "name: '=Slate'\nsubstrate: slate\n",
    })  # fmt: skip

    export(content, tmp_path / "out")

    for file in (tmp_path / "out").glob("*.csv"):
        with file.open(newline="", encoding="utf-8") as opened:
            cells = [cell for row in csv.reader(opened) for cell in row]
        assert not [cell for cell in cells if cell.startswith(("=", "+", "-", "@")) and cell != "-5"]
    read, _ = read_log((tmp_path / "out/press-log.csv").read_text(), "log", Units())
    assert [row.note for row in read] == notes
    export(content, tmp_path / "json", "--as", "json")
    assert json.loads((tmp_path / "json/maker-site.json").read_text())["blanks"]["slate"]["name"] == "=Slate"


def test_the_records_are_as_they_were(tmp_path: Path) -> None:
    content = write_workshop(tmp_path / "content")

    export(content, tmp_path / "out")

    assert {name: (content / name).read_text() for name in FILES} == dict(FILES)
