"""What the system refuses is told in a sentence that says what to do, and the last site stays."""

import errno
import os
from collections.abc import Callable
from pathlib import Path
from typing import NoReturn

import pytest

from maker_site.writer.site_folder import SiteFolder, SiteFolderProblem

from .trees import NEW, OLD, leftovers, make, tree


def fails_with(number: int) -> Callable[..., NoReturn]:
    def fail(*_: object, **__: object) -> NoReturn:
        raise OSError(number, os.strerror(number))

    return fail


def refusal_of(out: Path, files: dict[str, bytes] = NEW) -> str:
    with pytest.raises(SiteFolderProblem) as refused:
        make(out, files)
    return str(refused.value)


def test_an_output_folder_that_is_a_file(tmp_path: Path) -> None:
    out = tmp_path / "site"
    out.write_text("not a folder")
    assert refusal_of(out) == (
        f"“{out}” is a file, and a folder is needed for the site. Move the file away, or choose another output folder."
    )
    assert out.read_text() == "not a folder"


def test_an_output_folder_below_a_file(tmp_path: Path) -> None:
    (tmp_path / "notes.txt").write_text("not a folder")
    assert "there is a file where a folder is needed" in refusal_of(tmp_path / "notes.txt" / "site")


def test_workings_that_are_a_file(tmp_path: Path) -> None:
    (tmp_path / ".maker-site").write_text("not a folder")
    assert "there is a file where a folder is needed" in refusal_of(tmp_path)


def test_a_file_of_the_makers_where_a_folder_is_needed_and_a_folder_where_a_file_is(tmp_path: Path) -> None:
    (tmp_path / "workshop").write_text("mine")
    assert refusal_of(tmp_path).startswith(f"“{tmp_path}/workshop” is a file, and a folder is needed there")
    (tmp_path / "workshop").unlink()
    (tmp_path / "workshop/index.html").mkdir(parents=True)
    assert refusal_of(tmp_path).startswith(f"“{tmp_path}/workshop/index.html” is a folder, and a file is to be made")


@pytest.mark.parametrize(
    ("number", "sentence"),
    [
        (errno.ENOSPC, "The disk is full"),
        (errno.EDQUOT, "The disk is full"),
        (errno.EROFS, "is on a drive that can only be read"),
        (errno.EACCES, "may not be changed: permission denied"),
        (errno.EIO, "could not be read or written: Input/output error"),
    ],
)
def test_a_failure_to_stage_a_page(tmp_path: Path, number: int, sentence: str) -> None:
    make(tmp_path, OLD)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Path, "write_bytes", fails_with(number))
        told = refusal_of(tmp_path)
    assert sentence in told
    assert "workshop/index.html" in told
    assert tree(tmp_path) == OLD
    assert leftovers(tmp_path) == set()


def test_a_disk_that_is_full_while_a_picture_is_saved(tmp_path: Path) -> None:
    with pytest.raises(SiteFolderProblem, match="The disk is full"), SiteFolder.open(tmp_path) as site:
        site.put_file("photos/a.webp", fails_with(errno.ENOSPC))


def test_a_disk_that_is_full_when_the_journal_is_written(tmp_path: Path) -> None:
    make(tmp_path, OLD)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(os, "fsync", fails_with(errno.ENOSPC))
        assert "The disk is full" in refusal_of(tmp_path)
    assert tree(tmp_path) == OLD
    assert leftovers(tmp_path) == set()


@pytest.mark.parametrize(
    "address", ["x" * 300, "new/folder/" + "x" * 300, "new/" + "x" * 300 + "/page.html", "d/" * 2500 + "x"]
)
def test_a_name_too_long_for_the_drive_is_told_before_anything_moves(tmp_path: Path, address: str) -> None:
    make(tmp_path, OLD)
    assert "is too long for this drive" in refusal_of(tmp_path, {**NEW, address: b""})
    assert tree(tmp_path) == OLD


def test_a_folder_that_may_not_be_written_is_told_before_anything_moves(tmp_path: Path) -> None:
    make(tmp_path, OLD)
    real_access = os.access

    def access(path: Path, mode: int) -> bool:
        return real_access(path, mode) and Path(path) != tmp_path / "public"

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(os, "access", access)
        assert refusal_of(tmp_path).startswith(f"“{tmp_path}/public” may not be changed: permission denied.")
    assert tree(tmp_path) == OLD
    assert leftovers(tmp_path) == set()


@pytest.mark.parametrize("folder", [".", ".maker-site", "public"])
def test_a_folder_without_the_right_to_write(tmp_path: Path, folder: str) -> None:
    make(tmp_path, OLD)
    (tmp_path / folder).chmod(0o555)
    if os.access(tmp_path / folder, os.W_OK):
        pytest.skip("this user may write everywhere")
    try:
        if folder == ".":  # the two copies and the workings lie below and may be written: only a new copy can't be
            assert "permission denied" in refusal_of(tmp_path, {**NEW, "third/index.html": b""})
        else:
            assert "permission denied" in refusal_of(tmp_path)
        assert tree(tmp_path) == OLD
    finally:
        (tmp_path / folder).chmod(0o755)
