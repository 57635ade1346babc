"""The outline of a blank that is neither round nor four-sided: a path, in mm from its top left corner."""

from __future__ import annotations

import re
from typing import Final

from maker_site.records.problems import NotReadable, quoted

_FIGURES: Final = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2, "A": 7, "Z": 0}
"""How many figures each letter of a path takes (SVG 1.1, chapter 8)."""
_TOKEN: Final = re.compile(r"[\s,]*([A-Za-z]|[+-]?(?:\d+\.?\d*|\.\d+))")
_LONGEST: Final = 8000
_EXAMPLE: Final = "M 10 0 L 90 0 L 100 50 L 0 50 Z"


def outline(text: str) -> str:
    """Read an outline: the letters M L H V C S Q T A Z, large or small, each with its figures; nothing else.

    Returned with single spaces. Raises NotReadable.
    """
    if len(text) > _LONGEST:
        raise NotReadable(f"the outline has {len(text)} letters, and {_LONGEST} are read; simplify it")
    tokens: list[str] = []
    at, end = 0, len(text.rstrip())
    while at < end:
        match = _TOKEN.match(text, at)
        if not match:
            raise NotReadable(f"{quoted(text[at:])} is no part of an outline; write it like {_EXAMPLE}, in mm")
        tokens.append(match[1])
        at = match.end()
    _check(tokens)
    return " ".join(tokens)


def _check(tokens: list[str]) -> None:
    if not tokens or tokens[0] not in ("M", "m"):
        raise NotReadable(f"an outline begins with M and the place of its first point, like {_EXAMPLE}")
    letter, figures = tokens[0], 0
    for token in (*tokens[1:], "M"):
        if not token.isalpha():
            figures += 1
            continue
        wanted = _figures_of(letter)
        if figures % wanted if wanted else figures:
            raise NotReadable(f"{letter} takes {wanted} figures in an outline, and {figures} stand after it")
        if wanted and not figures:
            raise NotReadable(f"{letter} takes {wanted} figures in an outline, and none stands after it")
        letter, figures = token, 0


def _figures_of(letter: str) -> int:
    if letter.upper() not in _FIGURES:
        raise NotReadable(f"“{letter}” is no part of an outline; its letters are {' '.join(_FIGURES)}")
    return _FIGURES[letter.upper()]
