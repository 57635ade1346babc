"""The papers of both copies, a card for each project and the menu: set again where what they are made of changed."""

from __future__ import annotations

import hashlib
import json
import threading
from collections import deque
from collections.abc import Callable, Iterator, Mapping
from contextlib import ExitStack, contextmanager
from dataclasses import replace
from importlib.metadata import version
from operator import itemgetter
from pathlib import Path
from typing import Final, NamedTuple

from maker_site.frozen import frozen
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
from maker_site.writer.known import KnownPaper
from maker_site.writer.printing import FONTS, card_of, language_of, make_picture, menu_card_of, menu_pictures, setter
from maker_site.writer.rendering import TemplateProblem
from maker_site.writer.site_folder import SiteFolder
from maker_site.writer.themes import Theme

Told = Callable[[str, int, int], None]
"""Told of progress: what is being done, how much of it is done, of how much."""
_CARD_PAPER: Final = "A6"
_BOTH: Final = ("workshop", "public")
_MENU_PAPER: Final = "A4"
_FORM: Final = 1
"""Goes up when the same input is set in another way."""


@frozen
class Wanted:
    """One paper of the site."""

    copies: tuple[str, ...]
    address: str
    about: str
    """The record that its words come from."""
    inputs: str
    """A hash of all that it is made of."""
    document: Document | None
    """None where the paper that is there was made of the same."""


class MenuPaper(NamedTuple):
    """The menu before its pictures are made."""

    document: Document
    photos: Mapping[str, str]
    """Paths of its pictures from the content folder by name, whose content hash the names carry."""


class SetPaper(NamedTuple):
    """A paper that was set, or what is wrong with its template."""

    address: str
    pdf: bytes
    missing: str
    problem: str | None = None


