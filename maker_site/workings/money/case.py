"""Everything that the lines of one cost sheet are worked out from.

Inner module of the money workings.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from maker_site.frozen import frozen
from maker_site.language import say, say_n
from maker_site.records import Blank, Press, Pressing, Project, Workshop
from maker_site.records.quantities import Duration
from maker_site.workings.money.words import Figures

_MATERIALS: Final = {
    "sublimation": "transfer paper",
    "heat-transfer vinyl": "vinyl",
    "film transfer": "film",
}
"""What carries the picture, by method."""


@frozen
class WhatIf:
    """Figures to try instead of those in the records; None leaves a record's own."""

    pieces: int | None = None
    """Pieces in what is sold as one. Press and finishing minutes and supplies other than packaging go with it."""
    batch: int | None = None
    """Sold items made at one go."""
    labour: Fraction | None = None
    """Per hour."""


@frozen
class Setting:
    """The press and the time that one pressing takes."""

    press: Press | None
    time: Duration | None
    source: str
    """In words."""
    assumed: bool


@frozen
class Case:
    """One project with its figures found."""

    workshop: Workshop
    project: Project
    blank: Blank
    pressings: Sequence[Pressing]
    """The project's own, else those of the setting that it would be pressed with; oldest first."""
    coverage: Fraction | None
    """Mean over the artwork, 0 to 1; None where it was not measured."""
    what_if: WhatIf
    figures: Figures

    @property
    def method(self) -> str:
        """How the picture gets onto the blank."""
        return self.workshop.method_of(self.project)

    @property
    def material(self) -> str:
        """The kind of supply that carries the picture."""
        return _MATERIALS[self.method]

    @property
    def of_picture(self) -> tuple[str, ...]:
        """The kinds of supply that are counted with the picture, not one by one."""
        return (self.material, "ink") if self.method == "sublimation" else (self.material,)

    @property
    def pieces(self) -> int:
        """Pieces in what is sold as one."""
        return self.what_if.pieces or self.project.pieces

    def times_pieces(self, sum_: str) -> str:
        """Return the words of a sum for a cost that every piece has."""
        if self.pieces == 1:
            return sum_
        return say_n("{sum} × {n} piece", "{sum} × {n} pieces", self.pieces, sum=sum_)

    def times_pieces_instead(self, sum_: str) -> str:
        """Return the words of a sum that is scaled to another count than the record's."""
        return say_n(
            "{sum} × {n} piece instead of {written}",
            "{sum} × {n} pieces instead of {written}",
            self.pieces,
            sum=sum_,
            written=self.project.pieces,
        )

    def over_at_once(self, sum_: str) -> str:
        """Return the words of a sum for a cost that pieces pressed together share."""
        return sum_ if self.at_once == 1 else say("{sum} ÷ {count} at once", sum=sum_, count=self.at_once)

    def over_batch(self, sum_: str) -> str:
        """Return the words of a sum for a cost that is shared over the batch."""
        return say("{sum} ÷ batch of {count}", sum=sum_, count=self.batch)

    @property
    def scale(self) -> Fraction:
        """How much larger the sold item is than the record's; 1 unless another count is tried."""
        return Fraction(self.pieces, self.project.pieces)

    @property
    def batch(self) -> int:
        """Sold items made at one go; 1 where nobody wrote it."""
        return self.what_if.batch or self.project.batch or 1

    @property
    def batch_assumed(self) -> tuple[str, ...]:
        """Words for a batch that nobody wrote."""
        return () if self.what_if.batch or self.project.batch else (say("made one at a time"),)

    @property
    def at_once(self) -> int:
        """Pieces in the press together: the project's, else the latest pressing's that says, else 1."""
        return self.project.at_once or self._at_once_logged or 1

    @property
    def at_once_assumed(self) -> tuple[str, ...]:
        """Words for a count that nobody wrote."""
        return () if self.project.at_once or self._at_once_logged else (say("pressed one at a time"),)

    @property
    def _at_once_logged(self) -> int | None:
        return next((each.at_once for each in reversed(self.pressings) if each.at_once), None)

    @property
    def stack(self) -> tuple[str, ...]:
        """The project's stack, else that of its latest pressing that has one; empty where nobody wrote one."""
        if self.project.stack:
            return self.project.stack
        return next((each.stack for each in reversed(self.pressings) if each.stack), ())

    @property
    def setting(self) -> Setting:
        """The latest pressing's with anything good, else the latest's, else the supplier's sheet on the only press."""
        good = [each for each in self.pressings if each.good] or self.pressings
        if good:
            latest = good[-1]
            source = say("pressed {day}", day=self.figures.day(latest.date))
            return Setting(self.workshop.presses.get(latest.press), latest.time, source, assumed=False)
        presses = tuple(self.workshop.presses.values())
        sheet = self.blank.sheet
        return Setting(
            presses[0] if len(presses) == 1 else None,
            sheet.time.high if sheet and sheet.time else None,
            say("the supplier's sheet, nothing pressed yet"),
            assumed=True,
        )
