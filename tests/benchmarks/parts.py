"""What the parts of a cold make cost by themselves, one after the other on one core.

    python -m tests.benchmarks.parts CONTENT

Parse: every record's YAML by the C loader, every row of the log by csv, every text read. Markdown: each write-up that a
page shows, converted and cleaned. Templates: each page of both copies rendered from its view. Papers: each card and
the menu set by the typesetter. The workings, the views, the digests, the cache and the files are what a make adds.
"""

import argparse
import csv
import json
import sys
import time
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import markdown
import nh3
import yaml

from maker_site.language import speaking
from maker_site.pages.page import Page
from maker_site.pages.public.plan import public_frame, public_pages
from maker_site.pages.workshop.plan import workshop_batches, workshop_frame
from maker_site.pages.workshop.views import CardPage
from maker_site.paper.card import card_document
from maker_site.paper.sizes import sheet_size
from maker_site.writer.making import read_notebook
from maker_site.writer.printing import card_of, language_of, setter
from maker_site.writer.rendering import Renderer
from maker_site.writer.themes import theme

ROUND = 250
"""Papers that one typesetter sets: it remembers what it set, and grows."""


class Clock:
    """CPU seconds by part."""

    def __init__(self) -> None:
        self.seconds = dict.fromkeys(("parse", "Markdown", "templates", "papers"), 0.0)

    def time(self, part: str, work: Callable[[], Any]) -> Any:
        """Do a piece of work and add what it took."""
        begun = time.process_time()
        done = work()
        self.seconds[part] += time.process_time() - begun
        return done


def parse(content: Path) -> None:
    """Read every record with nothing but the libraries."""
    for path in sorted(content.rglob("*")):
        match path.suffix:
            case ".yaml":
                yaml.load(path.read_text("utf-8"), yaml.CSafeLoader)
            case ".csv":
                with path.open(encoding="utf-8", newline="") as rows:
                    list(csv.DictReader(rows))
            case ".md":
                path.read_text("utf-8")


def convert(text: str) -> None:
    """Turn one text into clean HTML with nothing but the libraries."""
    extensions = ["tables", "footnotes", "sane_lists", "attr_list", "smarty"]
    nh3.clean(markdown.Markdown(extensions=extensions, output_format="html").convert(text))


def parts(content: Path) -> dict[str, float]:
    """Return the CPU seconds of each part."""
    clock, texts = Clock(), []
    clock.time("parse", lambda: parse(content))
    book, _ = read_notebook(content, date(2026, 5, 1), decode=True)
    if book is None:
        raise RuntimeError("the records have errors")
    used = theme("print-room", content)
    converted = markdown.Markdown.convert

    def listen(self: markdown.Markdown, text: str) -> str:
        texts.append(text)
        return converted(self, text)

    markdown.Markdown.convert = listen  # what the pages convert is what is converted here
    with speaking(book.language):
        cards = []
        for frame, pages in (
            (workshop_frame(book), (page for batch in workshop_batches(book) for page in batch.build())),
            (public_frame(book), public_pages(book)),
        ):
            renderer = Renderer(used, frame)
            for page in pages:
                if isinstance(page, Page):
                    clock.time("templates", lambda shown=page, by=renderer: by.html(shown))
                    if isinstance(page.view, CardPage):
                        cards.append(card_document([card_of(page.view)], sheet_size("A6"), "Card", language_of(book)))
        markdown.Markdown.convert = converted
        for text in texts:
            clock.time("Markdown", lambda shown=text: convert(shown))
        for begin in range(0, len(cards), ROUND):
            with setter(used, content) as setting:
                for card in cards[begin : begin + ROUND]:
                    clock.time("papers", lambda shown=card: setting.set(shown))
    return clock.seconds


def main() -> None:
    """Read the command line and print the seconds as JSON."""
    wanted = argparse.ArgumentParser(prog="python -m tests.benchmarks.parts", description=__doc__)
    wanted.add_argument("content", type=Path)
    json.dump(parts(wanted.parse_args().content), sys.stdout)


if __name__ == "__main__":
    main()
