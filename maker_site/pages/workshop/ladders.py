"""What to try next, and the test ladder of each blank: rows to fill in by hand, and rows to paste into the log."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence

from maker_site.language import say, say_in
from maker_site.pages import addresses
from maker_site.pages.marks import swatch
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.wording import face_words, hazards
from maker_site.pages.workshop.pieces import BAND_HEIGHT, BAND_WIDTH, blank_link, start_shown
from maker_site.pages.workshop.views import LadderPage, NextTryShown, RungRow
from maker_site.records import Blank, Pressing
from maker_site.workings.calibration import Footing
from maker_site.workings.cautions import cautions
from maker_site.workings.faults import SOURCE, Direction
from maker_site.workings.ladder import LOG_COLUMNS, Rung, as_log_rows, ladder
from maker_site.workings.next_try import next_tries
from maker_site.workings.stack import stack_of, weakest
from maker_site.workings.starting_point import StartingPoint

_MOST_TRIES = 4


def tries_source() -> str:
    """Return where suggestions come from, and what to do with them."""
    return say("From {source}. Change one thing at a time, then log it.", source=say(SOURCE))


def ladder_page(book: Notebook, blank: Blank) -> Page:
    """Return ladders/ID.html."""
    here = addresses.ladder(blank.id)
    title = say("Test ladder for {blank}", blank=blank.name)
    return Page(here, "workshop/ladder.html", title, _view(book, blank), door="blanks/index.html")


def tries_shown(point: StartingPoint | None, rows: Sequence[Pressing]) -> tuple[NextTryShown, ...]:
    """Return what to change next: from the defects of the setting in use, else of all `rows`, most noted first."""
    behind = point.evidence.pressings if point and point.evidence else rows
    found = next_tries(behind)[:_MOST_TRIES]
    return tuple(NextTryShown(each.change, each.reason, each.defect) for each in found)


def _view(book: Notebook, blank: Blank) -> LadderPage:
    points = book.points[blank.id]
    rows = book.pressings_by_blank.get(blank.id, ())
    point = points[0] if points else None
    direction = _direction(point, rows)
    rungs = ladder(point, book.workshop, book.evidence_by_blank[blank.id], direction=direction) if point else ()
    stack = stack_of(_stack_names(rows), point.face if point else None, blank, book.workshop.supplies, blank.method)
    limit = weakest(stack, blank)
    wording = book.wording
    bears = wording.one_line(wording.temperature(limit.temperature)) if limit else ""
    return LadderPage(
        blank_link(book, blank.id),
        swatch(blank.substrate, width=BAND_WIDTH, height=BAND_HEIGHT),
        start_shown(book, point) if point else None,
        book.workshop.presses[point.press].name if point and point.press else None,
        wording.pressure(point.pressure) if point else None,
        face_words(point.face) if point else None,
        tries_shown(point, rows),
        tries_source(),
        say_in("what a ladder varies", "time") if direction.of_time else say_in("what a ladder varies", "temperature"),
        tuple(_rung(book, each) for each in rungs),
        say("{what} bears {temperature}", what=limit.what, temperature=bears) if limit else None,
        _as_text(as_log_rows(rungs, point, book.workshop)) if point and rungs else "",
        hazards(cautions(blank.substrate, ptfe=True)),
    )


def _direction(point: StartingPoint | None, rows: Sequence[Pressing]) -> Direction:
    """Return what the ladder varies: as the first suggestion that moves a figure says, else time, both ways."""
    behind = point.evidence.pressings if point and point.evidence else rows
    return next((each.direction for each in next_tries(behind) if each.direction), Direction.TIME_BOTH_WAYS)


def _stack_names(rows: Sequence[Pressing]) -> tuple[str, ...]:
    return next((row.stack for row in reversed(rows) if row.stack), ())


def _rung(book: Notebook, rung: Rung) -> RungRow:
    wording = book.wording
    return RungRow(
        wording.temperature(rung.dial),
        None if rung.footing is Footing.NONE else wording.temperature(rung.true),
        wording.time(rung.time),
        rung.why,
    )


def _as_text(rows: Sequence[dict[str, str]]) -> str:
    """Return rows as lines of a press log, with only the columns that are needed or filled."""
    needed = ("date", "blank", "press", "temperature", "time", "pressed", "good", "defects", "note")
    columns = [column for column in LOG_COLUMNS if column in needed or any(row[column] for row in rows)]
    text = io.StringIO()
    writer = csv.DictWriter(text, columns, extrasaction="ignore", lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return text.getvalue()
