"""What many tests share: the demo site, made once a session, and the outside judges that the machine has.

A judge that is not on the machine makes its tests skip with a reason. Where the environment variable
`MAKER_SITE_ALL_JUDGES` is set, as it is in CI, it makes them fail instead.
"""

import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import NoReturn

import pytest
from click.testing import CliRunner
from filelock import FileLock
from playwright.sync_api import Browser, sync_playwright

from maker_site.cli import main

ROOT = Path(__file__).resolve().parent.parent
CONTENT = ROOT / "content"
NPM_PARTS = ROOT / "tests" / "node_modules"
AXE = NPM_PARTS / "axe-core" / "axe.min.js"

# Runs as root and off line, starts the same way each time, and asks nothing of anybody.
CHROMIUM_FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
# The one without windows first: it draws the same pages with a third less work.
CHROMIUM_NAMES = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome", "google-chrome-stable")

# Where a machine keeps compiled modules from being written, each parallel worker and each process that a test starts
# would compile the whole program again. They lie in __pycache__, where git does not look.
sys.dont_write_bytecode = False
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)

NOTE = "judge's note"


def lacking(what: str, remedy: str) -> NoReturn:
    """Skip the test for want of a judge, or fail it where every judge must be there."""
    reason = f"{what}: {remedy}"
    if os.environ.get("MAKER_SITE_ALL_JUDGES"):
        pytest.fail(reason, pytrace=False)
    pytest.skip(reason)


def make_site(content: Path, out: Path) -> subprocess.CompletedProcess[str]:
    """Run `maker-site make` as a person would, in a process of its own."""
    command = Path(sys.executable).with_name("maker-site")
    return subprocess.run(
        [command, "make", "--content", content, "--out", out],
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=False,
    )


def make_site_here(content: Path, out: Path) -> None:
    """Run `maker-site make` within this process, which has imported and compiled what a new one has to begin with."""
    made = CliRunner().invoke(main, ["make", "--content", str(content), "--out", str(out)])
    assert made.exit_code == 0, made.output


@pytest.fixture(scope="session", autouse=True)
def _own_cache(tmp_path_factory: pytest.TempPathFactory) -> None:
    """Keep what commands keep for the user in a folder of this session."""
    os.environ["XDG_CACHE_HOME"] = str(tmp_path_factory.mktemp("cache"))


Once = Callable[[str, Callable[[Path], object]], Path]


@pytest.fixture(scope="session")
def once(tmp_path_factory: pytest.TempPathFactory, worker_id: str) -> Once:
    """Make a folder once for all parallel workers: `once(name, make)` gives it, filled by `make(folder)`.

    Read only: a test that changes what is in it copies it first. What failed in one worker is not tried in another.
    """
    own = tmp_path_factory.getbasetemp()
    shared = own if worker_id == "master" else own.parent

    def made(name: str, make: Callable[[Path], object]) -> Path:
        folder, begun, done = shared / name, shared / f"{name}.begun", shared / f"{name}.done"
        with FileLock(shared / f"{name}.lock"):
            if not begun.exists():
                begun.touch()
                make(folder)
                done.touch()
        if not done.exists():
            pytest.fail(f"{name} could not be made by another worker, which says why", pytrace=False)
        return folder

    return made


@pytest.fixture(scope="session")
def demo_site(once: Once) -> Path:
    """The demo workshop: a folder that holds workshop/ and public/. Read only."""

    def make(out: Path) -> None:
        made = make_site(CONTENT, out)
        if made.returncode != 0:
            told = f"exit code {made.returncode}\n{made.stdout}\n{made.stderr}"
            pytest.fail(f"maker-site make failed on the demo: {told}", pytrace=False)

    return once("demo-site", make)


@pytest.fixture(scope="session")
def chromium_path() -> str:
    """The Chromium on this machine; `MAKER_SITE_CHROMIUM` names another."""
    named = os.environ.get("MAKER_SITE_CHROMIUM")
    for name in (named,) if named else CHROMIUM_NAMES:
        if found := shutil.which(name):
            return found
    lacking("no Chromium on this machine", "install one, or name it in MAKER_SITE_CHROMIUM")


@pytest.fixture(scope="session")
def browser(chromium_path: str) -> Iterator[Browser]:
    """One headless Chromium for each parallel worker; its tabs are kept by `tests.judges.visits`."""
    with sync_playwright() as driver:
        chromium = driver.chromium.launch(executable_path=chromium_path, headless=True, args=CHROMIUM_FLAGS)
        yield chromium
        chromium.close()


@pytest.fixture(scope="session")
def java_and_vnu() -> tuple[str, ...]:
    """The command that starts the Nu HTML checker, without its arguments."""
    java = shutil.which("java")
    if java is None:
        lacking("no Java on this machine", "the HTML checker needs a Java runtime")
    jar = NPM_PARTS / "vnu-jar" / "build" / "dist" / "vnu.jar"
    if not jar.is_file():
        lacking("the HTML checker is not installed", "run `npm ci` in tests/")
    # Quick to start: a run of the checker is over before the second compiler is worth its time,
    # and the first needs a deeper stack.
    return (java, "-Xss2m", "-XX:TieredStopAtLevel=1", "-jar", str(jar))


@pytest.fixture(scope="session")
def axe_source() -> str:
    """The accessibility checker, as a script to run in a page."""
    if not AXE.is_file():
        lacking("the accessibility checker is not installed", "run `npm ci` in tests/")
    return AXE.read_text(encoding="utf-8")


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Print what judges noted without failing a test, such as an HTML checker's warnings."""
    notes = [
        str(value)
        for outcome in ("passed", "failed")
        for report in terminalreporter.getreports(outcome)
        for name, value in report.user_properties
        if name == NOTE and report.when == "call"
    ]
    if notes:
        terminalreporter.section("what the judges noted")
        for note in notes:
            terminalreporter.line(note)
