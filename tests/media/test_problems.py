"""A file that is no usable picture gets a sentence that says what to do."""

import io
import pickle
import struct
from contextlib import suppress
from pathlib import Path

import pillow_heif
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from maker_site.media import PictureProblem, make, plan, sound
from maker_site.media.probing import probe
from tests.media.samples import figure, png


def sentence(path: Path) -> str:
    with pytest.raises(PictureProblem) as caught:
        probe(path)
    assert caught.value.path == path
    return str(caught.value)


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "the file is empty (0 bytes): copy the photo again"),
        (b"Press at 200 C for 60 s\n", "this is text, not a picture"),
        ("Grün, 200 °C\n".encode() * 200, "this is text, not a picture"),
        (b"<?xml version='1.0'?><svg xmlns='http://www.w3.org/2000/svg'/>", "this is an SVG drawing"),
        (b"%PDF-1.7\n%\xe2\xe3\xcf\xd3", "this is a PDF drawing"),
        (b"\0\0\0\x18ftypisom\0\0\0\0isommp42", "this is a film, not a picture"),
        (b"BM\x36\0\0\0\0\0\0\0", "this is a BMP picture"),
        (b"II*\0\x10\0\0\0CR\x02\0", "this is an unfinished camera file (raw)"),
        (bytes(range(256)), "this is not a picture"),
    ],
    ids=["empty", "text", "text with accents", "svg", "pdf", "film", "bmp", "raw", "noise"],
)
def test_what_is_no_photo_is_called_by_its_name(data: bytes, words: str, tmp_path: Path) -> None:
    path = tmp_path / "photo.jpg"
    path.write_bytes(data)
    assert words in sentence(path)


def test_a_refusal_lists_the_formats_that_are_read(tmp_path: Path) -> None:
    path = tmp_path / "photo.jpg"
    path.write_bytes(b"BM\x36\0\0\0\0\0\0\0")
    for name in ("JPEG", "PNG", "WebP", "TIFF", "HEIC", "AVIF", "GIF"):
        assert name in sentence(path)


def test_a_name_that_lies_about_a_sound_picture_does_not_matter(tmp_path: Path) -> None:
    path = tmp_path / "photo.jpg"
    figure().save(path, "PNG")
    assert probe(path).format == "PNG"


def test_a_missing_file_is_said_to_be_missing(tmp_path: Path) -> None:
    assert sentence(tmp_path / "gone.jpg") == "the file can't be read: No such file or directory"


def jpeg_claiming(width: int, height: int) -> bytes:
    """Give a small JPEG whose frame header (ISO/IEC 10918-1, B.2.2) claims another size."""
    stream = io.BytesIO()
    figure().save(stream, "JPEG")
    data = bytearray(stream.getvalue())
    at = data.index(b"\xff\xc0")
    data[at + 5 : at + 9] = struct.pack(">HH", height, width)
    return bytes(data)


@pytest.mark.parametrize(
    "data",
    [
        png(60000, 60000, 8, 2, b"\0"),
        jpeg_claiming(60000, 60000),
        b"GIF89a"
        + struct.pack("<HH", 60000, 60000)
        + b"\0\0\0,\0\0\0\0"
        + struct.pack("<HH", 60000, 60000)
        + b"\0\x02\x02D\x01\0;",
    ],
    ids=["png", "jpeg", "gif"],
)
def test_a_picture_too_large_to_unpack_is_refused_by_its_header(data: bytes, tmp_path: Path) -> None:
    path = tmp_path / "bomb"
    path.write_bytes(data)
    words = sentence(path)
    assert "60,000 x 60,000 pixels (3,600.0 megapixels)" in words
    assert "the limit is 200.0 megapixels" in words


