"""Ideas for presents out of the menu: by occasion, and by what one wants to spend."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from decimal import Decimal

from maker_site.language import say
from maker_site.pages.addresses import slug
from maker_site.pages.notebook import Notebook
from maker_site.pages.paging import on_page, pages_of
from maker_site.pages.parts import Link, MenuItem
from maker_site.pages.public.views import GiftGroup, GiftIdeas, GiftItem
from maker_site.records import Project

GIFTS = "gifts.html"
IDEAS_A_PAGE = 60
"""Ideas on one page of a group's own."""
_IDEAS_AT_FIRST = 120
"""Ideas on the first page, shared over all groups."""
_FEWEST = 4
"""Of each group on the first page, however many groups there are."""
_MOST_SPANS = 4


def gift_projects(book: Notebook) -> Sequence[Project]:
    """Return the projects on the menu whose occasions everybody may know: shared with the tutorial, or as a gift."""
    return [each for each in book.newest_first if each.share.menu and (each.share.tutorial or each.share.menu.gift)]


def public_price(book: Notebook, project: Project) -> Decimal | None:
    """Return the price that the menu shows, None where it shows none."""
    return book.shown("public price", _price_of, project.id)


def _price_of(book: Notebook, name: str) -> Decimal | None:
    return book.prices[name].shown if book.price_words(book.workshop.projects[name]) else None


def gift_ideas(book: Notebook, items: Mapping[str, MenuItem]) -> GiftIdeas | None:
    """Return the page, given the menu's items by anchor; None where nothing on the menu suits an occasion."""
    found = [each for each in gift_projects(book) if any(slug(word) for word in each.occasions)]
    priced = sorted(
        ((price, each) for each in found if (price := public_price(book, each)) is not None), key=lambda pair: pair[0]
    )
    with_price = {each.id for _, each in priced}
    order = [*(each for _, each in priced), *(each for each in found if each.id not in with_price)]
    ideas = {each.id: _item(items[slug(each.id)]) for each in order}
    titles: dict[str, str] = {}
    inside: dict[str, list[GiftItem]] = {}
    for project in order:
        for key, word in {slug(word): word for word in reversed(project.occasions) if slug(word)}.items():
            titles.setdefault(key, word)
            inside.setdefault(key, []).append(ideas[project.id])
    if not inside:
        return None
    prices = _spans(book, [(price, ideas[each.id]) for price, each in priced])
    groups = tuple(GiftGroup(titles[key], f"for-{key}", tuple(inside[key])) for key in sorted(inside))
    return GiftIdeas(prices, groups)


def gift_sheets(ideas: GiftIdeas) -> Iterator[tuple[str, GiftIdeas]]:
    """Yield the pages of ideas: one where it can hold all, else the first of each group and pages for the long ones."""
    groups = [*ideas.prices, *ideas.occasions]
    fits = sum(len(each.items) for each in groups) <= _IDEAS_AT_FIRST
    share = max(_FEWEST, _IDEAS_AT_FIRST // len(groups))
    long = {} if fits else {each.anchor: each for each in groups if len(each.items) > share}

    def cut(group: GiftGroup) -> GiftGroup:
        if group.anchor not in long:
            return group
        way = Link(say("All {n}: {group}", n=len(group.items), group=group.title), f"gifts/{group.anchor}.html")
        return replace(group, items=group.items[:share], more=way)

    yield GIFTS, GiftIdeas(tuple(map(cut, ideas.prices)), tuple(map(cut, ideas.occasions)))
    for group in long.values():
        words = (say("Before"), say("After"))
        for here, place in pages_of(f"gifts/{group.anchor}.html", group.items, at_once=IDEAS_A_PAGE, words=words):
            shown = replace(group, items=tuple(on_page(group.items, place, IDEAS_A_PAGE)))
            yield here, GiftIdeas((), (shown,), group.title, place)


def steps_of(highest: Decimal) -> Decimal:
    """Return a round step (1, 2 or 5 times a power of ten) that reaches the highest price in at most four."""
    step = Decimal(1).scaleb(highest.adjusted() - 1)
    while step * _MOST_SPANS < highest:
        step *= Decimal("2.5") if step.normalize().as_tuple().digits == (2,) else 2
    return step


def _item(item: MenuItem) -> GiftItem:
    return GiftItem(Link(item.name, item.address), item.line, item.price, item.picture, item.stand_in)


def _spans(book: Notebook, priced: Sequence[tuple[Decimal, GiftItem]]) -> tuple[GiftGroup, ...]:
    """Return items by spans of prices; a span holds its upper bound."""
    if not priced or priced[-1][0] <= 0:
        return ()
    step = steps_of(priced[-1][0])
    money = book.figures.money
    groups = []
    for number in range(_MOST_SPANS):
        low, high = step * number, step * (number + 1)
        inside = tuple(item for price, item in priced if low < price <= high or (not number and price <= 0))
        if inside:
            up_to = say("Up to {most}", most=money(high))
            title = say("Over {least}, up to {most}", least=money(low), most=money(high)) if number else up_to
            groups.append(GiftGroup(title, f"price-{number + 1}", inside))
    return tuple(groups)
