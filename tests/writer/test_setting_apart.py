"""A paper set in a process of its own is the same paper, and what goes wrong there is told here.

A process that has threads is not forked, and the tests' own may have some, so each setting is begun in a new process.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

SET = """
import os, sys
from pathlib import Path
from types import SimpleNamespace
from maker_site.paper.typesetting import Document, PaperProblem, Typesetter
from maker_site.writer import setting_apart as tested
from maker_site.writer.printing import setter

folder, how = Path(sys.argv[1]), sys.argv[2]
theme = SimpleNamespace(papers=lambda: {"paper.typ": folder / "paper.typ"})
setting, parent = Typesetter.set, os.getpid()

def set_or_end(self, document):
    if how == "ended":
        os._exit(1)
    print("here" if os.getpid() == parent else "apart", flush=True)
    return setting(self, document)

Typesetter.set = set_or_end
if how == "no fork":
    tested.cores = lambda: 0
document = Document("paper.typ", "A paper", "en", "GB", {"too much": how == "too much"})
try:
    with tested.setting_apart(theme, folder) as set_apart:
        first, second = set_apart(document), set_apart(document)
    with setter(theme, folder) as here:
        print(first.pdf == second.pdf == setting(here, document).pdf)
except PaperProblem as problem:
    print(problem)
"""
TEMPLATE = """
#let data = json(bytes(sys.inputs.data))
#set document(title: data.title)
#if data.at("too much") { panic("there is too much on it") }
= A paper
"""


def set_apart(folder: Path, how: str) -> list[str]:
    (folder / "paper.typ").write_text(TEMPLATE, "utf-8")
    done = subprocess.run(
        [sys.executable, "-c", SET, folder, how], capture_output=True, text=True, check=True, timeout=60
    )
    return done.stdout.splitlines()


@pytest.mark.skipif(sys.platform != "linux", reason="forked on Linux alone")
@pytest.mark.parametrize(
    ("how", "said"),
    [
        ("well", ["apart", "apart", "True"]),
        ("too much", ["apart", "there is too much on it"]),
        ("ended", ["A paper: setting it ended before it was done; was the memory full?"]),
    ],
)
def test_it_is_set_apart_and_told_here(tmp_path: Path, how: str, said: list[str]) -> None:
    assert set_apart(tmp_path, how) == said


def test_without_a_fork_it_is_set_here(tmp_path: Path) -> None:
    assert set_apart(tmp_path, "no fork") == ["here", "here", "True"]
