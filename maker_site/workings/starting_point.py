"""Where to begin with a blank, and why."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from enum import StrEnum
from fractions import Fraction
from heapq import nsmallest
from itertools import islice
from math import ceil, floor
from typing import TYPE_CHECKING, Final

from maker_site.frozen import frozen
from maker_site.language import say, say_n
from maker_site.records.quantities import (
    Duration,
    DurationRange,
    Pressure,
    Temperature,
    TemperatureRange,
)
from maker_site.workings.calibration import Carried, dial_for, weaker
from maker_site.workings.common_practice import common_range
from maker_site.workings.evidence import Evidence, comparable

if TYPE_CHECKING:  # all kinds of records are slow to import
    from maker_site.records import Blank, Press, Workshop

MOST_RELATIVES: Final = 12
"""Blanks whose settings are named for another one: the nearest, since a large shop has hundreds of one material."""


class Source(StrEnum):
    """Where a figure comes from, most trusted first."""

    OWN = "own"
    SHEET = "sheet"
    RELATIVE = "relative"
    COMMON = "common"


@frozen
class StartingPoint:
    """A setting to begin with."""

    blank: str
    source: Source
    reason: str
    """One plain sentence or a few, said."""
    true: Temperature | None
    """At the platen; the middle where the source gives a range."""
    temperature_range: TemperatureRange | None
    """What the source says, where it gives a range."""
    time: Duration | None
    time_range: DurationRange | None
    pressure: Pressure | None
    face: str | None
    press: str | None
    """The press that `dial` is for."""
    dial: Carried | None
    evidence: Evidence | None
    """The maker's own pressings behind it."""
    relative: str | None = None
    """The blank whose setting this is, where it is another's."""


def starting_points(
    blank: Blank,
    workshop: Workshop,
    groups: Sequence[Evidence],
    press: Press | None = None,
    method: str | None = None,
    most: int | None = None,
) -> tuple[StartingPoint, ...]:
    """Return every place to begin with a blank, best first; the second is the runner-up. `most` ends the list early.

    In order: the maker's own settings on this blank by the lower end of their interval, of which at least one piece
    was good; the supplier's sheet; the best on the same substrate and method, nearest thickness first; the
    common-practice range. With `press`, evidence from another kind does not count and dials are for that press.
    `method` is the blank's own unless given; the sheet speaks of the blank's own only.
    """
    return tuple(islice(_candidates(blank, workshop, groups, press, method or blank.method), most))


def _candidates(
    blank: Blank, workshop: Workshop, groups: Sequence[Evidence], press: Press | None, method: str
) -> Iterator[StartingPoint]:
    alike = [each for each in groups if each.setting.method == method and _comparable(each, workshop, press)]
    mine = [each for each in alike if each.setting.blank == blank.id]
    own = [each for each in mine if each.good]
    target = press or _usual_press(blank, workshop, alike)
    for rank, each in enumerate(own):
        yield _from_evidence(blank, each, Source.OWN, _own_reason(each, rank), press, workshop)
    if method == blank.method and blank.sheet and (blank.sheet.temperature or blank.sheet.time):
        failed = 0 if own else sum(each.pressed for each in mine)
        yield _from_sheet(blank, target, _failed_words(failed, press))
    for rank, each in enumerate(_relatives(blank, alike, workshop)):
        other = workshop.blanks[each.setting.blank]
        reason = _so_far(mine, press, _relative_reason(blank, other, each, nearest=not rank))
        yield _from_evidence(blank, each, Source.RELATIVE, reason, press, workshop, relative=other.id)
    if common := common_range(blank.substrate, method):
        middle = _middle(common.temperature)
        dial = dial_for(target, middle) if target else None
        yield StartingPoint(
            blank.id,
            Source.COMMON,
            _sentences(
                say(
                    "Common practice for {method} on {substrate} ({origin}), not your own: test one.",
                    method=say(method),
                    substrate=say(blank.substrate),
                    origin=say(common.origin),
                ),
                _out_of_reach(target, dial),
            ),
            middle,
            common.temperature,
            _middle_time(common.time),
            common.time,
            common.pressure,
            common.face,
            target.id if target else None,
            dial,
            None,
        )


