"""The workshop's front page: the newest work, what is running low, what needs attention."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from maker_site.language import say, say_n
from maker_site.pages import addresses
from maker_site.pages.marks import swatch
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.parts import Link
from maker_site.pages.workshop.pieces import blank_link, press_link, project_link, tile
from maker_site.pages.workshop.views import Attention, Home, LowBlank
from maker_site.workings.calibration import cautions as reading_cautions
from maker_site.workings.money import running_low

_NEWEST = 9
_MOST_SENTENCES = 12
_MOST_LOW = 12
_SOON = timedelta(days=21)
"""Orders due within three weeks are named; so are those that are late."""


def home_page(book: Notebook) -> Page:
    """Return index.html."""
    said = list(_attention(book))
    if len(said) > _MOST_SENTENCES:
        left = len(said) - _MOST_SENTENCES + 1
        more = say_n(
            "{n} thing more: “maker-site check” lists everything.",
            "{n} things more: “maker-site check” lists everything.",
            left,
            n=book.wording.count(left),
        )
        said = [*said[: _MOST_SENTENCES - 1], Attention(more, None)]
    low = running_low(book.stock)
    view = Home(
        tuple(tile(book, project, "index.html") for project in book.newest_first[:_NEWEST]),
        tuple(said),
        tuple(
            LowBlank(
                blank_link(book, each.blank),
                each.left or 0,
                each.low_at or 0,
                swatch(book.workshop.blanks[each.blank].substrate),
            )
            for each in low[:_MOST_LOW]
        ),
        max(0, len(low) - _MOST_LOW),
        len(book.workshop.projects),
        len(book.workshop.blanks),
        sum(row.pressed for row in book.workshop.pressings),
        sum(row.good for row in book.workshop.pressings),
    )
    return Page("index.html", "workshop/home.html", say("Workshop"), view, door="index.html")


def _attention(book: Notebook) -> Iterator[Attention]:
    yield from _orders(book)
    for name in book.workshop.projects:
        if found := book.shown("too hot", _too_hot, name):
            yield found
    for press in book.workshop.presses.values():
        if press.id in book.pressings_by_press:
            for sentence in reading_cautions(press, book.today, book.figures.day):
                yield Attention(sentence, press_link(book, press.id))
    for problem in book.cautions:
        where = f"{problem.file}, line {problem.line}" if problem.line else problem.file
        yield Attention(f"{where}: {problem.message}.", None, english=True)
    for name in book.workshop.blanks:
        if found := book.shown("no setting", _no_setting, name):
            yield found


def _too_hot(book: Notebook, name: str) -> Attention | None:
    remake = book.remakes[name]
    if not remake.over_limit or not remake.limit:
        return None
    words = say(
        "{project}: its setting is above what {what} bears.", project=remake.project.title, what=remake.limit.what
    )
    return Attention(words, Link(say("Press card"), addresses.card(name)))


def _no_setting(book: Notebook, name: str) -> Attention | None:
    if book.points[name]:
        return None
    return Attention(say("No setting is known, not even common practice."), blank_link(book, name))


def _orders(book: Notebook) -> Iterator[Attention]:
    due = sorted(
        (project.order.due, project.id)
        for project in book.workshop.projects.values()
        if project.order and project.order.due and not project.order.paid
    )
    for day, project_id in due:
        if day - book.today > _SOON:
            continue
        parts = {"project": book.workshop.projects[project_id].title, "day": book.wording.day(day).words}
        if day < book.today:
            sentence = say("The order for {project} is due {day} and is late.", **parts)
        else:
            sentence = say("The order for {project} is due {day}.", **parts)
        yield Attention(sentence, project_link(book, project_id))
