"""`maker-site print menu`: the menu as a sheet, a poster or a leaflet."""

from __future__ import annotations

import tempfile
from pathlib import Path

import click

from maker_site.cli.paper_file import check_target, fail, paper_asked, tell_cautions, write_paper
from maker_site.cli.reading import read_book
from maker_site.language import say, speaking
from maker_site.media import PictureProblem
from maker_site.pages.menu import menu
from maker_site.pages.notebook import Notebook
from maker_site.paper.menu import menu_document
from maker_site.paper.sizes import SheetSize, sheet_of, sheet_size
from maker_site.paper.typesetting import Document, PaperProblem, missing_words
from maker_site.writer.gather import side_by_side
from maker_site.writer.printing import language_of, make_picture, menu_card_of, menu_pictures
from maker_site.writer.setting_apart import setting_apart
from maker_site.writer.themes import ThemeProblem, theme

_USUAL = "A4"


def run(content: Path, paper: str | None, folds: int, out: Path | None, theme_name: str) -> None:
    """Make the menu of what is shared and say how it is to be folded."""
    try:
        with setting_apart(theme(theme_name, content), content) as set_apart, tempfile.TemporaryDirectory() as name:
            book = read_book(content)
            shop = book.workshop.shop
            usual = sheet_of(shop.paper) if shop.paper else sheet_size(_USUAL)
            sheet = paper_asked(paper, shop.units.length) or usual
            target = out or Path("menu.pdf")
            check_target(target)
            with speaking(book.language):
                document, entries = _document(book, sheet, folds, Path(name))
            set_paper = set_apart(document)
    except ThemeProblem as problem:
        raise click.UsageError(str(problem)) from problem
    except (PictureProblem, PaperProblem) as problem:
        fail([str(problem)])
    write_paper(target, set_paper.pdf)
    tell_cautions([missing_words(set_paper.missing)] if set_paper.missing else [])
    click.echo(f"{entries} {'entry' if entries == 1 else 'entries'} on {sheet.name}: {target}")
    if folds:
        first, then = ("left", "right") if book.language.direction == "rtl" else ("right", "left")
        how = {
            1: "fold it once",
            2: f"fold the {first} third of the inside over, then the {then} one over it",
            3: "fold it to and fro",
        }[folds]
        click.echo(f"Print both sides, turned on the short edge, then {how} along the dotted marks.")


def _document(book: Notebook, sheet: SheetSize, folds: int, folder: Path) -> tuple[Document, int]:
    """Return the menu as it is to be set, its pictures made into a folder, and how many entries it has."""
    view = menu(book, lambda _: None)
    pictures = menu_pictures(book, view)
    names = sorted(pictures)
    made = side_by_side(lambda each: make_picture(book, each, pictures[each], folder), names)
    files = dict(zip(names, made, strict=True))
    card = menu_card_of(book, view)
    title = say("{shop}: menu", shop=book.workshop.shop.name)
    document = menu_document(card, sheet, folds, title, language_of(book), files)
    return document, sum(len(part.lines) for part in card.parts)
