"""The outline of a blank of a shape of its own."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from maker_site.records.outline import outline
from maker_site.records.problems import NotReadable


@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("M 10 0 L 90 0 L 100 50 L 0 50 Z", "M 10 0 L 90 0 L 100 50 L 0 50 Z"),
        ("m1.5,2-3,4z", "m 1.5 2 -3 4 z"),
        ("M0 0h10v-.5H2V3", "M 0 0 h 10 v -.5 H 2 V 3"),
        (
            "M0 0C1 2 3 4 5 6S1 2 3 4Q1 2 3 4T5 6A5 5 0 0 1 9 9Z",
            "M 0 0 C 1 2 3 4 5 6 S 1 2 3 4 Q 1 2 3 4 T 5 6 A 5 5 0 0 1 9 9 Z",
        ),
    ],
)
def test_a_path_is_read(typed: str, read: str):
    assert outline(typed) == read
    assert outline(read) == read


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("", "begins with M"),
        ("L 1 2", "begins with M"),
        ("M 1", "M takes 2 figures in an outline, and 1 stand after it"),
        ("M 1 2 L", "none stands after it"),
        ("M 1 2 Z 3", "Z takes 0 figures"),
        ("M 1 2 B 3", "“B” is no part of an outline; its letters are M L H V"),
        ('M 1 2"/><script>', "is no part of an outline"),
        ("M 1 2 url(#a)", "is no part of an outline"),
        ("M " + "1 2 " * 3000, "letters, and 8000 are read"),
    ],
)
def test_anything_else_is_refused_in_words(typed: str, words: str):
    with pytest.raises(NotReadable, match=words.replace("(", r"\(")):
        outline(typed)


@given(st.text(alphabet="MLHVCSQTAZmz0123456789.,- eE<>&\"'", max_size=40))
def test_what_is_read_holds_nothing_but_letters_and_figures(typed: str):
    try:
        read = outline(typed)
    except NotReadable:
        return
    assert set(read) <= set("MLHVCSQTAZmlhvcsqtaz0123456789.+- ")
