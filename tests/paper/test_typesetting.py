"""What every paper has: the records' text as it is, fonts in the file, tags, the same bytes again."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from maker_site.paper.typesetting import Document, PaperProblem, Typesetter, missing_words, typesetter
from tests.paper.read_back import check_file, opened, page_sizes, words

# Everything that means something in the typesetter's own language, were it read as such.
HOSTILE = (
    '#let x = 1; #panic("no") $x^2$ @cite <label> *bold* _low_ `raw` \\ // gone /* gone */ = head - list ~ "q" \'s'
)

TEMPLATE = """
#let data = json(bytes(sys.inputs.data))
#set document(title: data.title, date: none)
#set text(font: ("Libertinus Serif", "DejaVu Sans Mono"), lang: data.language, region: data.region)
#set page(width: 120mm, height: 80mm, margin: 5mm)
= #data.title
#for each in data.texts { par(each) }
"""


@pytest.fixture
def plain(tmp_path: Path) -> Iterator[Typesetter]:
    template = tmp_path / "plain.typ"
    template.write_text(TEMPLATE, encoding="utf-8")
    with typesetter({"plain.typ": template}, None) as made:
        yield made


def document(*texts: str, title: str = "A title") -> Document:
    return Document("plain.typ", title, "en", "GB", {"texts": list(texts)})


def test_text_of_records_is_printed_letter_by_letter_and_never_obeyed(plain: Typesetter) -> None:
    paper = plain.set(document(HOSTILE, title=HOSTILE))
    (page,) = words(paper.pdf)
    assert "".join(page.split()).count("".join(HOSTILE.split())) == 2
    assert paper.missing == ""


def test_hebrew_and_arabic_are_set(plain: Typesetter) -> None:
    paper = plain.set(document("Anna שלום and مرحبا Bert"))
    assert paper.missing == ""
    assert "Anna" in words(paper.pdf)[0]


def test_a_character_that_no_font_has_is_named_and_stood_in_for(plain: Typesetter) -> None:
    paper = plain.set(document("Tea 🎈 for 中文 two"))
    assert paper.missing == "中文🎈"
    assert "Tea □ for □□ two" in words(paper.pdf)[0]
    assert missing_words(paper.missing).startswith("no font has “中” (U+4E2D), “文” (U+6587), “🎈” (U+1F388)")


def test_the_same_input_gives_the_same_bytes(plain: Typesetter) -> None:
    first = plain.set(document("one")).pdf
    plain.set(document("another"))
    assert plain.set(document("one")).pdf == first


def test_title_language_tags_and_standard_are_in_the_file(plain: Typesetter, tmp_path: Path) -> None:
    """ISO 14289-1: Lang, MarkInfo, DisplayDocTitle and the identifier in the metadata."""
    pdf = plain.set(document("words", title="Card of harbour")).pdf
    check_file(pdf, tmp_path)
    with opened(pdf) as read:
        assert read.get_metadata_value("Title") == "Card of harbour"
        assert read.is_tagged()
    packed = b"".join(pdf.split())
    for part in (b"/Lang(en-GB)", b"/DisplayDocTitletrue", b"/Markedtrue", b"pdfuaid:part>1<"):
        assert part in packed, part


def test_no_font_of_the_system_is_used(setting: Typesetter) -> None:
    assert set(setting.families) == {
        "DejaVu Sans Mono",
        "Libertinus Serif",
        "New Computer Modern",
        "New Computer Modern Math",
    }


def test_a_broken_template_is_told_with_its_line(tmp_path: Path) -> None:
    template = tmp_path / "plain.typ"
    template.write_text("#set document(title: [T])\n#nonsense(1)\n", encoding="utf-8")
    with typesetter({"plain.typ": template}, None) as made, pytest.raises(PaperProblem, match=r"plain\.typ:2: unknown"):
        made.set(document("x"))


def test_a_template_that_is_not_there_is_told(plain: Typesetter) -> None:
    with pytest.raises(PaperProblem, match=r"no paper template “other\.typ”"):
        plain.set(Document("other.typ", "T", "en", None, {}))


def test_a_template_reads_nothing_but_what_it_was_given(tmp_path: Path) -> None:
    secret = tmp_path / "secret.txt"
    secret.write_text("secret", encoding="utf-8")
    template = tmp_path / "plain.typ"
    template.write_text(f'#read("{secret}")', encoding="utf-8")
    with typesetter({"plain.typ": template}, None) as made, pytest.raises(PaperProblem):
        made.set(document("x"))


def test_the_page_is_as_large_as_said(plain: Typesetter) -> None:
    ((width, height),) = page_sizes(plain.set(document("x")).pdf)
    assert (width, height) == (pytest.approx(120, abs=0.01), pytest.approx(80, abs=0.01))
