"""`maker-site cost`: the sheet line by line, worked out by hand beside it."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from maker_site.cli import main
from maker_site.pages.notebook import Notebook
from maker_site.workings.remake import Remake
from tests.small_workshop import write_workshop

# 24 for 38.40 + 6.95 delivery is 1.889583 each (checks: pricing-10); 9 of 10 good, so 2.099537 a good piece.
BLANK = (
    "name: Slate coaster\nsubstrate: slate\nmethod: sublimation\nsize: 100 x 100 mm\n"
    "bought: [{lot: A7, count: 24, paid: 38.40, delivery: 6.95}]\n"
)
LOG = "date,project,blank,press,temperature,time,pressed,good\n2026-04-18,harbour,slate,clam,200 C,5:00,10,9\n"
SHOP = "name: Test Bench\ncurrency: GBP\nlabour: 12.00\nmargin: 50 %\nprice ending: 0.50\noverhead: 0 %\n"
PROJECT = "title: Harbour\nblank: slate\nbatch: 2\nminutes: {design: 10, press: 0, finish: 5}\n"


@pytest.fixture
def content(tmp_path: Path) -> Path:
    return write_workshop(
        tmp_path,
        {
            "shop.yaml": SHOP,
            "blanks/slate.yaml": BLANK,
            "press-log/2026.csv": LOG,
            "projects/harbour/project.yaml": PROJECT,
        },
    )


def cost(content: Path, *options: str) -> Result:
    return CliRunner().invoke(main, ["cost", "harbour", "--content", str(content), *options])


def line(result: Result, name: str) -> dict[str, object]:
    return next(each for each in json.loads(result.output)["lines"] if each["name"] == name)


def test_json_keeps_the_contract(content: Path) -> None:
    data = json.loads(cost(content, "--json").output)

    assert set(data) == {
        *("project", "currency", "pieces", "yield", "lines", "cost", "complete", "price", "price_source"),
        *("fee", "tax", "profit", "margin"),
    }
    assert all(set(each) == {"name", "amount", "known", "basis"} for each in data["lines"])


def test_what_a_failed_pressing_uses_up_is_divided_by_the_yield(content: Path) -> None:
    amount = line(cost(content, "--json"), "Blank")["amount"]

    assert float(str(amount)) == pytest.approx(1.889583 / 0.9, abs=1e-5)


def test_design_is_shared_over_the_batch_and_knows_no_yield(content: Path) -> None:
    # 10 min at 12.00 an hour is 2.00, over a batch of 2
    assert float(str(line(cost(content, "--json"), "Design")["amount"])) == 1.0


def test_another_batch_and_rate_can_be_tried(content: Path) -> None:
    tried = cost(content, "--json", "--batch", "4", "--labour", "24.00")

    assert float(str(line(tried, "Design")["amount"])) == 1.0  # 4.00 over 4


def test_a_missing_figure_is_not_known_and_the_total_is_at_least(content: Path) -> None:
    result = cost(content)

    assert "not known" in result.output
    assert "at least" in result.output


def test_an_unknown_project_is_wrong_use_and_the_nearest_is_named(content: Path) -> None:
    result = CliRunner().invoke(main, ["cost", "harbor", "--content", str(content)])

    assert result.exit_code == 2
    assert "did you mean “harbour”" in result.output


@pytest.mark.parametrize("option", [("--labour", "much"), ("--yield", "120 %"), ("--pieces", "0")])
def test_figures_that_can_not_be_are_wrong_use(content: Path, option: tuple[str, str]) -> None:
    assert cost(content, *option).exit_code == 2


def test_a_project_never_pressed_is_counted_by_the_pressings_behind_its_setting(content: Path) -> None:
    """1400 W x 300 s x 50 % is 0.058333 kWh; at 0.30 and a yield of 9 in 10 that is 0.0194444."""
    (content / "shop.yaml").write_text(SHOP + "electricity: 0.30\n")
    (content / "presses/clam.yaml").write_text("name: Clam\nwatts: 1.4 kW\nduty: 50 %\n")
    (content / "presses/other.yaml").write_text("name: Other\n")
    (content / "press-log/2026.csv").write_text(LOG.replace("harbour", ""))

    found = line(cost(content, "--json"), "Power, pressing")

    assert float(str(found["amount"])) == pytest.approx(0.0194444, abs=1e-7)
    assert "pressed 2026-04-18" in str(found["basis"])


@pytest.mark.parametrize(
    ("currency", "typed", "shown"),  # minor units of ISO 4217: GBP 2, JPY 0, KWD 3 (checks: pricing-12 to -14)
    [("GBP", "24", "24.00"), ("GBP", "24.5", "24.50"), ("JPY", "1200", "1200"), ("KWD", "7.5", "7.500")],
)
def test_the_price_has_the_digits_that_a_customer_sees(content: Path, currency: str, typed: str, shown: str) -> None:
    (content / "shop.yaml").write_text(SHOP.replace("GBP", currency))
    (content / "projects/harbour/project.yaml").write_text(f"{PROJECT}share: {{menu: {{price: {typed}}}}}\n")

    assert json.loads(cost(content, "--json").output)["price"] == shown


def test_one_sheet_works_out_no_other_project(content: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write_workshop(content, {"projects/quay/project.yaml": PROJECT})
    worked_out: list[str] = []
    remake = Notebook._remake

    def counted(book: Notebook, name: str) -> Remake:
        worked_out.append(name)
        return remake(book, name)

    monkeypatch.setattr(Notebook, "_remake", counted)

    assert cost(content).exit_code == 0
    assert {*worked_out} <= {"harbour"}
