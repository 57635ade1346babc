"""What is said of a make, as lines of text; imports nothing, so that it can be said at once."""

from __future__ import annotations

from itertools import groupby

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence
    from typing import Protocol

    class Problem(Protocol):
        """What is told of a problem; see the records room, whose import takes a while."""

        @property
        def file(self) -> str:
            """Path from the content folder."""

        @property
        def line(self) -> int:
            """Line counted from 1; 0 for the whole file."""

        @property
        def field(self) -> str:
            """The field’s name; empty for the whole file."""

        @property
        def message(self) -> str:
            """The sentence."""

        @property
        def severity(self) -> str:
            """`error` or `caution`."""


_ERROR = "error"


def problem_lines(problems: Sequence[Problem], style: Callable[[str, str], str]) -> Iterator[str]:
    """Yield problems for a person; `style` gives a text in ``bold`` or in a colour."""
    for file, found in groupby(sorted(problems, key=_place), key=lambda problem: problem.file):
        yield style(file, "bold")
        for problem in found:
            error = problem.severity == _ERROR
            mark = style("error" if error else "caution", "red" if error else "yellow")
            where = f"line {problem.line}, " if problem.line else ""
            field = f"{problem.field}: " if problem.field else ""
            yield f"  {mark}  {where}{field}{problem.message}"


def counted(problems: Sequence[Problem]) -> str:
    """Return ``2 errors and 1 caution``."""
    errors = sum(problem.severity == _ERROR for problem in problems)
    cautions = len(problems) - errors
    parts = [
        f"{number} {word}{'' if number == 1 else 's'}"
        for number, word in ((errors, "error"), (cautions, "caution"))
        if number
    ]
    return " and ".join(parts) or "no problems"


def summary(pages: int, pictures: int, written: int, removed: int, problems: Sequence[Problem]) -> str:
    """Return what was made, in one line."""
    said = f", with {counted(problems)}" if problems else ""
    return f"{pages} pages and {pictures} pictures: {written} written, {removed} removed, the rest unchanged{said}."


def places(workshop: str, public: str) -> tuple[str, str]:
    """Return where the front pages of both copies are, a line each."""
    return f"Workshop copy, private: {workshop}", f"Public copy, to share:  {public}"


def _place(problem: Problem) -> tuple[str, int, str, str]:
    return (problem.file, problem.line, problem.field, problem.message)
