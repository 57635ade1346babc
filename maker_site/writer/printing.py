"""Documents for paper: the theme's templates, and what the pages say put as paper needs it."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import Final

import segno

from maker_site.media import make
from maker_site.pages.marks import caution_icon, standing_alone
from maker_site.pages.notebook import Notebook
from maker_site.pages.parts import Menu, MenuItem
from maker_site.pages.workshop.card import card_page
from maker_site.pages.workshop.views import CardPage
from maker_site.paper.card import Card, CardFact, CardFigure, CardHazard
from maker_site.paper.drawing import inked
from maker_site.paper.menu import MenuCard, MenuLine, MenuPart
from maker_site.paper.typesetting import Typesetter, typesetter
from maker_site.records import Project
from maker_site.writer.themes import Theme

FONTS: Final = "fonts"
"""The folder of the maker's own fonts in the content folder."""
_GRAVE: Final = ("limit", "hot", "fire", "steam")
"""Cautions in bold: of what burns at once."""


@contextmanager
def setter(used: Theme, content: Path) -> Iterator[Typesetter]:
    """Give a typesetter with a theme's templates and the maker's fonts."""
    fonts = content / FONTS
    with typesetter(used.papers(), fonts if fonts.is_dir() else None) as setting:
        yield setting


def language_of(book: Notebook) -> tuple[str, str | None]:
    """Return the shop's language and country for a document."""
    return book.wording.locale.language, book.wording.locale.territory


def card_of_project(book: Notebook, project: Project) -> Card:
    """Return a project's press card for paper."""
    return card_of(card_page(book, project).view)


def card_of(view: CardPage) -> Card:
    """Return a press card for paper: the same words as on its page."""
    code = f" ({view.code})" if view.code else ""
    made = f", made {view.made.words}" if view.made else ""
    setting = view.setting
    return Card(
        view.title,
        view.number,
        f"{view.blank}{code}{made}",
        inked(standing_alone(view.swatch)),
        tuple(
            CardHazard(inked(caution_icon(each.kind)), each.short, each.kind in _GRAVE) for each in view.hazards.each
        ),
        view.hazards.closing,
        tuple(_figures(view)),
        None if setting else f"No full setting is known. {view.reason}",
        setting.pressure if setting else None,
        setting.face if setting else None,
        _meaning(setting.face_words) if setting and setting.face_words else None,
        inked(setting.face_mark) if setting and setting.face_mark else None,
        view.mirror,
        inked(view.mirror_mark) if view.mirror_mark else None,
        tuple(CardFact(each.name, each.value) for each in view.small_facts),
        inked(view.stack),
        "Stack, bottom to top" if view.stack_written else "Stack, bottom to top (the usual one)",
        f"The stack from bottom to top: {', '.join(view.stack_words)}.",
        view.source_words if setting else "",
        f"{view.evidence.short} good" if view.evidence else None,
        inked(view.evidence.dots) if view.evidence else None,
        view.last,
        setting.footing if setting else None,
        inked(view.code_mark),
        view.code_words,
    )


def _meaning(face_words: str) -> str:
    """Return what a face means, without its name before it."""
    meaning = face_words.partition(": ")[2] or face_words
    return meaning[:1].upper() + meaning[1:]


def _figures(view: CardPage) -> Iterator[CardFigure]:
    setting = view.setting
    if setting is None:
        return
    press = f", set on {setting.press.text}" if setting.press else ""
    true = None
    if setting.true and setting.true != setting.temperature:
        true = f"At the platen {setting.true.first}, {setting.true.second}"
    yield CardFigure(f"Temperature{press}", setting.temperature.first, setting.temperature.second, true)
    yield CardFigure("Time", setting.time.first, setting.time.second, None)


def menu_card_of(book: Notebook, view: Menu) -> MenuCard:
    """Return the menu for paper out of its view, and so of nothing but what is shared."""
    shop = book.workshop.shop
    code = segno.make_qr(shop.address, error="m") if shop.address else None
    return MenuCard(
        view.shop,
        view.line,
        tuple(MenuPart(part.title, tuple(_menu_line(item) for item in part.items)) for part in view.sections),
        view.lead_time,
        view.how_to_order,
        view.contact,
        view.dated.words if view.dated else None,
        shop.address,
        code.svg_inline(border=4, scale=4, omitsize=True) if code else None,
        shop.notice,
    )


def _menu_line(item: MenuItem) -> MenuLine:
    material = item.material[:1].upper() + item.material[1:]
    return MenuLine(
        item.name,
        item.price or "Ask",
        item.line,
        f"{material}, {item.size}" if item.size else material,
        f"Choose: {'; '.join(item.options)}" if item.options else None,
        _files(item.picture.fallback.address) if item.picture else None,
        item.picture.text if item.picture else f"{item.name}: the blank, drawn to scale",
        inked(standing_alone(item.stand_in)) if item.stand_in else None,
    )


def _files(address: str) -> str:
    """Return what the template calls a picture."""
    return f"files/{address.rpartition('/')[2]}"


def menu_pictures(book: Notebook, view: Menu) -> dict[str, str]:
    """Return the pictures of a menu: the path from the content folder by the name of the one JPEG."""
    path_of = {planned.fallback.name: path for path, planned in book.pictures.items()}
    shown = (item.picture for part in view.sections for item in part.items if item.picture)
    names = (picture.fallback.address.rpartition("/")[2] for picture in shown)
    return {name: path_of[name] for name in names}


def make_picture(book: Notebook, name: str, path: str, folder: Path) -> Path:
    """Make the one JPEG of a photo, without its metadata, into `folder`. Raises `PictureProblem`."""
    planned = book.pictures[path]
    make(book.workshop.root / path, replace(planned, modern=(planned.fallback,)), folder)
    return folder / name
