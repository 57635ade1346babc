"""Records and pages never mix: the output folder keeps clear of the content folder."""

from pathlib import Path

import pytest

from maker_site.writer.site_folder import check_out


@pytest.fixture
def shed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / "content/projects").mkdir(parents=True)
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.mark.parametrize("out", ["site", "../site", "content-site", "content/../site", "./a/b/site"])
def test_a_folder_beside_the_content_is_fit(shed: Path, out: str) -> None:
    assert check_out(Path(out), Path("content")) is None
    assert check_out(shed / out, Path("content")) is None


@pytest.mark.parametrize(
    ("out", "relation"),
    [
        ("content", "is the content folder"),
        ("content/../content/", "is the content folder"),
        ("content/site", "lies in the content folder “content”"),
        ("content/projects/../new/site", "lies in the content folder “content”"),
        (".", "holds the content folder “content”"),
        ("..", "holds the content folder “content”"),
        ("/", "holds the content folder “content”"),
    ],
)
def test_a_folder_that_would_mix_with_the_content_is_not(shed: Path, out: str, relation: str) -> None:
    assert check_out(Path(out), Path("content")) == (
        f"The output folder “{Path(out)}” {relation}. Choose one beside it, so that records and pages never mix."
    )


def test_links_are_followed(shed: Path) -> None:
    (shed / "records").symlink_to("content")
    assert check_out(Path("records"), Path("content")) is not None
    assert check_out(Path("records/site"), Path("content")) is not None
    assert check_out(Path("content/site"), Path("records")) is not None


def test_names_that_the_drive_takes_for_the_same_count_as_the_same(shed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def ignoring_case(one: Path, other: Path) -> bool:  # stands in for a drive that does
        return str(one).casefold() == str(other).casefold()

    monkeypatch.setattr(Path, "samefile", ignoring_case)
    assert check_out(shed / "Content", Path("content")) is not None
    assert check_out(shed / "CONTENT/site", Path("content")) is not None
    assert check_out(shed / "site", Path("content")) is None


def test_the_content_folder_need_not_be_there(shed: Path) -> None:
    assert check_out(Path("site"), Path("missing")) is None
    assert check_out(Path("missing/site"), Path("missing")) is not None
