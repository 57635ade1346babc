"""The feed against RFC 4287, read by feedparser (which knows nothing of us) and by lxml."""

from pathlib import Path
from urllib.parse import urlsplit

import feedparser
import pytest
from lxml import etree, html

ATOM = "{http://www.w3.org/2005/Atom}"
ONCE = ("id", "title", "updated")
"""Exactly one of each, in the feed (RFC 4287, 4.1.1; checks: web-07) and in every entry (4.1.2; web-08)."""
SOUND = """<feed xmlns="http://www.w3.org/2005/Atom"><id>urn:x:1</id><title>T</title>
<updated>2026-01-01T00:00:00Z</updated><author><name>A</name></author>
<entry><id>urn:x:2</id><title>E</title><updated>2026-01-01T00:00:00Z</updated><link href="https://a.example/e"/>
<content type="html">&lt;p&gt;Text &lt;a href="https://a.example/"&gt;a&lt;/a&gt;&lt;/p&gt;</content></entry></feed>"""


def faults(text: str) -> list[str]:
    """List what a feed lacks, has twice, or says by an address that only its own site knows."""
    read = feedparser.parse(text)
    found = [f"not well formed: {read.bozo_exception}"] if read.bozo else []
    try:
        feed = etree.fromstring(text.encode())
    except etree.XMLSyntaxError:
        return found
    entries = feed.findall(f"{ATOM}entry")
    for node in (feed, *entries):
        found += [f"{node.tag}: {len(node.findall(ATOM + n))} {n}" for n in ONCE if len(node.findall(ATOM + n)) != 1]
        if node.find(f"{ATOM}author") is None and feed.find(f"{ATOM}author") is None:
            found.append("no author")
    for entry in entries:
        for content in entry.findall(f"{ATOM}content"):
            if not (content.text or "").strip():
                found.append("empty content")
                continue
            for _, _, address, _ in html.fragment_fromstring(content.text, create_parent="div").iterlinks():
                if urlsplit(address).scheme not in ("http", "https", "mailto"):
                    found.append(f"not whole: {address}")
    ids = [node.findtext(f"{ATOM}id") for node in (feed, *entries)]
    return found + (["two have one id"] if len(set(ids)) < len(ids) else [])


@pytest.mark.parametrize(
    ("whole", "spoilt"),
    [
        ("<title>E</title>", ""),
        ("<id>urn:x:2</id>", "<id>urn:x:1</id>"),
        ("<author><name>A</name></author>", ""),
        ("&lt;p&gt;Text", "<p>Text"),
        ("https://a.example/&quot;", ""),
        ('"https://a.example/"', '"../a.html"'),
    ],
)
def test_a_spoilt_feed_is_noticed(whole: str, spoilt: str):
    assert faults(SOUND) == []
    if whole in SOUND:
        assert faults(SOUND.replace(whole, spoilt, 1)) != []


def test_the_feed_is_sound(demo_site: Path):
    assert faults((demo_site / "public/feed.xml").read_text(encoding="utf-8")) == []


def test_the_feed_has_every_tutorial_and_article_whole(demo_site: Path):
    read = feedparser.parse((demo_site / "public/feed.xml").read_bytes())
    pages = [urlsplit(entry.link).path.lstrip("/") for entry in read.entries]
    there = [
        page.relative_to(demo_site / "public").as_posix()
        for folder in ("tutorials", "articles")
        for page in (demo_site / "public" / folder).glob("*.html")
        if page.name != "index.html" and "This page has moved" not in page.read_text(encoding="utf-8")
    ]
    assert sorted(pages) == sorted(there)
    (heron,) = [entry for entry in read.entries if entry.link.endswith("heron-river-plate.html")]
    text = html.fromstring(heron.content[0].value).text_content()
    for words in ("the kindest blank there is", "Cool it flat", "in pencil, with the date", "lint roller"):
        assert words in text
    assert "Gloves" in text, "a setting is never shown without its cautions"


def test_entries_stand_newest_first_and_none_is_newer_than_the_feed(demo_site: Path):
    read = feedparser.parse((demo_site / "public/feed.xml").read_bytes())
    days = [entry.updated for entry in read.entries]
    assert days == sorted(days, reverse=True)
    assert read.feed.updated == days[0]
