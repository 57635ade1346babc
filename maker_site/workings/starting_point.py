"""Where to begin with a blank, and why."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from math import ceil, floor

from maker_site.records import Blank, Press, Workshop
from maker_site.records.quantities import (
    Duration,
    DurationRange,
    Pressure,
    Temperature,
    TemperatureRange,
)
from maker_site.workings.calibration import Carried, dial_for
from maker_site.workings.common_practice import common_range
from maker_site.workings.evidence import Evidence


class Source(StrEnum):
    """Where a figure comes from, most trusted first."""

    OWN = "own"
    SHEET = "sheet"
    RELATIVE = "relative"
    COMMON = "common"


@dataclass(frozen=True, slots=True)
class StartingPoint:
    """A setting to begin with."""

    blank: str
    source: Source
    reason: str
    """One plain sentence."""
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
    blank: Blank, workshop: Workshop, groups: Sequence[Evidence], press: Press | None = None
) -> tuple[StartingPoint, ...]:
    """Return every place to begin with a blank, best first; the second is the runner-up.

    In order: the maker's own settings on this blank by the lower end of their interval, of which at least one piece
    was good; the supplier's sheet; the best on the same substrate and method, nearest thickness first; the
    common-practice range. With `press`, only evidence from its kind counts and dials are for that press.
    """
    return tuple(_candidates(blank, workshop, groups, press))


def _candidates(
    blank: Blank, workshop: Workshop, groups: Sequence[Evidence], press: Press | None
) -> Iterator[StartingPoint]:
    usable = [each for each in groups if each.good and _comparable(each, workshop, press)]
    own = [each for each in usable if each.setting.blank == blank.id]
    target = press or _usual_press(blank, workshop, groups)
    for rank, each in enumerate(own):
        yield _from_evidence(blank, each, Source.OWN, _own_reason(each, rank), press, workshop)
    if blank.sheet and (blank.sheet.temperature or blank.sheet.time):
        failed = sum(each.pressed for each in groups if each.setting.blank == blank.id and not each.good)
        yield _from_sheet(blank, target, "" if own or not failed else f" Your own {failed} pieces all failed.")
    for each in _relatives(blank, usable, workshop):
        other = workshop.blanks[each.setting.blank]
        yield _from_evidence(
            blank,
            each,
            Source.RELATIVE,
            _relative_reason(blank, other, each),
            press,
            workshop,
            relative=other.id,
        )
    if common := common_range(blank.substrate, blank.method):
        middle = _middle(common.temperature)
        yield StartingPoint(
            blank.id,
            Source.COMMON,
            f"Common practice for {blank.method} on {blank.substrate} ({common.origin}), not your own: test one.",
            middle,
            common.temperature,
            _middle_time(common.time),
            common.time,
            common.pressure,
            common.face,
            target.id if target else None,
            dial_for(target, middle) if target else None,
            None,
        )


def _comparable(each: Evidence, workshop: Workshop, press: Press | None) -> bool:
    if press is None:
        return True
    used = workshop.presses[each.setting.press]
    return used.id == press.id or (press.kind is not None and used.kind == press.kind)


def _usual_press(blank: Blank, workshop: Workshop, groups: Sequence[Evidence]) -> Press | None:
    """Return the press last used on this blank, else on its substrate and method, else the only press."""
    alike = [
        (each.setting.blank == blank.id, each.last_used, each.setting.press)
        for each in groups
        if workshop.blanks[each.setting.blank].substrate == blank.substrate and each.setting.method == blank.method
    ]
    if alike:
        return workshop.presses[max(alike)[2]]
    return next(iter(workshop.presses.values())) if len(workshop.presses) == 1 else None


def _relatives(blank: Blank, usable: Sequence[Evidence], workshop: Workshop) -> list[Evidence]:
    """Return the best setting of each other blank of this substrate and method, nearest thickness first."""
    best: dict[str, Evidence] = {}
    for each in usable:  # best first within a blank
        other = workshop.blanks[each.setting.blank]
        same = other.substrate == blank.substrate and each.setting.method == blank.method
        if same and other.id != blank.id:
            best.setdefault(other.id, each)
    return sorted(best.values(), key=lambda each: _distance(blank, workshop.blanks[each.setting.blank], each))


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
        used, dial = press.id, dial_for(press, setting.true)
        reason += f" Carried from {workshop.presses[setting.press].name} by the platen's temperature: test one."
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
    who = f"{blank.supplier}’s sheet" if blank.supplier else "The supplier’s sheet"
    reason = (
        f"{who} says so{'; the middle of its range' if ranged else ''}. A claim, not your evidence: test one.{also}"
    )
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
        dial_for(press, middle) if press and middle else None,
        None,
    )


def _own_reason(each: Evidence, rank: int) -> str:
    counted = f"{each.good} of {each.pressed} good on this blank"
    low, high = percent_down(each.interval.low), percent_up(each.interval.high)
    share = f"the true share is likely between {low} and {high} %"
    return f"Your {'best' if not rank else 'next best'} setting: {counted}; {share}."


def _relative_reason(blank: Blank, other: Blank, each: Evidence) -> str:
    near = ""
    if blank.thickness and other.thickness:
        near = ", the nearest in thickness" if blank.thickness != other.thickness else ", the same thickness"
    return (
        f"Nothing of your own on this blank yet; {other.name} is {blank.substrate} too{near}, "
        f"and there {each.good} of {each.pressed} were good. Test one."
    )


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
