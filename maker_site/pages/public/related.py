"""Which tutorials are like another one: by the material, and by the occasions that both suit."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from maker_site.pages.public.lists import material_address, occasion_links
from maker_site.pages.public.order import Newest
from maker_site.records import Project

MOST = 3


def related(project: Project, substrate: str, newest: Mapping[str, Newest]) -> Sequence[str]:
    """Return the ids of at most three others, those with most in common first; of equal ones the newer.

    The same material counts as much as one occasion. `newest` are the newest of each group by its address.
    """
    likeness: Counter[str] = Counter()
    days: dict[str, int] = {}
    groups = dict.fromkeys([material_address(substrate), *(each.address for each in occasion_links(project.occasions))])
    for address in groups:
        for other, day in newest[address].tutorials:
            if other != project.id:
                likeness[other] += 1
                days[other] = day
    return sorted(days, key=lambda each: (-likeness[each], -days[each], each))[:MOST]
