"""Saying a sentence in the language that is spoken now.

The language is ambient, as the context of `decimal` is: it is set once at the edge, with `speaking`, and is English
elsewhere. Sentences are written in English where they are said; the catalogues are in `catalogues/`.
"""

from __future__ import annotations

import contextlib
from collections.abc import Iterator, Mapping
from contextvars import ContextVar
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from maker_site.frozen import frozen

if TYPE_CHECKING:
    from gettext import NullTranslations

DOMAIN: Final = "maker-site"
CATALOGUES: Final = Path(__file__).parent / "catalogues"
_RIGHT_TO_LEFT: Final = frozenset({"ar", "ckb", "dv", "fa", "he", "ps", "sd", "ug", "ur", "yi"})
"""Languages whose script runs from right to left, CLDR's characterOrder."""
_FIRST_STRONG: Final = "\N{FIRST STRONG ISOLATE}"
_COUNTS: Final = range(200)
"""Among them is one of each kind of count that CLDR tells apart."""
_POP: Final = "\N{POP DIRECTIONAL ISOLATE}"


@frozen
class Language:
    """A language that the site speaks."""

    tag: str
    """BCP 47, without a territory."""
    direction: str
    """ltr or rtl."""


ENGLISH: Final = Language("en", "ltr")
_now: ContextVar[Language] = ContextVar("language", default=ENGLISH)


def tag_of(locale: str) -> str:
    """Return a locale as BCP 47 writes it."""
    return locale.replace("_", "-")


def page_language(locale: str) -> str:
    """Return the language of a page as it is spoken now, with the shop's territory where it is the shop's own."""
    own = tag_of(locale)
    tag = _now.get().tag
    return own if own.partition("-")[0].lower() == tag else tag


def language_of(locale: str) -> Language:
    """Return what the site speaks to a shop of a locale: its language where there is a catalogue, else English."""
    tag = locale.replace("-", "_").partition("_")[0].lower()
    return Language(tag, direction(tag)) if _catalogue(tag) is not None else ENGLISH


def direction(tag: str) -> str:
    """Return which way a language is written: ltr or rtl."""
    return "rtl" if tag.replace("_", "-").partition("-")[0].lower() in _RIGHT_TO_LEFT else "ltr"


def spoken() -> Language:
    """Return the language that is spoken now."""
    return _now.get()


@contextlib.contextmanager
def speaking(language: Language) -> Iterator[None]:
    """Speak a language for a while."""
    token = _now.set(language)
    try:
        yield
    finally:
        _now.reset(token)


def say(message: str, /, **parts: object) -> str:
    """Return a sentence in the language spoken now, `{name}` filled in from `parts`; HTML where a part is HTML."""
    found = _catalogue(_now.get().tag) if message else None  # gettext keeps its own notes under the empty message
    return _filled(found.gettext(message) if found else message, parts)


def say_in(context: str, message: str, /, **parts: object) -> str:
    """Return a word that means different things in different places; `context` tells translators which is meant."""
    found = _catalogue(_now.get().tag)
    return _filled(found.pgettext(context, message) if found else message, parts)


def say_n(one: str, many: str, count: int, /, **parts: object) -> str:
    """Return the sentence for a count; `{n}` is that number, written as a part named n says where there is one."""
    found = _catalogue(_now.get().tag)
    message = found.ngettext(one, many, count) if found else (one if count == 1 else many)
    return _filled(message, {"n": count, **parts})


def say_forms(one: str, many: str) -> Mapping[str, str]:
    """Return the sentence for every kind of count that the language tells apart, by CLDR's names, `{n}` and all left.

    For scripts, which count and have `Intl.PluralRules` to choose with.
    """
    found = _catalogue(_now.get().tag)
    if found is None:
        return {"one": one, "other": many}
    from babel import Locale

    kind = Locale.parse(_now.get().tag).plural_form
    return {kind(n): found.ngettext(one, many, n) for n in reversed(_COUNTS)}


def marked(message: str) -> str:
    """Return the same; tells those who gather what is to be translated that `say` is asked for it later."""
    return message


def apart(text: str) -> str:
    """Return a figure or somebody's words kept in an order of their own where the script runs from right to left.

    What was filled in by `say` is left as it is: it is in the language spoken, and its parts are kept apart already.
    """
    if _now.get().direction == "ltr" or not text or _FIRST_STRONG in text:
        return text
    return type(text)(f"{_FIRST_STRONG}{text}{_POP}")


def _filled(message: str, parts: dict[str, Any]) -> str:
    """Fill in, each part for itself where the script runs from right to left, so that “193 °C” keeps its order."""
    if not parts:
        return message
    for part in parts.values():
        if type(part) is not str and hasattr(part, "__html__"):
            from markupsafe import Markup, escape

            return Markup(escape(message)).format(**_isolated(parts, escape, Markup))
    return message.format(**_isolated(parts, str, str))


def _isolated(parts: dict[str, Any], written: Any, kind: Any) -> dict[str, Any]:
    if _now.get().direction == "ltr":
        return parts
    return {name: kind(f"{_FIRST_STRONG}{written(part)}{_POP}") for name, part in parts.items()}


@cache
def _catalogue(tag: str) -> NullTranslations | None:
    if tag == ENGLISH.tag:
        return None
    file = CATALOGUES / tag / "LC_MESSAGES" / f"{DOMAIN}.mo"
    if not file.is_file():
        return None
    from gettext import GNUTranslations

    with file.open("rb") as opened:
        return GNUTranslations(opened)
