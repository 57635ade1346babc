"""Several words in a row."""

import pytest

from maker_site.language import Language, all_of, listed, speaking

ROW = ("hot", "warm", "cold")


@pytest.mark.parametrize(("count", "written"), [(0, ""), (1, "hot"), (2, "hot and warm"), (3, "hot, warm and cold")])
def test_the_last_of_a_row_is_joined_by_and(count: int, written: str) -> None:
    assert all_of(ROW[:count]) == written


def test_a_list_has_its_parts_side_by_side() -> None:
    assert listed(ROW) == "hot, warm, cold"
    assert listed([]) == ""


@pytest.mark.parametrize(  # CLDR, listPattern
    ("language", "written"),
    [
        (Language("de", "ltr"), "hot, warm und cold"),
        (Language("he", "rtl"), "\u2068hot\u2069, \u2068warm\u2069 ו\u2068cold\u2069"),
    ],
)
def test_another_language_joins_a_row_as_cldr_has_it(language: Language, written: str) -> None:
    with speaking(language):
        assert all_of(ROW) == written
