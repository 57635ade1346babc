"""The picture of a shared link, read from the left or from the right."""

import io

import pytest
from PIL import Image

from maker_site.media.social import Sign, draw, drawn_whole, writable

HATCH = '<svg xmlns="http://www.w3.org/2000/svg" width="260" height="210"><rect width="260" height="210"/></svg>'


def stub_side(sign: Sign) -> str:
    """Where the paper of the stub is seen, beside the black picture."""
    with Image.open(io.BytesIO(draw(sign, None))) as drawn:
        picture = drawn.convert("L")
    left, right = (picture.getpixel((x, 600)) for x in (100, 1100))
    assert isinstance(left, int)
    assert isinstance(right, int)
    return "left" if left > right else "right"


def ink(sign: Sign, box: tuple[int, int, int, int]) -> int:
    """How many dark pixels there are in a part."""
    with Image.open(io.BytesIO(draw(sign, None))) as drawn:
        return sum(drawn.convert("L").crop(box).histogram()[:100])


def test_the_stub_lies_where_a_line_ends() -> None:
    assert stub_side(Sign("social", "Slate", "Shed", HATCH, "en")) == "right"
    assert stub_side(Sign("social", "צפחה", "לבד", HATCH, "he")) == "left"


def test_a_hebrew_title_is_drawn_at_the_right_of_its_stub() -> None:
    sign = Sign("social", "צפחה", "", HATCH, "he")
    assert ink(sign, (250, 160, 380, 240)) > 500  # the stub runs from 32 to 376
    assert ink(sign, (32, 160, 150, 240)) == 0


def test_scripts_that_the_fonts_have_are_written() -> None:
    assert all(writable(text) for text in ("Wall", "Ωμέγα", "Стена", "תַּחְתִּית", "أكواب", "پیاله"))
    assert not any(writable(text) for text in ("壁", "پیالے"))


@pytest.mark.parametrize(("language", "title"), [("en", "A wall of many slates, each with a letter"), ("he", "צפחה")])
def test_a_picture_put_together_of_parts_is_as_one_drawn_whole(language: str, title: str) -> None:
    sign = Sign("social", title, "The Shed", HATCH, language)
    whole = io.BytesIO()
    drawn_whole(sign, None).save(whole, "JPEG", quality=82, progressive=True, optimize=True)
    assert draw(sign, None) == whole.getvalue()
