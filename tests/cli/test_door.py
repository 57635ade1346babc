"""The front door: what it says by itself is what the commands say, and it lets everything else through to them."""

import os
import subprocess
import sys
import time
from pathlib import Path

import click
import pytest
from click.testing import CliRunner

from maker_site.cli import door
from maker_site.cli.command import main, make_command
from maker_site.cli.exits import STOPPED
from tests.small_workshop import write_workshop

DOOR = "import sys; from maker_site.cli.door import main; main()"
COMMANDS = "from maker_site.cli.command import main; main()"
LOADED = "; print(*sorted({m.partition('.')[0] for m in sys.modules}), file=sys.stderr)"
SLOW = {"click", "pydantic", "yaml", "jinja2", "PIL", "babel", "filelock", "pathlib", "typing", "re", "json", "inspect"}


@pytest.fixture
def home(tmp_path: Path) -> Path:
    """The small workshop with a caution, made, and left alone for long enough."""
    content = write_workshop(tmp_path / "content", {"projects/harbour/projet.yaml": "", "blank/x.yaml": ""})
    time.sleep(0.15)
    assert CliRunner().invoke(main, ["make", *options(tmp_path)]).exit_code == 0
    assert content.is_dir()
    return tmp_path


def options(home: Path) -> list[str]:
    return ["--content", str(home / "content"), "--out", str(home / "site")]


def run(code: str, *words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run([sys.executable, "-c", code, *words], capture_output=True, text=True, check=False)


def test_the_door_and_the_command_say_the_same_of_a_make_that_changes_nothing(home: Path) -> None:
    command = CliRunner().invoke(main, ["make", *options(home)])
    said = run(DOOR, "make", *options(home))
    assert " 0 written, 0 removed" in said.stdout
    assert "caution" in said.stderr
    assert (said.returncode, said.stdout, said.stderr) == (command.exit_code, command.stdout, command.stderr)


def test_nothing_slow_is_imported_where_nothing_changed(home: Path) -> None:
    said = run(DOOR + LOADED, "make", *options(home))
    ours = set(said.stderr.splitlines()[-1].split()) - set(run("import sys" + LOADED).stderr.split())
    assert "sqlite3" in ours
    assert not ours & SLOW


def test_the_door_knows_the_options_of_a_make_and_what_they_usually_are() -> None:
    usual = {each.opts[0]: str(each.default) for each in make_command.params if isinstance(each, click.Option)}
    usual.pop("--help", None)
    assert usual == door._USUAL


PRESSED_AS_IT_IMPORTS = """
import signal, sys
signal.signal(signal.SIGINT, signal.default_int_handler)  # what is started in the background ignores it
moment = sys.argv.pop(1)
class CtrlC:
    def find_spec(self, name, path=None, target=None):
        if name == moment:
            sys.meta_path.remove(self)
            print("pressed", flush=True)
            signal.raise_signal(signal.SIGINT)
sys.meta_path.insert(0, CtrlC())
from maker_site.cli.door import main
main()
"""


@pytest.mark.skipif(os.name != "posix", reason="Ctrl-C is another thing there")
@pytest.mark.parametrize(
    "moment",
    [
        *("maker_site.writer.unchanged", "sqlite3", "maker_site.cli.command", "click", "click.core"),
        *("maker_site.cli.make", "yaml", "pydantic_core", "jinja2", "maker_site.writer.making"),
    ],
)
def test_ctrl_c_ends_it_quietly_even_as_it_imports(home: Path, moment: str) -> None:
    (home / "content" / "about.md").write_text("Something new.\n", "utf-8")

    said = run(PRESSED_AS_IT_IMPORTS, moment, "make", *options(home))

    assert said.stdout == "pressed\n"
    assert said.returncode == STOPPED == 130  # 128 and the number of the signal, as shells have it
    assert said.stderr in {"", "\nStopped.\n"}


@pytest.mark.skipif(os.name != "posix", reason="Ctrl-C is another thing there")
def test_ctrl_c_is_heard_where_python_would_pass_it_over() -> None:
    code = """
import signal, sys, time, click
signal.signal(signal.SIGINT, signal.default_int_handler)
from maker_site.cli.command import main

class Freed:
    def __del__(self):
        signal.raise_signal(signal.SIGINT)

@main.command()
def wait():
    Freed()
    time.sleep(60)
main(["wait"])
"""
    said = run(code)
    assert (said.returncode, said.stdout, said.stderr) == (STOPPED, "", "\nStopped.\n")


@pytest.mark.parametrize(
    "words",
    [
        ["--help"],
        ["make", "--help"],
        ["make", "--no-such"],
        ["make", "--content"],
        ["make", "--content", "no-such-folder"],
        ["make", "left-over"],
        ["nonsense"],
    ],
)
def test_everything_else_is_left_to_the_commands(words: list[str]) -> None:
    command, said = run(COMMANDS, *words), run(DOOR, *words)
    assert (said.returncode, said.stdout, said.stderr) == (command.returncode, command.stdout, command.stderr)


def test_colours_are_those_of_the_command() -> None:
    style = door._Style(plain=False)
    assert style("a file", "bold") == click.style("a file", bold=True)
    assert style("caution", "yellow") == click.style("caution", fg="yellow")
    assert style("error", "red") == click.style("error", fg="red")


def test_a_change_goes_on_to_a_make(home: Path) -> None:
    record = home / "content" / "projects" / "harbour" / "project.yaml"
    record.write_text(record.read_text("utf-8") + "note: In the blue box.\n", "utf-8")
    assert "Written: workshop/projects/harbour.html" in run(DOOR, "make", *options(home)).stdout


def test_who_reads_no_further_is_no_fault_of_ours(home: Path) -> None:
    reading, writing = os.pipe()
    os.close(reading)
    with os.fdopen(writing, "wb") as out:
        command = [sys.executable, "-c", DOOR, "make", *options(home)]
        said = subprocess.run(command, stdout=out, stderr=subprocess.PIPE, text=True, check=False)
    assert said.returncode == 1
    assert "Traceback" not in said.stderr
