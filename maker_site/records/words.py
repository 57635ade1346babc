"""The trade's words: the ones a record may use, and the other names makers give them."""

from __future__ import annotations

from typing import Final

METHODS: Final = ("sublimation", "heat-transfer vinyl", "film transfer")
"""How the picture gets onto the blank."""

SUBSTRATES: Final = (
    "aluminium",
    "steel",
    "ceramic",
    "glass",
    "slate",
    "stone",
    "hardboard",
    "wood",
    "acrylic",
    "polyester",
    "neoprene",
    "leatherette",
    "cotton",
    "felt",
    "canvas",
)
"""The starter set; the list is open, so another word is taken as it is."""

SUBSTRATE_SPELLINGS: Final = {
    "aluminum": "aluminium",
    "alumnium": "aluminium",
    "mdf": "hardboard",
    "leather-look": "leatherette",
}
"""Other spellings that mean one of the starter set."""

PRESS_KINDS: Final = ("flat clamshell", "flat swing-away", "mug", "cap", "hand press", "oven")
"""A setting is never called comparable across these."""

SUPPLY_KINDS: Final = (
    "ink",
    "transfer paper",
    "vinyl",
    "film",
    "tape",
    "protective paper",
    "cover sheet",
    "pad",
    "packaging",
    "other",
)

COATINGS: Final = ("soft", "hard")
PEELS: Final = ("hot", "warm", "cold")
COOLS: Final = ("air", "fan", "cold plate", "flat", "flat under weight", "water")
DIFFICULTIES: Final = ("easy", "medium", "hard")

FACES: Final = ("print up", "print down", "wrapped")
"""Which way the print looks."""
FACE_SAYINGS: Final = {"blank face down": "print up", "blank face up": "print down", "wrap": "wrapped"}
"""Other sayings of the same."""
UNCLEAR_FACES: Final = ("up", "down", "face up", "face down")
"""Used both ways by makers, so kept as written and questioned."""

COLOURS: Final = {
    # CSS Color Module Level 4, named colours
    "black": "000000",
    "white": "ffffff",
    "grey": "808080",
    "silver": "c0c0c0",
    "red": "ff0000",
    "maroon": "800000",
    "orange": "ffa500",
    "gold": "ffd700",
    "yellow": "ffff00",
    "green": "008000",
    "teal": "008080",
    "blue": "0000ff",
    "navy": "000080",
    "purple": "800080",
    "pink": "ffc0cb",
    "brown": "a52a2a",
}
"""Colours by name, as red, green and blue in hexadecimal."""

STACK_LAYERS: Final = ("pad", "protective paper", "transfer", "blank", "tape", "cover sheet")
"""Words for the layers of a stack, beside the ids of supplies."""

DEFECTS: Final[dict[str, tuple[str, ...]]] = {
    "pale all over": ("faded", "dull", "washed out", "pale"),
    "pale in one place": ("patchy", "cold spot"),
    "pale at top or bottom": ("fade", "pale at the ends", "handle side pale"),
    "bare edge": ("white line", "edge not pressed"),
    "double image": ("ghost", "shadow", "ghosted"),
    "stain from elsewhere": ("ghost from sheet", "stain"),
    "blurred": ("bleeding", "halo", "off-gassing", "blown out"),
    "blowout": ("cloud at the edge",),
    "yellow or brown": ("caramelised", "toasted", "yellowed", "scorched", "scorch"),
    "wrong colour": ("black looks brown", "black looks green", "colour off"),
    "banding": ("lines in the print",),
    "dotted tracks": ("roller marks",),
    "specks": ("blue dots", "lint"),
    "steam spots": ("mottling", "mottled"),
    "press lines": ("press box", "shine", "lines"),
    "tape mark": ("tape marks",),
    "paper stuck": ("stuck paper",),
    "bowed": ("warped",),
    "cracked": ("chipped", "snapped handle"),
    "lifts": ("vinyl lifts", "film lifts", "peeling"),
    "dye rises through": ("migration", "dye migration"),
    "fades in use": (),
}
"""A defect's one word, and the words makers also use for it."""

UNCLEAR_DEFECTS: Final = {
    "ghosting": "double image (it moved), stain from elsewhere (an old sheet) or pale all over (a fade)"
}
"""Words under which several faults hide; kept as written and questioned."""

DEFECT_BY_NAME: Final[dict[str, str]] = {
    name: defect for defect, others in DEFECTS.items() for name in (defect, *others)
}
