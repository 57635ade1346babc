"""Paper in a language that is written from right to left: what lies where, and figures in their own order."""

import io
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import pytest
from babel.messages import Catalog
from babel.messages.mofile import write_mo
from click.testing import CliRunner
from PIL import ImageChops

from maker_site.cli import main
from maker_site.language import speech
from maker_site.paper.menu import leaflet
from tests.paper.bench import SHOP, workshop
from tests.paper.read_back import cut, drawn, opened, pictures, word_place

HEBREW = {
    "Cautions": "אזהרות",
    "Cautions.": "אזהרות.",
    "Pressure": "לחץ",
    "medium": "בינוני",
    "{temperature} at the platen": "{temperature} בפלטה",
    "Lead time.": "זמן אספקה.",
    "Stack, bottom to top (the usual one)": "הערימה, מלמטה למעלה",
}


@pytest.fixture(autouse=True)
def hebrew(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """A catalogue with a few words, beside none of the project's own."""
    catalogue = Catalog("he")
    for message, said in HEBREW.items():
        catalogue.add(message, said)
    compiled = io.BytesIO()
    write_mo(compiled, catalogue)
    file = tmp_path / "catalogues/he/LC_MESSAGES/maker-site.mo"
    file.parent.mkdir(parents=True)
    file.write_bytes(compiled.getvalue())
    monkeypatch.setattr(speech, "CATALOGUES", tmp_path / "catalogues")
    speech._catalogue.cache_clear()
    yield
    speech._catalogue.cache_clear()


def printed(folder: Path, what: str, locale: str, *options: str) -> bytes:
    shop = f"{SHOP}locale: {locale}\nlead time: עשרה ימים.\nhow to order: Write to us.\n"
    content = workshop(folder / locale, {"shop.yaml": shop})
    out = folder / f"{locale}.pdf"
    done = CliRunner().invoke(main, ["print", what, "--content", str(content), "--out", str(out), *options])
    assert done.exit_code == 0, done.output
    return out.read_bytes()


def test_transfers_lie_where_they_do_whichever_way_the_words_run(tmp_path: Path) -> None:
    english, hebrew = (printed(tmp_path, "transfer", locale, "harbour") for locale in ("en_GB", "he_IL"))
    assert pictures(hebrew) == pictures(english)
    for place in pictures(english):
        one, other = (cut(drawn(pdf), place) for pdf in (english, hebrew))
        assert ImageChops.difference(one, other).getbbox() is None


def test_a_card_begins_at_the_right_and_its_figures_keep_their_order(tmp_path: Path) -> None:
    pdf = printed(tmp_path, "card", "he_IL", "harbour")
    width = 105  # mm, A6
    assert word_place(pdf, 0, HEBREW["Cautions"])[0] > width / 2
    with opened(pdf) as read:
        text = read[0].get_textpage()
        letters = [(text.get_text_range(at, 1), *text.get_charbox(at)) for at in range(text.count_chars())]
    degree = next(each for each in letters if each[0] == "°" and f"{each[0]}F" in seen_from(letters, each, 2))
    assert seen_from(letters, (degree[0], degree[1] - 45, *degree[2:]), 5) == "392°F"  # 200 °C


def seen_from(
    letters: list[tuple[str, float, float, float, float]], start: tuple[str, float, float, float, float], count: int
) -> str:
    """What is read from left to right on the line of a letter, from its left edge on."""
    line = [each for each in letters if abs(each[4] - start[4]) < 6 and each[1] >= start[1] - 0.1 and each[0].strip()]
    return "".join(each[0] for each in sorted(line, key=lambda each: each[1]))[:count]


def test_a_menu_puts_the_price_left_of_the_name(tmp_path: Path) -> None:
    pdf = printed(tmp_path, "menu", "he_IL")
    assert word_place(pdf, 0, "24.00")[0] < word_place(pdf, 0, "Harbour")[0]


@pytest.mark.parametrize("folds", [1, 2, 3])
def test_a_leaflet_opens_from_the_other_side(folds: int) -> None:
    outside, inside = leaflet(Fraction(297), folds, "rtl")
    assert outside[0].role == "cover"
    assert [each.width for each in outside] == [each.width for each in inside][::-1]
    assert [each.number for each in inside] == list(range(folds + 2, 1, -1))
