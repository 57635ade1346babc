"""Every page of the public copy, built only of what the maker chose to share."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from markupsafe import Markup

from maker_site.pages import addresses
from maker_site.pages.marks import swatch
from maker_site.pages.menu import menu, menu_paper, shared_photos
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page, Text
from maker_site.pages.parts import Link, Picture
from maker_site.pages.picture_html import figure_html
from maker_site.pages.pictures import picture_at
from maker_site.pages.public.steps import title_and_rest, write_up
from maker_site.pages.public.views import (
    About,
    Article,
    ArticleList,
    ArticleRow,
    FrontPage,
    MenuPage,
    PublicFrame,
    PublicTile,
    SharedSetting,
    SharedSupply,
    Tutorial,
    TutorialList,
)
from maker_site.pages.stand_in import blank_drawing
from maker_site.pages.wording import face_words, hazards
from maker_site.pages.writing import written
from maker_site.records import Article as ArticleRecord
from maker_site.records import Project

FOLDER = "articles"
_FRONT_TILES = 6
_FRONT_ARTICLES = 4
_NAMES_A_SUPPLY = "limit"
_IN_TEXT = "(min-width: 52rem) 640px, calc(100vw - 32px)"
"""How wide the theme lays a picture of a text."""
DISCLOSURE = (
    "Some links on this page are paid links: the maker earns something when you buy through them, at no cost to you."
)


def public_frame(book: Notebook) -> PublicFrame:
    """Return what surrounds every page, with the doors that have something behind them."""
    shop = book.workshop.shop
    doors = [Link("Home", "index.html")]
    if tutorials(book):
        doors.append(Link("Tutorials", "tutorials/index.html"))
    if articles(book):
        doors.append(Link("Articles", f"{FOLDER}/index.html"))
    if any(project.share.menu for project in book.newest_first):
        doors.append(Link("Menu", "menu.html"))
    doors.append(Link("About", "about.html"))
    return PublicFrame(
        shop.name,
        shop.line,
        shop.notice,
        shop.locale.replace("_", "-"),
        book.wording.locale.text_direction,
        tuple(doors),
        shop.address,
        shop.contact,
    )


def public_pages(book: Notebook) -> Iterator[Page | Text]:
    """Yield every page of the public copy."""
    shop = book.workshop.shop
    shown = tutorials(book)
    tiles = tuple(_tile(book, project) for project in shown)
    rows = tuple(_article_row(book, article) for article in articles(book))
    card = menu(book, lambda project: _tutorial_link(project) if project.share.tutorial else None)
    front = FrontPage(tiles[:_FRONT_TILES], rows[:_FRONT_ARTICLES], card.sections)
    yield Page("index.html", "public/front.html", shop.name, front, door="index.html", description=shop.line)
    door = "tutorials/index.html"
    yield Page(door, "public/tutorials.html", "Tutorials", TutorialList(tiles), door=door)
    for index, project in enumerate(shown):
        newer = shown[index - 1] if index else None
        older = shown[index + 1] if index + 1 < len(shown) else None
        yield _tutorial_page(book, project, newer, older)
    door = f"{FOLDER}/index.html"
    yield Page(door, "public/articles.html", "Articles", ArticleList(rows), door=door)
    for article in articles(book):
        yield _article_page(book, article)
    yield Page("menu.html", "public/menu.html", "Menu", MenuPage(card, menu_paper(card)), door="menu.html")
    yield _about_page(book)


def tutorials(book: Notebook) -> Sequence[Project]:
    """Return the projects whose tutorial is shared, the latest published first."""
    shared = [project for project in book.newest_first if project.share.tutorial]
    return sorted(shared, key=lambda project: project.share.published or project.made or date.min, reverse=True)


def articles(book: Notebook) -> Sequence[ArticleRecord]:
    """Return the shared articles, the latest published first."""
    shared = [article for article in book.workshop.articles.values() if article.head.share]
    return sorted(shared, key=lambda article: article.head.published or date.min, reverse=True)


def _tutorial_link(project: Project) -> Link:
    return Link(project.title, addresses.tutorial(project.id))


def _cover(book: Notebook, project: Project) -> tuple[Picture | None, Markup | None]:
    photos = shared_photos(book, project)
    if photos:
        return next(iter(photos.values())), None
    return None, blank_drawing(book.workshop.blanks[project.blank], book.wording, project.id)


def _tile(book: Notebook, project: Project) -> PublicTile:
    picture, stand_in = _cover(book, project)
    substrate = book.workshop.blanks[project.blank].substrate
    return PublicTile(
        _tutorial_link(project),
        substrate,
        swatch(substrate, width=28, height=28),
        project.summary,
        project.difficulty,
        book.wording.day(project.share.published),
        picture,
        stand_in,
    )


def _tutorial_page(book: Notebook, project: Project, newer: Project | None, older: Project | None) -> Page:
    here = addresses.tutorial(project.id)
    blank = book.workshop.blanks[project.blank]
    photos = shared_photos(book, project)
    cover, stand_in = _cover(book, project)
    _, words = title_and_rest(project.tutorial or "")
    text, used = written(words, photos.get, lambda picture: figure_html(picture, here, _IN_TEXT))
    parted = write_up(text, addresses.relative(here, cover.fallback.address) if cover else None)
    supplies = _supplies(book, project) if project.share.supplies else ()
    links = [each.link for each in supplies if each.link]
    view = Tutorial(
        project.title,
        project.summary,
        blank.substrate,
        swatch(blank.substrate, width=184, height=56),
        book.workshop.method_of(project),
        project.difficulty,
        project.time_needed,
        book.wording.day(project.share.published),
        book.wording.day(project.share.updated),
        project.occasions,
        cover,
        stand_in,
        tuple(picture for file, picture in photos.items() if file not in used and picture is not cover),
        parted.opening,
        parted.steps,
        _setting(book, project) if project.share.setting else None,
        hazards(tuple(each for each in book.remakes[project.id].cautions if each.kind != _NAMES_A_SUPPLY)),
        supplies,
        DISCLOSURE if any(link.paid for link in links) else None,
        tuple(words for words in (project.care or blank.care, blank.food_contact) if words),
        Link("Watch the video", project.video) if project.video else None,
        _tutorial_link(newer) if newer else None,
        _tutorial_link(older) if older else None,
    )
    return Page(
        here,
        "public/tutorial.html",
        project.title,
        view,
        door="tutorials/index.html",
        description=project.summary,
    )


def _setting(book: Notebook, project: Project) -> SharedSetting | None:
    """Return the maker's own proven setting; a supplier's sheet is theirs and never shared."""
    remake = book.remakes[project.id]
    point = remake.setting
    if point is None or point.evidence is None or point.true is None or point.time is None:
        return None
    wording = book.wording
    found = point.evidence
    kind = f"{remake.press.kind} press" if remake.press and remake.press.kind else "press"
    kind = kind.replace("press press", "press")
    where = f"our {kind}"
    return SharedSetting(
        wording.temperature(point.true),
        wording.time(point.time),
        point.pressure.word if point.pressure else None,
        face_words(point.face),
        remake.blank.substrate,
        remake.press.kind if remake.press else None,
        f"{found.good} of {found.pressed} came out well on {where}. Yours will differ: "
        "start from your own supplier’s sheet, and test one.",
    )


def _supplies(book: Notebook, project: Project) -> tuple[SharedSupply, ...]:
    """Return what a reader needs: the blank and the project's supplies, with the links that the maker gave."""
    blank = book.workshop.blanks[project.blank]
    pieces = f"{project.pieces}"
    found = [SharedSupply(blank.name, pieces, _shop_link(blank.link, paid=blank.paid_link))]
    for use in project.supplies:
        supply = book.workshop.supplies[use.supply]
        amount = use.use.typed if use.use else None
        found.append(SharedSupply(supply.name, amount, _shop_link(supply.link, paid=supply.paid_link)))
    return tuple(found)


