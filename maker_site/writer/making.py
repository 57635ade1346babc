"""One make: records in, both copies out, the last good site in place until the new one is whole."""

from __future__ import annotations

import gc
import shutil
import tempfile
from collections import defaultdict
from collections.abc import Callable, Mapping, MutableMapping
from datetime import date
from fractions import Fraction
from functools import partial
from pathlib import Path

from maker_site.frozen import frozen
from maker_site.language import speaking
from maker_site.media import make as make_pictures
from maker_site.media.artwork import make_preview
from maker_site.pages.addresses import PICTURES
from maker_site.pages.lists import nothing_shown
from maker_site.pages.notebook import Notebook, noted
from maker_site.pages.noting import Noted, Read
from maker_site.pages.public.plan import public_batches, public_frame, public_gatherings
from maker_site.pages.workshop.plan import workshop_batches, workshop_frame
from maker_site.records import Problem, load
from maker_site.records.remembered import Remembered, digest_of
from maker_site.records.uncollected import uncollected
from maker_site.workings.review import review
from maker_site.writer.copies import Builder, Copy, Pages, base_of, put_assets
from maker_site.writer.crew import cores, crew
from maker_site.writer.gather import gather, picture_paths, side_by_side
from maker_site.writer.gather_artwork import gather_artwork
from maker_site.writer.kept import Kept
from maker_site.writer.known import KnownPhotos, keep_coverage, keep_papers, known_coverage, known_papers
from maker_site.writer.memory import Memory
from maker_site.writer.papers import Papers, Wanted
from maker_site.writer.printing import FONTS
from maker_site.writer.rendering import Renderer
from maker_site.writer.sameness import contents
from maker_site.writer.shelf import shelved
from maker_site.writer.signs import write_signs
from maker_site.writer.site_folder import Changes, SiteFolder
from maker_site.writer.themes import Theme, theme
from maker_site.writer.unchanged import keep_made, look_before
from maker_site.writer.workers import FEWEST, Setters, Work, build_here, build_side_by_side, menu_here, setting_papers

Told = Callable[[str, int, int], None]
"""Told of progress: what is being done, how much of it is done, of how much."""


@frozen
class Made:
    """What came of a make."""

    problems: tuple[Problem, ...]
    changes: Changes | None
    """None where an error kept the site from being made."""
    pages: int = 0
    """Pages of both copies."""
    pictures: int = 0
    """Picture files of both copies."""
    rendered: tuple[str, ...] = ()
    """Addresses of the pages that were rendered; the others show nothing that has changed."""
    built: tuple[str, ...] = ()
    """Batches of pages that were built to see whether they show something new."""


def find_problems(content: Path, today: date) -> tuple[Problem, ...]:
    """Read every record and decode every picture and return all problems; nothing is written."""
    with shelved(content) as remembered:
        return read_notebook(content, today, remembered, wholly=True)[1]


def make_site(
    content: Path,
    out: Path,
    theme_name: str,
    today: date,
    told: Told,
    memory: Memory | None = None,
    workers: int | None = None,
) -> Made:
    """Make both copies into `out`; raises SiteFolderProblem, ThemeProblem or TemplateProblem where it can't.

    Pages that show nothing that has changed since the last make are left as they are. `memory` is for who makes again
    and again: what one make understood and worked out, the next takes over. `workers` are the processes that build
    where there is much to do, as many as there are cores unless it says another number; none builds in this one.
    """
    told("Reading records", 0, 0)
    used = theme(theme_name, content)
    again, memory = memory is not None, memory or Memory(for_more=False)
    with crew(cores() if workers is None else workers, partial(setting_papers, used, content)) as setters:
        try:
            return _make(content, out, used, today, told, memory, setters, again=again)
        except BaseException:
            memory.drop()
            raise
        finally:
            if not again:
                gc.unfreeze()


