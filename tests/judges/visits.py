"""Opening a page in the browser from the disk, as a person does, and noting what it asks for."""

import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from pathlib import Path
from weakref import WeakKeyDictionary

from playwright.sync_api import Browser, Dialog, Page, Route


@dataclass(frozen=True)
class Screen:
    """A screen in CSS pixels."""

    name: str
    width: int
    height: int
    touch: bool
    dots: int = 1
    """To a CSS pixel, each way."""


SMALL_PHONE = Screen("small phone", 360, 740, touch=True)
PHONE = Screen("phone", 390, 844, touch=True)
SHARP_PHONE = replace(PHONE, name="phone with three dots to a pixel", dots=3)
TABLET = Screen("tablet", 768, 1024, touch=True)
DESK = Screen("desk", 1280, 800, touch=False)

# Long enough that a picture without its place kept makes the page jump after it was first drawn.
SLOW_PICTURE_SECONDS = 0.15
PICTURES_WITHIN_SECONDS = 20
PICTURE_FILES = "**/*.{avif,webp,jpg,jpeg,png,svg}"

# Starting a tab costs more than drawing a page in it, so a tab is kept for each kind of visitor:
# touch, dots to a pixel, scripts, whether the pages' policy holds.
_TABS: WeakKeyDictionary[Browser, dict[tuple[bool, int, bool, bool], Page]] = WeakKeyDictionary()


@dataclass(frozen=True)
class Visit:
    """An open page, with what was noted since it was opened."""

    page: Page
    asked: list[str] = field(default_factory=list)
    """Every address that the page asked for, its own first."""
    dialogs: list[str] = field(default_factory=list)
    """What it said in boxes that have to be answered."""
    complaints: list[str] = field(default_factory=list)
    """Errors on the console, errors of scripts, and requests that came to nothing."""


@contextmanager
def visit(
    browser: Browser,
    page_file: Path,
    *,
    screen: Screen = DESK,
    dark: bool = False,
    scripts: bool = True,
    policy: bool = True,
    slow_pictures: bool = False,
) -> Iterator[Visit]:
    """Open the page with no network and nothing remembered of pages before it; without its policy where asked."""
    kind = (screen.touch, screen.dots, scripts, policy)
    tabs = _TABS.setdefault(browser, {})
    # A tab in which something went wrong is not put back.
    page = tabs.pop(kind, None) or _tab(browser, screen, scripts=scripts, policy=policy)
    seen = Visit(page)

    def dismiss(dialog: Dialog) -> None:
        seen.dialogs.append(dialog.message)
        dialog.dismiss()

    listeners: dict[str, Callable[..., None]] = {
        "dialog": dismiss,
        "request": lambda request: seen.asked.append(request.url),
        "requestfailed": lambda request: seen.complaints.append(f"came to nothing: {request.url}"),
        "pageerror": lambda error: seen.complaints.append(f"script error: {error}"),
        "console": lambda line: seen.complaints.append(f"console: {line.text}") if line.type == "error" else None,
    }
    try:
        resize(page, screen)
        page.emulate_media(color_scheme="dark" if dark else "light", media="null")
        if slow_pictures:
            page.route(PICTURE_FILES, _late())
        for event, listener in listeners.items():
            page.on(event, listener)  # type: ignore[call-overload]
        page.goto(page_file.as_uri())
        yield seen
        for event, listener in listeners.items():
            page.remove_listener(event, listener)
        if scripts:
            page.evaluate("() => { localStorage.clear(); sessionStorage.clear() }")
        if slow_pictures:
            page.unroute(PICTURE_FILES)
        page.goto("about:blank")
    except BaseException:
        page.context.close()
        raise
    tabs[kind] = page


def _tab(browser: Browser, screen: Screen, *, scripts: bool, policy: bool) -> Page:
    """Open a tab in a profile of its own."""
    context = browser.new_context(
        offline=True,
        is_mobile=screen.touch,
        has_touch=screen.touch,
        device_scale_factor=screen.dots,
        reduced_motion="reduce",
        java_script_enabled=scripts,
        bypass_csp=not policy,
    )
    return context.new_page()


def resize(page: Page, screen: Screen) -> None:
    """Give the open page another screen of the same kind."""
    page.set_viewport_size({"width": screen.width, "height": screen.height})


def _late() -> Callable[[Route], None]:
    """Hand a page's pictures over late, as an old phone or a slow disk would: the first waits, the others behind it."""
    waits = [SLOW_PICTURE_SECONDS]

    def hand_over(route: Route) -> None:
        if waits:
            time.sleep(waits.pop())
        route.continue_()

    return hand_over


def read_to_the_end(page: Page) -> None:
    """Scroll through the page, screen by screen, until every picture on it has arrived."""
    page.evaluate(
        """async () => {
            const frame = () => new Promise((done) => requestAnimationFrame(done));
            const drawn = () => frame().then(frame);
            for (let top = 0; top < document.documentElement.scrollHeight; top += innerHeight) {
                scrollTo(0, top);
                await drawn();
            }
            const images = [...document.images];
            const awaited = images.filter((image) => !image.complete && image.checkVisibility());
            await Promise.all(
                awaited.map((image) => new Promise((done) => { image.onload = image.onerror = done; })));
            await drawn();
        }"""
    )


def await_pictures(page: Page) -> None:
    """Wait until every picture has arrived, where scripts are switched off: no promise of a script comes true there.

    Without scripts a browser loads lazy pictures at once (HTML Living Standard, "lazy loading attributes").
    Raises TimeoutError.
    """
    until = time.monotonic() + PICTURES_WITHIN_SECONDS
    while page.evaluate("() => [...document.images].some((one) => !one.complete && one.checkVisibility())"):
        if time.monotonic() > until:
            raise TimeoutError("a picture did not arrive")
        page.wait_for_timeout(20)
