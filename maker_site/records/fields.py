"""Field types of the records: text in, one exact value out, or a sentence that says what is wrong.

Bare numbers take the shop's units, which come in as the validation context ``{"units": Units}``.
Inner module of the records room.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from datetime import date
from fractions import Fraction
from typing import Annotated, Any, Literal
from urllib.parse import urlsplit

from pydantic import BeforeValidator, PlainValidator, ValidationInfo

from maker_site.records import quantities as q
from maker_site.records import words
from maker_site.records.outline import outline
from maker_site.records.problems import NotReadable, listed, nearest, quoted

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


def iso_date(text: str) -> date:
    """Read a date by ISO 8601, ``2026-04-18``."""
    clean = text.strip()
    if re.fullmatch(r"\d{4}-\d{2}-\d{2}", clean):
        try:
            return date.fromisoformat(clean)
        except ValueError:
            raise NotReadable(f"{quoted(text)} is not a day of the calendar") from None
    raise NotReadable(f"{quoted(text)} is not a date; write year-month-day like 2026-04-18")


def yes_or_no(text: str) -> bool:
    """Read ``yes`` or ``no`` (``true`` and ``false`` too)."""
    answers = {"yes": True, "true": True, "y": True, "no": False, "false": False, "n": False}
    clean = text.strip().lower()
    if clean not in answers:
        raise NotReadable(f"{quoted(text)} should be yes or no")
    return answers[clean]


def count(text: str) -> int:
    """Read a whole number, 0 or more."""
    clean = text.strip()
    if not re.fullmatch(r"\d{1,9}", clean):
        raise NotReadable(f"{quoted(text)} is not a whole number")
    return int(clean)


def count_from_one(text: str) -> int:
    """Read a whole number, 1 or more."""
    value = count(text)
    if not value:
        raise NotReadable("0 is too few; write 1 or more")
    return value


MOST_PRESSED = 99_999
"""Pieces in one row of the log. More is a slip of the hand, and every piece is drawn as a dot or counted one by one."""


def pressed(text: str) -> int:
    """Read how many pieces one row of the log tells of, 1 or more."""
    value = count_from_one(text)
    if value > MOST_PRESSED:
        raise NotReadable(f"{quoted(text)} is more than one row can tell of ({MOST_PRESSED} at most); correct it")
    return value


def watts(text: str) -> int:
    """Read electrical power: ``1400``, ``1400 W`` or ``1.4 kW``, in whole watts."""
    clean = q.tidy(text)
    if kilo := re.fullmatch(r"(.+?)\s*kW", clean, re.IGNORECASE):
        exact = q.number(kilo[1]) * 1000
        clean = str(exact)
    return count_from_one(re.sub(r"\s*W(?:atts?)?$", "", clean, flags=re.IGNORECASE))


def _folded(text: str) -> str:
    return " ".join(text.split()).lower()


def one_of(known: Iterable[str], what: str, also: dict[str, str] | None = None) -> Callable[[str], str]:
    """Return a reader of one of the known words, which names the nearest when the word is another."""
    allowed = {each.lower(): each for each in known}
    others = also or {}

    def read(text: str) -> str:
        clean = _folded(text)
        clean = others.get(clean, clean)
        if clean not in allowed:
            words_near = nearest(clean, (*allowed.values(), *others))
            raise NotReadable(f"{quoted(text)} is not {what}; write {listed(allowed.values())}{words_near}")
        return allowed[clean]

    return read


def substrate(text: str) -> str:
    """Read what a blank is made of: an open list, in lower case, with a few other spellings put right."""
    clean = q.tidy(text).lower()
    if not re.fullmatch(r"[^\W_]+(?:[ -][^\W_]+)*", clean) or clean == "index":
        raise NotReadable(f"{quoted(text)} is not a substrate; write a word or two like slate or stainless steel")
    return words.SUBSTRATE_SPELLINGS.get(clean, clean)


_known_face = one_of(words.FACES, "a way for the print to look", words.FACE_SAYINGS)


def face(text: str) -> str:
    """Read which way the print looks; a bare up or down is kept as written, to be questioned."""
    clean = _folded(text)
    if clean in words.UNCLEAR_FACES:
        return clean
    return _known_face(text)


def colour(text: str) -> str:
    """Read a colour as its six hexadecimal digits: one of a few names, or ``1f5673`` with or without ``#``."""
    clean = _folded(text)
    digits = words.COLOURS.get(clean, clean.removeprefix("#"))
    if not re.fullmatch(r"[0-9a-f]{6}", digits):
        raise NotReadable(
            f"{quoted(text)} is not a colour; write {listed(words.COLOURS)}, or six digits like 1f5673"
            f"{nearest(clean, words.COLOURS)}"
        )
    return digits


def web_address(text: str) -> str:
    """Read an address that begins with http:// or https://."""
    clean = text.strip()
    try:
        parts = urlsplit(clean)
        whole = parts.scheme in ("http", "https") and bool(parts.hostname)
    except ValueError:  # a bracket that opens no address of the sixth version
        whole = False
    if not whole or re.search(r"[\s<>\"\x00-\x1f\x7f]", clean):
        raise NotReadable(f"{quoted(text)} is not a web address; write it whole, like https://example.org/page")
    return clean


def _listed_texts(value: object) -> object:
    """Take ``wedding, new home`` for a list of two."""
    if isinstance(value, str):
        return [part.strip() for part in value.split(",") if part.strip()]
    return value


def _listed_layers(value: object) -> object:
    """Take ``pad > paper > blank`` for a list of three."""
    return layers(value) if isinstance(value, str) else value


def layers(text: str) -> list[str]:
    """Split a stack written in one line, bottom to top, at ``>``."""
    return [part.strip() for part in text.split(">") if part.strip()]


