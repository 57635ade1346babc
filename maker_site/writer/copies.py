"""The pages of the copies, written: those that show what has changed are built and rendered, the others stay.

What is to be built is found out first, then built batch by batch, in whatever order and in whichever process, and what
came of each batch is noted here.
"""

from __future__ import annotations

import json
import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from typing import Any, Final, NamedTuple

from maker_site.frozen import frozen
from maker_site.pages import addresses
from maker_site.pages.notebook import Notebook
from maker_site.pages.noting import Read, noting
from maker_site.pages.page import Batch, Drawn, Gathering, Page, Said, Text
from maker_site.pages.workshop.plan import PROJECT
from maker_site.pages.workshop.views import CardPage
from maker_site.records.remembered import digest_of
from maker_site.writer.kept import Kept
from maker_site.writer.looked import reduced
from maker_site.writer.memory import Memory
from maker_site.writer.papers import Papers, Wanted
from maker_site.writer.rendering import Renderer
from maker_site.writer.shown import Showing, newly_shown
from maker_site.writer.site_folder import SiteFolder

_BATCH: Final = "batch"
_PICTURE_NAME: Final = re.compile(rf"{addresses.PICTURES}/([0-9a-f]+-\d+\.[a-z]+)")


@frozen
class Copy:
    """One of the two copies, before it is built."""

    name: str
    frame: Any
    batches: tuple[Batch, ...]
    gatherings: tuple[Gathering, ...] = ()


@frozen
class Job:
    """One batch that is to be built."""

    copy: str
    batch: Batch
    base: str
    """A digest of what all pages of the copy depend on."""
    renderer: Renderer

    @property
    def name(self) -> str:
        """Return the batch's name among those of both copies."""
        return f"{self.copy}/{self.batch.name}"


class Written(NamedTuple):
    """One page as it stands in the site."""

    address: str
    stamp: str
    shown: str
    """A digest of its view, or of a text that is ready as it is."""
    pictures: tuple[str, ...]

    @classmethod
    def of(cls, said: Sequence[Any]) -> Written:
        """Return it out of JSON."""
        return cls(str(said[0]), str(said[1]), str(said[2]), tuple(said[3]))


class Built(NamedTuple):
    """What came of a batch."""

    reads: frozenset[Read]
    """What was looked at."""
    said: Sequence[Sequence[Any]]
    """What its pages say of themselves, each with its kind."""
    signs: tuple[Drawn, ...]
    """Pictures that are to be drawn."""
    pages: tuple[Written, ...]
    rendered: tuple[str, ...]
    """Addresses of the pages that were rendered, each with its copy."""
    cards: tuple[Wanted, ...]
    """Papers of the press cards among its pages."""
    shown: tuple[Showing, ...]
    """What lists show that was worked out for it."""


class Builder:
    """Builds batches and puts their pages."""

    def __init__(self, site: SiteFolder, book: Notebook, kept: Kept, papers: Papers) -> None:
        self._site, self._book, self._kept, self._papers = site, book, kept, papers

    def build(self, job: Job) -> Built:
        """Build a batch, and render and put those of its pages that show what they did not show before."""
        before = self._kept.get(_BATCH, job.name) or {"base": "", "pages": []}
        known = {page.address: page for page in map(Written.of, before["pages"])} if before["base"] == job.base else {}
        with noting() as reads:
            found = list(job.batch.build())
        rendered: list[str] = []
        return Built(
            reduced(reads),
            [[each.kind, each.value] for each in found if isinstance(each, Said)],
            tuple(each for each in found if isinstance(each, Drawn)),
            tuple(self._put(job, each, known, rendered) for each in found if isinstance(each, Page | Text)),
            tuple(rendered),
            tuple(
                self._papers.card(each.view)
                for each in found
                if isinstance(each, Page) and isinstance(each.view, CardPage)
            ),
            tuple(newly_shown(self._book)),
        )

    def _put(self, job: Job, page: Page | Text, known: dict[str, Written], rendered: list[str]) -> Written:
        address = f"{job.copy}/{page.address}"
        shown = digest_of(page)
        before = known.get(page.address)
        if before and before.shown == shown and self._site.keep(address, before.stamp):
            return before
        text = page.text if isinstance(page, Text) else job.renderer.html(page)
        self._site.put(address, text.encode())
        rendered.append(address)
        pictures = tuple(sorted(set(_PICTURE_NAME.findall(text))))
        return Written(page.address, self._site.stamp(address), shown, pictures)


