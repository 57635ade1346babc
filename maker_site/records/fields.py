"""Field types of the records: text in, one exact value out, or a sentence that says what is wrong.

Bare numbers take the shop's units, which come in as the validation context ``{"units": Units}``.
Inner module of the records room.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from fractions import Fraction
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, PlainValidator, ValidationInfo

from maker_site.records import meanings as m
from maker_site.records import quantities as q
from maker_site.records import words
from maker_site.records.outline import outline
from maker_site.records.problems import NotReadable

_USUAL_UNITS = {"temperature": "C", "length": "mm", "pressure": "bar"}


def _bare(info: ValidationInfo, kind: str) -> Any:
    units = (info.context or {}).get("units")
    return getattr(units, kind) if units else _USUAL_UNITS[kind]


def _text(value: object) -> str:
    if isinstance(value, str):
        return value
    raise NotReadable("one value was expected here, and a list or further fields were found")


def _read(parse: Callable[..., Any], unit: str | None = None) -> Any:
    """Make a validator of a parser; values that are no text pass as they are when they were made by the program."""

    def read(value: object, info: ValidationInfo) -> Any:
        if not isinstance(value, (str, list, dict)):
            return value
        return parse(_text(value), _bare(info, unit)) if unit else parse(_text(value))

    return PlainValidator(read)


Text = Annotated[str, _read(m.plain_text)]
Date = Annotated[date, _read(m.iso_date)]
YesNo = Annotated[bool, _read(m.yes_or_no)]
Count = Annotated[int, _read(m.count)]
Pressed = Annotated[int, _read(m.pressed)]
Watts = Annotated[int, _read(m.watts)]
CountFromOne = Annotated[int, _read(m.count_from_one)]
WebAddress = Annotated[str, _read(m.web_address)]
InnerPath = Annotated[str, _read(m.relative_path)]
TextList = Annotated[tuple[Text, ...], BeforeValidator(m.listed_texts)]
LayerList = Annotated[tuple[Text, ...], BeforeValidator(m.listed_layers)]

Temperature = Annotated[q.Temperature, _read(q.temperature, "temperature")]
TemperatureRange = Annotated[q.TemperatureRange, _read(q.temperature_range, "temperature")]
TemperatureStep = Annotated[q.TemperatureStep, _read(q.temperature_step, "temperature")]
Seconds = Annotated[q.Duration, _read(q.duration)]
SecondsRange = Annotated[q.DurationRange, _read(q.duration_range)]
Minutes = Annotated[q.Duration, _read(lambda text: q.duration(text, "min"))]
Length = Annotated[q.Length, _read(q.length, "length")]
Size = Annotated[q.Size, _read(q.size, "length")]
Outline = Annotated[str, _read(outline)]
Colour = Annotated[str, _read(m.colour)]
PlaceOnBlank = Annotated[tuple[q.Length, q.Length], _read(q.place, "length")]
Pressure = Annotated[q.Pressure, _read(q.pressure, "pressure")]
Amount = Annotated[q.Amount, _read(q.amount)]
Share = Annotated[q.Share, _read(q.share)]
Measure = Annotated[q.Measure, _read(q.measure)]
Laydown = Annotated[Fraction, _read(q.laydown)]

TemperatureUnit = Annotated[Literal["C", "F"], _read(m.one_of(("C", "F"), "a unit of temperature"))]
LengthUnit = Annotated[Literal["mm", "cm", "in"], _read(m.one_of(("mm", "cm", "in"), "a unit of length"))]
PressureUnit = Annotated[Literal["bar", "psi", "kPa"], _read(m.one_of(("bar", "psi", "kPa"), "a unit of pressure"))]
Method = Annotated[str, _read(m.method)]
Substrate = Annotated[str, _read(m.substrate)]
Face = Annotated[str, _read(m.face)]
Peel = Annotated[str, _read(m.peel)]
Cool = Annotated[str, _read(m.cool)]
Coating = Annotated[str, _read(m.coating)]
PressKind = Annotated[str, _read(m.one_of(words.PRESS_KINDS, "a kind of press"))]
SupplyKind = Annotated[str, _read(m.supply_kind)]
Difficulty = Annotated[str, _read(m.difficulty)]

Defect = Annotated[str, _read(m.defect)]
DefectList = Annotated[tuple[Defect, ...], BeforeValidator(m.listed_defects)]
currency_code = _read(m.currency)
locale_name = _read(m.locale)
