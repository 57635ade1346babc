"""Plant a value of its own in every field of a workshop's records, and look for them in what was made.

The fields are found by walking the record models, so a new field is planted the day it is added. A field of a kind
that is not known here stops the planting: say in `FORMS` what a value of that kind looks like.
"""

import re
import types
import typing
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from html.parser import HTMLParser
from itertools import count
from pathlib import Path
from typing import Any

import pypdfium2

from maker_site.records import Part
from maker_site.records import fields as f

MARK = "zqkanary"
LETTERS = "bcdfghjkmnprstvw"
WORD = re.compile(f"{MARK}[{LETTERS}]{{3}}")
"""Any planted word, in small letters."""

# Filled in by the program out of files, not typed into the record; their files are planted by hand.
FROM_FILES = {"id", "tutorial", "folder_photos", "folder_pictures", "sheet_scan"}


@dataclass(frozen=True)
class Canary:
    """A value that stands in one field alone."""

    place: str
    """Record and field, such as `projects/told: order.paid`."""
    written: str
    """As it stands in the record."""
    pattern: re.Pattern[str]
    """As it would look where it has leaked, in any usual form."""
    word: bool
    """A made-up word, to be looked for in every byte; a figure is looked for in what pages say."""


def _figure(text: str, *others: str) -> str:
    """Give a pattern of this figure, and of other ways to show it, standing by itself."""
    return "|".join(rf"(?<![\w.,]){each}(?![\w]|[.,]\d)" for each in (text, *others))


def _grouped(figure: int) -> str:
    thousands, rest = divmod(figure, 1000)
    return rf"{thousands}[.,'\s\u00a0\u202f]?{rest:03d}"


