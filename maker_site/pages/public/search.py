"""Search in the public copy, without a server: the words of public pages, each with the pages that say it."""

from __future__ import annotations

import json
import re
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from maker_site.language import say
from maker_site.pages.page import Text
from maker_site.pages.parts import MenuItem
from maker_site.pages.public.data import plain
from maker_site.pages.public.views import Article, Tutorial
from maker_site.workings.finding.folding import fold

DATA = "search/words.js"
_WORD = re.compile(r"[^\W_]+")
_SHORTEST = 2


@dataclass(frozen=True, slots=True)
class Told:
    """A page, or a thing on the menu, as it can be found."""

    here: str
    title: str
    kind: str
    line: str | None
    names: str
    """Words that count most: title, material, occasions."""
    words: str
    """All other words."""


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
    return Told(here, view.title, say("Tutorial"), view.summary, " ".join(names), " ".join(words))


def told_article(here: str, view: Article) -> Told:
    """Return an article as it can be found."""
    names = " ".join([view.title, *(each.text for each in view.occasions)])
    return Told(here, view.title, say("Article"), view.summary, names, f"{view.summary or ''} {plain(view.text)}")


def told_item(item: MenuItem) -> Told:
    """Return something on the menu as it can be found."""
    words = " ".join([item.line or "", *item.options])
    names = f"{item.name} {item.material}"
    return Told(item.address, item.name, say("Menu"), item.price or item.line, names, words)


def words_script(pages: Sequence[Told]) -> Text:
    """Return the script that the search page searches: [address, title, kind, line] of each page, and words.

    `names` and `words` give for each folded word the numbers of the pages that say it; a word that is among a page's
    names is not said again among its words.
    """
    names: dict[str, list[int]] = defaultdict(list)
    words: dict[str, list[int]] = defaultdict(list)
    for number, page in enumerate(pages):
        telling = _words(page.names)
        for word in sorted(telling):
            names[word].append(number)
        for word in sorted(_words(page.words) - telling):
            words[word].append(number)
    data = {
        "pages": [[each.here, each.title, each.kind, each.line] for each in pages],
        "names": dict(sorted(names.items())),
        "words": dict(sorted(words.items())),
    }
    return Text(DATA, f"window.wordData = {json.dumps(data, ensure_ascii=False, separators=(',', ':'))};\n")


def _words(*texts: str) -> set[str]:
    return {word for text in texts for word in _long_enough(_WORD.findall(fold(text)))}


def _long_enough(words: Iterable[str]) -> Iterable[str]:
    return (word for word in words if len(word) >= _SHORTEST or not word.isascii())
