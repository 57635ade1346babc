"""Long lists in pages, and lists by material, occasion and month."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from typing import TypeVar

from babel.dates import format_skeleton

from maker_site.language import say
from maker_site.pages import paging
from maker_site.pages.addresses import slug
from maker_site.pages.notebook import Notebook
from maker_site.pages.parts import Link, Paging
from maker_site.records import Article, Project

AT_ONCE = 24
"""Tutorials, and rows of articles, on one page of a list."""
V = TypeVar("V")


@dataclass(frozen=True, slots=True)
class Group:
    """What belongs together."""

    title: str
    address: str
    """Of its first page."""
    projects: list[Project] = field(default_factory=list)
    articles: list[Article] = field(default_factory=list)


def pages_of(first: str, *lists: Sequence[object]) -> Iterator[tuple[str, Paging]]:
    """Yield the address and the place of each page of a list of what was published."""
    return paging.pages_of(first, *lists, at_once=AT_ONCE, words=(say("Newer"), say("Older")))


def pages_in(first: str, of: int) -> Iterator[tuple[str, Paging]]:
    """Yield the address and the place of each page of a list that has so many pages."""
    return pages_of(first, range(of * AT_ONCE))


def on_page(items: Sequence[V], place: Paging) -> Sequence[V]:
    """Return the part of a list that one page shows."""
    return paging.on_page(items, place, AT_ONCE)


def by_material(book: Notebook, projects: Iterable[Project]) -> Mapping[str, Group]:
    """Return projects by the material of their blank, in the order of the words."""
    found: dict[str, Group] = {}
    for project in projects:
        substrate = book.workshop.blanks[project.blank].substrate
        found.setdefault(substrate, Group(say(substrate), material_address(substrate))).projects.append(project)
    return dict(sorted(found.items()))


def by_occasion(projects: Iterable[Project], articles: Iterable[Article]) -> Mapping[str, Group]:
    """Return what suits an occasion by its slug; two ways to write one occasion are one, called as met first."""
    found: dict[str, Group] = {}
    for project in projects:
        for _, group in _occasions(found, project.occasions):
            if not group.projects or group.projects[-1] is not project:
                group.projects.append(project)
    for article in articles:
        for _, group in _occasions(found, article.head.occasions):
            if not group.articles or group.articles[-1] is not article:
                group.articles.append(article)
    return dict(sorted(found.items()))


def by_month(book: Notebook, projects: Iterable[Project], articles: Iterable[Article]) -> Sequence[Group]:
    """Return what was published in each month, the latest first; what has no day is in none."""
    found: dict[str, Group] = {}

    def group(day: date) -> Group:
        key = f"{day:%Y-%m}"
        words = str(format_skeleton("yMMMM", day, locale=book.wording.locale))
        return found.setdefault(key, Group(words, f"in/{key}.html"))

    for project in projects:
        if project.share.published:
            group(project.share.published).projects.append(project)
    for article in articles:
        if article.head.published:
            group(article.head.published).articles.append(article)
    return [found[key] for key in sorted(found, reverse=True)]


def material_address(substrate: str) -> str:
    """Return the address of what is made of a material."""
    return f"on/{slug(substrate)}.html"


def occasion_links(occasions: Iterable[str]) -> tuple[Link, ...]:
    """Return the way from each occasion to what suits it."""
    return tuple(Link(each, f"for/{slug(each)}.html") for each in occasions if slug(each))


def _occasions(found: dict[str, Group], occasions: Iterable[str]) -> Iterator[tuple[str, Group]]:
    for link in occasion_links(occasions):
        key = slug(link.text)
        yield key, found.setdefault(key, Group(link.text, link.address))
