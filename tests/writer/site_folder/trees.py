"""Sites as a map of address to bytes, made and read back; and makes in a process of their own."""

import os
import subprocess
import sys
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from maker_site.writer.site_folder import Changes, SiteFolder

ROOT = Path(__file__).resolve().parents[3]

OLD = {
    "workshop/index.html": b"<p>three projects",
    "workshop/projects/harbour.html": b"<p>harbour",
    "workshop/projects/withdrawn/index.html": b"<p>not for long",
    "public/menu.html": b"<p>menu",
}
NEW = {
    "workshop/index.html": b"<p>four projects",
    "workshop/projects/harbour.html": b"<p>harbour",
    "workshop/projects/orchard.html": b"<p>orchard",
    "public/tutorials/orchard.html": b"<p>how the orchard plate was made",
    "public/menu.html": b"<p>menu, with plates",
}


def make(out: Path, files: Mapping[str, bytes]) -> Changes:
    with SiteFolder.open(out) as site:
        for address, data in files.items():
            site.put(address, data)
        return site.commit()


def save(path: Path, data: bytes) -> None:
    """Write a file as something outside the room does, a picture library for one."""
    path.write_bytes(data)


def reopen(out: Path) -> None:
    """Open the folder and leave it as a make does that found a problem in the records."""
    with SiteFolder.open(out):
        pass


def tree(out: Path) -> dict[str, bytes]:
    """All that a visitor could see, read by plain means; folders with nothing in them are an entry that ends in `/`."""
    found = {}
    for folder, below, names in os.walk(out):
        if Path(folder) == out:
            below[:] = [name for name in below if name != ".maker-site"]
        elif not below and not names:
            found[Path(folder).relative_to(out).as_posix() + "/"] = b""
        for name in names:
            path = Path(folder, name)
            found[path.relative_to(out).as_posix()] = path.read_bytes()
    return found


def leftovers(out: Path) -> set[str]:
    """What is in `.maker-site` beside what belongs there between two makes."""
    return {path.name for path in (out / ".maker-site").iterdir()} - {"lock", "manifest.json", "made-here.txt"}


# A make of NEW in a process of its own. `trouble(number)` is called before each `os.replace`, numbered from 1.
_PROGRAM = """
import os, pathlib, signal, sys, time
from maker_site.writer.site_folder import SiteFolder
from tests.writer.site_folder.trees import NEW

real_replace, count = os.replace, 0

{trouble}

def replace(source, target):
    global count
    count += 1
    trouble(count)
    real_replace(source, target)

os.replace = replace
with SiteFolder.open(pathlib.Path(sys.argv[1])) as site:
    for address, data in NEW.items():
        site.put(address, data)
    staged()
    site.commit()
"""


@contextmanager
def make_in_a_process(out: Path, trouble: str = "pass", staged: str = "pass") -> Iterator[subprocess.Popen[str]]:
    """Make NEW; `trouble` and `staged` are statements run before each replacement and before the commit."""
    parts = f"def trouble(number):\n    {trouble}\n\ndef staged():\n    {staged}\n"
    with subprocess.Popen(
        [sys.executable, "-c", _PROGRAM.format(trouble=parts), str(out)],
        cwd=ROOT,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    ) as process:
        try:
            yield process
        finally:
            process.kill()
