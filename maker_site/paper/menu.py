"""The menu to hand out: a single sheet or poster, or a leaflet whose panels fold into reading order."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict
from fractions import Fraction
from pathlib import Path
from typing import Any, Final

from maker_site.frozen import frozen
from maker_site.language import direction, say
from maker_site.paper.sizes import SheetSize
from maker_site.paper.typesetting import Document

_NARROWER: Final = Fraction(1)
"""mm that the panel folded inwards is narrower than a third of the sheet, so that it does not buckle."""


@frozen
class MenuLine:
    """One thing a customer can have."""

    name: str
    price: str
    line: str | None
    details: str
    """Material and size."""
    options: str | None
    picture: str | None
    """The name of its picture among the files of the document."""
    picture_text: str
    """What picture or drawing shows."""
    stand_in: str | None
    """SVG of the blank, where there is no picture."""


@frozen
class MenuPart:
    """A section."""

    title: str
    lines: tuple[MenuLine, ...]


@frozen
class MenuCard:
    """All that the menu says; nothing but what the maker shares."""

    shop: str
    line: str | None
    parts: tuple[MenuPart, ...]
    lead_time: str | None
    how_to_order: str | None
    contact: str | None
    dated: str | None
    address: str | None
    """Of the public copy."""
    code: str | None
    """SVG of the square code that holds the address."""
    notice: str | None


@frozen
class Panel:
    """A part of a folded sheet."""

    number: int
    """In reading order, the cover 1."""
    role: str
    """cover, inside, spare or back."""
    width: Fraction
    """mm."""


def leaflet(width: Fraction, folds: int, way: str = "ltr") -> tuple[tuple[Panel, ...], tuple[Panel, ...]]:
    """Return the panels of a sheet's outside and inside, each from the left, for one, two or three parallel folds.

    Words that run from right to left (`way` rtl) have all of it the other way round, the cover outermost left.

    Printed on both sides and turned on the short edge, so that what is outermost right has the innermost left behind
    it. One fold: outside back and cover. Two, the right third folded in first and the cover over it: outside the
    flap, the back, the cover. Three, folded to and fro: outside the back, two more, the cover.
    """
    if way == "rtl":
        outside, inside = leaflet(width, folds)
        return outside[::-1], inside[::-1]
    if folds == 1:
        half = width / 2
        return (Panel(4, "back", half), Panel(1, "cover", half)), (Panel(2, "inside", half), Panel(3, "inside", half))
    if folds == 2:
        flap = width / 3 - _NARROWER
        third = (width - flap) / 2
        return (
            (Panel(5, "spare", flap), Panel(6, "back", third), Panel(1, "cover", third)),
            (Panel(2, "inside", third), Panel(3, "inside", third), Panel(4, "inside", flap)),
        )
    quarter = width / 4
    return (
        (
            Panel(8, "back", quarter),
            Panel(7, "spare", quarter),
            Panel(6, "spare", quarter),
            Panel(1, "cover", quarter),
        ),
        tuple(Panel(number, "inside", quarter) for number in (2, 3, 4, 5)),
    )


def menu_document(
    card: MenuCard,
    paper: SheetSize,
    folds: int,
    title: str,
    language: tuple[str, str | None],
    files: Mapping[str, Path],
) -> Document:
    """Return the menu on a sheet (`folds` 0) or as a leaflet of 1 to 3 folds, which lies across."""
    sheet = paper.across if folds else paper
    sides: list[list[dict[str, Any]]] = []
    for side in leaflet(sheet.width, folds, direction(language[0])) if folds else ():
        x = Fraction(0)
        sides.append([])
        for panel in side:
            sides[-1].append({"number": panel.number, "role": panel.role, "x": float(x), "width": float(panel.width)})
            x += panel.width
    data = {
        "width": float(sheet.width),
        "height": float(sheet.height),
        "sides": sides,
        "menu": asdict(card),
        "said": {
            "code": say("Square code: {address}", address=card.address) if card.address else "",
            "how_to_order": say("How to order"),
            "lead_time": say("Lead time."),
            "dated": say("Prices as of {day}.", day=card.dated) if card.dated else "",
            "nothing": say("There is nothing on the menu yet."),
        },
        "found": [f"files/{name}" for name in files],
    }
    return Document("menu.typ", title, *language, data, files)
