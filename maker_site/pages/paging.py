"""A long list on several pages, so that each stays light whatever the list grows to."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TypeVar

from maker_site.pages.parts import Link, Paging

V = TypeVar("V")


def pages_of(
    first: str, *lists: Sequence[object], at_once: int, words: tuple[str, str], folder: str | None = None
) -> Iterator[tuple[str, Paging]]:
    """Yield the address and the place of each page of a list; there is always one.

    The first stands at `first`; those that follow in `folder`, else in a folder of the first one's name, or in pages/
    beside an index. `words` lead to the page before and to the page after.
    """
    of = max(1, *(-(-len(each) // at_once) for each in lists))
    whole = first.removesuffix("index.html") + "pages" if first.endswith("index.html") else first.removesuffix(".html")
    back, on = words

    def address(number: int) -> str:
        return first if number == 1 else f"{folder or whole}/{number}.html"

    for number in range(1, of + 1):
        newer = Link(back, address(number - 1)) if number > 1 else None
        older = Link(on, address(number + 1)) if number < of else None
        yield address(number), Paging(number, of, newer, older)


def on_page(items: Sequence[V], paging: Paging, at_once: int) -> Sequence[V]:
    """Return the part of a list that one page shows."""
    return items[(paging.number - 1) * at_once : paging.number * at_once]
