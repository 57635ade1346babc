"""Hold the clock to the command line: `python -m tests.benchmarks [--runs 3] [--projects 1000]`.

Every row is a whole process, start-up included. The last column is against an interpreter that does nothing, run in
the same minutes on the same machine, so that two machines' tables can be compared.
"""

import argparse
import shutil
import sys
import tempfile
import time
from collections.abc import Iterator
from functools import partial
from pathlib import Path

from rich.console import Console

from .stopwatch import Timing, timed
from .tables import show
from .workshop import write_workshop

ROOT = Path(__file__).resolve().parents[2]
COMMAND = Path(sys.executable).with_name("maker-site")


def timings(runs: int, projects: int, seed: int, scratch: Path) -> Iterator[Timing]:
    """Time one command after another."""
    demo, generated = ROOT / "content", scratch / "generated"
    write_workshop(generated, projects, seed)
    many = f"{projects:,} projects, no photos"

    def make(content: Path, out: str) -> list[str | Path]:
        return [COMMAND, "make", "--content", content, "--out", scratch / out]

    forget = partial(shutil.rmtree, ignore_errors=True)
    yield timed("python -c pass", [sys.executable, "-c", "pass"], 3 * runs)
    yield timed("maker-site --help", [COMMAND, "--help"], 3 * runs)
    yield timed("check, demo", [COMMAND, "check", "--content", demo], runs)
    yield timed(f"check, {many}", [COMMAND, "check", "--content", generated], runs)
    yield timed("make, demo, from scratch", make(demo, "demo"), runs, partial(forget, scratch / "demo"))
    yield timed("make, demo, unchanged", make(demo, "demo"), runs)
    yield timed(f"make, {many}, from scratch", make(generated, "many"), runs, partial(forget, scratch / "many"))
    every_file = [sys.executable, "-c", _STAT_EVERY_FILE, generated, scratch / "many"]
    yield timed(f"Python stats every file, {many}", every_file, runs)
    time.sleep(1)  # a make keeps nothing of files that were written this very moment
    yield timed(f"make, {many}, unchanged", make(generated, "many"), runs)
    edit = partial(_edit, sorted(generated.glob("projects/*/project.yaml"))[0])
    yield timed(f"make, {many}, one note edited", make(generated, "many"), runs, edit)
    find = [COMMAND, "find", "slate", "--content", generated]
    yield timed(f"find, {many}, for the first time", find, 1)
    yield timed(f"find, {many}", find, 3 * runs)


_STAT_EVERY_FILE = """
import os, sys
for top in sys.argv[1:]:
    for folder, _, names in os.walk(top):
        for name in names:
            os.stat(os.path.join(folder, name))
"""


def _edit(record: Path) -> None:
    """Write a private note into a record: one page shows it."""
    kept = [line for line in record.read_text("utf-8").splitlines() if not line.startswith("note:")]
    record.write_text("\n".join([*kept, f"note: at {time.time_ns()}", ""]), "utf-8")


def main() -> None:
    """Read the command line, run everything, print the table."""
    wanted = argparse.ArgumentParser(prog="python -m tests.benchmarks", description=__doc__)
    wanted.add_argument("--runs", type=int, default=3, help="of each command; three times as many of the short ones")
    wanted.add_argument("--projects", type=int, default=1000)
    wanted.add_argument("--seed", type=int, default=7)
    asked = wanted.parse_args()
    console = Console()
    with tempfile.TemporaryDirectory() as scratch:
        found = []
        for timing in timings(asked.runs, asked.projects, asked.seed, Path(scratch)):
            found.append(timing)
            console.print(f"{timing.name}: {timing.middle:.3f} s", style="dim")
    show(found, found[0])
    console.print("Peak memory is the largest single process of a command, not the sum of them.")


if __name__ == "__main__":
    main()
