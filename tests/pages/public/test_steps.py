"""A write-up parted into an opening and steps. Expected parts were read off the HTML by eye."""

from hypothesis import given
from hypothesis import strategies as st
from markupsafe import Markup

from maker_site.pages.public.steps import title_and_rest, write_up

OPENING = "<p>Slate is dark.</p>\n"
DRAW = "<h2>Draw <em>wide</em></h2>\n<p>Past every edge.</p>\n"
PRESS = '<h2 id="press">Press &amp; wait</h2>\n<ol><li>Close it.<br>Gloves on.</li></ol>\n'
FIGURE = '<figure class="shown"><picture><img src="../pictures/set-800.jpg" alt="Four"></picture></figure>\n'


def test_each_second_level_heading_begins_a_step():
    parted = write_up(Markup(OPENING + DRAW + PRESS))
    assert parted.opening == OPENING
    assert [step.title for step in parted.steps] == ["Draw <em>wide</em>", "Press &amp; wait"]
    assert parted.steps[0].text == "<p>Past every edge.</p>\n"
    assert parted.steps[1].text == "<ol><li>Close it.<br>Gloves on.</li></ol>\n"


def test_one_heading_makes_no_steps():
    assert write_up(Markup(OPENING + DRAW)).opening == OPENING + DRAW
    assert write_up(Markup(OPENING + DRAW)).steps == ()


def test_a_heading_inside_a_quotation_begins_no_step():
    slip = "<blockquote><h2>Mind the lid</h2><p>It is hot.</p></blockquote>\n"
    parted = write_up(Markup(DRAW + slip + PRESS))
    assert len(parted.steps) == 2
    assert slip in parted.steps[0].text


def test_nothing_written_is_nothing():
    assert write_up(Markup("")).opening == ""


def test_the_picture_at_the_head_is_not_shown_again_in_the_opening():
    shown = "../pictures/set-800.jpg"
    parted = write_up(Markup(OPENING + FIGURE + DRAW + FIGURE + PRESS), shown)
    assert parted.opening == OPENING
    assert FIGURE in parted.steps[0].text


def test_another_picture_stays_in_the_opening():
    assert FIGURE in write_up(Markup(FIGURE + DRAW + PRESS), "../pictures/edge-800.jpg").opening


def test_a_first_heading_is_the_title():
    assert title_and_rest("# About the shed\n\nOne person.") == ("About the shed", "\nOne person.")
    assert title_and_rest("\n# About #\nText") == ("About", "Text")
    assert title_and_rest("## Not a title\n") == (None, "## Not a title\n")
    assert title_and_rest("One person.\n\n# Later") == (None, "One person.\n\n# Later")


@given(st.lists(st.sampled_from([OPENING, DRAW, PRESS, FIGURE, "plain words\n"]), max_size=8))
def test_no_word_is_lost(blocks):
    html = "".join(blocks)
    parted = write_up(Markup(html))
    together = parted.opening + Markup("").join(step.title + step.text for step in parted.steps)
    assert _words(together) == _words(Markup(html))


def _words(html: Markup) -> str:
    """Drop tags and spaces: a step's heading and its text no longer have a line's end between them."""
    return "".join(html.striptags().split())