def test_a_webp_too_large_to_unpack_is_refused_before_its_canvas_is_made(tmp_path: Path) -> None:
    # RFC 9649, section 2.7: VP8X, canvas width and height less one in 24 bits each.
    chunk = b"VP8X" + struct.pack("<I", 10) + bytes(4) + (16382).to_bytes(3, "little") * 2
    path = tmp_path / "bomb.webp"
    path.write_bytes(b"RIFF" + struct.pack("<I", 4 + len(chunk)) + b"WEBP" + chunk)
    assert "the picture has 268.4 megapixels, and the limit for pictures of this kind is 179.0" in sentence(path)


def test_the_limit_can_be_set_and_is_inclusive(tmp_path: Path) -> None:
    path = tmp_path / "figure.png"
    figure().save(path)
    pixels = figure().width * figure().height
    assert probe(path, max_pixels=pixels).pixels == pixels
    with pytest.raises(PictureProblem, match="save a smaller copy"):
        probe(path, max_pixels=pixels - 1)


def test_a_large_picture_under_the_limit_is_read_without_a_warning(tmp_path: Path) -> None:
    # 144 megapixels: above the size at which Pillow itself warns. Warnings are errors in these tests.
    path = tmp_path / "large.png"
    path.write_bytes(png(12000, 12000, 8, 2, b"\0"))
    assert probe(path).pixels == 144_000_000


def whole(ending: str, tmp_path: Path) -> Path:
    path = tmp_path / f"photo.{ending}"
    # Noise, so that most of the file is pixels.
    picture = Image.effect_noise((400, 300), 80).convert("RGB")
    if ending == "heic":
        pillow_heif.from_pillow(picture).save(path, quality=80)
    else:
        picture.save(path)
    return path


@pytest.mark.parametrize("ending", ["jpg", "png", "webp", "tif", "heic", "avif", "gif"])
def test_a_picture_that_breaks_off_is_refused_and_leaves_nothing(ending: str, tmp_path: Path) -> None:
    path = whole(ending, tmp_path)
    sound(path)
    out = tmp_path / "out"
    out.mkdir()
    data = path.read_bytes()
    path.write_bytes(data[: len(data) * 6 // 10])
    with pytest.raises(PictureProblem):
        sound(path)
    with pytest.raises(PictureProblem):
        make(path, plan(probe(path)), out)
    assert list(out.iterdir()) == []


def test_a_photo_that_breaks_off_is_said_to(tmp_path: Path) -> None:
    path = whole("jpg", tmp_path)
    path.write_bytes(path.read_bytes()[:-2000])
    with pytest.raises(PictureProblem, match=r"breaks off before its end .*: copy it again"):
        sound(path)


def test_measurements_are_no_picture(tmp_path: Path) -> None:
    path = tmp_path / "heights.tif"
    Image.new("F", (20, 20), 0.5).save(path)
    with pytest.raises(PictureProblem, match="32-bit measurements, save it with 8 or 16 bits"):
        sound(path)


@pytest.mark.parametrize("ending", ["jpg", "png", "webp", "tif", "gif", "heic", "avif"])
def test_damaged_bytes_never_raise_anything_else(ending: str, tmp_path_factory: pytest.TempPathFactory) -> None:
    folder = tmp_path_factory.mktemp("damaged")
    data = whole(ending, folder).read_bytes()
    path = folder / "damaged"

    @settings(max_examples=25, deadline=None)
    @given(
        st.lists(st.tuples(st.integers(0, 600) | st.integers(0, len(data) - 1), st.integers(0, 255)), max_size=6),
        st.integers(0, len(data)),
    )
    def check(changes: list[tuple[int, int]], end: int) -> None:
        bad = bytearray(data)
        for at, value in changes:
            bad[at] = value
        path.write_bytes(bytes(bad[: end if end > 20 else None]))
        with suppress(PictureProblem):
            probe(path)
            sound(path)

    check()


def test_a_problem_crosses_from_a_worker_process() -> None:
    problem = PictureProblem(Path("a.jpg"), "the file is empty")
    copy = pickle.loads(pickle.dumps(problem))
    assert (copy.path, str(copy)) == (problem.path, "the file is empty")
