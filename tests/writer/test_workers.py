"""Pages built in processes side by side: the same site, the same problems, and nothing left of a make that fails.

A process that has threads is not forked, and the tests' own may have some, so each make here is a process of its own.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from maker_site.writer.crew import crew
from maker_site.writer.site_folder import SiteFolderProblem
from tests.benchmarks.workshop import write_workshop

pytestmark = [
    pytest.mark.skipif(sys.platform != "linux", reason="forked on Linux alone"),
    pytest.mark.xdist_group("workers"),
]
MAKE = """
import sys
from datetime import date
from pathlib import Path
from maker_site.pages import notebook
from maker_site.writer.making import make_site
from maker_site.writer.rendering import TemplateProblem
notebook._FEW = int(sys.argv[4])
try:
    made = make_site(
        Path(sys.argv[1]), Path(sys.argv[2]), "print-room", date(2026, 5, 1), lambda *_: None, workers=int(sys.argv[3])
    )
except TemplateProblem as problem:
    print(problem)
else:
    print(made.pages, len(made.rendered), len(made.problems))
"""


@pytest.fixture(scope="module")
def content(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a workshop with enough pages to be parted."""
    folder = tmp_path_factory.mktemp("many") / "content"
    write_workshop(folder, 16, 7)
    return folder


def make(content: Path, out: Path, workers: int, few: int = 1000) -> str:
    """Make a site in a process of its own that holds few sums, and return what it said."""
    done = subprocess.run(
        [sys.executable, "-c", MAKE, content, out, str(workers), str(few)],
        capture_output=True,
        text=True,
        check=True,
        timeout=120,
    )
    return done.stdout.strip()


def tree(out: Path) -> dict[str, bytes]:
    """Return every file of a site by its path, with the lists of what was made."""
    files = {path.relative_to(out).as_posix(): path for path in out.rglob("*") if path.is_file()}
    own = {".maker-site/manifest.json"}
    return {
        name: path.read_bytes() for name, path in files.items() if not name.startswith(".maker-site/") or name in own
    }


@pytest.mark.slow
def test_any_number_of_workers_makes_the_same_bytes_and_knows_them_again(content: Path, tmp_path: Path) -> None:
    said = {number: make(content, tmp_path / str(number), number) for number in (0, 1, 2)}
    assert said[1] == said[2] == said[0]
    assert tree(tmp_path / "1") == tree(tmp_path / "2") == tree(tmp_path / "0")
    make(content, tmp_path / "few", 1, few=2)
    assert tree(tmp_path / "few") == tree(tmp_path / "0")
    assert make(content, tmp_path / "few", 1).split()[1] == "0", "few sums are made of what all of them are made of"
    again = make(content, tmp_path / "2", 0)
    assert again.split()[1] == "0", "what workers noted holds for a make without them"


@pytest.mark.slow
def test_a_template_that_fails_in_a_worker_is_told_and_the_last_good_site_stays(content: Path, tmp_path: Path) -> None:
    out = tmp_path / "site"
    make(content, out, 2)
    before = tree(out)
    own = content / "theme/pages/workshop/project.html"
    own.parent.mkdir(parents=True)
    own.write_text("{{ page.nonsense }}", encoding="utf-8")
    try:
        assert "project.html, line 1" in make(content, out, 2)
    finally:
        own.unlink()
    assert tree(out) == before
    assert not list((out / ".maker-site").glob("staging/*"))


CREW = """
import os, sys
from contextlib import contextmanager
from maker_site.writer.crew import any_of, crew

ways = {"double": lambda task: task * 2, "die": lambda task: os._exit(9), "raise": lambda task: 1 // task}

@contextmanager
def begin(number):
    yield ways[sys.argv[1]]

found = []
with crew(2, begin) as workers:
    for task in range(6):
        workers.ask(task)
    while workers.pending:
        found += [answer for _, answer in any_of(workers)]
print(sorted(found))
"""


def run_crew(what: str) -> subprocess.CompletedProcess[str]:
    """Let two processes do six things in one way."""
    return subprocess.run([sys.executable, "-c", CREW, what], capture_output=True, text=True, check=False, timeout=60)


def test_all_that_is_asked_is_answered() -> None:
    assert run_crew("double").stdout.strip() == "[0, 2, 4, 6, 8, 10]"


def test_what_a_worker_raises_is_raised_here() -> None:
    assert "ZeroDivisionError" in run_crew("raise").stderr


def test_a_worker_that_dies_is_told() -> None:
    done = run_crew("die")
    assert done.returncode == 1
    assert SiteFolderProblem.__name__ in done.stderr
    assert "ended before it was done" in done.stderr


def test_without_cores_there_is_no_crew() -> None:
    with crew(0, lambda _: pytest.fail("nothing is begun")) as nobody:
        assert nobody is None
