"""Words brought to one form, so that capitals, accents and dashes don't keep a match away."""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache
from typing import Final

_MARKS: Final = re.compile("[\u0300-\u036f]")
"""Accents set beside Latin, Greek and Cyrillic letters; the vowel signs of other scripts are letters and stay."""
_UNDIVIDED: Final = str.maketrans({"ø": "o", "ł": "l", "đ": "d", "æ": "ae", "œ": "oe", "ı": "i", "’": "'"})
"""Letters that Unicode doesn't take apart, written as people type them on another keyboard."""
_PARTS: Final = re.compile(r"[^\W_]+")


def fold(text: str) -> str:
    """Return a text in small letters without accents, its full-width and joined letters made plain."""
    if text.isascii():
        return text.lower()
    plain = unicodedata.normalize("NFKD", text.casefold().replace("º", "°"))
    return unicodedata.normalize("NFC", _MARKS.sub("", plain)).translate(_UNDIVIDED)


@lru_cache(maxsize=65536)
def words_of(text: str) -> tuple[str, ...]:
    """Return the folded words of a text, whole as written between spaces, then in their parts, each once.

    ``SC-100 rund`` has ``sc-100``, ``rund``, ``sc`` and ``100``.
    """
    folded = fold(text)
    whole = (word.strip(".,;:()[]'\"“”") for word in folded.split())
    return tuple(dict.fromkeys([*(word for word in whole if word), *_PARTS.findall(folded)]))


def parts_of(word: str) -> list[str]:
    """Return the parts of one folded word between its dashes, dots and the like."""
    return _PARTS.findall(word)
