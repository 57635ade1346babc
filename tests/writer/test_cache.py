"""The cache costs time only: whatever becomes of it, of clocks or of files, the site is the one made afresh."""

from __future__ import annotations

import os
import shutil
import sqlite3
import time
from collections.abc import Callable, Iterator
from contextlib import closing
from datetime import date
from pathlib import Path

import pytest
from babel.messages.catalog import Catalog
from babel.messages.mofile import write_mo
from PIL import Image

from maker_site.language import speech
from maker_site.media import probe
from maker_site.writer import gather, memory, sameness
from maker_site.writer.kept import FILE, Kept
from maker_site.writer.making import Made, make_site
from maker_site.writer.site_folder import SiteFolder, SiteFolderProblem
from tests.writer.conftest import Before

pytestmark = pytest.mark.xdist_group("cache")
PROJECTS = 6
TODAY = date(2026, 5, 1)
PHOTO = "set.jpg"


def make(content: Path, out: Path) -> Made:
    """Make both copies in this process."""
    return make_site(content, out, "print-room", TODAY, lambda what, done, of: None, workers=0)


def tree(out: Path) -> dict[str, bytes]:
    """Return every file of a site by its path, the tool's own folder left out."""
    files = (path for path in out.rglob("*") if path.is_file() and ".maker-site" not in path.parts)
    return {path.relative_to(out).as_posix(): path.read_bytes() for path in files}


def record(content: Path) -> Path:
    """Return the record of the first project."""
    return sorted(content.glob("projects/*/project.yaml"))[0]


def photo(content: Path) -> Path:
    """Return where a photo of the first project lies."""
    return record(content).parent / "photos" / PHOTO


def paint(path: Path, colour: tuple[int, int, int], width: int = 64) -> None:
    """Write a photo of one colour."""
    path.parent.mkdir(exist_ok=True)
    Image.new("RGB", (width, 48), colour).save(path, "JPEG")


@pytest.fixture(scope="module")
def before(written: Callable[[int], Path], tmp_path_factory: pytest.TempPathFactory) -> Before:
    """Return a workshop with a photo and the site made of it."""
    folder = tmp_path_factory.mktemp("cache")
    content = Path(shutil.copytree(written(PROJECTS), folder / "content"))
    paint(photo(content), (200, 30, 30))
    return Before(content, folder / "site", make(content, folder / "site"))


@pytest.fixture
def content(before: Before, tmp_path: Path) -> Path:
    """Return a workshop to write in."""
    return Path(shutil.copytree(before.content, tmp_path / "content"))


