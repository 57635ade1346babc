"""Every link and picture of both copies is there, and nothing is loaded from elsewhere."""

from pathlib import Path

import pytest

from .fakes import write_page
from .links import broken, read_page


@pytest.mark.parametrize(
    ("body", "fault"),
    [
        ('<a href="missing.html">Card</a>', "is not there"),
        ('<a href="Page.html">Card</a>', "is not there"),
        ('<img src="missing.png" alt="Slate">', "is not there"),
        ('<img src="slate.png" srcset="slate.png 300w, missing.png 600w" alt="Slate">', "is not there"),
        ('<p style="background: url(missing.png)">Slate</p>', "is not there"),
        ("<style>@import 'missing.css'; p { color: red }</style>", "is not there"),
        ('<svg><use href="#missing"/></svg>', "names a fragment that its page does not have"),
        ('<svg><rect fill="url(#missing)"/></svg>', "names a fragment that its page does not have"),
        ('<a href="#missing">Cautions</a>', "names a fragment that its page does not have"),
        ('<a href="page.html#missing">Cautions</a>', "names a fragment that its page does not have"),
        ('<a href="./">Home</a>', "leads to a folder"),
        ('<a href="">Home</a>', "leads nowhere"),
        ('<a href="/index.html">Home</a>', "is an absolute path"),
        ('<a href="file:///srv/index.html">Home</a>', "has a scheme that no page of ours needs"),
        ('<a href="javascript:alert(1)">Home</a>', "has a scheme that no page of ours needs"),
        ('<a href="../workshop/index.html">Home</a>', "leads out of the copy"),
        ('<script src="https://elsewhere.example/a.js"></script>', "is loaded from elsewhere"),
        ('<link rel="preconnect" href="https://elsewhere.example/">', "is loaded from elsewhere"),
        ('<img src="//elsewhere.example/a.png" alt="Slate">', "is loaded from elsewhere"),
    ],
)
def test_a_fault_is_noticed(tmp_path, body, fault):
    write_page(tmp_path / "public", body)
    write_page(tmp_path / "workshop", "", name="index.html")
    (found,) = broken(tmp_path / "public")
    assert found.startswith("page.html:")
    assert found.endswith(fault)


def test_a_fault_in_a_style_sheet_is_noticed_where_it_stands(tmp_path):
    write_page(tmp_path, "")
    (tmp_path / "theme").mkdir()
    (tmp_path / "theme" / "look.css").write_text("p { color: red }\np { background: url('slate.png') }\n")
    assert broken(tmp_path) == ["theme/look.css:2: style sheet 'slate.png' is not there"]


def test_sound_pointers_pass(tmp_path):
    body = """
        <a href="page.html#here">Here</a> <a id="here" href="deeper/card%20one.html">Card</a>
        <a href="#top">Top</a>
        <a href="https://elsewhere.example/">Supplier</a> <a href="mailto:press@elsewhere.example">Ask</a>
        <img src="data:image/gif;base64,R0lGODlhAQABAAAAACw=" alt="">
        <svg><pattern id="slate"></pattern><rect fill="url(#slate)"/></svg>
    """
    write_page(tmp_path, body, head='<link rel="canonical" href="https://elsewhere.example/">')
    write_page(tmp_path, '<a href="../page.html">Up</a>', name="deeper/card one.html")
    assert broken(tmp_path) == []


def test_the_reader_misses_no_pointer(tmp_path):
    body = '<a href="#a">A</a><img src="slate.png" srcset="b.png 1x, c.png 2x"><use xlink:href="#d"/>'
    page = write_page(tmp_path, body)
    assert [pointer.address for pointer in read_page(page).pointers] == [
        "#a",
        "slate.png",
        "b.png",
        "c.png",
        "#d",
    ]


@pytest.mark.parametrize("copy", ["workshop", "public"])
def test_no_pointer_of_the_demo_is_broken(demo_site: Path, copy):
    assert len(read_page(demo_site / copy / "index.html").pointers) > 20, "hardly a link was read"
    assert broken(demo_site / copy) == []
