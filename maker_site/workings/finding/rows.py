"""The rows that can be found: every setting of the maker's own, and where to begin with blanks that have none."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping, Sequence
from fractions import Fraction
from functools import partial
from operator import itemgetter
from typing import TYPE_CHECKING, Final

from maker_site.frozen import frozen
from maker_site.language import say
from maker_site.records.quantities import Pressure
from maker_site.records.words import DEFECTS, SUBSTRATE_SPELLINGS
from maker_site.workings.calibration import Footing
from maker_site.workings.evidence import Evidence
from maker_site.workings.finding.index import Sayings, Span, Weight
from maker_site.workings.starting_point import Source, StartingPoint, starting_points, telling

if TYPE_CHECKING:  # all kinds of records are slow to import
    from maker_site.records import Blank, Workshop

MOST_POINTS: Final = 2
"""Of a blank: where to begin, and the runner-up."""
Facts = dict[str, object]
"""A row as it goes out of the house: plain values by the names of the contract."""
Order = tuple[int, float, int, int, str]
"""A row's place among all: how well it is supported, best first, then its blank."""


@frozen
class Row:
    """A setting that can be found."""

    facts: Facts
    """blank, substrate, method, press, temperature_c, dial_c, time_s, pressure, face, pressed, good, low, high, source,
    last_used, projects."""
    like: str | None
    """The blank whose setting this is, where it is another's."""
    evidence: Evidence | None
    """The pressings behind it, of this blank or of the like one."""
    pressure: Pressure | None
    sayings: Sayings
    order: Order
    """Best supported first."""


def points_by_blank(workshop: Workshop, groups: Sequence[Evidence]) -> Mapping[str, tuple[StartingPoint, ...]]:
    """Return where to begin with each blank and the runner-up, best first."""
    mine: dict[str, list[Evidence]] = defaultdict(list)
    for each in groups:
        mine[each.setting.blank].append(each)
    told: dict[str, list[tuple[str, tuple[Evidence, ...]]]] = defaultdict(list)
    for blank, of_blank in mine.items():
        told[workshop.blanks[blank].substrate].append((blank, telling(of_blank)))

    def near(blank: Blank) -> list[Evidence]:
        """Return what counts for a blank, in the order of all: all of its own, of those alike what tells."""
        alike = told.get(blank.substrate, ())
        return [each for other, tells in alike for each in (mine[other] if other == blank.id else tells)]

    return {
        blank.id: starting_points(blank, workshop, near(blank), most=MOST_POINTS) for blank in workshop.blanks.values()
    }


def rows(
    workshop: Workshop, groups: Sequence[Evidence], points: Mapping[str, Sequence[StartingPoint]]
) -> Iterator[Row]:
    """Yield every setting ever pressed, and the first starting point of each blank without a good piece of its own.

    Best supported first: own settings by the lower end of their interval, then sheets, relatives and common practice,
    then own settings of which nothing came out good. Each is put together when it is its turn: there may be very many.
    """
    waiting: list[tuple[Order, Callable[[], Row]]] = [
        (_own_order(each), partial(_own, each, workshop)) for each in groups
    ]
    for blank in workshop.blanks.values():
        if point := _beginning(points[blank.id]):
            waiting.append((_begun_order(blank, point), partial(_begun, blank, point, workshop)))
    waiting.sort(key=itemgetter(0))  # those that are alike stay in the order they came
    return (row() for _, row in waiting)


def rows_on(
    blank: Blank, workshop: Workshop, groups: Sequence[Evidence], points: Sequence[StartingPoint]
) -> tuple[Row, ...]:
    """Return the rows of one blank, of all that was pressed on it and where to begin; see `rows`."""
    own = tuple(_own(each, workshop) for each in groups)
    point = _beginning(points)
    return (*own, _begun(blank, point, workshop)) if point else own


def _beginning(points: Sequence[StartingPoint]) -> StartingPoint | None:
    """Return where to begin with a blank, where that is a row of its own."""
    return points[0] if points and points[0].source is not Source.OWN else None


def _own_order(each: Evidence) -> Order:
    tier, low = (0, each.interval.low) if each.good else (len(Source), -1.0)
    return (tier, -low, -each.pressed, -each.last_used.toordinal(), each.setting.blank)


def _begun_order(blank: Blank, point: StartingPoint) -> Order:
    behind = point.evidence
    tier = list(Source).index(point.source)
    return (tier, -(behind.interval.low if behind else 0.0), -(behind.pressed if behind else 0), 0, blank.id)


def number(value: Fraction | None) -> int | float | None:
    """Return an exact value as a number that JSON can hold, whole where it is."""
    if value is None:
        return None
    return int(value) if value.denominator == 1 else float(value)


def evidence_facts(each: Evidence | None) -> Facts:
    """Return what came of a setting; 0 of 0 and no interval where nothing was pressed."""
    if each is None:
        return {"pressed": 0, "good": 0, "low": None, "high": None}
    return {"pressed": each.pressed, "good": each.good, "low": each.interval.low, "high": each.interval.high}


