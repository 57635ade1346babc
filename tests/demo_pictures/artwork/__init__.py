"""The demo's designs: which project has which, and how large each is pressed.

`DESIGNS` maps a project's folder to its design files, each a function that draws a `Sheet`.
"""

from __future__ import annotations

from collections.abc import Callable

from tests.demo_pictures.artwork import bakery, bees, dials, fair, garden, river, vegetables
from tests.demo_pictures.drawing import Sheet

DESIGNS: dict[str, dict[str, Callable[[], Sheet]]] = {
    "allotment-tally-coasters": {
        "beetroot": vegetables.beetroot,
        "leek": vegetables.leek,
        "squash": vegetables.squash,
        "broad-bean": vegetables.broad_bean,
    },
    "plot-holder-mug": {"trellis-wrap": garden.trellis_wrap},
    "heron-river-plate": {"heron": river.heron},
    "crust-and-crumb-tote": {"sheaf-and-loaf": bakery.sheaf_and_loaf},
    "regatta-key-tags": {"crossed-oars": river.crossed_oars},
    "fair-bunting-tea-towel": {"fair-bunting": fair.fair_bunting},
    "seed-swap-coasters": {"poppy": garden.poppy, "honesty": garden.honesty, "teasel": garden.teasel},
    "bakers-apron": {"loaf-emblem": bakery.loaf_emblem},
    "weir-mouse-mat": {"weir-contours": river.weir_contours},
    "beekeeper-charm": {"skep-and-bees": bees.skep_and_bees},
    "chopping-board-herbs": {"herbs": garden.herbs},
    "barge-leather-patch": {"narrow-boat": river.narrow_boat},
    "regatta-mug": {"rowing-eight-wrap": river.rowing_eight_wrap},
    "slate-sundial": {"sundial-face": dials.sundial_face},
    "honey-show-plate": {"honey-show": bees.honey_show},
    "test-swatch-tags": {"colour-chart": dials.colour_chart},
}
