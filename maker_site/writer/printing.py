"""Documents for paper: the theme's templates, and what the pages say put as paper needs it."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import Final

from maker_site.language import apart, listed, say, spoken
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
from maker_site.records.words import with_capital
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
    """Return the language of a document, and the country where it is the shop's own language that is spoken."""
    locale, tag = book.wording.locale, spoken().tag
    return tag, locale.territory if locale.language == tag else None


def card_of_project(book: Notebook, project: Project) -> Card:
    """Return a project's press card for paper."""
    return card_of(card_page(book, project).view)


def card_of(view: CardPage) -> Card:
    """Return a press card for paper: the same words as on its page."""
    setting = view.setting
    return Card(
        apart(view.title),
        apart(view.number),
        _blank_words(view),
        inked(standing_alone(view.swatch)),
        tuple(
            CardHazard(inked(caution_icon(each.kind)), each.short, each.kind in _GRAVE) for each in view.hazards.each
        ),
        view.hazards.closing,
        tuple(_figures(view)),
        None if setting else say("No full setting is known. {reason}", reason=view.reason),
        apart(setting.pressure) if setting and setting.pressure else None,
        setting.face if setting else None,
        _meaning(setting.face_words) if setting and setting.face_words else None,
        inked(setting.face_mark) if setting and setting.face_mark else None,
        view.mirror,
        inked(view.mirror_mark) if view.mirror_mark else None,
        tuple(CardFact(each.name, apart(each.value)) for each in view.small_facts),
        inked(view.stack),
        say("Stack, bottom to top") if view.stack_written else say("Stack, bottom to top (the usual one)"),
        say("The stack from bottom to top: {layers}.", layers=listed(view.stack_words)),
        view.source_words if setting else "",
        say("{share} good", share=view.evidence.short) if view.evidence else None,
        inked(view.evidence.dots) if view.evidence else None,
        view.last,
        setting.footing if setting else None,
        inked(view.code_mark),
        view.code_words,
    )


def _blank_words(view: CardPage) -> str:
    """Return the blank with its code, and when the project was made."""
    blank = say("{blank} ({code})", blank=view.blank, code=view.code) if view.code else view.blank
    return say("{blank}, made {day}", blank=blank, day=view.made.words) if view.made else apart(blank)


def _meaning(face_words: str) -> str:
    """Return what a face means, without its name before it."""
    return with_capital(face_words.partition(": ")[2] or face_words)


def _figures(view: CardPage) -> Iterator[CardFigure]:
    setting = view.setting
    if setting is None:
        return
    true = None
    if setting.true and setting.true != setting.temperature:
        true = say("At the platen {first}, {second}", first=setting.true.first, second=setting.true.second)
    name = say("Temperature, set on {press}", press=setting.press.text) if setting.press else say("Temperature")
    yield CardFigure(name, apart(setting.temperature.first), apart(setting.temperature.second), true)
    yield CardFigure(say("Time"), apart(setting.time.first), apart(setting.time.second), None)


def menu_card_of(book: Notebook, view: Menu) -> MenuCard:
    """Return the menu for paper out of its view, and so of nothing but what is shared."""
    shop = book.workshop.shop
    return MenuCard(
        apart(view.shop),
        apart(view.line) if view.line else None,
        tuple(MenuPart(apart(part.title), tuple(_menu_line(item) for item in part.items)) for part in view.sections),
        apart(view.lead_time) if view.lead_time else None,
        apart(view.how_to_order) if view.how_to_order else None,
        apart(view.contact) if view.contact else None,
        view.dated.words if view.dated else None,
        shop.address,
        _square_code(shop.address) if shop.address else None,
        apart(shop.notice) if shop.notice else None,
    )


def _square_code(address: str) -> str:
    import segno  # late: it brings the network's modules with it

    drawn: str = segno.make_qr(address, error="m").svg_inline(border=4, scale=4, omitsize=True)
    return drawn


def _menu_line(item: MenuItem) -> MenuLine:
    material = with_capital(item.material)
    return MenuLine(
        apart(item.name),
        apart(item.price) if item.price else say("Ask"),
        apart(item.line) if item.line else None,
        say("{material}, {size}", material=material, size=item.size) if item.size else material,
        say("Choose: {options}", options="; ".join(apart(each) for each in item.options)) if item.options else None,
        _files(item.picture.fallback.address) if item.picture else None,
        item.picture.text if item.picture else say("{name}: the blank, drawn to scale", name=item.name),
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
