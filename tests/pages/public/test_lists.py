"""Long lists in pages of 24; groups by slug. Expected counts were worked out by hand."""

import pytest

from maker_site.pages.public.lists import occasion_links, on_page, pages_of


@pytest.mark.parametrize(
    ("count", "sizes"), [(0, [0]), (1, [1]), (24, [24]), (25, [24, 1]), (48, [24, 24]), (49, [24, 24, 1])]
)
def test_a_list_has_as_many_pages_as_it_needs_and_always_one(count: int, sizes: list[int]) -> None:
    items = list(range(count))
    pages = list(pages_of("on/slate.html", items))
    assert [len(on_page(items, paging)) for _, paging in pages] == sizes
    assert [each for _, paging in pages for each in on_page(items, paging)] == items
    assert {paging.of for _, paging in pages} == {len(sizes)}


def test_the_longer_of_two_lists_says_how_many_pages() -> None:
    assert len(list(pages_of("for/wedding.html", range(3), range(30)))) == 2


def test_pages_after_the_first_stand_where_no_record_can() -> None:
    index = [address for address, _ in pages_of("tutorials/index.html", range(60))]
    assert index == ["tutorials/index.html", "tutorials/pages/2.html", "tutorials/pages/3.html"]
    assert [address for address, _ in pages_of("on/slate.html", range(30))] == ["on/slate.html", "on/slate/2.html"]


def test_the_first_leads_only_on_and_the_last_only_back() -> None:
    (_, first), (_, middle), (_, last) = pages_of("tutorials/index.html", range(60))
    assert (first.newer, first.older and first.older.address) == (None, "tutorials/pages/2.html")
    assert middle.newer
    assert middle.newer.address == "tutorials/index.html"
    assert middle.older
    assert last.newer
    assert last.older is None


def test_an_occasion_without_a_letter_or_figure_leads_nowhere() -> None:
    assert [link.address for link in occasion_links(["New home", "???", "été"])] == [
        "for/new-home.html",
        "for/été.html",
    ]
