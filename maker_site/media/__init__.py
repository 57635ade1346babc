"""The maker's photos, from camera file to web pictures: look, plan, make.

    probe(path) -> Probe                          header only
    plan(probe) -> PictureSet                     arithmetic only: names and exact sizes, for the pages
    make(path, picture_set, folder) -> paths      one decode, every file
    sound(path)                                   does it decode to its end?

What is wrong with a file is a `PictureProblem`. The picture library is imported when a picture is looked at, which
a make does seldom: most are known from before.
"""

from __future__ import annotations

from pathlib import Path

from maker_site.media.pictures import Derivative, PictureSet, Probe
from maker_site.media.planning import plan
from maker_site.media.problems import PictureProblem
from maker_site.media.recipe import RECIPE, Recipe

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


def probe(path: Path) -> Probe:
    """Look at the header of the picture at `path`; see `probing`. Raises `PictureProblem`."""
    from maker_site.media import probing

    return probing.probe(path)


def make(path: Path, picture_set: PictureSet, folder: Path) -> tuple[Path, ...]:
    """Make every file of the set into `folder`; see `deriving`. Raises `PictureProblem`, OSError."""
    from maker_site.media import deriving

    return deriving.make(path, picture_set, folder)


def sound(path: Path) -> None:
    """Decode the whole picture; see `soundness`. Raises `PictureProblem` where it is not sound."""
    from maker_site.media import soundness

    soundness.sound(path)
