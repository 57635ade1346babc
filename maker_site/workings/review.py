"""What the workings find worth a look: settings above a limit, sheets that ask for more than the blank bears."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from maker_site.language import ENGLISH, speaking
from maker_site.records import Problem, Project, Severity, Workshop
from maker_site.workings.remake import Remake, over_limit_words
from maker_site.workings.stack import weakest


def review(workshop: Workshop, remakes: Iterable[Remake]) -> Iterator[Problem]:
    """Yield cautions for `check` and for the workshop's front page, each with its record's file and line."""
    yield from review_sheets(workshop)
    for remake in remakes:
        if words := over_limit(remake):
            yield too_hot(remake.project, words)


def review_sheets(workshop: Workshop) -> Iterator[Problem]:
    """Yield a caution for each supplier's sheet that asks for more than its blank bears."""
    for blank in workshop.blanks.values():
        sheet = blank.sheet
        if blank.limit and sheet and sheet.temperature and sheet.temperature.high > blank.limit:
            yield blank.origin.problem(
                ("sheet", "temperature"),
                f"the sheet asks for {sheet.temperature.typed}, above the blank's own limit of {blank.limit.typed}",
                Severity.CAUTION,
            )


def over_limit(remake: Remake) -> str | None:
    """Return what is to be said where a project's setting is above a limit of its stack, in English as all problems."""
    if not (remake.over_limit and remake.setting and remake.setting.true):
        return None
    with speaking(ENGLISH):
        limit = weakest(remake.stack, remake.blank)
        return over_limit_words(remake.setting.true, limit) if limit else None


def too_hot(project: Project, words: str) -> Problem:
    """Return the caution of a project whose setting is above a limit."""
    return project.origin.problem((), words, Severity.CAUTION)
