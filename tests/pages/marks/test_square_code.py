"""A square code is the one that segno makes, which tries the masks by itself."""

from collections import Counter

import pytest
import segno

from maker_site.pages.marks import square_code

PAGES = tuple(f"https://workshop.example/{number * number}.html" for number in range(90))


def by_segno(text: str) -> segno.QRCode:
    return segno.make_qr(text, error="m")


def drawn_by_segno(text: str) -> str:
    return str(by_segno(text).svg_inline(border=4, scale=4, omitsize=True, svgclass="square-code"))


@pytest.mark.parametrize("letter", ["1", "A", "a", "é"])
def test_any_text_is_coded_as_segno_codes_it(letter: str) -> None:
    texts = [letter * length for length in range(1, 120, 3)]  # versions 1 to 6, and larger ones
    assert [square_code(text) for text in texts] == [drawn_by_segno(text) for text in texts]


def test_every_mask_is_chosen_where_segno_chooses_it() -> None:
    assert Counter(by_segno(text).mask for text in PAGES).keys() == set(range(8))
    assert [square_code(text) for text in PAGES] == [drawn_by_segno(text) for text in PAGES]
