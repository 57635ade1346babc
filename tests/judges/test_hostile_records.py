"""Records full of other people's scripts, opened in a real browser: nothing of them runs, and no page breaks.

The page's own policy would stop a script that got through, so it is switched off here: what is tested is the escaping.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest
import yaml
from hypothesis import HealthCheck, Phase, example, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Browser, Page

from tests.conftest import make_site_here
from tests.small_workshop import write_workshop

from .fakes import write_page
from .visits import visit

pytestmark = [pytest.mark.browser, pytest.mark.slow]

RAN = "window.zqran=1"
# Ways to have a script run, written for this test (kinds as in lists of such tricks, from memory).
CORPUS = (
    f"<script>{RAN}</script>",
    f"</script><script>{RAN}</script>",
    f"</title><script>{RAN}</script>",
    f"</style><script>{RAN}</script>",
    f"--><script>{RAN}</script><!--",
    f"]]><script>{RAN}</script>",
    f"<img src=x onerror={RAN}>",
    f'"><img src=x onerror={RAN}>',
    f"'><svg onload={RAN}>",
    f"<svg><animate onbegin={RAN} attributeName=x dur=1s>",
    f'" autofocus onfocus={RAN} x="',
    f"<details open ontoggle={RAN}>x</details>",
    f"<a href=javascript:{RAN} id=zqclick>x</a>",
    f"[x](javascript:{RAN})",
    f"[x](java\tscript:{RAN})",
    f"![x](https://elsewhere.example/x.png){{: onerror={RAN} }}",
    "<iframe srcdoc='<script>parent.zqran=1</script>'></iframe>",
    f"<math><mtext><table><mglyph><style><img src=x onerror={RAN}>",
    f"<noscript><p title='</noscript><img src=x onerror={RAN}>'>",
    f"<template><img src=x onerror={RAN}></template>",
    "{{ 7*7 }} {% raw %} ${7*7}",
    "<base href=https://elsewhere.example/>",
    "<style>body { display: none }</style>",
    "<h1>taken over</h1></main></body>",
)
SHOWN = (
    "public/index.html",
    "public/tutorials/index.html",
    "public/tutorials/harbour.html",
    "public/articles/one.html",
    "public/for/",
    "public/gifts.html",
    "public/menu.html",
    "public/about.html",
    "public/search.html",
    "public/404.html",
    "public/icons/shop.svg",
    "workshop/index.html",
    "workshop/projects/harbour.html",
    "workshop/cards/harbour.html",
    "workshop/search.html",
)


def workshop_of(texts: Iterator[str], folder: Path) -> Path:
    """Write a workshop whose every free text is the next of these."""

    def says(**fixed: object) -> str:
        return yaml.safe_dump(fixed, allow_unicode=True, sort_keys=False)

    def text() -> str:
        return next(texts)

    menu = {"section": text(), "name": text(), "line": text(), "price": "24.00", "options": [text()]}
    photo = {"file": "photos/set.jpg", "text": text(), "caption": text(), "share": "yes"}
    project = {
        "title": text(),
        "blank": "slate",
        "made": "2026-04-18",
        "occasions": [text(), "wedding"],
        "summary": text(),
        "time needed": text(),
        "photos": [photo],
        "tools": [text()],
        "care": text(),
        "note": text(),
        "for": text(),
        "share": {"tutorial": "yes", "setting": "yes", "supplies": "yes", "published": "2026-05-01", "menu": menu},
    }
    shop = {
        "name": text(),
        "currency": "GBP",
        "line": text(),
        "notice": text(),
        "contact": text(),
        "address": "https://a.example/",
        "how to order": text(),
        "lead time": text(),
    }
    written = "\n\n".join(CORPUS)
    return write_workshop(
        folder,
        {
            "shop.yaml": says(**shop),
            "blanks/slate.yaml": says(
                name=text(), substrate="slate", care=text(), supplier=text(), code=text(), note=text()
            ),
            "projects/harbour/project.yaml": says(**project),
            "projects/harbour/tutorial.md": f"{written}\n\n## {text()}\n\n{written}\n\n## Two\n\n{text()}\n",
            "articles/one.md": f"# {' '.join(text().split())}\n\n{written}\n",
            "articles/one.yaml": says(share="yes", published="2026-05-01", summary=text()),
            "about.md": f"# About\n\n{written}\n",
        },
    )


def ran(browser: Browser, page_file: Path) -> list[str]:
    """Open a page with its policy switched off and list what of the records came to life."""
    with visit(browser, page_file, policy=False) as seen:
        found = came_to_life(seen.page, page_file)
    return found + [f"{page_file.name} said {message}" for message in seen.dialogs]


def came_to_life(page: Page, page_file: Path) -> list[str]:
    page.wait_for_timeout(60)
    if page_file.name == "search.html":
        page.fill("#words", "a e i o s")
        for letter in ("s", "script", "img"):
            page.fill("#words", letter)
    for link in page.query_selector_all("a[href^='javascript:' i], #zqclick"):
        link.dispatch_event("click")
    found = [f"ran in {page_file.name}"] if page.evaluate("() => window.zqran") else []
    found += page.evaluate(
        """() => [
            ...[...document.querySelectorAll('*')].flatMap((element) => [...element.attributes]
                .filter((each) => /^on/i.test(each.name) || /^\\s*(java|vb)script:/i.test(each.value))
                .map((each) => `${element.nodeName} has ${each.name}`)),
            ...[...document.querySelectorAll('base, iframe, object, embed, main style, main script')]
                .map((element) => `there is a ${element.nodeName}`),
            ...(document.querySelectorAll('h1').length > 1 ? ['two first headings'] : []),
        ]"""
    )
    return found


@pytest.mark.parametrize("trick", [CORPUS[0], CORPUS[6], CORPUS[8], CORPUS[11], CORPUS[12], CORPUS[21], CORPUS[23]])
def test_a_script_that_runs_is_noticed(browser, tmp_path, trick):
    assert ran(browser, write_page(tmp_path, trick)) != []


TEXTS = st.lists(st.one_of(st.sampled_from(CORPUS), st.text(min_size=1, max_size=40)), min_size=2, max_size=2)


@settings(
    max_examples=1,
    deadline=None,
    phases=[Phase.explicit, Phase.generate],
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(st.randoms(use_true_random=False), TEXTS)
@example(None, list(CORPUS))
def test_nothing_in_a_record_runs_in_any_page(browser, tmp_path_factory, random, texts):
    pool = [text for text in texts if text.strip() and text.isprintable()] or ["<b>"]
    order = list(CORPUS) + pool
    if random is not None:
        random.shuffle(order)
    home = tmp_path_factory.mktemp("hostile")

    def endless() -> Iterator[str]:
        while True:
            yield from order

    content = workshop_of(endless(), home / "content")
    make_site_here(content, home / "site")
    pages = [home / "site" / each for each in SHOWN if not each.endswith("/")]
    pages += sorted((home / "site/public/for").glob("*.html"))
    assert [each for page_file in pages for each in ran(browser, page_file)] == []
