"""Colours arrive as sRGB, whatever space, depth or ground they were stored with."""

from pathlib import Path

import numpy as np
import pytest
from PIL import Image, ImageCms

from tests.media.samples import derive, icc_profile, middle, png

SIZE = (96, 64)
SLACK = 4.0  # of 255: what lossy compression and the profile's 16-bit figures may move a flat colour

# Adobe RGB (1998) encoding: gamma 2.19921875; colorants adapted to D50 (Bradford), brucelindbloom.com, from memory.
WIDE = np.array(
    [[0.6097559, 0.2052401, 0.1492240], [0.3111242, 0.6256560, 0.0632197], [0.0194811, 0.0608902, 0.7448387]]
)
# D50 XYZ to linear sRGB, the same author's table, from memory.
TO_SRGB = np.array(
    [
        [3.1338561, -1.6168667, -0.4906146],
        [-0.9787684, 1.9161415, 0.0334540],
        [0.0719453, -0.2289914, 1.4052427],
    ]
)


def srgb_of_wide(colour: tuple[int, int, int]) -> np.ndarray:
    """Work the conversion out with the published matrices and IEC 61966-2-1's curve; no colour library."""
    linear = TO_SRGB @ WIDE @ (np.array(colour) / 255) ** 2.19921875
    linear = np.clip(linear, 0, 1)
    return 255 * np.where(linear <= 0.0031308, 12.92 * linear, 1.055 * linear ** (1 / 2.4) - 0.055)


def wide_profile() -> bytes:
    red, green, blue = (WIDE[:, channel].tolist() for channel in range(3))
    return icc_profile(red, green, blue, 0x0233)


@pytest.mark.parametrize("colour", [(100, 150, 100), (200, 120, 90), (60, 90, 160), (128, 128, 128), (255, 255, 255)])
@pytest.mark.parametrize("ending", ["jpg", "png", "webp", "tif"])
def test_a_profile_wider_than_srgb_is_converted(colour: tuple[int, int, int], ending: str, tmp_path: Path) -> None:
    path = tmp_path / f"wide.{ending}"
    Image.new("RGB", SIZE, colour).save(path, icc_profile=wide_profile())
    _, pictures = derive(path, tmp_path / "out")
    for picture in pictures:
        assert middle(picture) == pytest.approx(srgb_of_wide(colour), abs=SLACK)


def test_paper_that_is_not_quite_white_is_scanned_as_white(tmp_path: Path) -> None:
    # ICC.1, relative colorimetric: the medium's white maps to white, whatever was measured (here a cream).
    red, green, blue = (WIDE[:, channel].tolist() for channel in range(3))
    path = tmp_path / "cream.png"
    cream = icc_profile(red, green, blue, 0x0233, white=[0.85, 0.87, 0.6])
    Image.new("RGB", SIZE, "white").save(path, icc_profile=cream)
    _, pictures = derive(path, tmp_path / "out")
    assert middle(pictures[0]) == pytest.approx((255, 255, 255), abs=1)


def test_the_wide_profile_makes_a_difference_that_is_seen() -> None:
    assert np.abs(srgb_of_wide((100, 150, 100)) - (100, 150, 100)).max() > 3 * SLACK


def test_the_wide_profile_means_the_same_to_a_colour_library(tmp_path: Path) -> None:
    path = tmp_path / "wide.icc"
    path.write_bytes(wide_profile())
    flat = Image.new("RGB", SIZE, (60, 90, 160))
    asked = ImageCms.profileToProfile(flat, str(path), ImageCms.createProfile("sRGB"))
    assert asked is not None
    assert middle(asked) == pytest.approx(srgb_of_wide((60, 90, 160)), abs=2)


def test_srgb_by_profile_stays_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "srgb.png"
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    Image.new("RGB", SIZE, (100, 150, 100)).save(path, icc_profile=profile)
    _, pictures = derive(path, tmp_path / "out")
    assert middle(pictures[0]) == pytest.approx((100, 150, 100), abs=SLACK)


@pytest.mark.parametrize("profile", [b"no profile at all", wide_profile()[:200]], ids=["nonsense", "cut"])
def test_a_broken_profile_is_as_none(profile: bytes, tmp_path: Path) -> None:
    path = tmp_path / "broken-profile.png"
    Image.new("RGB", SIZE, (100, 150, 100)).save(path, icc_profile=profile)
    _, pictures = derive(path, tmp_path / "out")
    assert middle(pictures[0]) == pytest.approx((100, 150, 100), abs=SLACK)


def test_lab_becomes_srgb(tmp_path: Path) -> None:
    # sRGB's red is L* 54.29, a* 80.81, b* 69.89 against D50 (brucelindbloom.com's calculator, from memory).
    path = tmp_path / "lab.tif"
    stored = bytes([round(54.29 * 2.55), 81, 70])  # TIFF 6.0, section 23: L* by 255/100, a* and b* signed
    Image.frombytes("LAB", SIZE, stored * (SIZE[0] * SIZE[1])).save(path)
    assert stored * 100 in path.read_bytes()
    _, pictures = derive(path, tmp_path / "out")
    for picture in pictures:
        assert middle(picture) == pytest.approx((255, 0, 0), abs=6)


