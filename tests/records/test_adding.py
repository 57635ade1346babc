"""Adding: a row in the file's own form and nothing else changed; headings, dates and rows of other tables."""

import csv
import io
from datetime import date
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from maker_site.cli.columns import COLUMN_HELP
from maker_site.records import load
from maker_site.records.adding import (
    HEADING,
    KINDS,
    NotAdded,
    Order,
    add_rows,
    already_there,
    clashes,
    create_file,
    guess,
    last_used,
    meaning,
    order_of,
    problems_in_answers,
    read_bench,
    record_text,
)
from maker_site.records.adding.dates import any_date
from maker_site.records.adding.log_text import LogForm, addition, form_of, harmless
from maker_site.records.problems import NotReadable
from maker_site.records.read_log import COLUMNS, NEEDED, read_log
from maker_site.records.shop import Units

NEEDED_HEADING = "date,blank,press,temperature,time,pressed,good"
OLD = "2026-04-18,coaster,clam,200 C,5 min,4,3"
ROW = {
    "date": "2026-05-02", "blank": "coaster", "press": "clam", "temperature": "195,5 C", "time": "5:00", "pressed": "6",
    "good": "6",
}  # fmt: skip


def test_every_column_of_the_log_has_a_place_a_question_and_an_option() -> None:
    assert sorted(HEADING) == sorted(COLUMNS) == sorted(COLUMN_HELP)
    assert set(NEEDED) <= set(HEADING)


FORMS = {
    "commas": NEEDED_HEADING + "\n" + OLD + "\n",
    "semicolons, Windows": "date;blank;press;temperature;time;pressed;good\r\n" + OLD.replace(",", ";") + "\r\n",
    "tabs": "date\tblank\tpress\ttemperature\ttime\tpressed\tgood\n" + OLD.replace(",", "\t") + "\n",
    "byte order mark": "\ufeff" + NEEDED_HEADING + "\r\n" + OLD + "\r\n",
    "no last line end": NEEDED_HEADING + "\n" + OLD,
    "no last line end, Windows": NEEDED_HEADING + "\r\n" + OLD,
    "heading alone": NEEDED_HEADING,
    "every cell quoted": '"' + NEEDED_HEADING.replace(",", '","') + '"\n"' + OLD.replace(",", '","') + '"\n',
    "another order": "good,pressed,time,temperature,press,blank,date\n3,4,5 min,200 C,clam,coaster,2026-04-18\n",
    "loose spelling": "Date , BLANK,Press,Temperature,Time,Pressed,Good,\n" + OLD + ",\n",
    "empty": "",
    "empty lines": "\n\n",
}


@pytest.mark.parametrize("text", FORMS.values(), ids=FORMS.keys())
def test_a_row_goes_to_the_end_in_the_files_own_form(workshop, text: str) -> None:
    root = workshop({"press-log/2026.csv": text})
    before = (root / "press-log/2026.csv").read_bytes()

    added = add_rows(root, "2026", [ROW])

    after = (root / "press-log/2026.csv").read_bytes()
    assert after.startswith(before)
    assert (b"\r\n" in after) == (b"\r\n" in before) or not before
    pressings, problems = read_log(after.decode("utf-8-sig"), "log", Units())
    assert problems == []
    assert pressings[-1].temperature.celsius == Fraction("195.5")
    assert (pressings[-1].pressed, pressings[-1].good) == (6, 6)
    assert len(pressings) == (2 if OLD[:10] in text else 1)
    assert (added.file, added.line) == ("press-log/2026.csv", pressings[-1].origin.line(()))


def test_a_quoted_file_stays_quoted_and_a_line_end_is_never_mixed() -> None:
    quoted_all = FORMS["every cell quoted"].replace("\n", "\r\n")

    added = addition(form_of(quoted_all.encode()), [ROW])

    assert added == b'"2026-05-02","coaster","clam","195,5 C","5:00","6","6"\r\n'


def test_a_spreadsheets_unicode_text_gets_its_row_in_the_same_letters(workshop) -> None:
    text = NEEDED_HEADING.replace(",", "\t") + "\r\n"
    root = workshop({"press-log/2026.csv": text.encode("utf-16")})

    add_rows(root, "2026", [ROW])

    whole = (root / "press-log/2026.csv").read_bytes().decode("utf-16")
    assert whole.split("\r\n")[1].split("\t")[3] == "195,5 C"


