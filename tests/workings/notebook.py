"""A small workshop to look settings up in, built from records as a maker types them."""

from datetime import date, timedelta
from fractions import Fraction
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from maker_site.records import Blank, Press, Pressing, Project, Shop, Supply, Workshop

FIRST_DAY = date(2025, 1, 1)
BLANK: dict[str, Any] = {"name": "Slate coaster", "substrate": "slate", "thickness": "5 mm", "supplier": "Stone Co"}
CLAM: dict[str, Any] = {
    "name": "Clamshell",
    "kind": "flat clamshell",
    "resolution": {"temperature": "1 C", "time": "1 s"},
    "readings": [
        {"date": "2026-01-10", "set": "180 C", "measured": "174 C"},
        {"date": "2026-01-10", "set": "200 C", "measured": "193 C"},
    ],
}
ROW: dict[str, Any] = {
    "date": "2026-04-18",
    "blank": "slate",
    "press": "clam",
    "temperature": "200 C",
    "time": "5 min",
    "face": "print up",
    "pressed": "4",
    "good": "4",
}


def changed(fields: dict[str, Any], changes: dict[str, Any]) -> dict[str, Any]:
    """The fields with changes, whose names may have underscores for spaces; None takes a field out."""
    new = {**fields, **{name.replace("_", " "): value for name, value in changes.items()}}
    return {name: value for name, value in new.items() if value is not None}


def row(id_: str = "log:2", /, **changes: Any) -> Pressing:
    """A row of the log, as typed; all that was pressed is good unless told otherwise."""
    good = {"good": changes["pressed"]} if "pressed" in changes else {}
    return Pressing.model_validate({"id": id_, **changed(ROW, {**good, **changes})})


def rows(*each: dict[str, Any]) -> tuple[Pressing, ...]:
    """Rows of the log, a day apart, oldest first."""
    return tuple(
        row(f"log:{number}", **{"date": (FIRST_DAY + timedelta(number)).isoformat(), **changes})
        for number, changes in enumerate(each)
    )


def blank(id_: str = "slate", /, **changes: Any) -> Blank:
    return Blank.model_validate({"id": id_, **changed(BLANK, changes)})


def press(id_: str = "clam", /, **changes: Any) -> Press:
    return Press.model_validate({"id": id_, **changed(CLAM, changes)})


def readings(*pairs: tuple[str, str], on: str | None = "2026-01-10") -> list[dict[str, Any]]:
    """Readings of set and measured, all of one day."""
    dated = {} if on is None else {"date": on}
    return [{**dated, "set": set_at, "measured": measured} for set_at, measured in pairs]


def supply(id_: str, kind: str, /, **changes: Any) -> Supply:
    return Supply.model_validate({"id": id_, "name": id_.replace("-", " ").capitalize(), "kind": kind, **changes})


def project(id_: str = "coasters", /, **changes: Any) -> Project:
    return Project.model_validate({"id": id_, **changed({"title": "Coasters", "blank": "slate"}, changes)})


def workshop(
    *,
    blanks: tuple[Blank, ...] | None = None,
    presses: tuple[Press, ...] | None = None,
    pressings: tuple[Pressing, ...] = (),
    supplies: tuple[Supply, ...] = (),
    projects: tuple[Project, ...] = (),
) -> Workshop:
    """A workshop of one slate coaster and one measured clamshell, unless told otherwise."""
    return Workshop(
        root=Path("content"),
        shop=Shop.model_validate({"id": "shop", "name": "Example Press Shed", "currency": "GBP"}),
        blanks={each.id: each for each in blanks or (blank(),)},
        presses={each.id: each for each in presses or (press(),)},
        supplies={each.id: each for each in supplies},
        projects={each.id: each for each in projects},
        pressings=pressings,
        articles={},
        about=None,
    )


@st.composite
def calibrated(draw: st.DrawFn, name: str = "clam", kind: str = "flat clamshell") -> Press:
    """A press whose readings rise, in whole and half degrees, with a step of 1 to 5 degrees."""
    dials = draw(st.lists(st.integers(100, 220), unique=True, max_size=5).map(sorted))
    at = draw(st.integers(80, 120))
    pairs = []
    for dial in dials:
        pairs.append((f"{dial} C", f"{at / 2 if at % 2 else at // 2} C"))
        at += draw(st.integers(1, 80))
    steps = {"temperature": f"{draw(st.integers(1, 5))} C", "time": f"{draw(st.integers(1, 5))} s"}
    return press(name, kind=kind, readings=readings(*pairs), resolution=steps)


def celsius(figure: str | int) -> Fraction:
    """A figure in degrees Celsius, exactly."""
    return Fraction(figure)