@pytest.mark.parametrize(
    ("inks", "seen"),
    [((255, 0, 0, 0), (0, 255, 255)), ((0, 0, 0, 255), (0, 0, 0)), ((0, 0, 0, 0), (255, 255, 255))],
    ids=["cyan", "black", "paper"],
)
def test_cmyk_without_a_profile_is_read_by_subtraction(
    inks: tuple[int, int, int, int], seen: tuple[int, int, int], tmp_path: Path
) -> None:
    path = tmp_path / "inks.jpg"
    Image.new("CMYK", SIZE, inks).save(path, quality=95)
    _, pictures = derive(path, tmp_path / "out")
    for picture in pictures:
        assert middle(picture) == pytest.approx(seen, abs=6)


def test_16_bit_grey_keeps_its_greys(tmp_path: Path) -> None:
    # 0x8000 of 0xFFFF is half: 128 of 255. A reader that clips shows white.
    path = tmp_path / "deep.png"
    path.write_bytes(png(*SIZE, 16, 0, (b"\0" + b"\x80\x00" * SIZE[0]) * SIZE[1]))
    _, pictures = derive(path, tmp_path / "out")
    assert middle(pictures[0]) == pytest.approx((128, 128, 128), abs=2)


@pytest.mark.parametrize("order", ["<", ">"])
def test_16_bit_grey_in_either_byte_order(order: str, tmp_path: Path) -> None:
    path = tmp_path / "deep.tif"
    mode = "I;16" if order == "<" else "I;16B"
    values = np.full((SIZE[1], SIZE[0]), 0x40FF, f"{order}u2")
    Image.frombytes(mode, SIZE, values.tobytes()).save(path)
    _, pictures = derive(path, tmp_path / "out")
    assert middle(pictures[0]) == pytest.approx((64, 64, 64), abs=2)


def test_16_bit_colour_keeps_its_colours(tmp_path: Path) -> None:
    path = tmp_path / "deep.png"
    path.write_bytes(png(*SIZE, 16, 2, (b"\0" + b"\xc0\x00\x40\x00\x20\x00" * SIZE[0]) * SIZE[1]))
    _, pictures = derive(path, tmp_path / "out")
    assert middle(pictures[0]) == pytest.approx((192, 64, 32), abs=SLACK)


def test_grey_and_black_and_white_become_rgb(tmp_path: Path) -> None:
    for number, picture in enumerate([Image.new("L", SIZE, 90), Image.new("1", SIZE, 1)]):
        path = tmp_path / f"{number}.png"
        picture.save(path)
        _, pictures = derive(path, tmp_path / "out")
        assert {made.mode for made in pictures} == {"RGB"}
        assert middle(pictures[0]) == pytest.approx([(90, 255)[number]] * 3, abs=2)


def clear_palette() -> Image.Image:
    picture = Image.new("P", SIZE, 1)
    picture.putpalette([255, 0, 0, 0, 0, 0])
    picture.info["transparency"] = 1
    return picture


# Alpha over white: 255 - alpha for black ink (Porter and Duff's "over").
@pytest.mark.parametrize(
    ("picture", "ending", "seen"),
    [
        (Image.new("RGBA", SIZE, (0, 0, 0, 0)), "png", 255),
        (Image.new("RGBA", SIZE, (0, 0, 0, 100)), "png", 155),
        (Image.new("RGBA", SIZE, (0, 0, 0, 0)), "webp", 255),
        (Image.new("LA", SIZE, (0, 100)), "png", 155),
        (clear_palette(), "png", 255),
        (clear_palette(), "gif", 255),
    ],
    ids=["clear", "glaze", "clear webp", "grey glaze", "palette png", "palette gif"],
)
def test_alpha_is_laid_on_white(picture: Image.Image, ending: str, seen: int, tmp_path: Path) -> None:
    path = tmp_path / f"alpha.{ending}"
    picture.save(path, **({"transparency": 1} if ending == "gif" else {}))
    _, pictures = derive(path, tmp_path / "out")
    assert {made.mode for made in pictures} == {"RGB"}
    for made in pictures:
        assert middle(made) == pytest.approx([seen] * 3, abs=2)


def test_the_first_frame_of_a_moving_gif_is_taken(tmp_path: Path) -> None:
    path = tmp_path / "moving.gif"
    frames = [Image.new("RGB", SIZE, colour) for colour in ("red", "blue")]
    frames[0].save(path, save_all=True, append_images=frames[1:])
    _, pictures = derive(path, tmp_path / "out")
    assert middle(pictures[0]) == pytest.approx((255, 0, 0), abs=SLACK)
