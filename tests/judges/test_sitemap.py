"""The sitemap against the rules of sitemaps.org, held by lxml; robots.txt names it."""

from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest
from lxml import etree

SPACE = "http://www.sitemaps.org/schemas/sitemap/0.9"
# The rules of sitemap.xsd of sitemaps.org (2008-03-26) for the elements that we use, compared with a published copy;
# stricter than it in the letters of an address and in the count.
RULES = etree.XMLSchema(
    etree.fromstring(f"""
<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema" targetNamespace="{SPACE}" xmlns="{SPACE}"
    elementFormDefault="qualified">
  <xs:simpleType name="loc"><xs:restriction base="xs:anyURI">
    <xs:minLength value="12"/><xs:maxLength value="2048"/><xs:pattern value="https?://[!-~]+"/>
  </xs:restriction></xs:simpleType>
  <xs:simpleType name="lastmod"><xs:union memberTypes="xs:date xs:dateTime"/></xs:simpleType>
  <xs:element name="urlset"><xs:complexType><xs:sequence>
    <xs:element name="url" maxOccurs="50000"><xs:complexType><xs:sequence>
      <xs:element name="loc" type="loc"/><xs:element name="lastmod" type="lastmod" minOccurs="0"/>
    </xs:sequence></xs:complexType></xs:element>
  </xs:sequence></xs:complexType></xs:element>
  <xs:element name="sitemapindex"><xs:complexType><xs:sequence>
    <xs:element name="sitemap" maxOccurs="50000"><xs:complexType><xs:sequence>
      <xs:element name="loc" type="loc"/><xs:element name="lastmod" type="lastmod" minOccurs="0"/>
    </xs:sequence></xs:complexType></xs:element>
  </xs:sequence></xs:complexType></xs:element>
</xs:schema>""")
)


def faults(text: str) -> list[str]:
    """List what breaks a rule."""
    RULES.validate(etree.fromstring(text.encode()))
    return [error.message for error in RULES.error_log]


def locs(text: str) -> list[str]:
    return [node.text or "" for node in etree.fromstring(text.encode()).iter(f"{{{SPACE}}}loc")]


@pytest.mark.parametrize(
    "row",
    [
        "",
        "<url/>",
        "<url><loc>tutorials/a.html</loc></url>",
        "<url><loc>https://a.example/</loc><lastmod>4 May</lastmod></url>",
        "<url><lastmod>2026-01-01</lastmod><loc>https://a.example/</loc></url>",
    ],
)
def test_a_broken_rule_is_noticed(row: str):
    sound = f'<urlset xmlns="{SPACE}"><url><loc>https://a.example/</loc></url>%s</urlset>'
    assert faults(sound % "") == []
    assert faults(sound % row if row else f'<urlset xmlns="{SPACE}"/>') != []


def test_the_sitemap_keeps_the_rules_and_names_every_page_that_is_to_be_found(demo_site: Path):
    text = (demo_site / "public/sitemap.xml").read_text(encoding="utf-8")
    assert faults(text) == []
    named = set()
    for loc in locs(text):
        parts = urlsplit(loc)
        assert parts.netloc == "bindweed.example"
        path = unquote(parts.path).lstrip("/")
        named.add(f"{path}index.html" if not path or path.endswith("/") else path)
    there = {page.relative_to(demo_site / "public").as_posix() for page in (demo_site / "public").rglob("*.html")}
    assert there - named == {"404.html", "search.html", "articles/what-spent-paper-says.html"}
    assert named - there == set()


def test_each_page_calls_itself_what_the_sitemap_calls_it(demo_site: Path):
    named = set(locs((demo_site / "public/sitemap.xml").read_text(encoding="utf-8")))
    own = set()
    for page in (demo_site / "public").rglob("*.html"):
        own |= set(etree.parse(page, etree.HTMLParser()).xpath("//link[@rel='canonical']/@href"))
    assert named - own == set()


def test_robots_are_let_in_and_shown_the_sitemap(demo_site: Path):
    text = (demo_site / "public/robots.txt").read_text(encoding="utf-8")
    assert "Disallow" not in text
    assert "Sitemap: https://bindweed.example/sitemap.xml" in text.splitlines()
