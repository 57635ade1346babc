"""What the workings find worth a look: settings above a limit, sheets that ask for more than the blank bears."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from maker_site.language import ENGLISH, speaking
from maker_site.records import Problem, Severity, Workshop
from maker_site.workings.remake import Remake, over_limit_words
from maker_site.workings.stack import weakest


def review(workshop: Workshop, remakes: Iterable[Remake]) -> Iterator[Problem]:
    """Yield cautions for `check` and for the workshop's front page, each with its record's file and line."""
    for blank in workshop.blanks.values():
        sheet = blank.sheet
        if blank.limit and sheet and sheet.temperature and sheet.temperature.high > blank.limit:
            yield blank.origin.problem(
                ("sheet", "temperature"),
                f"the sheet asks for {sheet.temperature.typed}, above the blank's own limit of {blank.limit.typed}",
                Severity.CAUTION,
            )
    for remake in remakes:
        if not (remake.over_limit and remake.setting and remake.setting.true):
            continue
        with speaking(ENGLISH):  # as all problems are told
            limit = weakest(remake.stack, remake.blank)
            words = over_limit_words(remake.setting.true, limit) if limit else None
        if words:
            yield remake.project.origin.problem((), words, Severity.CAUTION)
