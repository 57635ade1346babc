"""The pages of the copies, written: those that show what has changed are built and rendered, the others stay.

What is to be built is found out first, then built batch by batch, in whatever order and in whichever process, and what
came of each batch is noted here.
"""

from __future__ import annotations

import pickle
import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from functools import partial
from hashlib import blake2b
from typing import Any, Final, NamedTuple

from maker_site.frozen import frozen
from maker_site.pages import addresses
from maker_site.pages.noting import Read, noting
from maker_site.pages.page import Batch, Drawn, Gathering, Page, Said, Text
from maker_site.pages.workshop.plan import PROJECT
from maker_site.pages.workshop.views import CardPage
from maker_site.records.remembered import digest_of
from maker_site.writer.kept import Kept
from maker_site.writer.leaves import Leaves, as_lists, as_reads, reduced
from maker_site.writer.memory import Memory
from maker_site.writer.papers import Papers, Wanted
from maker_site.writer.rendering import Renderer
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


class Builder:
    """Builds batches and puts their pages."""

    def __init__(self, site: SiteFolder, kept: Kept, papers: Papers) -> None:
        self._site, self._kept, self._papers = site, kept, papers

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
        )

    def _put(self, job: Job, page: Page | Text, known: dict[str, Written], rendered: list[str]) -> Written:
        address = f"{job.copy}/{page.address}"
        shown = blake2b(pickle.dumps(page), digest_size=12).hexdigest()
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

    def __init__(self, site: SiteFolder, kept: Kept, leaves: Leaves, papers: Papers, memory: Memory) -> None:
        self._site, self._kept, self._leaves, self._papers, self._memory = site, kept, leaves, papers, memory
        self.count = 0
        """Pages of both copies."""
        self.rendered: list[str] = []
        """Addresses of the pages that were rendered, each with its copy."""
        self.built: list[str] = []
        """Batches that were built, each with its copy."""
        self.pictures: dict[str, set[str]] = defaultdict(set)
        """The copies that show each picture, by the picture's name."""
        self.signs: dict[str, Drawn] = {}
        """Pictures that are to be drawn, by their addresses."""
        self._said: dict[str, Sequence[Sequence[Any]]] = {}
        """What the pages of each batch say of themselves, each with its kind."""

    def to_build(self, copy: Copy, renderer: Renderer, base: str) -> Iterator[Job]:
        """Keep the batches of a copy that show what they showed; yield the others."""
        for batch in copy.batches:
            job = Job(copy.name, batch, base, renderer)
            if not self._keep(job):
                yield job

    def gathered(self, copy: Copy, renderer: Renderer, base: str) -> Iterator[Job]:
        """The same for what is made of what all pages of a copy have said, when all of them are built."""
        for gathering in copy.gatherings:
            found = (self._said.get(f"{copy.name}/{batch.name}", ()) for batch in copy.batches)
            said = [value for each in found for kind, value in each if kind == gathering.kind]
            batch = Batch(gathering.name, partial(gathering.build, said))
            job = Job(copy.name, batch, digest_of(base, said), renderer)
            if not self._keep(job):
                yield job

    def note(self, job: Job, built: Built) -> None:
        """Note what came of a batch."""
        self.built.append(job.name)
        self.rendered += built.rendered
        after = {
            "base": job.base,
            "reads": as_lists(built.reads),
            "key": self._leaves.key(built.reads),
            "said": built.said,
            "signs": sorted({each.address for each in built.signs}),
            "pages": [[page.address, page.stamp, page.shown, list(page.pictures)] for page in built.pages],
        }
        self._kept.put(_BATCH, job.name, "", after)
        self._memory.note_batch(job.name, (job.base, built.reads, after))
        self._said[job.name] = built.said
        self.signs |= {each.address: each for each in built.signs}
        self._count(job.copy, built.pages)
        for card in built.cards:
            self._papers.add(card)

    def _keep(self, job: Job) -> bool:
        """Leave a batch as it is where nothing that it shows has changed; tell whether that was so."""
        known = self._memory.batches.get(job.name)
        if known is not None and known[0] == job.base and self._memory.is_as_before(known[1]):
            before = known[2]
        else:
            before = self._kept.get(_BATCH, job.name)
            if before is None or before["base"] != job.base:
                return False
            reads = as_reads(before["reads"])
            if self._leaves.key(reads) != before["key"]:
                return False
            self._memory.note_batch(job.name, (job.base, reads, before))
        project = job.batch.name.removeprefix(PROJECT) if job.batch.name.startswith(PROJECT) else None
        if project is not None and not self._papers.keeps_card(project):
            return False
        if not all(self._site.keep(f"{job.copy}/{address}") for address in before["signs"]):
            return False
        pages = [Written.of(said) for said in before["pages"]]
        if not all(self._site.keep(f"{job.copy}/{page.address}", page.stamp) for page in pages):
            return False
        self._kept.keep(_BATCH, job.name)
        self._said[job.name] = before["said"]
        self._count(job.copy, pages)
        if project is not None:
            self._papers.keep_card(project)
        return True

    def _count(self, copy: str, pages: Iterable[Written]) -> None:
        for page in pages:
            self.count += 1
            for name in page.pictures:
                self.pictures[name].add(copy)


def base_of(copy: Copy, base: str) -> str:
    """Return a digest of what all pages of a copy depend on, given that of both copies."""
    return digest_of(base, copy.name, blake2b(pickle.dumps(copy.frame)).hexdigest())


def put_assets(site: SiteFolder, copy: Copy, renderer: Renderer) -> None:
    """Put the theme's assets into a copy."""
    for address, path in renderer.assets.items():
        site.put(f"{copy.name}/{address}", path.read_bytes())
