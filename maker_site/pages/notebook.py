"""All that the pages are made from: the records, the workings, the planned pictures and the day."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, fields, replace
from datetime import date
from fractions import Fraction
from functools import cached_property
from typing import Any, Final, TypeVar

from maker_site.language import Language, language_of
from maker_site.media import PictureSet
from maker_site.media.artwork import ArtworkFile
from maker_site.pages.lists import Before, Lists, nothing_shown
from maker_site.pages.noting import Noted, NotedOutlines, NotedRows, NotedSupplies, note, unnoted
from maker_site.pages.wording import Wording
from maker_site.pages.worked import Worked
from maker_site.records import Blank, Pressing, Problem, Project, Workshop
from maker_site.records.quantities import Amount
from maker_site.workings.artwork_review import size_on_blank
from maker_site.workings.artwork_size import ArtworkSize, Motif
from maker_site.workings.evidence import Evidence, evidence
from maker_site.workings.money import (
    CostSheet,
    Figures,
    Makeable,
    Price,
    Stock,
    Yield,
    assumed_yield,
    cost_sheet,
    makeable_of,
    price_of,
    stock_of,
)
from maker_site.workings.remake import Remake, remake
from maker_site.workings.starting_point import Source, StartingPoint, starting_points, telling

V = TypeVar("V")
POINTS: Final = "points"
"""How the places to begin with a blank are noted: by themselves, not by all that they come from."""
WRITTEN: Final = "is written up"
"""How it is noted whether a project has a write-up."""
WRITE_UP: Final = "write-up"
"""How a project's write-up is noted."""
MATERIAL: Final = "shown material"
"""How the material that the shop is drawn with is noted."""

_FEW: Final = 1000
"""Sums that are enough for the pages that are built together."""
_VERY_FEW: Final = 100
"""Of what lists show, where it need not be worked out again."""


