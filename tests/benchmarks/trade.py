"""The tables that generated workshops are drawn from: what is pressed, how, and what goes wrong.

Figures are common practice, no source: they need only be of a likely size and differ from each other.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Piece:
    """A kind of piece that a workshop presses."""

    substrate: str
    nouns: tuple[str, ...]
    method: str
    sizes: tuple[str, ...]
    """As a maker writes them."""
    celsius: tuple[int, int]
    """Lowest and highest usual setting."""
    seconds: tuple[int, int]
    """Shortest and longest usual time."""
    faces: tuple[str, ...]
    cool: str
    defects: tuple[str, ...]
    section: str
    """Where it stands on the menu."""


PIECES = (
    Piece(
        "slate",
        ("coaster", "place mat", "clock face"),
        "sublimation",
        ("100 x 100 mm", "4 x 4 in", "300 x 200 mm"),
        (190, 205),
        (240, 420),
        ("print up",),
        "flat",
        ("pale all over", "bare edge", "cracked"),
        "Home",
    ),
    Piece(
        "ceramic",
        ("mug", "tile", "trinket dish"),
        "sublimation",
        ("200 x 90 mm", "108 x 108 mm"),
        (180, 205),
        (150, 300),
        ("wrapped",),
        "air",
        ("pale at top or bottom", "blurred", "yellow or brown"),
        "Kitchen",
    ),
    Piece(
        "aluminium",
        ("plate", "key tag", "bookmark"),
        "sublimation",
        ("A5", "60 x 30 mm", "11 x 5 in"),
        (190, 205),
        (45, 75),
        ("print down", "print up"),
        "flat under weight",
        ("double image", "specks", "bowed"),
        "Keepsakes",
    ),
    Piece(
        "hardboard",
        ("coaster", "jigsaw", "clipboard"),
        "sublimation",
        ("95 mm round", "A4"),
        (190, 205),
        (45, 90),
        ("print down",),
        "flat under weight",
        ("bowed", "steam spots", "blowout"),
        "Home",
    ),
    Piece(
        "polyester",
        ("tea towel", "pennant", "cushion cover"),
        "sublimation",
        ("480 x 700 mm", "40 x 40 cm"),
        (190, 205),
        (30, 60),
        ("print down",),
        "air",
        ("press lines", "wrong colour", "specks"),
        "Kitchen",
    ),
    Piece(
        "neoprene",
        ("mouse mat", "can cooler"),
        "sublimation",
        ("235 x 195 mm",),
        (180, 200),
        (40, 60),
        ("print down",),
        "air",
        ("press lines", "pale in one place"),
        "Desk",
    ),
    Piece(
        "cotton",
        ("tote", "apron", "flour bag"),
        "heat-transfer vinyl",
        ("380 x 420 mm", "250 x 250 mm"),
        (140, 165),
        (8, 20),
        ("print down",),
        "air",
        ("lifts", "press lines"),
        "Carry",
    ),
    Piece(
        "leatherette",
        ("patch", "luggage label"),
        "film transfer",
        ("70 x 50 mm",),
        (130, 150),
        (10, 20),
        ("print down",),
        "cold plate",
        ("lifts", "press lines", "paper stuck"),
        "Carry",
    ),
)

SUBJECTS = (
    "Heron",
    "Beetroot",
    "Weir",
    "Skep",
    "Wheat sheaf",
    "Oar blade",
    "Trellis",
    "Broad bean",
    "Mackerel",
    "Sundial",
    "Plum",
    "Lapwing",
    "Bunting",
    "Seed head",
    "Barge",
    "Comma moth",
    "Gooseberry",
    "Lock gate",
)
MANNERS = (
    "woodcut",
    "line drawing",
    "stencil",
    "dotted",
    "two colour",
    "map",
    "silhouette",
    "pattern",
    "botanical",
    "badge",
)
OCCASIONS = (
    "birthday",
    "wedding",
    "village fair",
    "retirement",
    "regatta",
    "honey show",
    "new home",
    "harvest supper",
)
SUPPLIERS = (
    "Marlpit Blanks",
    "Tidewell Ware",
    "Lumm Trade Blanks",
    "Northrigg Sheet & Fibre",
    "Sallow Mill",
    "Quern Supply",
)
NOTES = (
    "lid closed softly",
    "second piece straight after the first",
    "new pad",
    "spent paper still full of colour",
    "damp morning",
    "",
    "",
    "",
)
