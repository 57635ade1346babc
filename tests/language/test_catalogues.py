"""Each catalogue fits what the site says, and its compiled file is the one that its text makes."""

import re
from gettext import c2py  # type: ignore[attr-defined]
from string import Formatter

import pytest
from babel import Locale
from babel.messages import Catalog, Message

from maker_site.language.speech import direction
from tests.catalogues import catalogue_of, gathered, mo_data, po_file, po_text, tags

every_language = pytest.mark.parametrize("tag", sorted(tags()))


def places(text: str) -> set[str]:
    """Return what is filled in, as str.format reads it."""
    return {name for _, name, _, _ in Formatter().parse(text) if name is not None}


def said(message: Message) -> tuple[str, ...]:
    """Return what a sentence is translated as, a translation for each kind of count."""
    return tuple(message.string) if isinstance(message.string, tuple | list) else (message.string,)


def forms(message: Message) -> tuple[str, ...]:
    """Return the English of a sentence: for one and for many."""
    return tuple(message.id) if isinstance(message.id, tuple | list) else (message.id,)


def sentences(catalogue: Catalog) -> list[Message]:
    return [message for message in catalogue if message.id]


def test_the_program_says_something_and_there_is_a_language_to_say_it_in() -> None:
    assert len(sentences(gathered())) > 500
    assert "he" in tags()


@every_language
def test_each_translation_has_the_places_of_its_sentence(tag: str) -> None:
    wrong = [
        (message.id, text)
        for message in sentences(catalogue_of(tag))
        for text in said(message)
        if text and not places(text) <= set.union(*map(places, forms(message)))
    ]
    assert wrong == []


@every_language
def test_no_place_is_lost_but_the_number_in_a_word_for_one_or_two(tag: str) -> None:
    lost = []
    for message in sentences(catalogue_of(tag)):
        wanted = set.intersection(*map(places, forms(message))) - ({"n"} if message.pluralizable else set())
        lost += [(message.id, text) for text in said(message) if text and wanted - places(text)]
    assert lost == []


@every_language
def test_counts_are_told_apart_as_cldr_does(tag: str) -> None:
    catalogue = catalogue_of(tag)
    kind = Locale.parse(tag).plural_form
    number = c2py(dict(catalogue.mime_headers)["Plural-Forms"].partition("plural=")[2].strip("; "))
    pairs = {(kind(n), number(n)) for n in range(300)}
    assert len(pairs) == len({name for name, _ in pairs}) == len({place for _, place in pairs}) == catalogue.num_plurals
    counted = [each for each in sentences(catalogue) if each.pluralizable]
    assert counted
    assert [each.id for each in counted if len(said(each)) != catalogue.num_plurals] == []


@every_language
def test_a_figure_written_in_a_sentence_from_right_to_left_keeps_its_order(tag: str) -> None:
    apart = re.compile("[\u2066-\u2068][^\u2066-\u2069]*\u2069")
    texts = [text for each in sentences(catalogue_of(tag)) for text in said(each)] if direction(tag) == "rtl" else []
    whole = [
        text for text in texts if not re.fullmatch(r"\{n\}\s?°[CF]", text)
    ]  # that one is kept apart where it stands
    assert [text for text in whole if re.search(r"(\d\s+|}\s*)°", apart.sub("", text))] == []


@every_language
def test_the_compiled_catalogue_is_that_of_the_text(tag: str) -> None:
    assert po_file(tag).with_suffix(".mo").read_bytes() == mo_data(catalogue_of(tag))


@every_language
def test_the_text_is_as_the_command_writes_it(tag: str) -> None:
    assert po_file(tag).read_bytes() == po_text(catalogue_of(tag))
