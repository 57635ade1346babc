"""The press log out of any spreadsheet: separators, quotes, headings, and the line of every problem."""

import time
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from maker_site.records import Units
from maker_site.records.read_log import COLUMNS, NEEDED, read_log

HEADING = "date,blank,press,temperature,time,pressed,good"
ROW = "2026-04-18,coaster,clam,200 C,5 min,4,3"


def read(text, units=None):
    return read_log(text, "press-log/x.csv", units or Units())


def problems(text):
    return [(each.line, each.field, each.message) for each in read(text)[1]]


def test_smallest_useful_row():
    (row,), found = read(f"{HEADING}\n{ROW}\n")
    assert found == []
    assert (row.date, row.blank, row.press) == (date(2026, 4, 18), "coaster", "clam")
    assert (row.temperature.celsius, row.time.seconds, row.pressed, row.good) == (200, 300, 4, 3)
    assert (row.project, row.method, row.stack, row.defects) == (None, None, (), ())
    assert (row.id, row.origin.file, row.origin.line(("good",))) == ("press-log/x.csv:2", "press-log/x.csv", 2)


def test_full_row_in_any_order():
    text = (
        "note,photo,defects,cool,peel,at once,stack,pre-press,face,pressure,method,lot,project," + HEADING + "\n"
        "fine,photos/a.jpg,ghost; bare edge,Cold  Plate,warm,2,pad > transfer > blank,5 s,blank face down,"
        '"medium, 3 turns",sublimation,A7,harbour,' + ROW + "\n"
    )
    (row,), found = read(text)
    assert found == []
    assert row.defects == ("double image", "bare edge")
    assert row.stack == ("pad", "transfer", "blank")
    assert (row.face, row.cool, row.peel, row.at_once) == ("print up", "cold plate", "warm", 2)
    assert (row.pressure.word, row.pressure.mark, row.pre_press.seconds) == ("medium", "3 turns", 5)
    assert (row.photo, row.lot, row.project, row.note) == ("photos/a.jpg", "A7", "harbour", "fine")


@pytest.mark.parametrize("separator", [",", ";", "\t"])
@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("before", ["", "blank line"])
def test_separators_and_line_endings(separator, ending, before):
    lines = [*([""] if before else []), HEADING, ROW, "", ROW]
    rows, found = read(ending.join(lines).replace(",", separator))
    assert found == []
    assert [row.origin.line(()) for row in rows] == ([3, 5] if before else [2, 4])


def test_decimal_commas_between_semicolons():
    (row,), found = read(f"{HEADING}\n2026-04-18,coaster,clam,200.5 C,7.5 s,4,3".replace(",", ";").replace(".", ","))
    assert found == []
    assert (row.temperature.celsius * 2, row.time.seconds * 2) == (401, 15)


def test_trailing_empty_columns_and_short_rows_are_read():
    rows, found = read(f"{HEADING},note,,,\n{ROW},,,,,,,\n{ROW}\n,,,,\n{ROW},hello\n")
    assert found == []
    assert [row.note for row in rows] == [None, None, "hello"]


def test_headings_are_read_in_any_case_and_hyphenation():
    (row,), found = read(f"{HEADING.upper()},Pre_Press, At-Once \n{ROW},3 s,2\n")
    assert found == []
    assert (row.pre_press.seconds, row.at_once) == (3, 2)


def test_bare_figures_take_the_shops_units():
    text = f"{HEADING},pressure\n2026-04-18,coaster,clam,400,150,4,3,40\n"
    (row,), _ = read(text, Units(temperature="F", pressure="psi"))
    assert (row.temperature.fahrenheit, row.pressure.typed) == (400, "40")
    assert row.pressure.kpa > 275


@pytest.mark.parametrize("text", ["", "\n\n", " \r\n", ",,,\n"])
def test_empty_file_holds_no_pressings(text):
    assert read(text) == ([], [])


def test_heading_alone_holds_no_pressings():
    assert read(HEADING) == ([], [])


def test_lines_are_right_after_a_note_of_several_lines():
    text = f'{HEADING},note\n{ROW},"one\ntwo\n\nfour"\n{ROW.replace("200 C", "hot")},\n'
    rows, found = read(text)
    assert [row.note for row in rows] == ["one\ntwo\n\nfour"]
    assert [(each.line, each.field) for each in found] == [(6, "temperature")]


