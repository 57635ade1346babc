"""The Nu HTML checker, which holds pages against the HTML Living Standard."""

import json
import subprocess
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import unquote


@dataclass(frozen=True)
class Remark:
    """What the checker says of one place in one page."""

    page: str
    line: int
    kind: str
    """`error`, `warning`, or `failed` where the page could not be judged."""
    message: str

    def __str__(self) -> str:
        """Tell it in one line."""
        return f"{self.page}:{self.line}: {self.kind}: {self.message}"


def remarks(checker: Sequence[str], pages: Sequence[Path], root: Path) -> list[Remark]:
    """Judge all the pages in one run of the checker. Pages are named as under `root`."""
    options = ("--format", "json", "--stdout", "--exit-zero-always", "--verbose")
    ran = subprocess.run(
        [*checker, *options, *map(str, pages)],
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=True,
    )
    told = [_remark(message, root) for message in json.loads(ran.stdout)["messages"]]
    # It names each page that it has judged, and passes over one that it can't open.
    judged = set(ran.stderr.splitlines())
    unjudged = [Remark(_name(page, root), 0, "failed", "not judged") for page in pages if str(page) not in judged]
    return told + unjudged


def _remark(message: dict[str, object], root: Path) -> Remark:
    kind = {"error": "error", "info": "warning"}.get(str(message["type"]), "failed")
    page = Path(unquote(str(message.get("url", "")).removeprefix("file:")))
    return Remark(_name(page, root), int(str(message.get("lastLine", 0))), kind, str(message["message"]))


def _name(page: Path, root: Path) -> str:
    return str(page.relative_to(root)) if page.is_relative_to(root) else str(page)
