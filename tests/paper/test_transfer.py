"""Transfers as they come out of the printer: true size, the right way round, every pixel, with their words."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from PIL import Image, ImageChops, ImageOps, ImageStat

from maker_site.cli import main
from tests.conftest import CONTENT
from tests.paper.bench import LOG, SHOP, SLATE, asymmetric, workshop
from tests.paper.read_back import check_file, cut, drawn, opened, page_sizes, pictures, tool, words

Print = Callable[..., tuple[bytes, dict]]


def run(content: Path, out: Path, *words_: str) -> Result:
    return CliRunner().invoke(main, ["print", "transfer", "--content", str(content), "--out", str(out), *words_])


@pytest.fixture
def made(tmp_path: Path) -> Print:
    """Prints transfers of the small workshop, and gives the PDF and the JSON beside it."""
    content = workshop(tmp_path / "content")
    out = tmp_path / "out.pdf"

    def print_them(*words_: str) -> tuple[bytes, dict]:
        done = run(content, out, "--json", *words_)
        assert done.exit_code == 0, done.output
        return out.read_bytes(), json.loads(done.stdout)

    return print_them


def likeness(one: Image.Image, other: Image.Image) -> float:
    """Mean difference of a channel, 0 alike to 255."""
    small = (192, 132)
    difference = ImageChops.difference(one.resize(small), other.resize(small))
    return sum(ImageStat.Stat(difference).mean) / 3


def test_placed_at_true_size_where_the_json_says(made: Print) -> None:
    """90 x 60 mm with 3 mm bleed is 96 x 66 mm, read back by PDFium within a tenth of a millimetre."""
    pdf, told = made("harbour")
    (page,) = page_sizes(pdf)
    assert page == (pytest.approx(210, abs=0.1), pytest.approx(297, abs=0.1))
    found = pictures(pdf)
    said = sorted(told["pieces"], key=lambda each: (each["y_mm"], each["x_mm"]))
    assert len(found) == len(said) == 3
    for seen, piece in zip(found, said, strict=True):
        assert piece["rotated"] is False
        assert (piece["width_mm"], piece["height_mm"]) == (96, 66)
        assert (seen.x, seen.y) == (pytest.approx(piece["x_mm"], abs=0.1), pytest.approx(piece["y_mm"], abs=0.1))
        assert (seen.width, seen.height) == (pytest.approx(96, abs=0.1), pytest.approx(66, abs=0.1))


def test_what_is_printed_is_the_artwork_mirrored_and_nothing_else(made: Print) -> None:
    pdf, _ = made("harbour")
    printed = cut(drawn(pdf), pictures(pdf)[0])
    artwork = asymmetric()
    assert likeness(printed, ImageOps.mirror(artwork)) < 2
    for wrong in (artwork, ImageOps.flip(artwork), artwork.rotate(180)):
        assert likeness(printed, wrong) > 15


def test_turned_by_a_quarter_it_is_still_the_mirrored_artwork(tmp_path: Path) -> None:
    wide = SLATE.replace("90 x 60 mm", "230 x 100 mm")
    content = workshop(tmp_path / "content", {"blanks/slate.yaml": wide})
    asymmetric((2360, 1060)).save(content / "projects/harbour/artwork/wall.png")
    out = tmp_path / "out.pdf"
    done = run(content, out, "harbour", "--pieces", "1", "--json")
    (piece,) = json.loads(done.stdout)["pieces"]
    assert piece["rotated"] is True
    assert (piece["width_mm"], piece["height_mm"]) == (106, 236)
    (seen,) = pictures(out.read_bytes())
    assert (seen.width, seen.height) == (pytest.approx(106, abs=0.1), pytest.approx(236, abs=0.1))
    printed = cut(drawn(out.read_bytes()), seen)
    mirrored = ImageOps.mirror(asymmetric((2360, 1060)))
    assert min(likeness(printed.rotate(turn, expand=True), mirrored) for turn in (90, 270)) < 2


def test_film_of_which_nothing_is_known_asks_and_then_obeys(tmp_path: Path) -> None:
    # A bare “up” is used both ways, so that nothing is known of the film.
    row = "2026-04-19,bag,tote,clam,150 C,0:15,medium,up,2,2\n"
    content = workshop(tmp_path / "content", {"press-log/2026.csv": LOG + row})
    out = tmp_path / "out.pdf"
    asked = run(content, out, "bag")
    assert asked.exit_code == 2
    assert "say --mirror yes or --mirror no" in asked.output
    assert not out.exists()
    found = {}
    for answer in ("yes", "no"):
        assert run(content, out, "bag", "--mirror", answer).exit_code == 0
        pdf = out.read_bytes()
        found[answer] = cut(drawn(pdf), pictures(pdf)[0])
    assert likeness(found["yes"], ImageOps.flip(found["no"])) < 2  # it lies turned by a quarter
    assert likeness(found["yes"], found["no"]) > 15


def test_what_is_known_to_be_mirrored_stays_mirrored(made: Print, tmp_path: Path) -> None:
    before, _ = made("harbour")
    done = run(tmp_path / "content", tmp_path / "out.pdf", "harbour", "--mirror", "no")
    assert "harbour is printed mirrored, as its method and face have it" in done.stderr
    assert (tmp_path / "out.pdf").read_bytes() == before


def test_every_pixel_goes_in_with_its_profile(made: Print, tmp_path: Path) -> None:
    pdf, told = made("harbour", "--pieces", "1")
    # 960 px over 96 mm is 254 an inch, by hand.
    assert told["pieces"][0]["effective_ppi"] == 254
    path = tmp_path / "images.pdf"
    path.write_bytes(pdf)
    (row,) = tool("pdfimages", "-list", path).splitlines()[2:]
    columns = row.split()
    assert (columns[3], columns[4], columns[5]) == ("960", "660", "icc")


def test_a_photo_turned_by_its_camera_stands_upright(tmp_path: Path) -> None:
    content = workshop(tmp_path / "content")
    stored = asymmetric().rotate(90, expand=True)  # a camera held on its side; tag 274, 6: turn clockwise to see it
    exif = Image.Exif()
    exif[274] = 6
    target = content / "projects/harbour/artwork/wall.png"
    stored.save(target, "JPEG", quality=95, exif=exif)
    assert run(content, tmp_path / "out.pdf", "harbour", "--pieces", "1").exit_code == 0
    pdf = (tmp_path / "out.pdf").read_bytes()
    assert likeness(cut(drawn(pdf), pictures(pdf)[0]), ImageOps.mirror(asymmetric())) < 3


@pytest.mark.parametrize("kind", ["TIFF", "WebP", "GIF", "HEIF"])
def test_other_pixels_are_placed_alike(kind: str, tmp_path: Path) -> None:
    import pillow_heif

    pillow_heif.register_heif_opener()
    content = workshop(tmp_path / "content")
    asymmetric().save(content / "projects/harbour/artwork/wall.png", kind)
    assert run(content, tmp_path / "out.pdf", "harbour", "--pieces", "1").exit_code == 0
    pdf = (tmp_path / "out.pdf").read_bytes()
    assert likeness(cut(drawn(pdf), pictures(pdf)[0]), ImageOps.mirror(asymmetric())) < 3


def test_a_drawing_stays_a_drawing(tmp_path: Path) -> None:
    content = workshop(tmp_path / "content")
    (content / "projects/harbour/artwork/wall.png").write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" width="96mm" height="66mm" viewBox="0 0 96 66">'
        '<rect width="96" height="66" fill="#eee"/><rect width="30" height="20" fill="#c00"/></svg>',
        encoding="utf-8",
    )
    done = run(content, tmp_path / "out.pdf", "harbour", "--pieces", "1", "--json")
    pdf = (tmp_path / "out.pdf").read_bytes()
    assert pictures(pdf) == []
    assert json.loads(done.stdout)["pieces"][0]["effective_ppi"] is None
    page = drawn(pdf, ppi=72)
    # The red corner is at the left of the artwork, so at the right of the mirrored transfer: x from 5 mm to 101 mm.
    assert page.getpixel((round(95 / 25.4 * 72), round(10 / 25.4 * 72))) == (204, 0, 0)
    assert page.getpixel((round(12 / 25.4 * 72), round(10 / 25.4 * 72))) == (238, 238, 238)


def test_a_pdf_is_drawn_at_the_pixels_that_the_printer_wants(tmp_path: Path) -> None:
    content = workshop(tmp_path / "content")
    asymmetric().save(content / "projects/harbour/artwork/wall.png", "PDF", resolution=254)
    assert run(content, tmp_path / "out.pdf", "harbour", "--pieces", "1").exit_code == 0
    pdf = (tmp_path / "out.pdf").read_bytes()
    assert likeness(cut(drawn(pdf), pictures(pdf)[0]), ImageOps.mirror(asymmetric())) < 3
    with opened(pdf) as read:
        (image,) = read[0].get_objects(filter=[3])
        # 96 mm at 300 an inch is 1133.9, by hand
        assert image.get_px_size()[0] in (1134, 1135)


def test_each_transfer_has_a_label_that_can_be_read_and_each_sheet_its_cautions(made: Print) -> None:
    pdf, _ = made("harbour")
    (page,) = words(pdf)
    for number in (1, 2, 3):
        assert f"Harbour wall · Slate coaster · 200 °C (392 °F) · 5:00 · print up · {number} of 3" in page
    assert "Hot platen, blank and cover: gloves" in page
    assert "The equipment’s manual, local codes and licensed practice come first" in page
    assert "print at 100 %" in page
    assert "Printed mirrored." in page


def test_labels_stand_clear_of_every_transfer(made: Print) -> None:
    pdf, told = made("harbour", "tags", "--pieces", "5")
    for sheet in range(told["sheets"]):
        boxes = [
            (each["x_mm"], each["y_mm"], each["x_mm"] + each["width_mm"], each["y_mm"] + each["height_mm"])
            for each in told["pieces"]
            if each["sheet"] == sheet + 1
        ]
        with opened(pdf) as read:
            page = read[sheet]
            text = page.get_textpage()
            for index in range(text.count_chars()):
                left, bottom, right, top = (side / 72 * 25.4 for side in text.get_charbox(index))
                above, below = 297 - top, 297 - bottom
                for x, y, to_x, to_y in boxes:
                    assert right <= x or left >= to_x or below <= y or above >= to_y, text.get_text_range(index, 1)


def test_the_ruler_is_a_hundred_millimetres(made: Print) -> None:
    """The longest level line of the page: 100 mm between its ends, found in the drawn page."""
    pdf, told = made("harbour", "--pieces", "1")
    ppi = 300
    page = drawn(pdf, ppi=ppi).convert("L")
    below = round((told["pieces"][0]["y_mm"] + 66 + 10) / 25.4 * ppi)
    longest = 0
    for y in range(below, page.height):
        row = "".join("#" if level < 140 else " " for level in page.crop((0, y, page.width, y + 1)).tobytes())
        longest = max(longest, *map(len, row.split(" ")))
    assert longest / ppi * 25.4 == pytest.approx(100, abs=0.3)


def test_sizes_share_a_sheet_and_the_waste_is_told(made: Print) -> None:
    _, told = made("harbour", "tags", "--pieces", "2")
    assert {each["project"] for each in told["pieces"] if each["sheet"] == 1} == {"harbour", "tags"}
    assert told["sheets"] == 1
    # 2 x 96 x 66 and 2 x 60 x 31 mm of 210 x 297 mm, by hand
    assert told["waste"] == pytest.approx(1 - (2 * 96 * 66 + 2 * 60 * 31) / (210 * 297), abs=1e-4)


def test_other_papers(made: Print) -> None:
    pdf, told = made("harbour", "--paper", "Tabloid", "--pieces", "12")
    assert page_sizes(pdf)[0] == (pytest.approx(279.4, abs=0.1), pytest.approx(431.8, abs=0.1))
    assert (told["paper"], told["sheets"]) == ("Tabloid", 1)


def test_words_without_room_stand_on_a_page_of_their_own(tmp_path: Path) -> None:
    full = SLATE.replace("90 x 60 mm", "194 x 281 mm")
    content = workshop(tmp_path / "content", {"blanks/slate.yaml": full})
    done = run(content, tmp_path / "out.pdf", "harbour", "--pieces", "1", "--json")
    pdf = (tmp_path / "out.pdf").read_bytes()
    assert json.loads(done.stdout)["sheets"] == 1
    pages = words(pdf)
    assert len(pages) == 2
    assert "Sheet 1: Harbour wall" in pages[1]
    assert "Hot platen" in pages[1]
    assert "stand on the last page" in done.stderr


def test_corner_marks_point_to_the_edges_of_the_piece(made: Print) -> None:
    """In line with the blank's edges, 3 mm of bleed inside the transfer, and outside what is printed."""
    pdf, told = made("harbour", "--pieces", "1")
    page = drawn(pdf, ppi=300).convert("L")
    piece = told["pieces"][0]
    x, y = piece["x_mm"], piece["y_mm"]

    def dark(at_x: float, at_y: float) -> bool:
        px, py = at_x / 25.4 * 300, at_y / 25.4 * 300
        spot = page.crop((round(px) - 2, round(py) - 2, round(px) + 3, round(py) + 3))
        return spot.getextrema()[0] < 100

    for across in (x + 3, x + 93):
        assert dark(across, y + 66 + 1)
    for down in (y + 3, y + 63):
        assert dark(x + 96 + 1, down)
    assert not dark(x + 48, y - 1)


