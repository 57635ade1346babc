"""The card book: cautions first, the words of the page, one a page or several with cut marks."""

from pathlib import Path

import pytest
import zxingcpp
from click.testing import CliRunner, Result

from maker_site.cli import main
from maker_site.paper.card import cards_across, pages_of
from maker_site.paper.sizes import sheet_size
from tests.conftest import CONTENT
from tests.paper.bench import workshop
from tests.paper.read_back import check_file, drawn, opened, page_sizes, word_place, words


def run(content: Path, out: Path, *options: str) -> Result:
    return CliRunner().invoke(main, ["print", "card", "--content", str(content), "--out", str(out), *options])


@pytest.fixture
def one(tmp_path: Path) -> Path:
    done = run(CONTENT, tmp_path / "card.pdf", "allotment-tally-coasters")
    assert done.exit_code == 0, done.output
    return tmp_path / "card.pdf"


def test_the_setting_stands_in_both_units_with_the_cautions_before_it(one: Path) -> None:
    (page,) = words(one)
    for said in ("200", "392 °F", "5:00", "300 s", "firm", "print up", "Mirror the artwork", "Stack, bottom to top"):
        assert said in page
    assert "Hot platen, blank and cover: gloves" in page
    assert "local codes and licensed practice come first" in " ".join(page.split())
    assert word_place(one, 0, "Hot platen")[1] < word_place(one, 0, "Temperature")[1]
    assert word_place(one, 0, "Cautions")[1] < word_place(one, 0, "5:00")[1]


def test_the_main_figures_are_read_at_arms_length(one: Path) -> None:
    """A figure 5 mm high is read at 1 m by common rules of thumb (height in mm = distance in m x 5; no source)."""
    with opened(one) as read:
        text = read[0].get_textpage()
        found = text.search("5:00").get_next()
        assert found is not None
        _, bottom, _, top = text.get_charbox(found[0])
        assert (top - bottom) / 72 * 25.4 > 5


def test_nothing_runs_out_of_the_page(tmp_path: Path) -> None:
    for paper in ("A6", "4x6", "Letter", "A4"):
        assert run(CONTENT, tmp_path / "cards.pdf", "--all", "--paper", paper).exit_code == 0
        with opened(tmp_path / "cards.pdf") as read:
            for page in read:
                width, height = page.get_size()
                text = page.get_textpage()
                for index in range(text.count_chars()):
                    left, bottom, right, top = text.get_charbox(index)
                    assert left >= 10
                    assert right <= width - 10
                    assert bottom >= 10
                    assert top <= height - 10


def test_black_on_white(one: Path) -> None:
    page = drawn(one, ppi=100)
    spread = max(max(pixel) - min(pixel) for _, pixel in page.getcolors(1 << 20) or [])
    assert spread == 0


def test_the_square_code_is_read_back(one: Path) -> None:
    (code,) = zxingcpp.read_barcodes(drawn(one, ppi=200))
    assert code.text == "http://shed.local:8080/cards/allotment-tally-coasters.html"


@pytest.mark.parametrize(
    ("paper", "size", "across"),
    [
        ("A6", (105, 148), (1, 1)),
        ("4x6", (101.6, 152.4), (1, 1)),
        ("A4", (210, 297), (2, 2)),
        ("Letter", (215.9, 279.4), (2, 2)),
    ],
)
def test_one_a_page_or_four_to_a_sheet(
    paper: str, size: tuple[float, float], across: tuple[int, int], tmp_path: Path
) -> None:
    assert cards_across(sheet_size(paper)) == across
    assert run(CONTENT, tmp_path / "cards.pdf", "--substrate", "slate", "--paper", paper).exit_code == 0
    sizes = page_sizes(tmp_path / "cards.pdf")
    assert sizes[0] == (pytest.approx(size[0], abs=0.1), pytest.approx(size[1], abs=0.1))
    assert len(sizes) == pages_of(2, sheet_size(paper))


def test_cut_marks_part_the_sheet_in_the_middle(tmp_path: Path) -> None:
    run(CONTENT, tmp_path / "cards.pdf", "--all", "--paper", "A4")
    page = drawn(tmp_path / "cards.pdf", ppi=200).convert("L")
    across, down = round(105 / 25.4 * 200), round(148.5 / 25.4 * 200)
    assert page.crop((across - 2, 10, across + 3, 11)).getextrema()[0] < 140
    assert page.crop((10, down - 2, 11, down + 3)).getextrema()[0] < 140
    assert page.crop((across - 2, down - 2, across + 3, down + 3)).getextrema()[0] < 100


def test_a_project_of_which_nothing_is_known_says_so_with_its_cautions(tmp_path: Path) -> None:
    files = {
        "press-log/2026.csv": "date,blank,press,temperature,time,pressed,good\n",
        "blanks/odd.yaml": "name: Odd thing\nsubstrate: moonrock\n",
        "projects/odd/project.yaml": "title: Odd one\nblank: odd\n",
    }
    done = run(workshop(tmp_path / "content", files), tmp_path / "card.pdf", "odd")
    assert done.exit_code == 0
    (page,) = words(tmp_path / "card.pdf")
    assert "No full setting is known." in page
    assert "Hot platen" in page


def test_a_long_title_is_made_to_fit(tmp_path: Path) -> None:
    title = "Harbour wall at the turn of the tide " * 4
    files = {"projects/harbour/project.yaml": f"title: {title.strip()}\nblank: slate\n"}
    assert run(workshop(tmp_path / "content", files), tmp_path / "card.pdf", "harbour").exit_code == 0
    assert len(page_sizes(tmp_path / "card.pdf")) == 1
    assert "of the tide" in words(tmp_path / "card.pdf")[0]


def test_the_file_is_sound(one: Path, tmp_path: Path) -> None:
    check_file(one.read_bytes(), tmp_path)


@pytest.mark.parametrize("options", [(), ("harbour", "--all"), ("--substrate", "slate", "--all")])
def test_which_cards_must_be_said_once(options: tuple[str, ...], tmp_path: Path) -> None:
    done = run(workshop(tmp_path / "content"), tmp_path / "card.pdf", *options)
    assert done.exit_code == 2
    assert "say which: some PROJECTs, --substrate S, or --all" in done.output


def test_an_unknown_substrate_has_the_nearest_named(tmp_path: Path) -> None:
    done = run(workshop(tmp_path / "content"), tmp_path / "card.pdf", "--substrate", "slat")
    assert done.exit_code == 2
    assert "did you mean “slate”?" in done.output