@pytest.fixture
def later(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Let a minute have gone by since every file was written."""
    now = time.time_ns
    monkeypatch.setattr("maker_site.writer.known.time.time_ns", lambda: now() + 60_000_000_000)
    return iter(())


def assert_as_afresh(content: Path, out: Path) -> Made:
    """Make again and compare every byte with what is made where nothing is kept."""
    made = make(content, out)
    fresh = out.with_name("afresh")
    make(content, fresh)
    assert tree(out) == tree(fresh)
    return made


def test_everything_lies_in_the_one_file(out: Path) -> None:
    assert {each.name for each in (out / ".maker-site").iterdir()} <= {
        "cache.sqlite",
        "lock",
        "made-here.txt",
        "manifest.json",
    }
    with closing(sqlite3.connect(out / FILE)) as file:
        kinds = {kind for (kind,) in file.execute("SELECT DISTINCT kind FROM kept")}
    assert "paper" in kinds


def test_a_damaged_or_deleted_cache_costs_time_only(content: Path, out: Path) -> None:
    before = tree(out)
    for damage in (None, b"", b"not a database", b"SQLite format 3\0" + bytes(4096)):
        (out / FILE).unlink() if damage is None else (out / FILE).write_bytes(damage)
        made = make(content, out)
        assert made.changes is not None
        assert made.changes.written == ()
        assert tree(out) == before
        assert make(content, out).rendered == ()


def test_a_file_of_another_form_is_begun_anew(content: Path, out: Path) -> None:
    with closing(sqlite3.connect(out / FILE)) as file, file:
        file.execute("DROP TABLE kept")
        file.execute("CREATE TABLE kept (other TEXT)")
        file.execute("PRAGMA user_version = 999")
    assert_as_afresh(content, out)
    assert make(content, out).rendered == ()


def test_a_make_that_broke_off_between_its_commit_and_its_notes(
    content: Path, out: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = record(content)
    first = path.read_text("utf-8")
    path.write_text("title: Moonlit weir\n" + first.split("\n", 1)[1], "utf-8")
    with monkeypatch.context() as broken:
        broken.setattr(Kept, "write", lambda self, *, patch=False: None)
        make(content, out)
    path.write_text(first, "utf-8")  # as the notes have it, and as the site has it no more
    assert_as_afresh(content, out)


def test_a_second_make_at_the_same_time_is_refused_and_spoils_nothing(content: Path, out: Path) -> None:
    kept = (out / FILE).read_bytes()
    with SiteFolder.open(out), pytest.raises(SiteFolderProblem):
        make(content, out)
    assert (out / FILE).read_bytes() == kept
    assert_as_afresh(content, out)


def test_a_record_edited_reads_no_photo_again(
    content: Path, out: Path, later: None, monkeypatch: pytest.MonkeyPatch
) -> None:
    make(content, out)
    record(content).write_text("title: Moonlit weir\n" + record(content).read_text("utf-8").split("\n", 1)[1], "utf-8")
    looked: list[Path] = []

    def counted(path: Path) -> object:
        looked.append(path)
        return probe(path)

    monkeypatch.setattr(gather, "probe", counted)
    make(content, out)
    assert looked == []
    photo(content).touch()
    make(content, out)
    assert looked == [photo(content)]


@pytest.mark.parametrize("at", [1_000_000_000, 4_000_000_000])
def test_another_photo_under_the_same_date_is_seen(content: Path, out: Path, later: None, at: int) -> None:
    path = photo(content)
    os.utime(path, (at, at))
    make(content, out)
    size = path.stat().st_size
    paint(path, (30, 30, 200))
    path.write_bytes(path.read_bytes().ljust(size, b"\0"))  # what follows the end of a JPEG is not shown
    assert path.stat().st_size == size
    os.utime(path, (at, at))
    assert_as_afresh(content, out)


def test_another_record_under_the_same_date_and_of_the_same_size_is_seen(content: Path, out: Path) -> None:
    path = record(content)
    os.utime(path, (1_000_000_000, 1_000_000_000))
    make(content, out)
    title, rest = path.read_text("utf-8").split("\n", 1)
    path.write_text(f"{title[:-1]}{'x' if title[-1] != 'x' else 'y'}\n{rest}", "utf-8")
    os.utime(path, (1_000_000_000, 1_000_000_000))
    assert assert_as_afresh(content, out).rendered


def test_another_program_builds_everything_anew(content: Path, out: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    everything = make(content, out.with_name("first")).built
    monkeypatch.setattr(memory, "program", lambda: "its next version")
    assert assert_as_afresh(content, out).built == everything


def test_a_changed_theme_file_shows_everywhere(content: Path, out: Path) -> None:
    own = content / "theme" / "assets" / "pages.css"
    own.parent.mkdir(parents=True)
    for text in ("body { color: red }", "body { color: tan }"):
        own.write_text(text, "utf-8")
        os.utime(own, (1_000_000_000, 1_000_000_000))
        make(content, out)
    assert_as_afresh(content, out)


def translate(folder: Path, words: str) -> None:
    """Write a catalogue that says "Catalogue" in other words, always with the same date."""
    file = folder / "de" / "LC_MESSAGES" / f"{speech.DOMAIN}.mo"
    file.parent.mkdir(parents=True, exist_ok=True)
    catalogue = Catalog(locale="de")
    catalogue.add("Catalogue", words)
    with file.open("wb") as opened:
        write_mo(opened, catalogue)
    os.utime(file, (1_000_000_000, 1_000_000_000))
    speech._catalogue.cache_clear()


def test_a_changed_translation_shows_everywhere(
    content: Path, out: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    catalogues = tmp_path / "program" / "catalogues"
    monkeypatch.setattr(speech, "CATALOGUES", catalogues)
    monkeypatch.setattr(sameness, "_PROGRAM", str(tmp_path / "program"))
    shop = content / "shop.yaml"
    shop.write_text(shop.read_text("utf-8").replace("locale: en_GB", "locale: de_DE"), "utf-8")
    try:
        translate(catalogues, "Zzfirst")
        make(content, out)
        assert b"Zzfirst" in (out / "workshop" / "index.html").read_bytes()
        translate(catalogues, "Zzsecond word")
        assert_as_afresh(content, out)
        assert b"Zzsecond word" in (out / "workshop" / "index.html").read_bytes()
    finally:
        speech._catalogue.cache_clear()
