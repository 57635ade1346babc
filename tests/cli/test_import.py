"""`maker-site import`: looked at first, nothing guessed in silence, nothing added twice, nothing invented."""

import csv
import io
import random
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from maker_site.cli import asking, main
from maker_site.records import load
from tests.small_workshop import write_workshop

NOTEBOOK = (
    "When,Material,Machine,Temp (F),Mins,Secs,Qty,OK,What went wrong,Weather,Comments\n"
    '18/04/2023,Slate Coaster,clam,400,5,30,4,3,"faded, lint",wet,"slid, on opening"\n'
    "18/04/2023,Slate Coaster,clam,400,5,30,1,1,,,\n"
    "18/04/2023,Slate Coaster,clam,400,5,30,1,1,,,\n"
    "4/5/23,slate,Clam,204 C,6,,2,yes,,dry,\n"
)


@pytest.fixture
def content(tmp_path: Path) -> Path:
    return write_workshop(tmp_path / "content")


def bring(content: Path, text: str | bytes, *options: str, answers: str = "", name: str = "Old book.csv") -> Result:
    file = content.parent / name
    file.write_bytes(text if isinstance(text, bytes) else text.encode())
    result = CliRunner().invoke(main, ["import", str(file), "--content", str(content), *options], input=answers)
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def log_files(content: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in (content / "press-log").iterdir()}


def imported(content: Path) -> list:
    rows = load(content).workshop.pressings
    return [row for row in rows if row.origin.file.startswith("press-log/imported")]


def test_first_it_is_only_looked_at_with_every_guess_shown(content: Path) -> None:
    before = log_files(content)

    result = bring(content, NOTEBOOK)

    assert result.exit_code == 0
    for said in (
        "“When” is date (a guess)",
        "“Temp (F)” is temperature, bare figures in F (a guess)",
        "“Mins” is time, bare figures in min (a guess)",
        "“Weather” is left out (2 cells filled)",
        "Dates are day first.",
        "blank “Slate Coaster” is slate",
        "4 rows read: 4 to add, 0 already there, 0 refused.",
        "Nothing was written. Say --write",
    ):
        assert said in result.output
    assert log_files(content) == before


def test_guesses_are_not_taken_in_silence(content: Path) -> None:
    result = bring(content, NOTEBOOK, "--write")

    assert result.exit_code == 2
    assert "say --yes to take the guesses" in result.output
    assert list(log_files(content)) == ["2026.csv"]


def test_written_the_rows_are_the_notebooks(content: Path) -> None:
    before = log_files(content)

    result = bring(content, NOTEBOOK, "--write", "--yes")

    assert result.exit_code == 0
    assert f"{content / 'press-log/imported-old-book.csv'}:2" in result.output
    assert log_files(content)["2026.csv"] == before["2026.csv"]
    first, *_, last = imported(content)
    assert (first.date.isoformat(), first.blank, first.temperature.typed) == ("2023-04-18", "slate", "400 F")
    assert (first.time.seconds, first.defects, first.note) == (330, ("pale all over", "specks"), "slid, on opening")
    assert (last.date.isoformat(), last.temperature.typed, last.pressed, last.good) == ("2023-05-04", "204 C", 2, 2)


def test_again_nothing_is_added_and_equal_rows_stay_two(content: Path) -> None:
    bring(content, NOTEBOOK, "--write", "--yes")
    before = log_files(content)

    result = bring(content, NOTEBOOK, "--write", "--yes")

    assert "4 rows read: 0 to add, 4 already there" in result.output
    assert log_files(content) == before
    assert len(imported(content)) == 4


def test_a_longer_notebook_adds_what_is_new_to_the_end(content: Path) -> None:
    bring(content, NOTEBOOK, "--write", "--yes")
    before = log_files(content)["imported-old-book.csv"]

    result = bring(content, NOTEBOOK + "18/04/2023,Slate Coaster,clam,400,5,30,1,1,,,\n", "--write", "--yes")

    assert "5 rows read: 1 to add, 4 already there" in result.output
    assert log_files(content)["imported-old-book.csv"].startswith(before)
    assert len(imported(content)) == 5


def test_a_row_of_the_log_itself_is_there_already(content: Path) -> None:
    result = bring(content, (content / "press-log/2026.csv").read_bytes())

    assert "1 row read: 0 to add, 1 already there, 0 refused." in result.output


def test_refused_rows_are_told_with_line_and_every_reason_and_the_others_are_added(content: Path) -> None:
    bad = "last week,Slate Coaster,clam,400,5,,2,3,,,\nTotal,,,,,,8,6,,,\n"

    result = bring(content, NOTEBOOK + bad, "--write", "--yes")

    assert result.exit_code == 1
    assert "Old book.csv:6: refused: date: “last week” is not a date" in result.output
    assert "3 good of 2 pressed can't be" in result.output
    assert "Old book.csv:7: refused: date: “Total” is not a date" in result.output
    assert "“blank” is missing" in result.output
    assert "6 rows read: 4 to add, 0 already there, 2 refused." in result.output
    assert len(imported(content)) == 4


