"""Which pictures a Markdown text shows."""

from __future__ import annotations

import re
from collections.abc import Iterator
from urllib.parse import unquote

_PICTURE = re.compile(
    r"!\[[^\]]{0,1000}+\]\(\s*+"
    r"(?:<(?P<bracketed>[^<>]++)>|(?P<plain>(?:[^()<>\s]++|\([^()\s]*+\))++))"
    r"[^)]{0,1000}+\)"
)
"""A picture by its file; in pointed brackets it may hold spaces. No part gives back what it took, for speed."""
_ELSEWHERE = re.compile(r"(?:https?|data):", re.IGNORECASE)


def pictures_in_text(text: str) -> Iterator[tuple[int, str]]:
    """Yield the line and the path of each picture, as meant (``%20`` is a space); those on the web are left out."""
    for number, line in enumerate(text.split("\n"), 1):
        for found in _PICTURE.finditer(line):
            written = found["bracketed"] or found["plain"]
            if not _ELSEWHERE.match(written):
                yield number, unquote(written)
