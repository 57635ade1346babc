"""Which tutorials are like another one: by the material, and by the occasions that both suit."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from maker_site.pages.addresses import slug
from maker_site.pages.public.lists import Group
from maker_site.records import Project

MOST = 3
_LOOKED_AT = 60
"""The newest of each group are looked at, so that a tutorial takes no longer in a large archive."""


def related(
    project: Project, substrate: str, materials: Mapping[str, Group], occasions: Mapping[str, Group]
) -> Sequence[Project]:
    """Return at most three others, those with most in common first; of equal ones the newer.

    The same material counts as much as one occasion.
    """
    likeness: Counter[str] = Counter()
    others: dict[str, Project] = {}
    groups = [materials[substrate], *(occasions[key] for key in {slug(each) for each in project.occasions} if key)]
    for group in groups:
        for other in group.projects[:_LOOKED_AT]:
            if other.id != project.id:
                likeness[other.id] += 1
                others[other.id] = other
    order = {other.id: number for number, other in enumerate(materials[substrate].projects)}
    ranked = sorted(others, key=lambda each: (-likeness[each], order.get(each, len(order)), each))
    return [others[each] for each in ranked[:MOST]]
