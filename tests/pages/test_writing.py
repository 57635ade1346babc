"""Write-ups to HTML: what a maker writes stands, what could hijack a page does not pass."""

import re

import pytest
from markupsafe import Markup

from maker_site.pages.parts import Picture, Source
from maker_site.pages.picture_html import figure_html
from maker_site.pages.writing import written

PICTURE = Picture(
    "A mug",
    "From the front",
    640,
    480,
    (Source("pictures/a-480.avif", 480),),
    "image/avif",
    Source("pictures/a-480.jpg", 480),
)


def html_of(text: str, pictures: dict[str, Picture] | None = None) -> str:
    found = pictures or {}
    return str(written(text, found.get, lambda picture: figure_html(picture, "tutorials/mug.html"))[0])


def test_headings_begin_below_the_pages_own() -> None:
    assert "<h2>Press</h2>" in html_of("# Press\n\nText")
    assert "<h1" not in html_of("# One\n\n## Two")


def test_tables_footnotes_and_lists_stand() -> None:
    shown = html_of("| a | b |\n|---|---|\n| 1 | 2 |\n\nText[^1].\n\n[^1]: The note.\n\n1. one\n2. two\n")

    for expected in ("<table>", "<td>1</td>", "The note.", "<ol>"):
        assert expected in shown


def test_a_picture_is_shown_in_its_sizes_with_its_own_words() -> None:
    shown = html_of("![The mug, front](photos/front.jpg)", {"photos/front.jpg": PICTURE})

    assert "<figure" in shown
    assert 'alt="The mug, front"' in shown
    assert 'src="../pictures/a-480.jpg"' in shown
    assert 'width="640" height="480"' in shown
    assert "<p><figure" not in shown


def test_a_figure_of_the_makers_own_keeps_its_caption_and_is_one() -> None:
    own = '<figure><img src="photos/a.jpg" alt="A mug"><figcaption>Two <b>coats</b></figcaption></figure>'
    shown = html_of(own, {"photos/a.jpg": PICTURE})
    assert shown.count("<figure") == shown.count("<figcaption>") == 1
    assert "<figcaption>Two" in shown
    assert "From the front" not in shown


def test_a_caption_heads_a_table() -> None:
    table = "<table><caption>Times</caption><tr><th scope=row>slate</th><td>5:00</td></tr></table>"
    assert "<caption>Times</caption>" in html_of(table)


@pytest.mark.parametrize(
    "text", ["Look ![A mug](photos/a.jpg) here", "## ![A mug](photos/a.jpg)", "[![A](photos/a.jpg)](b.html)"]
)
def test_a_picture_among_words_is_no_figure(text: str) -> None:
    # HTML Living Standard: a paragraph and a heading hold phrasing content alone.
    shown = html_of(text, {"photos/a.jpg": PICTURE})
    assert "<picture>" in shown
    assert "<figure" not in shown


def test_a_picture_that_may_not_be_shown_leaves_nothing_behind() -> None:
    shown = html_of("Before ![secret words](photos/private.jpg) after", {})

    assert "secret words" not in shown
    assert "private.jpg" not in shown


def test_pictures_that_were_shown_are_told() -> None:
    _, shown = written(
        "![a](photos/a.jpg) ![b](photos/b.jpg)", {"photos/a.jpg": PICTURE}.get, lambda _: Markup("<i></i>")
    )
    assert shown == ("photos/a.jpg",)


# Forms of the kind listed in the OWASP XSS Filter Evasion Cheat Sheet (from memory), written for this test.
HOSTILE = [
    "<script>alert(1)</script>",
    "<SCRIPT SRC=//x.example/x.js></SCRIPT>",
    "<img src=x onerror=alert(1)>",
    "<svg onload=alert(1)><a xlink:href='javascript:alert(1)'>x</a></svg>",
    "[x](javascript:alert(1))",
    "[x](  JaVaScRiPt:alert(1))",
    "[x](java&#115;cript:alert(1))",
    "[x](data:text/html;base64,PHNjcmlwdD4=)",
    "<a href='vbscript:x'>x</a>",
    "<iframe src='https://x.example'></iframe>",
    "<object data=x></object><embed src=x>",
    "<style>body{display:none}</style>",
    "<p style='position:fixed;inset:0'>x</p>",
    "<form action=https://x.example><input name=a><button>go</button></form>",
    "<meta http-equiv=refresh content='0;url=https://x.example'>",
    "<base href=https://x.example>",
    "<link rel=stylesheet href=https://x.example/a.css>",
    "<!-- a comment with a secret -->",
    "</div></main></body><h1>taken over</h1>",
    "<math><mtext><table><mglyph><style><img src=x onerror=alert(1)>",
    '<img src="x` `<script>alert(1)</script>"` `>',
    "<details open ontoggle=alert(1)>x</details>",
    "{: onclick=alert(1) }\n\ntext {: onmouseover=alert(1) style=color:red }",
    "![x](x.jpg){: onerror=alert(1) }",
]


@pytest.mark.parametrize("hostile", HOSTILE)
def test_nothing_hostile_passes(hostile: str) -> None:
    shown = html_of(hostile)

    assert not re.search(r"<\s*(script|style|iframe|object|embed|form|meta|base|link|svg|math|h1|body)\b", shown, re.I)
    for tag in re.findall(r"<[^>]+>", shown):
        assert not re.search(r"\son\w+\s*=|style\s*=|(?:javascript|vbscript|data)\s*:", tag, re.I), tag
    assert "a comment with a secret" not in shown


def test_broken_nesting_is_closed_inside() -> None:
    shown = html_of("<div><b>open")
    assert shown.count("<div>") == shown.count("</div>")
