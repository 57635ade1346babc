"""The site's own sentences in the language of the shop."""

from markupsafe import Markup

from maker_site.language import Language, direction, language_of, page_language, say, say_n, speaking, spoken
from maker_site.writer.gather import side_by_side

HEBREW = Language("he", "rtl")


def test_english_is_spoken_where_nobody_asked_for_another() -> None:
    assert spoken() == Language("en", "ltr")
    assert say("{good} of {pressed} good", good=24, pressed=25) == "24 of 25 good"


def test_a_language_without_a_catalogue_is_answered_in_english() -> None:
    assert language_of("xx_XX") == Language("en", "ltr")
    assert language_of("en_IL") == Language("en", "ltr")


def test_scripts_from_right_to_left_are_known() -> None:  # CLDR, characterOrder
    assert [direction(tag) for tag in ("he", "ar-EG", "fa_IR", "de", "en_GB")] == ["rtl", "rtl", "rtl", "ltr", "ltr"]


def test_one_and_many_are_told_apart() -> None:
    assert say_n("{n} blank", "{n} blanks", 1) == "1 blank"
    assert say_n("{n} blank", "{n} blanks", 1200, n="1,200") == "1,200 blanks"


def test_a_part_that_is_html_stays_html_and_all_else_is_escaped() -> None:
    said = say("Made of <{what}> as {link}", what="<b>", link=Markup('<a href="x">it</a>'))
    assert said == 'Made of &lt;&lt;b&gt;&gt; as <a href="x">it</a>'


def test_parts_keep_their_own_order_in_a_sentence_from_right_to_left() -> None:  # UAX #9, isolates
    with speaking(HEBREW):
        assert say("{t} untranslated", t="193 °C") == "\u2068193 °C\u2069 untranslated"


def test_threads_speak_what_those_speak_who_set_them_to_work() -> None:
    with speaking(HEBREW):
        assert list(side_by_side(lambda _: spoken(), range(3))) == [HEBREW] * 3


def test_a_page_is_in_the_language_spoken_and_not_in_one_that_the_site_does_not_know() -> None:
    assert page_language("en_GB") == "en-GB"
    assert page_language("de_DE") == "en"
    with speaking(HEBREW):
        assert page_language("he_IL") == "he-IL"
