"""All that the pages are made from: the records, the workings, the planned pictures and the day."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, fields, replace
from datetime import date
from fractions import Fraction
from functools import cached_property
from typing import TypeVar

from maker_site.media import PictureSet
from maker_site.media.artwork import ArtworkFile
from maker_site.pages.wording import Wording
from maker_site.records import Blank, Pressing, Problem, Project, Workshop
from maker_site.records.quantities import Amount
from maker_site.workings.artwork_review import size_on_blank
from maker_site.workings.artwork_size import ArtworkSize, Motif
from maker_site.workings.evidence import Evidence, evidence_of
from maker_site.workings.money import (
    CostSheet,
    Figures,
    Makeable,
    Price,
    Stock,
    Yield,
    all_stock,
    assumed_yield,
    can_make,
    cost_sheet,
    price_of,
)
from maker_site.workings.remake import Remake, remake
from maker_site.workings.starting_point import Source, StartingPoint, starting_points

V = TypeVar("V")


@dataclass(frozen=True)
class Notebook:
    """The workshop with its workings, each worked out once, when first asked for."""

    workshop: Workshop
    pictures: Mapping[str, PictureSet]
    """Planned pictures by path from the content folder."""
    cautions: tuple[Problem, ...]
    """What reading found that does not keep the site from being made."""
    today: date
    coverage: Mapping[str, Fraction] = field(default_factory=dict)
    """Mean ink coverage of artwork, 0 to 1, by path from the content folder, where it was measured."""
    artwork: Mapping[str, ArtworkFile] = field(default_factory=dict)
    """Design files by path from the content folder, as far as they were read."""

    def with_cautions(self, cautions: tuple[Problem, ...]) -> Notebook:
        """Return the same notebook with what reading found, keeping all that is worked out already."""
        made = replace(self, cautions=cautions)
        made.__dict__.update({name: value for name, value in self.__dict__.items() if name not in _GIVEN})
        return made

    @cached_property
    def wording(self) -> Wording:
        """How the shop writes its figures."""
        return Wording.of(self.workshop.shop)

    @cached_property
    def evidence(self) -> tuple[Evidence, ...]:
        """All settings ever pressed, best supported first within each blank."""
        return evidence_of(self.workshop)

    @cached_property
    def evidence_by_blank(self) -> Mapping[str, Sequence[Evidence]]:
        """The same by blank."""
        return grouped(self.evidence, lambda each: each.setting.blank)

    @cached_property
    def _evidence_by_substrate(self) -> Mapping[str, Sequence[Evidence]]:
        blanks = self.workshop.blanks
        return grouped(self.evidence, lambda each: blanks[each.setting.blank].substrate)

    def evidence_near(self, blank: Blank) -> Sequence[Evidence]:
        """Return the evidence on all blanks of a blank's substrate, its own included."""
        return self._evidence_by_substrate.get(blank.substrate, ())

    @cached_property
    def points(self) -> Mapping[str, tuple[StartingPoint, ...]]:
        """Where to begin with each blank, best first."""
        return {
            blank.id: starting_points(blank, self.workshop, self._evidence_by_substrate.get(blank.substrate, ()))
            for blank in self.workshop.blanks.values()
        }

    @cached_property
    def pressings_by_project(self) -> Mapping[str, Sequence[Pressing]]:
        """Pressings of each project, oldest first."""
        return grouped([row for row in self.workshop.pressings if row.project], lambda row: row.project or "")

    @cached_property
    def pressings_by_blank(self) -> Mapping[str, Sequence[Pressing]]:
        """Pressings on each blank, oldest first."""
        return grouped(self.workshop.pressings, lambda row: row.blank)

    @cached_property
    def pressings_by_press(self) -> Mapping[str, Sequence[Pressing]]:
        """Pressings in each press, oldest first."""
        return grouped(self.workshop.pressings, lambda row: row.press)

    @cached_property
    def remakes(self) -> Mapping[str, Remake]:
        """How to press each project again."""
        return {
            project.id: remake(
                project, self.workshop, self.points[project.blank], self.pressings_by_project.get(project.id, ())
            )
            for project in self.workshop.projects.values()
        }

    @cached_property
    def newest_first(self) -> tuple[Project, ...]:
        """Projects by the day they were made, else last pressed; those without a day last."""

        def day(project: Project) -> date:
            rows = self.pressings_by_project.get(project.id, ())
            return project.made or (rows[-1].date if rows else date.min)

        ordered = sorted(self.workshop.projects.values(), key=lambda each: each.title.casefold())
        return tuple(sorted(ordered, key=day, reverse=True))

    @cached_property
    def projects_by_blank(self) -> Mapping[str, Sequence[Project]]:
        """Projects on each blank, newest first."""
        return grouped(self.newest_first, lambda project: project.blank)

    @cached_property
    def stock(self) -> Mapping[str, Stock]:
        """What is left of each blank."""
        return all_stock(self.workshop)

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
            return Yield(Fraction(found.good, found.pressed), f"{found.good} of {found.pressed} good", assumed=False)
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
    def cost_sheets(self) -> Mapping[str, CostSheet]:
        """What one sold item of each project costs, as far as known."""
        return {
            project.id: cost_sheet(
                self.workshop,
                project,
                self.yield_of(project),
                self.coverage_of(project),
                self.pressings_by_project.get(project.id, ()),
            )
            for project in self.workshop.projects.values()
        }

    @cached_property
    def prices(self) -> Mapping[str, Price]:
        """What to ask for each project."""
        shop = self.workshop.shop
        return {
            project.id: price_of(project, self.cost_sheets[project.id], shop)
            for project in self.workshop.projects.values()
        }

    @cached_property
    def makeable(self) -> Mapping[str, Makeable]:
        """Projects whose blanks are on the shelf, and how many could be made."""
        yields = {project.id: self.yield_of(project) for project in self.workshop.projects.values()}
        return {each.project: each for each in can_make(self.workshop, self.stock, yields)}

    @cached_property
    def newest_day(self) -> date | None:
        """The day of the newest record, never after today: what a printed menu is dated by."""
        workshop = self.workshop
        days = [row.date for row in workshop.pressings[-1:]]
        days += [lot.date for blank in workshop.blanks.values() for lot in blank.bought if lot.date]
        for project in workshop.projects.values():
            days += [day for day in (project.made, project.share.published, project.share.updated) if day]
        return max((day for day in days if day <= self.today), default=None)

    def price_words(self, project: Project) -> str | None:
        """Return the price that a customer sees; one worked out from an incomplete cost is not shown to anybody."""
        price = self.prices[project.id]
        if price.shown is None or (price.source != "typed" and not self.cost_sheets[project.id].complete):
            return None
        return self.figures.typed(price.shown) if price.source == "typed" else self.figures.money(price.shown)


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
