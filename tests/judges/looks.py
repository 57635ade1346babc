"""One look at a page, long enough for many judges: the page is opened once and what it shows is noted."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Literal

from playwright.sync_api import Browser, Page

from .axe import COLOUR_RULES, violations
from .kinds import Kind, page_of
from .layout import THUMB_PX, shifts, sideways, small_targets, without_a_place
from .paper import text_to_print
from .visits import PHONE, SMALL_PHONE, TABLET, Screen, await_pictures, read_to_the_end, resize, visit

Ground = Literal["light", "dark"]
GROUNDS: tuple[Ground, ...] = ("light", "dark")
# Where a page opened on a phone is looked at too: it is narrowed and widened, not opened again.
ALSO_ON: Mapping[Screen, tuple[Screen, ...]] = {PHONE: (SMALL_PHONE, TABLET)}


@dataclass(frozen=True)
class Lie:
    """How the page lies on a screen."""

    width: int
    """The width that the page takes the screen to have, in CSS pixels."""
    sideways: list[str]
    """What makes it wider than the screen."""
    too_small_for_a_thumb: list[str]


@dataclass(frozen=True)
class Look:
    """What one visit to a page noted, its pictures handed over late."""

    asked: list[str]
    complaints: list[str]
    shifts: list[str]
    without_a_place: list[str]
    words: set[str]
    """The words that it shows on paper."""
    pictures: int
    """How many pictures have arrived."""
    lies: Mapping[str, Lie]
    """By the name of the screen."""
    violations: Mapping[Ground, list[str]]
    """Rules of accessibility that are broken, by ground; empty where the machine has no checker."""
    backgrounds: Mapping[Ground, str]
    """The body's colour, by ground."""


@dataclass(frozen=True)
class Lookout:
    """Looks at the demo's pages, at each once."""

    browser: Browser
    site: Path
    axe_source: str | None
    _seen: dict[tuple[Kind, Screen], Look] = field(default_factory=dict)

    def at(self, kind: Kind, screen: Screen) -> Look:
        """Look at the page of this kind, or remember the look."""
        if (kind, screen) not in self._seen:
            self._seen[kind, screen] = self._look(page_of(kind, self.site), screen)
        return self._seen[kind, screen]

    def without_scripts(self, kind: Kind) -> tuple[set[str], int]:
        """Give the words and the number of pictures that a page has on a phone with scripts switched off."""
        with visit(self.browser, page_of(kind, self.site), screen=PHONE, scripts=False) as seen:
            await_pictures(seen.page)
            return set(text_to_print(seen.page)), pictures_of(seen.page)

    def _look(self, page_file: Path, screen: Screen) -> Look:
        with visit(self.browser, page_file, screen=screen, slow_pictures=True) as seen:
            page = seen.page
            read_to_the_end(page)
            jumped = shifts(page)
            asked, complaints = list(seen.asked), list(seen.complaints)
            words, pictures = set(text_to_print(page)), pictures_of(page)
            broken, backgrounds = {}, {}
            for ground in GROUNDS:
                page.emulate_media(color_scheme=ground)
                backgrounds[ground] = page.evaluate("() => getComputedStyle(document.body).backgroundColor")
                if self.axe_source is not None:
                    broken[ground] = violations(page, self.axe_source, None if ground == "light" else COLOUR_RULES)
            lies = {}
            for each in (screen, *ALSO_ON.get(screen, ())):
                resize(page, each)
                lies[each.name] = _lie(page)
            return Look(asked, complaints, jumped, without_a_place(page), words, pictures, lies, broken, backgrounds)


def _lie(page: Page) -> Lie:
    width = page.evaluate("() => document.documentElement.clientWidth")
    return Lie(width, sideways(page), small_targets(page, THUMB_PX))


def pictures_of(page: Page) -> int:
    """Count the pictures that have arrived."""
    return int(page.evaluate("() => [...document.images].filter((one) => one.naturalWidth).length"))
