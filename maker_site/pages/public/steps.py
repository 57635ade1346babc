"""A write-up as an opening and numbered steps, which begin at its second-level headings."""

from __future__ import annotations

import re
from dataclasses import dataclass
from html.parser import HTMLParser

from markupsafe import Markup

from maker_site.pages.public.views import Step

_VOID = {"br", "hr", "img", "source", "wbr", "col"}
_TITLE = re.compile(r"\A\s*#[ \t]+(?P<title>[^\n]+?)(?:[ \t]+#+)?[ \t]*(?:\n|\Z)")


@dataclass(frozen=True, slots=True)
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
    first = starts[0] if len(starts) > 1 else len(blocks)
    again = f'src="{Markup.escape(shown_above)}"' if shown_above else None
    opening = [text for tag, text in blocks[:first] if not (again and tag == "figure" and again in text)]
    ends = [*starts[1:], len(blocks)]
    steps = [
        Step(_inside(blocks[start][1]), Markup("".join(text for _, text in blocks[start + 1 : end])))
        for start, end in zip(starts, ends, strict=True)
        if first < len(blocks)
    ]
    return WriteUp(Markup("".join(opening)), tuple(steps))


def title_and_rest(markdown: str) -> tuple[str | None, str]:
    """Return the first-level heading that a text begins with, and the text without it."""
    match = _TITLE.match(markdown)
    return (match["title"], markdown[match.end() :]) if match else (None, markdown)


def _inside(heading: str) -> Markup:
    """Return what a heading holds."""
    return Markup(heading[heading.index(">") + 1 : heading.rindex("</")])


def _blocks(html: str) -> list[tuple[str, str]]:
    """Return the outermost elements with their tags, each with the text that follows it."""
    parser = _Outermost()
    parser.feed(html)
    parser.close()
    lines = [0]
    for line in html.splitlines(keepends=True):
        lines.append(lines[-1] + len(line))
    starts = [(lines[line - 1] + column, tag) for (line, column), tag in parser.found]
    if not starts:
        return [("", html)] if html.strip() else []
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
