"""Watching: the pages are served to this computer alone, follow what is saved, and stay up while it is wrong."""

from __future__ import annotations

import contextlib
import http.client
import json
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from tests.benchmarks.workshop import write_workshop

pytestmark = [pytest.mark.slow, pytest.mark.xdist_group("watching")]
_PATIENCE = 60
"""Seconds; on a busy machine a make takes long."""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return where all is that one run of the command has to do with."""
    return tmp_path_factory.mktemp("watched")


@pytest.fixture(scope="module")
def content(folder: Path) -> Path:
    """Return an invented workshop of six projects; a test that changes it puts it back."""
    write_workshop(folder / "content", 6, 7)
    return folder / "content"


@pytest.fixture(scope="module")
def port(content: Path, folder: Path) -> Iterator[int]:
    """Watch the workshop at a port of its own, for all tests here, and end as Ctrl-C does."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        number = int(free.getsockname()[1])
    words = ["watch", "--content", str(content), "--out", str(folder / "site"), "--port", str(number), "--no-open"]
    # What is started in the background ignores Ctrl-C, and so does all that it starts, unless it is told not to.
    code = "import signal; signal.signal(signal.SIGINT, signal.default_int_handler)\n"
    code += "from maker_site.cli import main; main()"
    with (folder / "said.txt").open("w") as said:
        watching = subprocess.Popen([sys.executable, "-c", code, *words], stdout=said, stderr=said)
    try:
        _until(lambda: "Serving" in (folder / "said.txt").read_text())
        yield number
    finally:
        watching.send_signal(signal.SIGINT)
        assert watching.wait(_PATIENCE) == 0


def _until(holds: Callable[[], bool]) -> None:
    end = time.monotonic() + _PATIENCE
    while not holds():
        assert time.monotonic() < end, "it never came"
        time.sleep(0.05)


def _get(port: int, path: str, host: str | None = None) -> tuple[int, str]:
    with contextlib.closing(http.client.HTTPConnection("127.0.0.1", port, timeout=_PATIENCE)) as connection:
        connection.request("GET", path, headers={"Host": host or f"127.0.0.1:{port}"})
        answer = connection.getresponse()
        return answer.status, answer.read().decode()


def test_pages_follow_what_is_saved_and_stay_up_while_it_is_wrong(content: Path, folder: Path, port: int) -> None:
    project = sorted(content.glob("projects/*/project.yaml"))[0]
    good = project.read_text("utf-8").splitlines()
    page = f"/workshop/projects/{project.parent.name}.html"
    assert "livereload.js" in _get(port, page)[1]
    assert "livereload.js" not in (folder / "site" / page.lstrip("/")).read_text("utf-8"), "only on its way out"
    for number in range(20):
        project.write_text("\n".join([f"title: Saved {number} times", *good[1:]]), "utf-8")
    _until(lambda: "Saved 19 times" in _get(port, page)[1])
    assert (folder / "said.txt").read_text().count("Made:") <= 3, "many saves at once are one rebuild, or nearly"
    project.write_text("\n".join([*good, "colour of the van: blue"]), "utf-8")
    _until(lambda: json.loads(_get(port, "/-problems")[1]) != [])
    assert "colour of the van" in _get(port, "/-problems")[1]
    assert "Saved 19 times" in _get(port, page)[1]
    project.write_text("\n".join(good), "utf-8")
    _until(lambda: json.loads(_get(port, "/-problems")[1]) == [])


@pytest.mark.parametrize(
    "path", ["/.maker-site/manifest.json", "/workshop/../.maker-site/manifest.json", "/../shop.yaml"]
)
def test_nothing_but_the_copies_is_served(path: str, port: int) -> None:
    assert _get(port, path)[0] in (403, 404)


def test_a_page_elsewhere_that_leads_its_name_here_gets_nothing(port: int) -> None:
    assert _get(port, "/workshop/index.html", host="elsewhere.example")[0] == 404
    assert _get(port, "/workshop/index.html", host=f"localhost:{port}")[0] == 200
