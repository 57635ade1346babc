"""Every page of the public copy, built only of what the maker chose to share."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property

from markupsafe import Markup

from maker_site.language import page_language, say, spoken, tag_of
from maker_site.pages import addresses
from maker_site.pages.marks import swatch
from maker_site.pages.menu import menu, menu_paper
from maker_site.pages.menu_sheets import menu_sheets
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Drawn, Page, Text
from maker_site.pages.parts import Link, Menu, MenuItem, Paging
from maker_site.pages.picture_html import figure_html
from maker_site.pages.pictures import picture_at
from maker_site.pages.public.data import canonical, product_node
from maker_site.pages.public.feed import FEED, Entry, feed
from maker_site.pages.public.gifts import GIFTS, gift_ideas, gift_sheets, public_price
from maker_site.pages.public.lists import (
    Group,
    by_material,
    by_month,
    by_occasion,
    occasion_links,
    on_page,
    pages_of,
)
from maker_site.pages.public.paid import DISCLOSURE, paid_addresses, with_paid_links
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
    GiftIdeas,
    GroupList,
    MaterialWay,
    MenuPage,
    Missing,
    Moved,
    PublicFrame,
    SearchPage,
    Tutorial,
    TutorialList,
)
from maker_site.pages.writing import written
from maker_site.records import Article as ArticleRecord
from maker_site.records import Project

FOLDER = "articles"
TUTORIALS = "tutorials/index.html"
ARTICLES = f"{FOLDER}/index.html"
_FRONT_TILES = 6
_FRONT_ARTICLES = 4
_UNMAPPED = {"public/search.html", "public/moved.html", "public/missing.html"}
"""Pages that nobody is to find by a search engine."""


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
    copy = _Copy(book)
    mapped: list[Mapped] = []
    entries: list[Entry] = []
    told: list[Told] = [*map(told_item, copy.items.values())]
    for page in copy.pages():
        yield page
        if not isinstance(page, Page):
            continue
        view = page.view
        changed = None
        if isinstance(view, Tutorial):
            entries.append(Entry(page.address, copy.first_ids[page.address], view))
            told.append(told_tutorial(page.address, view))
        elif isinstance(view, Article):
            entries.append(Entry(page.address, copy.first_ids[page.address], view))
            told.append(told_article(page.address, view))
        if isinstance(view, Tutorial | Article):
            latest = view.updated or view.published
            changed = latest.iso if latest else None
        if page.template not in _UNMAPPED:
            mapped.append(Mapped(page.address, changed))
    yield words_script(told)
    yield icon_drawing(book)
    yield icon(book)
    yield from _of_the_host(book, entries, mapped)


def tutorials(book: Notebook) -> Sequence[Project]:
    """Return the projects whose tutorial is shared, the latest published first."""
    shared = [project for project in book.newest_first if project.share.tutorial]
    return sorted(shared, key=lambda project: project.share.published or project.made or date.min, reverse=True)


def articles(book: Notebook) -> Sequence[ArticleRecord]:
    """Return the shared articles, the latest published first."""
    shared = [article for article in book.workshop.articles.values() if article.head.share]
    return sorted(shared, key=lambda article: article.head.published or date.min, reverse=True)


def _of_the_host(book: Notebook, entries: Sequence[Entry], mapped: Sequence[Mapped]) -> Iterator[Text]:
    """Yield what needs the shop's address."""
    shop = book.workshop.shop
    if shop.address is None:
        return
    found = feed(shop.address, shop.name, shop.line, tag_of(shop.locale), entries)
    if found:
        yield found
    yield from sitemap(shop.address, mapped)
    yield robots(shop.address)
    if shop.domain_file:
        yield domain_file(shop.address)


