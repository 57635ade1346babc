"""How large the printed transfer of one piece is."""

from __future__ import annotations

from fractions import Fraction

from maker_site.frozen import frozen
from maker_site.records import Blank, Project
from maker_site.records.quantities import Length

_MM2_PER_M2 = 1_000_000


@frozen
class TransferSize:
    """The printed rectangle, bleed and all; a round piece's is the square around it."""

    width: Fraction
    """mm, with bleed on both sides."""
    height: Fraction
    """mm, with bleed on both sides."""
    bleed: Fraction
    """mm on each side."""
    bleed_written: bool
    """False where neither artwork nor blank says it, and none was counted."""

    @property
    def square_metres(self) -> Fraction:
        """The area in m²."""
        return self.width * self.height / _MM2_PER_M2


def transfer_size(project: Project, blank: Blank) -> TransferSize | None:
    """Return the size for one piece: print area, else size, else girth less handle gap by height; with bleed.

    The bleed is the largest of the artwork's, else the blank's. None where the blank has no size.
    """
    sides = printed_sides(blank)
    if sides is None:
        return None
    written = [each.bleed.mm for each in project.artwork if each.bleed is not None]
    if not written and blank.bleed is not None:
        written = [blank.bleed.mm]
    bleed = max(written, default=Fraction(0))
    return TransferSize(sides[0] + 2 * bleed, sides[1] + 2 * bleed, bleed, bleed_written=bool(written))


def printed_sides(blank: Blank) -> tuple[Fraction, Fraction] | None:
    """Return the sides in mm that a picture has to fill, without bleed; None where the blank has no size."""
    area = blank.print_area or blank.size
    if area is not None:
        return area.width.mm, area.height.mm
    if blank.girth is None or blank.height is None:
        return None
    width = blank.girth.mm - (blank.handle_gap or Length(Fraction(0))).mm
    return (width, blank.height.mm) if width > 0 and blank.height.mm > 0 else None
