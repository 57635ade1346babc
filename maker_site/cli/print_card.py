"""`maker-site print card`: press cards to laminate, one a page or several on a sheet."""

from __future__ import annotations

from pathlib import Path

import click

from maker_site.cli.paper_file import check_target, fail, paper_asked, tell_cautions, write_paper
from maker_site.cli.reading import read_book, record_named
from maker_site.frozen import frozen
from maker_site.language import say, speaking
from maker_site.pages.notebook import Notebook
from maker_site.paper.card import card_document, pages_of
from maker_site.paper.sizes import sheet_size
from maker_site.paper.typesetting import PaperProblem, missing_words
from maker_site.records import Project
from maker_site.records.problems import nearest
from maker_site.writer.printing import card_of_project, language_of
from maker_site.writer.setting_apart import setting_apart
from maker_site.writer.themes import ThemeProblem, theme

_USUAL = "A6"


@frozen
class Which:
    """Which projects: some by name, those of a substrate, or all."""

    ids: tuple[str, ...]
    substrate: str | None
    every: bool


def run(content: Path, which: Which, paper: str | None, out: Path | None, theme_name: str) -> None:
    """Make the card book and say how many cards it has on how many sheets."""
    if bool(which.ids) + bool(which.substrate) + which.every != 1:
        raise click.UsageError("say which: some PROJECTs, --substrate S, or --all")
    try:
        with setting_apart(theme(theme_name, content), content) as set_apart:
            book = read_book(content)
            projects = _projects(book, which)
            sheet = paper_asked(paper, book.workshop.shop.units.length) or sheet_size(_USUAL)
            name = projects[0].id if len(projects) == 1 else which.substrate or "press"
            target = out or Path(f"{name.replace(' ', '-')}-card{'s' if len(projects) > 1 else ''}.pdf")
            check_target(target)
            with speaking(book.language):
                title = _title(book, projects)
                cards = [card_of_project(book, project) for project in projects]
                document = card_document(cards, sheet, title, language_of(book))
            made = set_apart(document)
    except ThemeProblem as problem:
        raise click.UsageError(str(problem)) from problem
    except PaperProblem as problem:
        fail([str(problem)])
    write_paper(target, made.pdf)
    tell_cautions([missing_words(made.missing)] if made.missing else [])
    pages = pages_of(len(cards), sheet)
    click.echo(
        f"{len(cards)} {'card' if len(cards) == 1 else 'cards'} on {pages} {'sheet' if pages == 1 else 'sheets'} "
        f"of {sheet.name}: {target}"
    )


def _title(book: Notebook, projects: list[Project]) -> str:
    if len(projects) == 1:
        return say("Press card: {title}", title=projects[0].title)
    return say("Press cards of {shop}", shop=book.workshop.shop.name)


def _projects(book: Notebook, which: Which) -> list[Project]:
    workshop = book.workshop
    if which.ids:
        return [record_named(workshop.projects, each, "project") for each in dict.fromkeys(which.ids)]
    found = list(workshop.projects.values())
    if which.substrate:
        found = [each for each in found if workshop.blanks[each.blank].substrate == which.substrate.strip().lower()]
        if not found:
            known = sorted({workshop.blanks[each.blank].substrate for each in workshop.projects.values()})
            raise click.UsageError(f"there is no project on “{which.substrate}”{nearest(which.substrate, known)}")
    if not found:
        raise click.UsageError("there is no project yet")
    return found
