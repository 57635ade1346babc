"""What a text of a record means: one exact value, or a sentence that says what is wrong.

Imports nothing that is slow to import, so that one row can be read without all kinds of records.
Inner module of the records room.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from datetime import date
from functools import lru_cache
from urllib.parse import urlsplit

from maker_site.records import quantities as q
from maker_site.records import words
from maker_site.records.problems import NotReadable, listed, nearest, quoted


@lru_cache(maxsize=1024)  # records repeat few names; each is held once, however many records there are
def key_of(written: str) -> str:
    """Return a key's plain form: lower case, words parted by one space (``Print_Area`` is ``print area``)."""
    return re.sub(r"[\s_-]+", " ", written.strip()).lower()


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


def listed_texts(value: object) -> object:
    """Take ``wedding, new home`` for a list of two."""
    if isinstance(value, str):
        return [part.strip() for part in value.split(",") if part.strip()]
    return value


def listed_layers(value: object) -> object:
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


def listed_defects(value: object) -> object:
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


method = one_of(words.METHODS, "a method")
peel = one_of(words.PEELS, "a peel")
cool = one_of(words.COOLS, "a way to cool")
coating = one_of(words.COATINGS, "a coating")
difficulty = one_of(words.DIFFICULTIES, "a difficulty")
supply_kind = one_of(words.SUPPLY_KINDS, "a kind of supply")
