"""On paper the press card is one sheet that reads without a colour, and the menu splits no card."""

from pathlib import Path

import pytest

from .fakes import write_page
from .kinds import CARDS, Kind, each, page_of
from .paper import (
    A4,
    A6,
    FOUR_BY_SIX,
    LETTER,
    coloured_share,
    printed,
    split_items,
    text_to_print,
    words_lost,
)
from .visits import visit

pytestmark = pytest.mark.browser

SMALL_PAPERS = (A6, FOUR_BY_SIX)
LARGE_PAPERS = {"A4": A4, "Letter": LETTER}
MENU_ITEM = ".menu-item"
MENUS = (Kind("menu", "workshop", ("menu.html",)), Kind("menu", "public", ("menu.html",)))


@pytest.mark.parametrize("paper", [A4, A6, LETTER, FOUR_BY_SIX])
def test_the_reader_gives_the_size_of_the_paper(browser, tmp_path, paper):
    with visit(browser, write_page(tmp_path, "<p>Press face down.</p>")) as seen:
        (sheet,) = printed(seen.page, paper)
    # PDF lengths are in whole or hundredth points; a point is 0.35 mm.
    assert (sheet.width_mm, sheet.height_mm) == pytest.approx(paper, abs=0.36)
    assert "Press face down." in sheet.text


def test_a_second_sheet_is_noticed(browser, tmp_path):
    with visit(browser, write_page(tmp_path, "<p>Press face down.</p>" * 30)) as seen:
        assert len(printed(seen.page, A6)) > 1


def test_a_word_cut_off_by_the_sheet_is_noticed(browser, tmp_path):
    hidden = '<p style="margin-top: 400px">Hot.</p>'
    body = f'<div style="height: 300px; overflow: hidden"><p>Press face down.</p>{hidden}</div>'
    with visit(browser, write_page(tmp_path, body)) as seen:
        assert words_lost(text_to_print(seen.page), printed(seen.page, A6)) == ["Hot."]


def test_a_colour_is_noticed(browser, tmp_path):
    with visit(browser, write_page(tmp_path, '<p style="color: #b3390b; font-size: 60px">200 C</p>')) as seen:
        assert coloured_share(printed(seen.page, A6)[0]) > 0.01


@pytest.mark.parametrize("paper", LARGE_PAPERS.values(), ids=LARGE_PAPERS)
def test_a_split_item_is_noticed(browser, tmp_path, paper):
    item = '<article class="{}"><h2>Item {}</h2><p style="height: 380px">Slate, four of them.</p></article>'
    whole = "<style>.whole { break-inside: avoid }</style>"
    body = (
        whole + "".join(item.format("torn", n) for n in range(6)) + "".join(item.format("whole", n) for n in range(6))
    )
    with visit(browser, write_page(tmp_path, body)) as seen:
        assert split_items(seen.page, ".torn", paper)
        assert split_items(seen.page, ".whole", paper) == []


def test_a_menu_without_items_is_noticed(browser, tmp_path):
    with (
        visit(browser, write_page(tmp_path, "")) as seen,
        pytest.raises(LookupError, match="the page has no article"),
    ):
        split_items(seen.page, "article", A4)


@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no scripts"])
@each(CARDS)
def test_the_press_card_is_one_black_and_white_sheet_with_every_word_on_it(browser, demo_site: Path, kind, scripts):
    with visit(browser, page_of(kind, demo_site), scripts=scripts) as seen:
        words = text_to_print(seen.page)
        made = {paper: printed(seen.page, paper) for paper in SMALL_PAPERS}
    assert len(words) > 30
    for paper, sheets in made.items():
        assert len(sheets) == 1
        assert (sheets[0].width_mm, sheets[0].height_mm) == pytest.approx(paper, abs=0.36)
        assert words_lost(words, sheets) == []
        assert coloured_share(sheets[0]) == 0


@pytest.mark.parametrize("paper", LARGE_PAPERS.values(), ids=LARGE_PAPERS)
@each(MENUS)
def test_no_card_of_the_menu_is_split_across_sheets(browser, demo_site: Path, kind, paper):
    with visit(browser, page_of(kind, demo_site)) as seen:
        words = text_to_print(seen.page)
        made = printed(seen.page, paper)
        assert (made[0].width_mm, made[0].height_mm) == pytest.approx(paper, abs=0.36)
        assert words_lost(words, made) == []
        assert split_items(seen.page, MENU_ITEM, paper) == []