def test_quotes_inside_a_note():
    (row,), found = read(f'{HEADING},note\n{ROW},"the ""good"" one, again"\n')
    assert found == []
    assert row.note == 'the "good" one, again'


@pytest.mark.parametrize(
    ("heading", "found"),
    [
        (
            f"{HEADING},temprature",
            ("temprature", "“temprature” is not a column of the press log; did you mean “temperature”?"),
        ),
        (
            f"{HEADING},zzz",
            ("zzz", f"“zzz” is not a column of the press log; known are {', '.join(COLUMNS)}"),
        ),
        (f"{HEADING},,note", ("", "a column between others has no heading; name it, or take it out")),
        (f"{HEADING},Good", ("good", "the column “good” is there twice; keep one of them")),
        (
            HEADING.replace(",press,", ","),
            ("press", f"the column “press” is missing; the press log needs {', '.join(NEEDED)}"),
        ),
    ],
)  # fmt: skip
def test_headings_that_are_wrong(heading, found):
    ((line, *rest),) = problems(f"{heading}\n{ROW}\n")
    assert (line, *rest) == (1, *found)


def test_a_rows_own_name_is_not_the_makers_to_give():
    ((line, field, message),) = problems(f"{HEADING},id\n{ROW},7\n")
    assert (line, field) == (1, "id")
    assert message.startswith("“id” is not a column of the press log")


def test_columns_are_those_of_the_notebook():
    known = "date, project, blank, lot, press, method, temperature, time, pressure, face, pre-press, stack, at once, "
    known += "peel, cool, pressed, good, defects, note, photo"
    assert sorted(COLUMNS) == sorted(known.split(", "))
    assert sorted(NEEDED) == sorted(HEADING.split(","))


@pytest.mark.parametrize(
    ("column", "text", "field", "message"),
    [
        ("date", "18/4/2026", "date", "“18/4/2026” is not a date; write year-month-day like 2026-04-18"),
        ("date", "2026-02-30", "date", "“2026-02-30” is not a day of the calendar"),
        ("pressed", "0", "pressed", "0 is too few; write 1 or more"),
        ("pressed", "four", "pressed", "“four” is not a whole number"),
        (
            "pressed",
            "999999999",
            "pressed",
            "“999999999” is more than one row can tell of (99999 at most); correct it",
        ),
        ("good", "5", "good", "5 good of 4 pressed can't be; correct one of the two"),
        ("good", "-1", "good", "“-1” is not a whole number"),
        ("good", "", "good", "“good” is missing; a row of the press log needs it"),
        ("time", "soon", "time", "“soon” is not a time; write it like 150 s, 2:30 or 2 min 30 s"),
        ("peel", "hott", "peel", "“hott” is not a peel; write hot, warm or cold; did you mean “hot”?"),
        ("method", "sublimaton", "method",
         "“sublimaton” is not a method; write sublimation, heat-transfer vinyl or film transfer; "
         "did you mean “sublimation”?"),
        ("face", "sideways", "face",
         "“sideways” is not a way for the print to look; write print up, print down or wrapped"),
        ("photo", "../x.jpg", "photo",
         "“../x.jpg” leaves the folder it should stay in; write a path inside it, like photos/front.jpg"),
    ],
)  # fmt: skip
def test_cells_that_are_wrong(column, text, field, message):
    headings = HEADING.split(",") + ([] if column in HEADING.split(",") else [column])
    cells = [*ROW.split(","), ""][: len(headings)]
    cells[headings.index(column)] = text
    assert problems(",".join(headings) + "\n" + ROW + "\n" + ",".join(cells)) == [(3, field, message)]


def test_unknown_defect_names_the_nearest():
    ((line, field, message),) = problems(f"{HEADING},defects\n{ROW},bare edge; bandng\n")
    assert (line, field) == (2, "defects 2")
    assert message.startswith("“bandng” is not a defect known here (pale all over, ")
    assert message.endswith("; did you mean “banding”?")


