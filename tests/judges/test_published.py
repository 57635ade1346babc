"""What a visitor's browser meets: light pages, a policy that holds from the disk, old addresses, search."""

from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest

from .fakes import write_page
from .kinds import KINDS, MOVED, Kind, page_of
from .visits import PHONE, SHARP_PHONE, read_to_the_end, visit

pytestmark = pytest.mark.browser

PUBLIC = [kind for kind in KINDS if kind.copy == "public"]
MOST_BYTES = 250_000
"""Of the first view of a tutorial on a phone, pictures as they are loaded."""
MOST_OF_A_PICTURE = 100_000
"""Of one picture in a first view."""
POLICY = "default-src 'none'; img-src 'self' data:; style-src 'self'; script-src 'self'; base-uri 'none'"


def weight(asked: list[str]) -> int:
    """Give the bytes of the files that were asked for; from the disk nothing is packed, so a host sends less."""
    files = {Path(unquote(urlsplit(address).path)) for address in asked if address.startswith("file:")}
    return sum(file.stat().st_size for file in files)


def test_a_heavy_page_is_noticed(browser, tmp_path):
    (tmp_path / "heavy.svg").write_text("<svg xmlns='http://www.w3.org/2000/svg'><!--" + "x" * 300_000 + "--></svg>")
    with visit(browser, write_page(tmp_path, '<img src="heavy.svg" alt="x">'), screen=PHONE) as seen:
        assert weight(seen.asked) > MOST_BYTES


@pytest.mark.parametrize(
    "name", ["allotment-tally-coasters", "crust-and-crumb-tote", "heron-river-plate", "plot-holder-mug"]
)
def test_the_first_view_of_a_tutorial_is_light(browser, demo_site: Path, name):
    with visit(browser, demo_site / f"public/tutorials/{name}.html", screen=PHONE) as seen:
        seen.page.wait_for_load_state("networkidle")
        assert 20_000 < weight(seen.asked) < MOST_BYTES


@pytest.mark.parametrize(
    "page", ["index.html", "tutorials/index.html", "on/slate.html", "tutorials/allotment-tally-coasters.html"]
)
def test_the_first_view_is_light_on_a_phone_with_three_dots_to_a_pixel(browser, demo_site: Path, page: str):
    with visit(browser, demo_site / "public" / page, screen=SHARP_PHONE) as seen:
        seen.page.wait_for_load_state("networkidle")
    assert 20_000 < weight(seen.asked) < MOST_BYTES
    pictures = [address for address in seen.asked if "/pictures/" in address]
    assert pictures
    assert max(weight([address]) for address in pictures) < MOST_OF_A_PICTURE


def test_the_policy_keeps_out_what_stands_in_a_page_and_lets_in_the_copys_own_files(browser, tmp_path):
    (tmp_path / "own.js").write_text("document.title = 'own'")
    head = f'<meta http-equiv="Content-Security-Policy" content="{POLICY}"><script src="own.js" defer></script>'
    body = "<script>window.ran = 1</script><img src=x onerror='window.ran = 1' alt=''><p style='color:red'>x</p>"
    with visit(browser, write_page(tmp_path, body, head=head)) as seen:
        seen.page.wait_for_timeout(100)
        assert seen.page.title() == "own"
        assert seen.page.evaluate("() => window.ran") is None
        assert seen.page.evaluate("() => document.images[0].naturalWidth") == 0
        assert len(seen.complaints) >= 3


@pytest.mark.parametrize("kind", KINDS, ids=str)
def test_every_page_states_the_policy_before_it_asks_for_anything(demo_site: Path, kind: Kind):
    text = page_of(kind, demo_site).read_text(encoding="utf-8")
    before = text.partition('http-equiv="Content-Security-Policy" content="default-src \'none\';')
    assert before[1]
    assert not any(each in before[0] for each in ("<link", "<script", "<style", "<img"))
    assert "unsafe-eval" not in text
    assert "script-src 'self' 'unsafe-inline'" not in text


@pytest.mark.parametrize("kind", MOVED, ids=str)
def test_an_old_address_leads_on(browser, demo_site: Path, kind: Kind):
    old = page_of(kind, demo_site)
    with visit(browser, old) as seen:
        seen.page.wait_for_url("**/reading-the-spent-paper.html")
        assert seen.page.inner_text("h1") == "Reading the spent paper"
    with visit(browser, old, scripts=False) as seen:
        seen.page.wait_for_url("**/reading-the-spent-paper.html")


@pytest.mark.parametrize(
    ("words", "first"),
    [
        ("heron", "Heron at first light"),
        ("HERON plate", "Heron at first light"),
        ("tweezers", "Heron at first light"),
        ("herno", "Heron at first light"),
        ("spent paper", "Reading the spent paper"),
        ("slate coast", "Allotment"),
    ],
)
def test_a_word_finds_its_page_from_the_disk(browser, demo_site: Path, words, first):
    with visit(browser, demo_site / "public/search.html", screen=PHONE) as seen:
        seen.page.fill("#words", words)
        assert seen.page.locator("#results h3").first.inner_text().startswith(first)
        seen.page.locator("#results h3 a").first.click()
        seen.page.wait_for_load_state()
        assert seen.complaints == []


def test_what_nobody_wrote_finds_nothing_and_says_so(browser, demo_site: Path):
    with visit(browser, demo_site / "public/search.html") as seen:
        seen.page.fill("#words", "xylophone")
        assert seen.page.inner_text("#counted").startswith("Nothing found")
        read_to_the_end(seen.page)


def test_the_page_for_nothing_here_needs_no_other_file(browser, demo_site: Path):
    page = demo_site / "public/404.html"
    with visit(browser, page) as seen:
        assert seen.asked == [page.as_uri()]
        links = seen.page.eval_on_selector_all("a", "all => all.map((a) => a.getAttribute('href'))")
        assert links
        assert all(link.startswith("https://bindweed.example/") for link in links)
