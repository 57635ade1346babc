"""axe-core finds no broken rule on any kind of page, light and dark, on a phone and at a desk."""

import pytest

from .axe import COLOUR_RULES, violations
from .fakes import write_page
from .kinds import KINDS, Kind, each
from .looks import Lookout
from .visits import DESK, PHONE, visit

pytestmark = [pytest.mark.browser, pytest.mark.judge]


@pytest.mark.parametrize(
    ("body", "broken_rule"),
    [
        ('<img src="slate.png" width="300" height="200">', "image-alt"),
        ('<p style="color: #999; background: #fff">Press face down.</p>', "color-contrast"),
        ("<h4>Four</h4>", "heading-order"),
        ("<input>", "label"),
    ],
)
def test_the_checker_finds_a_broken_rule(browser, axe_source, tmp_path, body, broken_rule):
    with visit(browser, write_page(tmp_path, body)) as seen:
        assert [found.split()[0] for found in violations(seen.page, axe_source)] == [broken_rule]


def test_the_checker_sees_the_dark_page_when_it_is_dark(browser, axe_source, tmp_path):
    page = write_page(tmp_path, '<p style="color: #1f1d1a">Press face down.</p>')
    with visit(browser, page) as seen:
        assert violations(seen.page, axe_source) == []
        seen.page.emulate_media(color_scheme="dark")
        found_in_dark = violations(seen.page, axe_source, COLOUR_RULES)
        assert [found.split()[0] for found in found_in_dark] == ["color-contrast"]


@pytest.mark.parametrize("screen", [PHONE, DESK], ids=lambda screen: screen.name)
@each(KINDS)
def test_no_rule_is_broken_in_light_or_dark(lookout: Lookout, axe_source, kind: Kind, screen):
    look = lookout.at(kind, screen)
    assert look.violations == {"light": [], "dark": []}
    assert look.backgrounds["light"] != look.backgrounds["dark"], "the page is the same in light and in dark"
