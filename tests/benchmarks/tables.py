"""Timings as a table."""

from collections.abc import Sequence

from rich.console import Console
from rich.table import Table

from .stopwatch import Timing

WIDTH = 140


def show(found: Sequence[Timing], floor: Timing) -> None:
    """Print timings as a table; the ratios are to the middle run of `floor`."""
    Console(width=WIDTH).print(table(found, floor))


def table(found: Sequence[Timing], floor: Timing) -> Table:
    """Lay timings out; the ratios are to the middle run of `floor`."""
    laid = Table("command")
    for head in ("runs", "min s", "median s", "max s", "CPU s", "peak MiB", "ratio", "CPU ratio"):
        laid.add_column(head, justify="right")
    for timing in found:
        figures = (timing.shortest, timing.middle, timing.longest)
        ratio = timing.middle / floor.middle
        seconds = (f"{figure:.3f}" for figure in figures)
        cpu, cpu_ratio = timing.middle_cpu, timing.middle_cpu / floor.middle_cpu
        memory = f"{timing.peak_mib:.0f}"
        laid.add_row(
            timing.name, str(len(timing.runs)), *seconds, f"{cpu:.3f}", memory, f"{ratio:.1f}", f"{cpu_ratio:.1f}"
        )
    return laid
