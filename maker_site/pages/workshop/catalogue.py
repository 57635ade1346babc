"""The catalogue: every project, newest first, with filters that work from the disk."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence

from maker_site.language import say
from maker_site.pages.marks import family_field, family_of, family_swatch
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page, Text
from maker_site.pages.parts import Link
from maker_site.pages.workshop.catalogue_data import catalogue_script
from maker_site.pages.workshop.pieces import tile
from maker_site.pages.workshop.views import Catalogue, CatalogueEntry, Filter, FilterWord, MaterialMark
from maker_site.records import Project

TILES_A_PAGE = 48
"""Keeps a page light at any number of projects."""
DATA = "catalogue/data.js"
_FIRST = "catalogue/index.html"


def catalogue_pages(book: Notebook) -> Iterator[Page | Text]:
    """Yield catalogue/index.html, its further pages, and the script with every project's row."""
    return catalogue_of([book.shown("catalogue", _entry_of, project.id) for project in book.newest_first])


def _entry_of(book: Notebook, name: str) -> CatalogueEntry:
    return catalogue_entry(book, book.workshop.projects[name])


def catalogue_of(entries: Sequence[CatalogueEntry]) -> Iterator[Page | Text]:
    """Yield the catalogue of entries, newest first."""
    pages = max(1, -(-len(entries) // TILES_A_PAGE))
    filters = tuple(_filters(entries))
    years = tuple(_years(entries))
    materials = tuple(_materials(entries))
    for number in range(1, pages + 1):
        shown = entries[(number - 1) * TILES_A_PAGE : number * TILES_A_PAGE]
        view = Catalogue(
            tuple(each.tile for each in shown),
            len(entries),
            number,
            pages,
            Link(say("Newer"), _address(number - 1)) if number > 1 else None,
            Link(say("Older"), _address(number + 1)) if number < pages else None,
            years,
            filters,
            DATA,
            materials,
        )
        title = say("Catalogue") if number == 1 else say("Catalogue, page {n}", n=number)
        yield Page(_address(number), "workshop/catalogue.html", title, view, door=_FIRST)
    yield Text(DATA, catalogue_script(entries))


def catalogue_entry(book: Notebook, project: Project) -> CatalogueEntry:
    """Return what the catalogue shows of a project and finds it by."""
    blank = book.workshop.blanks[project.blank]
    typed = [word for word in (blank.substrate, book.workshop.method_of(project)) if say(word) != word]
    found_by = (project.id, blank.id, blank.supplier, blank.code, project.summary, *typed)
    return CatalogueEntry(
        project.id,
        tile(book, project, _FIRST),  # all pages of the catalogue lie in one folder
        family_of(blank.substrate),
        year_of(book, project),
        " ".join(word for word in found_by if word),
    )


def _address(number: int) -> str:
    return _FIRST if number == 1 else f"catalogue/{number}.html"


def year_of(book: Notebook, project: Project) -> str:
    """Return the year a project was made or last pressed, or an empty string."""
    if project.made:
        return str(project.made.year)
    rows = book.pressings_by_project.get(project.id, ())
    return str(rows[-1].date.year) if rows else ""


def _years(entries: Iterable[CatalogueEntry]) -> Iterator[Link]:
    seen: set[str] = set()
    for index, each in enumerate(entries):
        if each.year not in seen:
            seen.add(each.year)
            yield Link(each.year or say("No date"), _address(index // TILES_A_PAGE + 1))


def _materials(entries: Iterable[CatalogueEntry]) -> Iterator[MaterialMark]:
    for family in sorted({each.family for each in entries}):
        yield MaterialMark(family, family_swatch(family), family_field(family, width=320, height=240))


def _filters(entries: Sequence[CatalogueEntry]) -> Iterator[Filter]:
    kinds: list[tuple[str, str, Callable[[CatalogueEntry], Iterable[str]]]] = [
        ("substrate", say("Substrate"), lambda each: [each.tile.substrate]),
        ("method", say("Method"), lambda each: [each.tile.method]),
        ("occasion", say("Occasion"), lambda each: each.tile.occasions),
        ("year", say("Year"), lambda each: [each.year]),
    ]
    for name, title, words in kinds:
        counts = Counter(word for each in entries for word in words(each) if word)
        order = sorted(counts, reverse=name == "year")
        yield Filter(name, title, tuple(FilterWord(word, counts[word]) for word in order))
