"""The batches of a make, built here or in processes side by side; what comes of them is the same."""

from __future__ import annotations

import tempfile
from collections import Counter, deque
from collections.abc import Callable, Iterator, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Final, NamedTuple, TypeAlias

from maker_site.pages.notebook import Notebook
from maker_site.pages.noting import Read, noting
from maker_site.paper.typesetting import Document, Typesetter
from maker_site.writer.copies import Builder, Built, Job, Pages
from maker_site.writer.crew import Crew, any_of, crew, resident, shared
from maker_site.writer.looked import reduced
from maker_site.writer.papers import Papers, SetPaper, Wanted, menu_paper, set_paper
from maker_site.writer.printing import setter
from maker_site.writer.signs import SignToDraw, draw_sign, sign_to_draw
from maker_site.writer.site_folder import Portion, SiteFolder
from maker_site.writer.themes import Theme

FEWEST: Final = 60
"""Batches from which on processes are worth forking."""
_AT_ONCE: Final = 4
"""Batches of one task."""
_MOST_PAPERS: Final = 24
"""Papers that wait to be set; while there are more, nothing is built that asks for others."""
_MOST_HELD: Final = 320 * 2**20
_LEAST_GROWTH: Final = 16 * 2**20
"""Bytes that a process may hold before another takes its place, and those that it may always add to what it was
forked with: one that ends too soon works out again what its like worked out before."""


class _Task(NamedTuple):
    """What a process is asked for: some batches by their numbers, or the menu."""

    batches: tuple[int, ...] = ()
    menu: bool = False


class _Answer(NamedTuple):
    """What came of a task, and what it put into the site."""

    task: _Task
    built: tuple[Built, ...]
    menu: Wanted | None
    looked_at: frozenset[Read]
    """By the menu."""
    portion: Portion


class _DrawnSign(NamedTuple):
    """A picture that was drawn."""

    address: str
    data: bytes


ToSet: TypeAlias = tuple[str, Document] | SignToDraw
Setters: TypeAlias = Crew[ToSet, SetPaper | _DrawnSign]


@dataclass(frozen=True)
class Work:
    """Everything that building batches needs."""

    site: SiteFolder
    book: Notebook
    pages: Pages
    papers: Papers
    builder: Builder
    told: Callable[[str, int, int], None]
    note_menu: Callable[[frozenset[Read], Wanted | None], None]
    """Told what the menu on paper looked at, and what came of it."""


@contextmanager
def setting_papers(used: Theme, content: Path, _number: int) -> Iterator[Callable[[ToSet], SetPaper | _DrawnSign]]:
    """Give what sets papers, and draws pictures with the same typesetter, in a process of its own.

    The typesetter is made when it is first asked for: often nothing is to be set.
    """
    with ExitStack() as stack:
        made: list[Typesetter] = []

        def do(asked: ToSet) -> SetPaper | _DrawnSign:
            if isinstance(asked, SignToDraw):
                return _DrawnSign(asked.address, draw_sign(asked))
            if not made:
                made.append(stack.enter_context(setter(used, content)))
            return set_paper(made[0], *asked)

        yield do


def build_here(work: Work, jobs: Sequence[Job]) -> None:
    """Build one batch after another, and set the papers that they ask for."""
    progress = _Progress(jobs, work.told)
    for job in jobs:
        work.pages.note(job, work.builder.build(job))
        work.papers.set_here(_MOST_PAPERS)
        progress.tell(job)
    work.papers.set_here()


def build_side_by_side(work: Work, jobs: Sequence[Job], setters: Setters) -> None:
    """Build batches, draw pictures and set papers, the menu's among them, in as many processes as there are setters."""
    for copy, renderer in {job.copy: job.renderer for job in jobs}.items():
        renderer.ready(copy)
    tasks = deque(
        [_Task(menu=True)]
        + [_Task(tuple(range(first, min(first + _AT_ONCE, len(jobs))))) for first in range(0, len(jobs), _AT_ONCE)]
    )
    asked: set[str] = set()
    progress = _Progress(jobs, work.told)
    with (
        tempfile.TemporaryDirectory(prefix="maker-site-") as folder,
        shared(),
        crew(
            setters.size, partial(_building, work, jobs, Path(folder)), max(_LEAST_GROWTH, _MOST_HELD - resident())
        ) as builders,
    ):
        assert builders is not None
        while True:
            while (paper := work.papers.next_to_set()) is not None:
                setters.ask(paper)
            while tasks and builders.pending < 2 * builders.size and setters.pending < _MOST_PAPERS:
                builders.ask(tasks.popleft())
            if not builders.pending and not setters.pending:
                return
            for _, answer in any_of(builders, setters):
                if isinstance(answer, SetPaper):
                    work.papers.put(answer)
                elif isinstance(answer, _DrawnSign):
                    work.site.put(answer.address, answer.data)
                else:
                    for sign in _noted(work, jobs, answer, progress, asked):
                        setters.ask(sign)


def _noted(
    work: Work, jobs: Sequence[Job], answer: _Answer, progress: _Progress, asked: set[str]
) -> Iterator[SignToDraw]:
    """Note what a builder has built, and yield the pictures that are to be drawn; `asked` are those that were."""
    work.site.take(answer.portion)
    for number, built in zip(answer.task.batches, answer.built, strict=True):
        work.pages.note(jobs[number], built)
        progress.tell(jobs[number])
        for drawn in built.signs:
            if drawn.address not in asked and (sign := sign_to_draw(work.site, work.book, drawn)):
                yield sign
            asked.add(drawn.address)
            work.pages.signs.pop(drawn.address, None)  # asked for, or there: nothing is left to hold it for
    if answer.task.menu:
        work.note_menu(answer.looked_at, answer.menu)


@contextmanager
def _building(work: Work, jobs: Sequence[Job], folder: Path, number: int) -> Iterator[Callable[[_Task], _Answer]]:
    """Give what does tasks in a fork."""
    work.site.part(f"{number}")

    def do(task: _Task) -> _Answer:
        built = tuple(work.builder.build(jobs[each]) for each in task.batches)
        with noting() as reads:
            of_menu = menu_paper(work.book) if task.menu else None
        menu = work.papers.menu(of_menu, folder) if of_menu else None
        return _Answer(task, built, menu, reduced(reads), work.site.portion())

    yield do


class _Progress:
    """Tells how many batches of each copy are built."""

    def __init__(self, jobs: Sequence[Job], told: Callable[[str, int, int], None]) -> None:
        self._told, self._of, self._done = told, Counter(job.copy for job in jobs), Counter[str]()

    def tell(self, job: Job) -> None:
        """Tell that one more is built."""
        self._done[job.copy] += 1
        self._told(f"Writing the {job.copy} copy", self._done[job.copy], self._of[job.copy])


def menu_here(work: Work) -> None:
    """Set the menu where it has changed."""
    with noting() as reads:
        of_menu = menu_paper(work.book)
    with tempfile.TemporaryDirectory(prefix="maker-site-") as folder:
        work.note_menu(frozenset(reads), work.papers.menu(of_menu, Path(folder)) if of_menu else None)
        work.papers.set_here()
