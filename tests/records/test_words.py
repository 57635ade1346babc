"""The trade's words: known to translators, and themselves in records and data."""

import pytest

from maker_site.language import Language, say, speaking, speech
from maker_site.records import words
from maker_site.records.quantities.pressure import WORDS as PRESSURES
from maker_site.workings.common_practice import common_ranges
from maker_site.workings.faults import FAULTS
from tests.catalogues import gathered
from tests.everything import Everything

SHOWN = (
    *(words.METHODS, words.SUBSTRATES, words.PRESS_KINDS, words.SUPPLY_KINDS, words.COATINGS, words.PEELS),
    *(words.COOLS, words.FACES, words.STACK_LAYERS, tuple(words.DEFECTS), tuple(words.UNCLEAR_DEFECTS), PRESSURES),
)


def test_every_word_is_gathered_for_translators() -> None:
    ids = [message.id for message in gathered()]
    known = {each if isinstance(each, str) else each[0] for each in ids if each}  # the second is of many
    assert {word for vocabulary in SHOWN for word in vocabulary} - known == set()
    assert {row.origin for row in common_ranges()} - known == set()
    assert {change.words for fault in FAULTS.values() for change in fault.changes} - known == set()


def test_a_word_is_said_where_it_is_shown_and_the_makers_own_comes_back(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(speech, "_catalogue", lambda tag: None if tag == "en" else Everything())
    assert (say("slate"), words.difficulty_said("hard")) == ("slate", "hard")
    with speaking(Language("de", "ltr")):
        assert (say("slate"), words.difficulty_said("hard")) == ("[slate]", "[hard]")
        assert words.difficulty_said("kniffelig") == "kniffelig"


def test_a_first_letter_is_made_large_and_no_other_small() -> None:
    assert words.with_capital("HTV-Folie, schwarz") == "HTV-Folie, schwarz"
    assert (words.with_capital("transfer paper"), words.with_capital("")) == ("Transfer paper", "")