def test_a_value_without_a_column_starts_the_next_file_and_leaves_the_heading(workshop) -> None:
    root = workshop()
    before = (root / "press-log/2026.csv").read_bytes()

    first = add_rows(root, "2026", [{**ROW, "note": "slid, on opening", "face": "print up"}])
    second = add_rows(root, "2026", [{**ROW, "note": "again"}])

    assert (root / "press-log/2026.csv").read_bytes() == before
    assert (first.file, first.line, dict(first.no_place)) == (
        "press-log/2026-2.csv", 2, {"press-log/2026.csv": ("face", "note")},
    )  # fmt: skip
    assert (second.file, second.line) == ("press-log/2026-2.csv", 3)
    notes = [row.note for row in load(root).workshop.pressings]
    assert notes == [None, "slid, on opening", "again"]


def test_a_new_years_file_opens_like_the_last_one(workshop) -> None:
    root = workshop({"press-log/2026.csv": FORMS["semicolons, Windows"]})

    add_rows(root, "2027", [{**ROW, "date": "2027-01-02"}])

    lines = (root / "press-log/2027.csv").read_bytes().split(b"\r\n")
    assert lines[0] == ";".join(HEADING).encode()
    assert lines[1].startswith(b"2027-01-02;;coaster;;clam;;195,5 C;5:00;")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("date,blank,colour\n", "“colour” is not a column of the press log"),
        ('date,"blank\n', "quotation mark that is not closed"),
        (NEEDED_HEADING + "\n" + OLD + '\n"open\n', "quotation mark that is not closed"),
        (b"date\xff\n", "not UTF-8"),
    ],
)
def test_a_file_whose_end_is_not_sure_is_left_alone(workshop, text: str | bytes, said: str) -> None:
    root = workshop({"press-log/2026.csv": text})
    before = (root / "press-log/2026.csv").read_bytes()

    with pytest.raises(NotAdded, match=said):
        add_rows(root, "2026", [ROW])

    assert (root / "press-log/2026.csv").read_bytes() == before


@pytest.mark.parametrize("what", ["the file", "the folder", "a link to nowhere"])
def test_a_link_out_of_the_folder_is_never_followed(workshop, tmp_path, what: str) -> None:
    root = workshop({"press-log/2026.csv": None})
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "2026.csv").write_text(NEEDED_HEADING + "\n")
    if what == "the folder":
        (root / "press-log").symlink_to(outside)
    else:
        (root / "press-log").mkdir()
        target = outside / ("2026.csv" if what == "the file" else "new.csv")
        (root / "press-log/2026.csv").symlink_to(target)

    with pytest.raises(NotAdded, match="link to a"):
        add_rows(root, "2026", [ROW])

    assert [each.name for each in outside.iterdir()] == ["2026.csv"]
    assert (outside / "2026.csv").read_text() == NEEDED_HEADING + "\n"


def test_a_new_file_never_takes_the_place_of_one(workshop) -> None:
    root = workshop()

    with pytest.raises(NotAdded, match=r"blanks/coaster\.yaml is there already"):
        create_file(root, root / "blanks/coaster.yaml", b"gone")

    assert [each.name for each in (root / "blanks").iterdir()] == ["coaster.yaml"]


CELL = st.text(st.characters(codec="utf-8", exclude_categories=["Cs", "Cc"]), min_size=1).map(str.strip).filter(bool)


@given(note=CELL, delimiter=st.sampled_from(",;\t"), line_end=st.sampled_from(["\n", "\r\n"]), quote_all=st.booleans())
def test_any_note_is_read_back_as_it_was(note: str, delimiter: str, line_end: str, *, quote_all: bool) -> None:
    form = LogForm(delimiter=delimiter, line_end=line_end, quote_all=quote_all)

    (row,), problems = read_log(addition(form, [{**ROW, "note": note}]).decode(), "log", Units())

    assert problems == []
    assert row.note == note


@pytest.mark.parametrize("cell", ["=1+1", '=HYPERLINK("x")', "+44 to call", "-- slid", "@here", "-2+3"])
def test_no_cell_is_a_formula_and_none_is_changed_for_the_reader(cell: str) -> None:
    """A cell that begins with = + - @ counts as a formula (from memory, no source); the reader drops the space."""
    (written,) = csv.reader(io.StringIO(addition(LogForm(columns=("note",), headed=True), [{"note": cell}]).decode()))

    assert not written[0].startswith(("=", "+", "-", "@"))
    assert written[0].strip() == cell


@pytest.mark.parametrize("cell", ["-5", "-12,5", "+3.5", "200 C", "a - b", ""])
def test_plain_numbers_and_common_words_keep_their_form(cell: str) -> None:
    assert harmless(cell) == cell


