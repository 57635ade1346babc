"""Every kind of page is there, and there is no page that no judge looks at."""

from pathlib import Path

import pytest

from .fakes import write_page
from .kinds import KINDS, Kind, page_of, pages_of_no_kind


def test_an_index_page_does_not_stand_for_a_record_s_page(tmp_path):
    write_page(tmp_path, "", name="public/articles/index.html")
    with pytest.raises(LookupError, match=r"no page is a article; looked for public/articles/\*\.html"):
        page_of(Kind("article", "public", ("articles/*.html",)), tmp_path)


def test_a_page_of_no_kind_is_noticed(tmp_path):
    write_page(tmp_path, "", name="public/index.html")
    write_page(tmp_path, "", name="public/forgotten/page.html")
    assert pages_of_no_kind(tmp_path) == ["public/forgotten/page.html"]


@pytest.mark.parametrize("kind", KINDS, ids=str)
def test_the_demo_has_a_page_of_each_kind(demo_site: Path, kind: Kind):
    assert page_of(kind, demo_site).is_file()


def test_the_demo_has_no_page_that_no_judge_looks_at(demo_site: Path):
    assert pages_of_no_kind(demo_site) == []