def _word(number: int) -> str:
    return MARK + "".join(LETTERS[number // 16**place % 16] for place in (2, 1, 0))


def _date(number: int) -> tuple[str, str]:
    year = 1901 + number
    return f"{year}-03-17", rf"{year}-03|Mar(?:ch)?\s{year}|(?<!\d)0?3/(?:\d\d/)?{year}"


def _celsius(number: int) -> tuple[str, str]:
    # Uneven steps: a dial's figure moved by what one reading of a press is off must not be another field's figure.
    celsius = 143 + number * (number + 5) // 2
    fahrenheit = round(celsius * 9 / 5 + 32)
    shown = (
        rf"(?<![\w.,]){degrees}(?:[.,]\d+)?[\s\u00a0\u202f]?°?[\s\u00a0]?{unit}\b"
        for degrees, unit in ((celsius, "C"), (fahrenheit, "F"))
    )
    return f"{celsius} C", "|".join(shown)


def _time(number: int) -> tuple[str, str]:
    minutes, seconds = 31 + number, 13
    total = minutes * 60 + seconds
    return f"{minutes}:{seconds}", _figure(f"{minutes}:{seconds}", rf"{minutes}\s?min", rf"{_grouped(total)}\s?s")


def _amount(number: int) -> tuple[str, str]:
    return f"{61000 + number}.37", _figure(rf"{_grouped(61000 + number)}(?:[.,]37)?")


def _count(number: int) -> tuple[str, str]:
    return str(730000 + number), _figure(_grouped(730000 + number))


def _pressed(number: int) -> tuple[str, str]:
    return str(81000 + number), _figure(_grouped(81000 + number))


def _percent(number: int) -> tuple[str, str]:
    return f"{31 + number}.7 %", rf"(?<![\w.,]){31 + number}[.,]7[\s\u00a0\u202f]?%"


def _millimetres(number: int) -> tuple[str, str]:
    return f"{3101 + number} mm", _figure(_grouped(3101 + number))


def _size(number: int) -> tuple[str, str]:
    side = 5101 + number
    return f"{side} x {side} mm", _figure(_grouped(side))


def _bar(number: int) -> tuple[str, str]:
    return f"{7 + number}.3 bar", rf"(?<!\d){7 + number}[.,]3[\s\u00a0\u202f]?bar"


def _measure(number: int) -> tuple[str, str]:
    return f"{9101 + number} mm", _figure(_grouped(9101 + number))


def _laydown(number: int) -> tuple[str, str]:
    return f"{1301 + number} ml/m2", _figure(_grouped(1301 + number))


# What a value of each kind looks like, from a number that no other field of that kind has.
FIGURES: Mapping[object, Callable[[int], tuple[str, str]]] = {
    f.Date: _date,
    f.Temperature: _celsius,
    f.TemperatureRange: _celsius,
    f.Seconds: _time,
    f.SecondsRange: _time,
    f.Minutes: _time,
    f.Amount: _amount,
    f.Count: _count,
    f.CountFromOne: _count,
    f.Pressed: _pressed,
    f.Watts: _count,
    f.Share: _percent,
    f.Length: _millimetres,
    f.Size: _size,
    f.PlaceOnBlank: _size,
    f.Pressure: _bar,
    f.Measure: _measure,
    f.Laydown: _laydown,
}
WORDS: Mapping[object, str] = {
    f.Text: "{}",
    f.WebAddress: "https://{}.example/",
    f.InnerPath: "photos/{}.jpg",
}
LISTS = (f.TextList, f.LayerList)
# One of a few known words, or yes and no: nothing that could be told apart from what a page says anyway.
CHOICES: Mapping[object, str] = {
    f.YesNo: "yes",
    f.Method: "sublimation",
    f.Substrate: "slate",
    f.Face: "print up",
    f.Peel: "warm",
    f.Cool: "flat under weight",
    f.Coating: "hard",
    f.Colour: "navy",
    f.Outline: "M 0 0 L 4 0 L 4 4 Z",
    f.PressKind: "flat clamshell",
    f.SupplyKind: "other",
    f.Difficulty: "medium",
    f.TemperatureStep: "1 C",
    f.DefectList: "specks",
}


@dataclass
class Planter:
    """Writes records with a canary in every field, and remembers them."""

    canaries: list[Canary] = field(default_factory=list)
    _words: Iterator[int] = field(default_factory=count)
    _figures: dict[object, Iterator[int]] = field(default_factory=dict)

    def word(self, place: str, form: str = "{}") -> str:
        """Plant a word, and give it as it is to be written."""
        word = _word(next(self._words))
        self.canaries.append(Canary(place, form.format(word), re.compile(word, re.IGNORECASE), word=True))
        return form.format(word)

    def record(self, model: type[Part], place: str, **fixed: Any) -> dict[str, Any]:
        """Give the fields of a record or part, each with its canary; `fixed` fields are taken as they are."""
        kinds = typing.get_type_hints(model, include_extras=True)
        written = {}
        for name, info in model.model_fields.items():
            if name in FROM_FILES and name not in fixed:
                continue
            label = info.alias or name
            joint = "." if ": " in place else ": "
            value = fixed[name] if name in fixed else self._value(kinds[name], f"{place}{joint}{label}")
            if value is not None:
                written[label] = value
        unknown = set(fixed) - set(model.model_fields)
        if unknown:
            raise LookupError(f"{model.__name__} has no field {', '.join(sorted(unknown))}")
        return written

    def _value(self, kind: Any, place: str) -> Any:
        kind = _given(kind)
        if kind in CHOICES:
            return CHOICES[kind]
        if kind in WORDS:
            return self.word(place, WORDS[kind])
        if kind in LISTS:
            return [self.word(place)]
        if kind in FIGURES:
            numbers = self._figures.setdefault(FIGURES[kind], count())
            written, pattern = FIGURES[kind](next(numbers))
            self.canaries.append(Canary(place, written, re.compile(pattern), word=False))
            return written
        if isinstance(kind, type) and issubclass(kind, Part):
            return self.record(kind, place)
        if typing.get_origin(kind) is tuple and issubclass(part := typing.get_args(kind)[0], Part):
            return [self.record(part, place)]
        raise LookupError(f"{place}: no canary is known for {kind}; add its form")


def _given(kind: Any) -> Any:
    """Give what an optional field holds when it is given."""
    if isinstance(kind, types.UnionType) or typing.get_origin(kind) is typing.Union:
        (kind,) = (each for each in typing.get_args(kind) if each is not type(None))
    return kind


class _Said(HTMLParser):
    """Gathers what a page says: its text, and the attributes that hold words."""

    WORDED = ("alt", "title", "content", "datetime", "value", "placeholder", "label", "href", "src", "srcset")

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.said: list[str] = []
        self.silent = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.silent = tag == "style"
        self.said += [
            value or "" for name, value in attrs if name in self.WORDED or name.startswith(("data-", "aria-"))
        ]

    def handle_endtag(self, tag: str) -> None:
        self.silent = False

    def handle_data(self, data: str) -> None:
        if not self.silent:
            self.said.append(data)


def what_it_says(file: Path) -> str:
    """Give what a page, a feed or a data file says in words; nothing for other files."""
    if file.suffix == ".html":
        reader = _Said()
        reader.feed(file.read_text(encoding="utf-8"))
        reader.close()
        return "\n".join(reader.said)
    if file.suffix == ".pdf":
        with pypdfium2.PdfDocument(file) as document:
            return "\n".join(page.get_textpage().get_text_bounded() for page in document)
    return file.read_text(encoding="utf-8") if file.suffix in (".js", ".json", ".xml", ".txt") else ""


def found_in(folder: Path, canaries: list[Canary]) -> dict[str, set[str]]:
    """Give the places whose canaries are in the folder, each with the files that they were found in.

    Words are looked for in the names and in every byte of every file, figures in what its pages say.
    """
    found: dict[str, set[str]] = {}
    for file in sorted(path for path in folder.rglob("*") if path.is_file()):
        name = file.relative_to(folder).as_posix()
        raw = file.read_bytes()
        # UTF-16 is how photos carry some of their words.
        texts = [name, raw.decode("latin-1"), raw.replace(b"\0", b"").decode("latin-1")]
        told = "\n".join(texts).lower()
        said = what_it_says(file)
        told += said.lower() if file.suffix == ".pdf" else ""  # its bytes are packed
        words = set(WORD.findall(told))
        for canary in canaries:
            if canary.pattern.pattern in words if canary.word else canary.pattern.search(said):
                found.setdefault(canary.place, set()).add(name)
    return found