def plain_text(text: str) -> str:
    """Return text without spaces at its ends; spaces alone are refused."""
    clean = text.strip()
    if not clean:
        raise NotReadable("nothing is written here; write a text, or take it out")
    return clean


def relative_path(text: str) -> str:
    """Read a path inside the maker's folder: forward slashes, not absolute, not climbing out."""
    clean = text.strip().replace("\\", "/")
    parts = clean.split("/")
    if not clean or clean.startswith("/") or re.match(r"[A-Za-z]:", clean) or ".." in parts or "\0" in clean:
        raise NotReadable(
            f"{quoted(text)} leaves the folder it should stay in; write a path inside it, like photos/front.jpg"
        )
    inner = "/".join(part for part in parts if part not in ("", "."))
    if not inner:
        raise NotReadable(f"{quoted(text)} is a folder; write the path of a file, like photos/front.jpg")
    return inner


Text = Annotated[str, _read(plain_text)]
Date = Annotated[date, _read(iso_date)]
YesNo = Annotated[bool, _read(yes_or_no)]
Count = Annotated[int, _read(count)]
Pressed = Annotated[int, _read(pressed)]
Watts = Annotated[int, _read(watts)]
CountFromOne = Annotated[int, _read(count_from_one)]
WebAddress = Annotated[str, _read(web_address)]
InnerPath = Annotated[str, _read(relative_path)]
TextList = Annotated[tuple[Text, ...], BeforeValidator(_listed_texts)]
LayerList = Annotated[tuple[Text, ...], BeforeValidator(_listed_layers)]

Temperature = Annotated[q.Temperature, _read(q.temperature, "temperature")]
TemperatureRange = Annotated[q.TemperatureRange, _read(q.temperature_range, "temperature")]
TemperatureStep = Annotated[q.TemperatureStep, _read(q.temperature_step, "temperature")]
Seconds = Annotated[q.Duration, _read(q.duration)]
SecondsRange = Annotated[q.DurationRange, _read(q.duration_range)]
Minutes = Annotated[q.Duration, _read(lambda text: q.duration(text, "min"))]
Length = Annotated[q.Length, _read(q.length, "length")]
Size = Annotated[q.Size, _read(q.size, "length")]
Outline = Annotated[str, _read(outline)]
Colour = Annotated[str, _read(colour)]
PlaceOnBlank = Annotated[tuple[q.Length, q.Length], _read(q.place, "length")]
Pressure = Annotated[q.Pressure, _read(q.pressure, "pressure")]
Amount = Annotated[q.Amount, _read(q.amount)]
Share = Annotated[q.Share, _read(q.share)]
Measure = Annotated[q.Measure, _read(q.measure)]
Laydown = Annotated[Fraction, _read(q.laydown)]

TemperatureUnit = Annotated[Literal["C", "F"], _read(one_of(("C", "F"), "a unit of temperature"))]
LengthUnit = Annotated[Literal["mm", "cm", "in"], _read(one_of(("mm", "cm", "in"), "a unit of length"))]
PressureUnit = Annotated[Literal["bar", "psi", "kPa"], _read(one_of(("bar", "psi", "kPa"), "a unit of pressure"))]
Method = Annotated[str, _read(one_of(words.METHODS, "a method"))]
Substrate = Annotated[str, _read(substrate)]
Face = Annotated[str, _read(face)]
Peel = Annotated[str, _read(one_of(words.PEELS, "a peel"))]
Cool = Annotated[str, _read(one_of(words.COOLS, "a way to cool"))]
Coating = Annotated[str, _read(one_of(words.COATINGS, "a coating"))]
PressKind = Annotated[str, _read(one_of(words.PRESS_KINDS, "a kind of press"))]
SupplyKind = Annotated[str, _read(one_of(words.SUPPLY_KINDS, "a kind of supply"))]
Difficulty = Annotated[str, _read(one_of(words.DIFFICULTIES, "a difficulty"))]


def _listed_defects(value: object) -> object:
    """Take ``faded; bare edge`` for a list of two."""
    if isinstance(value, str):
        return [part.strip() for part in value.split(";") if part.strip()]
    return value


def defect(text: str) -> str:
    """Read a defect by its one word or by another name for it; an unclear word is kept, to be questioned."""
    clean = _folded(text)
    if clean in words.UNCLEAR_DEFECTS:
        return clean
    known = words.DEFECT_BY_NAME.get(clean)
    if known is None:
        names = ", ".join(words.DEFECTS)
        raise NotReadable(f"{quoted(text)} is not a defect known here ({names}){nearest(clean, words.DEFECT_BY_NAME)}")
    return known


def currency(text: str) -> str:
    """Read a currency by its three letters of ISO 4217."""
    from babel.numbers import list_currencies  # late: only the shop's record needs CLDR

    code = text.strip().upper()
    if code not in list_currencies():
        close = nearest(code, list_currencies())
        raise NotReadable(
            f"{quoted(text)} is not a currency; write its three letters by ISO 4217, like GBP, EUR or USD{close}"
        )
    return code


def locale(text: str) -> str:
    """Read a language and country by CLDR, `en-GB` as `en_GB`."""
    from babel import Locale, UnknownLocaleError  # late, as above

    clean = text.strip().replace("-", "_")
    try:
        return str(Locale.parse(clean))
    except (UnknownLocaleError, ValueError):
        raise NotReadable(
            f"{quoted(text)} is not a language and country; write it like en_GB, en_US or de_DE"
        ) from None


Defect = Annotated[str, _read(defect)]
DefectList = Annotated[tuple[Defect, ...], BeforeValidator(_listed_defects)]
currency_code = _read(currency)
locale_name = _read(locale)
