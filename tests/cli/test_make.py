"""`maker-site make`: both copies or nothing, never a traceback, the last good site stays."""

import os
import re
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from maker_site.cli import main
from tests.small_workshop import write_workshop


def make(content: Path, out: Path, *options: str) -> Result:
    result = CliRunner().invoke(main, ["make", "--content", str(content), "--out", str(out), *options])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def tree(folder: Path) -> dict[str, bytes]:
    """Return every file of a folder but the tool's own notes."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and ".maker-site" not in path.parts
    }


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The small workshop, made once: a folder with content/ and site/."""
    home = tmp_path_factory.mktemp("small")
    result = make(write_workshop(home / "content"), home / "site")
    assert result.exit_code == 0, result.output
    return home


@pytest.mark.parametrize(
    "address",
    [
        "workshop/index.html",
        "workshop/catalogue/index.html",
        "workshop/projects/harbour.html",
        "workshop/cards/harbour.html",
        "workshop/settings/index.html",
        "workshop/settings/slate.html",
        "workshop/blanks/slate.html",
        "workshop/presses/clam.html",
        "workshop/menu.html",
        "public/index.html",
        "public/tutorials/harbour.html",
        "public/menu.html",
        "public/about.html",
    ],
)
def test_both_copies_have_their_pages(made: Path, address: str) -> None:
    assert (made / "site" / address).is_file()


def test_made_again_nothing_is_written(made: Path) -> None:
    before = {path: path.stat().st_mtime_ns for path in (made / "site").rglob("*.html")}

    result = make(made / "content", made / "site")

    assert " 0 written, 0 removed" in result.output
    assert {path: path.stat().st_mtime_ns for path in (made / "site").rglob("*.html")} == before


def test_made_afresh_every_byte_is_the_same(made: Path, tmp_path: Path) -> None:
    make(made / "content", tmp_path / "again")

    assert tree(tmp_path / "again") == tree(made / "site")


def test_a_project_taken_away_is_taken_from_the_site(tmp_path: Path) -> None:
    content, out = write_workshop(tmp_path / "content"), tmp_path / "site"
    (content / "projects/spare").mkdir()
    (content / "projects/spare/project.yaml").write_text("title: Spare\nblank: slate\n")
    make(content, out)
    assert (out / "workshop/projects/spare.html").is_file()

    (content / "projects/spare/project.yaml").unlink()
    (content / "projects/spare").rmdir()
    make(content, out)

    assert not (out / "workshop/projects/spare.html").exists()
    assert (out / "workshop/projects/harbour.html").is_file()


@pytest.mark.parametrize(
    ("fault", "said"),
    [
        ({"shop.yaml": "name: Test Bench\ncurrency: GBP\ncolour: red\n"}, "“colour” is not a field"),
        ({"shop.yaml": b"name: B\xff\ncurrency: GBP\n"}, "not UTF-8"),
        ({"projects/harbour/photos/set.jpg": b"\xff\xd8\xff\xe0 broken"}, "projects/harbour/photos/set.jpg"),
        (
            {"projects/harbour/project.yaml": "title: H\nblank: slate\nphotos: [{file: photos/no.jpg}]\n"},
            "there is no file",
        ),
        (
            {"projects/harbour/project.yaml": "title: H\nblank: slate\nphotos: [{file: ../../x.jpg}]\n"},
            "leaves the folder",
        ),
        (
            {"projects/harbour/project.yaml": "title: H\nblank: slate\nphotos: [{file: /etc/hosts}]\n"},
            "leaves the folder",
        ),
    ],
    ids=["unknown field", "not UTF-8", "broken picture", "missing file", "climbs out", "absolute"],
)
def test_a_fault_is_a_sentence_and_the_last_good_site_stays(
    made: Path, tmp_path: Path, fault: dict[str, str | bytes], said: str
) -> None:
    content, out = write_workshop(tmp_path / "content"), tmp_path / "site"
    make(content, out)
    before = tree(out)
    write_workshop(content, fault)

    result = make(content, out)

    assert result.exit_code == 1
    assert said in result.output
    assert "Traceback" not in result.output
    assert tree(out) == before