class Papers:
    """The papers of one make: those that are as they would be made stay, the others are set."""

    def __init__(
        self, site: SiteFolder, book: Notebook, used: Theme, known: Mapping[str, KnownPaper], told: Told, *, stand: bool
    ) -> None:
        """`known` is what earlier papers were made of, by address; with `stand` those stay that are not set anew."""
        self._site, self._book, self._used, self._told = site, book, used, told
        self._before, self.known = known, dict(known if stand else {})
        """What the papers are made of, by address."""
        self._common = _common_inputs(used, book.workshop.root / FONTS)
        self._copies: dict[str, tuple[str, ...]] = {}
        self._to_set: deque[tuple[str, Document]] = deque()
        self._asked = self._done = 0

    def keeps_card(self, project: str) -> bool:
        """Tell whether a project's card, where it shows what it showed, need not be set again."""
        address = addresses.card_paper(project)
        before = self._before.get(address)
        return before is not None and self._site.has(f"workshop/{address}", before.stamp)

    def keep_card(self, project: str) -> None:
        """Leave a project's card as it is."""
        address = addresses.card_paper(project)
        self.add(Wanted(("workshop",), address, _record(project), self._before[address].inputs, None))

    def drop_card(self, project: str) -> None:
        """Take away the card of a project that is no more."""
        address = addresses.card_paper(project)
        self.known.pop(address, None)
        self._site.withdraw(f"workshop/{address}")

    def drop_menu(self) -> None:
        """Take away the menu."""
        if self.known.pop(addresses.MENU_PAPER, None):
            for copy in _BOTH:
                self._site.withdraw(f"{copy}/{addresses.MENU_PAPER}")

    def card(self, view: CardPage) -> Wanted:
        """Return a project's card; nothing is noted yet."""
        title = say("Press card: {title}", title=view.title)
        document = card_document([card_of(view)], sheet_size(_CARD_PAPER), title, language_of(self._book))
        return self._wanted(("workshop",), addresses.card_paper(view.id), _record(view.id), document)

    def menu(self, of_menu: MenuPaper, folder: Path) -> Wanted:
        """Return the menu, with its pictures made in a folder where it has to be set; nothing is noted yet."""
        wanted = self._wanted(_BOTH, addresses.MENU_PAPER, "shop.yaml", of_menu.document)
        if wanted.document is None:
            return wanted
        pictures = sorted(of_menu.photos.items())
        files = {name: make_picture(self._book, name, path, folder) for name, path in pictures}
        return replace(wanted, document=replace(wanted.document, files=files))

    def keep_menu(self) -> bool:
        """Leave the menu as it is; tell whether it is there."""
        before = self._before.get(addresses.MENU_PAPER)
        if before is None:
            return False
        kept = Wanted(_BOTH, addresses.MENU_PAPER, "shop.yaml", before.inputs, None)
        if not all(self._site.has(place, before.stamp) for place in _places(kept)):
            return False
        self.add(kept)
        return True

    def add(self, wanted: Wanted) -> None:
        """Note a paper: it is kept, or stands ready to be set."""
        self._copies[wanted.address] = wanted.copies
        if wanted.document is None:
            self.known[wanted.address] = self._before[wanted.address]
            for place in _places(wanted):
                self._site.keep(place)
        else:
            self.known[wanted.address] = KnownPaper(wanted.inputs, "", "", wanted.about)
            for place in _places(wanted):
                self._site.withdraw(place)  # what is there is of other inputs
            self._to_set.append((wanted.address, wanted.document))
            self._asked += 1

    def next_to_set(self) -> tuple[str, Document] | None:
        """Return a paper that is to be set, if there is one, for whoever sets it."""
        return self._to_set.popleft() if self._to_set else None

    def put(self, paper: SetPaper) -> None:
        """Put a paper that was set. Raises `TemplateProblem`."""
        if paper.problem is not None:
            raise TemplateProblem(paper.problem)
        for copy in self._copies[paper.address]:
            self._site.put(f"{copy}/{paper.address}", paper.pdf)
        stamp = self._site.stamp(f"{self._copies[paper.address][0]}/{paper.address}")
        asked = self.known[paper.address]
        self.known[paper.address] = KnownPaper(asked.inputs, paper.missing, stamp, asked.about)
        self._done += 1
        self._told("Setting papers", self._done, self._asked)

    def set_here(self, at_least: int = 1) -> None:
        """Set in threads of this process what stands ready, where that is so many or more."""
        if len(self._to_set) < at_least:
            return
        with _setters(self._used, self._book.workshop.root) as setter_here:
            for paper in side_by_side(
                lambda each: set_paper(setter_here(), *each), sorted(self._to_set, key=itemgetter(0))
            ):
                self.put(paper)
        self._to_set.clear()

    def cautions(self) -> tuple[Problem, ...]:
        """Return a caution for what no font has."""
        return tuple(
            Problem(paper.about, 0, "", f"on paper {missing_words(paper.missing)}", Severity.CAUTION)
            for paper in self.known.values()
            if paper.missing
        )

    def _wanted(self, copies: tuple[str, ...], address: str, about: str, document: Document) -> Wanted:
        inputs = _inputs(self._common, document)
        wanted, paper = Wanted(copies, address, about, inputs, document), self._before.get(address)
        if paper and paper.inputs == inputs and all(self._site.has(place, paper.stamp) for place in _places(wanted)):
            return replace(wanted, document=None)
        return wanted


def menu_paper(book: Notebook) -> MenuPaper | None:
    """Return the menu as a paper; None where there is nothing on it."""
    shown, shop = menu(book, lambda _: None), book.workshop.shop
    if not shown.sections:
        return None
    photos = menu_pictures(book, shown)
    sheet = sheet_of(shop.paper) if shop.paper else sheet_size(_MENU_PAPER)
    title, files = say("{shop}: menu", shop=shop.name), {name: Path(name) for name in photos}
    document = menu_document(menu_card_of(book, shown), sheet, 0, title, language_of(book), files)
    return MenuPaper(document, photos)


def set_paper(setting: Typesetter, address: str, document: Document) -> SetPaper:
    """Set one paper."""
    try:
        paper = setting.set(document)
    except PaperProblem as problem:
        return SetPaper(address, b"", "", str(problem))
    return SetPaper(address, paper.pdf, paper.missing)


def _record(project: str) -> str:
    return f"projects/{project}/project.yaml"


def _places(wanted: Wanted) -> list[str]:
    return [f"{copy}/{wanted.address}" for copy in wanted.copies]


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
