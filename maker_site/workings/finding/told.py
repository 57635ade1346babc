"""What one blank's pressings tell: each setting counted, its pressings left out; light to keep and to take up again."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date
from typing import TYPE_CHECKING, Final

from maker_site.frozen import frozen
from maker_site.records.gist import BlankGist
from maker_site.workings.evidence import Evidence, Setting
from maker_site.workings.starting_point import telling
from maker_site.workings.wilson import Interval, interval

if TYPE_CHECKING:  # all kinds of records are slow to import
    from maker_site.records import Blank

ENOUGH: Final = 2
"""Places to begin of which one is the blank's own: nothing that other blanks tell comes before these."""


@frozen
class Told:
    """A setting and what came of it; named as `Evidence` is."""

    setting: Setting
    pressed: int
    good: int
    last_used: date
    projects: tuple[str, ...]

    @property
    def interval(self) -> Interval:
        """The 95 % interval of the true share of good pieces."""
        found = interval(self.good, self.pressed)
        assert found is not None
        return found


@frozen
class Teller:
    """A blank and what it tells those of its substrate, on whatever press."""

    blank: BlankGist
    telling: tuple[Told, ...]
    leans: bool
    """Where to begin with it may rest on what other blanks tell."""


def told(groups: Iterable[Evidence]) -> tuple[Told, ...]:
    """Return what the settings of one blank tell, in their order."""
    return tuple(Told(each.setting, each.pressed, each.good, each.last_used, each.projects) for each in groups)


def telling_on_any(groups: Sequence[Evidence]) -> tuple[Told, ...]:
    """Return those of one blank's settings that count for another blank on any one press.

    These are the ones that count whatever the press (`telling`), and by method and press the best good one: where
    to begin on one press minds only settings that can be carried to it.
    """
    kept = {id(each) for each in telling(groups)}
    best: dict[tuple[str, str], Evidence] = {}
    for each in groups:  # best first
        if each.good:
            best.setdefault((each.setting.method, each.setting.press), each)
    kept |= {id(each) for each in best.values()}
    return told(each for each in groups if id(each) in kept)


def teller(gist: BlankGist, groups: Sequence[Evidence]) -> Teller:
    """Return what a blank tells, of all its settings."""
    return Teller(gist, telling_on_any(groups), leans(gist, groups))


def leans(blank: BlankGist | Blank, groups: Sequence[Evidence]) -> bool:
    """Tell whether where to begin with a blank may rest on what other blanks tell."""
    own = sum(1 for each in groups if each.good and each.setting.method == blank.method)
    has_sheet = blank.sheet is not None and bool(blank.sheet.temperature or blank.sheet.time)
    return own == 0 or own + has_sheet < ENOUGH
