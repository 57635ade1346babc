"""`maker-site print`: exit codes, what is refused, and where the file goes."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from maker_site.cli import main
from tests.paper.bench import workshop


def run(*words: str | Path) -> Result:
    return CliRunner().invoke(main, ["print", *map(str, words)])


@pytest.fixture
def content(tmp_path: Path) -> Path:
    return workshop(tmp_path / "content")


COMMANDS = (("transfer", "harbour"), ("card", "harbour"), ("menu",))


@pytest.mark.parametrize("command", COMMANDS)
def test_done_is_0_and_says_where(command: tuple[str, ...], content: Path, tmp_path: Path) -> None:
    done = run(*command, "--content", content, "--out", tmp_path / "made.pdf")
    assert done.exit_code == 0, done.output
    assert str(tmp_path / "made.pdf") in done.output
    assert (tmp_path / "made.pdf").read_bytes().startswith(b"%PDF-")


@pytest.mark.parametrize("command", COMMANDS)
def test_a_file_that_is_no_pdf_is_not_replaced(command: tuple[str, ...], content: Path) -> None:
    shop = content / "shop.yaml"
    before = shop.read_bytes()
    done = run(*command, "--content", content, "--out", shop)
    assert done.exit_code == 2
    assert "is there and is no PDF, so it is not replaced" in done.output
    assert shop.read_bytes() == before


@pytest.mark.parametrize("command", COMMANDS)
def test_records_with_errors_are_told_and_nothing_is_made(
    command: tuple[str, ...], content: Path, tmp_path: Path
) -> None:
    (content / "blanks/slate.yaml").write_text("name: Slate\nsubstrate: slate\nsiz: 3\n", encoding="utf-8")
    done = run(*command, "--content", content, "--out", tmp_path / "made.pdf")
    assert done.exit_code == 1
    assert "siz" in done.output
    assert not (tmp_path / "made.pdf").exists()


@pytest.mark.parametrize("command", COMMANDS)
def test_a_paper_that_is_none_is_wrong_use(command: tuple[str, ...], content: Path) -> None:
    done = run(*command, "--content", content, "--paper", "A44")
    assert done.exit_code == 2
    assert "“A44” is not a paper known here; write A2, A3, A4" in done.output


@pytest.mark.parametrize("command", COMMANDS)
def test_a_theme_that_is_none_is_wrong_use(command: tuple[str, ...], content: Path, tmp_path: Path) -> None:
    done = run(*command, "--content", content, "--theme", "nope", "--out", tmp_path / "made.pdf")
    assert done.exit_code == 2
    assert "there is no theme “nope”" in done.output


def test_an_unknown_project_has_the_nearest_named(content: Path) -> None:
    done = run("transfer", "harbor", "--content", content)
    assert done.exit_code == 2
    assert "there is no project “harbor”; did you mean “harbour”?" in done.output


def test_a_transfer_too_large_for_the_paper_says_what_fits(content: Path) -> None:
    done = run("transfer", "harbour", "--content", content, "--paper", "80x80")
    assert done.exit_code == 2
    sentence = (
        "harbour: a transfer of 96 × 66 mm does not fit 80 × 80 mm less margins of 5 mm (70 × 70 mm); say a larger"
    )
    assert sentence in " ".join(done.output.split())


def test_a_set_of_a_milliard_pieces_is_not_laid_out(content: Path) -> None:
    record = content / "projects/harbour/project.yaml"
    record.write_text(record.read_text(encoding="utf-8").replace("pieces: 3", "pieces: 999999999"), "utf-8")
    done = run("transfer", "harbour", "--content", content)
    assert done.exit_code == 2
    assert "harbour has 999999999 pieces, too many for one go; say how many with --pieces" in done.output


def test_everything_that_is_lacking_is_told_at_once(tmp_path: Path) -> None:
    files = {
        "blanks/bare.yaml": "name: Bare\nsubstrate: slate\n",
        "projects/one/project.yaml": "title: One\nblank: slate\n",
        "projects/two/project.yaml": "title: Two\nblank: bare\nartwork: [{file: art.png}]\n",
        "projects/two/art.png": "",
    }
    content = workshop(tmp_path / "content", files)
    (content / "projects/two/art.png").write_bytes((content / "projects/tags/artwork/wall.png").read_bytes())
    done = run("transfer", "one", "two", "--content", content)
    assert done.exit_code == 1
    assert "projects/one/project.yaml: there is no artwork to print" in done.output
    assert "blanks/bare.yaml: Bare has no size" in done.output


def test_names_that_are_not_utf8_are_told_with_their_line(content: Path, tmp_path: Path) -> None:
    names = tmp_path / "names.txt"
    names.write_bytes(b"Anna\nZo\xeb\n")
    done = run("transfer", "harbour", "--content", content, "--names", names)
    assert done.exit_code == 2
    assert "line 2: this is not UTF-8 text" in done.output