def test_all_problems_of_a_row_and_of_all_rows_come_together():
    wrong = "April,coaster,clam,hot,soon,4,3"
    assert [(line, field) for line, field, _ in problems(f"{HEADING}\n{wrong}\n{ROW}\n{wrong}")] == [
        (2, "date"), (2, "temperature"), (2, "time"), (4, "date"), (4, "temperature"), (4, "time"),
    ]  # fmt: skip


def test_more_cells_than_columns():
    assert problems(f"{HEADING}\n{ROW},,and then it\n") == [
        (2, "", "the row has more cells than columns, “and then it” among them; a note with a comma wants quotes")
    ]


@pytest.mark.parametrize("note", ['"open', '"shut"ter'])
def test_quotes_that_do_not_add_up(note):
    text = f'{HEADING},note\n{ROW},"a\nb"\n{ROW},{note}\n{ROW},\n'
    rows, found = read(text)
    assert len(rows) == 1
    ((line, field, message),) = [(each.line, each.field, each.message) for each in found]
    assert (line, field) == (4, "")
    assert message.startswith("the row can't be read as part of a table: ")
    assert message.endswith("; look for a quotation mark that is not closed, and double one inside a cell")


def test_quotes_that_do_not_add_up_in_the_heading():
    ((line, _, message),) = problems('"date,blank\n')
    assert (line, message[:42]) == (1, "the row can't be read as part of a table: ")


@given(st.one_of(st.text(), st.text('date,;\t"\n\r0 \0', max_size=60).map(lambda tail: f"{HEADING}\n{ROW}\n{tail}")))
def test_any_text_is_rows_or_problems(text):
    rows, found = read(text)
    assert all(each.line >= 1 and each.message for each in found)
    assert all(row.good <= row.pressed for row in rows)


@pytest.mark.parametrize("text", ['"' * 100_001, "," * 100_000 + "x", "a" * 1_000_000, f"{HEADING}\n" + "x" * 1_000_000,
                                  f'{HEADING},note\n{ROW},"' + "x" * 200_000],
                         ids=lambda text: repr(text[:8]))  # fmt: skip
def test_huge_cells_are_answered_at_once(text):
    started = time.process_time()
    _, found = read(text)
    assert time.process_time() - started < 1
    assert found
    assert all(len(each.message) < 1000 and len(each.field) < 200 for each in found)


def test_ten_thousand_rows_are_read_in_seconds():
    started = time.process_time()
    rows, _ = read(HEADING + f"\n{ROW}" * 10_000)
    assert len(rows) == 10_000
    assert time.process_time() - started < 5


_CELLS = st.tuples(
    st.sampled_from(("2026-04-18", "2026-04-18", "2026-04-31")),
    st.sampled_from(("coaster", "mug")),
    st.sampled_from(("clam",)),
    st.sampled_from(("200", "400 F")),
    st.sampled_from(("5 min",)),
    st.sampled_from(("1", "2", "")),
    st.sampled_from(("0", "1", "2")),
    st.sampled_from(("", "ghost", "scorched; ghost")),
)


@given(st.lists(_CELLS, max_size=12))
def test_a_row_says_the_same_whatever_rows_are_above_it(rows):
    heading = f"{HEADING},defects"
    lines = [",".join(cells) for cells in rows]
    units = Units(temperature="F")

    together, found = read("\n".join((heading, *lines)), units)

    alone = [read(heading + "\n" * number + line, units) for number, line in enumerate(lines, 1)]
    assert found == [problem for _, problems_there in alone for problem in problems_there]
    assert together == [row for pressings, _ in alone for row in pressings]
    assert [(row.origin.line(()), row.model_fields_set) for row in together] == [
        (row.origin.line(()), row.model_fields_set) for pressings, _ in alone for row in pressings
    ]


def test_good_pieces_are_counted_against_the_pieces_of_their_own_row():
    first = "2026-04-18,coaster,clam,200 C,5 min"
    rows, found = read(f"{HEADING}\n{first},2,2\n{first},1,0\n{first},1,2\n")
    assert [(row.pressed, row.good) for row in rows] == [(2, 2), (1, 0)]
    assert [(each.line, each.field) for each in found] == [(4, "good")]
