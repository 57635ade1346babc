"""Which hatching stands for which substrate, and how each hatching is drawn: data, nothing else.

The idea is the section lining of ISO 128 (different lining for different materials, 45 degree lines for metal);
the tiles are our own drawing, chosen so that no two look alike when copied in black and white.
"""

from types import MappingProxyType

from maker_site.frozen import frozen


@frozen
class Hatch:
    """One repeating tile of a hatching, in user units."""

    family: str
    """Name of the kind of material, in plain words."""
    width: float
    height: float
    rules: tuple[float, ...] = ()
    """Lines without end down the tile, by their x."""
    strokes: tuple[tuple[float, float, str], ...] = ()
    """Strokes by their first point and the rest of their path, relative to it."""
    specks: tuple[tuple[float, float], ...] = ()
    """Dots by their middle."""
    rings: tuple[tuple[float, float, float], ...] = ()
    """Open circles: x, y, radius."""
    turn: int = 0
    """Degrees the whole hatching is turned, clockwise."""


NEUTRAL = "other material"
"""Family of a substrate that the table does not know."""

_LIGHT_METAL = Hatch("light metal", 6, 6, rules=(3,), turn=45)
_IRON_METAL = Hatch("iron metal", 10, 10, rules=(2.5, 5.5), turn=45)
_CERAMIC = Hatch("ceramic", 11, 7, rules=(3,), specks=((8.5, 3.5),), turn=-45)
_GLASS = Hatch(
    "glass",
    24,
    20,
    strokes=(
        (3, 9, "l5-6"),
        (6.5, 10.5, "l6.5-8"),
        (12, 10, "l4-5"),
        (15, 19, "l5-6"),
        (18.5, 20.5, "l6.5-8"),
        (0, 20, "l4-5"),
    ),
)
_SLATE = Hatch(
    "slate",
    24,
    12,
    strokes=((0, 2, "h9"), (13, 2, "h11"), (2, 6, "h17"), (0, 10, "h6"), (10, 10, "h11")),
)
_STONE = Hatch(
    "stone",
    24,
    20,
    strokes=((3, 8, "l3.5-5 4 5z"), (15, 17.5, "l3-4.5 3.5 4.5z")),
    specks=((17, 5), (21.5, 8), (5, 14), (10.5, 17)),
)
_WOOD = Hatch(
    "wood",
    28,
    12,
    strokes=(
        (0, 2, "c7-2 11 2.4 16 1.4s8-2.8 12-1.4"),
        (0, 6, "c5 2 9 1.4 14 .2s10-1.2 14-.2"),
        (0, 10, "c8 1.6 12-1.8 18-1s8 .4 10 1"),
    ),
)
_WOOD_FIBRE = Hatch(
    "wood fibre",
    20,
    18,
    strokes=(
        (2, 3, "l4 1.5"),
        (9, 2, "l1.5 4"),
        (15, 3.5, "l4-1.5"),
        (3.5, 9, "l1.5 4"),
        (9, 10, "l4-2"),
        (16, 8, "l1 4"),
        (2, 16, "l4-1"),
        (9.5, 14, "l3 2.5"),
        (15, 16.5, "l4-.5"),
    ),
)
_WOVEN = Hatch(
    "woven cloth",
    12,
    12,
    strokes=(
        (1, 1.5, "h4"),
        (1, 4.5, "h4"),
        (7.5, 1, "v4"),
        (10.5, 1, "v4"),
        (1.5, 7, "v4"),
        (4.5, 7, "v4"),
        (7, 7.5, "h4"),
        (7, 10.5, "h4"),
    ),
)
_KNITTED = Hatch("knitted cloth", 8, 7, strokes=((0, 1.5, "l4 4 4-4"),))
_RUBBER = Hatch("rubber", 8, 8, rules=(2.5, 5.5), strokes=((0, 4, "h8"),), turn=45)
_FOAM = Hatch("foam", 13, 12, rings=((3.25, 3, 2.1), (9.75, 9, 2.1)), specks=((9.75, 3), (3.25, 9)))
_PLASTIC = Hatch("plastic", 9, 9, rules=(4.5,), strokes=((0, 4.5, "h9"),), turn=45)
_LEATHER = Hatch(
    "leather", 14, 12, strokes=((0, 1.5, "a7 5.5 0 0 0 14 0"), (-7, 7.5, "a7 5.5 0 0 0 14 0a7 5.5 0 0 0 14 0"))
)
_OTHER = Hatch(NEUTRAL, 8, 8, specks=((2, 2), (6, 6)))

HATCHES = MappingProxyType(
    {
        hatch.family: hatch
        for hatch in (
            _LIGHT_METAL,
            _IRON_METAL,
            _CERAMIC,
            _GLASS,
            _SLATE,
            _STONE,
            _WOOD,
            _WOOD_FIBRE,
            _WOVEN,
            _KNITTED,
            _RUBBER,
            _FOAM,
            _PLASTIC,
            _LEATHER,
            _OTHER,
        )
    }
)
"""Every hatching by the name of its family."""

SUBSTRATES = MappingProxyType(
    {
        "aluminium": "light metal",
        "aluminum": "light metal",
        "coated aluminium": "light metal",
        "brass": "light metal",
        "copper": "light metal",
        "metal": "light metal",
        "steel": "iron metal",
        "stainless steel": "iron metal",
        "enamelled steel": "iron metal",
        "iron": "iron metal",
        "ceramic": "ceramic",
        "porcelain": "ceramic",
        "earthenware": "ceramic",
        "tile": "ceramic",
        "glass": "glass",
        "crystal": "glass",
        "slate": "slate",
        "stone": "stone",
        "sandstone": "stone",
        "marble": "stone",
        "wood": "wood",
        "plywood": "wood",
        "bamboo": "wood",
        "cork": "wood fibre",
        "hardboard": "wood fibre",
        "mdf": "wood fibre",
        "board": "wood fibre",
        "paper": "wood fibre",
        "card": "wood fibre",
        "cotton": "woven cloth",
        "linen": "woven cloth",
        "canvas": "woven cloth",
        "jute": "woven cloth",
        "felt": "woven cloth",
        "polyester": "knitted cloth",
        "polycotton": "knitted cloth",
        "fleece": "knitted cloth",
        "nylon": "knitted cloth",
        "rubber": "rubber",
        "silicone": "rubber",
        "neoprene": "foam",
        "foam": "foam",
        "acrylic": "plastic",
        "polymer": "plastic",
        "polycarbonate": "plastic",
        "plastic": "plastic",
        "leather": "leather",
        "leatherette": "leather",
    }
)
"""Family of each substrate we know by name; an open list, the rest is NEUTRAL."""


def family_of(substrate: str) -> str:
    """The family whose hatching stands for SUBSTRATE (any case, spaces trimmed)."""
    return SUBSTRATES.get(" ".join(substrate.lower().split()), NEUTRAL)


def hatch_of(substrate: str) -> Hatch:
    """The hatching that stands for SUBSTRATE."""
    return HATCHES[family_of(substrate)]
