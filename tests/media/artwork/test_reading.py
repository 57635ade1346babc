"""What a design file says it is: size, colours, profile, clear parts."""

import io
from fractions import Fraction
from pathlib import Path

import pillow_heif
import pypdfium2
import pytest
import resvg_py
from PIL import Image, ImageCms

from maker_site.media import PictureProblem
from maker_site.media.artwork import UnreadArtwork, read_artwork
from tests.media.artwork.drawings import pdf, svg, written

SRGB = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
MM = Fraction("25.4")


def saved(folder: Path, name: str, mode: str = "RGB", **options: object) -> Path:
    path = folder / name
    Image.new(mode, (30, 20), options.pop("colour", 0)).save(path, **options)  # type: ignore[arg-type]
    return path


@pytest.mark.parametrize(
    ("name", "mode", "kind", "colour"),
    [
        ("a.png", "RGB", "PNG", "RGB"),
        ("a.png", "P", "PNG", "indexed RGB"),
        ("a.png", "1", "PNG", "black and white"),
        ("a.png", "I;16", "PNG", "grey"),
        ("a.jpg", "CMYK", "JPEG", "CMYK"),
        ("a.jpg", "L", "JPEG", "grey"),
        ("a.tif", "CMYK", "TIFF", "CMYK"),
        ("a.tif", "LAB", "TIFF", "Lab"),
        ("a.webp", "RGB", "WebP", "RGB"),
    ],
)
def test_pixels_and_colour_mode_are_read_from_the_header(tmp_path: Path, name: str, mode: str, kind: str, colour: str):
    found = read_artwork(saved(tmp_path, name, mode))
    assert (found.format, found.pixels, found.colour, found.profile) == (kind, (30, 20), colour, "untagged")
    assert found.size_mm is None
    assert not found.drawn


def test_a_heic_is_read(tmp_path: Path):
    path = tmp_path / "phone.heic"
    pillow_heif.from_pillow(Image.new("RGB", (64, 48), "red")).save(path)
    assert (read_artwork(path).format, read_artwork(path).pixels) == ("HEIC", (64, 48))


def test_a_picture_turned_by_its_camera_is_measured_upright(tmp_path: Path):
    exif = Image.Exif()
    exif[274] = 6  # JEITA CP-3451: a quarter turn
    path = tmp_path / "turned.jpg"
    Image.new("RGB", (30, 20)).save(path, exif=exif)
    assert read_artwork(path).pixels == (20, 30)


@pytest.mark.parametrize("name", ["a.png", "a.jpg", "a.tif", "a.webp"])
def test_the_profile_is_named_as_it_names_itself(tmp_path: Path, name: str):
    found = read_artwork(saved(tmp_path, name, icc_profile=SRGB))
    assert found.profile == ImageCms.getProfileDescription(ImageCms.ImageCmsProfile(io.BytesIO(SRGB))).strip()


def test_a_broken_profile_is_said_to_be_one(tmp_path: Path):
    assert read_artwork(saved(tmp_path, "a.png", icc_profile=b"no profile")).profile == "a profile that can't be read"


@pytest.mark.parametrize(("mode", "clear"), [("RGB", False), ("RGBA", True), ("LA", True), ("L", False)])
def test_clear_parts_are_noticed(tmp_path: Path, mode: str, clear: bool):
    assert read_artwork(saved(tmp_path, "a.png", mode)).transparency is clear


def test_only_the_first_of_several_pictures_is_used_and_said_so(tmp_path: Path):
    path = tmp_path / "two.tif"
    Image.new("RGB", (30, 20)).save(path, save_all=True, append_images=[Image.new("RGB", (9, 9))])
    assert read_artwork(path).pages == 2
    assert [note.words for note in read_artwork(path).notes] == ["only the first of its 2 pictures is used"]


