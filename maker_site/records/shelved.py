"""Supplies by their kind: who looks for ink looks at no box, so that a box's price does not concern it."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Mapping

from maker_site.records.supply import Supply


class ByKind(Mapping[str, Supply]):
    """Supplies by id, with the ids of each kind to be asked for by themselves."""

    __slots__ = ()

    @abstractmethod
    def of_kind(self, kind: str) -> tuple[str, ...]:
        """Return the ids of the supplies of a kind, in order."""


def of_kind(supplies: Mapping[str, Supply], kind: str) -> tuple[str, ...]:
    """Return the ids of the supplies of a kind, whichever way the supplies are held."""
    if isinstance(supplies, ByKind):
        return supplies.of_kind(kind)
    return tuple(name for name, supply in supplies.items() if supply.kind == kind)
