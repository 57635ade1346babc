"""What each defect likely comes from, and what to change next, one thing at a time: data, read by `next_try`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

SOURCE: Final = "common practice and trade articles, no rule"
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


@dataclass(frozen=True, slots=True)
class Change:
    """One thing to change."""

    words: str
    direction: Direction | None = None
    """None where neither temperature nor time changes."""


@dataclass(frozen=True, slots=True)
class Fault:
    """One defect."""

    causes: str
    """The likely ones, in a clause."""
    changes: tuple[Change, ...]
    """In the order in which to try them."""


FAULTS: Final[Mapping[str, Fault]] = {
    "pale all over": Fault(
        "too little heat, time or pressure, the wrong side, film left on, damp or the profile; "
        "or too long, since soft coatings give the dye up again",
        (
            Change(
                "Read the spent paper: much colour left on it means too little, hardly any left means too much. "
                "Change no figure before that"
            ),
            Change("Check the sides: the coated side of the blank, the printed side of the paper, no film left on"),
            Change("Measure the platen with a contact probe"),
            Change("Press a ladder of times both ways, shorter as well as longer", Direction.TIME_BOTH_WAYS),
        ),
    ),
    "pale in one place": Fault(
        "a dented pad, a cold spot, a warped or thick blank, a fold in the tape",
        (
            Change(
                "Turn the piece half way round: a mark that moves with it is the blank’s, one that stays is the press’s"
            ),
            Change("Change the pad"),
            Change("Put a shim under the low place"),
        ),
    ),
    "pale at top or bottom": Fault(
        "an element shorter than the piece, taper, a loose wrap, or too little time to warm the ends",
        (
            Change("Centre the piece in the element"),
            Change("Wrap it tighter"),
            Change("Press it longer", Direction.LONGER),
            Change("Make the image smaller"),
        ),
    ),
    "bare edge": Fault(
        "too little bleed, a crooked transfer, or a piece past the even zone",
        (
            Change("Give the artwork more bleed"),
            Change("Lay the transfer to registration marks"),
            Change("Centre the piece in the even zone"),
        ),
    ),
    "double image": Fault(
        "the transfer moved on opening or closing, by a lid lifted fast or loose tape",
        (
            Change("Fix the transfer better: more tape, off the image, or tack"),
            Change("Lay felt or foam over the stack"),
            Change("Open slowly and lift the lid straight"),
        ),
    ),
    "stain from elsewhere": Fault(
        "old dye in a cover sheet or in paper used before",
        (
            Change("Put fresh paper on both sides"),
            Change("Clean the platen, once it is cold"),
        ),
    ),
    "blurred": Fault(
        "too long, too hot, cooled slowly, or moisture",
        (
            Change("Cool it faster, as far as the blank’s sheet allows; never glass in water"),
            Change("Press it shorter", Direction.SHORTER),
            Change("Press it cooler", Direction.COOLER),
        ),
    ),
    "blowout": Fault(
        "paper that stops short, dye past the edge, or moisture",
        (
            Change("Let the paper reach past every edge"),
            Change("Trim the transfer"),
            Change("Dry the blank and the transfer"),
        ),
    ),
    "yellow or brown": Fault(
        "too hot or too long, bare coating left uncovered, brightened cloth, or a dirty platen",
        (
            Change("Cover the bare coating with paper"),
            Change("Clean the platen, once it is cold"),
            Change("Press it cooler", Direction.COOLER),
            Change("Press it shorter", Direction.SHORTER),
        ),
    ),
    "wrong colour": Fault(
        "the profile, the ink or the paper setting; time either way, on which makers disagree",
        (
            Change("Compare with the colour chart"),
            Change("Put the printer right first: profile, ink and paper setting"),
            Change("Then press a ladder of times", Direction.TIME_BOTH_WAYS),
        ),
    ),
    "banding": Fault(
        "clogged nozzles, the print head’s alignment or the paper setting: never the press",
        (
            Change("Print a nozzle check"),
            Change("Align the print head"),
            Change("Check the paper setting"),
        ),
    ),
    "dotted tracks": Fault(
        "the printer’s rollers in heavy ink, damp paper or a wrong paper setting",
        (
            Change("Check the paper setting"),
            Change("Lay down less ink"),
            Change("Let the paper and the print dry"),
        ),
    ),
    "specks": Fault(
        "lint, static and plastic bags",
        (
            Change("Lint-roll all that the platen touches"),
            Change("Pre-press for a few seconds"),
        ),
    ),
    "steam spots": Fault(
        "moisture in the board, the cloth or the paper",
        (
            Change("Pre-press to drive the moisture out"),
            Change("Use absorbent paper"),
            Change("Warm the paper first"),
        ),
    ),
    "press lines": Fault(
        "the edge of platen or paper, pressure, or heat on polyester",
        (
            Change("Put foam under the print, smaller than the platen"),
            Change("Use paper with torn edges"),
            Change("Press it lighter"),
            Change("Press it cooler", Direction.COOLER),
        ),
    ),
    "tape mark": Fault(
        "tape on the image, or adhesive past its limit",
        (
            Change("Move the tape off the image"),
            Change("Use another tape that bears more heat"),
            Change("Use smaller pieces of tape"),
        ),
    ),
    "paper stuck": Fault(
        "a coating softer than the setting, or too hot",
        (
            Change("Press it cooler", Direction.COOLER),
            Change("Press it shorter", Direction.SHORTER),
            Change("Peel it warm"),
            Change("Test the lot"),
        ),
    ),
    "bowed": Fault(
        "heat on one side, or cooled loose",
        (
            Change("Cool it flat under a weight"),
            Change("Press it shorter", Direction.SHORTER),
            Change("Heat both faces"),
        ),
    ),
    "cracked": Fault(
        "sudden cooling, pressure in one point, or a piece off centre",
        (
            Change("Press it lighter"),
            Change("Pad it"),
            Change("Centre it"),
            Change("Cool it slowly and dry"),
        ),
    ),
    "lifts": Fault(
        "too cool, short or light, the wrong peel, a seam, softener or finish on the cloth; "
        "more of everything is not a cure",
        (
            Change("Peel as the film’s sheet says"),
            Change("Pre-press the cloth"),
            Change("Press it firmer"),
            Change("Press it a second time after peeling, as the film’s sheet says"),
        ),
    ),
    "dye rises through": Fault(
        "dyed polyester under a transfer",
        (
            Change("Press it cooler", Direction.COOLER),
            Change("Use a film that blocks the dye"),
            Change("Use another cloth"),
        ),
    ),
    "fades in use": Fault(
        "a soft coating, the dishwasher, sun on the coating, or too little pressing",
        (
            Change("Give a care card that a test of your own bears out"),
            Change("Use a blank with a harder coating"),
            Change("Sell it for indoors only"),
        ),
    ),
}
"""By the defect’s one word."""

TOO_LITTLE: Final = ("pale all over", "lifts")
"""Defects that speak first for too little heat or time."""
TOO_MUCH: Final = ("yellow or brown", "blurred", "paper stuck", "dye rises through")
"""Defects that speak first for too much of them."""
