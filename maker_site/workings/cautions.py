"""The cautions that go with a setting. People can be burnt.

Their words are `marked`, in English; where they are shown they are said: ``say(caution.words)``.
"""

from __future__ import annotations

from typing import Final

from maker_site.frozen import frozen
from maker_site.language import marked

CLOSING: Final = marked(
    "The equipment’s manual, local codes and licensed practice come first; "
    "these are the maker’s notes, not an instruction to others."
)
"""Said at the end of every list of cautions."""


@frozen
class Caution:
    """One hazard, in a word and a sentence or two."""

    kind: str
    """hot, pinch, fumes, ptfe, electrical, fire, breakage, steam, food, dishwasher, sun, child, rights or limit."""
    title: str
    words: str
    short: str
    """A few words for a small printed card."""


_HOT: Final = Caution(
    "hot",
    marked("Hot surfaces"),
    marked(
        "Platen, blank and cover sheet stay hot after pressing; metal and ceramic look cool. Gloves for that heat, "
        "a marked heat-proof rest, children and pets out."
    ),
    marked("Hot platen, blank and cover: gloves"),
)
_PINCH: Final = Caution(
    "pinch",
    marked("Pinch points"),
    marked("Hands clear before closing, lid held, no one reaches across; a stable bench."),
    marked("Hands clear before closing"),
)
_FUMES: Final = Caution(
    "fumes",
    marked("Fumes"),
    marked(
        "Lead the air out of doors. Stop if it smells sharp or smokes; press no plastic that is not sold for pressing; "
        "read the ink’s and film’s safety sheets."
    ),
    marked("Fumes: air led out of doors"),
)
_FUMES_MORE: Final = Caution(
    "fumes",
    marked("Fumes: more than usual"),
    marked(
        "This material gives off more when heated: strong ventilation out of doors, and stop if it smells sharp or "
        "smokes. Press only what is sold for pressing; read the safety sheets."
    ),
    marked("Strong fumes: air led out of doors"),
)
_PTFE: Final = Caution(
    "ptfe",
    marked("PTFE sheet"),
    marked(
        "Stay under its limit, about 260 °C (500 °F); overheated PTFE gives off harmful fumes. "
        "No birds in the building’s air."
    ),
    marked("PTFE under 260 °C; no birds"),
)
_ELECTRICAL: Final = Caution(
    "electrical",
    marked("Mains power"),
    marked(
        "An earthed outlet of its own, no light extension lead or strip, cord sound. A licensed electrician decides."
    ),
    marked("Earthed outlet of its own"),
)
_FIRE: Final = Caution(
    "fire",
    marked("Fire"),
    marked(
        "Never unattended; paper and cloth clear; an extinguisher fit for mains within reach; off and unplugged after."
    ),
    marked("Never unattended; unplug after"),
)
_BREAKAGE: Final = Caution(
    "breakage",
    marked("Breakage"),
    marked("Eye protection, even pressure, no sudden cooling. Follow the blank’s sheet; never put hot glass in water."),
    marked("Eye protection; no sudden cooling"),
)
_STEAM: Final = Caution(
    "steam",
    marked("Steam"),
    marked("It escapes sideways: face and wrists clear of the gap."),
    marked("Steam escapes sideways"),
)
_FOOD: Final = Caution(
    "food",
    marked("Food contact"),
    marked("Image outside, away from lip and food, unless the blank’s maker states food contact in writing."),
    marked("No image at lip or food"),
)
_DISHWASHER: Final = Caution(
    "dishwasher",
    marked("Dishwasher, oven, microwave"),
    marked("Only as the blank’s sheet or a test of your own says."),
    marked("Dishwasher only as the sheet says"),
)
_SUN: Final = Caution(
    "sun",
    marked("Sun and outdoors"),
    marked("Indoors unless rated; test for weeks against a twin kept in the dark."),
    marked("Indoors unless rated"),
)

_CHILDREN: Final = Caution(
    "child",
    marked("Made for a child"),
    marked("Small parts and cords are hazards; local toy and labelling law applies. Keep the lot with the sale."),
    marked("For a child: small parts, labels"),
)
_RIGHTS: Final = Caution(
    "rights",
    marked("Rights in the artwork"),
    marked("Not the maker’s own drawing: a licence or written permission comes before any sale."),
    marked("Artwork: permission before sale"),
)

_MORE_FUMES: Final = ("neoprene", "acrylic", "leatherette")
_BREAKS: Final = ("glass", "slate", "ceramic", "stone")
_DAMP: Final = ("hardboard", "wood", "cotton", "canvas", "polyester", "felt")
_TABLEWARE: Final = ("ceramic", "glass")
_OUTDOOR: Final = ("aluminium", "steel", "slate", "stone")


def cautions(
    substrate: str,
    *,
    ptfe: bool,
    pre_press: bool = False,
    water: bool = False,
    child: bool = False,
    others_artwork: bool = False,
    over_limit: str | None = None,
) -> tuple[Caution, ...]:
    """Return the cautions to show beside a setting, the gravest first.

    `ptfe`: a PTFE sheet is in the stack. `over_limit`: a sentence where the setting is above the stack's weakest
    limit, said already. `child`: the piece is made for one. `others_artwork`: the artwork is not the maker's own.
    The words are those of common practice and the trade's articles; local rules go before them.
    """
    found = (
        [Caution("limit", marked("Above a limit"), over_limit, marked("Above what the stack bears: set less"))]
        if over_limit
        else []
    )
    found += [_HOT, _PINCH, _FUMES_MORE if substrate in _MORE_FUMES else _FUMES]
    if ptfe:
        found.append(_PTFE)
    found += [_ELECTRICAL, _FIRE]
    if substrate in _BREAKS:
        found.append(_BREAKAGE)
    if pre_press or water or substrate in _DAMP:
        found.append(_STEAM)
    if substrate in _TABLEWARE:
        found += [_FOOD, _DISHWASHER]
    if substrate in _OUTDOOR:
        found.append(_SUN)
    if child:
        found.append(_CHILDREN)
    if others_artwork:
        found.append(_RIGHTS)
    return tuple(found)
