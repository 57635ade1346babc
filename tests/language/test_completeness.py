"""Each language has everything that the site says; `python -m tests.catalogues` gathers what is new."""

import pytest

from tests.catalogues import catalogue_of, gathered, is_whole, po_file, po_text, tags, updated

every_language = pytest.mark.parametrize("tag", sorted(tags()))


@every_language
def test_a_catalogue_holds_what_is_said_and_nothing_else(tag: str) -> None:
    assert po_file(tag).read_bytes() == po_text(updated(catalogue_of(tag), gathered()))


@every_language
def test_every_sentence_is_translated(tag: str) -> None:
    catalogue = catalogue_of(tag)
    assert [each.id for each in catalogue if each.id and not is_whole(each)] == []
    assert [each.id for each in catalogue if each.fuzzy] == []
    assert not catalogue.obsolete
