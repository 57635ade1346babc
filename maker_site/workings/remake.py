"""Making it again: the one setting, stack and steps for a project's press card."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from typing import TypeVar

from maker_site.frozen import frozen
from maker_site.language import say
from maker_site.records import Blank, Press, Pressing, Project, Workshop
from maker_site.records.quantities import Duration, Temperature
from maker_site.records.words import FACES
from maker_site.workings.cautions import Caution, cautions
from maker_site.workings.evidence import Evidence, evidence
from maker_site.workings.stack import Limit, Stack, holds_ptfe, stack_of, weakest
from maker_site.workings.starting_point import Source, StartingPoint, starting_points

T = TypeVar("T")
_FOR_CHILDREN = re.compile(r"\b(?:child|children|baby|babies|christening|toy|nursery|school)", re.IGNORECASE)
"""Words of an occasion that make a piece a child's. A guess: the caution says what to look at, and forbids nothing."""


@frozen
class Remake:
    """All that a card says about pressing a project again."""

    project: Project
    blank: Blank
    method: str
    press: Press | None
    setting: StartingPoint | None
    """None where nothing whatever is known."""
    runner_up: StartingPoint | None
    from_this_project: bool
    """The setting was used on this very project and gave a good piece."""
    mirror: bool | None
    """The artwork is reversed before printing or cutting; None where the face is not known."""
    pre_press: Duration | None
    peel: str | None
    cool: str | None
    at_once: int | None
    stack: Stack
    limit: Limit | None
    over_limit: bool
    cautions: tuple[Caution, ...]
    last: Pressing | None
    """The project's latest pressing."""


def remake(project: Project, workshop: Workshop, points: Sequence[StartingPoint], own: Sequence[Pressing]) -> Remake:
    """Return how to press a project again.

    The best supported setting that gave this project a good piece comes first; without one, the blank's starting
    point. `points` are the blank's, best first, for its own method; those of a project with another method are
    worked out anew. `own` are the project's pressings, oldest first.
    """
    blank = workshop.blanks[project.blank]
    method = workshop.method_of(project)
    if method != blank.method:
        points = starting_points(blank, workshop, _evidence_like(blank, method, workshop), method=method)

    def is_proven(point: StartingPoint) -> bool:
        return point.source is Source.OWN and point.evidence is not None and _served(point.evidence, project.id)

    ordered = sorted(points, key=is_proven, reverse=True)  # proven ones first, each kind in the order that it had
    setting = ordered[0] if ordered else None
    rows = _rows_behind(setting, own)
    sheet = blank.sheet if method == blank.method else None
    face = setting.face if setting else None
    pre_press = _latest(rows, lambda row: row.pre_press) or (sheet.pre_press if sheet else None)
    cool = _latest(rows, lambda row: row.cool) or (sheet.cool if sheet else None)
    names = project.stack or _latest(rows, lambda row: row.stack or None) or ()
    stack = stack_of(names, face, blank, workshop.supplies, method)
    limit = weakest(stack, blank)
    over = bool(limit and setting and setting.true and setting.true > limit.temperature)
    return Remake(
        project,
        blank,
        method,
        workshop.presses[setting.press] if setting and setting.press else None,
        setting,
        ordered[1] if len(ordered) > 1 else None,
        setting is not None and is_proven(setting),
        mirrored(face, method),
        pre_press,
        _latest(rows, lambda row: row.peel) or (sheet.peel if sheet else None),
        cool,
        project.at_once or _latest(rows, lambda row: row.at_once),
        stack,
        limit,
        over,
        cautions(
            blank.substrate,
            ptfe=holds_ptfe(stack),
            pre_press=pre_press is not None,
            water=cool == "water",
            child=any(_FOR_CHILDREN.search(occasion) for occasion in project.occasions),
            others_artwork=any(
                artwork.licence and not artwork.licence.lower().startswith("own") for artwork in project.artwork
            ),
            over_limit=over_limit_words(setting.true, limit) if over and limit and setting and setting.true else None,
        ),
        own[-1] if own else None,
    )


def mirrored(face: str | None, method: str) -> bool | None:
    """Tell whether artwork is reversed: whenever the printed or cut side goes against the blank.

    Sublimation always lays the print against the blank, whichever of the two is on top. Vinyl and film lie on the
    blank: reversed where their printed side looks down, as it is where it looks up; cut vinyl is reversed unless the
    face says otherwise, and of a film without a face nothing is known, since bought ones come ready.
    """
    if method == "sublimation":
        return True
    if face not in FACES:  # none written, or one that is used both ways
        return None if method == "film transfer" else True
    return face != "print up"


def over_limit_words(true: Temperature, limit: Limit) -> str:
    """Return the sentence for a setting above what the stack bears."""
    at = f"{round(true.celsius)} °C"
    bears = f"{round(limit.temperature.celsius)} °C, {round(limit.temperature.fahrenheit)} °F"
    if round(true.celsius) <= round(limit.temperature.celsius):
        return say(
            "A little over {temperature} at the platen is above what {what} bears ({limit}). "
            "Set less, or change the stack.",
            temperature=at,
            what=limit.what,
            limit=bears,
        )
    return say(
        "{temperature} at the platen is above what {what} bears ({limit}). Set less, or change the stack.",
        temperature=at,
        what=limit.what,
        limit=bears,
    )


def _evidence_like(blank: Blank, method: str, workshop: Workshop) -> tuple[Evidence, ...]:
    blanks = workshop.blanks
    rows = (
        row
        for row in workshop.pressings
        if blanks[row.blank].substrate == blank.substrate and (row.method or blanks[row.blank].method) == method
    )
    return evidence(rows, blanks, workshop.presses)


def _served(each: Evidence, project: str) -> bool:
    return any(row.project == project and row.good for row in each.pressings)


def _rows_behind(setting: StartingPoint | None, own: Sequence[Pressing]) -> Sequence[Pressing]:
    """Return the pressings that the card's smaller facts come from: the setting's, else the project's own."""
    if setting and setting.evidence:
        return [row for row in setting.evidence.pressings if row.good] or setting.evidence.pressings
    return own


def _latest(rows: Sequence[Pressing], value: Callable[[Pressing], T | None]) -> T | None:
    return next((found for row in reversed(rows) if (found := value(row)) is not None), None)