class Pages:
    """Keeps the pages of both copies that are as they were, notes what came of the others, and what they ask for."""

    def __init__(self, site: SiteFolder, kept: Kept, papers: Papers, memory: Memory, *, stand: bool) -> None:
        """Where all `stand`, every page is in the site as the last make left it, and stays if it is not built anew."""
        self._site, self._kept, self._papers, self._memory = site, kept, papers, memory
        self._state, self._stand = memory.state, stand
        self.rendered: list[str] = []
        """Addresses of the pages that were rendered, each with its copy."""
        self.built: list[str] = []
        """Batches that were built, each with its copy."""
        self.pictures: dict[str, set[str]] = defaultdict(set)
        """The copies that show each picture, by the picture's name, as far as pages were built."""
        self.signs: dict[str, Drawn] = {}
        """Pictures that are to be drawn, by their addresses."""
        self._said: dict[str, Sequence[Sequence[Any]]] = {}
        """What the pages of each batch that was built say of themselves, each with its kind."""
        self._said_before: dict[str, Sequence[Sequence[Any]]] = {}
        """What the pages of those batches, and of those that are gone, said the last time."""
        self._stale: dict[str, set[str]] = {}
        """The batches of each copy that were built before and show something that has changed."""

    @property
    def count(self) -> int:
        """How many pages there are in both copies."""
        return self._state.pages

    @property
    def count_of_pictures(self) -> int:
        """How many files of photos and artwork there are in both copies."""
        return sum(f"/{addresses.PICTURES}/" in address for address in self._state.asked)

    def to_build(self, copy: Copy, renderer: Renderer, base: str) -> Iterator[Job]:
        """Keep the batches of a copy that show what they showed; yield the others."""
        stale = self._stale[copy.name] = self._memory.stale(copy.name, base)
        before = {name for name in self._state.looked.names(_BATCH) if name.startswith(f"{copy.name}/")}
        now = [each.name for each in copy.batches] + [each.name for each in copy.gatherings]
        gone = before - {f"{copy.name}/{name}" for name in now}
        for name in sorted(gone):
            self._take_back(name)
            self._kept.forget(_BATCH, name)
            if (project := _project(name)) is not None:
                self._papers.drop_card(project)
        for batch in copy.batches:
            job = Job(copy.name, batch, base, renderer)
            if job.name not in before or job.name in stale or not self._keep(job.name):
                self._take_back(job.name)
                yield job

    def gathered(self, copy: Copy, renderer: Renderer, base: str) -> Iterator[Job]:
        """The same for what is made of what all pages of a copy have said, when all of them are built."""
        names = [f"{copy.name}/{batch.name}" for batch in copy.batches]
        same = all(
            self._said_before.get(name, []) == self._said.get(name, []) for name in self._said_before | self._said
        )
        for gathering in copy.gatherings:
            name = f"{copy.name}/{gathering.name}"
            is_known = name in self._state.looked.names(_BATCH)
            if same and is_known and name not in self._stale[copy.name] and self._keep(name):
                continue
            self._take_back(name)
            said = [value for each in map(self._said_by, names) for kind, value in each if kind == gathering.kind]
            yield Job(copy.name, Batch(gathering.name, partial(gathering.build, said)), base, renderer)

    def note(self, job: Job, built: Built) -> None:
        """Note what came of a batch."""
        self.built.append(job.name)
        self.rendered += built.rendered
        said = json.loads(json.dumps(built.said))  # as it comes back, to be compared
        entry = {
            "base": job.base,
            "said": said,
            "signs": sorted({each.address for each in built.signs}),
            "pages": [[page.address, page.stamp, page.shown, list(page.pictures)] for page in built.pages],
        }
        self._kept.put(_BATCH, job.name, "", entry)
        for showing in built.shown:
            self._memory.note_shown(showing)
        self._memory.note_batch(job.name, built.reads)
        self._said[job.name] = said
        self.signs |= {each.address: each for each in built.signs}
        self._state.pages += len(built.pages)
        for address in _asked(job.copy, entry):
            self._state.asked[address] += 1
        for page in built.pages:
            for name in page.pictures:
                self.pictures[name].add(job.copy)
        for card in built.cards:
            self._papers.add(card)

    def _said_by(self, name: str) -> Sequence[Sequence[Any]]:
        if name in self._said:
            return self._said[name]
        entry = self._kept.get(_BATCH, name)
        found: Sequence[Sequence[Any]] = entry["said"]
        return found

    def _keep(self, name: str) -> bool:
        """Leave a batch as it is where its files are as it made them; tell whether that was so."""
        if self._stand:
            return True
        entry, copy = self._kept.get(_BATCH, name), name.partition("/")[0]
        if entry is None or not all(self._site.keep(address) for address in _asked(copy, entry)):
            return False
        project = _project(name)
        if project is not None and not self._papers.keeps_card(project):
            return False
        if not all(self._site.keep(f"{copy}/{page.address}", page.stamp) for page in map(Written.of, entry["pages"])):
            return False
        if project is not None:
            self._papers.keep_card(project)
        return True

    def _take_back(self, name: str) -> None:
        """Take back what a batch put the last time; it may put the same again."""
        if name not in self._state.looked.names(_BATCH):
            return
        entry, copy = self._kept.get(_BATCH, name), name.partition("/")[0]
        self._state.looked.forget(_BATCH, name)
        if entry is None:
            return
        self._said_before[name] = entry["said"]
        self._state.pages -= len(entry["pages"])
        for page in map(Written.of, entry["pages"]):
            self._site.withdraw(f"{copy}/{page.address}")
        for address in _asked(copy, entry):
            self._state.asked[address] -= 1
            if not self._state.asked[address]:
                del self._state.asked[address]
                self._site.withdraw(address)


def _asked(copy: str, entry: Mapping[str, Any]) -> set[str]:
    """Return the addresses in the site of all pictures that a batch asks for."""
    photos = {
        f"{copy}/{addresses.PICTURES}/{name}" for page in map(Written.of, entry["pages"]) for name in page.pictures
    }
    return photos | {f"{copy}/{sign}" for sign in entry["signs"]}


def _project(name: str) -> str | None:
    """Return the project whose own pages, its press card among them, a batch holds."""
    begins = f"workshop/{PROJECT}"
    return name.removeprefix(begins) if name.startswith(begins) else None


def base_of(copy: Copy, base: str) -> str:
    """Return a digest of what all pages of a copy depend on, given that of both copies."""
    return digest_of(base, copy.name, copy.frame)


def put_assets(site: SiteFolder, copy: Copy, renderer: Renderer) -> None:
    """Put the theme's assets into a copy."""
    for address, path in renderer.assets.items():
        site.put(f"{copy.name}/{address}", path.read_bytes())
