"""The square code on the press card is read by another program, and says what the card itself says."""

import io
from pathlib import Path

import pytest
import segno
from PIL import Image, ImageOps

from .codes import addresses_stated, codes_in
from .fakes import write_page
from .kinds import CARDS, each, page_of
from .looks import GROUNDS
from .paper import A6, printed
from .visits import DESK, PHONE, visit

pytestmark = pytest.mark.browser

# A printer's 300 points per inch, a common desk printer's figure, no source.
PRINT_PPI = 300


def fake_code(text: str) -> str:
    return segno.make(text, error="m").svg_inline(scale=3, border=4, dark="black", light="white")


def seen_codes(page) -> list[str]:
    picture = Image.open(io.BytesIO(page.screenshot(full_page=True, animations="disabled")))
    return [code.text for code in codes_in(picture)]


def test_a_code_is_read_and_a_code_of_something_else_is_told_apart(browser, tmp_path):
    page = write_page(tmp_path, fake_code("https://b.example/") + '<a href="https://a.example/">This card</a>')
    with visit(browser, page) as seen:
        assert seen_codes(seen.page) == ["https://b.example/"]
        assert addresses_stated(seen.page) == {"https://a.example/"}


def test_a_code_that_a_plain_phone_can_not_read_is_not_read():
    out = io.BytesIO()
    segno.make("https://b.example/").save(out, kind="png", scale=4)
    picture = Image.open(out)
    assert [code.text for code in codes_in(picture)] == ["https://b.example/"]
    assert codes_in(ImageOps.invert(picture.convert("L"))) == []


@pytest.mark.parametrize("screen", [PHONE, DESK], ids=lambda screen: screen.name)
@each(CARDS)
def test_the_code_on_the_card_says_an_address_that_the_card_states(browser, demo_site: Path, kind, screen):
    with visit(browser, page_of(kind, demo_site), screen=screen) as seen:
        for ground in GROUNDS:
            seen.page.emulate_media(color_scheme=ground)
            (code,) = seen_codes(seen.page)
            assert code in addresses_stated(seen.page), ground


@each(CARDS)
def test_the_printed_code_says_the_same(browser, demo_site: Path, kind):
    with visit(browser, page_of(kind, demo_site)) as seen:
        (code,) = codes_in(printed(seen.page, A6, PRINT_PPI)[0].picture)
        assert code.text in addresses_stated(seen.page)
        assert code.text.endswith(f"cards/{page_of(kind, demo_site).name}")
