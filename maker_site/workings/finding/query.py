"""What was typed to be found: words, and figures with or without a unit."""

from __future__ import annotations

import re
from typing import Final

from maker_site.frozen import frozen
from maker_site.workings.finding.folding import fold

_NUMBER: Final = r"\d+(?:[.,]\d+)?"
_TERM: Final = re.compile(
    rf"""(?:(?P<heat>{_NUMBER})\s*(?:°|º|deg(?:rees)?\.?)?\s*(?P<unit>c(?:elsius)?|f(?:ahrenheit)?)
        |(?P<clock_minutes>\d{{1,3}}):(?P<clock_seconds>\d\d)
        |(?P<minutes>{_NUMBER})\s*(?:min(?:ute)?s?|m|')\.?(?:\s*(?P<and_seconds>{_NUMBER})\s*(?:s(?:ec(?:ond)?s?)?|")\.?)?
        |(?P<seconds>{_NUMBER})\s*(?:s(?:ec(?:ond)?s?)?|")\.?
        |(?P<bare>{_NUMBER})\s*[°º]?
        )(?=[\s,;]|$)
        |(?P<word>\S+)""",
    re.VERBOSE,
)
_JOINING: Final = frozenset(("a", "an", "and", "at", "for", "in", "of", "on", "or", "the", "to", "with"))
"""Words that say nothing by themselves; they are passed over where something else is asked too."""


@frozen
class Term:
    """One thing that every find must have."""

    typed: str
    """As it was typed, folded."""
    word: str | None
    """To be looked for among the words; None for a figure with its unit."""
    celsius: tuple[float, ...] = ()
    """Temperatures that it may mean."""
    seconds: float | None = None
    """The time that it may mean."""


def read(text: str) -> tuple[Term, ...]:
    """Return what a query asks for; each term once, in the order typed.

    ``400 F`` is a temperature, ``5:00`` and ``90 s`` are times; a bare ``200`` is either, or part of a word.
    """
    terms = dict.fromkeys(_term(found) for found in _TERM.finditer(fold(text)))
    said = tuple(term for term in terms if term.word is None or term.word.strip(_EDGES))
    telling = tuple(term for term in said if term.word not in _JOINING)
    return telling or said


_EDGES: Final = ".,;:()[]'\"“”-–—/"


def _term(found: re.Match[str]) -> Term:
    part = found.groupdict()
    typed = " ".join(found[0].split())
    if part["heat"]:
        value = _figure(part["heat"])
        return Term(typed, None, (_celsius(value) if part["unit"].startswith("f") else value,))
    if part["clock_minutes"]:
        return Term(typed, None, (), int(part["clock_minutes"]) * 60 + int(part["clock_seconds"]))
    if part["minutes"]:
        return Term(typed, None, (), _figure(part["minutes"]) * 60 + _figure(part["and_seconds"] or "0"))
    if part["seconds"]:
        return Term(typed, None, (), _figure(part["seconds"]))
    if part["bare"]:
        value = _figure(part["bare"])
        return Term(typed, part["bare"], (value, _celsius(value)), value)
    return Term(typed, typed.strip(_EDGES))


def _figure(text: str) -> float:
    return float(text.replace(",", "."))


def _celsius(fahrenheit: float) -> float:
    """Return degrees Celsius: t/C = (t/F - 32)/1.8 (NIST SP 811, Appendix B.8)."""
    return (fahrenheit - 32) / 1.8
