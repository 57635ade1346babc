"""Pages in a language that is not English: made-up catalogues, of a sentence or two or of everything."""

import dataclasses
import re
from collections.abc import Iterator, Mapping
from datetime import date
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from babel.messages import Catalog
from babel.messages.mofile import write_mo
from babel.numbers import format_percent

from maker_site.language import Language, speaking, speech
from maker_site.pages.marks import interval_bar
from maker_site.pages.marks._lettering import lettering_width
from maker_site.pages.marks._svg import words
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Text
from maker_site.pages.public.plan import public_frame, public_pages
from maker_site.pages.workshop.pieces import log_total
from maker_site.pages.workshop.plan import workshop_batches, workshop_frame
from maker_site.pages.workshop.search import search_pages
from maker_site.records import load
from tests.everything import Everything, outside
from tests.pages.test_search import read_data
from tests.small_workshop import write_workshop

Messages = Mapping[str | tuple[str, str], str | tuple[str, ...]]
LOG = "date,project,blank,press,temperature,time,face,pressed,good\n"
ROW = "2026-04-18,harbour,slate,clam,200 C,5:00,print up,10,9\n"
MAKERS = {
    "shop.yaml": "name: QZSHOP\ncurrency: GBP\nlocale: ja_JP\nworkshop address: http://qz.example/\n",
    "blanks/slate.yaml": (
        "name: QZBLANK\nsubstrate: slate\nsize: 100 x 100 mm\nlimit: 210 C\ncoating: hard\n"
        "sheet: {temperature: 190 to 195 C, time: 4 min, peel: cold, cool: air}\n"
    ),
    "presses/clam.yaml": "name: QZPRESS\nkind: flat clamshell\nwatts: 900\nreadings: [{set: 200 C, measured: 193 C}]\n",
    "projects/harbour/project.yaml": (
        "title: QZTITLE\nblank: slate\nmade: 2026-04-18\npieces: 4\nat once: 2\ndifficulty: hard\noccasions: [QZDAY]\n"
        "order: {for: QZNAME, due: 2026-04-01}\n"
        "photos: [{file: photos/set.jpg, text: QZPHOTO, share: yes}]\n"
        "share: {tutorial: yes, setting: yes, menu: {section: QZPART, price: 24.00}}\n"
    ),
    "projects/harbour/tutorial.md": "QZTEXT\n",
    "press-log/2026.csv": (
        "date,project,blank,press,temperature,time,pressure,face,pressed,good,defects\n"
        "2026-04-18,harbour,slate,clam,200 C,5:00,medium,print up,4,3,blurred\n"
    ),
}
"""A workshop whose own words have no small letters, nor have its dates."""


def workshop_pages(book: Notebook) -> Iterator[Any]:
    """Yield every page of the workshop copy."""
    for batch in workshop_batches(book):
        yield from batch.build()


@pytest.fixture
def everything(monkeypatch: pytest.MonkeyPatch) -> Language:
    """A language whose catalogue has everything."""
    monkeypatch.setattr(speech, "_catalogue", lambda tag: None if tag == "en" else Everything())
    return Language("de", "ltr")


def catalogue(folder: Path, tag: str, messages: Messages, monkeypatch: pytest.MonkeyPatch) -> None:
    """Write a catalogue, with the language's plural forms by GNU gettext, and let the site find it."""
    made = Catalog(locale=tag)
    for message, said in messages.items():
        made.add(message, said)
    file = folder / tag / "LC_MESSAGES" / f"{speech.DOMAIN}.mo"
    file.parent.mkdir(parents=True)
    with file.open("wb") as opened:
        write_mo(opened, made)
    monkeypatch.setattr(speech, "CATALOGUES", folder)
    monkeypatch.setattr(speech, "_catalogue", speech._catalogue.__wrapped__)


def book_of(folder: Path, files: Mapping[str, str | bytes | None]) -> Notebook:
    workshop = load(write_workshop(folder / "content", files)).workshop
    assert workshop
    return Notebook(workshop, {}, (), date(2026, 5, 1))


@pytest.mark.parametrize(
    ("rows", "said"),  # from memory of Polish: one, two to four, five and more
    [(1, "1 tłoczenie: 9 na 10"), (3, "3 tłoczenia: 27 na 30"), (5, "5 tłoczeń: 45 na 50")],
)
def test_a_count_takes_the_form_of_its_language(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, rows: int, said: str
) -> None:
    pressings = ("{good} in {n} pressing", "{good} in {n} pressings")
    forms = ("{n} tłoczenie: {good}", "{n} tłoczenia: {good}", "{n} tłoczeń: {good}")
    sentence = {pressings: forms, "{good} of {pressed} good": "{good} na {pressed}"}
    catalogue(tmp_path / "catalogues", "pl", sentence, monkeypatch)
    book = book_of(tmp_path, {"press-log/2026.csv": LOG + ROW * rows})
    with speaking(Language("pl", "ltr")):
        assert log_total(book, book.workshop.pressings) == said


