"""Which pictures a write-up shows, and how soon that is known."""

import time

import pytest

from maker_site.records.pictures_in_text import pictures_in_text


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("![it](photos/a.jpg)", [(1, "photos/a.jpg")]),
        ("one\n\n- ![](a.jpg) and ![b](b.jpg 'B')", [(3, "a.jpg"), (3, "b.jpg")]),
        ("![it](photos/a%20b.jpg)", [(1, "photos/a b.jpg")]),
        ("![it](<photos/a b.jpg> \"T\")", [(1, "photos/a b.jpg")]),
        ("![it](photos/a(1).jpg)", [(1, "photos/a(1).jpg")]),
        ("[![it](a.jpg)](https://example.org)", [(1, "a.jpg")]),
        ("![it](HTTPS://example.org/a.jpg) ![it](data:image/gif;base64,R0)", []),
        ("[a link](a.jpg) and ! [no](b.jpg)", []),
        ("![it]()", []),
        ("![it](a.jpg", []),
        ("x\r\n![it](a.jpg)\r\n", [(2, "a.jpg")]),
    ],
)  # fmt: skip
def test_pictures_are_found_with_their_lines(text, found):
    assert list(pictures_in_text(text)) == found


@pytest.mark.parametrize("part", ["![", "![](", "![](a", "![](<", "![](a ", "![](a(", "![]( ", "!"])
def test_a_long_line_is_read_at_once(part):
    started = time.process_time()
    assert list(pictures_in_text(part * 20_000)) == []
    assert time.process_time() - started < 2