def test_an_answer_gets_the_records_own_sentence_and_the_missing_ones_are_not_called_missing(workshop) -> None:
    bench = read_bench(workshop())

    found = problems_in_answers({"blank": "coster", "temperature": "hot", "pre-press": "x", "defects": "bandng"}, bench)

    said = {problem.field: problem.message for problem in found}
    assert set(said) == {"blank", "temperature", "pre press", "defects 1"}
    assert said["blank"] == "there is no blank “coster”; did you mean “coaster”?"
    assert said["temperature"] == "“hot” is not a temperature; write it like 200 C or 400 F"
    assert problems_in_answers({"blank": "coaster", "pressed": "4"}, bench) == []
    assert problems_in_answers({"pressed": "4", "good": "5"}, bench)[0].message.startswith("5 good of 4 pressed")


def test_an_error_elsewhere_keeps_no_one_from_writing_a_pressing_down(workshop) -> None:
    bench = read_bench(
        workshop({"blanks/coaster.yaml": "name: x\ncolour: red\n", "shop.yaml": "units: {temperature: F}"})
    )

    assert bench.ids("blanks") == ["coaster"]
    assert bench.units.temperature == "F"
    assert problems_in_answers(ROW, bench) == []


def test_the_last_pressing_of_the_same_project_is_offered_first(workshop) -> None:
    log = (
        "date,project,blank,press,temperature,time,pressed,good,stack\n"
        "2026-04-18,harbour,coaster,clam,390 F,5 min,4,3,pad > blank\n"
        "2026-04-20,,coaster,clam,200 C,6 min,4,4,\n"
    )
    pressings = read_bench(workshop({"press-log/2026.csv": log})).workshop.pressings

    assert last_used(pressings, "coaster", "harbour")["temperature"] == "390 F"
    assert last_used(pressings, "coaster", "harbour")["stack"] == "pad > blank"
    assert last_used(pressings, "coaster", None)["time"] == "6 min"
    assert last_used(pressings, "mug", None) == {}


HEADINGS = {
    "Temp (F)": "temperature F", "TEMP °C": "temperature C", "Temperature in Celsius": "temperature C",
    "Temp": "temperature",
    "Secs": "time s", "Time (min)": "time min", "Press time (sec)": "time s", "Minutes": "time min", "Dwell": "time",
    "Qty": "pressed", "OK": "good", "Material": "blank", "Machine": "press", "When": "date", "Comments": "note",
    "What went wrong": "defects", "Pressure (psi)": "pressure psi", "PSI": "pressure psi", "Pre-press": "pre-press",
    "pre_press": "pre-press", "At Once": "at once", "Rejects": "spoiled", "Lot no.": "lot", "°F": "temperature F",
}  # fmt: skip


@pytest.mark.parametrize(("heading", "meant"), HEADINGS.items())
def test_headings_that_makers_write_are_guessed(heading: str, meant: str) -> None:
    assert str(guess(heading)) == meant


@pytest.mark.parametrize("heading", ["Weather", "", "Cost", "Min age", "Customer", "Price (F)"])
def test_a_heading_that_says_nothing_known_is_not_guessed(heading: str) -> None:
    assert guess(heading) is None


def test_minutes_and_seconds_go_together_but_two_temperatures_do_not() -> None:
    assert clashes([guess("Mins"), guess("Secs"), guess("Notes"), guess("Remarks")]) == []
    assert clashes([guess("Temp (F)"), guess("Temp (C)")]) == ["temperature"]
    assert clashes([guess("Time"), guess("Secs")]) == ["time"]


def test_what_the_maker_says_a_heading_means() -> None:
    assert str(meaning("temperature f")) == "temperature F"
    assert meaning("-") is None
    with pytest.raises(NotReadable, match="did you mean “temperature”"):
        meaning("temprature")


@pytest.mark.parametrize(
    ("texts", "order"),
    [
        (["03/04/2023", "18/04/2023"], Order.DMY),
        (["03/04/2023", "04/18/2023"], Order.MDY),
        (["03/04/2023", "05/06/2023"], None),
        (["18/04/2023", "04/18/2023"], None),
        (["04/04/2023", "5.5.23"], Order.DMY),
        (["2023-04-18", "18 Apr 2023"], Order.DMY),
    ],
)
def test_the_whole_column_decides_what_comes_first(texts: list[str], order: Order | None) -> None:
    assert order_of(texts) is order


@pytest.mark.parametrize(
    ("text", "order", "day"),
    [
        ("18/4/2023", Order.DMY, "2023-04-18"),
        ("4/18/23", Order.MDY, "2023-04-18"),
        ("18.04.2023", Order.DMY, "2023-04-18"),
        ("2023/4/8", None, "2023-04-08"),
        ("18 Apr 2023", None, "2023-04-18"),
        ("Sept 3rd, 2023", None, "2023-09-03"),
        ("18-Apr-23", None, "2023-04-18"),
        ("2023-04-18 14:30", None, "2023-04-18"),
        ("Tue 18 April 2023", None, "2023-04-18"),
    ],
)
def test_dates_in_other_forms(text: str, order: Order | None, day: str) -> None:
    assert any_date(text, order) == day


