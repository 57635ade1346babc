"""Outlines: what concerns one record's own pages alone is not in them, so that nothing else can depend on it."""

from pathlib import Path

import pytest

from maker_site.pages.notebook import noted
from maker_site.pages.noting import noting
from maker_site.records import Workshop, load
from maker_site.records.outlines import outline
from tests.small_workshop import write_workshop


@pytest.fixture
def workshop(tmp_path: Path) -> Workshop:
    found = load(write_workshop(tmp_path / "content")).workshop
    assert found is not None
    return noted(found)


def test_an_outline_has_all_but_the_asides(workshop: Workshop) -> None:
    whole = workshop.whole_project("harbour")
    shown = outline(whole)
    assert (shown.title, shown.blank, shown.origin.file) == (whole.title, whole.blank, whole.origin.file)
    for aside in ("note", "tutorial"):
        with pytest.raises(AttributeError):
            getattr(shown, aside)


def test_who_looks_at_an_outline_has_not_looked_at_the_whole(workshop: Workshop) -> None:
    with noting() as of_list:
        assert [each.title for each in workshop.projects.values()]
    with noting() as of_one:
        assert workshop.projects["harbour"].title
    with noting() as of_page:
        assert workshop.whole_project("harbour").note is None
    assert (of_list, of_one, of_page) == (
        {("project", None)},
        {("project", "harbour")},
        {("whole project", "harbour")},
    )
