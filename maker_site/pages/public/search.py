"""Search in the public copy, without a server: the words of public pages, each with the pages that say it."""

from __future__ import annotations

import json
import re
from collections import defaultdict
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from maker_site.language import say
from maker_site.pages.page import Text
from maker_site.pages.parts import MenuItem
from maker_site.pages.public.data import plain
from maker_site.pages.public.views import Article, Tutorial
from maker_site.workings.finding.folding import fold

DATA = "search/words.js"
_WORD = re.compile(r"[^\W_]+")
_SHORTEST = 2


class Told(NamedTuple):
    """A page, or a thing on the menu, as it can be found."""

    here: str
    title: str
    kind: str
    line: str | None
    names: Sequence[str]
    """Words that count most, folded and sorted: of title, material, occasions."""
    words: Sequence[str]
    """All other words, folded and sorted."""


def told_tutorial(here: str, view: Tutorial) -> Told:
    """Return a tutorial as it can be found."""
    names = [view.title, view.material.text, *(each.text for each in view.occasions)]
    words = [
        view.summary or "",
        view.method,
        view.difficulty or "",
        plain(view.opening),
        *(f"{plain(step.title)} {plain(step.text)}" for step in view.steps),
        *(each.name for each in view.supplies),
        *view.tools,
        *view.care,
    ]
    return _told(here, view.title, say("Tutorial"), view.summary, names, words)


def told_article(here: str, view: Article) -> Told:
    """Return an article as it can be found."""
    names = [view.title, *(each.text for each in view.occasions)]
    return _told(here, view.title, say("Article"), view.summary, names, [view.summary or "", plain(view.text)])


def told_item(item: MenuItem) -> Told:
    """Return something on the menu as it can be found."""
    names = [item.name, item.material]
    return _told(item.address, item.name, say("Menu"), item.price or item.line, names, [item.line or "", *item.options])


def _told(here: str, title: str, kind: str, line: str | None, names: Iterable[str], words: Iterable[str]) -> Told:
    telling = _words(names)
    return Told(here, title, kind, line, sorted(telling), sorted(_words(words) - telling))


def words_script(pages: Sequence[Told]) -> Text:
    """Return the script that the search page searches: [address, title, kind, line] of each page, and words.

    `names` and `words` give for each folded word the numbers of the pages that say it; a word that is among a page's
    names is not said again among its words.
    """
    names: dict[str, list[int]] = defaultdict(list)
    words: dict[str, list[int]] = defaultdict(list)
    for number, page in enumerate(pages):
        for word in page.names:
            names[word].append(number)
        for word in page.words:
            words[word].append(number)
    data = {
        "pages": [[each.here, each.title, each.kind, each.line] for each in pages],
        "names": dict(sorted(names.items())),
        "words": dict(sorted(words.items())),
    }
    return Text(DATA, f"window.wordData = {json.dumps(data, ensure_ascii=False, separators=(',', ':'))};\n")


def _words(texts: Iterable[str]) -> set[str]:
    return {word for text in texts for word in _long_enough(_WORD.findall(fold(text)))}


def _long_enough(words: Iterable[str]) -> Iterable[str]:
    return (word for word in words if len(word) >= _SHORTEST or not word.isascii())
