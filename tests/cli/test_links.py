"""Addresses elsewhere are asked only when the maker says so. A server on this machine stands for the web."""

import threading
import time
from collections.abc import Iterator
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import ClassVar

import pytest
from click.testing import CliRunner

from maker_site.cli import main
from maker_site.cli.links import cautions_about, trouble
from maker_site.records import load
from maker_site.records.outward_links import OutwardLink, outward_links
from tests.small_workshop import FILES, write_workshop


class Web(BaseHTTPRequestHandler):
    asked: ClassVar[list[str]] = []

    def answer(self) -> None:
        type(self).asked.append(f"{self.command} {self.path}")
        if self.path == "/slow":
            time.sleep(0.6)
        code = {"/gone": 404, "/broken": 500, "/moved": 301}.get(self.path, 200)
        if self.path == "/no-head" and self.command == "HEAD":
            code = 405
        self.send_response(code)
        if code == 301:
            self.send_header("Location", "/here")
        self.send_header("Content-Length", "0")
        self.end_headers()

    do_HEAD = do_GET = answer  # noqa: N815 - the names that the server calls

    def log_message(self, *_: object) -> None:
        """Say nothing."""


@pytest.fixture
def web() -> Iterator[str]:
    Web.asked = []
    server = ThreadingHTTPServer(("127.0.0.1", 0), Web)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()
    thread.join()


@pytest.mark.parametrize("path", ["/here", "/moved", "/no-head"])
def test_what_answers_is_well(web: str, path: str) -> None:
    assert trouble(f"{web}{path}") is None


@pytest.mark.parametrize(("path", "said"), [("/gone", "404 (Not Found)"), ("/broken", "500 (Internal Server Error)")])
def test_what_does_not_is_told_by_its_number(web: str, path: str, said: str) -> None:
    assert said in (trouble(f"{web}{path}") or "")


def test_a_host_that_keeps_one_waiting_or_is_not_there_is_told(web: str) -> None:
    assert "has not answered in 0.1 seconds" in (trouble(f"{web}/slow", 0.1) or "")
    assert "can't be reached" in (trouble("http://127.0.0.1:9/", 2) or "")  # port 9 is kept for discarding


def test_an_address_is_asked_once_however_many_places_name_it(web: str) -> None:
    links = [OutwardLink(f"{web}/gone#{number}", "a.yaml", number, "link") for number in range(3)]
    found = cautions_about(links, lambda done, of: None, 5)
    assert [problem.line for problem in found] == [0, 1, 2]
    assert Web.asked.count("HEAD /gone") == 1


def test_the_places_of_links_are_known(tmp_path: Path) -> None:
    content = write_workshop(
        tmp_path,
        {
            "blanks/slate.yaml": FILES["blanks/slate.yaml"] + "link: https://stone.example/sc?a=1\n",
            "projects/harbour/tutorial.md": "One\n\nSee [this](https://t.example/a_(b)) and <https://u.example/x>.\n",
            "articles/one.md": "# A\n\nhttps://v.example/end.\n",
        },
    )
    workshop = load(content).workshop
    assert workshop is not None
    assert [(each.file, each.line, each.address) for each in outward_links(workshop)] == [
        ("articles/one.md", 3, "https://v.example/end"),
        ("blanks/slate.yaml", 5, "https://stone.example/sc?a=1"),
        ("projects/harbour/tutorial.md", 3, "https://t.example/a_(b)"),
        ("projects/harbour/tutorial.md", 3, "https://u.example/x"),
    ]


def test_check_asks_nothing_unless_it_is_told_to(web: str, tmp_path: Path) -> None:
    blank = FILES["blanks/slate.yaml"] + f"link: {web}/gone\n"
    content = write_workshop(tmp_path, {"blanks/slate.yaml": blank})
    plain = CliRunner().invoke(main, ["check", "--content", str(content), "--plain"])
    assert (plain.exit_code, Web.asked) == (0, [])
    asked = CliRunner().invoke(main, ["check", "--content", str(content), "--plain", "--links"])
    assert asked.exit_code == 0, asked.output
    assert "blanks/slate.yaml:5: caution: link: " in asked.output
    assert "answers 404" in asked.output
