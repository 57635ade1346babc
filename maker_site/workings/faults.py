"""What each defect likely comes from, and what to change next, one thing at a time: data, read by `next_try`.

The words are `marked`, in English; `next_try` says them.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from typing import Final

from maker_site.frozen import frozen
from maker_site.language import marked

SOURCE: Final = marked("common practice and trade articles, no rule")
"""Where the table comes from; said wherever a line of it is shown."""


class Direction(StrEnum):
    """Which way a change moves the temperature or the time."""

    HOTTER = "hotter"
    COOLER = "cooler"
    LONGER = "longer"
    SHORTER = "shorter"
    TIME_BOTH_WAYS = "shorter as well as longer"
    TEMPERATURE_BOTH_WAYS = "cooler as well as hotter"

    @property
    def of_time(self) -> bool:
        """Tell whether the time is what changes."""
        return self in (Direction.LONGER, Direction.SHORTER, Direction.TIME_BOTH_WAYS)


@frozen
class Change:
    """One thing to change."""

    words: str
    direction: Direction | None = None
    """None where neither temperature nor time changes."""


@frozen
class Fault:
    """One defect."""

    causes: str
    """The likely ones, in a clause."""
    changes: tuple[Change, ...]
    """In the order in which to try them."""


FAULTS: Final[Mapping[str, Fault]] = {
    "pale all over": Fault(
        marked(
            "too little heat, time or pressure, the wrong side, film left on, damp or the profile; "
            "or too long, since soft coatings give the dye up again"
        ),
        (
            Change(
                marked(
                    "Read the spent paper: much colour left on it means too little, hardly any left means too much. "
                    "Change no figure before that"
                )
            ),
            Change(
                marked("Check the sides: the coated side of the blank, the printed side of the paper, no film left on")
            ),
            Change(marked("Measure the platen with a contact probe")),
            Change(marked("Press a ladder of times both ways, shorter as well as longer"), Direction.TIME_BOTH_WAYS),
        ),
    ),
    "pale in one place": Fault(
        marked("a dented pad, a cold spot, a warped or thick blank, a fold in the tape"),
        (
            Change(
                marked(
                    "Turn the piece half way round: a mark that moves with it is the blank’s, "
                    "one that stays is the press’s"
                )
            ),
            Change(marked("Change the pad")),
            Change(marked("Put a shim under the low place")),
        ),
    ),
    "pale at top or bottom": Fault(
        marked("an element shorter than the piece, taper, a loose wrap, or too little time to warm the ends"),
        (
            Change(marked("Centre the piece in the element")),
            Change(marked("Wrap it tighter")),
            Change(marked("Press it longer"), Direction.LONGER),
            Change(marked("Make the image smaller")),
        ),
    ),
    "bare edge": Fault(
        marked("too little bleed, a crooked transfer, or a piece past the even zone"),
        (
            Change(marked("Give the artwork more bleed")),
            Change(marked("Lay the transfer to registration marks")),
            Change(marked("Centre the piece in the even zone")),
        ),
    ),
    "double image": Fault(
        marked("the transfer moved on opening or closing, by a lid lifted fast or loose tape"),
        (
            Change(marked("Fix the transfer better: more tape, off the image, or tack")),
            Change(marked("Lay felt or foam over the stack")),
            Change(marked("Open slowly and lift the lid straight")),
        ),
    ),
    "stain from elsewhere": Fault(
        marked("old dye in a cover sheet or in paper used before"),
        (
            Change(marked("Put fresh paper on both sides")),
            Change(marked("Clean the platen, once it is cold")),
        ),
    ),
    "blurred": Fault(
        marked("too long, too hot, cooled slowly, or moisture"),
        (
            Change(marked("Cool it faster, as far as the blank’s sheet allows; never glass in water")),
            Change(marked("Press it shorter"), Direction.SHORTER),
            Change(marked("Press it cooler"), Direction.COOLER),
        ),
    ),
    "blowout": Fault(
        marked("paper that stops short, dye past the edge, or moisture"),
        (
            Change(marked("Let the paper reach past every edge")),
            Change(marked("Trim the transfer")),
            Change(marked("Dry the blank and the transfer")),
        ),
    ),
    "yellow or brown": Fault(
        marked("too hot or too long, bare coating left uncovered, brightened cloth, or a dirty platen"),
        (
            Change(marked("Cover the bare coating with paper")),
            Change(marked("Clean the platen, once it is cold")),
            Change(marked("Press it cooler"), Direction.COOLER),
            Change(marked("Press it shorter"), Direction.SHORTER),
        ),
    ),
    "wrong colour": Fault(
        marked("the profile, the ink or the paper setting; time either way, on which makers disagree"),
        (
            Change(marked("Compare with the colour chart")),
            Change(marked("Put the printer right first: profile, ink and paper setting")),
            Change(marked("Then press a ladder of times"), Direction.TIME_BOTH_WAYS),
        ),
    ),
    "banding": Fault(
        marked("clogged nozzles, the print head’s alignment or the paper setting: never the press"),
        (
            Change(marked("Print a nozzle check")),
            Change(marked("Align the print head")),
            Change(marked("Check the paper setting")),
        ),
    ),
    "dotted tracks": Fault(
        marked("the printer’s rollers in heavy ink, damp paper or a wrong paper setting"),
        (
            Change(marked("Check the paper setting")),
            Change(marked("Lay down less ink")),
            Change(marked("Let the paper and the print dry")),
        ),
    ),
    "specks": Fault(
        marked("lint, static and plastic bags"),
        (
            Change(marked("Lint-roll all that the platen touches")),
            Change(marked("Pre-press for a few seconds")),
        ),
    ),
    "steam spots": Fault(
        marked("moisture in the board, the cloth or the paper"),
        (
            Change(marked("Pre-press to drive the moisture out")),
            Change(marked("Use absorbent paper")),
            Change(marked("Warm the paper first")),
        ),
    ),
    "press lines": Fault(
        marked("the edge of platen or paper, pressure, or heat on polyester"),
        (
            Change(marked("Put foam under the print, smaller than the platen")),
            Change(marked("Use paper with torn edges")),
            Change(marked("Press it lighter")),
            Change(marked("Press it cooler"), Direction.COOLER),
        ),
    ),
    "tape mark": Fault(
        marked("tape on the image, or adhesive past its limit"),
        (
            Change(marked("Move the tape off the image")),
            Change(marked("Use another tape that bears more heat")),
            Change(marked("Use smaller pieces of tape")),
        ),
    ),
    "paper stuck": Fault(
        marked("a coating softer than the setting, or too hot"),
        (
            Change(marked("Press it cooler"), Direction.COOLER),
            Change(marked("Press it shorter"), Direction.SHORTER),
            Change(marked("Peel it warm")),
            Change(marked("Test the lot")),
        ),
    ),
    "bowed": Fault(
        marked("heat on one side, or cooled loose"),
        (
            Change(marked("Cool it flat under a weight")),
            Change(marked("Press it shorter"), Direction.SHORTER),
            Change(marked("Heat both faces")),
        ),
    ),
    "cracked": Fault(
        marked("sudden cooling, pressure in one point, or a piece off centre"),
        (
            Change(marked("Press it lighter")),
            Change(marked("Pad it")),
            Change(marked("Centre it")),
            Change(marked("Cool it slowly and dry")),
        ),
    ),
    "lifts": Fault(
        marked(
            "too cool, short or light, the wrong peel, a seam, softener or finish on the cloth; "
            "more of everything is not a cure"
        ),
        (
            Change(marked("Peel as the film’s sheet says")),
            Change(marked("Pre-press the cloth")),
            Change(marked("Press it firmer")),
            Change(marked("Press it a second time after peeling, as the film’s sheet says")),
        ),
    ),
    "dye rises through": Fault(
        marked("dyed polyester under a transfer"),
        (
            Change(marked("Press it cooler"), Direction.COOLER),
            Change(marked("Use a film that blocks the dye")),
            Change(marked("Use another cloth")),
        ),
    ),
    "fades in use": Fault(
        marked("a soft coating, the dishwasher, sun on the coating, or too little pressing"),
        (
            Change(marked("Give a care card that a test of your own bears out")),
            Change(marked("Use a blank with a harder coating")),
            Change(marked("Sell it for indoors only")),
        ),
    ),
}
"""By the defect’s one word."""

TOO_LITTLE: Final = ("pale all over", "lifts")
"""Defects that speak first for too little heat or time."""
TOO_MUCH: Final = ("yellow or brown", "blurred", "paper stuck", "dye rises through")
"""Defects that speak first for too much of them."""
