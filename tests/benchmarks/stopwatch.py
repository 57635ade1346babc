"""Whole commands run as processes of their own, against the clock and the memory that the system accounts to them."""

import os
import subprocess
import sys
import time
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from statistics import median

BYTES_A_UNIT = 1 if sys.platform == "darwin" else 1024  # what ru_maxrss counts in: getrusage(2)


@dataclass(frozen=True)
class Run:
    """One run of a command."""

    seconds: float
    """From start to end, by the wall's clock."""
    peak_mib: float
    """The most that any one of its processes held in memory at once, in MiB."""
    exit_code: int
    cpu: float = 0.0
    """Seconds of all cores together: what a busy machine disturbs least."""


@dataclass(frozen=True)
class Timing:
    """Several runs of one command."""

    name: str
    runs: tuple[Run, ...]

    @property
    def shortest(self) -> float:
        """Seconds of the fastest run: the one least disturbed by what else the machine did."""
        return min(run.seconds for run in self.runs)

    @property
    def middle(self) -> float:
        """Seconds of the middle run."""
        return median(run.seconds for run in self.runs)

    @property
    def longest(self) -> float:
        """Seconds of the slowest run."""
        return max(run.seconds for run in self.runs)

    @property
    def middle_cpu(self) -> float:
        """Seconds of all cores together in the middle run."""
        return median(run.cpu for run in self.runs)

    @property
    def peak_mib(self) -> float:
        """The most memory in any run, in MiB."""
        return max(run.peak_mib for run in self.runs)


def run(command: Sequence[str | Path]) -> Run:
    """Run the command once, with nothing to read and what it prints thrown away."""
    begun = time.perf_counter()
    with subprocess.Popen(
        command, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    ) as process:
        _, status, used = os.wait4(process.pid, 0)
        seconds = time.perf_counter() - begun
        process.returncode = os.waitstatus_to_exitcode(status)  # it has been waited for
    return Run(seconds, used.ru_maxrss * BYTES_A_UNIT / 2**20, process.returncode, used.ru_utime + used.ru_stime)


def in_turn(
    commands: Mapping[str, Sequence[str | Path]],
    times: int,
    before: Callable[[], None] = lambda: None,
    after: Callable[[], None] = lambda: None,
) -> list[Timing]:
    """Run several commands in turn, A B A B …, so that a machine that slows down slows all of them.

    `before` and `after` each run are not timed. Raises RuntimeError where a run does not end with exit code 0.
    """
    runs: dict[str, list[Run]] = {name: [] for name in commands}
    for _ in range(times):
        for name, command in commands.items():
            before()
            runs[name].append(_good(name, command))
            after()
    return [Timing(name, tuple(done)) for name, done in runs.items()]


def timed(name: str, command: Sequence[str | Path], times: int, before: Callable[[], None] = lambda: None) -> Timing:
    """Run the command so many times, each after `before`, which is not timed.

    Raises RuntimeError where a run does not end with exit code 0: a failure has no time.
    """
    runs = []
    for _ in range(times):
        before()
        runs.append(_good(name, command))
    return Timing(name, tuple(runs))


def _good(name: str, command: Sequence[str | Path]) -> Run:
    done = run(command)
    if done.exit_code != 0:
        raise RuntimeError(f"{name}: exit code {done.exit_code}: {' '.join(map(str, command))}")
    return done
