"""The stack: everything in the press from bottom to top, and the weakest limit in it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import Final

from maker_site.frozen import frozen
from maker_site.language import say
from maker_site.records import Blank, Supply
from maker_site.records.quantities import Temperature


@frozen
class Layer:
    """One thing in the stack."""

    kind: str
    """pad, protective paper, transfer, blank, tape, cover sheet, or another kind of supply."""
    label: str
    """Its name where it is a supply or the blank; else the word, said."""
    material: str | None
    limit: Temperature | None
    supply: str | None
    """The supply's id."""


@frozen
class Stack:
    """Layers from bottom to top."""

    layers: tuple[Layer, ...]
    written: bool
    """False for the usual stack, drawn because none was written down."""


@frozen
class Limit:
    """The weakest thing in a stack."""

    temperature: Temperature
    what: str


PTFE_LIMIT: Final = Temperature(Fraction(260), "260 C")
"""Where no limit is stated for a PTFE sheet; a maker's page gives 260 °C for continuous use, others a little less."""

_USUAL: Final[Mapping[str, tuple[str, ...]]] = {
    # common practice, no source
    "print up": ("protective paper", "transfer", "blank", "protective paper"),
    "print down": ("protective paper", "blank", "transfer", "protective paper"),
    "wrapped": ("blank", "transfer", "protective paper"),
}
_TRANSFER_KINDS: Final = ("transfer paper", "vinyl", "film")


def stack_of(
    names: Iterable[str], face: str | None, blank: Blank, supplies: Mapping[str, Supply], method: str
) -> Stack:
    """Return the stack written as `names` (words or ids of supplies), or the usual one for the face where empty."""
    written = tuple(names)
    usual = _USUAL.get(face or "", _USUAL["print down"])
    return Stack(tuple(_layer(name, blank, supplies, method) for name in written or usual), bool(written))


def weakest(stack: Stack, blank: Blank) -> Limit | None:
    """Return the lowest limit of anything in the stack, the blank included; None where nobody states one.

    A PTFE sheet without a stated limit bears `PTFE_LIMIT`: above it harmful fumes are to be feared.
    """
    limits = [Limit(layer.limit, layer.label) for layer in stack.layers if layer.limit]
    if any(_may_be_ptfe(layer) and layer.limit is None for layer in stack.layers):
        limits.append(Limit(PTFE_LIMIT, say("PTFE (the usual limit, none is written down)")))
    if blank.limit:
        limits.append(Limit(blank.limit, blank.name))
    return min(limits, key=lambda limit: limit.temperature.celsius, default=None)


def holds_ptfe(stack: Stack) -> bool:
    """Tell whether a PTFE sheet is in the stack; a cover sheet of unsaid material counts as one."""
    return any(_may_be_ptfe(layer) for layer in stack.layers)


def _may_be_ptfe(layer: Layer) -> bool:
    return "ptfe" in (layer.material or "").lower() or (layer.kind == "cover sheet" and layer.material is None)


def _layer(name: str, blank: Blank, supplies: Mapping[str, Supply], method: str) -> Layer:
    if name == "blank":
        return Layer("blank", blank.name, blank.substrate, blank.limit, None)
    if supply := supplies.get(name):
        kind = "transfer" if supply.kind in _TRANSFER_KINDS else supply.kind
        return Layer(kind, supply.name, supply.material, supply.limit, supply.id)
    if name == "transfer":
        word = {"heat-transfer vinyl": "vinyl", "film transfer": "film"}.get(method, "transfer")
        return Layer("transfer", say(word), None, None, None)
    return Layer(name, say(name), None, None, None)
