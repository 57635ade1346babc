"""What the maker put into the output folder by hand is neither replaced nor removed."""

import os
import shutil
from pathlib import Path

import pytest

from maker_site.writer.site_folder import Changes, SiteFolder, SiteFolderProblem

from .test_interrupted import FailingReplace
from .trees import NEW, OLD, make, reopen, save, tree

MINE = {"CNAME": b"shed.example.org", "workshop/projects/withdrawn/notes.txt": b"mine", "public/orchard.jpg": b"mine"}


def put_by_hand(out: Path, files: dict[str, bytes]) -> None:
    for address, data in files.items():
        (out / address).parent.mkdir(parents=True, exist_ok=True)
        (out / address).write_bytes(data)


def test_files_of_the_makers_own_stay_through_every_make(tmp_path: Path) -> None:
    put_by_hand(tmp_path, MINE)
    for site in (OLD, NEW, {}):
        make(tmp_path, site)
        assert tree(tmp_path) == {**site, **MINE}


def test_a_hand_put_file_at_an_address_of_ours_is_refused_by_name(tmp_path: Path) -> None:
    make(tmp_path, OLD)
    put_by_hand(tmp_path, {"workshop/projects/orchard.html": b"written by me"})
    with pytest.raises(SiteFolderProblem) as refused:
        make(tmp_path, NEW)
    assert str(refused.value) == (
        f"“{tmp_path}/workshop/projects/orchard.html” is not one of the files made here, so it is not replaced. "
        "Move it away, or delete it if it isn't needed, and make again."
    )
    assert tree(tmp_path) == {**OLD, "workshop/projects/orchard.html": b"written by me"}


def test_a_picture_in_the_way_is_refused_too(tmp_path: Path) -> None:
    put_by_hand(tmp_path, {"photos/a.webp": b"mine"})
    with pytest.raises(SiteFolderProblem, match="not one of the files made here"), SiteFolder.open(tmp_path) as site:
        site.put_file("photos/a.webp", lambda path: save(path, b"made"))
    assert tree(tmp_path) == {"photos/a.webp": b"mine"}


def test_a_folder_of_the_makers_is_refused_again_and_again(tmp_path: Path) -> None:
    put_by_hand(tmp_path, {"workshop/index.html": b"an older site of mine"})
    for _ in range(3):
        with pytest.raises(SiteFolderProblem, match="not one of the files made here"):
            make(tmp_path, NEW)
        assert tree(tmp_path) == {"workshop/index.html": b"an older site of mine"}


def test_a_first_make_that_failed_in_its_commit_gives_no_right_to_the_makers_files(tmp_path: Path) -> None:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(os, "replace", FailingReplace(fails_at=1))
        with pytest.raises(SiteFolderProblem):
            make(tmp_path, NEW)
    put_by_hand(tmp_path, {"workshop/index.html": b"mine"})
    with pytest.raises(SiteFolderProblem, match="not one of the files made here"):
        make(tmp_path, NEW)


def test_a_file_with_the_same_bytes_is_taken_as_made(tmp_path: Path) -> None:
    put_by_hand(tmp_path, OLD)
    before = (tmp_path / "workshop/index.html").stat()
    assert make(tmp_path, OLD) == Changes(written=(), removed=(), kept=len(OLD))
    after = (tmp_path / "workshop/index.html").stat()
    assert (after.st_ino, after.st_mtime_ns) == (before.st_ino, before.st_mtime_ns)
    assert make(tmp_path, {}).removed == tuple(sorted(OLD))


@pytest.mark.parametrize(
    "manifest", [None, b"", b"{", b"[]", b'{"version":99,"files":{}}', b'{"version":1,"files":{"a":1}}']
)
def test_a_lost_or_unreadable_manifest_costs_time_only(tmp_path: Path, manifest: bytes | None) -> None:
    put_by_hand(tmp_path, MINE)
    make(tmp_path, OLD)
    path = tmp_path / ".maker-site/manifest.json"
    path.unlink() if manifest is None else path.write_bytes(manifest)
    changes = make(tmp_path, NEW)
    left = "workshop/projects/withdrawn/index.html"
    assert tree(tmp_path) == {**NEW, **MINE, left: OLD[left]}
    assert changes.kept == 1
    assert changes.unknown == tuple(sorted([*MINE, left]))
    assert make(tmp_path, NEW) == Changes(written=(), removed=(), kept=len(NEW))


def test_with_all_workings_deleted_equal_files_are_taken_back_and_others_are_refused(tmp_path: Path) -> None:
    make(tmp_path, OLD)
    shutil.rmtree(tmp_path / ".maker-site")
    assert make(tmp_path, OLD).kept == len(OLD)
    shutil.rmtree(tmp_path / ".maker-site")
    with pytest.raises(SiteFolderProblem, match="delete it if it isn't needed, and make again"):
        make(tmp_path, NEW)
    assert tree(tmp_path) == OLD