def _shop_link(address: str | None, *, paid: bool) -> Link | None:
    return Link("where to find it", address, paid=paid) if address else None


def _article_row(book: Notebook, article: ArticleRecord) -> ArticleRow:
    link = Link(article.title, addresses.article(article.id, FOLDER))
    return ArticleRow(link, article.head.summary, book.wording.day(article.head.published))


def _article_page(book: Notebook, article: ArticleRecord) -> Page:
    here = addresses.article(article.id, FOLDER)
    text, _ = written(
        article.text,
        lambda path: picture_at(book.pictures, f"articles/{path}", article.title),
        lambda picture: figure_html(picture, here, _IN_TEXT),
    )
    day = book.wording.day
    view = Article(article.title, text, day(article.head.published), day(article.head.updated), article.head.summary)
    return Page(
        here, "public/article.html", article.title, view, door=f"{FOLDER}/index.html", description=article.head.summary
    )


def _about_page(book: Notebook) -> Page:
    shop = book.workshop.shop
    title, words = title_and_rest(book.workshop.about or "")
    text = None
    if words.strip():
        text, _ = written(words, lambda _: None, lambda picture: figure_html(picture, "about.html"))
    view = About(text, shop.contact, shop.lead_time)
    return Page("about.html", "public/about.html", title or "About", view, door="about.html")
