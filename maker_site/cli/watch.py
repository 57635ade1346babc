"""`maker-site watch`: make, show it in the browser, and make again whenever a file is saved."""

from __future__ import annotations

import gc
import json
import logging
import os
import re
import threading
import webbrowser
from collections.abc import Iterator, Sequence
from datetime import date
from pathlib import Path
from typing import Any, Final

import click
from livereload.handlers import LiveReloadHandler, LiveReloadJSHandler, StaticFileHandler
from tornado import httputil, web
from tornado.ioloop import IOLoop
from watchfiles import watch

from maker_site.cli.problems import tell_problems
from maker_site.records import Severity
from maker_site.writer.making import Made, make_site
from maker_site.writer.memory import Memory
from maker_site.writer.rendering import TemplateProblem
from maker_site.writer.site_folder import SiteFolderProblem, check_out
from maker_site.writer.themes import Theme, ThemeProblem, theme

HOST: Final = "127.0.0.1"
_OUR_NAMES: Final = r"(?:127\.0\.0\.1|localhost)"
"""Names this machine calls itself by: a page elsewhere that leads its own name here is not served."""
_TOGETHER_MS: Final = 400
"""Saves that follow each other within `_QUIET_MS` make one rebuild, for so long at most."""
_QUIET_MS: Final = 40
_SCRIPT: Final = """<script>
document.addEventListener("DOMContentLoaded", function () {
  var live = document.createElement("script");
  live.src = "/livereload.js?port=" + location.port + "&snipver=1";
  document.head.appendChild(live);
  fetch("/-problems").then(function (answer) { return answer.json(); }).then(function (problems) {
    if (!problems.length) { return; }
    var banner = document.createElement("div");
    banner.id = "maker-site-problems";
    banner.setAttribute("role", "alert");
    banner.lang = "en";
    banner.dir = "ltr";
    banner.style.cssText = "position:sticky;top:0;z-index:99;margin:0;padding:12px 16px;max-height:50vh;overflow:auto;"
      + "background:#7a1f12;color:#fff;font:16px/1.4 sans-serif";
    var head = document.createElement("strong");
    head.textContent = "Not made again. This is the last good page. Mend and save:";
    var list = document.createElement("ul");
    problems.forEach(function (said) {
      var item = document.createElement("li");
      item.textContent = said;
      list.appendChild(item);
    });
    banner.append(head, list);
    document.body.prepend(banner);
  });
});
</script>"""
_POLICY: Final = re.compile(rb"<meta http-equiv=\"Content-Security-Policy\"[^>]*>")
_NOTHING_YET: Final = (
    '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Not made yet</title></head>'
    "<body><p>Nothing is made yet. It appears here as soon as the records are mended.</p></body></html>"
)


def run(content: Path, out: Path, theme_name: str, port: int, *, opens: bool) -> None:
    """Make, serve and watch until Ctrl-C; the last good pages stay up while the records have problems."""
    if (refused := check_out(out, content)) is not None:
        raise click.UsageError(refused)
    try:
        used = theme(theme_name, content)
    except ThemeProblem as problem:
        raise click.UsageError(str(problem)) from problem
    bench = _Bench(content, out, theme_name)
    bench.make()
    bench.write()
    try:
        _application(bench).listen(port, address=HOST)
    except OSError as error:
        message = f"port {port} can't be had ({error.strerror}); choose another with --port"
        raise click.UsageError(message) from error
    address = f"http://{HOST}:{port}/workshop/index.html"
    click.echo(f"Serving {address} to this computer alone. Ctrl-C ends it.")
    _serve(bench, used, address if opens else None)


def _serve(bench: _Bench, used: Theme, address: str | None) -> None:
    loop = IOLoop.current()
    ended = threading.Event()
    folders = [folder.absolute() for folder in (bench.content, *used.folders) if folder.is_dir()]

    def rebuild() -> None:
        for seen in watch(*folders, debounce=_TOGETHER_MS, step=_QUIET_MS, stop_event=ended, raise_interrupt=False):
            bench.make([path for _, path in seen])
            loop.add_callback(LiveReloadHandler.reload_waiters)
            bench.write()  # nobody waits for it

    watcher = threading.Thread(target=rebuild)
    watcher.start()
    if address:
        threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()
    try:
        loop.start()
    except KeyboardInterrupt:
        click.echo()
    finally:
        ended.set()
        watcher.join()  # a make that has begun is finished