def test_a_file_put_in_the_way_after_a_make_died_is_left_and_then_refused(tmp_path: Path) -> None:
    make(tmp_path, OLD)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(os, "replace", FailingReplace(fails_at=2))
        with pytest.raises(SiteFolderProblem, match="The site is half made; the next make finishes it"):
            make(tmp_path, NEW)
    put_by_hand(tmp_path, {"workshop/projects/orchard.html": b"mine"})
    reopen(tmp_path)
    assert tree(tmp_path) == {**NEW, "workshop/projects/orchard.html": b"mine"}
    with pytest.raises(SiteFolderProblem, match="not one of the files made here"):
        make(tmp_path, NEW)


def test_a_file_put_where_one_was_removed_before_a_make_died_is_left(tmp_path: Path) -> None:
    make(tmp_path, OLD)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(os, "replace", FailingReplace(fails_at=3))
        with pytest.raises(SiteFolderProblem):
            make(tmp_path, NEW)
    put_by_hand(tmp_path, {"workshop/projects/withdrawn/index.html": b"mine"})
    reopen(tmp_path)
    assert tree(tmp_path) == {**NEW, "workshop/projects/withdrawn/index.html": b"mine"}


def test_nothing_is_written_through_a_link_at_or_above_an_address(tmp_path: Path) -> None:
    out, elsewhere = tmp_path / "site", tmp_path / "elsewhere"
    put_by_hand(elsewhere, {"index.html": b"mine"})
    make(out, {})
    for link, target in (("workshop", elsewhere), ("workshop", tmp_path / "nowhere")):
        (out / link).symlink_to(target)
        with pytest.raises(SiteFolderProblem, match="workshop” is a link, and a folder is needed there"):
            make(out, NEW)
        (out / link).unlink()
    (out / "workshop").mkdir()
    (out / "workshop/index.html").symlink_to(elsewhere / "index.html")
    with pytest.raises(SiteFolderProblem, match=r"index\.html” is a link, and a file is to be made there"):
        make(out, NEW)
    assert tree(elsewhere) == {"index.html": b"mine"}
    assert (out / "workshop/index.html").is_symlink()


def test_a_made_file_or_folder_that_became_a_link_is_neither_followed_nor_removed(tmp_path: Path) -> None:
    out, elsewhere = tmp_path / "site", tmp_path / "elsewhere"
    make(out, OLD)
    (out / "public").rename(elsewhere)
    (out / "public").symlink_to(elsewhere)
    (out / "workshop/index.html").unlink()
    (out / "workshop/index.html").symlink_to(elsewhere / "menu.html")
    make(out, {})
    assert tree(elsewhere) == {"menu.html": b"<p>menu"}
    assert (out / "public").is_symlink()
    assert (out / "workshop/index.html").is_symlink()


def test_a_link_put_above_an_address_after_a_make_died_is_not_followed(tmp_path: Path) -> None:
    out, elsewhere = tmp_path / "site", tmp_path / "elsewhere"
    elsewhere.mkdir()
    make(out, {})
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(os, "replace", FailingReplace(fails_at=2))
        with pytest.raises(SiteFolderProblem):
            make(out, {"public/menu.html": b"made"})
    (out / "public").rmdir()
    (out / "public").symlink_to(elsewhere)
    reopen(out)
    assert tree(elsewhere) == {}


def test_the_output_folder_itself_may_be_a_link(tmp_path: Path) -> None:
    (tmp_path / "served").mkdir()
    (tmp_path / "site").symlink_to(tmp_path / "served")
    make(tmp_path / "site", NEW)
    assert tree(tmp_path / "served") == NEW


def test_workings_that_are_a_link_are_refused(tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "site").mkdir()
    (tmp_path / "site/.maker-site").symlink_to(tmp_path / "elsewhere")
    with pytest.raises(SiteFolderProblem, match="is a link, and nothing is written through it"):
        make(tmp_path / "site", NEW)
    assert tree(tmp_path / "elsewhere") == {}


def test_a_manifest_that_was_tampered_with_removes_nothing_outside_the_site(tmp_path: Path) -> None:
    out = tmp_path / "site"
    put_by_hand(tmp_path, {"records.yaml": b"mine"})
    make(out, {"index.html": b"made"})
    manifest = out / ".maker-site/manifest.json"
    manifest.write_text(manifest.read_text().replace("index.html", "../records.yaml"))
    make(out, {})
    assert (tmp_path / "records.yaml").read_bytes() == b"mine"


@pytest.mark.parametrize("after", [b"after", b"before"])
def test_a_name_that_only_changed_case_is_ours_where_the_drive_ignores_case(tmp_path: Path, after: bytes) -> None:
    # A second hard link stands in for such a drive: the file is found under both names.
    make(tmp_path, {"projects/Mug.html": b"before"})
    (tmp_path / "projects/mug.html").hardlink_to(tmp_path / "projects/Mug.html")
    changes = make(tmp_path, {"projects/mug.html": after})
    # Written even where the bytes are the same: what goes under the old name would be the file itself.
    assert changes == Changes(written=("projects/mug.html",), removed=("projects/Mug.html",), kept=0)
    assert tree(tmp_path) == {"projects/mug.html": after}
