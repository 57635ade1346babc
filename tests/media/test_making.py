"""What is planned is what is made: names, sizes, bytes, whole files."""

import errno
import re
import subprocess
import sys
import threading
import warnings
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import pillow_heif
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from PIL import Image

from maker_site.media import PictureProblem, Probe, Recipe, make, plan, probe
from maker_site.media.memory import LARGE, alone_if_large
from maker_site.media.quiet import quiet_pictures
from tests.media.samples import derive, figure, figure_seen


def a_probe(width: int, height: int) -> Probe:
    return Probe("JPEG", width, height, "0" * 64, 1000)


def test_a_phone_photo_gets_four_widths_and_one_jpeg() -> None:
    # 4032 x 3024 is 4:3, so each height is three quarters of the width.
    wanted = plan(a_probe(4032, 3024))
    assert [(one.width, one.height) for one in wanted.modern] == [(480, 360), (800, 600), (1120, 840), (1600, 1200)]
    assert (wanted.fallback.width, wanted.fallback.height) == (800, 600)
    assert {one.media_type for one in wanted.modern} == {"image/avif"}
    assert wanted.fallback.media_type == "image/jpeg"


@pytest.mark.parametrize(
    ("width", "widths"),
    [(1, [1]), (300, [300]), (480, [480]), (500, [500]), (700, [480, 700]), (1599, [480, 800, 1120, 1599])],
)
def test_a_small_picture_is_not_enlarged(width: int, widths: list[int]) -> None:
    wanted = plan(a_probe(width, 100))
    assert [one.width for one in wanted.modern] == widths
    assert wanted.fallback.width == min(800, width)


def test_heights_are_rounded_to_the_nearest_pixel() -> None:
    # 2001/3000 of 480, 800, 1120, 1600: 320.16, 533.6, 747.04, 1067.2
    assert [one.height for one in plan(a_probe(3000, 2001)).modern] == [320, 534, 747, 1067]


def test_a_long_strip_stays_small() -> None:
    # 1,000 x 20,000 at 4,800 px high is 240 px wide.
    assert [(one.width, one.height) for one in plan(a_probe(1000, 20000)).all] == [(240, 4800)] * 2


@settings(max_examples=5, deadline=None)
@given(st.integers(1, 2400), st.integers(1, 2400), st.sampled_from(["jpg", "png"]))
@example(1, 1, "png")
@example(3, 9000, "png")
@example(9000, 3, "jpg")
@example(3201, 2399, "jpg")
def test_planned_sizes_are_made_sizes(
    tmp_path_factory: pytest.TempPathFactory, width: int, height: int, ending: str
) -> None:
    folder = tmp_path_factory.mktemp("sizes")
    path = folder / f"flat.{ending}"
    Image.new("RGB", (width, height), (200, 120, 40)).save(path)
    wanted, pictures = derive(path, folder / "out")
    assert (wanted.width, wanted.height) == (width, height)
    assert [picture.size for picture in pictures] == [(one.width, one.height) for one in wanted.all]
    assert sorted(made.name for made in (folder / "out").iterdir()) == sorted(one.name for one in wanted.all)
    assert all(one.width <= width for one in wanted.all)


def test_names_tell_nothing_but_content(tmp_path: Path) -> None:
    first, second = tmp_path / "Surprise for the bakery.png", tmp_path / "b.png"
    figure().save(first)
    second.write_bytes(first.read_bytes())
    wanted = plan(probe(first))
    assert wanted == plan(probe(second))
    for one in wanted.all:
        assert re.fullmatch(r"[0-9a-f]{16}-\d+\.(avif|jpg)", one.name)


def test_names_change_with_content_and_with_recipe(tmp_path: Path) -> None:
    path = tmp_path / "a.png"
    figure().save(path)
    first = probe(path)
    figure("321/654").save(path)
    names = {one.name for one in plan(first).all}
    assert names.isdisjoint(one.name for one in plan(probe(path)).all)
    assert names.isdisjoint(one.name for one in plan(first, Recipe(avif_quality=61)).all)
    assert names.isdisjoint(one.name for one in plan(first, Recipe(version=2)).all)


def test_a_phone_heic_is_read(tmp_path: Path) -> None:
    path = tmp_path / "phone.heic"
    pillow_heif.from_pillow(figure()).save(path, quality=90)
    found = probe(path)
    assert (found.format, found.width, found.height) == ("HEIC", 240, 160)
    assert found.bytes == path.stat().st_size
    _, pictures = derive(path, tmp_path / "out")
    assert {figure_seen(picture) for picture in pictures} == {"123/456"}


