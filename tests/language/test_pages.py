"""What a page says of its language: the one that the site speaks, and the maker's where it is another."""

import re
from datetime import date
from pathlib import Path

import pytest

from maker_site.writer.making import Memory, make_site
from tests.small_workshop import write_workshop

SHOP = "name: Test Bench\ncurrency: EUR\nlocale: {locale}\naddress: https://bench.example/\n"


def made_in(locale: str, folder: Path) -> Path:
    """Make a small workshop of a place; return the site."""
    content = write_workshop(folder / "content", {"shop.yaml": SHOP.format(locale=locale)})
    make_site(content, folder / "site", "print-room", date(2026, 5, 1), lambda *_: None)
    return folder / "site"


@pytest.fixture(scope="module")
def hebrew(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return made_in("he_IL", tmp_path_factory.mktemp("hebrew"))


@pytest.fixture(scope="module")
def german(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A shop whose language has no catalogue."""
    return made_in("de_DE", tmp_path_factory.mktemp("german"))


def pages(site: Path) -> dict[str, str]:
    return {path.relative_to(site).as_posix(): path.read_text("utf-8") for path in site.rglob("*.html")}


def test_every_page_of_a_hebrew_shop_runs_from_right_to_left(hebrew: Path) -> None:
    found = {re.search("<html[^>]*>", page)[0] for page in pages(hebrew).values()}  # type: ignore[index]
    assert found == {'<html lang="he-IL" dir="rtl">'}


def test_what_the_maker_wrote_keeps_its_own_direction(hebrew: Path) -> None:
    project = pages(hebrew)["workshop/projects/harbour.html"]
    assert "<h1><bdi>Harbour coasters</bdi></h1>" in project
    assert '<div class="prose" dir="auto">' in project


def test_where_the_site_can_not_speak_the_shops_language_its_own_words_are_marked(german: Path) -> None:
    found = pages(german)
    assert {re.search("<html[^>]*>", page)[0] for page in found.values()} == {'<html lang="en" dir="ltr">'}  # type: ignore[index]
    project = found["workshop/projects/harbour.html"]
    assert '<h1><bdi lang="de-DE">Harbour coasters</bdi></h1>' in project
    assert '<div class="prose" lang="de-DE" dir="auto">' in project
    assert "24,00" in found["public/menu.html"]  # CLDR: a comma parts the cents in Germany


def test_what_programs_are_told_is_in_the_makers_language(german: Path) -> None:
    assert '<meta property="og:locale" content="de_DE">' in pages(german)["public/index.html"]


def test_an_english_page_has_no_marks_of_language_beyond_its_own(tmp_path: Path) -> None:
    found = pages(made_in("en_GB", tmp_path))
    assert {re.search("<html[^>]*>", page)[0] for page in found.values()} == {'<html lang="en-GB" dir="ltr">'}  # type: ignore[index]
    assert not [address for address, page in found.items() if "<bdi lang" in page or 'dir="auto"' in page]
    assert not [address for address, page in found.items() if re.search("[\u2066-\u2069]", page)]


def test_another_locale_makes_every_page_anew_in_one_process_too(tmp_path: Path) -> None:
    content = write_workshop(tmp_path / "content", {"shop.yaml": SHOP.format(locale="en_GB")})
    memory = Memory()

    def make(out: str) -> None:
        make_site(content, tmp_path / out, "print-room", date(2026, 5, 1), lambda *_: None, memory)

    make("site")
    write_workshop(tmp_path / "content", {"shop.yaml": SHOP.format(locale="he_IL")})
    make("site")
    make_site(content, tmp_path / "afresh", "print-room", date(2026, 5, 1), lambda *_: None)
    assert pages(tmp_path / "site") == pages(tmp_path / "afresh")


def test_what_the_command_line_tells_is_marked_as_english_on_a_page_that_is_not(tmp_path: Path) -> None:
    log = "date,blank,press,temperature,time,face,pressed,good\n2026-04-18,slate,clam,200 C,5:00,face up,4,3\n"
    files = {"shop.yaml": SHOP.format(locale="he_IL"), "press-log/2026.csv": log}
    make_site(write_workshop(tmp_path / "content", files), tmp_path, "print-room", date(2026, 5, 1), lambda *_: None)
    home = (tmp_path / "workshop/index.html").read_text("utf-8")
    assert '<span lang="en" dir="ltr">press-log/2026.csv, line 2: “face up” is used both ways' in home
