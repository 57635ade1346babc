"""How long after a save the browser can show it.

    python -m tests.benchmarks.watching CONTENT OUT [--saves 5]

`watch` runs on a workshop, which is written to, and on its site, made already or not. The script that stands in its
pages is played by a web socket. Each save writes another private note into a project's record. The clock runs from
before the file is written until the page that was asked for, after the word to load it again came, holds the new note.
"""

import argparse
import asyncio
import json
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from tornado.httpclient import AsyncHTTPClient
from tornado.websocket import WebSocketClientConnection, websocket_connect

from .edits import write_a_note
from .stopwatch import Run, Timing

HOST = "127.0.0.1"
PATIENCE = 900
"""Seconds that a first make may take."""
SOON = 60
"""Seconds that a rebuild may take."""
CALM = 1.5
"""Seconds between two saves: each is one of its own."""
HELLO = json.dumps({"command": "hello", "protocols": ["http://livereload.com/protocols/official-7"]})


def timing(name: str, content: Path, out: Path, saves: int) -> Timing:
    """Return the time from each save to its page."""
    with _watching(content, out) as port:
        runs = asyncio.run(_saves(content, port, saves))
    return Timing(name, tuple(runs))


@contextmanager
def _watching(content: Path, out: Path) -> Iterator[int]:
    with socket.socket() as free:
        free.bind((HOST, 0))
        port = int(free.getsockname()[1])
    said = out.with_name(f"{out.name}-said.txt")
    code = "from maker_site.cli.door import main; main()"
    words = ["watch", "--content", content, "--out", out, "--port", str(port), "--no-open"]
    with said.open("w") as heard:
        watching = subprocess.Popen([sys.executable, "-c", code, *words], stdout=heard, stderr=heard)
    try:
        end = time.monotonic() + PATIENCE
        while "Serving" not in said.read_text("utf-8"):
            if watching.poll() is not None or time.monotonic() > end:
                raise RuntimeError(f"watch never served: {said.read_text('utf-8')}")
            time.sleep(0.1)
        yield port
    finally:
        watching.send_signal(signal.SIGINT)
        watching.wait(PATIENCE)


async def _saves(content: Path, port: int, saves: int) -> list[Run]:
    record = sorted(content.glob("projects/*/project.yaml"))[0]
    page = f"http://{HOST}:{port}/workshop/projects/{record.parent.name}.html"
    ear = await websocket_connect(f"ws://{HOST}:{port}/livereload")
    await ear.write_message(HELLO)
    await ear.write_message(json.dumps({"command": "info", "url": page}))
    runs = []
    for number in range(saves + 1):
        await asyncio.sleep(CALM)
        begun = time.perf_counter()
        note = write_a_note(record)
        await _told(ear)
        answer = await AsyncHTTPClient().fetch(page)
        seconds = time.perf_counter() - begun
        if note not in answer.body.decode():
            raise RuntimeError(f"told to load the page again, which does not say {note}")
        if number:  # the first warms up
            runs.append(Run(seconds, 0.0, 0))
    ear.close()
    return runs


async def _told(ear: WebSocketClientConnection) -> None:
    while True:
        message = await asyncio.wait_for(ear.read_message(), SOON)
        if message is None:
            raise RuntimeError("watch closed the web socket")
        if json.loads(message).get("command") == "reload":
            return


def main() -> None:
    """Read the command line and print the times."""
    wanted = argparse.ArgumentParser(prog="python -m tests.benchmarks.watching", description=__doc__)
    wanted.add_argument("content", type=Path)
    wanted.add_argument("out", type=Path)
    wanted.add_argument("--saves", type=int, default=5)
    asked = wanted.parse_args()
    found = timing("watch, from a save to its page", asked.content, asked.out, asked.saves)
    print(", ".join(f"{run.seconds * 1000:.0f} ms" for run in found.runs))


if __name__ == "__main__":
    main()
