"""The menu on paper: one sheet, a poster, leaflets that fold into reading order, and nothing that is not shared."""

import re
import subprocess
import sys
from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import pytest
import zxingcpp
from click.testing import CliRunner, Result

from maker_site.cli import main
from maker_site.paper.menu import MenuCard, MenuLine, MenuPart, leaflet, menu_document
from maker_site.paper.sizes import sheet_size
from maker_site.paper.typesetting import PaperProblem, Typesetter
from tests.conftest import CONTENT
from tests.paper.bench import SHOP, workshop
from tests.paper.read_back import check_file, drawn, opened, page_sizes, word_place, words


def run(content: Path, out: Path, *options: str) -> Result:
    return CliRunner().invoke(main, ["print", "menu", "--content", str(content), "--out", str(out), *options])


def card(entries: int, **changed: object) -> MenuCard:
    lines = tuple(
        MenuLine(f"Thing {number}", f"£{number}.00", "A line.", "Slate", None, None, "", None)
        for number in range(1, entries + 1)
    )
    fields = {
        "shop": "Half Door Shed",
        "line": "Pressed by hand.",
        "parts": (MenuPart("Home", lines),) if lines else (),
        "lead_time": "A week.",
        "how_to_order": "Write to us.",
        "contact": "shed@example.org",
        "dated": "18 Apr 2026",
        "address": None,
        "code": None,
        "notice": None,
    }
    return MenuCard(**{**fields, **changed})  # type: ignore[arg-type]


def set_menu(setting: Typesetter, shown: MenuCard, paper: str = "A4", folds: int = 0) -> bytes:
    return setting.set(menu_document(shown, sheet_size(paper), folds, "Menu", ("en", "GB"), {})).pdf


def test_a_sheet_has_every_entry_with_its_price(setting: Typesetter, tmp_path: Path) -> None:
    pdf = set_menu(setting, card(12))
    (page,) = words(pdf)
    for number in range(1, 13):
        assert f"£{number}.00" in page
    check_file(pdf, tmp_path)


def test_prices_of_a_column_end_in_one_line(setting: Typesetter) -> None:
    pdf = set_menu(setting, card(3), paper="A6")
    text = words(pdf)[0]
    assert text.count(".00") == 3
    with opened(pdf) as read:
        page = read[0].get_textpage()
        search = page.search(".00")
        points = []
        while found := search.get_next():
            points.append(page.get_charbox(found[0])[0])
    assert len(points) == 3
    assert max(points) - min(points) < 0.05


@pytest.mark.parametrize("letters", range(20, 44))
def test_a_price_stands_behind_the_last_word_of_its_name(letters: int, setting: Typesetter) -> None:
    name = ("lapwing on a gate of oak, with seed heads in"[:letters]).strip() + " end"
    line = MenuLine(name, "£9.75", None, "Slate", None, None, "", None)
    pdf = set_menu(setting, card(0, parts=(MenuPart("Home", (line,)),)), paper="A6")
    (word, price), right = (word_place(pdf, 0, said) for said in ("end", "£9.75")), 105 - 14 * 0.9
    assert price[1] == pytest.approx(word[1], abs=1)
    assert right - 12 < price[0] < right


def test_many_entries_go_on_over_further_sheets(setting: Typesetter) -> None:
    pages = words(set_menu(setting, card(150)))
    assert len(pages) > 1
    told = " ".join(pages)
    assert {int(found) for found in re.findall(r"Thing (\d+)", told)} == set(range(1, 151))


def test_hundreds_of_entries_flow_in_order_and_the_last_sheet_says_how_to_order(
    setting: Typesetter, tmp_path: Path
) -> None:
    pdf = set_menu(setting, card(300))
    pages = words(pdf)
    assert [int(found) for found in re.findall(r"Thing (\d+)", " ".join(pages))] == list(range(1, 301))
    assert [number for number, page in enumerate(pages) if "Half Door Shed" in page] == [0]
    assert [number for number, page in enumerate(pages) if "shed@example.org" in page] == [len(pages) - 1]
    check_file(pdf, tmp_path)


def test_an_entry_that_no_sheet_holds_is_told_among_hundreds_too(setting: Typesetter) -> None:
    long = MenuLine("Thing", "£1.00", "word " * 4000, "Slate", None, None, "", None)
    many = card(300)
    with pytest.raises(PaperProblem, match="an entry of the menu is higher than the paper"):
        set_menu(setting, card(0, parts=(MenuPart("Home", (*many.parts[0].lines, long)),)))


@pytest.mark.skipif(sys.platform != "linux", reason="the process is asked for its peak as Linux tells it")
def test_a_menu_of_thousands_is_set_in_little_memory() -> None:
    # The promise is 400 MB for each process of a make of 10,000 projects, some 3,000 of them on the menu.
    asked = (
        "import re; from tests.paper.test_menu import card, set_menu, CONTENT, Path\n"
        "from maker_site.writer.themes import theme\n"
        "from maker_site.paper.typesetting import typesetter\n"
        "with typesetter(theme('print-room', CONTENT).papers(), None) as setting: set_menu(setting, card(3000))\n"
        "print(re.search(r'VmHWM:\\s*(\\d+)', Path('/proc/self/status').read_text())[1])"
    )
    done = subprocess.run([sys.executable, "-c", asked], check=True, capture_output=True, text=True, cwd=CONTENT.parent)
    assert int(done.stdout) * 1024 < 400e6


def test_an_empty_menu_says_so(setting: Typesetter) -> None:
    assert "There is nothing on the menu yet." in words(set_menu(setting, card(0)))[0]


