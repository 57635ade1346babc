"""Every page of the public copy, built only of what the maker chose to share."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property, partial
from typing import Any

from maker_site.language import page_language, say, spoken, tag_of
from maker_site.pages import addresses
from maker_site.pages.marks import swatch
from maker_site.pages.menu import menu, menu_paper
from maker_site.pages.menu_sheets import menu_sheets
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Batch, Drawn, Gathering, Page, Said, Text
from maker_site.pages.parts import Link, Menu, Paging
from maker_site.pages.picture_html import figure_html
from maker_site.pages.pictures import picture_at
from maker_site.pages.public.data import canonical, product_node
from maker_site.pages.public.feed import FEED, Entry, feed
from maker_site.pages.public.gifts import GIFTS, gift_ideas, gift_sheets, public_price
from maker_site.pages.public.lists import occasion_links, pages_in
from maker_site.pages.public.order import ARTICLES, FOLDER, TUTORIALS, Listed, Order, articles, tutorials
from maker_site.pages.public.paid import DISCLOSURE, with_paid_links
from maker_site.pages.public.search import DATA, Told, told_article, told_item, told_tutorial, words_script
from maker_site.pages.public.signs import icon, icon_drawing, social_of_page, social_of_project
from maker_site.pages.public.sitemap import Mapped, domain_file, robots, sitemap
from maker_site.pages.public.steps import title_and_rest
from maker_site.pages.public.telling import Teller
from maker_site.pages.public.tutorial import IN_TEXT, tile, tutorial_link, tutorial_page
from maker_site.pages.public.views import (
    About,
    Article,
    ArticleList,
    ArticleRow,
    FrontPage,
    GroupList,
    MaterialWay,
    MenuPage,
    Missing,
    Moved,
    PublicFrame,
    PublicTile,
    SearchPage,
    Tutorial,
    TutorialList,
)
from maker_site.pages.worked import Worked
from maker_site.pages.writing import written
from maker_site.records import Article as ArticleRecord
from maker_site.records import Project

_FRONT_TILES = 6
_FRONT_ARTICLES = 4
_FOUND = "found"
"""What is said for the search page."""
_MAPPED = "mapped"
"""What is said for the sitemap, of pages that anybody is to find by a search engine."""


def public_frame(book: Notebook) -> PublicFrame:
    """Return what surrounds every page, with the doors that have something behind them."""
    shop = book.workshop.shop
    doors = [Link(say("Home"), "index.html")]
    if tutorials(book):
        doors.append(Link(say("Tutorials"), TUTORIALS))
    if articles(book):
        doors.append(Link(say("Articles"), ARTICLES))
    if any(project.share.menu for project in book.newest_first):
        doors.append(Link(say("Menu"), "menu.html"))
    doors.append(Link(say("About"), "about.html"))
    if len(doors) > 2:
        doors.append(Link(say("Search"), "search.html"))
    dated = any(each.share.published or each.share.updated for each in tutorials(book)) or any(
        each.head.published or each.head.updated for each in articles(book)
    )
    return PublicFrame(
        shop.name,
        shop.line,
        shop.notice,
        page_language(shop.locale),
        spoken().direction,
        tag_of(shop.locale),
        tuple(doors),
        shop.address,
        shop.contact,
        icon_drawing(book).address,
        icon(book).address,
        FEED if shop.address and dated else None,
    )


def public_pages(book: Notebook) -> Iterator[Page | Text | Drawn]:
    """Yield every page of the public copy, then what is made of the pages: feed, words to search, sitemap."""
    order = Order(book)
    said: list[Said] = []
    for batch in public_batches(book, order):
        for page in batch.build():
            if isinstance(page, Said):
                said.append(page)
            else:
                yield page
    for gathering in public_gatherings(book):
        yield from gathering.build([each.value for each in said if each.kind == gathering.kind])


def public_batches(book: Notebook, order: Order) -> Iterator[Batch]:
    """Yield what to build for every page of the public copy; nothing is built yet."""
    copy = _Copy(book, order)
    yield Batch("front", partial(copy.telling, copy.front))
    yield Batch("menu", partial(copy.telling, copy.menu_pages))
    for here, listed in order.lists.unnoted.items():
        yield Batch(f"lists/{here}", partial(copy.telling, partial(copy.list_page, here, listed.kind)))
    for name in order.tutorials.unnoted:
        yield Batch(f"tutorials/{name}", partial(copy.telling, partial(copy.tutorial, name)))
    for name in order.articles.unnoted:
        yield Batch(f"articles/{name}", partial(copy.telling, partial(copy.article, name)))
    yield Batch("about", partial(copy.telling, copy.about))
    yield Batch("search", lambda: [copy.search()])
    yield Batch("moved", copy.moved)
    yield Batch("missing", lambda: [copy.missing()])
    yield Batch("signs", lambda: [icon_drawing(book), icon(book)])
    if book.workshop.shop.address:
        yield Batch("feed", copy.feed)


def public_gatherings(book: Notebook) -> tuple[Gathering, ...]:
    """Return what is made of the pages when all of them are built."""
    address = book.workshop.shop.address
    words = Gathering("words", _FOUND, lambda said: [words_script([Told(*each) for each in said])])
    if address is None:
        return (words,)
    return (words, Gathering("sitemap", _MAPPED, lambda said: _mapped(book, address, said)))


def _mapped(book: Notebook, address: str, said: Sequence[Sequence[Any]]) -> Iterator[Text]:
    """Yield what tells a host's root of all pages."""
    yield from sitemap(address, [Mapped(here, changed) for here, changed in said])
    yield robots(address)
    if book.workshop.shop.domain_file:
        yield domain_file(address)