def test_the_files_are_sound_with_their_fonts_in_them(made: Print, tmp_path: Path) -> None:
    pdf, _ = made("harbour", "tags")
    check_file(pdf, tmp_path)
    again, _ = made("harbour", "tags")
    assert again == pdf


class TestNames:
    BOXED = (
        "title: Harbour wall\nblank: slate\nartwork:\n  - file: artwork/wall.png\n"
        "    name box: {at: 10 x 40 mm, size: 60 x 12 mm, colour: white, outline: navy, font: Libertinus Serif}\n"
    )

    @pytest.fixture
    def content(self, tmp_path: Path) -> Path:
        return workshop(tmp_path / "content", {"projects/harbour/project.yaml": self.BOXED})

    def test_one_transfer_for_each_name_as_it_is_spelt(self, content: Path, tmp_path: Path) -> None:
        names = tmp_path / "names.txt"
        names.write_text("Anna\n\n  Zoë-Marie #1 $x$\nשלום\n", encoding="utf-8")
        done = run(content, tmp_path / "out.pdf", "harbour", "--names", str(names), "--json")
        assert done.exit_code == 0, done.output
        assert len(json.loads(done.stdout)["pieces"]) == 3
        (page,) = words((tmp_path / "out.pdf").read_bytes())
        assert "Anna · Harbour wall" in page
        assert "Zoë-Marie #1 $x$ · Harbour wall" in page

    def test_the_letters_fill_the_box_and_stay_in_it(self, content: Path, tmp_path: Path) -> None:
        """The box is at 10 x 40 mm of the finished piece, 60 x 12 mm; mirrored, its left is at the right."""
        names = tmp_path / "names.txt"
        found = []
        for name in ("Bo", "Bartholomew the Younger of the Mill"):
            names.write_text(name, encoding="utf-8")
            run(content, tmp_path / "out.pdf", "harbour", "--names", str(names), "--json")
            plain = run(content, tmp_path / "plain.pdf", "harbour", "--pieces", "1", "--json")
            pdf = (tmp_path / "out.pdf").read_bytes()
            piece = json.loads(plain.stdout)["pieces"][0]
            place = pictures(pdf)[0]
            with_name, without = cut(drawn(pdf), place), cut(drawn((tmp_path / "plain.pdf").read_bytes()), place)
            box = ImageChops.difference(with_name, without).convert("L").point(lambda d: 255 if d > 40 else 0).getbbox()
            assert box is not None
            left, top, right, foot = (side / 150 * 25.4 for side in box)
            assert left >= piece["width_mm"] - 3 - 10 - 60 - 0.3
            assert right <= piece["width_mm"] - 3 - 10 + 0.3
            assert top >= 3 + 40 - 0.3
            assert foot <= 3 + 40 + 12 + 0.3
            found.append((right - left, foot - top))
        assert found[0][1] == pytest.approx(12, abs=0.6)  # a short name is as high as the box
        assert found[1][0] == pytest.approx(60, abs=0.8)  # a long one as wide

    def test_a_font_that_is_not_there_is_told_with_the_nearest(self, tmp_path: Path) -> None:
        text = self.BOXED.replace("Libertinus Serif", "Libertinus Sherif")
        content = workshop(tmp_path / "content", {"projects/harbour/project.yaml": text})
        names = tmp_path / "names.txt"
        names.write_text("Anna", encoding="utf-8")
        done = run(content, tmp_path / "out.pdf", "harbour", "--names", str(names))
        assert done.exit_code == 1
        assert "no font “Libertinus Sherif” for the names; did you mean “Libertinus Serif”?" in done.output

    def test_artwork_without_a_place_for_names_says_how_to_make_one(self, tmp_path: Path) -> None:
        content = workshop(tmp_path / "content")
        names = tmp_path / "names.txt"
        names.write_text("Anna", encoding="utf-8")
        done = run(content, tmp_path / "out.pdf", "harbour", "--names", str(names))
        assert done.exit_code == 2
        assert "name box: {at: 10 x 70 mm, size: 80 x 18 mm}" in done.output

    def test_a_character_without_a_font_is_a_caution(self, content: Path, tmp_path: Path) -> None:
        names = tmp_path / "names.txt"
        names.write_text("Ann 🎈", encoding="utf-8")
        done = run(content, tmp_path / "out.pdf", "harbour", "--names", str(names))
        assert done.exit_code == 0
        assert "no font has “🎈” (U+1F388)" in done.stderr


def test_a_set_of_several_drawings_takes_them_in_turn(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The demo's four coasters are four pictures; where no file is named it is named for the project."""
    monkeypatch.chdir(tmp_path)
    command = ["print", "transfer", "allotment-tally-coasters", "--content", str(CONTENT), "--json"]
    done = CliRunner().invoke(main, command)
    assert done.exit_code == 0
    first, second = words(Path("allotment-tally-coasters-transfer.pdf"))
    assert "1 of 4" in first
    assert "4 of 4" in second


def test_a_shop_without_margin_and_gap_prints_too(tmp_path: Path) -> None:
    bare = SHOP.replace("printer: {margin: 5 mm, gap: 4 mm, ppi: 300}\n", "")
    content = workshop(tmp_path / "content", {"shop.yaml": bare})
    done = run(content, tmp_path / "out.pdf", "harbour", "--pieces", "9", "--json")
    assert done.exit_code == 0
    told = json.loads(done.stdout)
    assert (told["per_sheet"], told["sheets"]) == (9, 1)  # turned: 3 x 66 = 198 across, 3 x 96 = 288 down
