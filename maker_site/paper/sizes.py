"""Paper by name or by its sides."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from maker_site.frozen import frozen
from maker_site.records.problems import NotReadable, quoted
from maker_site.records.quantities import MM_PER_INCH, PAPER_MM, Length, Size, plain, size
from maker_site.records.quantities.length import LengthUnit

_CARDS_MM: Final = {
    "4x6": (MM_PER_INCH * 4, MM_PER_INCH * 6),  # PWG 5101.1: na_index-4x6_4x6in
}
_LARGEST_MM: Final = 2000


@frozen
class SheetSize:
    """One kind of paper, upright or as it was written."""

    name: str
    """A4, or 329 × 483 mm."""
    width: Fraction
    """mm."""
    height: Fraction
    """mm."""

    @property
    def across(self) -> SheetSize:
        """The same lying on its longer side."""
        return SheetSize(self.name, max(self.width, self.height), min(self.width, self.height))

    @property
    def upright(self) -> SheetSize:
        """The same standing on its shorter side."""
        return SheetSize(self.name, min(self.width, self.height), max(self.width, self.height))


def sheet_size(text: str, bare: LengthUnit = "mm") -> SheetSize:
    """Read a paper: A3, A4, Letter, Tabloid, 13x19, 4x6, A6 or ``WxH``, bare figures in the shop's unit.

    Raises NotReadable.
    """
    clean = text.strip()
    for name, sides in (_CARDS_MM | PAPER_MM).items():
        if name.casefold() == clean.casefold().replace(" ", "").replace("×", "x"):
            return SheetSize(name, *sides)
    try:
        found = size(clean, bare)
    except NotReadable as refused:
        raise NotReadable(
            f"{quoted(text)} is not a paper known here; write {', '.join(PAPER_MM)}, 4x6, or its sides like 329x483 mm"
        ) from refused
    if found.round or max(found.width.mm, found.height.mm) > _LARGEST_MM:
        raise NotReadable(f"{quoted(text)} can't be a sheet of paper; write its sides like 329x483 mm")
    return sheet_of(found)


def sheet_of(given: Size) -> SheetSize:
    """Return the paper of a record's size."""
    sides = (given.width.mm, given.height.mm)
    for name, known in PAPER_MM.items():
        if known == sides:
            return SheetSize(name, *sides)
    return SheetSize(f"{_mm(given.width)} × {_mm(given.height)} mm", *sides)


def _mm(length: Length) -> str:
    return plain(length.mm, 1)
