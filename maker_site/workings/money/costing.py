"""What one sold item really costs, line by line."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal
from fractions import Fraction

from maker_site.frozen import frozen
from maker_site.language import say
from maker_site.records import Pressing, Project, Workshop
from maker_site.workings.money.bench_lines import blank_line, labour_lines, power_lines
from maker_site.workings.money.case import Case, WhatIf
from maker_site.workings.money.line import CostLine, over_yield, unknown
from maker_site.workings.money.supply_lines import project_lines, stack_lines
from maker_site.workings.money.transfer_lines import transfer_lines
from maker_site.workings.money.words import Figures, decimal_of
from maker_site.workings.money.yields import Yield


@frozen
class CostSheet:
    """The lines of one sold item and their sum."""

    project: str
    """The project's id."""
    currency: str
    """By ISO 4217."""
    pieces: int
    """Pieces in what is sold as one."""
    batch: int
    """Sold items made at one go."""
    share: Yield
    """Good over pressed."""
    lines: tuple[CostLine, ...]

    @property
    def exact(self) -> Fraction:
        """The sum of the lines that are known, unrounded: the cost, or the least that it can be."""
        return sum((line.exact for line in self.lines if line.exact is not None), Fraction(0))

    @property
    def cost(self) -> Decimal:
        """The same as a decimal of at most 28 digits."""
        return decimal_of(self.exact)

    @property
    def complete(self) -> bool:
        """Whether every line is known; where not, the cost is “at least”."""
        return all(line.known for line in self.lines)

    @property
    def missing(self) -> tuple[CostLine, ...]:
        """The lines that are not known."""
        return tuple(line for line in self.lines if not line.known)

    @property
    def labour(self) -> Fraction:
        """What of the known cost is paid by the hour."""
        return sum((line.exact for line in self.lines if line.labour and line.exact is not None), Fraction(0))


def cost_sheet(
    workshop: Workshop,
    project: Project,
    share: Yield,
    coverage: Fraction | None,
    pressings: Sequence[Pressing],
    what_if: WhatIf | None = None,
) -> CostSheet:
    """Return the cost sheet of a project.

    `pressings` are the project's own, oldest first (`by_project` finds them for all at once); `coverage` is the mean
    over its artwork, 0 to 1, None where not measured. What a failed pressing uses up is divided by the yield; what is
    spent once or on good pieces only is not. Overhead is a share of all other known lines.
    """
    shop = workshop.shop
    figures = Figures(shop.currency, shop.locale)
    blank = workshop.blanks[project.blank]
    case = Case(workshop, project, blank, pressings, coverage, what_if or WhatIf(), figures)
    lines = [
        over_yield(line, share, figures)
        for line in (
            blank_line(case),
            *transfer_lines(case),
            *stack_lines(case),
            *power_lines(case),
            *labour_lines(case),
            *project_lines(case),
        )
    ]
    lines.append(_overhead(case, lines))
    return CostSheet(project.id, shop.currency, case.pieces, case.batch, share, tuple(lines))


def by_project(pressings: Iterable[Pressing]) -> Mapping[str, tuple[Pressing, ...]]:
    """Return the pressings of each project, in the order given."""
    found: dict[str, list[Pressing]] = {}
    for pressing in pressings:
        if pressing.project:
            found.setdefault(pressing.project, []).append(pressing)
    return {project: tuple(rows) for project, rows in found.items()}


def _overhead(case: Case, lines: Sequence[CostLine]) -> CostLine:
    overhead = case.workshop.shop.overhead
    if overhead is None:
        return unknown(say("Overhead"), say("the shop says no overhead; write 0 % where there is none"))
    known = [line.exact for line in lines if line.exact is not None]
    share = case.figures.percent(overhead.of_one)
    return CostLine(
        say("Overhead"),
        sum(known, Fraction(0)) * overhead.of_one,
        say("{share} of the lines above", share=share)
        if len(known) == len(lines)
        else say("{share} of the known lines above, so at least", share=share),
        overhead=True,
    )
