"""YAML read as text: no value changes its meaning, every value knows its line, trouble is a sentence."""

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from maker_site.records.meanings import key_of
from maker_site.records.yaml_text import dotted, read_yaml


def read(text):
    return read_yaml(text, "x.yaml")


def problems(text):
    return [(each.line, each.field, each.message) for each in read(text).problems]


@pytest.mark.parametrize(
    "value",
    ["no", "yes", "on", "007", "0x1F", "1e3", "2:30", "12:30:45", "1_000", ".5", "+5", "2026-04-18", "true",
     "NULL", "Null", ".inf", ".nan", "=", "1.0", "12.50", "6.5 %", "11 3/4\" x 5 7/8\"", "it's"],
)  # fmt: skip
def test_plain_value_stays_as_typed(value):
    assert read(f"field: {value}\n").fields == {"field": value}


@pytest.mark.parametrize(
    ("text", "fields"),
    [
        ("", {}),
        ("# only a note\n\n", {}),
        ("a:\n", {}),
        ("a: ~\n", {}),
        ("a: null\n", {}),
        ("a: ''\n", {}),
        ("a: {}\nb: []\n", {}),
        ("a: '~'\n", {"a": "~"}),
        ("---\na: b\n", {"a": "b"}),
        ("a: b\n...\n", {"a": "b"}),
        ("Print_Area: x\nAt-Once: y\n  \nlow  stock: z\n", {"print area": "x", "at once": "y", "low stock": "z"}),
        ("a: |\n  one\n  two\n", {"a": "one\ntwo\n"}),
        ("a: >-\n  one\n  two\n", {"a": "one two"}),
        ("a: [b, {c: d}]\n", {"a": ["b", {"c": "d"}]}),
        ("a: '#5: x'\n", {"a": "#5: x"}),
        ("a: !!str 5\n", {"a": "5"}),
        ("a: !!int 007\n", {"a": "007"}),
        ("a: &x b\nc: *x\n", {"a": "b", "c": "b"}),
        ("a: b\r\nc: d\r\n", {"a": "b", "c": "d"}),
    ],
)
def test_text_is_read(text, fields):
    found = read(text)
    assert (found.fields, found.problems) == (fields, ())


def test_every_value_knows_its_line():
    text = "# note\nname: x\nbought:\n  - {date: 2026-01-01,\n     count: 3}\n  - count: 4\n    paid: 5\n"
    text += "last: |\n  a\n  b\nend: z\n"
    lines = read(text).lines
    assert {dotted(place): line for place, line in lines.items() if place} == {
        "name": 2,
        "bought": 3,
        "bought 1": 4,
        "bought 1: date": 4,
        "bought 1: count": 5,
        "bought 2": 6,
        "bought 2: count": 6,
        "bought 2: paid": 7,
        "last": 8,
        "end": 11,
    }


@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
def test_lines_are_counted_alike_for_all_line_endings(ending):
    lines = read(ending.join(["# note", "a: b", "", "c:", "  - d", "  - e"])).lines
    assert (lines["a",], lines["c",], lines["c", 1]) == (2, 4, 6)


REPEATS = "this repeats another part by an alias (*); write it out instead"


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("a: b\na: c\n", (2, "a", "“a” is written twice, first in line 1; keep one of them")),
        ("a:\na: c\n", (2, "a", "“a” is written twice, first in line 1; keep one of them")),
        (
            "Print Area: b\nx: y\nprint_area: c\n",
            (3, "print area", "“print area” is written twice, first in line 1; keep one of them"),
        ),
        (
            "x:\n  - a: 1\n    a: 2\n",
            (3, "x 1: a", "“a” is written twice, first in line 2; keep one of them"),
        ),
        ("a: &x {b: c}\nd: *x\n", (2, "d", REPEATS)),
        ("a: &x {b: c}\nd:\n  <<: *x\n", (3, "d: <<", REPEATS)),
        ("a: &x [*x]\n", (1, "a 1", REPEATS)),
        ("? [a, b]\n: c\n", (1, "", "a field's name should be plain words")),
        ("- a\n- b\n", (1, "", "the file should hold fields, one a line, like “name: Slate coaster”")),
        ("just text\n", (1, "", "the file should hold fields, one a line, like “name: Slate coaster”")),
        ("a: b\n---\nc: d\n", (2, "", "a second record begins here with “---”; a file holds one")),
        ("é: ü\nx: b\x07c\n", (2, "", "the file holds a character that is not text (code 0x7)")),
        ("a: b\nc: \0\n", (2, "", "the file holds a character that is not text (code 0x0)")),
        (
            "a: !!python/object/apply:os.system ['true']\n",
            (
                1,
                "a",
                "“python/object/apply:os.system” was read as a tag of YAML; a value that begins with “!” wants quotes",
            ),
        ),
        (
            "a: !important read this\n",
            (1, "a", "“!important” was read as a tag of YAML; a value that begins with “!” wants quotes"),
        ),
    ],
)
def test_trouble_is_named_with_its_line(text, found):
    assert problems(text) == [found]


