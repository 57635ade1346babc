"""The papers of both copies, a card for each project and the menu: set again where what they are made of changed."""

from __future__ import annotations

import hashlib
import json
import tempfile
import threading
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from importlib.metadata import version
from pathlib import Path
from typing import Final

from maker_site.language import say
from maker_site.pages import addresses
from maker_site.pages.menu import menu
from maker_site.pages.notebook import Notebook
from maker_site.pages.workshop.views import CardPage
from maker_site.paper.card import card_document
from maker_site.paper.menu import menu_document
from maker_site.paper.sizes import sheet_of, sheet_size
from maker_site.paper.typesetting import Document, PaperProblem, Typesetter, missing_words
from maker_site.records import Problem, Severity
from maker_site.writer.gather import side_by_side
from maker_site.writer.known_papers import KnownPaper
from maker_site.writer.printing import FONTS, card_of, language_of, make_picture, menu_card_of, menu_pictures, setter
from maker_site.writer.rendering import TemplateProblem
from maker_site.writer.site_folder import SiteFolder
from maker_site.writer.themes import Theme

_CARD_PAPER: Final = "A6"
_MENU_PAPER: Final = "A4"
_FORM: Final = 1
"""Goes up when the same input is set in another way."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """One paper of the site."""

    copies: tuple[str, ...]
    address: str
    about: str
    """The record that its words come from."""
    document: Document
    photos: Mapping[str, str]
    """Paths of its pictures from the content folder by name, whose content hash the names carry."""


def write_papers(
    site: SiteFolder,
    book: Notebook,
    used: Theme,
    cards: Mapping[str, CardPage],
    of_menu: Sequence[Wanted],
    known: dict[str, KnownPaper],
    told: Callable[[str, int, int], None],
    as_before: Iterable[str] = (),
) -> tuple[Problem, ...]:
    """Put every paper, keep those that are as they would be made, and return a caution for what no font has.

    `known` is what earlier papers were made of, by address, and becomes that of these. `as_before` are projects whose
    cards show what they showed, so that `cards` need not hold them. Raises `TemplateProblem`.
    """
    before = dict(known)
    known.clear()
    about = {addresses.card_paper(project): f"projects/{project}/project.yaml" for project in as_before}
    for address in about:
        known[address] = before[address]
        site.keep(f"workshop/{address}")
    common = _common_inputs(used, book.workshop.root / FONTS)
    wanted = {each.address: each for each in (*_cards(book, cards), *of_menu)}
    missing: dict[str, Wanted] = {}
    for each in wanted.values():
        inputs = _inputs(common, each.document)
        paper = before.get(each.address)
        places = [f"{copy}/{each.address}" for copy in each.copies]
        if paper and paper.inputs == inputs and all(site.has(place) for place in places):
            for place in places:
                site.keep(place)
            known[each.address] = paper
        else:
            missing[each.address] = each
            known[each.address] = KnownPaper(inputs, "")
    with _setters(used, book.workshop.root) as setter_here:

        def work(address: str) -> tuple[str, str]:
            return address, _set(site, book, setter_here(), missing[address])

        for done, (address, characters) in enumerate(side_by_side(work, sorted(missing)), 1):
            known[address] = KnownPaper(known[address].inputs, characters)
            told("Setting papers", done, len(missing))
    about |= {address: each.about for address, each in wanted.items()}
    return tuple(
        Problem(about[address], 0, "", f"on paper {missing_words(paper.missing)}", Severity.CAUTION)
        for address, paper in known.items()
        if paper.missing
    )


def _cards(book: Notebook, cards: Mapping[str, CardPage]) -> Iterator[Wanted]:
    language = language_of(book)
    sheet = sheet_size(_CARD_PAPER)
    for project, view in cards.items():
        title = say("Press card: {title}", title=view.title)
        document = card_document([card_of(view)], sheet, title, language)
        yield Wanted(("workshop",), addresses.card_paper(project), f"projects/{project}/project.yaml", document, {})


def menu_wanted(book: Notebook) -> tuple[Wanted, ...]:
    """Return the menu as a paper; nothing where there is nothing on it."""
    shown, language = menu(book, lambda _: None), language_of(book)
    if not shown.sections:
        return ()
    shop = book.workshop.shop
    photos = menu_pictures(book, shown)
    sheet = sheet_of(shop.paper) if shop.paper else sheet_size(_MENU_PAPER)
    names = {name: Path(name) for name in photos}
    title = say("{shop}: menu", shop=shop.name)
    document = menu_document(menu_card_of(book, shown), sheet, 0, title, language, names)
    return (Wanted(("workshop", "public"), addresses.MENU_PAPER, "shop.yaml", document, photos),)


def _set(site: SiteFolder, book: Notebook, setting: Typesetter, wanted: Wanted) -> str:
    """Set a paper and put it into each of its copies; return the characters that no font has."""
    document = wanted.document
    with tempfile.TemporaryDirectory() as folder:
        files = {name: make_picture(book, name, path, Path(folder)) for name, path in sorted(wanted.photos.items())}
        whole = Document(document.template, document.title, document.language, document.region, document.data, files)
        try:
            paper = setting.set(whole)
        except PaperProblem as problem:
            raise TemplateProblem(str(problem)) from problem
    for copy in wanted.copies:
        site.put(f"{copy}/{wanted.address}", paper.pdf)
    return paper.missing


def _common_inputs(used: Theme, fonts: Path) -> bytes:
    """Return a hash of what every paper is made of: the typesetter, the templates, the maker's fonts."""
    seen = hashlib.blake2b(f"{_FORM} {version('typst')}".encode(), digest_size=16)
    files = {**used.papers()}
    if fonts.is_dir():
        files |= {f"{FONTS}/{path.relative_to(fonts)}": path for path in fonts.rglob("*") if path.is_file()}
    for name, path in sorted(files.items()):
        seen.update(f"{name} {hashlib.blake2b(path.read_bytes()).hexdigest()}\n".encode())
    return seen.digest()


def _inputs(common: bytes, document: Document) -> str:
    seen = hashlib.blake2b(common, digest_size=16)
    said = (document.template, document.title, document.language, document.region, document.data, [*document.files])
    seen.update(json.dumps(said, ensure_ascii=False).encode("utf-8", "surrogateescape"))
    return seen.hexdigest()


@contextmanager
def _setters(used: Theme, content: Path) -> Iterator[Callable[[], Typesetter]]:
    """Give a way to the typesetter of each thread, made when it is first asked for."""
    own = threading.local()
    guard = threading.Lock()
    with ExitStack() as stack:

        def here() -> Typesetter:
            if not hasattr(own, "setter"):
                with guard:
                    own.setter = stack.enter_context(setter(used, content))
            found: Typesetter = own.setter
            return found

        yield here
