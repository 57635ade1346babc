"""Drawings made to read what they should not, or to use up what there is."""

import base64
import io
import time
from pathlib import Path

import pytest
from PIL import Image

from maker_site.media import PictureProblem
from maker_site.media.artwork import coverage, make_preview, plan_preview, read_artwork
from maker_site.media.artwork.svg import checked_svg
from tests.media.artwork.drawings import pdf, svg, written


@pytest.fixture
def secret(tmp_path: Path) -> Path:
    """A black picture beside the drawing, which is never to be seen in it."""
    path = tmp_path / "secret.png"
    Image.new("RGB", (10, 10), "black").save(path)
    return path


@pytest.mark.parametrize(
    "inside",
    [
        '<image href="{}" width="100" height="50"/>',
        '<image xlink:href="{}" width="100" height="50"/>',
        '<image xlink:href="{}" href="{}" width="100" height="50"/>',
        '<filter id="f"><feImage href="{}"/></filter><rect width="100" height="50" fill="#fff" filter="url(#f)"/>',
        '<image href="file://{}" width="100" height="50"/>',
        '<use href="{}#a"/>',
    ],
)
def test_nothing_outside_a_drawing_is_read(tmp_path: Path, secret: Path, inside: str):
    path = written(tmp_path, "a.svg", svg(inside.replace("{}", str(secret))))
    assert "in other files is not read" in read_artwork(path).notes[0].words
    assert str(secret) not in checked_svg(path).text


def test_so_what_is_outside_is_not_in_the_drawing(tmp_path: Path, secret: Path):
    assert coverage(written(tmp_path, "a.svg", svg(f'<image href="{secret}" width="100" height="50"/>'))) == 0


def test_nor_is_what_a_drawing_within_it_names(tmp_path: Path, secret: Path):
    inner = base64.b64encode(svg(f'<image href="{secret}" width="100" height="50"/>').encode()).decode()
    path = written(tmp_path, "a.svg", svg(f'<image href="data:image/svg+xml;base64,{inner}" width="100" height="50"/>'))
    assert coverage(path) == 0


def test_a_picture_inside_the_drawing_is_drawn(tmp_path: Path):
    held = io.BytesIO()
    Image.new("RGB", (10, 5), "black").save(held, "PNG")
    data = base64.b64encode(held.getvalue()).decode()
    path = written(tmp_path, "a.svg", svg(f'<image href="data:image/png;base64,{data}" width="100" height="50"/>'))
    assert coverage(path) > 0.95
    assert read_artwork(path).notes == ()


def test_an_entity_in_another_file_stays_there(tmp_path: Path):
    hidden = written(tmp_path, "hidden.txt", "M0 0H100V50H0z")
    text = f'<!DOCTYPE svg [<!ENTITY a SYSTEM "{hidden}">]>' + svg("<text>&a;</text>")
    assert "M0 0H100" not in checked_svg(written(tmp_path, "a.svg", text)).text


def test_an_entity_of_a_drawing_program_is_put_in(tmp_path: Path):
    text = '<!DOCTYPE svg [<!ENTITY dark "#000000">]>' + svg('<rect width="100" height="50" fill="&dark;"/>')
    assert coverage(written(tmp_path, "a.svg", text)) == 1


def test_entities_that_multiply_are_refused_at_once(tmp_path: Path):
    bomb = '<!DOCTYPE svg [<!ENTITY a0 "ha">'
    for number in range(1, 12):
        tenfold = f"&a{number - 1};" * 10
        bomb += f'<!ENTITY a{number} "{tenfold}">'
    began = time.process_time()
    with pytest.raises(PictureProblem, match="entities unfold into more text than is read"):
        read_artwork(written(tmp_path, "a.svg", bomb + "]>" + svg("<text>&a11;</text>")))
    long, often = "x" * 100_000, "&a;" * 100_000
    flat = f'<!DOCTYPE svg [<!ENTITY a "{long}">]>' + svg(f"<text>{often}</text>")
    with pytest.raises(PictureProblem, match="entities unfold"):
        read_artwork(written(tmp_path, "b.svg", flat))
    assert time.process_time() - began < 2


def test_groups_within_groups_are_refused_before_they_bring_the_reader_down(tmp_path: Path):
    path = written(tmp_path, "a.svg", svg("<g>" * 5000 + "</g>" * 5000))
    with pytest.raises(PictureProblem, match="stand within each other"):
        read_artwork(path)


def test_parts_used_again_without_end_are_refused(tmp_path: Path):
    parts = '<g id="u0"><rect width="1" height="1"/></g>'
    for number in range(1, 7):
        again = f'<use href="#u{number - 1}"/>' * 10
        parts += f'<g id="u{number}">{again}</g>'
    with pytest.raises(PictureProblem, match="can't be drawn"):
        coverage(written(tmp_path, "a.svg", svg(parts)))


def test_a_drawing_program_that_falls_leaves_a_sentence(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    # A program that kills itself, as a reader does that a file brings down.
    falls = written(tmp_path, "falls.py", "import os, signal; os.kill(os.getpid(), signal.SIGSEGV)")
    monkeypatch.setattr("maker_site.media.artwork.drawing._PROGRAM", falls)
    with pytest.raises(PictureProblem, match="too deep or too heavy to be drawn"):
        read_artwork(written(tmp_path, "a.pdf", pdf("")))


def test_one_that_takes_for_ever_is_stopped(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    sleeps = written(tmp_path, "sleeps.py", "import time; time.sleep(60)")
    monkeypatch.setattr("maker_site.media.artwork.drawing._PROGRAM", sleeps)
    monkeypatch.setattr("maker_site.media.artwork.drawing._LONGEST_SECONDS", 0.2)
    with pytest.raises(PictureProblem, match=r"more than 0\.2 seconds"):
        read_artwork(written(tmp_path, "a.pdf", pdf("")))


def test_a_file_changed_after_it_was_planned_is_not_shown(tmp_path: Path):
    path = written(tmp_path, "a.svg", svg())
    planned = plan_preview(read_artwork(path))
    written(tmp_path, "a.svg", svg("<rect/>"))
    with pytest.raises(PictureProblem, match="changed while the site was being made"):
        make_preview(path, planned, tmp_path)
