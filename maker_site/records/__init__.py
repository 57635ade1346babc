"""Records: the maker's plain files, read into frozen values, with every problem in a sentence.

A kind of record is imported when it is first asked for: who needs quantities alone doesn't wait for all kinds. `load`
here is the function; import nothing else out of its module, or the module's own name takes its place.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from maker_site.records.article import Article, ArticleHead
    from maker_site.records.base import Origin, Part, Record
    from maker_site.records.blank import Blank, Hole, Lot, Sheet
    from maker_site.records.load import load
    from maker_site.records.press import Press, Reading, Resolution
    from maker_site.records.pressing import Pressing
    from maker_site.records.problems import NotReadable, Problem, Severity
    from maker_site.records.project import Artwork, MenuEntry, NameBox, Order, Photo, Project, Share, Use, Work
    from maker_site.records.shop import Fee, Printer, Shop, Tax, Units
    from maker_site.records.supply import Supply
    from maker_site.records.workshop import Findings, Workshop

__all__ = [
    "Article",
    "ArticleHead",
    "Artwork",
    "Blank",
    "Fee",
    "Findings",
    "Hole",
    "Lot",
    "MenuEntry",
    "NameBox",
    "NotReadable",
    "Order",
    "Origin",
    "Part",
    "Photo",
    "Press",
    "Pressing",
    "Printer",
    "Problem",
    "Project",
    "Reading",
    "Record",
    "Resolution",
    "Severity",
    "Share",
    "Sheet",
    "Shop",
    "Supply",
    "Tax",
    "Units",
    "Use",
    "Work",
    "Workshop",
    "load",
]

_HOMES = {
    "article": (
        "Article",
        "ArticleHead",
    ),
    "base": (
        "Origin",
        "Part",
        "Record",
    ),
    "blank": (
        "Blank",
        "Hole",
        "Lot",
        "Sheet",
    ),
    "load": ("load",),
    "press": (
        "Press",
        "Reading",
        "Resolution",
    ),
    "pressing": ("Pressing",),
    "problems": (
        "NotReadable",
        "Problem",
        "Severity",
    ),
    "project": (
        "Artwork",
        "MenuEntry",
        "NameBox",
        "Order",
        "Photo",
        "Project",
        "Share",
        "Use",
        "Work",
    ),
    "shop": (
        "Fee",
        "Printer",
        "Shop",
        "Tax",
        "Units",
    ),
    "supply": ("Supply",),
    "workshop": (
        "Findings",
        "Workshop",
    ),
}
"""The module of each name."""
_HOME_OF = {name: home for home, names in _HOMES.items() for name in names}


def __getattr__(name: str) -> Any:
    """Return what is asked for by name, and keep it at hand."""
    if name not in _HOME_OF:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    found = getattr(import_module(f"{__name__}.{_HOME_OF[name]}"), name)
    globals()[name] = found
    return found
