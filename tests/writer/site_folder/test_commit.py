"""What is put is there after the commit, and nothing else of the tool's."""

import hashlib
import json
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from maker_site.writer.site_folder import Changes, SiteFolder

from .trees import NEW, OLD, leftovers, make, save, tree


@pytest.fixture
def out(tmp_path: Path) -> Path:
    return tmp_path / "far" / "site"


def test_a_first_make_writes_everything_and_leaves_no_workings(out: Path) -> None:
    changes = make(out, OLD)
    assert tree(out) == OLD
    assert changes == Changes(written=tuple(sorted(OLD)), removed=(), kept=0)
    assert leftovers(out) == set()


def test_nothing_is_seen_before_the_commit(out: Path) -> None:
    make(out, OLD)
    with SiteFolder.open(out) as site:
        for address, data in NEW.items():
            site.put(address, data)
        assert tree(out) == OLD
        site.commit()
        assert tree(out) == NEW


def test_only_what_differs_is_written_and_what_is_not_wanted_goes_with_its_empty_folder(out: Path) -> None:
    make(out, OLD)
    assert make(out, NEW) == Changes(
        written=(
            "public/menu.html",
            "public/tutorials/orchard.html",
            "workshop/index.html",
            "workshop/projects/orchard.html",
        ),
        removed=("workshop/projects/withdrawn/index.html",),
        kept=1,
    )
    assert tree(out) == NEW  # with no entry for an empty folder


def test_nothing_changed_touches_no_file_at_all(out: Path) -> None:
    make(out, OLD)
    before = {path: path.stat() for path in out.rglob("*") if path.is_file()}
    assert make(out, OLD) == Changes(written=(), removed=(), kept=len(OLD))
    after = {path: path.stat() for path in out.rglob("*") if path.is_file()}
    lock = out / ".maker-site" / "lock"
    assert {path: (now.st_ino, now.st_mtime_ns) for path, now in after.items() if path != lock} == {
        path: (then.st_ino, then.st_mtime_ns) for path, then in before.items() if path != lock
    }


def test_a_file_that_was_cut_short_or_deleted_is_made_again(out: Path) -> None:
    make(out, OLD)
    (out / "workshop/index.html").write_bytes(b"")
    (out / "public/menu.html").unlink()
    assert make(out, OLD).written == ("public/menu.html", "workshop/index.html")
    assert tree(out) == OLD


def test_a_site_can_become_empty(out: Path) -> None:
    make(out, OLD)
    assert make(out, {}).removed == tuple(sorted(OLD))
    assert tree(out) == {}


def test_a_picture_made_earlier_is_kept_without_being_made(out: Path) -> None:
    picture = "photos/harbour-3f9a.webp"
    with SiteFolder.open(out) as site:
        assert not site.has(picture)
        assert not site.keep(picture)
        site.put_file(picture, lambda path: save(path, b"picture"))
        assert site.has(picture)
        site.commit()
    with SiteFolder.open(out) as site:
        assert site.keep(picture)
        assert site.commit() == Changes(written=(), removed=(), kept=1)
    (out / picture).write_bytes(b"pict")
    with SiteFolder.open(out) as site:
        assert not site.has(picture)
        assert not site.keep(picture)


def test_a_picture_not_asked_for_again_is_removed(out: Path) -> None:
    make(out, {"photos/a.webp": b"a", "photos/b.webp": b"b"})
    with SiteFolder.open(out) as site:
        site.keep("photos/b.webp")
        assert site.commit().removed == ("photos/a.webp",)
    assert tree(out) == {"photos/b.webp": b"b"}


def test_a_made_file_has_its_ending_while_it_is_made_and_equal_bytes_change_nothing(out: Path) -> None:
    endings = []

    def save_as_asked(path: Path) -> None:
        endings.append(path.suffix)
        path.write_bytes(b"picture")

    for kept in (0, 1):
        with SiteFolder.open(out) as site:
            site.put_file("photos/a.avif", save_as_asked)
            assert site.commit().kept == kept
    assert endings == [".avif", ".avif"]


