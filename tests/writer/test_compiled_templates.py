"""Templates are compiled once and kept in the user's own folder; whatever becomes of that, pages are the same."""

from __future__ import annotations

from pathlib import Path

import pytest
from jinja2 import Environment

from maker_site.language import ENGLISH, speaking
from maker_site.pages.page import Page
from maker_site.pages.parts import Link
from maker_site.pages.workshop.views import WorkshopFrame
from maker_site.writer import rendering
from maker_site.writer.rendering import Renderer
from maker_site.writer.themes import theme

FRAME = WorkshopFrame("Bench", None, None, "en-GB", "ltr", "en-GB", (Link("Home", "index.html"),))
TEMPLATE = "{{ title }} is read as {{ page }}\n"


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Give the user's folder, with nothing in it."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return tmp_path / "cache" / "maker-site"


@pytest.fixture
def compiled(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Note which templates are compiled."""
    names: list[str] = []
    compile_one = Environment.compile

    def noted(self: Environment, source: str, name: str, *args: object, **kwargs: object) -> object:
        names.append(name)
        return compile_one(self, source, name, *args, **kwargs)  # type: ignore[call-overload]

    monkeypatch.setattr(Environment, "compile", noted)
    return names


def rendered(tmp_path: Path, program: str = "one", text: str = TEMPLATE) -> str:
    """Render a page as a process does that has just begun."""
    own = tmp_path / "content" / "theme" / "pages" / "workshop"
    own.mkdir(parents=True, exist_ok=True)
    (own / "home.html").write_text(text, "utf-8")
    rendering._COMPILED._kept.clear()
    with speaking(ENGLISH):
        page = Page("index.html", "workshop/home.html", "Home", "a page")
        return Renderer(theme("print-room", tmp_path / "content"), FRAME, program).html(page)


def test_the_next_process_compiles_nothing(tmp_path: Path, folder: Path, compiled: list[str]) -> None:
    first = rendered(tmp_path)
    compiled.clear()

    assert rendered(tmp_path) == first == "Home is read as a page\n"
    assert compiled == []


@pytest.mark.parametrize("change", ["text", "program"])
def test_another_text_or_program_is_compiled_anew(
    tmp_path: Path, folder: Path, compiled: list[str], change: str
) -> None:
    rendered(tmp_path)
    compiled.clear()

    if change == "text":
        assert rendered(tmp_path, text="Mended\n") == "Mended\n"
    else:
        assert rendered(tmp_path, program="two") == "Home is read as a page\n"
        assert len(list(folder.glob("templates-*"))) == 1
    assert "workshop/home.html" in compiled


@pytest.mark.parametrize("spoil", [b"", b"rubbish", "cut", "one byte"])
def test_a_damaged_template_is_compiled_anew(tmp_path: Path, folder: Path, spoil: str | bytes) -> None:
    first = rendered(tmp_path)
    for file in folder.rglob("*"):
        if file.is_file():
            whole = file.read_bytes()
            changed = {"cut": whole[:-7], "one byte": whole[:-1] + bytes([whole[-1] ^ 1])}
            file.write_bytes(spoil if isinstance(spoil, bytes) else changed[spoil])

    assert rendered(tmp_path) == first


def test_where_nothing_can_be_kept_pages_are_the_same(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "a file").write_text("in the way")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "a file"))

    assert rendered(tmp_path) == "Home is read as a page\n"
