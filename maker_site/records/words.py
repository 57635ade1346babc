"""The trade's words: the ones a record may use, and the other names makers give them.

The words stand here, in records and in all data as they are typed, in English, and are compared as such. They are
`marked` for translators; where one is shown, and only there, it is said: ``say(blank.substrate)``. A word that is not
known here is the maker's own and comes back as it is. A difficulty is said by `difficulty_said`, since “hard” is a
coating too; the first letter is made large by `with_capital`, after the word is said.
"""

from __future__ import annotations

from typing import Final

from maker_site.language import marked, say_in

METHODS: Final = (marked("sublimation"), marked("heat-transfer vinyl"), marked("film transfer"))
"""How the picture gets onto the blank."""

SUBSTRATES: Final = (
    marked("aluminium"),
    marked("steel"),
    marked("ceramic"),
    marked("glass"),
    marked("slate"),
    marked("stone"),
    marked("hardboard"),
    marked("wood"),
    marked("acrylic"),
    marked("polyester"),
    marked("neoprene"),
    marked("leatherette"),
    marked("cotton"),
    marked("felt"),
    marked("canvas"),
)
"""The starter set; the list is open, so another word is taken as it is."""

SUBSTRATE_SPELLINGS: Final = {
    "aluminum": "aluminium",
    "alumnium": "aluminium",
    "mdf": "hardboard",
    "leather-look": "leatherette",
}
"""Other spellings that mean one of the starter set."""

PRESS_KINDS: Final = (
    marked("flat clamshell"),
    marked("flat swing-away"),
    marked("mug"),
    marked("cap"),
    marked("hand press"),
    marked("oven"),
)
"""A setting is never called comparable across these."""

SUPPLY_KINDS: Final = (
    marked("ink"),
    marked("transfer paper"),
    marked("vinyl"),
    marked("film"),
    marked("tape"),
    marked("protective paper"),
    marked("cover sheet"),
    marked("pad"),
    marked("packaging"),
    marked("other"),
)

COATINGS: Final = (marked("soft"), marked("hard"))
PEELS: Final = (marked("hot"), marked("warm"), marked("cold"))
COOLS: Final = (
    marked("air"),
    marked("fan"),
    marked("cold plate"),
    marked("flat"),
    marked("flat under weight"),
    marked("water"),
)
DIFFICULTIES: Final = ("easy", "medium", "hard")

FACES: Final = (marked("print up"), marked("print down"), marked("wrapped"))
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

STACK_LAYERS: Final = (
    marked("pad"),
    marked("protective paper"),
    marked("transfer"),
    marked("blank"),
    marked("tape"),
    marked("cover sheet"),
)
"""Words for the layers of a stack, beside the ids of supplies."""

DEFECTS: Final[dict[str, tuple[str, ...]]] = {
    marked("pale all over"): ("faded", "dull", "washed out", "pale"),
    marked("pale in one place"): ("patchy", "cold spot"),
    marked("pale at top or bottom"): ("fade", "pale at the ends", "handle side pale"),
    marked("bare edge"): ("white line", "edge not pressed"),
    marked("double image"): ("ghost", "shadow", "ghosted"),
    marked("stain from elsewhere"): ("ghost from sheet", "stain"),
    marked("blurred"): ("bleeding", "halo", "off-gassing", "blown out"),
    marked("blowout"): ("cloud at the edge",),
    marked("yellow or brown"): ("caramelised", "toasted", "yellowed", "scorched", "scorch"),
    marked("wrong colour"): ("black looks brown", "black looks green", "colour off"),
    marked("banding"): ("lines in the print",),
    marked("dotted tracks"): ("roller marks",),
    marked("specks"): ("blue dots", "lint"),
    marked("steam spots"): ("mottling", "mottled"),
    marked("press lines"): ("press box", "shine", "lines"),
    marked("tape mark"): ("tape marks",),
    marked("paper stuck"): ("stuck paper",),
    marked("bowed"): ("warped",),
    marked("cracked"): ("chipped", "snapped handle"),
    marked("lifts"): ("vinyl lifts", "film lifts", "peeling"),
    marked("dye rises through"): ("migration", "dye migration"),
    marked("fades in use"): (),
}
"""A defect's one word, and the words makers also use for it."""

UNCLEAR_DEFECTS: Final = {
    marked("ghosting"): marked("double image (it moved), stain from elsewhere (an old sheet) or pale all over (a fade)")
}
"""Words under which several faults hide; kept as written and questioned."""

DEFECT_BY_NAME: Final[dict[str, str]] = {
    name: defect for defect, others in DEFECTS.items() for name in (defect, *others)
}


def difficulty_said(word: str) -> str:
    """Return a difficulty in the language spoken now; a word that is none comes back as it is."""
    said = {
        "easy": say_in("difficulty", "easy"),
        "medium": say_in("difficulty", "medium"),
        "hard": say_in("difficulty", "hard"),
    }
    return said.get(word, word)


def with_capital(said: str) -> str:
    """Return words with their first letter large and the others as they are."""
    return said[:1].upper() + said[1:]


HOTTEST_C: Final = 300
"""Degrees Celsius: no cover sheet and no blank bears it, and a bare figure above it was meant in F. Common practice, no
source."""