WANTS_QUOTES = "; a value wants quotes where “: ” or “#” is in it or a sign begins it"


@pytest.mark.parametrize(
    ("text", "line", "ending"),
    [
        ("a: b\nnote: Tea: strong\n", 2, f", near “note: Tea: strong”{WANTS_QUOTES}"),
        ("a: b\nnote: *best*\n", 2, f", near “note: *best*”{WANTS_QUOTES}"),
        ("a: b\nnote: @home\n", 2, f", near “note: @home”{WANTS_QUOTES}"),
        ("a: b\nx:\n\t- c\n", 3, "; use spaces, not tabs, at the start of a line"),
        ("a: 'b\n", 2, "found unexpected end of stream"),
        ("a: [b\n", 2, ""),
        ("%FOO", 1, ""),
        ("!x!y a: b\n", 1, ""),
    ],
)
def test_what_is_no_yaml_is_shown(text, line, ending):
    ((found_line, field, message),) = problems(text)
    assert (found_line, field) == (line, "")
    assert message.startswith("the file can't be read as YAML: ")
    assert message.endswith(ending)


def test_a_bomb_of_aliases_does_not_go_off():
    lines = ["a0: &a0 [x, x, x, x, x, x, x, x, x]"]
    lines += [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 60)]
    started = time.process_time()
    found = read("\n".join(lines))
    assert time.process_time() - started < 1
    assert {each.message for each in found.problems} == {REPEATS}


@pytest.mark.parametrize(
    "text",
    ["[" * 100_000, "{a: " * 100_000, "- " * 100_000, "? " * 100_000, "a:\n" + " [" * 500 + "]" * 500, "&" * 100_000,
     "a: " + "x" * 1_000_000, "a" * 1_000_000, "? " + "k" * 1_000_000 + "\n: v"],
    ids=lambda text: repr(text[:8]),
)  # fmt: skip
def test_depth_and_length_end_in_a_sentence(text):
    started = time.process_time()
    found = read(text)
    assert time.process_time() - started < 2
    assert all(len(each.message) < 1000 for each in found.problems)
    assert found.problems or len(str(found.fields)) >= 1_000_000


def test_too_deep_is_named():
    deep = "{a: " * 20 + "b" + "}" * 20
    assert [message for _, _, message in problems(f"x: {deep}")] == ["fields are nested too deep"]


@given(st.one_of(st.text(), st.text(":-[]{}#&*!|>'\"%@`, \n\t\rab~\ufeff?<", max_size=40)))
def test_any_text_is_a_tree_or_problems(text):
    found = read(text)
    assert all(each.file == "x.yaml" and each.message for each in found.problems)
    assert all(0 <= each.line <= text.count("\n") + text.count("\r") + len(text) + 2 for each in found.problems)


LINE = st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Zl", "Zp")), min_size=1).filter(
    lambda text: text.strip() == text and "\ufeff" not in text and "\ufffe" not in text and "\uffff" not in text
)


@given(LINE)
def test_quoted_text_comes_back_as_written(text):
    quoted = text.replace("'", "''")
    assert read(f"a: '{quoted}'\n").fields == {"a": text}


@pytest.mark.parametrize(
    ("written", "key"),
    [("Print Area", "print area"), ("print_area", "print area"), ("pre-press", "pre press"), ("  a  b ", "a b")],
)
def test_key_forms(written, key):
    assert key_of(written) == key


def test_place_is_said_as_a_maker_counts():
    assert dotted(("bought", 1, "count")) == "bought 2: count"
    assert dotted(("occasions", 0)) == "occasions 1"
    assert dotted(()) == ""
