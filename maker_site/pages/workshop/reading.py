"""Writing in the workshop copy: articles, write-ups, the page about the shop."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from maker_site.language import say
from maker_site.pages import addresses
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.parts import Link
from maker_site.pages.picture_html import figure_html
from maker_site.pages.pictures import picture_at
from maker_site.pages.workshop.views import AboutPage, ArticlePage, WritingList, WritingRow
from maker_site.pages.writing import written

FOLDER = "writing"
_DOOR = f"{FOLDER}/index.html"


def writing_pages(book: Notebook) -> Iterator[Page]:
    """Yield writing/index.html, a page for each article, and about.html where there is something about the shop."""
    about = Link(say("About the shop"), "about.html") if book.workshop.about else None
    yield Page(_DOOR, "workshop/writing.html", say("Writing"), WritingList(_rows(book), about), door=_DOOR)
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


def _rows(book: Notebook) -> tuple[WritingRow, ...]:
    day = book.wording.day
    rows: list[tuple[date, WritingRow]] = []
    for article in book.workshop.articles.values():
        published = article.head.published
        link = Link(article.title, addresses.article(article.id, FOLDER))
        rows.append(
            (
                published or date.min,
                WritingRow(link, say("Article"), day(published), article.head.summary, article.head.share),
            )
        )
    for project in book.workshop.projects.values():
        if book.is_written_up[project.id]:
            when = project.share.published or project.made
            link = Link(project.title, addresses.project(project.id) + "#write-up")
            rows.append(
                (
                    when or date.min,
                    WritingRow(link, say("Write-up"), day(when), project.summary, project.share.tutorial),
                )
            )
    rows.sort(key=lambda each: each[1].link.text.casefold())
    return tuple(row for _, row in sorted(rows, key=lambda each: each[0], reverse=True))
