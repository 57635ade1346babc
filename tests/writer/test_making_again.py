"""Making again: what has not changed is not built, rendered or written, and a kept result is the one made afresh."""

from __future__ import annotations

import os
import shutil
from datetime import date
from pathlib import Path

import pytest

from maker_site.writer.kept import FILE
from maker_site.writer.making import Made, make_site
from maker_site.writer.memory import Memory
from maker_site.writer.unchanged import unchanged
from tests.benchmarks.workshop import write_workshop
from tests.writer.conftest import Before

# One worker makes the sites that these tests compare with.
pytestmark = pytest.mark.xdist_group("making again")
PROJECTS = 8
TODAY = date(2026, 5, 1)


def copy_of(content: Path, folder: Path) -> Path:
    """Copy a workshop, every file of it an hour old."""
    copied = Path(shutil.copytree(content, folder))
    for path in copied.rglob("*"):
        os.utime(path, (1_750_000_000, 1_750_000_000))
    return copied


@pytest.fixture
def content(before: Before, tmp_path: Path) -> Path:
    """Return a workshop to write in, every file of it an hour old."""
    return copy_of(before.content, tmp_path / "content")


def make(content: Path, out: Path, memory: Memory | None = None) -> Made:
    """Make both copies."""
    return make_site(content, out, "print-room", TODAY, lambda what, done, of: None, memory)


def tree(out: Path) -> dict[str, bytes]:
    """Return every file of a site by its path, the tool's own folder left out."""
    files = (path for path in out.rglob("*") if path.is_file() and ".maker-site" not in path.parts)
    return {path.relative_to(out).as_posix(): path.read_bytes() for path in files}


def retitle(content: Path) -> str:
    """Give the first project another title; return its id."""
    path = sorted(content.glob("projects/*/project.yaml"))[0]
    lines = path.read_text("utf-8").splitlines()
    path.write_text("\n".join(["title: Moonlit weir", *lines[1:]]), "utf-8")
    return path.parent.name


def renote(content: Path) -> str:
    """Write another care line into the last project: nothing but its own pages says it. Return its id."""
    path = sorted(content.glob("projects/*/project.yaml"))[-1]
    path.write_text(path.read_text("utf-8") + "note: Kept in the blue box.\n", "utf-8")
    return path.parent.name


def press_once_more(content: Path) -> str:
    """Add a row to the log, like its last one; return the project of that row."""
    path = sorted(content.glob("press-log/*.csv"))[-1]
    text = path.read_text("utf-8")
    path.write_text(text + text.splitlines()[-1] + "\n", "utf-8")
    return text.splitlines()[-1].split(",")[1]


def withdraw(content: Path) -> str:
    """Put a project away, with its rows of the log; return its id."""
    home = sorted(content.glob("projects/*"))[1]
    shutil.rmtree(home)
    for log in content.glob("press-log/*.csv"):
        rows = [row for row in log.read_text("utf-8").splitlines() if f",{home.name}," not in row]
        log.write_text("\n".join(rows) + "\n", "utf-8")
    return home.name


def dearer(content: Path) -> str:
    """Ask more for labour: every price that is worked out is another."""
    path = content / "shop.yaml"
    path.write_text(path.read_text("utf-8").replace("14.00", "15.00"), "utf-8")
    return "shop"


def hotter(content: Path) -> str:
    """Let a press read hotter: its settings are other ones."""
    path = content / "presses" / "press-0.yaml"
    path.write_text(path.read_text("utf-8").replace("178 C", "171 C"), "utf-8")
    return "press-0"


def thicker(content: Path) -> str:
    """Make a blank thicker: which blanks are near to it changes."""
    path = sorted(content.glob("blanks/*.yaml"))[0]
    text = path.read_text("utf-8")
    path.write_text(text.replace("thickness: ", "thickness: 1"), "utf-8")
    return path.stem


def repay(content: Path) -> str:
    """Pay more for a delivery of a blank: what it is made into costs more."""
    path = next(each for each in sorted(content.glob("blanks/*.yaml")) if "paid: '" in each.read_text("utf-8"))
    path.write_text(path.read_text("utf-8").replace("paid: '", "paid: '1", 1), "utf-8")
    return path.stem


def rewrite(content: Path) -> str:
    """Say more in a write-up; return its project."""
    path = sorted(content.glob("projects/*/tutorial.md"))[0]
    path.write_text(path.read_text("utf-8") + "\nAnd wait for the hiss.\n", "utf-8")
    return path.parent.name


def bear_less(content: Path) -> str:
    """Let the blank that is pressed last bear less heat than it was given: a caution of its projects."""
    blank = sorted(content.glob("press-log/*.csv"))[-1].read_text("utf-8").splitlines()[-1].split(",")[2]
    path = content / "blanks" / f"{blank}.yaml"
    kept = [line for line in path.read_text("utf-8").splitlines() if not line.startswith("limit:")]
    path.write_text("\n".join([*kept, "limit: 90 C", ""]), "utf-8")
    return blank


