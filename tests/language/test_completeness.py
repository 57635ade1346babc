"""Each language has everything that the site says; `python -m tests.catalogues` gathers what is new."""

import re

import pytest

from tests.catalogues import ROOT, catalogue_of, gathered, is_whole, po_file, po_text, tags, updated

_STYLES = sorted((ROOT / "themes").rglob("*.css"))

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


def test_no_style_says_words_that_no_catalogue_has() -> None:
    assert _said('dd::before { content: "Look: "; }') == ["Look: "]
    assert _said('td::before { content: attr(data-name) "\\2002" / ""; }') == []
    assert {style.name: _said(style.read_text(encoding="utf-8")) for style in _STYLES if _said(style.read_text())} == {}


def _said(style: str) -> list[str]:
    """Return the texts with letters that a style sheet puts into pages."""
    texts = (text for content in re.findall(r"content:([^;]*);", style) for text in re.findall(r'"([^"]*)"', content))
    return [text for text in texts if re.search("[A-Za-z]", re.sub(r"\\[0-9a-fA-F]+", "", text))]
