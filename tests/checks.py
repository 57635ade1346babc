"""The check values from outside the project: figures with their sources, cited in tests by the row's id."""

import csv
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path

FOLDER = Path(__file__).parent / "checks"


@dataclass(frozen=True, slots=True)
class Check:
    """One row: what goes in, what must come out, and who says so."""

    id: str
    quantity: str
    inputs: str
    expected: str
    tolerance: str
    unit: str
    source: str
    source_kind: str
    note: str

    @property
    def figure(self) -> Fraction:
        """The expected figure, exactly as the table has it; only for rows that hold one figure."""
        return Fraction(self.expected)

    def accepts(self, value: Fraction) -> bool:
        """Tell whether a computed figure is within the row's tolerance of the expected one."""
        return abs(value - self.figure) <= Fraction(self.tolerance)


@cache
def table(name: str) -> dict[str, Check]:
    """Return one table's rows by id, such as ``table("units")["units-04"]``."""
    with (FOLDER / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return {row["id"]: Check(**row) for row in csv.DictReader(file)}


def check(row_id: str) -> Check:
    """Return one row by its id; the id begins with its table's name."""
    return table(row_id.rpartition("-")[0])[row_id]
