"""Sitemap, domain, gift prices, initials: small sums worked out by hand."""

from decimal import Decimal
from xml.etree import ElementTree

import pytest

from maker_site.pages.public.gifts import steps_of
from maker_site.pages.public.signs import initials
from maker_site.pages.public.sitemap import MOST_ADDRESSES, MOST_BYTES, Mapped, domain_file, sitemap

SPACE = "{http://www.sitemaps.org/schemas/sitemap/0.9}"
ADDRESS = "https://a.example/shop/"


def test_the_bounds_are_those_of_the_protocol() -> None:
    # sitemaps.org protocol (checks: web-09)
    assert (MOST_ADDRESSES, MOST_BYTES) == (50_000, 52_428_800)


def test_a_short_sitemap_is_one_file() -> None:
    (text,) = sitemap(ADDRESS, [Mapped("index.html", None), Mapped("on/été & co.html", "2026-01-02")])
    rows = ElementTree.fromstring(text.text)
    assert [each.findtext(f"{SPACE}loc") for each in rows] == [
        "https://a.example/shop/",
        "https://a.example/shop/on/%C3%A9t%C3%A9%20%26%20co.html",
    ]
    assert rows[1].findtext(f"{SPACE}lastmod") == "2026-01-02"


def test_a_long_one_is_split_and_an_index_names_the_parts() -> None:
    pages = [Mapped(f"tutorials/{number}.html", None) for number in range(5)]
    *parts, index = sitemap(ADDRESS, pages, most=2)
    assert [len(ElementTree.fromstring(each.text)) for each in parts] == [2, 2, 1]
    assert index.address == "sitemap.xml"
    named = [each.findtext(f"{SPACE}loc") for each in ElementTree.fromstring(index.text)]
    assert named == [f"https://a.example/shop/{each.address}" for each in parts]


def test_a_heavy_one_is_split_by_its_bytes() -> None:
    pages = [Mapped(f"tutorials/{'a' * 100}{number}.html", None) for number in range(10)]
    *parts, _ = sitemap(ADDRESS, pages, most_bytes=600)
    assert len(parts) > 1
    assert all(len(each.text.encode()) <= 600 for each in parts)
    assert sum(len(ElementTree.fromstring(each.text)) for each in parts) == 10


def test_the_domain_file_has_the_domain_alone() -> None:
    found = domain_file("https://press.example:8443/shop/")
    assert (found.address, found.text) == ("CNAME", "press.example\n")


@pytest.mark.parametrize(
    ("highest", "step"),
    [("4", "1"), ("4.01", "2"), ("8", "2"), ("39.50", "10"), ("41", "20"), ("1250", "500"), ("0.30", "0.1")],
)
def test_at_most_four_round_steps_reach_the_highest_price(highest: str, step: str) -> None:
    assert steps_of(Decimal(highest)) == Decimal(step)
    assert steps_of(Decimal(highest)) * 4 >= Decimal(highest)


@pytest.mark.parametrize(
    ("name", "letters"),
    [("The Bindweed Press Shed", "BP"), ("Slate", "S"), ("the", "T"), ("Äpfel & Birnen", "ÄB"), ("— —", "")],
)
def test_initials_are_of_the_words_that_say_something(name: str, letters: str) -> None:
    assert initials(name) == letters
