"""On every screen a page lies still, keeps within the screen, and says which language it is in."""

from pathlib import Path

import pytest

from .fakes import write_page
from .kinds import CARDS, KINDS, Kind, each, page_of
from .layout import THUMB_PX, shifts, sideways, small_targets, without_a_place
from .looks import Lookout
from .visits import DESK, PHONE, SMALL_PHONE, TABLET, read_to_the_end, visit

pytestmark = pytest.mark.browser

# Each with the screen that the page is opened on before it takes this width.
SCREENS = ((SMALL_PHONE, PHONE), (PHONE, PHONE), (TABLET, PHONE), (DESK, DESK))


@pytest.mark.parametrize(
    "body",
    [
        '<div style="width: 500px">Slate</div>',
        '<table><tr><td style="white-space: nowrap">' + "slate coaster " * 12 + "</td></tr></table>",
        '<style>html, body { overflow-x: hidden }</style><div style="width: 500px">Slate</div>',
    ],
)
def test_a_page_wider_than_the_screen_is_noticed(browser, tmp_path, body):
    with visit(browser, write_page(tmp_path, body), screen=PHONE) as seen:
        assert sideways(seen.page)


def test_a_wide_table_in_a_scrolling_box_is_allowed(browser, tmp_path):
    body = '<div style="overflow-x: auto"><div style="width: 900px">Slate</div></div>'
    with visit(browser, write_page(tmp_path, body), screen=PHONE) as seen:
        assert sideways(seen.page) == []


@pytest.mark.parametrize(
    "body",
    [
        '<img src="slate.png" alt="Slate"><p>Press face down.</p>',
        "<p id=p>Face down.</p><script>setTimeout(() => { p.style.marginTop = '90px' }, 60)</script>",
    ],
)
def test_a_jump_is_noticed(browser, tmp_path, body):
    page = write_page(tmp_path, body)
    with visit(browser, page, screen=PHONE, slow_pictures=True) as seen:
        seen.page.wait_for_timeout(100)
        read_to_the_end(seen.page)
        assert shifts(seen.page)


def test_a_picture_whose_place_is_kept_does_not_jump(browser, tmp_path):
    page = write_page(tmp_path, '<img src="slate.png" alt="Slate" width="300" height="200"><p>Press face down.</p>')
    with visit(browser, page, screen=PHONE, slow_pictures=True) as seen:
        read_to_the_end(seen.page)
        assert shifts(seen.page) == []
        assert without_a_place(seen.page) == []


def test_a_picture_that_keeps_no_place_is_noticed_even_far_down(browser, tmp_path):
    body = '<div style="height: 9000px"></div><img src="slate.png" alt="Slate" loading="lazy" width="300">'
    with visit(browser, write_page(tmp_path, body)) as seen:
        assert without_a_place(seen.page)


def test_a_small_button_is_noticed_and_a_big_label_counts(browser, tmp_path):
    body = """
        <button style="width: 200px; height: 40px">Start</button>
        <button style="width: 48px; height: 48px">Stop</button>
        <label style="display: block; line-height: 48px"><input type="checkbox"> Tape the transfer</label>
        <a href="#top" style="position: absolute; left: -999px">Skip</a>
    """
    with visit(browser, write_page(tmp_path, body), screen=PHONE) as seen:
        assert [found.split(":")[0] for found in small_targets(seen.page, THUMB_PX)] == ["200.0 x 40.0 px"]


@pytest.mark.parametrize("opened_on", [PHONE, DESK], ids=lambda screen: screen.name)
@each(KINDS)
def test_a_page_lies_still(lookout: Lookout, kind: Kind, opened_on):
    look = lookout.at(kind, opened_on)
    assert look.shifts == []
    assert look.without_a_place == []


@pytest.mark.parametrize(("screen", "opened_on"), SCREENS, ids=lambda screen: screen.name)
@each(KINDS)
def test_a_page_keeps_within_the_screen(lookout: Lookout, kind: Kind, screen, opened_on):
    lie = lookout.at(kind, opened_on).lies[screen.name]
    assert lie.sideways == []
    assert lie.width == screen.width


@pytest.mark.parametrize("screen", [SMALL_PHONE, PHONE], ids=lambda screen: screen.name)
@each(CARDS)
def test_everything_on_the_card_can_be_hit_with_a_thumb(lookout: Lookout, kind: Kind, screen):
    assert lookout.at(kind, PHONE).lies[screen.name].too_small_for_a_thumb == []


@each(KINDS)
def test_a_page_says_which_language_it_is_in(demo_site: Path, kind: Kind):
    # The demo's shop.yaml says `locale: en_GB`; BCP 47 (RFC 5646) writes that with a hyphen.
    assert '<html lang="en-GB"' in page_of(kind, demo_site).read_text(encoding="utf-8")