EDITS = [retitle, renote, press_once_more, withdraw, dearer, hotter, thicker, repay, rewrite, bear_less]


@pytest.fixture(scope="module")
def afresh(before: Before, tmp_path_factory: pytest.TempPathFactory) -> list[dict[str, bytes]]:
    """The sites that are made, each into an empty folder, when one edit after the other was written."""
    folder = tmp_path_factory.mktemp("afresh")
    content, found = copy_of(before.content, folder / "content"), []
    for edit in EDITS:
        edit(content)
        make(content, folder / edit.__name__)
        found.append(tree(folder / edit.__name__))
    assert len({frozenset(each.items()) for each in (tree(before.site), *found)}) == len(EDITS) + 1, "each edit shows"
    return found


@pytest.mark.slow
def test_after_an_edit_every_byte_is_as_made_afresh(content: Path, out: Path, afresh: list[dict[str, bytes]]) -> None:
    for edit, wanted in zip(EDITS, afresh, strict=True):
        edit(content)
        make(content, out)
        assert tree(out) == wanted, edit.__name__


@pytest.mark.slow
def test_one_process_making_again_and_again_makes_the_same(
    content: Path, out: Path, afresh: list[dict[str, bytes]]
) -> None:
    memory = Memory()
    make(content, out, memory)
    for edit in EDITS:
        edit(content)
        make(content, out, memory)
    assert tree(out) == afresh[-1]


def touched(before: dict[str, int], content: Path) -> list[str]:
    """Return the paths at which anything differs, folders too."""
    now = look(content)
    return [path for path in before.keys() | now.keys() if before.get(path) != now.get(path)]


def look(content: Path) -> dict[str, int]:
    """Return what stands at each path, as a number that tells it from anything else."""
    return {
        path.relative_to(content).as_posix(): hash(path.read_bytes()) if path.is_file() else 0
        for path in content.rglob("*")
    }


@pytest.mark.slow
def test_told_what_was_touched_one_process_makes_the_same(
    content: Path, tmp_path: Path, afresh: list[dict[str, bytes]]
) -> None:
    memory = Memory()
    make(content, tmp_path / "again", memory)
    for edit, wanted in zip(EDITS, afresh, strict=True):
        earlier = look(content)
        edit(content)
        memory.tell(touched(earlier, content))
        make(content, tmp_path / "again", memory)
        assert tree(tmp_path / "again") == wanted, edit.__name__
    memory.write()
    assert make(content, tmp_path / "again").rendered == (), (
        "what it kept is as good as what a process of its own keeps"
    )


def test_told_what_was_touched_nothing_else_is_read(content: Path, out: Path) -> None:
    memory = Memory()
    make(content, out, memory)
    broken = sorted(content.glob("projects/*/project.yaml"))[0]
    broken.write_text("no record", "utf-8")
    project = renote(content)
    memory.tell([f"projects/{project}/project.yaml"])
    made = make(content, out, memory)
    assert made.rendered == (f"workshop/projects/{project}.html",)
    memory.tell([broken.relative_to(content).as_posix()])
    assert make(content, out, memory).changes is None, "now it is told"
    memory.tell(["projects"])
    assert make(content, out, memory).changes is None, "and not forgotten before it is mended"


def test_nothing_changed_nothing_rendered_nothing_written(before: Before, content: Path, out: Path) -> None:
    made, again = before.made, make(content, out)
    assert (again.rendered, again.changes.written if again.changes else None) == ((), ())
    assert (again.pages, again.pictures, again.problems) == (made.pages, made.pictures, made.problems)


def test_a_note_concerns_no_other_project_and_no_list(content: Path, out: Path) -> None:
    project = renote(content)
    made = make(content, out)
    rendered = made.rendered
    assert f"workshop/projects/{project}.html" in rendered
    of_projects = [each for each in rendered if each.startswith(("workshop/projects/", "workshop/cards/"))]
    assert of_projects == [f"workshop/projects/{project}.html"]
    assert len(made.built) <= 2, made.built
    assert not any(each.startswith("public/") for each in rendered), "a private note has nothing to do with the public"


def test_a_write_up_concerns_its_own_pages(content: Path, out: Path) -> None:
    project = rewrite(content)
    made = make(content, out)
    assert f"workshop/projects/{project}.html" in made.rendered
    others = ("catalogue", "costs", "settings", "blanks", "presses", "cards")
    assert not [each for each in made.built for other in others if each.startswith(f"workshop/{other}")]


def test_what_was_paid_concerns_the_pages_that_reckon_with_it(before: Before, content: Path, out: Path) -> None:
    blank = repay(content)
    rendered = make(content, out).rendered
    assert f"workshop/blanks/{blank}.html" in rendered
    assert not [each for each in rendered if each.startswith(("workshop/catalogue/", "workshop/cards/"))]
    assert len(rendered) < before.made.pages / 2


