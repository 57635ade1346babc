"""One process takes up what another left: whoever made last, and however it ended, the site is the one made afresh."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from maker_site.writer.kept import FILE
from maker_site.writer.memory import Memory
from maker_site.writer.rendering import TemplateProblem
from tests.writer.test_making_again import make, press_once_more, renote, retitle, rewrite, tree, withdraw

pytestmark = pytest.mark.xdist_group("taking up")
PROJECTS = 8
BROKEN = "{{ page.no_such_thing }}"


def afresh(content: Path, out: Path) -> dict[str, bytes]:
    """Return the site as it is made into an empty folder."""
    shutil.rmtree(out.with_name("afresh"), ignore_errors=True)
    make(content, out.with_name("afresh"))
    return tree(out.with_name("afresh"))


def told(memory: Memory, content: Path, out: Path, *paths: str) -> None:
    """Make again in the process that watches, which has heard of these paths."""
    memory.tell(paths)
    make(content, out, memory)


def test_who_watches_takes_up_what_a_make_left(content: Path, out: Path) -> None:
    name = renote(content)
    made = make(content, out, Memory())

    assert made.built == (f"workshop/projects/{name}",)
    assert tree(out) == afresh(content, out)


def test_a_make_takes_up_what_who_watched_left(content: Path, out: Path) -> None:
    memory = Memory()
    make(content, out, memory)
    name = retitle(content)
    told(memory, content, out, f"projects/{name}/project.yaml")
    memory.write()

    assert make(content, out).built == ()
    assert tree(out) == afresh(content, out)


def test_an_edit_taken_back_when_nobody_watches_any_more_is_seen(content: Path, out: Path) -> None:
    record = sorted(content.glob("projects/*/project.yaml"))[0]
    first, memory = record.read_text("utf-8"), Memory()
    make(content, out, memory)
    retitle(content)
    told(memory, content, out, f"projects/{record.parent.name}/project.yaml")
    memory.write()
    record.write_text(first, "utf-8")
    make(content, out)

    assert tree(out) == afresh(content, out)


@pytest.mark.parametrize("writes", [True, False])
def test_a_make_while_somebody_watches(content: Path, out: Path, writes: bool) -> None:
    memory = Memory()
    make(content, out, memory)
    if writes:
        memory.write()
    retitle(content)
    make(content, out)
    name = rewrite(content)
    told(memory, content, out, f"projects/{name}/tutorial.md", *_records(content))
    assert tree(out) == afresh(content, out)
    memory.write()
    press_once_more(content)
    make(content, out)
    assert tree(out) == afresh(content, out)


def test_a_project_put_away_takes_its_pages_and_its_paper_along(content: Path, out: Path) -> None:
    name = withdraw(content)
    make(content, out)

    assert [address for address in tree(out) if name in address] == []
    assert tree(out) == afresh(content, out)


@pytest.mark.parametrize("watches", [True, False])
def test_a_make_that_failed_in_the_middle_is_made_good(content: Path, out: Path, watches: bool) -> None:
    memory = Memory() if watches else None
    make(content, out, memory)
    name = retitle(content)
    broken = content / "theme" / "pages" / "workshop" / "project.html"
    broken.parent.mkdir(parents=True)
    broken.write_text(BROKEN, "utf-8")
    with pytest.raises(TemplateProblem):
        make(content, out, memory)
    broken.unlink()
    renote(content)
    if memory:
        memory.tell(None)
    make(content, out, memory)

    assert tree(out) == afresh(content, out)
    assert f"workshop/projects/{name}.html" in tree(out)


@pytest.mark.parametrize("newer", ["cache", "site"])
def test_a_cache_and_a_site_of_different_makes_do_not_go_together(
    content: Path, out: Path, tmp_path: Path, newer: str
) -> None:
    shutil.copytree(out, tmp_path / "old")
    retitle(content)
    make(content, out)
    if newer == "site":
        shutil.copy(tmp_path / "old" / FILE, out / FILE)
    else:
        kept = (out / FILE).read_bytes()
        shutil.rmtree(out)
        shutil.copytree(tmp_path / "old", out)
        (out / FILE).write_bytes(kept)
    renote(content)
    make(content, out)

    assert tree(out) == afresh(content, out)


def test_a_file_put_into_the_site_by_hand_costs_nothing_to_be_made_anew(content: Path, out: Path) -> None:
    make(content, out)
    (out / "public" / "mine.txt").write_text("left alone", "utf-8")
    name = renote(content)

    assert make(content, out).built == (f"workshop/projects/{name}",)
    assert (out / "public" / "mine.txt").read_text("utf-8") == "left alone"


@pytest.mark.parametrize("lost", ["page", "card", "menu", "sign"])
def test_what_was_lost_from_the_site_is_made_again(content: Path, out: Path, lost: str) -> None:
    make(content, out)
    whole = tree(out)
    names = {
        "page": "workshop/projects/*.html",
        "card": "workshop/**/*.pdf",
        "menu": "public/*.pdf",
        "sign": "public/social/*",
    }
    sorted(out.glob(names[lost]))[0].unlink()
    make(content, out)

    assert tree(out) == whole


def _records(content: Path) -> list[str]:
    return [path.relative_to(content).as_posix() for path in content.glob("projects/*/project.yaml")]
