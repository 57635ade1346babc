"""With scripts switched off every page still says all that it has to say."""

from pathlib import Path

import pytest

from .fakes import write_page
from .kinds import CARDS, KINDS, Kind, each, page_of
from .looks import Lookout
from .visits import PHONE, visit

pytestmark = pytest.mark.browser

CONTENT = Path(__file__).resolve().parents[2] / "content"


def links_seen(page, part: str) -> set[str]:
    """Give the last parts of the links that can be seen and whose address holds this part."""
    links = page.locator(f'a[href*="{part}"]:visible')
    return {
        str(href).rpartition("/")[2].partition("#")[0] for href in links.evaluate_all("all => all.map(a => a.href)")
    }


def ids(folder: str) -> set[str]:
    """Give the ids of the demo's records of one kind."""
    return {
        found.name.removesuffix(".yaml") for found in (CONTENT / folder).iterdir() if not found.name.startswith(".")
    }


def test_what_only_a_script_shows_is_not_seen(browser, tmp_path):
    body = """
        <a href="projects/one.html">One</a> <a href="projects/two.html" hidden>Two</a>
        <script>document.write('<a href="projects/three.html">Three</a>')</script>
    """
    with visit(browser, write_page(tmp_path, body), scripts=False) as seen:
        assert links_seen(seen.page, "projects/") == {"one.html"}


def test_the_catalogue_lists_every_project(browser, demo_site: Path):
    (kind,) = (kind for kind in KINDS if kind.name == "catalogue")
    with visit(browser, page_of(kind, demo_site), scripts=False) as seen:
        assert links_seen(seen.page, "projects/") >= {f"{project}.html" for project in ids("projects")}


def test_the_settings_lead_to_every_blank(browser, demo_site: Path):
    found = set()
    for page in sorted((demo_site / "workshop" / "settings").glob("*.html")):
        with visit(browser, page, scripts=False) as seen:
            found |= links_seen(seen.page, "blanks/")
    assert found >= {f"{blank}.html" for blank in ids("blanks")}


@each(kind for kind in KINDS if kind.name.startswith("settings"))
def test_the_settings_can_be_read(browser, demo_site: Path, kind: Kind):
    with visit(browser, page_of(kind, demo_site), scripts=False) as seen:
        cells = seen.page.locator("main :is(td, .tried-set):visible").all_inner_texts()
        assert any("°C" in cell for cell in cells)
        assert any("°F" in cell for cell in cells)


@each(KINDS)
def test_no_word_and_no_picture_is_lost(lookout: Lookout, kind: Kind):
    with_scripts = lookout.at(kind, PHONE)
    words, pictures = lookout.without_scripts(kind)
    assert with_scripts.words - words == set()
    assert with_scripts.pictures == pictures


@each(CARDS)
def test_the_card_still_has_its_figures_its_stack_and_its_cautions(browser, demo_site: Path, kind: Kind):
    with visit(browser, page_of(kind, demo_site), screen=PHONE, scripts=False) as seen:
        words = seen.page.inner_text("main")
        assert "°C" in words
        assert "°F" in words
        assert seen.page.locator("main svg:visible").count() >= 2, "the stack and the square code"
        # Heat is a danger on every card (burns: the press and the piece).
        assert "hot" in words.lower()
