"""Writing in the workshop copy: articles, write-ups, the page about the shop."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from maker_site.language import say
from maker_site.pages import addresses
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.paging import on_page, pages_of
from maker_site.pages.parts import Link
from maker_site.pages.picture_html import figure_html
from maker_site.pages.pictures import picture_at
from maker_site.pages.workshop.views import AboutPage, ArticlePage, WritingList, WritingRow
from maker_site.pages.writing import written
from maker_site.records import Article, Project

FOLDER = "writing"
_DOOR = f"{FOLDER}/index.html"
ROWS_A_PAGE = 60
"""Articles and write-ups on one page of the list."""


def writing_pages(book: Notebook) -> Iterator[Page]:
    """Yield writing/index.html, a page for each article, and about.html where there is something about the shop."""
    about = Link(say("About the shop"), "about.html") if book.workshop.about else None
    rows = writing_rows(book)
    for here, place in pages_of(_DOOR, rows, at_once=ROWS_A_PAGE, words=(say("Newer"), say("Older"))):
        shown = WritingList(tuple(on_page(rows, place, ROWS_A_PAGE)), about if place.number == 1 else None, place)
        title = say("Writing") if place.number == 1 else say("Writing, page {n}", n=book.wording.count(place.number))
        yield Page(here, "workshop/writing.html", title, shown, door=_DOOR)
    for article in book.workshop.articles.values():
        here = addresses.article(article.id, FOLDER)
        text, _ = written(
            article.text,
            lambda path, title=article.title: picture_at(book.pictures, f"articles/{path}", title),  # type: ignore[misc]
            lambda picture, here=here: figure_html(picture, here),  # type: ignore[misc]
        )
        day = book.wording.day
        view = ArticlePage(
            article.title, text, day(article.head.published), day(article.head.updated), article.head.share
        )
        yield Page(here, "workshop/article.html", article.title, view, door=_DOOR)
    if book.workshop.about:
        text, _ = written(book.workshop.about, lambda _: None, lambda picture: figure_html(picture, "about.html"))
        yield Page("about.html", "workshop/about.html", say("About"), AboutPage(text), door=_DOOR)


def writing_rows(book: Notebook) -> Sequence[WritingRow]:
    """Return everything written, the latest first."""
    dated = [_of_article(book, article) for article in book.workshop.articles.values()]
    dated += [_of_write_up(book, each) for each in book.workshop.projects.values() if book.is_written_up[each.id]]
    dated.sort(key=lambda each: each[1].link.text.casefold())
    return [row for _, row in sorted(dated, key=lambda each: each[0], reverse=True)]


def _of_article(book: Notebook, article: Article) -> tuple[date, WritingRow]:
    head = article.head
    link = Link(article.title, addresses.article(article.id, FOLDER))
    row = WritingRow(link, say("Article"), book.wording.day(head.published), head.summary, head.share)
    return head.published or date.min, row


def _of_write_up(book: Notebook, project: Project) -> tuple[date, WritingRow]:
    when = project.share.published or project.made
    link = Link(project.title, addresses.project(project.id) + "#write-up")
    row = WritingRow(link, say("Write-up"), book.wording.day(when), project.summary, project.share.tutorial)
    return when or date.min, row