def test_a_poster_is_the_sheet_larger(setting: Typesetter) -> None:
    small, large = set_menu(setting, card(6)), set_menu(setting, card(6), paper="A3")
    assert page_sizes(large)[0] == (pytest.approx(297, abs=0.1), pytest.approx(420, abs=0.1))
    assert word_place(large, 0, "Half")[1] > word_place(small, 0, "Half")[1]


# Which side of each panel looks to the reader as a leaflet is folded, worked out by folding paper here.
def fold(outside: list[int], inside_from_left: list[int], folds: int) -> tuple[int, int]:
    """Fold a strip and return the numbers on its front and on its back.

    Panels stand from left to right as the inside is looked at; each has its inside and, behind, its outside number.
    """
    panels = list(zip(inside_from_left, outside[::-1], strict=True))  # behind the leftmost inside is the rightmost
    if folds == 1:
        (_, left), (_, right) = panels  # the left half is folded over the right: its outside is the front
        return left, right
    if folds == 2:
        left, middle, right = panels  # the right third over the middle, then the left third over that
        stack = [middle[::-1], (right[1], right[0]), left[::-1]]  # from below: each as (lower face, upper face)
        stack[1] = (right[0], right[1])  # turned over: its inside looks down
        stack[2] = (left[0], left[1])
        return stack[2][1], stack[0][0]
    faces = []
    for number, (front, back) in enumerate(panels):  # to and fro: every second one lies turned over
        faces.append((front, back) if number % 2 else (back, front))
    return faces[0][0], faces[-1][1]


@pytest.mark.parametrize("folds", [1, 2, 3])
def test_folded_the_cover_is_in_front_and_the_back_behind(folds: int) -> None:
    outside, inside = leaflet(Fraction(297), folds)
    front, back = fold([each.number for each in outside], [each.number for each in inside], folds)
    roles = {each.number: each.role for each in (*outside, *inside)}
    assert (roles[front], roles[back]) == ("cover", "back")


@pytest.mark.parametrize("folds", [1, 2, 3])
def test_the_panels_of_both_sides_lie_back_to_back(folds: int) -> None:
    outside, inside = leaflet(Fraction(297), folds)
    assert [each.width for each in outside] == [each.width for each in inside][::-1]
    assert sum(each.width for each in outside) == 297
    assert sorted(each.number for each in (*outside, *inside)) == list(range(1, 2 * folds + 3))
    assert [each.number for each in inside] == list(range(2, folds + 3))


def test_the_panel_folded_in_is_narrower() -> None:
    outside, _ = leaflet(Fraction(297), 2)
    flap, back, cover = outside
    assert flap.role == "spare"
    assert flap.width < back.width == cover.width


@pytest.mark.parametrize("folds", [1, 2, 3])
def test_a_leaflet_has_its_cover_at_the_right_of_the_outside(folds: int, setting: Typesetter, tmp_path: Path) -> None:
    pdf = set_menu(setting, card(12), folds=folds)
    sizes = page_sizes(pdf)
    assert len(sizes) == 2
    assert sizes[0] == (pytest.approx(297, abs=0.1), pytest.approx(210, abs=0.1))
    panel = 297 / (folds + 1)
    assert word_place(pdf, 0, "Half")[0] > 297 - panel
    assert word_place(pdf, 0, "shed@")[0] > (panel if folds == 2 else 0)
    assert word_place(pdf, 0, "shed@")[0] < (2 * panel if folds == 2 else panel)
    places = [word_place(pdf, 1, f"Thing {number}\r" if number == 1 else f"Thing {number}") for number in (2, 12)]
    assert places[0][0] < panel
    assert places[1][0] > 297 - panel
    columns = [int(word_place(pdf, 1, f"Thing {number}")[0] // panel) for number in range(2, 10)]
    assert all(one <= other for one, other in pairwise(columns))
    check_file(pdf, tmp_path)


def test_what_a_leaflet_can_not_hold_is_told_and_not_left_out(setting: Typesetter) -> None:
    with pytest.raises(PaperProblem) as told:
        set_menu(setting, card(90), folds=1)
    assert str(told.value) == (
        "there is more on the menu than this leaflet can hold; say a larger --paper or another --fold"
    )


def test_the_square_code_leads_to_the_public_address(tmp_path: Path) -> None:
    content = workshop(tmp_path / "content", {"shop.yaml": SHOP + "address: https://shed.example/menu\n"})
    for folds in ("0", "2"):
        done = run(content, tmp_path / "menu.pdf", "--fold", folds)
        assert done.exit_code == 0, done.output
        codes = zxingcpp.read_barcodes(drawn(tmp_path / "menu.pdf", ppi=200))
        assert [each.text for each in codes] == ["https://shed.example/menu"]


def test_no_address_no_code(tmp_path: Path) -> None:
    assert run(workshop(tmp_path / "content"), tmp_path / "menu.pdf").exit_code == 0
    assert zxingcpp.read_barcodes(drawn(tmp_path / "menu.pdf", ppi=200)) == []


def test_the_demo_has_its_photos_and_nothing_private(tmp_path: Path) -> None:
    assert run(CONTENT, tmp_path / "menu.pdf").exit_code == 0
    told = " ".join(words(tmp_path / "menu.pdf"))
    assert "Allotment coasters, set of four" in told
    for private in ("Lumm", "Marlpit", "treasurer", "13.50 an hour"):
        assert private not in told
    raw = (tmp_path / "menu.pdf").read_bytes()
    assert b"Exif" not in raw
    assert b"GPS" not in raw


def test_says_how_to_print_and_fold(tmp_path: Path) -> None:
    done = run(workshop(tmp_path / "content"), tmp_path / "menu.pdf", "--fold", "2")
    assert "Print both sides, turned on the short edge" in done.output
