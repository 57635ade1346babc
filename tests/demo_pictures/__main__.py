"""Draw the designs or make the photographs: `python -m tests.demo_pictures artwork | photos [--draft] [NAMES]`."""

from __future__ import annotations

import argparse
import tempfile
import time
from pathlib import Path

from tests.demo_pictures.prints import write_artwork

CONTENT = Path(__file__).resolve().parents[2] / "content"


def make_photos(content: Path, names: list[str], *, draft: bool) -> None:
    """Render the shots whose file names hold one of `names`, or all; a draft has fewer samples and half the size."""
    import mitsuba as mi

    try:
        mi.set_variant("llvm_ad_rgb")
    except ImportError:
        mi.set_variant("scalar_rgb")
    from tests.demo_pictures.photos import write_photo
    from tests.demo_pictures.scene import Stage, rendered
    from tests.demo_pictures.shots import SHOTS

    for seed, shot in enumerate(SHOTS):
        if names and not any(name in shot.file.replace("/photos/", "/") for name in names):
            continue
        began = time.monotonic()
        with tempfile.TemporaryDirectory() as folder:
            stage = Stage(Path(folder))
            camera = shot.stage(stage)
            width, height = ((size // 2 if draft else size) for size in shot.size)
            pixels = rendered(stage, camera, (width, height), 12 if draft else 18, seed=seed, bright=shot.bright)
        write_photo(pixels, content, shot.file)
        print(
            f"{shot.file}: {(content / shot.file).stat().st_size // 1000} kB in {time.monotonic() - began:.0f} s",
            flush=True,
        )


def main() -> None:
    """Read the command line and do as told."""
    parser = argparse.ArgumentParser(prog="python -m tests.demo_pictures", description=__doc__)
    parser.add_argument("what", choices=("artwork", "photos"))
    parser.add_argument("names", nargs="*", help="parts of file names, as regatta-mug/mug")
    parser.add_argument("--draft", action="store_true", help="small and fast")
    parser.add_argument("--content", type=Path, default=CONTENT, help="the content folder to write to")
    given = parser.parse_args()
    if given.what == "artwork":
        write_artwork(given.content)
    else:
        make_photos(given.content, given.names, draft=given.draft)


if __name__ == "__main__":
    main()
