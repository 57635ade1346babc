"""What stands where in the public copy: beside which, on which page of a list, under which word.

Each of these is noted by itself, as plain ids and words: a page has to be built again where its own place has changed,
and not for each record that was looked at to find it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from typing import Final, NamedTuple

from maker_site.pages.addresses import slug
from maker_site.pages.notebook import Notebook
from maker_site.pages.noting import Noted, unnoted
from maker_site.pages.public.feed import MOST
from maker_site.pages.public.gifts import gift_projects
from maker_site.pages.public.lists import AT_ONCE, Group, by_material, by_month, by_occasion, pages_of
from maker_site.pages.public.paid import paid_addresses
from maker_site.records import Article, Project

FOLDER: Final = "articles"
TUTORIALS: Final = "tutorials/index.html"
ARTICLES: Final = f"{FOLDER}/index.html"
_LOOKED_AT: Final = 60
"""The newest of each group are looked at for what is like it, so that a tutorial takes no longer in a large archive."""


class Place(NamedTuple):
    """Where one tutorial or article stands, by ids."""

    newer: str | None
    older: str | None
    first_id: str
    """What it was called at the very first."""


class Listed(NamedTuple):
    """One page of a list, by ids."""

    kind: str
    """What the list is of: tutorials, articles, material, occasion, month."""
    word: str
    """The material as the records write it, or what the occasion or the month is called."""
    first: str
    """The address of the list's first page."""
    number: int
    of: int
    tutorials: tuple[str, ...]
    articles: tuple[str, ...]


class Newest(NamedTuple):
    """The newest tutorials of a group, with the day that they are ordered by."""

    tutorials: tuple[tuple[str, int], ...]


@dataclass(frozen=True)
class Order:
    """The order of the public copy."""

    book: Notebook

    @property
    def kinds(self) -> Mapping[str, Mapping[str, object]]:
        """All that is noted here, by the kind that it is noted as."""
        return {
            "public tutorial": self.tutorials,
            "public article": self.articles,
            "public list": self.lists,
            "public newest": self.newest,
            "public latest": self.latest,
            "public groups": self.groups,
            "public links": self.paid,
        }

    def take_over(self, before: Order) -> None:
        """Take what was worked out from an earlier notebook, where nothing has changed that it is made of."""
        self.__dict__.update({name: before.__dict__[name] for name in _PLAIN if name in before.__dict__})

    @cached_property
    def tutorials(self) -> Noted[Place]:
        """The place of each tutorial by its id, the latest published first."""
        return Noted("public tutorial", _places([(each.id, each.was) for each in self._tutorials]))

    @cached_property
    def articles(self) -> Noted[Place]:
        """The place of each article by its id, the latest published first."""
        return Noted("public article", _places([(each.id, each.head.was) for each in self._articles]))

    @cached_property
    def lists(self) -> Noted[Listed]:
        """Each page of each list by its address."""
        with unnoted():
            return Noted("public list", dict(self._lists()))

    @cached_property
    def newest(self) -> Noted[Newest]:
        """What is looked at for what is like a tutorial: the newest of each material and occasion, by its address."""
        groups = [*self._materials.values(), *self._occasions.values()]
        return Noted(
            "public newest",
            {
                group.address: Newest(tuple((each.id, _day(each).toordinal()) for each in group.projects[:_LOOKED_AT]))
                for group in groups
            },
        )

    @cached_property
    def latest(self) -> Noted[tuple[str, ...]]:
        """The ids of what was changed last, as much as a feed holds, by `tutorials` and `articles`."""
        dated = [
            (day, kind, name)
            for kind, name, day in (
                *(("tutorials", each.id, each.share.updated or each.share.published) for each in self._tutorials),
                *(("articles", each.id, each.head.updated or each.head.published) for each in self._articles),
            )
            if day
        ]
        found = sorted(dated, key=lambda each: each[0], reverse=True)[:MOST]
        return Noted(
            "public latest",
            {wanted: tuple(name for _, kind, name in found if kind == wanted) for wanted in ("tutorials", "articles")},
        )

    @cached_property
    def groups(self) -> Noted[tuple[tuple[str, str], ...]]:
        """What there are pages of, word and address: materials, occasions and months; gifts, where there are any."""
        with unnoted():
            gifts = any(slug(word) for each in gift_projects(self.book) for word in each.occasions)
        return Noted(
            "public groups",
            {
                "material": tuple((word, each.address) for word, each in self._materials.items()),
                "occasion": tuple((each.title, each.address) for each in self._occasions.values()),
                "month": tuple((each.title, each.address) for each in self._months),
                "gifts": (("gifts", ""),) if gifts else (),
            },
        )

    @property
    def paid_links(self) -> frozenset[str]:
        """The addresses that the records call paid links."""
        return frozenset(self.paid["paid"])

    @cached_property
    def paid(self) -> Noted[tuple[str, ...]]:
        """The addresses that the records call paid links, under one word."""
        with unnoted():
            return Noted("public links", {"paid": tuple(sorted(paid_addresses(self.book.workshop)))})

    @cached_property
    def _tutorials(self) -> Sequence[Project]:
        with unnoted():
            return tutorials(self.book)

    @cached_property
    def _articles(self) -> Sequence[Article]:
        with unnoted():
            return articles(self.book)

    @cached_property
    def _materials(self) -> Mapping[str, Group]:
        with unnoted():
            return by_material(self.book, self._tutorials)

    @cached_property
    def _occasions(self) -> Mapping[str, Group]:
        return by_occasion(self._tutorials, self._articles)

    @cached_property
    def _months(self) -> Sequence[Group]:
        return by_month(self.book, self._tutorials, self._articles)

    def _lists(self) -> Iterator[tuple[str, Listed]]:
        yield from _listed("tutorials", "", TUTORIALS, self._tutorials, ())
        yield from _listed("articles", "", ARTICLES, (), self._articles)
        for word, group in self._materials.items():
            yield from _listed("material", word, group.address, group.projects, group.articles)
        for group in self._occasions.values():
            yield from _listed("occasion", group.title, group.address, group.projects, group.articles)
        for group in self._months:
            yield from _listed("month", group.title, group.address, group.projects, group.articles)


_PLAIN: Final = ("tutorials", "articles", "lists", "newest", "latest", "groups", "paid")
"""What is held as ids and words alone."""


def tutorials(book: Notebook) -> Sequence[Project]:
    """Return the projects whose tutorial is shared, the latest published first."""
    shared = [project for project in book.newest_first if project.share.tutorial]
    return sorted(shared, key=_day, reverse=True)


def articles(book: Notebook) -> Sequence[Article]:
    """Return the shared articles, the latest published first."""
    shared = [article for article in book.workshop.articles.values() if article.head.share]
    return sorted(shared, key=lambda article: article.head.published or date.min, reverse=True)


def _day(project: Project) -> date:
    return project.share.published or project.made or date.min


def _places(names: Sequence[tuple[str, Sequence[str]]]) -> dict[str, Place]:
    ids = [None, *(name for name, _ in names), None]
    return {name: Place(ids[at], ids[at + 2], (*was, name)[0]) for at, (name, was) in enumerate(names)}


def _listed(
    kind: str, word: str, first: str, projects: Sequence[Project], texts: Sequence[Article]
) -> Iterator[tuple[str, Listed]]:
    for here, paging in pages_of(first, projects, texts):
        part = slice((paging.number - 1) * AT_ONCE, paging.number * AT_ONCE)
        ids = tuple(each.id for each in projects[part]), tuple(each.id for each in texts[part])
        yield here, Listed(kind, word, first, paging.number, paging.of, *ids)