def point_facts(point: StartingPoint | None, blank: Blank) -> Facts:
    """Return a starting point as plain values; beside those of the contract, what a person is shown too."""
    if point is None:
        return {
            "blank": blank.id,
            "source": None,
            "reason": say(
                "Nothing is known for {method} on {substrate}: no pressing of your own, no supplier’s sheet, "
                "no like blank, no common practice. Ask the supplier before you press.",
                method=say(blank.method),
                substrate=say(blank.substrate),
            ),
            **dict.fromkeys(("temperature_c", "dial_c", "time_s", "pressure", "face")),
            **evidence_facts(None),
        }
    heat, time = point.temperature_range, point.time_range
    return {
        "blank": blank.id,
        "source": point.source.value,
        "reason": point.reason,
        "temperature_c": number(point.true.celsius) if point.true else None,
        "dial_c": number(point.dial.temperature.celsius) if point.dial else None,
        "time_s": number(point.time.seconds) if point.time else None,
        "pressure": point.pressure.typed if point.pressure else None,
        "face": point.face,
        **evidence_facts(point.evidence),
        "press": point.press,
        "footing": point.dial.footing.value if point.dial else None,
        "guess": point.dial is not None and point.dial.footing is not Footing.MEASURED,
        "celsius_range": [number(heat.low.celsius), number(heat.high.celsius)] if heat else None,
        "seconds_range": [number(time.low.seconds), number(time.high.seconds)] if time else None,
    }


def starts(blank: Blank, points: Sequence[StartingPoint]) -> list[Facts]:
    """Return the facts of the first starting point and the runner-up; of nothing known, where there is none."""
    limit = {"limit_c": number(blank.limit.celsius) if blank.limit else None}
    about = {"name": blank.name, "substrate": blank.substrate, "method": blank.method, **limit}
    return [{**point_facts(point, blank), **about} for point in points[:MOST_POINTS] or (None,)]


def _own(each: Evidence, workshop: Workshop) -> Row:
    setting = each.setting
    blank = workshop.blanks[setting.blank]
    facts: Facts = {
        "blank": blank.id,
        "substrate": blank.substrate,
        "method": setting.method,
        "press": setting.press,
        "temperature_c": number(setting.true.celsius),
        "dial_c": number(setting.dial.celsius),
        "time_s": number(setting.time.seconds),
        "pressure": setting.pressure.typed if setting.pressure else None,
        "face": setting.face,
        **evidence_facts(each),
        "source": Source.OWN.value,
        "last_used": each.last_used.isoformat(),
        "projects": list(each.projects),
    }
    heats = {setting.true.celsius, setting.dial.celsius, *(row.temperature.celsius for row in each.pressings)}
    times = {setting.time.seconds, *(row.time.seconds for row in each.pressings)}
    spans = [Span("heat", float(heat), float(heat)) for heat in sorted(heats)]
    spans += [Span("time", float(time), float(time)) for time in sorted(times)]
    sayings = Sayings((*_said(blank, facts, workshop), *_said_of_use(each, workshop)), tuple(spans))
    return Row(facts, None, each, setting.pressure, sayings, _own_order(each))


def _begun(blank: Blank, point: StartingPoint, workshop: Workshop) -> Row:
    behind = point.evidence
    facts: Facts = {
        "blank": blank.id,
        "substrate": blank.substrate,
        "method": blank.method,
        "press": point.press,
        **{
            name: value
            for name, value in point_facts(point, blank).items()
            if name in ("temperature_c", "dial_c", "time_s", "pressure", "face", "pressed", "good", "low", "high")
        },
        "source": point.source.value,
        "last_used": behind.last_used.isoformat() if behind else None,
        "projects": list(behind.projects) if behind else [],
    }
    spans = []
    if point.true:
        heat = point.temperature_range
        low, high = (heat.low, heat.high) if heat else (point.true, point.true)
        spans.append(Span("heat", float(low.celsius), float(high.celsius)))
    if point.dial:
        spans.append(Span("heat", float(point.dial.temperature.celsius), float(point.dial.temperature.celsius)))
    if point.time:
        low_time, high_time = (point.time_range.low, point.time_range.high) if point.time_range else (point.time,) * 2
        spans.append(Span("time", float(low_time.seconds), float(high_time.seconds)))
    sayings = Sayings(tuple(_said(blank, facts, workshop)), tuple(spans))
    return Row(facts, point.relative, behind, point.pressure, sayings, _begun_order(blank, point))


_SLIPS = ("alumnium",)
"""Known misspellings; found as any slip of the keys is, and never offered as a word."""
_OTHER_SPELLINGS: Mapping[str, tuple[str, ...]] = {
    word: tuple(other for other, meant in SUBSTRATE_SPELLINGS.items() if meant == word and other not in _SLIPS)
    for word in SUBSTRATE_SPELLINGS.values()
}


def _said(blank: Blank, facts: Facts, workshop: Workshop) -> Iterator[tuple[str, Weight]]:
    for text in (blank.id, blank.name, blank.code, blank.substrate, *_OTHER_SPELLINGS.get(blank.substrate, ())):
        if text:
            yield text, Weight.THING
    press = workshop.presses.get(str(facts["press"]))
    manner = [blank.supplier, facts["method"], facts["pressure"], facts["face"]]
    manner += [press.id, press.name, press.kind] if press else []
    for said in manner:
        if said:
            yield str(said), Weight.MANNER


def _said_of_use(each: Evidence, workshop: Workshop) -> Iterator[tuple[str, Weight]]:
    for project_id in each.projects:
        yield project_id, Weight.PROJECT
        if project := workshop.projects.get(project_id):
            yield project.title, Weight.PROJECT
            for occasion in project.occasions:
                yield occasion, Weight.PROJECT
    for defect, _ in each.defects:
        for name in (defect, *DEFECTS.get(defect, ())):
            yield name, Weight.DEFECT