def test_the_same_bytes_are_made_again_on_any_number_of_threads(tmp_path: Path) -> None:
    path = tmp_path / "photo.jpg"
    Image.effect_noise((1000, 700), 60).convert("RGB").save(path)
    wanted = plan(probe(path))
    folders = [tmp_path / str(number) for number in range(4)]
    for folder in folders:
        folder.mkdir()
    make(path, wanted, folders[0])
    with ThreadPoolExecutor(3) as pool:
        list(pool.map(lambda folder: make(path, wanted, folder), folders[1:]))
    first = {one.name: one.read_bytes() for one in folders[0].iterdir()}
    assert len(first) == len(wanted.all)
    for folder in folders[1:]:
        assert {one.name: one.read_bytes() for one in folder.iterdir()} == first


def test_paths_are_given_and_readable_by_a_web_server(tmp_path: Path) -> None:
    path = tmp_path / "figure.png"
    figure().save(path)
    out = tmp_path / "out"
    out.mkdir()
    made = make(path, plan(probe(path)), out)
    assert sorted(made) == sorted(out.iterdir())
    plain = tmp_path / "plain"
    plain.touch()
    assert {one.stat().st_mode for one in made} == {plain.stat().st_mode}


def test_no_half_file_is_left_when_writing_fails(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "figure.png"
    figure().resize((1500, 1000)).save(path)
    wanted = plan(probe(path))
    out = tmp_path / "out"
    out.mkdir()
    real = Image.Image.save

    def full_disk(self: Image.Image, stream: Any, *args: Any, **options: Any) -> None:
        if self.width == wanted.modern[0].width:
            stream.write(b"half a pict")
            raise OSError(errno.ENOSPC, "No space left on device")
        real(self, stream, *args, **options)

    monkeypatch.setattr(Image.Image, "save", full_disk)
    with pytest.raises(OSError, match="No space left"):
        make(path, wanted, out)
    left = list(out.iterdir())
    assert wanted.modern[0].name not in {one.name for one in left}
    for one in left:  # what was finished before is whole
        assert one.name in {derivative.name for derivative in wanted.all}
        with Image.open(one) as picture:
            picture.load()


def test_a_photo_changed_after_planning_is_not_passed_off_as_the_old_one(tmp_path: Path) -> None:
    path = tmp_path / "figure.png"
    figure().save(path)
    wanted = plan(probe(path))
    figure("321/654").save(path)
    with pytest.raises(PictureProblem, match="changed while the site was being made"):
        make(path, wanted, tmp_path)


def test_the_picture_library_waits_until_it_is_needed() -> None:
    code = "import sys, maker_site.media; print(sorted({'PIL', 'pillow_heif', 'numpy'} & set(sys.modules)))"
    asked = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert asked.stdout.strip() == "[]"


def test_the_heic_reader_waits_until_a_heic_is_met(tmp_path: Path) -> None:
    path = tmp_path / "figure.jpg"
    figure().save(path)
    code = f"import sys, pathlib; from maker_site.media import sound; sound(pathlib.Path({str(path)!r}))\n"
    code += "print('pillow_heif' in sys.modules)"
    asked = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert asked.stdout.strip() == "False"


def test_every_public_name_is_there() -> None:
    import maker_site.media as room

    assert [name for name in room.__all__ if not hasattr(room, name)] == []
    with pytest.raises(AttributeError, match="no attribute 'develop'"):
        room.develop  # noqa: B018


def test_large_pictures_are_unpacked_one_at_a_time_and_small_ones_beside_them() -> None:
    done = []

    def unpack(pixels: int) -> None:
        with alone_if_large(pixels):
            done.append(pixels)

    threads = [threading.Thread(target=unpack, args=[pixels]) for pixels in (LARGE, LARGE + 1)]
    with alone_if_large(LARGE + 1):
        for thread in threads:
            thread.start()
        threads[0].join(5)
        threads[1].join(0.05)
        assert done == [LARGE]
    threads[1].join(5)
    assert done == [LARGE, LARGE + 1]


def test_warning_filters_are_put_back_after_overlapping_threads() -> None:
    before = list(warnings.filters)
    inside, leave = threading.Event(), threading.Event()

    def stay() -> None:
        with quiet_pictures():
            inside.set()
            leave.wait(5)

    thread = threading.Thread(target=stay)
    with quiet_pictures():
        thread.start()
        inside.wait(5)
    leave.set()
    thread.join()
    assert warnings.filters == before