@dataclass(frozen=True)
class _Copy:
    """The public copy while its pages are built; what many of them need is worked out once."""

    book: Notebook

    @cached_property
    def teller(self) -> Teller:
        return Teller(self.book, self.book.workshop.shop.address)

    @cached_property
    def tutorials(self) -> Sequence[Project]:
        return tutorials(self.book)

    @cached_property
    def articles(self) -> Sequence[ArticleRecord]:
        return articles(self.book)

    @cached_property
    def materials(self) -> Mapping[str, Group]:
        return by_material(self.book, self.tutorials)

    @cached_property
    def occasions(self) -> Mapping[str, Group]:
        return by_occasion(self.tutorials, self.articles)

    @cached_property
    def months(self) -> Sequence[Group]:
        return by_month(self.book, self.tutorials, self.articles)

    @cached_property
    def menu(self) -> Menu:
        return menu(self.book, lambda project: tutorial_link(project) if project.share.tutorial else None)

    @cached_property
    def items(self) -> Mapping[str, MenuItem]:
        """What is on the menu by its anchor."""
        return {item.anchor: item for section in self.menu.sections for item in section.items}

    @cached_property
    def gifts(self) -> GiftIdeas | None:
        return gift_ideas(self.book, self.items)

    @property
    def gifts_way(self) -> Link | None:
        return Link(say("Gift ideas"), GIFTS) if self.gifts else None

    @cached_property
    def first_ids(self) -> Mapping[str, str]:
        """The very first id of each tutorial and article by its address."""
        found = {addresses.tutorial(each.id): (*each.was, each.id)[0] for each in self.tutorials}
        return found | {addresses.article(each.id, FOLDER): (*each.head.was, each.id)[0] for each in self.articles}

    def pages(self) -> Iterator[Page | Text | Drawn]:
        """Yield every page with what is told of it."""
        yield from self._front()
        yield from self._tutorial_lists()
        yield from self._tutorials()
        yield from self._article_lists()
        yield from self._articles()
        yield from self._groups()
        yield from self._menu()
        yield from self._about()
        yield self._search()
        yield from self._moved()
        yield self._missing()

    def _front(self) -> Iterator[Page | Drawn]:
        shop = self.book.workshop.shop
        tiles = tuple(tile(self.book, each) for each in self.tutorials[:_FRONT_TILES])
        rows = tuple(_article_row(self.book, each) for each in self.articles[:_FRONT_ARTICLES])
        view = FrontPage(tiles, rows, self.menu.sections, self.gifts_way)
        page = Page("index.html", "public/front.html", shop.name, view, door="index.html", description=shop.line)
        drawn = social_of_project(self.book, self.tutorials[0]) if self.tutorials else None
        if drawn:
            titled = replace(drawn.sign, words=shop.name, under="")
            drawn = Drawn(f"social/{titled.name}", titled)
        yield from self.teller.told(page, drawn=drawn)

    def _tutorial_lists(self) -> Iterator[Page | Drawn]:
        for here, paging in pages_of(TUTORIALS, self.tutorials):
            first = paging.number == 1
            tiles = tuple(tile(self.book, each) for each in on_page(self.tutorials, paging))
            view = TutorialList(
                tiles,
                paging,
                self._material_ways() if first else (),
                tuple(Link(each.title, each.address) for each in self.occasions.values()) if first else (),
                tuple(Link(each.title, each.address) for each in self.months) if first else (),
                self.gifts_way if first else None,
            )
            yield from self._list(
                Page(here, "public/tutorials.html", say("Tutorials"), view, door=TUTORIALS), paging, ()
            )

    def _tutorials(self) -> Iterator[Page | Drawn]:
        shown = self.tutorials
        for index, project in enumerate(shown):
            newer = shown[index - 1] if index else None
            older = shown[index + 1] if index + 1 < len(shown) else None
            page = tutorial_page(self.book, project, (newer, older), (self.materials, self.occasions))
            drawn = social_of_project(self.book, project)
            yield from self.teller.told(page, [Link(say("Tutorials"), TUTORIALS)], drawn)

    def _article_lists(self) -> Iterator[Page | Drawn]:
        for here, paging in pages_of(ARTICLES, self.articles):
            rows = tuple(_article_row(self.book, each) for each in on_page(self.articles, paging))
            view = ArticleList(rows, paging)
            yield from self._list(Page(here, "public/articles.html", say("Articles"), view, door=ARTICLES), paging, ())

    def _articles(self) -> Iterator[Page | Drawn]:
        shown = self.articles
        for index, article in enumerate(shown):
            newer = _article_link(shown[index - 1]) if index else None
            older = _article_link(shown[index + 1]) if index + 1 < len(shown) else None
            page = _article_page(self.book, article, newer, older)
            yield from self.teller.told(
                page, [Link(say("Articles"), ARTICLES)], social_of_page(self.book, article.title)
            )

    def _groups(self) -> Iterator[Page | Drawn]:
        for substrate, group in self.materials.items():
            yield from self._group(say("Material"), group, swatch(substrate, width=184, height=56))
        for group in self.occasions.values():
            yield from self._group(say("Occasion"), group)
        for group in self.months:
            yield from self._group(say("Month"), group)

    def _group(self, kind: str, group: Group, drawn: Markup | None = None) -> Iterator[Page | Drawn]:
        title = group.title[:1].upper() + group.title[1:]
        if self.tutorials:
            back, way = Link(say("All tutorials"), TUTORIALS), Link(say("Tutorials"), TUTORIALS)
        else:
            back, way = Link(say("All articles"), ARTICLES), Link(say("Articles"), ARTICLES)
        for here, paging in pages_of(group.address, group.projects, group.articles):
            view = GroupList(
                kind,
                title,
                drawn,
                tuple(tile(self.book, each) for each in on_page(group.projects, paging)),
                tuple(_article_row(self.book, each) for each in on_page(group.articles, paging)),
                paging,
                back,
            )
            page = Page(here, "public/group.html", title, view, door=back.address)
            yield from self._list(page, paging, [way])

    def _menu(self) -> Iterator[Page | Drawn]:
        shop = self.book.workshop.shop
        projects = {addresses.slug(project.id): project for project in self.book.newest_first}
        for sheet in menu_sheets(self.menu):
            view = MenuPage(sheet.menu, sheet.section, sheet.first, sheet.paging, menu_paper(self.menu), self.gifts_way)
            nodes = [
                product_node(shop.address, item, public_price(self.book, projects[item.anchor]), shop.currency)
                for section in sheet.menu.sections
                for item in section.items
                if shop.address and item.address.startswith(f"{sheet.address}#")
            ]
            page = Page(sheet.address, "public/menu.html", sheet.title, view, door=addresses.MENU)
            above = [Link(say("Menu"), addresses.MENU)] if sheet.section else []
            yield from self.teller.told(page, above, nodes=nodes)
        for here, ideas in gift_sheets(self.gifts) if self.gifts else ():
            title = say("Gift ideas: {group}", group=ideas.group) if ideas.group else say("Gift ideas")
            if ideas.paging and ideas.paging.number > 1:
                title = say("{title}, page {n}", title=title, n=ideas.paging.number)
            page = Page(here, "public/gifts.html", title, ideas, door=addresses.MENU)
            above = [Link(say("Menu"), addresses.MENU), *([Link(say("Gift ideas"), GIFTS)] if ideas.group else [])]
            yield from self.teller.told(page, above)

    def _about(self) -> Iterator[Page | Drawn]:
        shop = self.book.workshop.shop
        title, words = title_and_rest(self.book.workshop.about or "")
        text = None
        if words.strip():
            text, _ = written(words, lambda _: None, lambda picture: figure_html(picture, "about.html"))
        view = About(text, shop.contact, shop.lead_time)
        yield from self.teller.told(
            Page("about.html", "public/about.html", title or say("About"), view, door="about.html")
        )

    def _search(self) -> Page:
        elsewhere = [
            each for each in public_frame(self.book).doors if each.address in (TUTORIALS, ARTICLES, "menu.html")
        ]
        count = len(self.tutorials) + len(self.articles) + len(self.items)
        return Page(
            "search.html",
            "public/search.html",
            say("Search"),
            SearchPage(DATA, count, tuple(elsewhere)),
            door="search.html",
        )

    def _moved(self) -> Iterator[Page]:
        for project in self.tutorials:
            for old in project.was:
                yield self._leading_on(addresses.tutorial(old), tutorial_link(project))
        for article in self.articles:
            for old in article.head.was:
                yield self._leading_on(addresses.article(old, FOLDER), _article_link(article))

    def _leading_on(self, here: str, to: Link) -> Page:
        address = self.book.workshop.shop.address
        whole = canonical(address, to.address) if address else None
        return Page(here, "public/moved.html", to.text, Moved(to, whole))

    def _missing(self) -> Page:
        address = self.book.workshop.shop.address
        doors = public_frame(self.book).doors
        ways = tuple(Link(each.text, canonical(address, each.address)) if address else each for each in doors)
        return Page("404.html", "public/missing.html", say("Not here"), Missing(ways))

    def _material_ways(self) -> tuple[MaterialWay, ...]:
        return tuple(
            MaterialWay(Link(each.title, each.address), swatch(substrate, width=28, height=28))
            for substrate, each in self.materials.items()
        )

    def _list(self, page: Page, paging: Paging, ways: Sequence[Link]) -> Iterator[Page | Drawn]:
        """Tell of one page of a list; each has a title of its own."""
        if paging.number > 1:
            page = replace(
                page, title=say("{title}, page {n}", title=page.title, n=self.book.wording.count(paging.number))
            )
        yield from self.teller.told(page, ways)


def _article_link(article: ArticleRecord) -> Link:
    return Link(article.title, addresses.article(article.id, FOLDER))


def _article_row(book: Notebook, article: ArticleRecord) -> ArticleRow:
    return ArticleRow(_article_link(article), article.head.summary, book.wording.day(article.head.published))


def _article_page(book: Notebook, article: ArticleRecord, newer: Link | None, older: Link | None) -> Page:
    here = addresses.article(article.id, FOLDER)
    text, _ = written(
        article.text,
        lambda path: picture_at(book.pictures, f"articles/{path}", article.title),
        lambda picture: figure_html(picture, here, IN_TEXT),
    )
    text, pays = with_paid_links(text, paid_addresses(book.workshop))
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