class _Bench:
    """Makes again and again, and knows what was wrong the last time."""

    filepath = "*"
    """What livereload names to the browser: the whole page is loaded again."""
    _tasks = True
    """As livereload's own watcher has them: there is something to watch."""

    def __init__(self, content: Path, out: Path, theme_name: str) -> None:
        self.content, self.out, self._theme = content, out, theme_name
        self._memory = Memory()
        self.problems: tuple[str, ...] = ()

    def make(self, touched: Sequence[str] | None = None) -> None:
        """Make, tell the terminal, and note the errors for the page. `touched` are the paths that are not as before."""
        self._memory.tell(None if touched is None else _inside(self.content, touched))
        today = date.today()  # noqa: DTZ011 - the maker's own calendar day is meant
        try:
            made = make_site(self.content, self.out, self._theme, today, lambda *_: None, self._memory)
        except (ThemeProblem, TemplateProblem, SiteFolderProblem) as problem:
            self.problems = (str(problem),)
            click.secho(str(problem), fg="red", err=True)
            return
        tell_problems(made.problems)
        self.problems = tuple(_sentences(made))
        if made.changes is None:
            click.secho("Not made; the last good pages stay.", fg="red", err=True)
            return
        written, removed = len(made.changes.written), len(made.changes.removed)
        click.echo(f"Made: {len(made.rendered)} pages rendered, {written} files written, {removed} removed.")

    def write(self) -> None:
        """Put on disk what the next `make` need not work out again, and look for garbage while nobody waits."""
        self._memory.write()
        gc.collect()
        gc.freeze()


def _inside(content: Path, paths: Sequence[str]) -> list[str] | None:
    """Return paths from the content folder, with forward slashes; None where one lies elsewhere: in the theme."""
    root = Path(os.path.abspath(content))  # noqa: PTH100 - links stay as they are
    try:
        return [Path(path).relative_to(root).as_posix() for path in paths]
    except ValueError:
        return None


def _sentences(made: Made) -> Iterator[str]:
    """Yield the errors as the page shows them; cautions stand on the workshop's own front page."""
    for each in made.problems if made.changes is None else ():
        if each.severity is Severity.ERROR:
            where = f"{each.file}, line {each.line}" if each.line else each.file
            yield f"{where}: {f'{each.field}: ' if each.field else ''}{each.message}"


def _application(bench: _Bench) -> web.Application:
    """Return what answers: the site, the browser's way to hear of changes, and what is wrong."""
    LiveReloadHandler.watcher = bench
    LiveReloadHandler.live_css = False
    logging.getLogger("livereload").setLevel(logging.ERROR)
    logging.getLogger("tornado.access").setLevel(logging.ERROR)
    application = web.Application(transforms=[_Injector])
    application.add_handlers(
        _OUR_NAMES,
        [
            (r"/", web.RedirectHandler, {"url": "/workshop/index.html", "permanent": False}),
            (r"/livereload", _Live),
            (r"/livereload\.js", LiveReloadJSHandler),
            (r"/-problems", _Problems, {"bench": bench}),
            *(
                (rf"/{copy}/(.*)", _Files, {"path": str(bench.out / copy), "default_filename": "index.html"})
                for copy in ("workshop", "public")
            ),
        ],
    )
    return application


class _Injector(web.OutputTransform):
    """Puts the script into a page on its way out, and takes off the page's policy, which lets no script of ours in.

    The file on the disk keeps its policy and has no script.
    """

    def __init__(self, request: httputil.HTTPServerRequest) -> None:
        """For tornado, which makes one for each answer."""

    def transform_first_chunk(
        self,
        status_code: int,
        headers: httputil.HTTPHeaders,
        chunk: bytes,
        finishing: bool,  # noqa: FBT001 - tornado's own
    ) -> tuple[int, httputil.HTTPHeaders, bytes]:
        """Return the first part of an answer, which holds the whole head of a page."""
        if "html" in headers.get("Content-Type", ""):
            whole = _POLICY.sub(b"", chunk, count=1).replace(b"</head>", _SCRIPT.encode() + b"</head>", 1)
            if "Content-Length" in headers:
                headers["Content-Length"] = str(int(headers["Content-Length"]) + len(whole) - len(chunk))
            chunk = whole
        return status_code, headers, chunk


class _Live(LiveReloadHandler):  # type: ignore[misc]
    """The browser's ear, for our own pages only."""

    def check_origin(self, origin: str) -> bool:
        """Tell whether a page of ours asks."""
        return bool(origin.removeprefix("http://") == self.request.host)


class _Problems(web.RequestHandler):
    """What keeps the site from being made, as a list of sentences."""

    def initialize(self, bench: _Bench) -> None:
        """Be handed the bench."""
        self._bench = bench

    def get(self) -> None:
        """Answer."""
        self.set_header("Content-Type", "application/json")
        self.set_header("Cache-Control", "no-store")
        self.write(json.dumps(self._bench.problems))


class _Files(StaticFileHandler):  # type: ignore[misc]
    """The files of the site, never from the browser's cache."""

    def set_extra_headers(self, path: str) -> None:
        """Keep the browser from keeping."""
        self.set_header("Cache-Control", "no-store")

    def write_error(self, status_code: int, **about: Any) -> None:
        """Say that there is no such page, with an ear for when there is."""
        self.set_header("Content-Type", "text/html; charset=utf-8")
        self.finish(_NOTHING_YET)
