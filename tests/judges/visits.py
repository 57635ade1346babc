"""Opening a page in the browser from the disk, as a person does, and noting what it asks for."""

import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from playwright.sync_api import Browser, Page, Route


@dataclass(frozen=True)
class Screen:
    """A screen in CSS pixels."""

    name: str
    width: int
    height: int
    touch: bool


SMALL_PHONE = Screen("small phone", 360, 740, touch=True)
PHONE = Screen("phone", 390, 844, touch=True)
TABLET = Screen("tablet", 768, 1024, touch=True)
DESK = Screen("desk", 1280, 800, touch=False)

# Long enough that a picture without its place kept makes the page jump after it was first drawn.
SLOW_PICTURE_SECONDS = 0.15


@dataclass(frozen=True)
class Visit:
    """An open page, with what was noted since it was opened."""

    page: Page
    asked: list[str] = field(default_factory=list)
    """Every address that the page asked for, its own first."""
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
    slow_pictures: bool = False,
    before: str | None = None,
) -> Iterator[Visit]:
    """Open the page with no network, in a fresh profile, and close it again.

    The script `before` is run ahead of the page's own.
    """
    context = browser.new_context(
        offline=True,
        viewport={"width": screen.width, "height": screen.height},
        is_mobile=screen.touch,
        has_touch=screen.touch,
        color_scheme="dark" if dark else "light",
        reduced_motion="reduce",
        java_script_enabled=scripts,
    )
    try:
        if before is not None:
            context.add_init_script(before)
        page = context.new_page()
        seen = Visit(page)
        page.on("request", lambda request: seen.asked.append(request.url))
        page.on("requestfailed", lambda request: seen.complaints.append(f"came to nothing: {request.url}"))
        page.on("pageerror", lambda error: seen.complaints.append(f"script error: {error}"))
        page.on(
            "console",
            lambda line: seen.complaints.append(f"console: {line.text}") if line.type == "error" else None,
        )
        if slow_pictures:
            page.route("**/*.{avif,webp,jpg,jpeg,png,svg}", _late())
        page.goto(page_file.as_uri())
        yield seen
    finally:
        context.close()


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
