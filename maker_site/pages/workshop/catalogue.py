"""The catalogue: every project, newest first, with filters that work from the disk."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Callable, Iterable, Iterator

from maker_site.language import say
from maker_site.pages.marks import family_of, family_swatch
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page, Text
from maker_site.pages.parts import Link
from maker_site.pages.workshop.pieces import tile
from maker_site.pages.workshop.views import Catalogue, Filter, FilterWord, MaterialMark, Tile
from maker_site.records import Project

TILES_A_PAGE = 48
"""Keeps a page light at any number of projects."""
DATA = "catalogue/data.js"


def catalogue_pages(book: Notebook) -> Iterator[Page | Text]:
    """Yield catalogue/index.html, its further pages, and the script with every project's row."""
    projects = book.newest_first
    pages = max(1, -(-len(projects) // TILES_A_PAGE))
    filters = tuple(_filters(book, projects))
    years = tuple(_years(book, projects))
    materials = tuple(_materials(book, projects))
    for number in range(1, pages + 1):
        shown = projects[(number - 1) * TILES_A_PAGE : number * TILES_A_PAGE]
        view = Catalogue(
            tuple(tile(book, project, _address(number)) for project in shown),
            len(projects),
            number,
            pages,
            Link(say("Newer"), _address(number - 1)) if number > 1 else None,
            Link(say("Older"), _address(number + 1)) if number < pages else None,
            years,
            filters,
            DATA,
            materials,
        )
        title = say("Catalogue") if number == 1 else say("Catalogue, page {n}", n=book.wording.count(number))
        yield Page(_address(number), "workshop/catalogue.html", title, view, door="catalogue/index.html")
    yield Text(DATA, _data(book, projects))


def _address(number: int) -> str:
    return "catalogue/index.html" if number == 1 else f"catalogue/{number}.html"


def year_of(book: Notebook, project: Project) -> str:
    """Return the year a project was made or last pressed, or an empty string."""
    if project.made:
        return str(project.made.year)
    rows = book.pressings_by_project.get(project.id, ())
    return str(rows[-1].date.year) if rows else ""


def _years(book: Notebook, projects: Iterable[Project]) -> Iterator[Link]:
    seen: set[str] = set()
    for index, project in enumerate(projects):
        year = year_of(book, project)
        if year not in seen:
            seen.add(year)
            yield Link(year or say("No date"), _address(index // TILES_A_PAGE + 1))


def _materials(book: Notebook, projects: Iterable[Project]) -> Iterator[MaterialMark]:
    for family in sorted({family_of(book.workshop.blanks[project.blank].substrate) for project in projects}):
        yield MaterialMark(family, family_swatch(family), family_swatch(family, width=320, height=240))


def _filters(book: Notebook, projects: Iterable[Project]) -> Iterator[Filter]:
    blanks = book.workshop.blanks
    kinds: list[tuple[str, str, Callable[[Project], Iterable[str]]]] = [
        ("substrate", say("Substrate"), lambda each: [say(blanks[each.blank].substrate)]),
        ("method", say("Method"), lambda each: [say(book.workshop.method_of(each))]),
        ("occasion", say("Occasion"), lambda each: each.occasions),
        ("year", say("Year"), lambda each: [year_of(book, each)]),
    ]
    for name, title, words in kinds:
        counts = Counter(word for project in projects for word in words(project) if word)
        order = sorted(counts, reverse=name == "year")
        yield Filter(name, title, tuple(FilterWord(word, counts[word]) for word in order))


def _data(book: Notebook, projects: Iterable[Project]) -> str:
    """Return the script that holds a row for each project; read by the page from the disk, without fetching."""
    rows = [_row(book, tile(book, project, DATA), project) for project in projects]
    return f"window.catalogueRows = {json.dumps(rows, ensure_ascii=False, separators=(',', ':'))};\n"


def _row(book: Notebook, shown: Tile, project: Project) -> dict[str, object]:
    blank = book.workshop.blanks[project.blank]
    smallest = shown.picture.modern[0] if shown.picture else None
    row: dict[str, object] = {
        "title": shown.link.text,
        "page": shown.link.address,
        "card": shown.card.address,
        "blank": shown.blank,
        "substrate": shown.substrate,
        "material": family_of(blank.substrate),
        "method": shown.method,
        "occasions": list(shown.occasions),
        "year": year_of(book, project),
        "made": shown.made.words if shown.made else "",
        "outcome": shown.outcome or "",
        "words": " ".join(word for word in (project.id, blank.id, blank.supplier, blank.code, project.summary) if word),
    }
    if smallest and shown.picture:
        row["picture"] = [smallest.address, shown.picture.fallback.address, shown.picture.width, shown.picture.height]
        row["text"] = shown.picture.text
    return row
