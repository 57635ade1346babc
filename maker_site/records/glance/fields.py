"""How each field of a record and each column of the log is read at a glance.

Inner module of the records room.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Final

from maker_site.records import meanings as m
from maker_site.records import quantities as q
from maker_site.records.glance.reading import Bare, Group, Items, Reader
from maker_site.records.glance.unsure import Unsure
from maker_site.records.outline import outline


def _as(parse: Callable[..., Any], unit: str | None = None) -> Reader:
    """Make a reader of a parser; `unit` is of what kind the figures are that it reads without a unit."""
    if unit is None:
        return lambda text, _: parse(text)
    return lambda text, bare: parse(text, getattr(bare, unit))


def amount(text: str, bare: Bare) -> q.Amount:
    """Read an amount, in the shop's currency or in none."""
    found = q.amount(text)
    if found.currency not in (None, bare.currency):
        raise Unsure
    return found


def _layers(text: str, _: Bare) -> tuple[str, ...]:
    return tuple(map(m.plain_text, m.layers(text)))


def _defects(text: str, _: Bare) -> tuple[str, ...]:
    return tuple(m.defect(part.strip()) for part in text.split(";") if part.strip())


_TEXT, _DATE, _COUNT, _FROM_ONE = _as(m.plain_text), _as(m.iso_date), _as(m.count), _as(m.count_from_one)
_SECONDS, _MINUTES = _as(q.duration), _as(lambda text: q.duration(text, "min"))
_TEMPERATURE, _PRESSURE = _as(q.temperature, "temperature"), _as(q.pressure, "pressure")
_LENGTH, _SIZE, _PLACE = (_as(parse, "length") for parse in (q.length, q.size, q.place))
ROW: Final[Mapping[str, Reader]] = {
    "date": _DATE,
    "blank": _TEXT,
    "press": _TEXT,
    "temperature": _TEMPERATURE,
    "time": _SECONDS,
    "pressed": _as(m.pressed),
    "good": _COUNT,
    "project": _TEXT,
    "lot": _TEXT,
    "method": _as(m.method),
    "pressure": _PRESSURE,
    "face": _as(m.face),
    "pre press": _SECONDS,
    "stack": _layers,
    "at once": _FROM_ONE,
    "peel": _as(m.peel),
    "cool": _as(m.cool),
    "defects": _defects,
    "note": _TEXT,
    "photo": _as(m.relative_path),
}
"""How each column of the log is read."""
NEEDED: Final = ("date", "blank", "press", "temperature", "time", "pressed", "good")
TOLD: Final = ("project", "method", "pressure", "face", "defects")
"""Columns that settings are worked out from, beside those."""
_LINK, _YES_NO, _SHARE, _METHOD = _as(m.web_address), _as(m.yes_or_no), _as(q.share), _as(m.method)
_FILE = _as(m.relative_path)
_NAME_BOX: Final = Group(
    {
        "at": _PLACE,
        "size": _SIZE,
        "font": _TEXT,
        "colour": _as(m.colour),
        "outline": _as(m.colour),
        "outline width": _LENGTH,
    },
    ("at", "size"),
)
_ARTWORK: Final = {"file": _FILE, "bleed": _LENGTH, "name box": _NAME_BOX, "licence": _TEXT, "note": _TEXT}
_MENU: Final = {
    "section": _TEXT,
    "name": _TEXT,
    "line": _TEXT,
    "price": amount,
    "options": Items(m.listed_texts),
    "photo": _FILE,
    "gift": _YES_NO,
}
_SHARED: Final = {
    "tutorial": _YES_NO,
    "setting": _YES_NO,
    "supplies": _YES_NO,
    "published": _DATE,
    "updated": _DATE,
    "menu": Group(_MENU),
}
PROJECT: Final[Mapping[str, Any]] = {
    "title": _TEXT,
    "made": _DATE,
    "blank": _TEXT,
    "method": _METHOD,
    "pieces": _FROM_ONE,
    "occasions": Items(m.listed_texts),
    "summary": _TEXT,
    "difficulty": _as(m.difficulty),
    "time needed": _TEXT,
    "artwork": Group(_ARTWORK, ("file",), many=True),
    "photos": Group({"file": _FILE, "text": _TEXT, "caption": _TEXT, "share": _YES_NO}, ("file",), many=True),
    "supplies": Group({"supply": _TEXT, "use": _as(q.measure)}, ("supply",), many=True),
    "stack": Items(m.listed_layers),
    "minutes": Group({"design": _MINUTES, "press": _MINUTES, "finish": _MINUTES}),
    "at once": _FROM_ONE,
    "batch": _FROM_ONE,
    "video": _LINK,
    "video still": _FILE,
    "tools": Items(m.listed_texts),
    "for": _TEXT,
    "order": Group({"for": _TEXT, "due": _DATE, "paid": amount, "names": Items(m.listed_texts), "note": _TEXT}),
    "note": _TEXT,
    "care": _TEXT,
    "share": Group(_SHARED),
}
"""How fields of a project are read; `was` is judged by all others."""
_LOT: Final = {
    "date": _DATE,
    "lot": _TEXT,
    "count": _FROM_ONE,
    "paid": amount,
    "delivery": amount,
    "import charges": amount,
    "note": _TEXT,
}
_SHEET: Final = {
    "temperature": _as(q.temperature_range, "temperature"),
    "time": _as(q.duration_range),
    "pressure": _PRESSURE,
    "face": _as(m.face),
    "pre press": _SECONDS,
    "peel": _as(m.peel),
    "cool": _as(m.cool),
    "dated": _DATE,
    "note": _TEXT,
}
_HOLE: Final = {"at": _PLACE, "diameter": _LENGTH}
BLANK: Final[Mapping[str, Any]] = {
    "name": _TEXT,
    "substrate": _as(m.substrate),
    "method": _METHOD,
    "size": _SIZE,
    "print area": _SIZE,
    "corner radius": _LENGTH,
    "outline": _as(outline),
    "holes": Group(_HOLE, ("at", "diameter"), many=True),
    "thickness": _LENGTH,
    "bleed": _LENGTH,
    "girth": _LENGTH,
    "girth bottom": _LENGTH,
    "height": _LENGTH,
    "handle gap": _LENGTH,
    "supplier": _TEXT,
    "code": _TEXT,
    "link": _LINK,
    "paid link": _YES_NO,
    "bought": Group(_LOT, ("count",), many=True),
    "low stock": _COUNT,
    "coating": _as(m.coating),
    "coated side": _TEXT,
    "limit": _TEMPERATURE,
    "sheet": Group(_SHEET),
    "care": _TEXT,
    "food contact": _TEXT,
    "note": _TEXT,
}
"""How fields of a blank are read."""
SUPPLY: Final[Mapping[str, Any]] = {
    "name": _TEXT,
    "kind": _as(m.supply_kind),
    "material": _TEXT,
    "price": amount,
    "contents": _as(q.measure),
    "size": _SIZE,
    "laydown": _as(q.laydown),
    "use": _as(q.measure),
    "lasts": _as(q.measure),
    "limit": _TEMPERATURE,
    "supplier": _TEXT,
    "code": _TEXT,
    "link": _LINK,
    "paid link": _YES_NO,
    "note": _TEXT,
}
"""How fields of a supply are read; no setting depends on one."""
PRESS: Final[Mapping[str, Any]] = {
    "platen": _SIZE,
    "even zone": _SIZE,
    "watts": _as(m.watts),
    "duty": _SHARE,
    "warm up": _MINUTES,
    "idle": _TEMPERATURE,
    "pressure mark": _TEXT,
    "timer starts": _TEXT,
    "note": _TEXT,
}
"""How those fields of a press are read that no setting depends on."""
SHOP: Final[Mapping[str, Any]] = {
    "name": _TEXT,
    "line": _TEXT,
    "notice": _TEXT,
    "contact": _TEXT,
    "how to order": _TEXT,
    "lead time": _TEXT,
    "labour": amount,
    "electricity": amount,
    "price ending": amount,
    "overhead": _SHARE,
    "margin": _SHARE,
    "markup": _SHARE,
    "usual yield": _SHARE,
    "low stock": _COUNT,
}
"""How those fields of the shop are read that nothing else is read by."""
