"""Papers by name and by their sides: the outside table, and what is read back of a page."""

from fractions import Fraction

import pytest

from maker_site.paper.card import card_document
from maker_site.paper.sizes import sheet_size
from maker_site.paper.typesetting import Typesetter
from maker_site.records.problems import NotReadable
from tests.checks import check
from tests.paper.read_back import page_sizes

NAMED = {
    "A3": "paper-01",
    "A4": "paper-02",
    "A5": "paper-03",
    "A6": "paper-04",
    "Letter": "paper-06",
    "Legal": "paper-07",
    "Tabloid": "paper-08",
    "13x19": "paper-09",
    "4x6": "paper-10",
}


def sides_of(row: str) -> tuple[Fraction, Fraction]:
    found = check(row)
    unit = Fraction("25.4") if found.unit == "in" else Fraction(1)
    width, height = (Fraction(each) * unit for each in found.expected.split(" x "))
    return width, height


@pytest.mark.parametrize("name", NAMED)
def test_a_named_paper_has_the_sides_of_its_standard(name: str, setting: Typesetter) -> None:
    size = sheet_size(name)
    assert (size.width, size.height) == sides_of(NAMED[name])
    paper = setting.set(card_document([], size, "Empty", ("en", "GB")))
    # An empty book has one bare page. paper-18: read back within a hundredth of a millimetre.
    ((width, height),) = page_sizes(paper.pdf)
    tolerance = float(check("paper-18").tolerance)
    assert width == pytest.approx(float(size.width), abs=tolerance)
    assert height == pytest.approx(float(size.height), abs=tolerance)


def test_sides_are_read_in_the_unit_written_else_the_shops() -> None:
    assert sheet_size("329x483").width == 329
    assert sheet_size("13 x 19 in", "mm").width == Fraction("330.2")
    assert sheet_size("8 x 10", "in").height == 254
    assert sheet_size("329 x 483 mm").name == "329 × 483 mm"


@pytest.mark.parametrize("text", ["A44", "90 mm round", "3000 x 10 mm", "", "x"])
def test_what_is_no_paper_is_refused_with_what_is(text: str) -> None:
    with pytest.raises(NotReadable, match=r"paper"):
        sheet_size(text)
