"""A write-up as an opening and numbered steps, which begin at its second-level headings."""

from __future__ import annotations

import re
from collections.abc import Iterable
from html.parser import HTMLParser

from markupsafe import Markup

from maker_site.frozen import frozen
from maker_site.pages.public.views import Step

_FEWEST_STEPS = 2
_VOID = {"br", "hr", "img", "source", "wbr", "col"}
_TITLE = re.compile(r"\A\s*#[ \t]+(?P<title>[^\n]+?)(?:[ \t]+#+)?[ \t]*(?:\n|\Z)")


@frozen
class WriteUp:
    """What stands before the first step, and the steps; no steps where the text has fewer than two."""

    opening: Markup
    steps: tuple[Step, ...]


def write_up(html: Markup, shown_above: str | None = None) -> WriteUp:
    """Return HTML (balanced, as `written` gives it) parted into an opening and steps.

    `shown_above` is the address of the picture at the head of the page, as its img has it: a figure of the opening
    that shows it again is left out.
    """
    blocks = _blocks(str(html))
    starts = [at for at, (tag, _) in enumerate(blocks) if tag == "h2"]
    if len(starts) < _FEWEST_STEPS:
        starts = []
    ends = [*starts[1:], len(blocks)]
    again = f'src="{Markup.escape(shown_above)}"' if shown_above else None
    opening = blocks[: starts[0]] if starts else blocks
    steps = [
        Step(_inside(blocks[start][1]), _joined(blocks[start + 1 : end], _after(blocks[start][1])))
        for start, end in zip(starts, ends, strict=False)
    ]
    return WriteUp(_joined([each for each in opening if not _shows(each, again)]), tuple(steps))


def title_and_rest(markdown: str) -> tuple[str | None, str]:
    """Return the first-level heading that a text begins with, and the text without it."""
    match = _TITLE.match(markdown)
    return (match["title"], markdown[match.end() :]) if match else (None, markdown)


def _inside(heading: str) -> Markup:
    """Return what a heading holds."""
    return Markup(heading[heading.index(">") + 1 : heading.rindex("</h2>")])


def _after(heading: str) -> str:
    """Return bare text that follows a heading."""
    return heading[heading.rindex("</h2>") + len("</h2>") :].lstrip()


def _joined(blocks: Iterable[tuple[str, str]], before: str = "") -> Markup:
    return Markup(before + "".join(text for _, text in blocks))


def _shows(block: tuple[str, str], source: str | None) -> bool:
    tag, text = block
    return source is not None and tag == "figure" and source in text


def _blocks(html: str) -> list[tuple[str, str]]:
    """Return the outermost elements with their tags, each with the text that follows it."""
    parser = _Outermost()
    parser.feed(html)
    parser.close()
    lines = [0]
    for line in html.splitlines(keepends=True):
        lines.append(lines[-1] + len(line))
    starts = [(lines[line - 1] + column, tag) for (line, column), tag in parser.found]
    if not starts or starts[0][0] > 0:
        starts.insert(0, (0, ""))
    ends = [*(start for start, _ in starts[1:]), len(html)]
    return [(tag, html[start:end]) for (start, tag), end in zip(starts, ends, strict=True)]


class _Outermost(HTMLParser):
    """Notes where each outermost element begins."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.found: list[tuple[tuple[int, int], str]] = []
        self._depth = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if not self._depth:
            self.found.append((self.getpos(), tag))
        if tag not in _VOID:
            self._depth += 1

    def handle_endtag(self, tag: str) -> None:
        if tag not in _VOID:
            self._depth -= 1