def test_an_unknown_blank_is_never_invented_and_can_be_mapped(content: Path) -> None:
    text = NOTEBOOK.replace("Slate Coaster", "slaet")

    asked = bring(content, text)
    mapped = bring(content, text, "--blank", "slaet=slate", "--write", "--yes")

    assert asked.exit_code == 1
    assert "blank “slaet” is not known; did you mean “slate”? Say --blank “slaet=ID”" in asked.output
    assert mapped.exit_code == 0
    assert {row.blank for row in imported(content)} == {"slate"}
    assert [path.name for path in (content / "blanks").iterdir()] == ["slate.yaml"]


def test_a_map_to_a_blank_that_is_not_there_is_wrong_use(content: Path) -> None:
    result = bring(content, NOTEBOOK, "--blank", "Slate Coaster=slat")

    assert result.exit_code == 2
    assert "there is no blank “slat”; did you mean “slate”?" in result.output


def test_a_notebook_of_one_press_has_no_column_for_it(content: Path) -> None:
    text = "date,blank,temp,time,pressed,good\n2023-04-18,slate,200,300,4,4\n"

    asked = bring(content, text)
    said = bring(content, text, "--press", "=clam", "--write", "--yes")

    assert "No heading means press; where all rows are of one, say --press “=ID”." in asked.output
    assert said.exit_code == 0
    (row,) = imported(content)
    assert (row.press, row.temperature.celsius, row.time.seconds) == ("clam", 200, 300)


HEADING = "date,blank,press,temperature,time,pressed,good\n"


def test_dates_that_can_be_read_two_ways_are_asked_for(content: Path) -> None:
    text = HEADING + "03/04/2023,slate,clam,200 C,5:00,4,4\n"

    unclear = bring(content, text)
    day_first = bring(content, text, "--dates", "dmy", "--write", name="a.csv")
    month_first = bring(content, text, "--dates", "mdy", "--write", name="b.csv")

    assert unclear.exit_code == 2
    assert "“03/04/2023” can be read two ways" in unclear.output
    assert (day_first.exit_code, month_first.exit_code) == (0, 0)
    assert [row.date.isoformat() for row in imported(content)] == ["2023-03-04", "2023-04-03"]


@pytest.mark.parametrize(
    ("cells", "said"),
    [
        ("400,5:00,4,4", "would be 400 C, hotter than anything pressed"),
        ("200,05:00:00,4,4", "hours:minutes:seconds"),
        ("warm,5:00,4,4", "“warm” is not a temperature"),
        ("200,5:00,4,maybe", "“maybe” is not a whole number"),
        ("200,5:00,,yes", "of how many"),
        ("200,5:00,4,4,extra", "more cells than there are headings"),
    ],
)
def test_what_can_not_be_meant_is_refused_with_its_reason(content: Path, cells: str, said: str) -> None:
    result = bring(content, HEADING + f"2023-04-18,slate,clam,{cells}\n")

    assert result.exit_code == 1
    assert said in result.output
    assert "0 to add" in result.output


def test_a_unit_can_be_said_for_a_column(content: Path) -> None:
    text = HEADING.replace("temperature", "Heat") + "2023-04-18,slate,clam,400,5:00,4,4\n"

    result = bring(content, text, "--map", "Heat=temperature F", "--write")

    assert result.exit_code == 0
    assert imported(content)[0].temperature.celsius == pytest.approx(204.44, abs=0.01)  # (400 - 32) / 1.8


def test_spoiled_pieces_give_the_good_ones(content: Path) -> None:
    text = "date,blank,press,temperature,time,qty,rejects\n2023-04-18,slate,clam,200 C,5:00,4,1\n"

    bring(content, text, "--write", "--yes")

    assert [(row.pressed, row.good) for row in imported(content)] == [(4, 3)]


def test_two_headings_for_one_column_are_asked_about(content: Path) -> None:
    text = "date,blank,press,Temp (F),Temp (C),time,pressed,good\n2023-04-18,slate,clam,400,204,5:00,4,4\n"

    both = bring(content, text)
    one = bring(content, text, "--map", "Temp (C)=-", "--yes", "--write")

    assert both.exit_code == 2
    assert "“Temp (F)” and “Temp (C)” both mean temperature" in both.output
    assert one.exit_code == 0
    assert imported(content)[0].temperature.typed == "400 F"


def test_columns_said_to_be_notes_are_kept_with_their_heading(content: Path) -> None:
    bring(content, NOTEBOOK, "--map", "Weather=note", "--write", "--yes")

    assert imported(content)[0].note == "wet; Comments: slid, on opening"


