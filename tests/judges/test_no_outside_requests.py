"""Opened from the disk with no network, a page asks for its own files alone, and nothing goes wrong in it."""

from pathlib import Path

import pytest

from .fakes import write_page
from .kinds import KINDS, Kind, each, page_of
from .looks import Lookout
from .visits import PHONE, read_to_the_end, visit

pytestmark = pytest.mark.browser


def asked_elsewhere(asked: list[str], copy: Path) -> list[str]:
    """List the addresses that are neither a file of this copy nor made within the page."""
    return [address for address in asked if not address.startswith((f"{copy.as_uri()}/", "data:", "blob:"))]


@pytest.mark.parametrize(
    "body",
    [
        '<img src="https://elsewhere.example/a.png" alt="Slate">',
        '<p style="background: url(//elsewhere.example/a.png)">Slate</p>',
        '<script src="https://elsewhere.example/a.js"></script>',
        "<script>fetch('https://elsewhere.example/a.json').catch(() => 0)</script>",
        '<img src="../outside.png" alt="Slate">',
        '<p style="height: 9000px">Far</p><img loading="lazy" src="https://elsewhere.example/a.png" alt="">',
    ],
)
def test_a_request_to_elsewhere_is_noticed(browser, tmp_path, body):
    with visit(browser, write_page(tmp_path / "copy", body)) as seen:
        read_to_the_end(seen.page)
        assert len(asked_elsewhere(seen.asked, tmp_path / "copy")) == 1


@pytest.mark.parametrize(
    "body",
    [
        "<script>throw new Error('no such blank')</script>",
        "<script>console.error('no such blank')</script>",
        '<img src="missing.png" alt="Slate">',
        '<link rel="stylesheet" href="missing.css">',
    ],
)
def test_a_complaint_is_noticed(browser, tmp_path, body):
    with visit(browser, write_page(tmp_path, body)) as seen:
        read_to_the_end(seen.page)
        assert seen.complaints


def test_a_sound_page_asks_for_itself_and_its_picture(browser, tmp_path):
    page = write_page(tmp_path, '<img src="slate.png" alt="Slate">')
    with visit(browser, page) as seen:
        assert seen.asked == [page.as_uri(), (tmp_path / "slate.png").as_uri()]
        assert (asked_elsewhere(seen.asked, tmp_path), seen.complaints) == ([], [])


@each(KINDS)
def test_a_page_asks_for_nothing_but_its_own_files(lookout: Lookout, demo_site: Path, kind: Kind):
    look = lookout.at(kind, PHONE)
    assert page_of(kind, demo_site).as_uri() in look.asked
    assert asked_elsewhere(look.asked, demo_site / kind.copy) == []
    assert look.complaints == []
