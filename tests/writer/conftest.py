"""An invented workshop and the site made of it: each worker makes one of a size once, and each test works on copies.

A module says how many projects its workshop has (`PROJECTS`).
"""

import shutil
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path

import pytest

from maker_site.writer.making import Made, make_site
from tests.benchmarks.workshop import write_workshop


@dataclass(frozen=True)
class Before:
    """A workshop and the site made of it before anything is written in either."""

    content: Path
    site: Path
    made: Made


@pytest.fixture(scope="session")
def written(tmp_path_factory: pytest.TempPathFactory) -> Callable[[int], Path]:
    """Return the workshop of so many projects."""

    @cache
    def of(projects: int) -> Path:
        content = tmp_path_factory.mktemp(f"of-{projects}") / "content"
        write_workshop(content, projects, 7)
        return content

    return of


@pytest.fixture(scope="session")
def begun(written: Callable[[int], Path]) -> Callable[[int], Before]:
    """Return the workshop of so many projects with the site made of it."""

    @cache
    def of(projects: int) -> Before:
        content = written(projects)
        site = content.with_name("site")
        return Before(
            content, site, make_site(content, site, "print-room", date(2026, 5, 1), lambda what, done, of: None)
        )

    return of


@pytest.fixture(scope="module")
def before(request: pytest.FixtureRequest, begun: Callable[[int], Before]) -> Before:
    """What every test of the module begins with."""
    return begun(request.module.PROJECTS)


@pytest.fixture
def content(request: pytest.FixtureRequest, written: Callable[[int], Path], tmp_path: Path) -> Path:
    """Return a workshop to write in."""
    return Path(shutil.copytree(written(request.module.PROJECTS), tmp_path / "content"))


@pytest.fixture
def out(before: Before, tmp_path: Path) -> Path:
    """Return the site made of the workshop before anything is written in it."""
    return Path(shutil.copytree(before.site, tmp_path / "site"))
