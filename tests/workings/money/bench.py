"""A small workshop to cost things in, built from records as a maker types them."""

from pathlib import Path
from typing import Any

from maker_site.records import Blank, Press, Pressing, Project, Shop, Supply, Workshop
from maker_site.workings.money import Figures

POUNDS = Figures("GBP", "en_GB")

SHOP: dict[str, Any] = {
    "name": "Example Press Shed",
    "currency": "GBP",
    "labour": "14.00",
    "electricity": "0.28",
    "overhead": "6 %",
    "margin": "50 %",
    "fee": {"percent": "6.5 %", "fixed": "0.30"},
    "tax": {"rate": "20 %", "included": "yes"},
    "price ending": "0.50",
    "paper": "A4",
    "printer": {"margin": "5 mm", "gap": "4 mm"},
    "usual yield": "90 %",
    "low stock": "8",
}
SLATE: dict[str, Any] = {
    "name": "Slate coaster, square",
    "substrate": "slate",
    "size": "100 x 100 mm",
    "bleed": "3 mm",
    "bought": [{"lot": "A7", "count": "24", "paid": "38.40", "delivery": "6.95"}],
}
CLAM: dict[str, Any] = {"name": "Clamshell", "watts": "1400", "duty": "35 %", "warm up": "12 min"}
SUPPLIES: dict[str, dict[str, Any]] = {
    "dye-ink": {
        "name": "Dye ink",
        "kind": "ink",
        "price": "42.00",
        "contents": "400 ml",
        "laydown": "11 ml/m2",
    },
    "transfer-a4": {
        "name": "Transfer paper, A4",
        "kind": "transfer paper",
        "price": "9.00",
        "contents": "100 sheets",
        "size": "A4",
    },
    "blotting": {
        "name": "Protective paper",
        "kind": "protective paper",
        "price": "13.50",
        "contents": "250 sheets",
        "use": "2 sheets",
    },
    "cover": {"name": "Cover sheet", "kind": "cover sheet", "price": "8.00", "lasts": "200 pressings"},
    "tape": {"name": "Tape", "kind": "tape", "price": "4.00", "contents": "33 m", "use": "120 mm"},
    "gift-box": {"name": "Gift box", "kind": "packaging", "price": "22.50", "contents": "25 pieces"},
}
COASTERS: dict[str, Any] = {
    "title": "Harbour wall coasters",
    "blank": "slate",
    "pieces": "4",
    "supplies": [{"supply": "gift-box", "use": "1"}],
    "stack": ["protective paper", "transfer", "blank", "protective paper", "cover sheet"],
    "minutes": {"design": "30", "press": "12", "finish": "8"},
    "at once": "1",
    "batch": "6",
}
PRESSING: dict[str, Any] = {
    "id": "1",
    "date": "2026-04-18",
    "project": "coasters",
    "blank": "slate",
    "press": "clam",
    "temperature": "200 C",
    "time": "5 min",
    "pressed": "25",
    "good": "24",
}


def pressing(**changes: Any) -> Pressing:
    """A row of the log; a change of None leaves the field out."""
    return Pressing.model_validate(changed(PRESSING, changes))


def project(name: str = "coasters", **changes: Any) -> Project:
    return Project.model_validate({"id": name, **changed(COASTERS, changes)})


def blank(name: str = "slate", **changes: Any) -> Blank:
    return Blank.model_validate({"id": name, **changed(SLATE, changes)})


def shop(**changes: Any) -> Shop:
    return Shop.model_validate({"id": "shop", **changed(SHOP, changes)})


def workshop(
    *,
    projects: tuple[Project, ...] | None = None,
    blanks: tuple[Blank, ...] | None = None,
    pressings: tuple[Pressing, ...] | None = None,
    supplies: dict[str, dict[str, Any]] | None = None,
    press: dict[str, Any] | None = None,
    **of_shop: Any,
) -> Workshop:
    """A workshop of one blank, one press, one project and one row of the log, with changes."""
    packets = SUPPLIES if supplies is None else supplies
    return Workshop(
        root=Path("content"),
        shop=shop(**of_shop),
        blanks={each.id: each for each in blanks or (blank(),)},
        presses={"clam": Press.model_validate({"id": "clam", **changed(CLAM, press or {})})},
        supplies={name: Supply.model_validate({"id": name, **each}) for name, each in packets.items()},
        projects={each.id: each for each in projects or (project(),)},
        pressings=(pressing(),) if pressings is None else pressings,
        articles={},
        about=None,
    )


def changed(fields: dict[str, Any], changes: dict[str, Any]) -> dict[str, Any]:
    """The fields with changes, whose names may have underscores for spaces; None takes a field out."""
    new = {**fields, **{name.replace("_", " "): value for name, value in changes.items()}}
    return {name: value for name, value in new.items() if value is not None}


def without(supply: str, field: str) -> dict[str, dict[str, Any]]:
    """The supplies, one field of one of them not written."""
    return {**SUPPLIES, supply: changed(SUPPLIES[supply], {field: None})}
