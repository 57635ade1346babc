"""Nothing that a camera or a program wrote beside the pixels reaches the derivatives."""

import json
import shutil
import subprocess
from pathlib import Path

import pytest
from PIL import Image
from PIL.PngImagePlugin import PngInfo

from tests.media.samples import avif_boxes, derive, figure, jpeg_segments
from tests.media.test_colour import wide_profile

SECRETS = [b"Hollow Pin", b"Box One", b"Quillet slip road", b"hidden remark", b"XMP-secret", b"IPTC-secret"]


def telling_exif() -> Image.Exif:
    exif = Image.Exif()
    exif[0x010F], exif[0x0110], exif[0x010E] = "Hollow Pin", "Box One", "Quillet slip road"
    exif[0x8825] = {1: "N", 2: (51.0, 30.0, 0.0), 3: "W", 4: (20.0, 10.0, 0.0)}  # GPS, a place out at sea
    exif[0x8769] = {0x9286: b"ASCII\0\0\0Quillet slip road"}  # user comment
    return exif


def telling_jpeg(path: Path) -> None:
    figure().save(
        path,
        exif=telling_exif(),
        xmp=b"<x:xmpmeta xmlns:x='adobe:ns:meta/'>XMP-secret</x:xmpmeta>",
        comment=b"hidden remark",
        icc_profile=wide_profile(),
        dpi=(300, 300),
    )
    caption = b"\x1c\x02\x78\x00\x0bIPTC-secret"  # IIM record 2, data set 120
    resource = b"Photoshop 3.0\x008BIM\x04\x04\0\0" + len(caption).to_bytes(4, "big") + caption
    data = path.read_bytes()
    path.write_bytes(data[:2] + b"\xff\xed" + (len(resource) + 2).to_bytes(2, "big") + resource + data[2:])


@pytest.fixture
def derived_from_telling_jpeg(tmp_path: Path) -> list[Path]:
    path = tmp_path / "telling.jpg"
    telling_jpeg(path)
    assert [word for word in SECRETS if word not in path.read_bytes()] == []  # they are there to be removed
    derive(path, tmp_path / "out")
    return sorted((tmp_path / "out").iterdir())


def test_no_planted_word_is_left(derived_from_telling_jpeg: list[Path]) -> None:
    for path in derived_from_telling_jpeg:
        assert [word for word in SECRETS if word in path.read_bytes()] == []


def test_the_jpeg_holds_only_what_a_decoder_needs(derived_from_telling_jpeg: list[Path]) -> None:
    (path,) = (path for path in derived_from_telling_jpeg if path.suffix == ".jpg")
    markers = jpeg_segments(path.read_bytes())
    # JFIF, tables, progressive frame, scans, end: no APP1 to APP15, no comment.
    assert set(markers) <= {0xE0, 0xDB, 0xC2, 0xC4, 0xDA, 0xD9}
    assert markers.count(0xE0) == 1
    assert path.read_bytes()[2:20] == b"\xff\xe0\0\x10JFIF\0\x01\x01\0\0\x01\0\x01\0\0"  # no density, no thumbnail


def test_the_avif_holds_only_what_a_decoder_needs(derived_from_telling_jpeg: list[Path]) -> None:
    for path in derived_from_telling_jpeg:
        if path.suffix == ".avif":
            boxes = list(avif_boxes(path.read_bytes()))
            items = [body[8:12] for name, body in boxes if name == b"infe"]
            assert items == [b"av01"]  # one picture, no Exif item, no XMP item, no thumbnail
            assert {name for name, _ in boxes if name in {b"irot", b"imir", b"uuid", b"free", b"udta"}} == set()
            assert {body[:4] for name, body in boxes if name == b"colr"} <= {b"nclx"}  # no ICC profile


@pytest.mark.skipif(shutil.which("exiftool") is None, reason="exiftool is not on this machine")
def test_another_reader_finds_no_metadata(derived_from_telling_jpeg: list[Path]) -> None:
    asked = subprocess.run(
        ["exiftool", "-j", "-a", "-u", "-G0", *map(str, derived_from_telling_jpeg)],
        capture_output=True,
        check=True,
    )
    for found in json.loads(asked.stdout):
        groups = {name.split(":")[0] for name in found if ":" in name}
        assert groups <= {"ExifTool", "File", "JFIF", "Composite", "QuickTime"}
        assert [name for name in found if "Date" in name and not name.startswith("File:")] == []


@pytest.mark.parametrize("ending", ["png", "webp", "tif", "avif"])
def test_no_planted_word_is_left_of_other_formats(ending: str, tmp_path: Path) -> None:
    path = tmp_path / f"telling.{ending}"
    remarks = PngInfo()
    remarks.add_text("Comment", "hidden remark")
    remarks.add_itxt("XML:com.adobe.xmp", "XMP-secret")
    extra = {"pnginfo": remarks} if ending == "png" else {"xmp": b"XMP-secret"} if ending != "tif" else {}
    figure().save(path, exif=telling_exif().tobytes(), icc_profile=wide_profile(), **extra)
    assert b"Hollow Pin" in path.read_bytes()
    derive(path, tmp_path / "out")
    for made in (tmp_path / "out").iterdir():
        assert [word for word in SECRETS if word in made.read_bytes()] == []
        with Image.open(made) as picture:
            assert dict(picture.getexif()) == {}
            assert set(picture.info) <= {"jfif", "jfif_version", "jfif_unit", "jfif_density", "progressive"} | {
                "progression"
            }
