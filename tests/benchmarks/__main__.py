"""Hold the clock to the command line: `python -m tests.benchmarks [--runs 3] [--projects 1000,10000] [--photos 12]`.

Every row is a whole process, start-up included, unless it says otherwise. What a row is compared with is run in the
same minutes, in turn where that matters, so that two machines' ratios can be compared. Wall-clock times mean little
while the machine has other work; the CPU columns then mean more.
"""

import argparse
import compileall
import json
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from functools import partial
from pathlib import Path

from . import photos, watching
from .edits import write_a_note
from .stopwatch import Run, Timing, in_turn, timed
from .tables import show
from .workshop import write_workshop

ROOT = Path(__file__).resolve().parents[2]
MAKER_SITE = [sys.executable, "-c", "from maker_site.cli.door import main; main()"]
FEW = 2000
"""Projects up to which a cold make is run more than once, and beside its parts alone."""
SETTLE = 1.5
"""Seconds: a make keeps nothing of files that were written this very moment."""


def of_small_things(runs: int, scratch: Path) -> list[Timing]:
    """Time what does not depend on a workshop's size, and the demo."""
    demo = ROOT / "content"
    made = [*MAKER_SITE, "make", "--content", demo, "--out", scratch / "demo"]
    forget = partial(_put_aside, scratch / "demo")
    start = timed("python -c pass", [sys.executable, "-c", "pass"], 3 * runs)
    rest = [
        timed("maker-site --help", [*MAKER_SITE, "--help"], 3 * runs),
        timed("check, demo", [*MAKER_SITE, "check", "--content", demo], runs),
        timed("make, demo, from scratch", made, runs, forget),
    ]
    time.sleep(SETTLE)
    return [start, *rest, timed("make, demo, unchanged", made, runs)]


def of_a_workshop(projects: int, runs: int, seed: int, scratch: Path) -> Iterator[tuple[str, list[Timing]]]:
    """Time a generated workshop without photos; yield tables, each with what its first row is."""
    content, out = scratch / f"content-{projects}", scratch / f"site-{projects}"
    write_workshop(content, projects, seed)
    made: list[str | Path] = [*MAKER_SITE, "make", "--content", content, "--out", out]
    forget = partial(_put_aside, out)
    few = projects <= FEW
    cold = timed("make from scratch", made, runs if few else 1, forget)
    yield f"{projects:,} projects, cold", [_parts(content), cold] if few else [cold]
    floor = {"Python stats every file": [sys.executable, "-c", _STAT_EVERY_FILE, content, out]}
    time.sleep(SETTLE)
    subprocess.run(made, check=True, capture_output=True)  # now it is settled
    warm = in_turn({**floor, "make, nothing changed": made}, 2 * runs + 1)
    record = sorted(content.glob("projects/*/project.yaml"))[0]
    log = sorted(content.glob("press-log/*.csv"))[-1]
    warm += [
        timed("make, a note edited", made, runs, partial(_settled, partial(write_a_note, record))),
        timed("make, a row added to the log", made, runs, partial(_settled, partial(_press_once_more, log))),
    ]
    yield f"{projects:,} projects, made again", warm
    find = [*MAKER_SITE, "find", "slate", "--content", content]
    start = [*MAKER_SITE, "starting-point", "blank-0", "--press", "press-0", "--content", content]
    check = [*MAKER_SITE, "check", "--content", content]
    found = [
        timed("check, the first ever", check, 1),
        timed("check", check, runs),
        timed("find, the first ever", find, 1),
        timed("find, after an edit", find, runs, partial(write_a_note, record)),
        timed("find", find, 2 * runs + 1),
        timed("starting-point, one press", start, 2 * runs + 1),
        watching.timing("watch: from a save to its page, not a whole process", content, out, 2 * runs + 1),
    ]
    yield f"{projects:,} projects, asked", found


def _parts(content: Path) -> Timing:
    """Time the parts of a cold make by themselves: CPU seconds of one core, in a process of their own."""
    command = [sys.executable, "-m", "tests.benchmarks.parts", content]
    done = subprocess.run(command, check=True, capture_output=True, text=True, cwd=ROOT)
    seconds = json.loads(done.stdout)
    words = ", ".join(f"{part} {took:.1f}" for part, took in seconds.items())
    whole = sum(seconds.values())
    return Timing(f"the parts alone, on one core: {words}", (Run(whole, 0.0, 0, whole),))


def _put_aside(out: Path) -> None:
    """Let a site begin anew. Nothing is deleted: for a minute after it ext4 takes ten times as long to make files."""
    if out.exists():
        out.rename(Path(tempfile.mkdtemp(prefix="made-before-", dir=out.parent)) / out.name)


def _settled(edit: partial[object]) -> None:
    """Edit, and wait until a make trusts the file's time."""
    edit()
    time.sleep(SETTLE)


def _press_once_more(log: Path) -> None:
    """Add a row to the log, like its last one."""
    text = log.read_text("utf-8")
    log.write_text(text + text.splitlines()[-1] + "\n", "utf-8")


_STAT_EVERY_FILE = """
import os, sys
for top in sys.argv[1:]:
    for folder, _, names in os.walk(top):
        for name in names:
            os.stat(os.path.join(folder, name))
"""


def main() -> None:
    """Read the command line, run everything, print each table when it is there."""
    wanted = argparse.ArgumentParser(prog="python -m tests.benchmarks", description=__doc__)
    wanted.add_argument("--runs", type=int, default=3, help="of each command; more of the short ones")
    wanted.add_argument("--projects", type=_sizes, default=[1000], help="one size or several, as 1000,10000")
    wanted.add_argument("--photos", type=int, default=12, help="of 12 megapixels; 0 leaves that table out")
    wanted.add_argument("--seed", type=int, default=7)
    asked = wanted.parse_args()
    with tempfile.TemporaryDirectory() as name:
        scratch = Path(name)
        compileall.compile_dir(ROOT / "maker_site", quiet=1)  # as it is where it was installed
        os.environ["XDG_CACHE_HOME"] = str(scratch / "cache")  # so that the first answer is the first
        _tell("Small things", of_small_things(asked.runs, scratch))
        for projects in asked.projects:
            for title, found in of_a_workshop(projects, asked.runs, asked.seed, scratch):
                _tell(title, found)
        if asked.photos:
            _tell("Photos", list(photos.timings(asked.runs, asked.photos, scratch)))
    print("Ratios are to the first row. Peak memory is the largest single process of a command, not the sum of them.")


def _sizes(text: str) -> list[int]:
    return [int(each) for each in text.split(",")]


def _tell(title: str, found: Sequence[Timing]) -> None:
    print(f"\n{title}", flush=True)
    show(found, found[0])


if __name__ == "__main__":
    main()
