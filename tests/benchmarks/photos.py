"""Pictures from photos, against the least that the same files can cost.

    python -m tests.benchmarks.photos --photos 12 [--runs 5]

Three ways to make the same sizes in the same formats and qualities of drawn 12-megapixel JPEGs, each a whole process
on every core, in turn: what a make does, a bare loop of Pillow calls over a thread pool, and vipsthumbnail where the
machine has it, a process for each size and two at a time, as its command line is made for.
"""

import argparse
import multiprocessing
import shutil
import sys
import tempfile
from collections.abc import Iterator
from functools import partial
from pathlib import Path

import numpy as np
from PIL import Image

from maker_site.media.recipe import RECIPE

from .stopwatch import Timing, in_turn
from .tables import show

_OURS = """
import sys
from pathlib import Path
from maker_site.media import make
from maker_site.writer.gather import gather, side_by_side
root, out = map(Path, sys.argv[1:])
found = gather(root, sorted(path.name for path in root.iterdir())).pictures
for _ in side_by_side(lambda name: make(root / name, found[name], out), sorted(found)):
    pass
"""

_BARE = f"""
import os, sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from PIL import Image
root, out = map(Path, sys.argv[1:])
def work(path):
    with Image.open(path) as picture:
        high = lambda wide: round(picture.height * wide / picture.width)
        sizes = [(wide, high(wide)) for wide in {sorted(RECIPE.widths, reverse=True)}]
        picture.draft("RGB", sizes[0])
        current = picture
        for size in sizes:
            current = current.resize(size, Image.Resampling.LANCZOS)
            with (out / f"{{path.stem}}-{{size[0]}}.avif").open("wb") as file:
                current.save(file, "AVIF", quality={RECIPE.avif_quality}, speed={RECIPE.avif_speed},
                             subsampling="4:2:0", max_threads=1, autotiling=False)
            if size[0] == {RECIPE.fallback_width}:
                with (out / f"{{path.stem}}-{{size[0]}}.jpg").open("wb") as file:
                    current.save(file, "JPEG", quality={RECIPE.jpeg_quality}, subsampling="4:2:0",
                                 progressive=True, optimize=True)
with ThreadPoolExecutor(os.cpu_count()) as pool:
    list(pool.map(work, sorted(root.iterdir())))
"""

# heifsave's effort runs the other way from libavif's speed: 0 is the fastest of 9
_VIPS = f"""
cd "$1" || exit
{{
for wide in {" ".join(map(str, sorted(RECIPE.widths)))}; do
  echo "--size ${{wide}}x -o $2/%s-$wide.avif[Q={RECIPE.avif_quality},effort={9 - RECIPE.avif_speed},strip]"
done
echo "--size {RECIPE.fallback_width}x -o $2/%s.jpg[Q={RECIPE.jpeg_quality},optimize_coding,interlace,strip]"
}} | xargs -P 2 -I{{}} sh -c 'vipsthumbnail *.jpg {{}}'
"""


def draw(folder: Path, number: int) -> None:
    """Draw photos of 4,000 x 3,000 pixels: soft shapes, edges and a sensor's grain; the same at every call."""
    dice = np.random.default_rng(11)
    folder.mkdir(parents=True)
    for each in range(number):
        rough = dice.normal(0, 1, (375, 500, 3)).cumsum(0).cumsum(1)
        rough = (rough - rough.min()) / (rough.max() - rough.min()) * 255
        soft = Image.fromarray(rough.astype(np.uint8)).resize((4000, 3000), Image.Resampling.BICUBIC)
        grain = np.asarray(soft).astype(np.int16) + dice.normal(0, 4, (3000, 4000, 1)).astype(np.int16)
        Image.fromarray(grain.clip(0, 255).astype(np.uint8)).save(folder / f"photo-{each:03d}.jpg", quality=88)


def timings(runs: int, photos: int, scratch: Path) -> Iterator[Timing]:
    """Yield the time of each way; the bare loop first, which the others are compared with."""
    drawing = multiprocessing.get_context("spawn").Process(target=draw, args=(scratch / "photos", photos))
    drawing.start()  # apart: the system counts what this process holds into the memory of those that it starts
    drawing.join()
    out = scratch / "out"

    def empty() -> None:
        shutil.rmtree(out, ignore_errors=True)
        out.mkdir()

    ways: dict[str, list[str | Path]] = {
        f"bare Pillow loop, {photos} photos": [sys.executable, "-c", _BARE, scratch / "photos", out],
        f"pictures of a make, {photos} photos": [sys.executable, "-c", _OURS, scratch / "photos", out],
    }
    if shutil.which("vipsthumbnail"):
        ways[f"vipsthumbnail, {photos} photos"] = ["sh", "-c", _VIPS, "sh", scratch / "photos", out]
    files = photos * (len(RECIPE.widths) + 1)
    yield from in_turn(ways, runs, empty, partial(_made, out, files))


def _made(out: Path, files: int) -> None:
    found = sum(1 for path in out.iterdir() if path.stat().st_size)
    if found != files:
        raise RuntimeError(f"{found} pictures were made, {files} wanted")


def main() -> None:
    """Read the command line, run, print the table."""
    wanted = argparse.ArgumentParser(prog="python -m tests.benchmarks.photos", description=__doc__)
    wanted.add_argument("--photos", type=int, default=12)
    wanted.add_argument("--runs", type=int, default=5)
    asked = wanted.parse_args()
    with tempfile.TemporaryDirectory() as scratch:
        found = list(timings(asked.runs, asked.photos, Path(scratch)))
    show(found, found[0])


if __name__ == "__main__":
    main()