def test_the_maker_may_correct_a_guess_when_asked(content: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(asking, "possible", lambda: True)
    text = "date,blank,press,temperature,time,Count,Fine\n2023-04-18,slate,clam,200 C,5:00,4,3\n"

    result = bring(content, text, "--write", answers="presed\npressed\n\ny\n")

    assert result.exit_code == 0, result.output
    assert "did you mean “pressed”?" in result.output
    assert [(row.pressed, row.good) for row in imported(content)] == [(4, 3)]


@pytest.mark.parametrize(
    "answers", ["", "\n", "\n\nn\n"], ids=["at the first", "at the second", "at the last question"]
)
def test_stopped_nothing_is_written(content: Path, monkeypatch: pytest.MonkeyPatch, answers: str) -> None:
    monkeypatch.setattr(asking, "possible", lambda: True)
    before = log_files(content)
    text = "date,blank,press,temperature,time,Qty,OK\n2023-04-18,Slate Coaster,clam,200 C,5:00,4,3\n"

    result = bring(content, text, "--write", answers=answers)

    assert result.exit_code == 130
    assert "Nothing was written" in result.output
    assert log_files(content) == before


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (b"PK\x03\x04rest", "a spreadsheet's own file; save the sheet as CSV"),
        (b"date\xb0\n", "not UTF-8"),
        ('date,"blank\n', "quotation mark that is not closed"),
    ],
)
def test_a_file_that_is_no_table_is_a_sentence(content: Path, text: str | bytes, said: str) -> None:
    result = bring(content, text)

    assert result.exit_code == 1
    assert said in result.output


@pytest.mark.parametrize("text", ["", "\n\n", "Weather\n"])
def test_a_table_without_rows_adds_nothing(content: Path, text: str) -> None:
    result = bring(content, text, "--write", "--yes")

    assert result.exit_code == 0
    assert "0 rows read: 0 to add" in result.output


@pytest.mark.parametrize(
    ("option", "said"),
    [("Tempp=temperature", "did you mean “Temp (F)”"), ("Qty=cuont", "is not a column"), ("Qty", "has no equals sign")],
)
def test_a_map_that_can_not_be_followed_is_wrong_use(content: Path, option: str, said: str) -> None:
    result = bring(content, NOTEBOOK, "--map", option)

    assert result.exit_code == 2
    assert said in " ".join(result.output.split())


def test_semicolons_and_a_byte_order_mark_are_simply_read(content: Path) -> None:
    text = "\ufeff" + (HEADING + "2023-04-18,slate,clam,200 C,5:00,4,4\n").replace(",", ";").replace("\n", "\r\n")

    assert "1 row read: 1 to add" in bring(content, text).output


def test_a_formula_from_elsewhere_is_harmless_in_the_log(content: Path) -> None:
    text = HEADING.replace("good", "good,note") + '2023-04-18,slate,clam,200 C,5:00,4,4,"=HYPERLINK(""x"")"\n'

    bring(content, text, "--write")
    again = bring(content, text, "--write")

    assert b'," =HYPERLINK(""x"")",' in log_files(content)["imported-old-book.csv"]
    assert imported(content)[0].note == '=HYPERLINK("x")'
    assert "1 already there" in again.output


NOTEBOOK_HEADING = [
    "Date",
    "Material",
    "Machine",
    "Temp(F)",
    "Mins",
    "Secs",
    "Qty",
    "OK",
    "Notes",
    "Faults",
    "Job",
    "PSI",
]
ODD = [
    "",
    "-",
    "yes",
    "18/4/23",
    "400",
    "204 C",
    "½",
    "²",
    "1/0",
    "1,200",
    "9" * 40,
    "=1+1",
    "a\nb",
    '"q"',
    "../x",
    "\x00",
    "…",
]


@pytest.mark.parametrize("seed", range(8))
def test_whatever_the_cells_hold_the_log_stays_sound_and_again_adds_nothing(content: Path, seed: int) -> None:
    cells = ["18/4/23", "slate", "clam", "400", "5", "30", "4", "3", "n", "", "", "40"]
    odd = random.Random(seed)
    out = io.StringIO(newline="")
    table = csv.writer(out, delimiter=odd.choice(",;\t"))
    table.writerow(NOTEBOOK_HEADING)
    for _ in range(30):
        changed = odd.randrange(len(cells))
        table.writerow([*cells[:changed], odd.choice(ODD), *cells[changed + 1 :]])

    first = bring(content, out.getvalue(), "--yes", "--write")
    before = log_files(content)
    second = bring(content, out.getvalue(), "--yes", "--write")

    assert {first.exit_code, second.exit_code} <= {0, 1}
    assert load(content).errors == ()
    assert imported(content)
    assert ": 0 to add" in second.output
    assert log_files(content) == before