def test_a_photo_that_is_a_link_to_outside_is_refused(tmp_path: Path) -> None:
    secret = tmp_path / "secret.jpg"
    content = write_workshop(tmp_path / "content", {"projects/harbour/photos/set.jpg": None})
    secret.write_bytes(b"private")
    (content / "projects/harbour/photos").mkdir(exist_ok=True)
    (content / "projects/harbour/photos/set.jpg").symlink_to(secret)

    result = make(content, tmp_path / "site")

    assert result.exit_code == 1
    assert "leaves the content folder" in result.output


def test_an_output_folder_in_the_way_is_a_sentence(tmp_path: Path) -> None:
    (tmp_path / "site").write_text("a file, not a folder")

    result = make(write_workshop(tmp_path / "content"), tmp_path / "site")

    assert result.exit_code == 1
    assert "Traceback" not in result.output


def test_output_inside_the_records_is_wrong_use(tmp_path: Path) -> None:
    content = write_workshop(tmp_path / "content")

    assert make(content, content / "site").exit_code == 2


def test_an_unknown_theme_is_wrong_use_and_names_those_there_are(tmp_path: Path) -> None:
    result = make(write_workshop(tmp_path / "content"), tmp_path / "site", "--theme", "no-such")

    assert result.exit_code == 2
    assert "print-room" in result.output


def test_a_log_with_semicolons_and_a_byte_order_mark_is_simply_read(tmp_path: Path) -> None:
    log = "\ufeffdate;blank;press;temperature;time;pressed;good\r\n2026-04-18;slate;clam;200,5 C;5:00;4;3\r\n"

    result = make(write_workshop(tmp_path / "content", {"press-log/2026.csv": log}), tmp_path / "site")

    assert result.exit_code == 0
    assert "3 of 4" in (tmp_path / "site/workshop/blanks/slate.html").read_text()


def test_one_template_of_the_makers_own_wins(tmp_path: Path) -> None:
    content = write_workshop(tmp_path / "content", {"theme/pages/public/about.html": "<p>{{ frame.shop }}, my own</p>"})

    make(content, tmp_path / "site")

    assert (tmp_path / "site/public/about.html").read_text() == "<p>Test Bench, my own</p>"


def test_a_fault_in_a_template_names_its_file_and_line(tmp_path: Path) -> None:
    content = write_workshop(
        tmp_path / "content", {"theme/pages/public/about.html": "<p>\n{{ page.nothing_here }}</p>"}
    )

    result = make(content, tmp_path / "site")

    assert result.exit_code == 1
    assert re.search(r"about\.html, line 2", result.output)
    assert not (tmp_path / "site/public/index.html").exists()


def test_words_of_a_record_are_escaped(tmp_path: Path) -> None:
    record = "title: '<script>alert(1)</script> & co'\nblank: slate\n"
    content = write_workshop(tmp_path / "content", {"projects/harbour/project.yaml": record})

    make(content, tmp_path / "site")

    page = (tmp_path / "site/workshop/projects/harbour.html").read_text()
    assert "<script>alert" not in page
    assert "&lt;script&gt;alert(1)&lt;/script&gt; &amp; co" in page


@pytest.mark.slow
def test_ctrl_c_leaves_nothing_half_made(tmp_path: Path) -> None:
    content = write_workshop(tmp_path / "content")
    for number in range(400):
        folder = content / f"projects/piece-{number}"
        folder.mkdir()
        (folder / "project.yaml").write_text(f"title: Piece {number}\nblank: slate\n")
    command = Path(sys.executable).with_name("maker-site")
    running = subprocess.Popen(
        [command, "make", "--content", content, "--out", tmp_path / "site"],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env={**os.environ, "PYTHONDONTWRITEBYTECODE": "1"},
    )
    staging = tmp_path / "site/.maker-site/staging"
    patience = time.monotonic() + 30
    while time.monotonic() < patience and not (staging.is_dir() and any(staging.iterdir())):
        time.sleep(0.01)
    running.send_signal(signal.SIGINT)
    _, told = running.communicate(timeout=60)

    assert running.returncode != 0
    assert b"Traceback" not in told
    assert tree(tmp_path / "site") == {}