def test_a_pressing_concerns_the_pages_that_count_it(before: Before, content: Path, out: Path) -> None:
    project = press_once_more(content)
    rendered = make(content, out).rendered
    assert f"workshop/projects/{project}.html" in rendered
    assert len(rendered) < before.made.pages / 2


def test_a_title_concerns_the_public_pages_that_name_it(tmp_path: Path) -> None:
    content, out = tmp_path / "content", tmp_path / "site"
    write_workshop(content, 40, 7)
    made = make(content, out)
    record = next(
        each for each in sorted(content.glob("projects/*/project.yaml")) if "tutorial: 'yes'" in each.read_text("utf-8")
    )
    record.write_text("\n".join(["title: Moonlit weir", *record.read_text("utf-8").splitlines()[1:]]), "utf-8")
    rendered = {each for each in make(content, out).rendered if each.startswith("public/")}
    pages = (path for path in (out / "public").rglob("*.html") if "Moonlit weir" in path.read_text("utf-8"))
    named = {path.relative_to(out).as_posix() for path in pages}
    assert f"public/tutorials/{record.parent.name}.html" in named
    assert named <= rendered
    assert {each for each in rendered if each.startswith("public/tutorials/")} <= named
    assert len(named) < sum(each.startswith("public/") for each in made.rendered) / 2


def test_the_whole_is_known_to_be_as_it_was_without_reading(content: Path, out: Path) -> None:
    assert unchanged(content, out, "print-room", TODAY) is None
    _settle(content)
    made = make(content, out)
    known = unchanged(content, out, "print-room", TODAY)
    assert known is not None
    assert (known.pages, known.pictures, len(known.problems)) == (made.pages, made.pictures, len(made.problems))


def _change(what: str, content: Path, out: Path) -> None:
    match what:
        case "a record":
            retitle(content)
        case "a page":
            (out / "workshop" / "index.html").write_text("by hand", "utf-8")
        case "a letter of a page":
            page = out / "workshop" / "index.html"
            page.write_bytes(page.read_bytes().replace(b"<title>", b"<titlE>", 1))
        case "an interrupted make":
            (out / ".maker-site" / "journal.json").write_text("{", "utf-8")
        case "a photo":
            photos = sorted(content.glob("projects/*"))[0] / "photos"
            photos.mkdir()
            (photos / "new.jpg").write_bytes(b"")
        case "the theme":
            (content / "theme" / "assets").mkdir(parents=True)
            (content / "theme" / "assets" / "pages.css").write_text("", "utf-8")
        case "the cache":
            (out / FILE).unlink()
        case _:
            raise LookupError(what)


WHATEVER = ("a record", "a page", "a letter of a page", "an interrupted make", "the theme", "the cache", "a photo")


def test_whatever_changes_is_seen(content: Path, out: Path) -> None:
    theme = "print-room"
    # Last what can not be made: a photo that is none.
    for what in WHATEVER:
        _settle(content)
        make(content, out)
        assert unchanged(content, out, theme, TODAY) is not None, what
        assert unchanged(content, out, theme, date(2026, 5, 2)) is None
        _change(what, content, out)
        assert unchanged(content, out, theme, TODAY) is None, what


def test_a_file_from_the_future_is_never_taken_for_settled(content: Path, out: Path) -> None:
    record = sorted(content.glob("projects/*/project.yaml"))[0]
    os.utime(record, (4_000_000_000, 4_000_000_000))
    _settle(content)
    make(content, out)
    assert unchanged(content, out, "print-room", TODAY) is None


def test_another_theme_and_a_theme_nearer_by_are_seen(content: Path, tmp_path: Path) -> None:
    out, own = tmp_path / "site", tmp_path / "own"
    own.mkdir()
    (own / "theme.yaml").write_text("parent: print-room\n", "utf-8")
    _settle(content)
    _settle(own)
    make_site(content, out, str(own), TODAY, lambda what, done, of: None)
    assert unchanged(content, out, str(own), TODAY) is not None
    assert unchanged(content, out, "print-room", TODAY) is None
    (tmp_path / "print-room").mkdir()
    assert unchanged(content, out, str(own), TODAY) is not None
    (tmp_path / "print-room" / "theme.yaml").write_text("parent: ../print-room\n", "utf-8")
    assert unchanged(content, out, str(own), TODAY) is None, "it would be the parent now"


def test_a_page_that_was_lost_is_made_again(content: Path, out: Path) -> None:
    before = tree(out)
    (out / "workshop" / "catalogue" / "index.html").unlink()
    make(content, out)
    assert tree(out) == before


def _settle(content: Path) -> None:
    """Wait until no file was changed so lately that another change could bear the same time."""
    import time

    newest = max(path.stat().st_ctime_ns for path in content.rglob("*"))
    while time.time_ns() - newest < 150_000_000:
        time.sleep(0.02)
