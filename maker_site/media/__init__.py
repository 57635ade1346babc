"""The maker's photos, from camera file to web pictures: look, plan, make.

    probe(path) -> Probe                          header only
    plan(probe) -> PictureSet                     arithmetic only: names and exact sizes, for the pages
    make(path, picture_set, folder) -> paths      one decode, every file
    sound(path)                                   does it decode to its end?

What is wrong with a file is a `PictureProblem`. The picture library is imported when it is first needed.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

from maker_site.media.pictures import Derivative, PictureSet, Probe
from maker_site.media.planning import plan
from maker_site.media.problems import PictureProblem
from maker_site.media.recipe import RECIPE, Recipe

if TYPE_CHECKING:
    from maker_site.media.deriving import make
    from maker_site.media.probing import probe
    from maker_site.media.soundness import sound

__all__ = [
    "RECIPE",
    "Derivative",
    "PictureProblem",
    "PictureSet",
    "Probe",
    "Recipe",
    "make",
    "plan",
    "probe",
    "sound",
]

_LATE = {"make": "deriving", "probe": "probing", "sound": "soundness"}


def __getattr__(name: str) -> object:
    if name not in _LATE:
        msg = f"module {__name__!r} has no attribute {name!r}"
        raise AttributeError(msg)
    return getattr(import_module(f"{__name__}.{_LATE[name]}"), name)