def telling(groups: Sequence[Evidence]) -> tuple[Evidence, ...]:
    """Return those of one blank's settings that count for another blank in whatever press: by method the best good
    one and the one used last. `groups` are best first, and stay in their order.
    """
    best: dict[str, Evidence] = {}
    last: dict[str, Evidence] = {}
    for each in groups:
        method = each.setting.method
        if each.good:
            best.setdefault(method, each)
        if method not in last or _lately(last[method]) < _lately(each):
            last[method] = each
    kept = {id(each) for each in (*best.values(), *last.values())}
    return tuple(each for each in groups if id(each) in kept)


def _lately(each: Evidence) -> tuple[date, str]:
    return each.last_used, each.setting.press


def _comparable(each: Evidence, workshop: Workshop, press: Press | None) -> bool:
    return press is None or comparable(workshop.presses[each.setting.press], press)


def _usual_press(blank: Blank, workshop: Workshop, alike: Sequence[Evidence]) -> Press | None:
    """Return the press last used on this blank, else on its substrate, else the only press; of one method."""
    used = [
        (each.setting.blank == blank.id, each.last_used, each.setting.press)
        for each in alike
        if workshop.blanks[each.setting.blank].substrate == blank.substrate
    ]
    if used:
        return workshop.presses[max(used)[2]]
    return next(iter(workshop.presses.values())) if len(workshop.presses) == 1 else None


def _relatives(blank: Blank, alike: Sequence[Evidence], workshop: Workshop) -> list[Evidence]:
    """Return the best setting of each other blank of this substrate, nearest thickness first: of the nearest few."""
    best: dict[str, Evidence] = {}
    for each in alike:  # best first within a blank
        other = workshop.blanks[each.setting.blank]
        if each.good and other.substrate == blank.substrate and other.id != blank.id:
            best.setdefault(other.id, each)
    return nsmallest(
        MOST_RELATIVES, best.values(), key=lambda each: _distance(blank, workshop.blanks[each.setting.blank], each)
    )


def _distance(blank: Blank, other: Blank, each: Evidence) -> tuple[bool, Fraction, bool, float, str]:
    known = blank.thickness is not None and other.thickness is not None
    apart = abs(blank.thickness.mm - other.thickness.mm) if blank.thickness and other.thickness else Fraction(0)
    other_supplier = blank.supplier is None or blank.supplier != other.supplier
    return (not known, apart, other_supplier, -each.interval.low, other.id)


def _from_evidence(
    blank: Blank,
    each: Evidence,
    source: Source,
    reason: str,
    press: Press | None,
    workshop: Workshop,
    relative: str | None = None,
) -> StartingPoint:
    setting = each.setting
    if press is None or press.id == setting.press:
        used, dial = setting.press, Carried(setting.dial, setting.footing)
    else:
        carried = dial_for(press, setting.true)
        used, dial = press.id, Carried(carried.temperature, weaker(setting.footing, carried.footing))
        origin = workshop.presses[setting.press]
        unsaid = press.kind is None or origin.kind is None
        reason = _sentences(
            reason,
            say("Carried from {press} by the platen’s temperature: test one.", press=origin.name),
            say("Both are taken to be of one kind, as their records do not say.") if unsaid else "",
            _out_of_reach(press, dial),
        )
    return StartingPoint(
        blank.id,
        source,
        reason,
        setting.true,
        None,
        setting.time,
        None,
        setting.pressure,
        setting.face,
        used,
        dial,
        each,
        relative,
    )


def _from_sheet(blank: Blank, press: Press | None, also: str) -> StartingPoint:
    sheet = blank.sheet
    assert sheet is not None
    middle = _middle(sheet.temperature) if sheet.temperature else None
    ranged = (sheet.temperature and sheet.temperature.low != sheet.temperature.high) or (
        sheet.time and sheet.time.low != sheet.time.high
    )
    dial = dial_for(press, middle) if press and middle else None
    reason = _sentences(_sheet_reason(blank.supplier, ranged=bool(ranged)), also, _out_of_reach(press, dial))
    return StartingPoint(
        blank.id,
        Source.SHEET,
        reason,
        middle,
        sheet.temperature,
        _middle_time(sheet.time) if sheet.time else None,
        sheet.time,
        sheet.pressure,
        sheet.face,
        press.id if press else None,
        dial,
        None,
    )


