"""Coverage: 1 - (R + G + B)/765, mean over the pixels, alpha on white."""

from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image, ImageOps, ImageStat

from maker_site.media import PictureProblem
from maker_site.media.artwork import coverage, inking, make_preview, plan_preview, read_artwork
from tests.checks import check
from tests.media.artwork.drawings import pdf, svg, written
from tests.media.samples import figure, icc_profile

PATCHES = dict(zip(("white", "black", "red", "#808080"), check("print-25").expected.split(", "), strict=True))


def of(picture: Image.Image, name: str = "a.png", **options: object) -> Fraction:
    with TemporaryDirectory() as folder:
        path = Path(folder) / name
        picture.save(path, **options)  # type: ignore[arg-type]
        return coverage(path)


@pytest.mark.parametrize(("colour", "expected"), PATCHES.items())
def test_a_patch_is_as_the_table_says(colour: str, expected: str):
    tolerance = Fraction(check("print-25").tolerance)
    assert abs(of(Image.new("RGB", (7, 5), colour)) - Fraction(expected)) <= tolerance


def test_a_figure_of_six_colours_agrees_with_the_picture_library():
    picture = figure()
    light = sum(ImageStat.Stat(picture).mean) / (3 * 255)  # Pillow's own statistics
    assert float(of(picture)) == pytest.approx(1 - light, abs=1e-12)


@st.composite
def pictures(draw: st.DrawFn) -> Image.Image:
    mode = draw(st.sampled_from(["RGB", "RGBA", "L", "LA", "CMYK", "P", "1"]))
    width, height = draw(st.integers(1, 9)), draw(st.integers(1, 9))
    bands = len(mode) if mode not in ("P", "1") else 1
    if mode == "1":
        grey = Image.frombytes("L", (width, height), draw(st.binary(min_size=width * height, max_size=width * height)))
        return grey.convert("1")
    size = width * height * bands
    picture = Image.frombytes(mode, (width, height), draw(st.binary(min_size=size, max_size=size)))
    if mode == "P":
        picture.putpalette(draw(st.binary(min_size=768, max_size=768)))
    return picture


@settings(max_examples=40, deadline=None)
@given(pictures())
def test_it_lies_between_nothing_and_all_and_a_mirror_changes_nothing(picture: Image.Image):
    name = "a.tif" if picture.mode == "CMYK" else "a.png"
    share = of(picture, name)
    assert 0 <= share <= 1
    assert of(ImageOps.mirror(picture), name) == share


@settings(max_examples=25, deadline=None)
@given(pictures().filter(lambda picture: picture.mode in ("RGB", "L")))
def test_it_agrees_with_the_picture_library_on_any_pixels(picture: Image.Image):
    light = sum(ImageStat.Stat(picture.convert("RGB")).sum)
    assert of(picture) == 1 - Fraction(round(light), 765 * picture.width * picture.height)


def test_clear_parts_count_as_paper():
    half = Image.new("RGBA", (10, 10), (0, 0, 0, 0))
    half.paste((0, 0, 0, 255), (0, 0, 10, 5))
    assert of(half) == Fraction(1, 2)
    assert float(of(Image.new("RGBA", (4, 4), (0, 0, 0, 128)))) == pytest.approx(128 / 255, abs=1 / 255)


def test_bands_change_nothing(monkeypatch: pytest.MonkeyPatch):
    picture = figure("1234/5612/3456")
    whole = of(picture)
    monkeypatch.setattr(inking, "_BAND", picture.width * 7)
    assert of(picture) == whole


def test_a_large_jpeg_is_decoded_small_and_keeps_its_mean(monkeypatch: pytest.MonkeyPatch):
    picture = figure("1234/5612")
    whole = of(picture, "a.jpg", quality=95)
    monkeypatch.setattr(inking, "LARGE", picture.width * picture.height // 10)
    assert float(of(picture, "a.jpg", quality=95)) == pytest.approx(float(whole), abs=0.005)


def test_sixteen_bits_are_scaled_not_clipped():
    assert float(of(Image.new("I;16", (4, 4), 0x8000))) == pytest.approx(1 - 0x80 / 255, abs=1e-9)


def test_an_embedded_profile_is_converted_to_srgb_first():
    # A profile of sRGB's primaries (D50) without a curve: 128 is half the light, 188 in sRGB (IEC 61966-2-1, inverse).
    linear = icc_profile([0.4360, 0.2225, 0.0139], [0.3851, 0.7169, 0.0971], [0.1431, 0.0606, 0.7141], gamma_u8f8=256)
    grey = Image.new("RGB", (4, 4), (128, 128, 128))
    in_srgb = 255 * (1.055 * (128 / 255) ** (1 / 2.4) - 0.055)
    assert float(of(grey, icc_profile=linear)) == pytest.approx(1 - in_srgb / 255, abs=1.5 / 255)


@pytest.mark.parametrize(
    ("name", "content"),
    [
        ("a.svg", svg('<rect width="50" height="50"/>')),
        ("a.pdf", pdf("0 0 200 50 re f", extra="/CropBox [0 0 200 100]")),
        ("a.pdf", pdf("0.5 g 0 0 200 100 re f")),
    ],
)
def test_a_drawing_half_covered_is_half_covered(tmp_path: Path, name: str, content: str | bytes):
    assert float(coverage(written(tmp_path, name, content))) == pytest.approx(0.5, abs=0.002)


def test_only_what_lies_in_the_crop_box_counts(tmp_path: Path):
    path = written(tmp_path, "a.pdf", pdf("0 0 100 100 re f", extra="/CropBox [100 0 200 100]"))
    assert float(coverage(path)) == pytest.approx(0, abs=0.003)


def test_a_broken_picture_is_told(tmp_path: Path):
    whole = tmp_path / "whole.png"
    figure().save(whole)
    with pytest.raises(PictureProblem, match="breaks off"):
        coverage(written(tmp_path, "a.png", whole.read_bytes()[:-60]))


@pytest.mark.parametrize(
    ("name", "content", "size"),
    [
        ("a.svg", svg('<rect width="50" height="50" fill="red"/>'), (1600, 800)),
        ("a.pdf", pdf("1 0 0 rg 0 0 100 100 re f"), (1600, 800)),
    ],
)
def test_a_drawing_gets_web_pictures_that_show_it(
    tmp_path: Path, name: str, content: str | bytes, size: tuple[int, int]
):
    path = written(tmp_path, name, content)
    found = read_artwork(path)
    planned = plan_preview(found)
    assert (planned.width, planned.height) == size
    assert planned.digest == found.digest
    made = make_preview(path, planned, tmp_path)
    assert {each.name for each in made} == {each.name for each in planned.all}
    with Image.open(tmp_path / planned.fallback.name) as seen:
        assert seen.size == (planned.fallback.width, planned.fallback.height)
        left, right = seen.getpixel((100, 200)), seen.getpixel((700, 200))
    assert left[0] > 240  # red, and the clear half white
    assert left[1] < 30
    assert min(right) > 240


def test_the_names_of_its_pictures_change_with_its_content(tmp_path: Path):
    one = plan_preview(read_artwork(written(tmp_path, "a.svg", svg())))
    two = plan_preview(read_artwork(written(tmp_path, "b.svg", svg("<rect/>"))))
    assert {each.name for each in one.all}.isdisjoint(each.name for each in two.all)