@dataclass(frozen=True)
class _Copy:
    """The public copy while its pages are built; what many of them need is worked out once, and noted at each look."""

    book: Notebook
    order: Order

    @cached_property
    def teller(self) -> Teller:
        return Teller(self.book, self.book.workshop.shop.address)

    @cached_property
    def _menus(self) -> Worked[Menu]:
        return Worked(lambda: ("menu",), lambda _: menu(self.book, _leading_to_tutorial))

    @property
    def menu(self) -> Menu:
        return self._menus["menu"]

    @property
    def gifts_way(self) -> Link | None:
        return Link(say("Gift ideas"), GIFTS) if self.order.groups["gifts"] else None

    def telling(self, build: Callable[[], Iterable[Page | Drawn | Said]]) -> Iterator[Page | Drawn | Said]:
        """Yield pages with what they say of themselves for the search and for the sitemap."""
        for page in build():
            yield page
            if not isinstance(page, Page):
                continue
            view, changed = page.view, None
            if isinstance(view, Tutorial | Article):
                latest = view.updated or view.published
                changed = latest.iso if latest else None
                told = told_tutorial if isinstance(view, Tutorial) else told_article
                yield Said(_FOUND, list(told(page.address, view)))  # type: ignore[arg-type]
            yield Said(_MAPPED, [page.address, changed])

    def front(self) -> Iterator[Page | Drawn]:
        shop, projects = self.book.workshop.shop, self.book.workshop.projects
        newest = [projects[each] for each in self.order.lists[TUTORIALS].tutorials[:_FRONT_TILES]]
        tiles = tuple(tile(self.book, each) for each in newest)
        rows = tuple(map(self._article_row, self.order.lists[ARTICLES].articles[:_FRONT_ARTICLES]))
        view = FrontPage(tiles, rows, self.menu.sections, self.gifts_way)
        page = Page("index.html", "public/front.html", shop.name, view, door="index.html", description=shop.line)
        drawn = social_of_project(self.book, newest[0]) if newest else None
        if drawn:
            titled = replace(drawn.sign, words=shop.name, under="")
            drawn = Drawn(f"social/{titled.name}", titled)
        yield from self.teller.told(page, drawn=drawn)

    def list_page(self, here: str, kind: str) -> Iterator[Page | Drawn]:
        """Yield one page of a list; each has a title of its own."""
        listed = self.order.lists[here]
        paging = dict(pages_in(listed.first, listed.of))[here]
        ways: list[Link] = []
        if kind == "tutorials":
            page = self._tutorials_page(here, listed, paging)
        elif kind == "articles":
            view = ArticleList(tuple(map(self._article_row, listed.articles)), paging)
            page = Page(here, "public/articles.html", say("Articles"), view, door=ARTICLES)
        else:
            page, way = self._group_page(here, listed, paging)
            ways.append(way)
        if paging.number > 1:
            page = replace(
                page, title=say("{title}, page {n}", title=page.title, n=self.book.wording.count(paging.number))
            )
        yield from self.teller.told(page, ways)

    def _tutorials_page(self, here: str, listed: Listed, paging: Paging) -> Page:
        first = listed.number == 1
        view = TutorialList(
            tuple(map(self._tile, listed.tutorials)),
            paging,
            self._material_ways() if first else (),
            tuple(Link(*each) for each in self.order.groups["occasion"]) if first else (),
            tuple(Link(*each) for each in self.order.groups["month"]) if first else (),
            self.gifts_way if first else None,
        )
        return Page(here, "public/tutorials.html", say("Tutorials"), view, door=TUTORIALS)

    def _group_page(self, here: str, listed: Listed, paging: Paging) -> tuple[Page, Link]:
        material = listed.kind == "material"
        word = say(listed.word) if material else listed.word
        title = word[:1].upper() + word[1:]
        if self.order.lists[TUTORIALS].tutorials:
            back, way = Link(say("All tutorials"), TUTORIALS), Link(say("Tutorials"), TUTORIALS)
        else:
            back, way = Link(say("All articles"), ARTICLES), Link(say("Articles"), ARTICLES)
        view = GroupList(
            _group_kind(listed.kind),
            title,
            swatch(listed.word, width=184, height=56) if material else None,
            tuple(map(self._tile, listed.tutorials)),
            tuple(map(self._article_row, listed.articles)),
            paging,
            back,
        )
        return Page(here, "public/group.html", title, view, door=back.address), way

    def tutorial(self, name: str) -> Iterator[Page | Drawn]:
        project = self.book.workshop.projects[name]
        page = tutorial_page(self.book, project, self.order)
        drawn = social_of_project(self.book, project)
        yield from self.teller.told(page, [Link(say("Tutorials"), TUTORIALS)], drawn)

    def article(self, name: str) -> Iterator[Page | Drawn]:
        page = self._article_page(name)
        yield from self.teller.told(page, [Link(say("Articles"), ARTICLES)], social_of_page(self.book, page.title))

    def _article_page(self, name: str) -> Page:
        articles, place = self.book.workshop.articles, self.order.articles[name]
        newer = _article_link(articles[place.newer]) if place.newer else None
        older = _article_link(articles[place.older]) if place.older else None
        return _article_page(self.book, articles[name], newer, older, self.order.paid_links)

    def menu_pages(self) -> Iterator[Page | Drawn | Said]:
        """Yield every page of the menu with the gift ideas, and what the menu says for the search."""
        shop = self.book.workshop.shop
        whole = self.menu
        items = {item.anchor: item for section in whole.sections for item in section.items}
        yield from (Said(_FOUND, list(told_item(item))) for item in items.values())
        projects = {addresses.slug(project.id): project for project in self.book.newest_first}
        for sheet in menu_sheets(whole):
            view = MenuPage(sheet.menu, sheet.section, sheet.first, sheet.paging, menu_paper(whole), self.gifts_way)
            nodes = [
                product_node(shop.address, item, public_price(self.book, projects[item.anchor]), shop.currency)
                for section in sheet.menu.sections
                for item in section.items
                if shop.address and item.address.startswith(f"{sheet.address}#")
            ]
            page = Page(sheet.address, "public/menu.html", sheet.title, view, door=addresses.MENU)
            above = [Link(say("Menu"), addresses.MENU)] if sheet.section else []
            yield from self.teller.told(page, above, nodes=nodes)
        gifts = gift_ideas(self.book, items)
        for here, ideas in gift_sheets(gifts) if gifts else ():
            title = say("Gift ideas: {group}", group=ideas.group) if ideas.group else say("Gift ideas")
            if ideas.paging and ideas.paging.number > 1:
                title = say("{title}, page {n}", title=title, n=ideas.paging.number)
            page = Page(here, "public/gifts.html", title, ideas, door=addresses.MENU)
            above = [Link(say("Menu"), addresses.MENU), *([Link(say("Gift ideas"), GIFTS)] if ideas.group else [])]
            yield from self.teller.told(page, above)

    def about(self) -> Iterator[Page | Drawn]:
        shop = self.book.workshop.shop
        title, words = title_and_rest(self.book.workshop.about or "")
        text = None
        if words.strip():
            text, _ = written(words, lambda _: None, lambda picture: figure_html(picture, "about.html"))
        view = About(text, shop.contact, shop.lead_time)
        yield from self.teller.told(
            Page("about.html", "public/about.html", title or say("About"), view, door="about.html")
        )

    def search(self) -> Page:
        elsewhere = [
            each for each in public_frame(self.book).doors if each.address in (TUTORIALS, ARTICLES, "menu.html")
        ]
        things = sum(len(section.items) for section in self.menu.sections)
        count = len(tutorials(self.book)) + len(articles(self.book)) + things
        return Page(
            "search.html",
            "public/search.html",
            say("Search"),
            SearchPage(DATA, count, tuple(elsewhere)),
            door="search.html",
        )

    def moved(self) -> Iterator[Page]:
        for project in tutorials(self.book):
            for old in project.was:
                yield self._leading_on(addresses.tutorial(old), tutorial_link(project))
        for article in articles(self.book):
            for old in article.head.was:
                yield self._leading_on(addresses.article(old, FOLDER), _article_link(article))

    def _leading_on(self, here: str, to: Link) -> Page:
        address = self.book.workshop.shop.address
        whole = canonical(address, to.address) if address else None
        return Page(here, "public/moved.html", to.text, Moved(to, whole))

    def missing(self) -> Page:
        address = self.book.workshop.shop.address
        doors = public_frame(self.book).doors
        ways = tuple(Link(each.text, canonical(address, each.address)) if address else each for each in doors)
        return Page("404.html", "public/missing.html", say("Not here"), Missing(ways))

    def feed(self) -> Iterator[Text]:
        """Yield the feed, where anything has a day."""
        shop, order = self.book.workshop.shop, self.order
        projects = self.book.workshop.projects
        entries = [
            Entry(page.address, order.tutorials[name].first_id, page.view)
            for name in order.latest["tutorials"]
            for page in [tutorial_page(self.book, projects[name], order)]
        ]
        entries += [
            Entry(page.address, order.articles[name].first_id, page.view)
            for name in order.latest["articles"]
            for page in [self._article_page(name)]
        ]
        found = feed(shop.address or "", shop.name, shop.line, tag_of(shop.locale), entries)
        if found:
            yield found

    def _material_ways(self) -> tuple[MaterialWay, ...]:
        return tuple(
            MaterialWay(Link(say(word), address), swatch(word, width=28, height=28))
            for word, address in self.order.groups["material"]
        )

    def _tile(self, name: str) -> PublicTile:
        return tile(self.book, self.book.workshop.projects[name])

    def _article_row(self, name: str) -> ArticleRow:
        article = self.book.workshop.articles[name]
        return ArticleRow(_article_link(article), article.head.summary, self.book.wording.day(article.head.published))


def _group_kind(kind: str) -> str:
    return {"material": say("Material"), "occasion": say("Occasion"), "month": say("Month")}[kind]


def _leading_to_tutorial(project: Project) -> Link | None:
    return tutorial_link(project) if project.share.tutorial else None


def _article_link(article: ArticleRecord) -> Link:
    return Link(article.title, addresses.article(article.id, FOLDER))


def _article_page(
    book: Notebook, article: ArticleRecord, newer: Link | None, older: Link | None, paid: frozenset[str]
) -> Page:
    here = addresses.article(article.id, FOLDER)
    text, _ = written(
        article.text,
        lambda path: picture_at(book.pictures, f"articles/{path}", article.title),
        lambda picture: figure_html(picture, here, IN_TEXT),
    )
    text, pays = with_paid_links(text, paid)
    day = book.wording.day
    view = Article(
        article.title,
        text,
        day(article.head.published),
        day(article.head.updated),
        article.head.summary,
        occasion_links(article.head.occasions),
        say(DISCLOSURE) if pays else None,
        newer,
        older,
    )
    return Page(here, "public/article.html", article.title, view, door=ARTICLES, description=article.head.summary)