@dataclass(frozen=True)
class Notebook:
    """The workshop with its workings, each worked out once, when first asked for."""

    workshop: Workshop
    pictures: Mapping[str, PictureSet]
    """Planned pictures by path from the content folder."""
    said: tuple[Problem, ...]
    """The cautions, for those who take no notes."""
    day: date
    """Today, for those who take no notes."""
    coverage: Mapping[str, Fraction] = field(default_factory=dict)
    """Mean ink coverage of artwork, 0 to 1, by path from the content folder, where it was measured."""
    artwork: Mapping[str, ArtworkFile] = field(default_factory=dict)
    """Design files by path from the content folder, as far as they were read."""
    shown_before: Before = nothing_shown
    """Gives what lists showed in an earlier make."""

    def with_cautions(self, cautions: tuple[Problem, ...]) -> Notebook:
        """Return the same notebook with what reading found, keeping all that is worked out already."""
        made = replace(self, said=cautions)
        made.__dict__.update({name: value for name, value in self.__dict__.items() if name not in _GIVEN})
        return made

    @property
    def cautions(self) -> tuple[Problem, ...]:
        """What reading found that does not keep the site from being made."""
        note("cautions")
        return self.said

    @property
    def today(self) -> date:
        """The maker's own calendar day."""
        note("today")
        return self.day

    @property
    def language(self) -> Language:
        """What the site speaks; everything with words is built while it is spoken."""
        return language_of(self.workshop.shop.locale)

    @cached_property
    def wording(self) -> Wording:
        """How the shop writes its figures."""
        return Wording.of(self.workshop.shop)

    @cached_property
    def evidence_by_blank(self) -> Worked[tuple[Evidence, ...]]:
        """All settings ever pressed, by blank, best supported first: no blank's have to do with another's."""
        return Worked(self._blank_ids, self._evidence_on)

    def _evidence_on(self, blank: str) -> tuple[Evidence, ...]:
        workshop = self.workshop
        return evidence(self.pressings_by_blank.get(blank, ()), workshop.blanks, workshop.presses)

    @cached_property
    def blanks_on(self) -> Noted[tuple[str, ...]]:
        """The ids of the blanks of each substrate, sorted."""
        with unnoted():
            blanks = sorted(self.workshop.blanks.values(), key=lambda blank: blank.id)
            found = grouped(blanks, lambda blank: blank.substrate)
        return Noted("blanks on", {substrate: tuple(each.id for each in here) for substrate, here in found.items()})

    @cached_property
    def telling_by_blank(self) -> Worked[tuple[Evidence, ...]]:
        """What of the evidence on a blank counts for other blanks."""
        return Worked(self._blank_ids, lambda blank: telling(self.evidence_by_blank[blank]))

    def evidence_near(self, blank: Blank) -> Sequence[Evidence]:
        """Return the evidence on a blank, and what counts of that on others of its substrate."""
        near = (
            self.evidence_by_blank[name] if name == blank.id else self.telling_by_blank[name]
            for name in self.blanks_on[blank.substrate]
        )
        return tuple(each for groups in near for each in groups)

    def _blank_ids(self) -> Iterable[str]:
        return self.workshop.blanks

    def _project_ids(self) -> Iterable[str]:
        return self.workshop.projects

    @cached_property
    def points(self) -> Worked[tuple[StartingPoint, ...]]:
        """Where to begin with each blank, best first."""
        return Worked(self._blank_ids, self._points, apart=POINTS)

    def _points(self, blank: str) -> tuple[StartingPoint, ...]:
        record = self.workshop.blanks[blank]
        return starting_points(record, self.workshop, self.evidence_near(record))

    @cached_property
    def pressings_by_project(self) -> Noted[Sequence[Pressing]]:
        """Pressings of each project, oldest first."""
        with unnoted():
            rows = [row for row in self.workshop.pressings if row.project]
        return Noted("rows of project", grouped(rows, lambda row: row.project or ""))

    @cached_property
    def pressings_by_blank(self) -> Noted[Sequence[Pressing]]:
        """Pressings on each blank, oldest first."""
        with unnoted():
            return Noted("rows of blank", grouped(self.workshop.pressings, lambda row: row.blank))

    @cached_property
    def pressings_by_press(self) -> Noted[Sequence[Pressing]]:
        """Pressings in each press, oldest first."""
        with unnoted():
            return Noted("rows of press", grouped(self.workshop.pressings, lambda row: row.press))

    @cached_property
    def remakes(self) -> Worked[Remake]:
        """How to press each project again."""
        return Worked(self._project_ids, self._remake)

    def _remake(self, name: str) -> Remake:
        project = self.workshop.projects[name]
        rows = self.pressings_by_project.get(name, ())
        return remake(project, self.workshop, self.points[project.blank], rows)

    @property
    def newest_first(self) -> tuple[Project, ...]:
        """Projects by the day they were made, else last pressed; those without a day last."""
        note("project")
        with unnoted():
            found, needs_the_log = self._newest_first
        if needs_the_log:
            note("rows")
        return found

    @cached_property
    def _newest_first(self) -> tuple[tuple[Project, ...], bool]:
        def day(project: Project) -> date:
            rows = self.pressings_by_project.get(project.id, ())
            return project.made or (rows[-1].date if rows else date.min)

        ordered = sorted(self.workshop.projects.values(), key=lambda each: each.title.casefold())
        return tuple(sorted(ordered, key=day, reverse=True)), not all(project.made for project in ordered)

    @property
    def shown_material(self) -> str:
        """The material that the shop is drawn with: of its newest project that is shared; empty where none is."""
        note(MATERIAL)
        with unnoted():
            return self._shown_material

    @cached_property
    def _shown_material(self) -> str:
        shared = (each for each in self.newest_first if each.share.tutorial or each.share.menu)
        first = next(shared, None)
        return self.workshop.blanks[first.blank].substrate if first else ""

    @cached_property
    def names_by_blank(self) -> Noted[tuple[str, ...]]:
        """The ids of the projects on each blank, newest first."""
        with unnoted():
            found = grouped(self.newest_first, lambda project: project.blank)
        return Noted("projects on", {blank: tuple(each.id for each in here) for blank, here in found.items()})

    def projects_on(self, blank: str, at_most: int | None = None) -> tuple[Project, ...]:
        """Return the projects on a blank, newest first."""
        return tuple(self.workshop.projects[name] for name in self.names_by_blank.get(blank, ())[:at_most])

    @cached_property
    def is_written_up(self) -> Worked[bool]:
        """Whether a project has a write-up, whatever it says."""
        return Worked(self._project_ids, lambda name: bool(self.workshop.whole_project(name).tutorial), apart=WRITTEN)

    @cached_property
    def write_up(self) -> Worked[str | None]:
        """The write-up of each project, for those who show nothing else of its asides."""
        return Worked(self._project_ids, lambda name: self.workshop.whole_project(name).tutorial, apart=WRITE_UP)

    @cached_property
    def stock(self) -> Worked[Stock]:
        """What is left of each blank."""
        return Worked(self._blank_ids, self._stock)

    def _stock(self, blank: str) -> Stock:
        return stock_of(self.workshop.whole_blank(blank), self.pressings_by_blank.get(blank, ()), self.workshop.shop)

    def left(self, blank: Blank) -> int | None:
        """Return bought less pressed, or None where no delivery is written down."""
        return self.stock[blank.id].left

    def is_low(self, blank: Blank) -> bool:
        """Tell whether a blank is running low."""
        return self.stock[blank.id].low

    @cached_property
    def figures(self) -> Figures:
        """How the shop writes its money."""
        return Figures(self.workshop.shop.currency, self.workshop.shop.locale)

    def money(self, amount: Amount | None) -> str | None:
        """Return a typed amount as the shop writes money."""
        return self.figures.typed(amount.value) if amount else None

    def yield_of(self, project: Project) -> Yield:
        """Return the share of good pieces to reckon with: of the project's setting, else of its blank, else assumed."""
        remake = self.remakes[project.id]
        found = remake.setting.evidence if remake.setting and remake.setting.source is Source.OWN else None
        if found:
            return Yield(
                Fraction(found.good, found.pressed), self.wording.good_of(found.good, found.pressed), assumed=False
            )
        return assumed_yield(self.workshop.shop)

    def artwork_size(self, project: Project, index: int) -> ArtworkSize | None:
        """Return how a project's artwork of that number lies on its blank; None where either has no known size."""
        found = self.artwork.get(f"projects/{project.id}/{project.artwork[index].file}")
        if found is None:
            return None
        return size_on_blank(self.workshop, project, index, motif_of(found))

    def coverage_of(self, project: Project) -> Fraction | None:
        """Return the mean coverage of a project's artwork; None where any of it was not measured."""
        found = [self.coverage.get(f"projects/{project.id}/{artwork.file}") for artwork in project.artwork]
        known = [each for each in found if each is not None]
        return sum(known, Fraction(0)) / len(known) if known and len(known) == len(found) else None

    @cached_property
    def cost_sheets(self) -> Worked[CostSheet]:
        """What one sold item of each project costs, as far as known."""
        return Worked(self._project_ids, self._cost_sheet)

    def _cost_sheet(self, name: str) -> CostSheet:
        project = self.workshop.projects[name]
        rows = self.rows_to_cost(project)
        return cost_sheet(self.workshop, project, self.yield_of(project), self.coverage_of(project), rows)

    def rows_to_cost(self, project: Project) -> Sequence[Pressing]:
        """Return the pressings that press, time and stack are counted by: the project's, else its setting's."""
        if rows := self.pressings_by_project.get(project.id, ()):
            return rows
        setting = self.remakes[project.id].setting
        own = setting is not None and setting.source is Source.OWN
        return setting.evidence.pressings if setting and setting.evidence and own else ()

    @cached_property
    def prices(self) -> Worked[Price]:
        """What to ask for each project."""
        return Worked(self._project_ids, self._price)

    def _price(self, name: str) -> Price:
        return price_of(self.workshop.projects[name], self.cost_sheets[name], self.workshop.shop)

    @cached_property
    def lists(self) -> Lists:
        """What lists show."""
        return Lists(self, self.shown_before)

    def shown(self, kind: str, work: Callable[[Notebook, str], V], name: str) -> V:
        """Return what lists of a kind show of one thing, which `work` works out once.

        It is kept from make to make, so it is to hold plain values and what pages show, and no records.
        """
        return self.lists.shown(kind, work, name)

    def makeable(self, project: Project) -> Makeable | None:
        """Return how many of a project could be made of the blanks on the shelf; None where not one."""
        return makeable_of(project, self.stock[project.blank], self.yield_of(project))

    def hold_few(self, *, lists_are_kept: bool) -> None:
        """Hold the sums of few projects only: for who builds one page after the other, once, and has many projects."""
        self.lists.hold(_VERY_FEW if lists_are_kept else _FEW)
        for sums in (self.remakes, self.cost_sheets, self.prices):
            sums.hold(_FEW)

    def hold_less_of_many(self) -> None:
        """Hold few sums where there are many projects: for who makes again and again, with lists that are kept."""
        if len(self.workshop.projects) > _FEW:
            self.hold_few(lists_are_kept=True)

    @cached_property
    def apart(self) -> Mapping[str, Worked[Any]]:
        """The sums that are noted by themselves, by their kind."""
        return {POINTS: self.points, WRITTEN: self.is_written_up, WRITE_UP: self.write_up}

    def price_words(self, project: Project) -> str | None:
        """Return the price that a customer sees; one worked out from an incomplete cost is not shown to anybody."""
        price = self.prices[project.id]
        if price.shown is None or (price.source != "typed" and not self.cost_sheets[project.id].complete):
            return None
        return self.figures.typed(price.shown) if price.source == "typed" else self.figures.money(price.shown)


def noted(workshop: Workshop) -> Workshop:
    """Return the same workshop, noting what is looked at."""
    return replace(
        workshop,
        blanks=NotedOutlines("blank", workshop.blanks),
        presses=Noted("press", workshop.presses),
        supplies=NotedSupplies(workshop.supplies),
        projects=NotedOutlines("project", workshop.projects),
        articles=Noted("article", workshop.articles),
        pressings=NotedRows(workshop.pressings),
    )


_GIVEN = frozenset(each.name for each in fields(Notebook))


def motif_of(artwork: ArtworkFile) -> Motif:
    """Return what counts of a design file for its size on a blank."""
    width, height = artwork.sides
    return Motif(width, height, has_pixels=not artwork.drawn)


def grouped(rows: Iterable[V], key: Callable[[V], str]) -> Mapping[str, Sequence[V]]:
    """Return rows by key, in the order they came."""
    found: dict[str, list[V]] = defaultdict(list)
    for row in rows:
        found[key(row)].append(row)
    return dict(found)
