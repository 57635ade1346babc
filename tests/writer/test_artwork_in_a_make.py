"""Artwork from the maker's folder to the page: seen, costed, proofed, and never in the public copy."""

import io
import re
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest
from PIL import Image

from maker_site.media import artwork as reading
from maker_site.writer import gather_artwork
from maker_site.writer.kept import Kept
from maker_site.writer.known import keep_coverage, known_coverage
from maker_site.writer.making import Made, find_problems, make_site, read_notebook
from tests.media.artwork.drawings import pdf, svg
from tests.small_workshop import write_workshop

TODAY = date(2026, 5, 1)
PROJECT = "projects/harbour/project.yaml"


def picture(width: int, height: int, colour: str = "black") -> bytes:
    held = io.BytesIO()
    Image.new("RGB", (width, height), colour).save(held, "PNG")
    return held.getvalue()


def record(*files: str, photo: bool = False) -> str:
    entries = "".join(f"  - {{file: artwork/{file}, bleed: 3 mm}}\n" for file in files)
    photos = "photos: [{file: photos/set.jpg, text: Four coasters, share: yes}]\n" if photo else ""
    share = "share: {tutorial: yes, published: 2026-05-01, menu: {section: Home, price: 24.00}}\n"
    return f"title: Harbour coasters\nblank: slate\nmade: 2026-04-18\nartwork:\n{entries}{photos}{share}"


def workshop(folder: Path, *, photo: bool = False, **files: str | bytes) -> Path:
    named = {name.replace("_", "."): content for name, content in files.items()}
    changed: dict[str, str | bytes | None] = {f"projects/harbour/artwork/{name}": each for name, each in named.items()}
    changed[PROJECT] = record(*named, photo=photo)
    if not photo:
        changed["projects/harbour/tutorial.md"] = "Four coasters.\n"
        changed["projects/harbour/photos/set.jpg"] = None
    return write_workshop(folder / "content", changed)


def make(content: Path, out: Path) -> Made:
    return make_site(content, out, "print-room", TODAY, lambda *_: None)


def test_check_names_file_line_and_the_figure_to_aim_at(tmp_path: Path):
    content = workshop(tmp_path, small_png=picture(500, 500), right_png=picture(1252, 1252))
    (found,) = find_problems(content, TODAY)
    assert (found.file, found.line, found.severity) == (PROJECT, 5, "caution")
    assert "119 pixels an inch" in found.message
    assert "1252 × 1252 px" in found.message


def test_a_broken_file_stops_the_make_and_one_of_another_kind_does_not(tmp_path: Path):
    content = workshop(tmp_path, a_png=picture(1252, 1252)[:-40], b_design=b"8BPS\0\1")
    found = {problem.severity.value: problem for problem in find_problems(content, TODAY)}
    assert found["error"].file == "projects/harbour/artwork/a.png"
    assert "breaks off" in found["error"].message
    assert (found["caution"].file, found["caution"].line) == (PROJECT, 6)
    assert make(content, tmp_path / "site").changes is None


def test_coverage_is_the_mean_of_the_projects_artwork_and_reaches_its_cost(tmp_path: Path):
    content = workshop(tmp_path, a_png=picture(1252, 1252), b_svg=svg(head='width="106mm" height="106mm"'))
    ink = "name: Ink\nkind: ink\nprice: 42.00\ncontents: 400 ml\nlaydown: 11 ml/m2\n"
    (content / "supplies").mkdir()
    (content / "supplies/ink.yaml").write_text(ink)
    book, _ = read_notebook(content, TODAY)
    assert book is not None
    harbour = book.workshop.projects["harbour"]
    assert book.coverage_of(harbour) == 0.5
    line = next(line for line in book.cost_sheets["harbour"].lines if line.name == "Ink")
    # Checks, print-26: 106 x 106 mm at half cover and 11 ml/m2 are 0.0618 ml; 10.5 pence a ml; 3 of 4 came out good.
    assert line.exact is not None
    assert float(line.exact) == pytest.approx(0.061798 * 0.105 / 0.75, abs=1e-6)


def test_what_was_counted_is_not_counted_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    content, out = workshop(tmp_path, a_png=picture(1252, 1252)), tmp_path / "site"
    assert make(content, out).changes is not None

    def again(path: Path) -> None:
        pytest.fail(f"{path} was counted again")

    monkeypatch.setattr(gather_artwork, "coverage", again)
    made = make(content, out)
    assert made.changes is not None
    assert not made.changes.written
    assert not made.changes.removed


def kept_counts(out: Path, counts: dict[str, Fraction]) -> Kept:
    (out / ".maker-site").mkdir()
    kept = Kept(out)
    keep_coverage(kept, "this program", counts)
    kept.write()
    return Kept(out)


def test_counts_are_kept_whole_and_for_the_same_program(tmp_path: Path):
    counts = {"aa": Fraction(1, 3), "bb": Fraction(0)}
    kept = kept_counts(tmp_path, counts)
    assert known_coverage(kept, "this program") == counts
    assert known_coverage(kept, "its next version") == {}


@pytest.mark.parametrize("spoilt", ["", "7", "1/0", [], None])
def test_spoilt_counts_are_thrown_away(tmp_path: Path, spoilt: object):
    kept = kept_counts(tmp_path, {})
    kept.put("coverage", "x", "this program", spoilt)
    assert known_coverage(kept, "this program") == {}


def test_a_proof_stands_in_for_a_photo_and_all_it_shows_is_there(tmp_path: Path):
    content = workshop(tmp_path, a_svg=svg('<rect width="50" height="50"/>'), b_pdf=pdf("0 0 100 100 re f"))
    out = tmp_path / "site"
    assert make(content, out).changes is not None
    for page in ("proofs/harbour.html", "projects/harbour.html", "catalogue/index.html", "index.html"):
        text = (out / "workshop" / page).read_text()
        shown = re.findall(r'<image [^>]*href="([^"]+)"', text)
        assert shown, page
        assert all((out / "workshop" / page).parent.joinpath(each).is_file() for each in shown), page
    proof = (out / "workshop/proofs/harbour.html").read_text()
    assert "100 × 100 mm (3.94 × 3.94 in)" in proof.replace("\N{NO-BREAK SPACE}", " ")
    assert "Colours on a screen, on paper and on the piece differ" in proof


def test_nothing_of_artwork_reaches_the_public_copy(tmp_path: Path):
    content = workshop(tmp_path, photo=True, a_svg=svg('<rect width="50" height="50"/>'), b_png=picture(1252, 1252))
    out = tmp_path / "site"
    make(content, out)
    names = {
        each.name
        for file in ("a.svg", "b.png")
        for each in reading.plan_preview(reading.read_artwork(content / "projects/harbour/artwork" / file)).all
    }
    assert any((out / "workshop/pictures" / name).exists() for name in names)
    assert not any((out / "public/pictures" / name).exists() for name in names)
    assert not list((out / "public").glob("proofs"))
    assert not any("<image" in page.read_text() for page in (out / "public").rglob("*.html"))


def test_a_project_without_artwork_has_no_proof(tmp_path: Path):
    out = tmp_path / "site"
    make(write_workshop(tmp_path / "content"), out)
    assert not (out / "workshop/proofs").exists()
