"""What a host's root says to programs: the sitemap, robots.txt, the domain."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from html import escape
from urllib.parse import urlsplit

from maker_site.frozen import frozen
from maker_site.pages.page import Text
from maker_site.pages.public.data import canonical

MOST_ADDRESSES = 50_000
MOST_BYTES = 52_428_800
"""sitemaps.org protocol: of one file, uncompressed."""
_SPACE = "http://www.sitemaps.org/schemas/sitemap/0.9"
_HEAD = f'<?xml version="1.0" encoding="UTF-8"?>\n<urlset xmlns="{_SPACE}">\n'
_FOOT = "</urlset>\n"


@frozen
class Mapped:
    """A page in the sitemap."""

    here: str
    changed: str | None
    """The day, by ISO 8601."""


def sitemap(
    address: str, pages: Sequence[Mapped], most: int = MOST_ADDRESSES, most_bytes: int = MOST_BYTES
) -> Iterator[Text]:
    """Yield sitemap.xml; past the bounds of one file, the files and an index of them."""
    files = list(_files([_row(address, each) for each in pages], most, most_bytes))
    if len(files) == 1:
        yield Text("sitemap.xml", files[0])
        return
    rows = []
    for number, text in enumerate(files, 1):
        name = f"sitemaps/{number}.xml"
        rows.append(f"<sitemap><loc>{escape(canonical(address, name))}</loc></sitemap>\n")
        yield Text(name, text)
    index = f'<?xml version="1.0" encoding="UTF-8"?>\n<sitemapindex xmlns="{_SPACE}">\n{"".join(rows)}</sitemapindex>\n'
    yield Text("sitemap.xml", index)


def robots(address: str) -> Text:
    """Return the file that lets every reader in and names the sitemap."""
    return Text("robots.txt", f"User-agent: *\nAllow: /\n\nSitemap: {canonical(address, 'sitemap.xml')}\n")


def domain_file(address: str) -> Text:
    """Return the file in which some hosts look for the domain: its name alone."""
    return Text("CNAME", f"{urlsplit(address).hostname}\n")


def _row(address: str, page: Mapped) -> str:
    changed = f"<lastmod>{page.changed}</lastmod>" if page.changed else ""
    return f"<url><loc>{escape(canonical(address, page.here))}</loc>{changed}</url>\n"


def _files(rows: Sequence[str], most: int, most_bytes: int) -> Iterator[str]:
    part: list[str] = []
    room = whole = most_bytes - len(_HEAD) - len(_FOOT)
    for row in rows:
        size = len(row.encode())
        if len(part) == most or size > room:
            yield _HEAD + "".join(part) + _FOOT
            part, room = [], whole
        part.append(row)
        room -= size
    yield _HEAD + "".join(part) + _FOOT