# SVG 2, 8.2 and CSS Values and Units 4, 6.2: 96 px are an inch; expected mm by hand.
@pytest.mark.parametrize(
    ("head", "width", "height"),
    [
        ('width="100mm" height="50mm" viewBox="0 0 7 9"', "100", "50"),
        ('width="10cm" height="5cm"', "100", "50"),
        ('width="4in" height="96"', "101.6", "25.4"),
        ('width="72pt" height="6pc"', "25.4", "25.4"),
        ('viewBox="-3 -3 96 192"', "25.4", "50.8"),
        ('width="48" viewBox="0 0 96 192"', "12.7", "25.4"),
        ('height="192px" viewBox="0,0,48,96"', "25.4", "50.8"),
        ('width="50%" height="100%" viewBox="0 0 192 96"', "25.4", "25.4"),
        ('width="1e2mm" height="+.5e2mm"', "100", "50"),
    ],
)
def test_an_svg_is_as_large_as_it_says(tmp_path: Path, head: str, width: str, height: str):
    path = written(tmp_path, "a.svg", svg(head=head))
    found = read_artwork(path)
    assert (found.format, found.pixels, found.pages) == ("SVG", None, 1)
    assert found.size_mm == (Fraction(width), Fraction(height))
    # The drawing library, asked for nothing but the drawing, makes it as many pixels large.
    drawn = Image.open(io.BytesIO(resvg_py.svg_to_bytes(svg_string=path.read_text(), dpi=96)))
    assert drawn.size == tuple(int(side * 96 / MM + Fraction(1, 2)) for side in found.size_mm)


def test_an_svg_without_any_size_is_told_to_get_one(tmp_path: Path):
    with pytest.raises(PictureProblem, match="does not say how large it is: give it a width and a height"):
        read_artwork(written(tmp_path, "a.svg", svg(head="")))


@pytest.mark.parametrize("head", ['width="0" height="5"', 'width="-4mm" height="5mm"', 'width="99km" height="1"'])
def test_an_svg_of_no_size_is_refused(tmp_path: Path, head: str):
    with pytest.raises(PictureProblem):
        read_artwork(written(tmp_path, "a.svg", svg(head=head)))


def test_an_svg_in_utf_16_after_a_long_comment_is_an_svg(tmp_path: Path):
    text = f'<?xml version="1.0" encoding="UTF-16"?><!-- {"x" * 3000} -->{svg()}'
    assert read_artwork(written(tmp_path, "a.svg", text.encode("utf-16"))).format == "SVG"


def test_lettering_is_said_to_be_missing(tmp_path: Path):
    found = read_artwork(written(tmp_path, "a.svg", svg("<text>Leek</text>")))
    assert tuple(note.words for note in found.notes) == (
        "its lettering is not drawn here, since the fonts are not in the file: turn it into outlines",
    )


@pytest.mark.parametrize(
    ("extra", "points"),
    [
        ("", (200, 100)),
        ("/CropBox [10 10 190 60]", (180, 50)),
        ("/Rotate 90", (100, 200)),
        ("/CropBox [0 0 50 25] /Rotate 270", (25, 50)),
    ],
)
def test_a_pdf_is_as_large_as_its_crop_box_else_its_media_box(tmp_path: Path, extra: str, points: tuple[int, int]):
    path = written(tmp_path, "a.pdf", pdf("", extra=extra))
    found = read_artwork(path)
    assert found.size_mm == tuple(side * MM / 72 for side in points)  # ISO 32000-1, 8.3.2.3: 72 to the inch
    assert pypdfium2.PdfDocument(path)[0].get_size() == points


def test_a_typeset_a5_page_is_a5(tmp_path: Path):
    import typst

    path = written(tmp_path, "a.pdf", typst.compile(b'#set page("a5")\nBread'))
    size = read_artwork(path).size_mm
    assert size is not None
    wanted = (Fraction(148), Fraction(210))  # ISO 216
    assert all(abs(got - side) < Fraction("0.001") for got, side in zip(size, wanted, strict=True))


def test_only_the_first_page_of_a_pdf_is_used_and_said_so(tmp_path: Path):
    found = read_artwork(written(tmp_path, "a.pdf", pdf("", "", "")))
    assert found.pages == 3
    assert tuple(note.words for note in found.notes) == ("only the first of its 3 pages is used",)


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "the file is empty"),
        (b"%PDF-1.7\nnothing more", "the PDF can't be read"),
        (b"<svg", "the SVG is broken"),
        (b"<html><svg/></html>", "no SVG drawing"),
        (pdf(), "the PDF can't be read"),  # it has no page
    ],
)
def test_a_broken_design_file_gets_a_sentence(tmp_path: Path, data: bytes, words: str):
    path = written(tmp_path, "a.svg", data)
    with pytest.raises(PictureProblem, match=words) as caught:
        read_artwork(path)
    assert not isinstance(caught.value, UnreadArtwork)
    assert caught.value.path == path


def test_a_sound_design_file_of_another_kind_is_only_not_looked_into(tmp_path: Path):
    with pytest.raises(UnreadArtwork, match="a layered design file, which is not looked into"):
        read_artwork(written(tmp_path, "a.design", b"8BPS\0\1"))
