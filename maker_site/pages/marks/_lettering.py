"""How wide a line of lettering may turn out in a font we don't know. Inner module: used by the marks only."""

from unicodedata import category

_NARROW = frozenset("iIjl.,:;'|!()[]{}`\u2019\u2018 ftr")
_WIDE = frozenset("mwMW@%\u2014\u2026&")
_ELLIPSIS = "\u2026"

# Shares of the font size. Chosen to be no narrower than the widest sans a desk is likely to have (DejaVu Sans, whose
# own table gives n 0.634, m 0.974, W 0.989, l 0.278, r 0.411, E 0.632); a narrower font leaves air, never an overflow.
_NARROW_SHARE = 0.42
_WIDE_SHARE = 1.0
_CAPITAL_SHARE = 0.78
_OTHER_SHARE = 0.64
_IDEOGRAPH_SHARE = 1.0
_FIRST_IDEOGRAPH = 0x1100
_WITHOUT_WIDTH = frozenset({"Mn", "Me", "Cf"})
"""Categories of letters that stand on another one, or only order others: vowel signs, marks of direction."""


def lettering_width(text: str, font_size: float) -> float:
    """A width that TEXT at FONT_SIZE will not exceed in an ordinary sans, in the unit of the font size."""
    return font_size * sum(_share(letter) for letter in text)


def wrapped(text: str, *, width: float, font_size: float, lines: int) -> tuple[str, ...]:
    """TEXT broken at spaces into at most LINES lines no wider than WIDTH; what is left over becomes an ellipsis."""
    rest = text.split()
    broken: list[str] = []
    while rest and len(broken) < lines:
        taken = _words_that_fit(rest, width, font_size)
        broken.append(" ".join(rest[:taken]) if taken else _cut(rest[0], width, font_size))
        rest = rest[taken or 1 :]
    if rest:
        broken[-1] = _cut(f"{broken[-1]} {rest[0]}", width, font_size)
    return tuple(broken)


def _words_that_fit(rest: list[str], width: float, font_size: float) -> int:
    taken = 0
    while taken < len(rest) and lettering_width(" ".join(rest[: taken + 1]), font_size) <= width:
        taken += 1
    return taken


def _cut(text: str, width: float, font_size: float) -> str:
    kept = text
    while kept and lettering_width(kept + _ELLIPSIS, font_size) > width:
        kept = kept[:-1].rstrip()
    return kept + _ELLIPSIS


def _share(letter: str) -> float:
    if not letter.isascii() and category(letter) in _WITHOUT_WIDTH:
        return 0
    if ord(letter) >= _FIRST_IDEOGRAPH and letter not in _WIDE and letter not in _NARROW:
        return _IDEOGRAPH_SHARE
    if letter in _NARROW:
        return _NARROW_SHARE
    if letter in _WIDE:
        return _WIDE_SHARE
    return _CAPITAL_SHARE if letter.isupper() else _OTHER_SHARE