def _make(
    content: Path,
    out: Path,
    used: Theme,
    today: date,
    told: Told,
    memory: Memory,
    setters: Setters | None,
    *,
    again: bool,
) -> Made:
    with uncollected():
        seen = None if again else look_before(content, used, today)
        kept = memory.begin(content, out, seen)
        known = known_coverage(kept, memory.program)
        book, problems = read_notebook(content, today, known=known, decode=True, memory=memory, kept=kept)
    if book is None:
        return Made(problems, None)
    if not again:
        gc.freeze()  # records hold no circles: nothing is gained by going through them later
        book.hold_few(lists_are_kept=memory.knows_before)
    elif memory.knows_before:
        book.hold_less_of_many()
    with speaking(book.language), SiteFolder.open(out) as site:
        order = memory.settle(book)
        ground = memory.ground(lambda: contents([*used.folders, content / FONTS]))
        base = digest_of(book.workshop.shop, book.workshop.about, ground, memory.program)
        copies = (
            Copy("workshop", workshop_frame(book), tuple(workshop_batches(book))),
            Copy("public", public_frame(book), tuple(public_batches(book, order)), public_gatherings(book)),
        )
        bases = {copy.name: base_of(copy, base) for copy in copies}
        if stand := memory.stands(site, bases):
            site.stand()
        papers_before = memory.papers if memory.papers is not None else known_papers(kept)
        papers = Papers(site, book, used, papers_before, told, stand=stand)
        pages = Pages(site, kept, papers, memory, stand=stand)
        builder = Builder(site, book, kept, papers)
        work = Work(site, book, pages, papers, builder, told, partial(_note_menu, memory, papers, base))
        printed = [(copy, _renderer(memory, used, copy, base)) for copy in copies]
        jobs = [job for copy, by in printed for job in pages.to_build(copy, by, bases[copy.name])]
        if setters is not None and len(jobs) >= FEWEST:
            memory.keep_records()
            build_side_by_side(work, jobs, setters)
        else:
            build_here(work, jobs)
            _set_menu(work, memory, base)
        for copy, by in printed:
            build_here(work, list(pages.gathered(copy, by, bases[copy.name])))
            put_assets(site, copy, by)
        _write_pictures(site, book, pages.pictures, told)
        write_signs(site, book, pages.signs.values(), told)
        said = papers.cautions()
        in_use = {each.digest for each in book.artwork.values()}
        keep_coverage(kept, memory.program, {digest: share for digest, share in known.items() if digest in in_use})
        changes = site.commit()
        keep_papers(kept, papers.known, papers_before, anew=not stand)
        memory.papers = papers.known
        rendered, built = tuple(sorted(pages.rendered)), tuple(sorted(pages.built))
        made = Made((*problems, *said), changes, pages.count, pages.count_of_pictures, rendered, built)
        memory.end(site.manifest)
        if seen is not None:
            memory.write(partial(keep_made, kept, seen, content, out, used, made))
        return made


def _renderer(memory: Memory, used: Theme, copy: Copy, base: str) -> Renderer:
    """Return what renders the pages of a copy, made anew where the theme or the frame has changed."""
    make = partial(Renderer, used, copy.frame, memory.program)
    return memory.sum(f"renderer {copy.name}", (base, copy.frame), make)


def _set_menu(work: Work, memory: Memory, base: str) -> None:
    """Set the menu on paper, or leave it where nothing that it shows has changed; then it is not even put together."""
    stands = memory.menu_stands(base)
    if stands is None or (stands and not work.papers.keep_menu()):
        menu_here(work)


def _note_menu(memory: Memory, papers: Papers, base: str, reads: frozenset[Read], wanted: Wanted | None) -> None:
    """Note what came of the menu on paper, and what it looked at."""
    memory.note_menu(base, reads, is_there=wanted is not None)
    if wanted is None:
        papers.drop_menu()
    else:
        papers.add(wanted)


def read_notebook(
    content: Path,
    today: date,
    remembered: Remembered | None = None,
    *,
    known: MutableMapping[str, Fraction] | None = None,
    decode: bool = False,
    wholly: bool = False,
    reviewed: bool = True,
    memory: Memory | None = None,
    kept: Kept | None = None,
) -> tuple[Notebook | None, tuple[Problem, ...]]:
    """Return all that the pages are made from, None where an error forbids it, and every problem found.

    `known` is coverage of artwork by content hash, and is added to. What is not known is counted at once with `decode`,
    else when it is first asked for. `wholly` decodes every picture to its end. Unless `reviewed`, settings are not held
    against limits, for which every project has to be worked out. With `kept`, which goes with a `memory`, photos that
    are as they were are not looked at again. `remembered`, else that of `memory`, is what was read before.
    """
    if memory:
        remembered = memory.remembered
    findings = load(content, remembered)
    workshop = findings.workshop
    if workshop is None:
        return None, findings.problems
    photos = KnownPhotos(kept, memory.program) if memory and kept else None
    paths = picture_paths(workshop, remembered)
    looked = gather(content, paths, wholly=wholly, known=photos)
    artwork = gather_artwork(workshop, {} if known is None else known, decode=decode, wholly=wholly)
    pictures = Noted("picture", {**artwork.pictures, **looked.pictures})
    coverage, files = Noted("artwork", artwork.coverage), Noted("artwork", artwork.files)
    shown_before = memory.shown_before if memory else nothing_shown
    book = Notebook(noted(workshop), pictures, (), today, coverage, files, shown_before)
    errors = (*looked.problems, *artwork.errors)
    with speaking(book.language):  # sums keep words, and the pages will show them
        if memory:
            memory.hand_over(book)
            found = tuple(memory.review(book))
        else:
            found = tuple(review(workshop, book.remakes.values())) if reviewed else ()
    problems = tuple(sorted({*findings.problems, *errors, *artwork.cautions, *found}))
    return (None if errors else book.with_cautions(problems)), problems


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
