"""Where to begin, worked out of what is kept: of gists, which have what is needed of a record."""

from __future__ import annotations

import marshal
from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING, cast

from maker_site.writer.answers_kept import Kept, understood

if TYPE_CHECKING:
    from maker_site.records import Workshop
    from maker_site.workings.evidence import Evidence
    from maker_site.workings.finding.told import Teller


def bench_of(bench: object) -> Workshop:
    """Return gists as a workshop: they have what settings are worked out from."""
    return cast("Workshop", bench)


def near(blank: str, groups: Sequence[Evidence], tellers: Mapping[str, Teller]) -> list[Evidence]:
    """Return what counts for a blank: all of its own, of those alike what they tell."""
    others = (each for other, teller in tellers.items() if other != blank for each in teller.telling)
    return [*groups, *cast("Iterable[Evidence]", others)]


def points_on(kept: Kept, blank: str, press: str) -> Sequence[Mapping[str, object]]:
    """Return the facts of where to begin with a blank on one press, out of what is kept; both must be known."""
    from maker_site.records.gist import Bench
    from maker_site.workings.evidence import evidence
    from maker_site.workings.finding.rows import MOST_POINTS, starts
    from maker_site.workings.starting_point import starting_points

    tellers: dict[str, Teller] = understood(kept.part("tellers", marshal.loads(kept.part("substrates"))[blank]))
    presses = understood(kept.part("press gists"))
    bench = bench_of(Bench({name: each.blank for name, each in tellers.items()}, presses, {}))
    held = kept.find("log", blank)
    rows = [row for each in understood(held).values() for row in each] if held else []
    record = bench.blanks[blank]
    groups = evidence(rows, {blank: record}, bench.presses)
    found = starting_points(record, bench, near(blank, groups, tellers), bench.presses[press], most=MOST_POINTS)
    return starts(record, found)
