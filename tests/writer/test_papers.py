"""Papers made with the site: linked, the same as by command, and set again only where something changed."""

from datetime import date
from pathlib import Path

import pytest

from maker_site.paper.typesetting import Typesetter
from maker_site.writer.kept import FILE
from maker_site.writer.making import Made, make_site
from maker_site.writer.rendering import TemplateProblem
from tests.paper.bench import workshop
from tests.paper.read_back import words

TODAY = date(2026, 11, 1)


class Bench:
    """A workshop, its site, and how many papers the last make set."""

    def __init__(self, folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        self.content = workshop(folder / "content")
        self.out = folder / "site"
        self.set = 0
        setting = Typesetter.set

        def counted(typesetter: Typesetter, document: object) -> object:
            self.set += 1
            return setting(typesetter, document)  # type: ignore[arg-type]

        monkeypatch.setattr(Typesetter, "set", counted)

    def make(self) -> Made:
        self.set = 0
        made = make_site(self.content, self.out, "print-room", TODAY, lambda *_: None)
        assert made.changes is not None
        return made

    def edit(self, file: str, old: str, new: str) -> None:
        path = self.content / file
        text = path.read_text(encoding="utf-8")
        assert old in text
        path.write_text(text.replace(old, new), encoding="utf-8")


@pytest.fixture
def bench(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Bench:
    return Bench(tmp_path, monkeypatch)


def test_every_project_has_its_card_and_both_copies_the_menu(bench: Bench) -> None:
    bench.make()
    assert sorted(path.stem for path in (bench.out / "workshop/cards").glob("*.pdf")) == ["bag", "harbour", "tags"]
    assert (bench.out / "public/menu.pdf").read_bytes() == (bench.out / "workshop/menu.pdf").read_bytes()
    assert not list((bench.out / "public").rglob("cards/*.pdf"))
    assert 'href="harbour.pdf"' in (bench.out / "workshop/cards/harbour.html").read_text(encoding="utf-8")
    for copy in ("workshop", "public"):
        assert 'href="menu.pdf"' in (bench.out / copy / "menu.html").read_text(encoding="utf-8")


def test_where_nothing_changed_nothing_is_set_again(bench: Bench) -> None:
    bench.make()
    assert bench.set == 4
    again = bench.make()
    assert bench.set == 0
    assert again.changes is not None
    assert again.changes.written == ()


def test_only_what_changed_is_set_again(bench: Bench) -> None:
    bench.make()
    bench.edit("projects/harbour/project.yaml", "price: 24.00", "price: 26.00")
    bench.make()
    assert bench.set == 1
    assert "£26.00" in words(bench.out / "public/menu.pdf")[0]
    bench.edit("press-log/2026.csv", "200 C", "195 C")
    bench.make()
    assert "195" in words(bench.out / "workshop/cards/harbour.pdf")[0]


def test_a_paper_that_was_deleted_comes_back_the_same(bench: Bench) -> None:
    bench.make()
    card = bench.out / "workshop/cards/harbour.pdf"
    before = card.read_bytes()
    card.unlink()
    bench.make()
    assert bench.set == 1
    assert card.read_bytes() == before


def test_kept_knowledge_that_is_lost_or_broken_costs_time_only(bench: Bench) -> None:
    bench.make()
    for text in (None, "{"):
        kept = bench.out / FILE
        kept.unlink() if text is None else kept.write_text(text, encoding="utf-8")
        made = bench.make()
        assert bench.set == 4
        assert made.changes is not None
        assert made.changes.written == ()


def test_the_makers_own_template_wins_and_sets_its_papers_again(bench: Bench) -> None:
    bench.make()
    own = bench.content / "theme/paper/card.typ"
    own.parent.mkdir(parents=True)
    own.write_text('#import "common.typ": *\n#show: paper\nMine: #data.cards.first().title', encoding="utf-8")
    bench.make()
    assert words(bench.out / "workshop/cards/harbour.pdf") == ["Mine: Harbour wall"]
    assert "Harbour coasters" in words(bench.out / "public/menu.pdf")[0]


def test_a_template_that_fails_leaves_the_last_good_site(bench: Bench) -> None:
    bench.make()
    own = bench.content / "theme/paper/card.typ"
    own.parent.mkdir(parents=True)
    own.write_text("#nonsense()", encoding="utf-8")
    before = (bench.out / "workshop/cards/harbour.pdf").read_bytes()
    with pytest.raises(TemplateProblem, match=r"card\.typ:1: unknown variable: nonsense"):
        bench.make()
    assert (bench.out / "workshop/cards/harbour.pdf").read_bytes() == before


def test_a_character_without_a_font_is_a_caution_each_time(bench: Bench) -> None:
    bench.edit("projects/tags/project.yaml", "Boat tags", "Boat tags 🎈")
    for _ in range(2):
        problems = [each for each in bench.make().problems if "U+1F388" in each.message]
        assert [(each.file, str(each.severity)) for each in problems] == [("projects/tags/project.yaml", "caution")]
    assert bench.set == 0


def test_a_menu_with_nothing_on_it_is_not_made(bench: Bench) -> None:
    bench.edit(
        "projects/harbour/project.yaml", "share: {menu: {section: Home, name: Harbour coasters, price: 24.00}}\n", ""
    )
    bench.make()
    assert not (bench.out / "public/menu.pdf").exists()
    assert "menu.pdf" not in (bench.out / "public/menu.html").read_text(encoding="utf-8")