def test_a_drawing_is_kept_for_each_language(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    catalogue(tmp_path, "tr", {"{n} %": "%{n}"}, monkeypatch)
    assert "100 %" in interval_bar(0.5, 0.75, 0.625)
    with speaking(Language("tr", "ltr")):
        assert format_percent(1, locale="tr") in interval_bar(0.5, 0.75, 0.625)
    assert "100 %" in interval_bar(0.5, 0.75, 0.625)


def test_nothing_that_a_page_says_goes_past_the_catalogue(tmp_path: Path, everything: Language) -> None:
    book = book_of(tmp_path, MAKERS)
    with speaking(everything):
        shown = [workshop_frame(book), public_frame(book)]
        shown += [page for plan in (workshop_pages, public_pages) for page in plan(book)]
        found = {words for each in shown for words in _words(each) if re.search("[a-z]{2}", outside(words))}
    assert found == set()


def test_what_is_compared_is_never_translated(tmp_path: Path, everything: Language) -> None:
    book = book_of(tmp_path, MAKERS)
    english = [_addresses(page) for plan in (workshop_pages, public_pages) for page in plan(book)]
    with speaking(everything):
        other = [_addresses(page) for plan in (workshop_pages, public_pages) for page in plan(book)]
    assert [each for each in other if "social" not in each] == [each for each in english if "social" not in each]


def test_a_setting_is_found_by_the_words_of_the_record_too(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    catalogue(
        tmp_path / "catalogues", "de", {"slate": "Schiefer", "blurred": "verlaufen", "{n} s": "{n} Sek."}, monkeypatch
    )
    book = book_of(tmp_path, MAKERS)
    with speaking(Language("de", "ltr")):
        (script,) = (each.text for each in search_pages(book) if isinstance(each, Text))
    data = read_data(script)
    also = {data["texts"][int(number)]: words for number, words in data["also"].items()}
    assert also["Schiefer"] == "slate"
    assert also["5:00|300 Sek."] == "300 s"
    assert also["verlaufen"].split()[-1] == "blurred"
    assert "halo" in also["verlaufen"].split()


def test_a_label_from_right_to_left_begins_at_its_place_and_keeps_its_own_order() -> None:  # UAX #9, isolates
    label = ElementTree.fromstring(words(128, 12, "כרית, 10 מ״מ"))
    assert (label.get("x"), label.get("text-anchor")) == ("128", None)
    assert label.text == "\u2067כרית, 10 מ״מ\u2069"
    assert ElementTree.fromstring(words(0, 0, "193 °C")).text == "193 °C"


def test_marks_of_direction_and_vowel_signs_take_no_room() -> None:
    assert lettering_width("\u2067שלום\u2069", 10) == lettering_width("שלום", 10) == lettering_width("שָׁלוֹם", 10)


NOT_SHOWN = {
    *("address", "anchor", "canonical", "code_target", "currency", "data", "door", "direction", "family", "feed"),
    *("host", "icon", "icon_picture", "id", "iso", "kind", "language", "locale", "log_rows", "modern_type"),
    *("number", "records_language", "source", "template", "verdict"),
}
"""Fields by which things are told apart, and data in forms of their own."""
SAID_KINDS = {"GroupList", "WritingRow", "PressRow", "SupplyRow"}
"""Views whose kind is a word to be read."""


def _words(shown: Any) -> Iterator[str]:
    """Yield every text of a view that is there to be read, the lettering of drawings too."""
    if isinstance(shown, str):
        yield from re.findall(r"<(?:title|text)\b[^>]*>(.*?)</", shown) if hasattr(shown, "__html__") else (shown,)
    elif isinstance(shown, tuple):
        for each in shown:
            yield from _words(each)
    elif dataclasses.is_dataclass(shown) and not isinstance(shown, Text):
        kind = type(shown).__name__
        for field in dataclasses.fields(shown):
            if field.name in NOT_SHOWN and not (field.name == "kind" and kind in SAID_KINDS):
                continue
            if (kind, field.name) not in {("Filter", "name"), ("Day", "words"), ("Drawn", "sign")}:
                yield from _words(getattr(shown, field.name))


def _addresses(shown: Any) -> str:
    return str(shown.address)
