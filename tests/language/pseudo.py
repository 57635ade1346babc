"""A made-up language, to find what the site says without asking the catalogue.

Each sentence of it is the English one in letters that look alike and are none of ASCII. What is left in plain letters
on a page was either written by the maker, or by somebody who forgot to say it.
"""

from __future__ import annotations

import json
import os
import re
import shutil
from collections.abc import Iterable, Iterator, Mapping
from itertools import pairwise
from pathlib import Path
from typing import Final

from babel.messages import Catalog
from lxml import html

from maker_site.language.speech import DOMAIN
from tests.catalogues import mo_data

_PLAIN: Final = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
_ALIKE: Final = "áƀçđéƒĝĥíĵķļɱñóþɋŕšţúṽŵẋýžÁƁÇĐÉƑĜĤÍĴĶĻṀÑÓÞɊŔŠŢÚṼŴẊÝŽ"
_LETTERS: Final = str.maketrans(_PLAIN, _ALIKE)
_PLACE: Final = re.compile(r"(\{\w*\})")
_WORD: Final = re.compile(r"[A-Za-z]{3,}")
_NOT_READ: Final = ("name_of_file", "picture", "icon")
"""Of the data of a paper."""
_SHOWN: Final = ("aria-label", "alt", "title", "placeholder")


def alike(sentence: str) -> str:
    """Return a sentence in letters that only look like its own; what is to be filled in is left."""
    return "".join(part if _PLACE.fullmatch(part) else part.translate(_LETTERS) for part in _PLACE.split(sentence))


def pseudo_catalogue(sentences: Catalog, folder: Path, tag: str) -> None:
    """Put the made-up language into a folder of catalogues, under the tag of a language that is."""
    made = Catalog(locale=tag, domain=DOMAIN)
    made.mime_headers = [("Plural-Forms", "nplurals=2; plural=(n != 1);")]
    for message in sentences:
        if message.id:
            said = tuple(map(alike, message.id)) if isinstance(message.id, tuple) else alike(message.id)
            made.add(message.id, said, context=message.context)
    file = folder / tag / "LC_MESSAGES" / f"{DOMAIN}.mo"
    file.parent.mkdir(parents=True)
    file.write_bytes(mo_data(made))


def workshop_in(locale: str, content: Path, into: Path) -> Path:
    """Return a copy of a content folder whose shop is somewhere else."""
    shutil.copytree(content, into, copy_function=os.link)
    shop = into / "shop.yaml"
    text = re.sub(r"(?m)^locale:.*$", f"locale: {locale}", shop.read_text("utf-8"))
    shop.unlink()
    shop.write_text(text, "utf-8")
    return into


def pairs_of(text: str) -> Iterator[str]:
    """Yield each word of three letters or more in small letters, and each with the one that follows it."""
    words = [word.lower() for word in _WORD.findall(text)]
    yield from words
    yield from (f"{one} {other}" for one, other in pairwise(words))


def written_by_hand(content: Path) -> frozenset[str]:
    """Return the words and the pairs of words that the maker's own files hold, without the names of their fields."""
    found: set[str] = set()
    for path in content.rglob("*"):
        found |= set(pairs_of(path.relative_to(content).as_posix()))
        if path.suffix in {".yaml", ".csv", ".md"}:
            text = path.read_text("utf-8")
            if path.suffix == ".yaml":
                text = re.sub(r"(?m)(^|[{,]|- )\s*[a-z -]+:", " ", text)
            for line in (text.replace("\n", " ") if path.suffix != ".csv" else text).split("\n"):
                found |= set(pairs_of(line))
    return frozenset(found)


def shown(page: str) -> Iterator[str]:
    """Yield every text that a page shows, says or has ready for its scripts."""
    for element in html.fromstring(page).iter():
        if not isinstance(element.tag, str):
            continue
        yield from (element.attrib[name] for name in _SHOWN if name in element.attrib)
        if element.tag == "script" and element.get("id") == "sentences":
            yield from texts_in(list(json.loads(element.text or "")["said"].values()))
        if element.tag not in {"script", "style", "code", "pre"}:
            yield element.text or ""
        yield element.tail or ""


def texts_in(data: object) -> Iterator[str]:
    """Yield every text in data, however deep; of drawings what they say."""
    match data:
        case str() if data.startswith("<svg"):
            yield from shown(data)
        case str():
            yield data
        case Mapping():
            for name, value in data.items():
                yield from texts_in(value) if name not in _NOT_READ else ()
        case list() | tuple():
            for value in data:
                yield from texts_in(value)


def unexplained(texts: Iterable[str], known: frozenset[str]) -> Iterator[str]:
    """Yield the texts that hold a word, or two in a row, that nobody translated and the maker did not write."""
    for text in texts:
        for run in re.split(r"\{\w+\}|[^\x00-\x7f]+|[.;:()“”–|/]", text):
            if any(pair not in known for pair in pairs_of(run)):
                yield " ".join(text.split())
                break
