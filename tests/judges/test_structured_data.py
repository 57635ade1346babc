"""JSON-LD read by PyLD, an independent processor, and held to what schema.org's properties mean."""

import json
import re
from pathlib import Path
from typing import Any

import pytest
from lxml import etree
from pyld import jsonld

SCHEMA = "https://schema.org/"
# What readers of the data ask of each kind (checks: web-28 and web-30; Article and BreadcrumbList from memory).
WANTED = {
    "Article": ("headline", "author", "datePublished", "image"),
    "HowTo": ("name", "step", "author", "datePublished", "image"),
    "HowToStep": ("name", "text"),
    "HowToSupply": ("name",),
    "HowToTool": ("name",),
    "Product": ("name", "offers"),
    "Offer": ("price", "priceCurrency"),
    "BreadcrumbList": ("itemListElement",),
    "ListItem": ("position", "name", "item"),
    "Organization": ("name", "url"),
    "WebSite": ("name", "url"),
}


def offline(url: str, _: object) -> dict[str, Any]:
    """Stand for schema.org, whose context makes every plain word one of its own; nothing is fetched."""
    assert url.rstrip("/") == SCHEMA.rstrip("/")
    document = {"@context": {"@vocab": SCHEMA}}
    return {"contentType": "application/ld+json", "contextUrl": None, "documentUrl": url, "document": document}


def read(page: Path) -> list[dict[str, Any]]:
    """Give every node of a page, flattened."""
    tree = etree.parse(page, etree.HTMLParser())
    nodes = []
    for script in tree.xpath("//script[@type='application/ld+json']/text()"):
        nodes += jsonld.flatten(json.loads(script), options={"documentLoader": offline})
    return nodes


def kinds(node: dict[str, Any]) -> list[str]:
    return [kind.removeprefix(SCHEMA) for kind in node.get("@type", [])]


def value(node: dict[str, Any], name: str) -> Any:
    return node[SCHEMA + name][0].get("@value")


def faults(nodes: list[dict[str, Any]]) -> list[str]:
    return [
        f"{kind} has no {name}"
        for node in nodes
        for kind in kinds(node)
        for name in WANTED[kind]
        if not node.get(SCHEMA + name)
    ]


def page_saying(folder: Path, text: str) -> Path:
    page = folder / "page.html"
    page.write_text(f'<!doctype html><title>x</title><script type="application/ld+json">{text}</script>')
    return page


def test_what_is_lacking_is_noticed(tmp_path):
    text = '{"@context": "https://schema.org", "@graph": [{"@type": "Product", "name": "Mug", "offers": []}]}'
    assert faults(read(page_saying(tmp_path, text))) == ["Product has no offers"]


def test_every_page_that_is_to_be_found_says_what_it_is(demo_site: Path):
    seen: set[str] = set()
    for page in (demo_site / "public").rglob("*.html"):
        nodes = read(page)
        if 'rel="canonical"' in page.read_text(encoding="utf-8") and "has moved" not in page.read_text(
            encoding="utf-8"
        ):
            assert nodes, page
        assert faults(nodes) == [], page
        seen |= {kind for node in nodes for kind in kinds(node)}
    assert set(WANTED) - seen == set()


def test_a_tutorial_has_its_steps_in_order(demo_site: Path):
    nodes = read(demo_site / "public/tutorials/heron-river-plate.html")
    steps = sorted((value(each, "position"), value(each, "name")) for each in nodes if "HowToStep" in kinds(each))
    # Read off the headings of the demo's tutorial.md.
    assert [name for _, name in steps][:3] == ["Draw the light first", "Print and check", "Peel the film"]
    assert [place for place, _ in steps] == list(range(1, len(steps) + 1))


def test_prices_have_a_full_stop_and_no_sign(demo_site: Path):
    # schema.org/price, usage guidelines (checks: web-29); the figures stand in the demo's records.
    nodes = read(demo_site / "public/menu.html")
    prices = [value(each, "price") for each in nodes if "Offer" in kinds(each)]
    assert "39.50" in prices
    assert all(re.fullmatch(r"\d+(\.\d+)?", price) for price in prices)
    assert {value(each, "priceCurrency") for each in nodes if "Offer" in kinds(each)} == {"GBP"}


@pytest.mark.parametrize("page", ["index.html", "tutorials/heron-river-plate.html", "menu.html"])
def test_a_shared_link_has_a_picture_of_the_size_that_is_said(demo_site: Path, page: str):
    from PIL import Image

    tree = etree.parse(demo_site / "public" / page, etree.HTMLParser())
    told = dict(zip(tree.xpath("//meta[@property]/@property"), tree.xpath("//meta[@property]/@content"), strict=True))
    # The Open Graph protocol's four needed properties (ogp.me, from memory).
    assert {"og:title", "og:type", "og:image", "og:url"} <= set(told)
    file = demo_site / "public" / told["og:image"].removeprefix("https://bindweed.example/")
    with Image.open(file) as picture:
        assert picture.size == (int(told["og:image:width"]), int(told["og:image:height"])) == (1200, 630)
