"""One make: records in, both copies out, the last good site in place until the new one is whole."""

from __future__ import annotations

import re
import shutil
import tempfile
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping, MutableMapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from functools import partial
from pathlib import Path

from maker_site.media import make as make_pictures
from maker_site.media.artwork import make_preview
from maker_site.pages.addresses import PICTURES
from maker_site.pages.menu import menu
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Drawn, Page, Text
from maker_site.pages.public.plan import public_frame, public_pages
from maker_site.pages.workshop.plan import workshop_frame, workshop_pages
from maker_site.pages.workshop.views import CardPage
from maker_site.records import Problem, load
from maker_site.workings.review import review
from maker_site.writer.gather import gather, picture_paths, side_by_side
from maker_site.writer.gather_artwork import gather_artwork
from maker_site.writer.known_coverage import keep_coverage, known_coverage
from maker_site.writer.known_papers import keep_papers, known_papers
from maker_site.writer.papers import write_papers
from maker_site.writer.rendering import Renderer
from maker_site.writer.signs import noting_signs, write_signs
from maker_site.writer.site_folder import Changes, SiteFolder
from maker_site.writer.themes import theme

Told = Callable[[str, int, int], None]
"""Told of progress: what is being done, how much of it is done, of how much."""


@dataclass(frozen=True, slots=True)
class Made:
    """What came of a make."""

    problems: tuple[Problem, ...]
    changes: Changes | None
    """None where an error kept the site from being made."""
    pages: int = 0
    """Pages of both copies."""
    pictures: int = 0
    """Picture files of both copies."""


def find_problems(content: Path, today: date) -> tuple[Problem, ...]:
    """Read every record and decode every picture and return all problems; nothing is written."""
    return read_notebook(content, today, wholly=True)[1]


def make_site(content: Path, out: Path, theme_name: str, today: date, told: Told) -> Made:
    """Make both copies into `out`; raises SiteFolderProblem, ThemeProblem or TemplateProblem where it can't."""
    told("Reading records", 0, 0)
    known = known_coverage(out)
    book, problems = read_notebook(content, today, known=known, decode=True)
    if book is None:
        return Made(problems, None)
    used = theme(theme_name, content)
    with SiteFolder.open(out) as site:
        wanted: dict[str, set[str]] = defaultdict(set)
        signs: list[Drawn] = []
        cards: dict[str, CardPage] = {}
        copies = (
            ("workshop", workshop_frame(book), _noting_cards(workshop_pages(book), cards)),
            ("public", public_frame(book), noting_signs(public_pages(book), signs)),
        )
        pages = sum(_write_copy(site, copy, Renderer(used, frame), each, wanted, told) for copy, frame, each in copies)
        _write_pictures(site, book, wanted, told)
        write_signs(site, book, signs, told)
        papers = known_papers(out)
        said = write_papers(site, book, used, cards, menu(book, lambda _: None), papers, told)
        in_use = {each.digest for each in book.artwork.values()}
        keep_coverage(out, {digest: share for digest, share in known.items() if digest in in_use})
        changes = site.commit()
        keep_papers(out, papers)
        return Made((*problems, *said), changes, pages, sum(len(names) for names in wanted.values()))


def _noting_cards(pages: Iterable[Page | Text], cards: dict[str, CardPage]) -> Iterator[Page | Text]:
    """Yield the pages as they come, and note what each press card shows: it goes on paper too."""
    for page in pages:
        if isinstance(page, Page) and isinstance(page.view, CardPage):
            cards[page.view.id] = page.view
        yield page


def read_notebook(
    content: Path,
    today: date,
    *,
    known: MutableMapping[str, Fraction] | None = None,
    decode: bool = False,
    wholly: bool = False,
) -> tuple[Notebook | None, tuple[Problem, ...]]:
    """Return all that the pages are made from, None where an error forbids it, and every problem found.

    `known` is coverage of artwork by content hash, and is added to. What is not known is counted at once with `decode`,
    else when it is first asked for. `wholly` decodes every picture to its end.
    """
    findings = load(content)
    workshop = findings.workshop
    if workshop is None:
        return None, findings.problems
    looked = gather(content, picture_paths(workshop), wholly=wholly)
    artwork = gather_artwork(workshop, {} if known is None else known, decode=decode, wholly=wholly)
    pictures = {**artwork.pictures, **looked.pictures}
    book = Notebook(workshop, pictures, (), today, artwork.coverage, artwork.files)
    errors = (*looked.problems, *artwork.errors)
    found = review(workshop, book.remakes.values())
    problems = tuple(sorted({*findings.problems, *errors, *artwork.cautions, *found}))
    return (None if errors else book.with_cautions(problems)), problems


def _write_copy(
    site: SiteFolder,
    copy: str,
    renderer: Renderer,
    pages: Iterable[Page | Text],
    wanted: dict[str, set[str]],
    told: Told,
) -> int:
    """Put the pages of one copy, note the pictures that they show, and return how many pages there are."""
    count = 0
    for count, page in enumerate(pages, 1):
        text = page.text if isinstance(page, Text) else renderer.html(page)
        for name in set(_PICTURE_NAME.findall(text)):
            wanted[name].add(copy)
        site.put(f"{copy}/{page.address}", text.encode())
        told(f"Writing the {copy} copy", count, 0)
    for address, path in renderer.assets.items():
        site.put(f"{copy}/{address}", path.read_bytes())
    return count


_PICTURE_NAME = re.compile(rf"{PICTURES}/([0-9a-f]+-\d+\.[a-z]+)")


def _write_pictures(site: SiteFolder, book: Notebook, wanted: Mapping[str, set[str]], told: Told) -> None:
    """Make the picture files that a page of either copy shows and that are not there yet."""
    missing: dict[str, set[str]] = defaultdict(set)
    path_of = {each.name: path for path, planned in book.pictures.items() for each in planned.all}
    for name, copies in sorted(wanted.items()):
        kept = [site.keep(f"{copy}/{PICTURES}/{name}") for copy in sorted(copies)]  # each of them is to be kept
        if name in path_of and not all(kept):
            missing[path_of[name]].add(name)

    def work(path: str) -> None:
        with tempfile.TemporaryDirectory() as folder:
            make = make_preview if path in book.artwork else make_pictures
            make(book.workshop.root / path, book.pictures[path], Path(folder))
            for name in sorted(missing[path]):
                for copy in sorted(wanted[name]):
                    address = f"{copy}/{PICTURES}/{name}"
                    if not site.has(address):
                        site.put_file(address, partial(shutil.copyfile, Path(folder) / name))

    for done, _ in enumerate(side_by_side(work, sorted(missing)), 1):
        told("Making pictures", done, len(missing))