def _own_reason(each: Evidence, rank: int) -> str:
    figures = {
        "good": each.good,
        "pressed": each.pressed,
        "low": percent_down(each.interval.low),
        "high": percent_up(each.interval.high),
    }
    if rank:
        return say(
            "Your next best setting: {good} of {pressed} good on this blank; "
            "the true share is likely between {low} and {high} %.",
            **figures,
        )
    return say(
        "Your best setting: {good} of {pressed} good on this blank; "
        "the true share is likely between {low} and {high} %.",
        **figures,
    )


def _sheet_reason(supplier: str | None, *, ranged: bool) -> str:
    if supplier and ranged:
        return say(
            "{supplier}’s sheet says so; the middle of its range. A claim, not your evidence: test one.",
            supplier=supplier,
        )
    if supplier:
        return say("{supplier}’s sheet says so. A claim, not your evidence: test one.", supplier=supplier)
    if ranged:
        return say("The supplier’s sheet says so; the middle of its range. A claim, not your evidence: test one.")
    return say("The supplier’s sheet says so. A claim, not your evidence: test one.")


def _failed_words(failed: int, press: Press | None) -> str:
    if not failed:
        return ""
    if press is None:
        return say_n("Your own piece failed.", "Your own {n} pieces all failed.", failed)
    return say_n(
        "Your own piece in this kind of press failed.",
        "Your own {n} pieces in this kind of press all failed.",
        failed,
    )


def _so_far(mine: Sequence[Evidence], press: Press | None, reason: str) -> str:
    """Return a relative's reason with what stands before it: how far the maker's own pressings on the blank go."""
    if not mine:
        if press is None:
            return say("Nothing of your own on this blank yet; {reason}", reason=reason)
        return say("Nothing of your own on this blank in this kind of press yet; {reason}", reason=reason)
    if any(each.good for each in mine):
        return reason
    if press is None:
        return say("No good piece of your own on this blank yet; {reason}", reason=reason)
    return say("No good piece of your own on this blank in this kind of press yet; {reason}", reason=reason)


def _relative_reason(blank: Blank, other: Blank, each: Evidence, *, nearest: bool) -> str:
    parts = {"blank": other.name, "substrate": say(blank.substrate), "good": each.good, "pressed": each.pressed}
    known = blank.thickness and other.thickness
    if known and blank.thickness == other.thickness:
        return say(
            "{blank} is {substrate} too, the same thickness, and there {good} of {pressed} were good. Test one.",
            **parts,
        )
    if known and nearest:
        return say(
            "{blank} is {substrate} too, the nearest in thickness, and there {good} of {pressed} were good. Test one.",
            **parts,
        )
    return say("{blank} is {substrate} too, and there {good} of {pressed} were good. Test one.", **parts)


def _sentences(*each: str) -> str:
    """Return sentences one after the other; the empty ones are left out."""
    return " ".join(filter(None, each))


def _out_of_reach(press: Press | None, dial: Carried | None) -> str:
    """Return a sentence where the dial can't be set to the figure, else nothing."""
    if press is None or dial is None:
        return ""
    if press.highest and dial.temperature > press.highest:
        return say("That is above what {press} reaches ({limit}).", press=press.name, limit=press.highest.typed)
    if press.lowest and dial.temperature < press.lowest:
        return say("That is below what {press} goes down to ({limit}).", press=press.name, limit=press.lowest.typed)
    return ""


def percent_down(share: float) -> int:
    """Return a share as a whole percentage, cut, so that a lower end never looks better than it is."""
    return floor(round(share * 100, 9))


def percent_up(share: float) -> int:
    """Return a share as a whole percentage, rounded up, so that an upper end never looks worse than it is."""
    return ceil(round(share * 100, 9))


def _middle(given: TemperatureRange) -> Temperature:
    if given.low == given.high:
        return given.low
    return Temperature((given.low.celsius + given.high.celsius) / 2)


def _middle_time(given: DurationRange) -> Duration:
    if given.low == given.high:
        return given.low
    return Duration((given.low.seconds + given.high.seconds) / 2)