def test_a_failure_to_make_a_file_comes_through_and_changes_nothing(out: Path) -> None:
    make(out, OLD)

    def read_a_missing_photo(_path: Path) -> None:
        Path("no-such-photo.jpg").read_bytes()

    with pytest.raises(FileNotFoundError), SiteFolder.open(out) as site:
        site.put_file("photos/a.avif", read_a_missing_photo)
    with pytest.raises(ValueError, match=r"no file was made for 'photos/a\.avif'"), SiteFolder.open(out) as site:
        site.put_file("photos/a.avif", lambda _path: None)
    assert tree(out) == OLD
    assert leftovers(out) == set()


def test_many_threads_may_put_at_once_the_same_picture_twice_among_them(out: Path) -> None:
    pages = {f"workshop/projects/{number}.html": b"%d" % number for number in range(300)}
    with SiteFolder.open(out) as site:
        with ThreadPoolExecutor(8) as pool:
            list(pool.map(site.put, pages, pages.values()))
            list(pool.map(lambda _: site.put("photos/shared.webp", b"picture"), range(40)))
        assert len(site.commit().written) == 301
    assert tree(out) == {**pages, "photos/shared.webp": b"picture"}


def test_the_manifest_is_the_same_whatever_the_order(tmp_path: Path) -> None:
    make(tmp_path / "one", NEW)
    make(tmp_path / "two", OLD)
    make(tmp_path / "two", dict(reversed(NEW.items())))
    one, two = ((tmp_path / name / ".maker-site/manifest.json").read_bytes() for name in ("one", "two"))
    assert one == two


def test_the_manifest_holds_size_and_half_of_sha_256(out: Path) -> None:
    make(out, {"abc.txt": b"abc"})
    manifest = json.loads((out / ".maker-site/manifest.json").read_bytes())
    # The digest of "abc" is the first example of FIPS 180-2, appendix B.1 (from memory; hashlib is asked as well).
    assert manifest["files"] == {"abc.txt": "3-ba7816bf8f01cfea414140de5dae2223"}
    assert hashlib.sha256(b"abc").hexdigest().startswith("ba7816bf8f01cfea414140de5dae2223")


@pytest.mark.parametrize(
    "address",
    [
        "",
        "/etc/passwd",
        "../beside.html",
        "workshop/../../beside.html",
        "workshop/..",
        "./index.html",
        "workshop//index.html",
        "workshop/",
        "workshop\\index.html",
        "C:/index.html",
        "C:index.html",
        "index.html:stream",
        "index\0.html",
        "index.html\n",
        ".maker-site",
        ".maker-site/manifest.json",
        ".Maker-Site/lock",
    ],
)
def test_an_address_that_leaves_the_site_is_a_programmers_error(out: Path, address: str) -> None:
    with SiteFolder.open(out) as site:
        for use in (site.has, site.keep, lambda text: site.put(text, b""), lambda text: site.put_file(text, print)):
            with pytest.raises(ValueError, match="not an address within the site"):
                use(address)


@pytest.mark.parametrize("address", ["..a/b..html", "...", "a/.well-known/x", "workshop/.maker-site", "ä/ü 1.html"])
def test_odd_names_that_stay_in_the_site_are_addresses(out: Path, address: str) -> None:
    make(out, {address: b"here"})
    assert tree(out) == {address: b"here"}


def test_two_different_files_at_one_address_are_a_programmers_error(out: Path) -> None:
    with SiteFolder.open(out) as site:
        site.put("index.html", b"one")
        with pytest.raises(ValueError, match=r"two different files were put at 'index\.html'"):
            site.put("index.html", b"two")


def test_a_file_with_files_below_it_is_a_programmers_error(out: Path) -> None:
    with SiteFolder.open(out) as site:
        site.put("about", b"a file")
        site.put("about/us/index.html", b"a file below it")
        with pytest.raises(ValueError, match="'about' is put as a file"):
            site.commit()
    assert tree(out) == {}


def test_nothing_can_be_put_after_the_commit_or_after_the_folder_is_closed(out: Path) -> None:
    with SiteFolder.open(out) as site:
        site.commit()
        with pytest.raises(ValueError, match="committed or closed"):
            site.put("index.html", b"late")
    with SiteFolder.open(out) as left:
        pass
    with pytest.raises(ValueError, match="committed or closed"):
        left.put("index.html", b"late")
