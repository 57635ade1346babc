"""What a notebook takes over from an earlier one, so that only what has changed is worked out anew."""

from __future__ import annotations

from typing import Final

from maker_site.pages.notebook import Notebook
from maker_site.pages.noting import Read

_OF_ROWS: Final = ("pressings_by_project", "pressings_by_blank", "pressings_by_press")
_OF_ORDER: Final = ("blanks_on", "names_by_blank")


def take_rows_over(book: Notebook, before: Notebook) -> None:
    """Take the rows in their groups, where the log says the same."""
    if book.workshop.pressings == before.workshop.pressings:
        _take(book, before, _OF_ROWS)


def take_order_over(book: Notebook, before: Notebook) -> None:
    """Take which records go together, where nothing that is made of has changed."""
    _take(book, before, _OF_ORDER)


def take_apart_over(book: Notebook, before: Notebook, changed: frozenset[Read]) -> None:
    """Take what nothing changed has to do with of the sums that are noted by themselves.

    `changed` is what differs between the records of the two. A pressing changes where to begin for few blanks, and
    need not touch every page of its substrate, so what of these differs is to be found out before `take_over`.
    """
    book.evidence_by_blank.take_over(before.evidence_by_blank, changed)
    book.stock.take_over(before.stock, changed)
    for kind, sums in book.apart.items():
        sums.take_over(before.apart[kind], changed)


def take_over(book: Notebook, before: Notebook, changed: frozenset[Read]) -> None:
    """Take the same of all other sums."""
    book.remakes.take_over(before.remakes, changed)
    book.cost_sheets.take_over(before.cost_sheets, changed)
    book.prices.take_over(before.prices, changed)
    book.lists.take_over(before.lists, changed)


def _take(book: Notebook, before: Notebook, names: tuple[str, ...]) -> None:
    book.__dict__.update({name: before.__dict__[name] for name in names if name in before.__dict__})