@pytest.mark.parametrize("text", ["31/02/2023", "18 Foo 2023", "last week", "45034", "Ma 3 2023"])
def test_what_is_no_date_is_refused(text: str) -> None:
    with pytest.raises(NotReadable, match="“"):
        any_date(text, Order.DMY)


@given(st.dates(min_value=date(2000, 1, 1), max_value=date(2099, 12, 31)))
def test_a_day_written_in_each_form_is_the_same_day(day) -> None:
    """The forms are the standard library's own."""
    for form, order in (("%d/%m/%Y", Order.DMY), ("%m/%d/%y", Order.MDY), ("%d %B %Y", None), ("%b %d, %Y", None)):
        assert any_date(day.strftime(form), order) == day.isoformat()


def pressings(*rows: str, heading: str = NEEDED_HEADING + ",note") -> list:
    found, problems = read_log("\n".join([heading, *rows]), "log", Units())
    assert problems == []
    return found


def test_equal_rows_are_counted_and_each_is_there_once() -> None:
    log = pressings(OLD + ",")

    assert already_there(pressings(OLD + ",", OLD + ",", OLD.replace("200 C", "392 F") + ","), log) == [
        True,
        False,
        False,
    ]


def test_a_row_that_says_less_is_there_and_one_that_says_more_is_not() -> None:
    assert already_there(pressings(OLD + ","), pressings(OLD + ",slid")) == [True]
    assert already_there(pressings(OLD + ",slid"), pressings(OLD + ",")) == [False]


def test_a_row_equal_altogether_is_matched_before_one_that_says_more() -> None:
    assert already_there(pressings(OLD + ",", OLD + ",slid"), pressings(OLD + ",slid")) == [False, True]


SOME_ROWS = [OLD + ",", OLD + ",slid", OLD + ",held", OLD.replace("4,3", "4,4") + ","]


@given(st.lists(st.sampled_from(SOME_ROWS), max_size=8), st.lists(st.sampled_from(SOME_ROWS[:2]), max_size=4))
def test_added_once_nothing_is_left_to_add(rows: list[str], before: list[str]) -> None:
    log, table = pressings(*before), pressings(*rows)
    new = [row for row, there in zip(table, already_there(table, log), strict=True) if not there]

    assert all(already_there(table, log + new))


def uncommented(text: str) -> list[str]:
    return [
        line.removeprefix("# ") for line in text.splitlines() if line.startswith("# ") and ":" in line.split("#")[1]
    ]


ANSWERS = {
    "blank": {"name": "Slate: the “square” one #2", "substrate": "slate"},
    "press": {"name": "yes"},
    "supply": {"name": "- Tape", "kind": "tape"},
    "project": {"title": "1,200", "blank": "coaster"},
}


@pytest.mark.parametrize("word", KINDS)
def test_a_new_record_is_read_back_with_its_answers(workshop, word: str) -> None:
    kind = KINDS[word]
    root = workshop({kind.file("new"): record_text(kind, ANSWERS[word])})

    findings = load(root)

    assert findings.problems == ()
    record = getattr(findings.workshop, kind.folder)["new"]
    assert {field: getattr(record, field) for field in kind.needed} == ANSWERS[word]


@pytest.mark.parametrize("word", KINDS)
def test_every_line_in_a_comment_can_be_taken_up_alone_and_all_together(workshop, word: str) -> None:
    kind = KINDS[word]
    text = record_text(kind, ANSWERS[word])
    lines = uncommented(text)
    assert len(lines) == sum(bool(line) for line, _ in kind.examples)
    around = (
        {"projects/new/artwork/front.png": b"p", "projects/new/photos/front.jpg": b"p"} if word == "project" else {}
    )
    for taken in [*([line] for line in lines), lines]:
        root = workshop({**around, kind.file("new"): text + "\n".join(taken) + "\n"})

        findings = load(root)

        assert findings.errors == (), taken
        record = getattr(findings.workshop, kind.folder)["new"]
        assert record.model_fields_set > {"id", *kind.needed}


def test_no_field_is_left_out_of_a_new_record() -> None:
    beside = {"id", "folder pictures", "folder photos", "tutorial"}  # not written in the file
    beside |= {"was", "video still"}  # nothing that a first record has yet
    for kind in KINDS.values():
        fields = {info.alias or name for name, info in kind.model.model_fields.items()} - beside
        assert {*kind.needed, *(line.partition(":")[0] for line, _ in kind.examples if line)} == fields
