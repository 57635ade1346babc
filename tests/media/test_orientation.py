"""Photos stand upright, as the standard says for each of the eight orientations."""

from pathlib import Path

import pillow_heif
import pytest
from PIL import Image

from maker_site.media import probe
from tests.media.samples import BLOCK, derive, figure, figure_seen

# JEITA CP-3451 (Exif 2.2), p. 18, tag 274: where the stored row 0 and column 0 are when the picture is seen.
# The figure stored as 123 over 456 (checks: web-10 to web-17).
STANDARD = {
    1: ("top", "left", "123/456"),
    2: ("top", "right", "321/654"),
    3: ("bottom", "right", "654/321"),
    4: ("bottom", "left", "456/123"),
    5: ("left", "top", "14/25/36"),
    6: ("right", "top", "41/52/63"),
    7: ("right", "bottom", "63/52/41"),
    8: ("left", "bottom", "36/25/14"),
}


def edge(rows: str, side: str) -> set[str]:
    lines = rows.split("/")
    columns = ["".join(column) for column in zip(*lines, strict=True)]
    return set({"top": lines[0], "bottom": lines[-1], "left": columns[0], "right": columns[-1]}[side])


@pytest.mark.parametrize("value", STANDARD)
def test_the_table_agrees_with_the_words_of_the_standard(value: int) -> None:
    row_0, column_0, seen = STANDARD[value]
    assert edge(seen, row_0) == set("123")
    assert edge(seen, column_0) == set("14")


@pytest.mark.parametrize("ending", ["jpg", "png", "webp", "tif", "avif", "heic"])
@pytest.mark.parametrize("value", STANDARD)
def test_every_orientation_stands_upright(value: int, ending: str, tmp_path: Path) -> None:
    exif = Image.Exif()
    exif[274] = value
    path = tmp_path / f"stored.{ending}"
    if ending == "heic":
        pillow_heif.from_pillow(figure()).save(path, quality=95, exif=exif.tobytes())
    elif ending == "tif":
        figure().save(path, tiffinfo={274: value})
    else:
        figure().save(path, exif=exif)
    seen = STANDARD[value][2]
    size = (BLOCK * len(seen.split("/", maxsplit=1)[0]), BLOCK * (seen.count("/") + 1))

    found = probe(path)
    wanted, pictures = derive(path, tmp_path / "out")

    assert (found.width, found.height) == size
    assert [picture.size for picture in pictures] == [size] * len(wanted.all)
    assert {figure_seen(picture) for picture in pictures} == {seen}


@pytest.mark.parametrize("value", [0, 9, 65535])
def test_an_orientation_outside_the_standard_is_ignored(value: int, tmp_path: Path) -> None:
    exif = Image.Exif()
    exif[274] = value
    path = tmp_path / "stored.jpg"
    figure().save(path, exif=exif)
    _, pictures = derive(path, tmp_path / "out")
    assert figure_seen(pictures[0]) == "123/456"


def test_damaged_exif_does_not_spoil_a_sound_photo(tmp_path: Path) -> None:
    path = tmp_path / "stored.jpg"
    figure().save(path, exif=b"Exif\0\0II*\0\x08\0\0\0\xff\xff" + b"\x12\x01\x03\0")
    _, pictures = derive(path, tmp_path / "out")
    assert figure_seen(pictures[0]) == "123/456"


def test_a_photo_much_larger_than_wanted_is_turned_the_same_way(tmp_path: Path) -> None:
    # 4800 x 3200 stored: decoded at a half, and turned after the first resizing.
    exif = Image.Exif()
    exif[274] = 6
    path = tmp_path / "large.jpg"
    figure().resize((4800, 3200), Image.Resampling.NEAREST).save(path, exif=exif)
    wanted, pictures = derive(path, tmp_path / "out")
    assert (wanted.width, wanted.height) == (3200, 4800)
    for picture in pictures:
        assert figure_seen(picture.resize((BLOCK * 2, BLOCK * 3))) == "41/52/63"
