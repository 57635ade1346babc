"""The pages of a copy, written: those that show what has changed are built and rendered, the others stay."""

from __future__ import annotations

import pickle
import re
from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from hashlib import blake2b
from typing import Any, Final

from maker_site.pages import addresses
from maker_site.pages.noting import noting
from maker_site.pages.page import Batch, Drawn, Gathering, Page, Said, Text
from maker_site.pages.workshop.plan import PROJECT
from maker_site.pages.workshop.views import CardPage
from maker_site.records.remembered import digest_of
from maker_site.writer.kept import Kept
from maker_site.writer.known_papers import KnownPaper
from maker_site.writer.leaves import Leaves, as_lists, as_reads, reduced
from maker_site.writer.memory import Memory
from maker_site.writer.rendering import Renderer
from maker_site.writer.site_folder import SiteFolder

_BATCH: Final = "batch"
_PICTURE_NAME: Final = re.compile(rf"{addresses.PICTURES}/([0-9a-f]+-\d+\.[a-z]+)")


@dataclass(frozen=True, slots=True)
class Copy:
    """One of the two copies, before it is built."""

    name: str
    frame: Any
    batches: tuple[Batch, ...]
    gatherings: tuple[Gathering, ...] = ()


@dataclass(frozen=True, slots=True)
class _Written:
    """One page as it stands in the site."""

    address: str
    stamp: str
    shown: str
    """A digest of its view, or of a text that is ready as it is."""
    pictures: tuple[str, ...]

    @classmethod
    def of(cls, said: Sequence[Any]) -> _Written:
        """Return it out of JSON."""
        return cls(str(said[0]), str(said[1]), str(said[2]), tuple(said[3]))


class Pages:
    """Writes the pages of both copies and gathers what else they ask for."""

    def __init__(
        self,
        site: SiteFolder,
        kept: Kept,
        leaves: Leaves,
        papers: dict[str, KnownPaper],
        told: Callable[[str, int, int], None],
        memory: Memory,
    ) -> None:
        self._memory = memory
        self._site, self._kept, self._leaves, self._papers, self._told = site, kept, leaves, papers, told
        self.count = 0
        """Pages of both copies."""
        self.rendered: list[str] = []
        """Addresses of the pages that were rendered, each with its copy."""
        self.built: list[str] = []
        """Batches that were built, each with its copy."""
        self.pictures: dict[str, set[str]] = defaultdict(set)
        """The copies that show each picture, by the picture's name."""
        self.signs: list[Drawn] = []
        """Pictures that are to be drawn."""
        self.cards: dict[str, CardPage] = {}
        """What the press cards that were built show, by project."""
        self._said: list[list[Any]] = []
        """What the pages of a copy say of themselves, by kind, in the order of the batches."""
        self.cards_as_before: list[str] = []
        """Projects whose cards were left as they are."""

    def write(self, copy: Copy, renderer: Renderer, base: str) -> None:
        """Put or keep every page of a copy, and the theme's assets. `base` stands for all that each page depends on."""
        base = digest_of(base, copy.name, blake2b(pickle.dumps(copy.frame)).hexdigest())
        self._said = []
        for done, batch in enumerate(copy.batches, 1):
            if not self._keep(copy, batch, base):
                self._build(copy, batch, renderer, base)
            self._told(f"Writing the {copy.name} copy", done, len(copy.batches))
        for gathering in copy.gatherings:
            said = [value for kind, value in self._said if kind == gathering.kind]
            batch = Batch(gathering.name, partial(gathering.build, said))
            made_of = digest_of(base, said)
            if not self._keep(copy, batch, made_of):
                self._build(copy, batch, renderer, made_of)
        for address, path in renderer.assets.items():
            self._site.put(f"{copy.name}/{address}", path.read_bytes())

    def _keep(self, copy: Copy, batch: Batch, base: str) -> bool:
        """Leave a batch as it is where nothing that it shows has changed; tell whether that was so."""
        name = f"{copy.name}/{batch.name}"
        known = self._memory.batches.get(name)
        if known is not None and known[0] == base and self._memory.is_as_before(known[1]):
            before = known[2]
        else:
            before = self._kept.get(_BATCH, name)
            if before is None or before["base"] != base:
                return False
            reads = as_reads(before["reads"])
            if self._leaves.key(reads) != before["key"]:
                return False
            self._memory.batches[name] = (base, reads, before)
        if not self._keeps_paper(batch):
            return False
        if not all(self._site.keep(f"{copy.name}/{address}") for address in before["signs"]):
            return False
        pages = [_Written.of(said) for said in before["pages"]]
        if not all(self._site.keep(f"{copy.name}/{page.address}", page.stamp) for page in pages):
            return False
        self._kept.keep(_BATCH, name)
        self._said += before["said"]
        for page in pages:
            self._note(copy, page.pictures)
        if batch.name.startswith(PROJECT):
            self.cards_as_before.append(batch.name.removeprefix(PROJECT))
        return True

    def _keeps_paper(self, batch: Batch) -> bool:
        """Tell whether the card that a batch holds, if it is one that does, need not be set on paper again."""
        if not batch.name.startswith(PROJECT):
            return True
        address = addresses.card_paper(batch.name.removeprefix(PROJECT))
        return address in self._papers and self._site.has(f"workshop/{address}")

    def _build(self, copy: Copy, batch: Batch, renderer: Renderer, base: str) -> None:
        name = f"{copy.name}/{batch.name}"
        before = self._kept.get(_BATCH, name) or {"base": "", "pages": []}
        shown = {page.address: page for page in map(_Written.of, before["pages"])} if before["base"] == base else {}
        self.built.append(name)
        with noting() as reads:
            built = list(batch.build())
        said = [[each.kind, each.value] for each in built if isinstance(each, Said)]
        self._said += said
        pages = list(self._put(copy, built, renderer, shown))
        looked_at = reduced(reads)
        after = {
            "base": base,
            "reads": as_lists(looked_at),
            "key": self._leaves.key(looked_at),
            "said": said,
            "signs": sorted({each.address for each in built if isinstance(each, Drawn)}),
            "pages": [[page.address, page.stamp, page.shown, list(page.pictures)] for page in pages],
        }
        self._kept.put(_BATCH, name, "", after)
        self._memory.batches[name] = (base, looked_at, after)

    def _put(
        self, copy: Copy, built: Sequence[Page | Text | Drawn | Said], renderer: Renderer, before: dict[str, _Written]
    ) -> Iterator[_Written]:
        for page in built:
            if isinstance(page, Drawn):
                self.signs.append(page)
                continue
            if isinstance(page, Said):
                continue
            if isinstance(page, Page) and isinstance(page.view, CardPage):
                self.cards[page.view.id] = page.view
            address = f"{copy.name}/{page.address}"
            shown = blake2b(pickle.dumps(page), digest_size=12).hexdigest()
            known = before.get(page.address)
            if known and known.shown == shown and self._site.keep(address, known.stamp):
                self._note(copy, known.pictures)
                yield known
                continue
            text = page.text if isinstance(page, Text) else renderer.html(page)
            pictures = tuple(sorted(set(_PICTURE_NAME.findall(text))))
            self._site.put(address, text.encode())
            self.rendered.append(address)
            self._note(copy, pictures)
            yield _Written(page.address, self._site.stamp(address), shown, pictures)

    def _note(self, copy: Copy, pictures: Sequence[str]) -> None:
        self.count += 1
        for name in pictures:
            self.pictures[name].add(copy.name)
