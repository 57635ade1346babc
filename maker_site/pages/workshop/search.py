"""Search: every setting, blank and project of the workshop, found as one types, from the disk."""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Iterator, Mapping
from fractions import Fraction

from maker_site.frozen import frozen
from maker_site.language import marked, say, spoken
from maker_site.pages import addresses
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page, Text
from maker_site.pages.parts import Both, Link
from maker_site.pages.wording import hazards
from maker_site.pages.workshop.views import Search
from maker_site.records.quantities import Duration, Temperature, plain
from maker_site.records.words import DEFECTS, SUBSTRATE_SPELLINGS
from maker_site.workings.cautions import cautions
from maker_site.workings.finding.rows import Row, rows_on
from maker_site.workings.starting_point import percent_down, percent_up

DATA = "search/data.js"
_ALSO = {
    **{defect: " ".join(others) for defect, others in DEFECTS.items() if others},
    **{
        meant: " ".join(other for other, same in SUBSTRATE_SPELLINGS.items() if same == meant)
        for meant in SUBSTRATE_SPELLINGS.values()
    },
}
"""Other words by which a text is found."""
_SOURCES = {
    "sheet": marked("The supplier’s sheet: test one"),
    "common": marked("Common practice, not yours: test one"),
}


def search_pages(book: Notebook) -> Iterator[Page | Text]:
    """Yield search.html and the script that it searches."""
    workshop = book.workshop
    view = Search(
        DATA,
        sum(book.shown("found", _found_on, name).settings for name in workshop.blanks),
        len(workshop.blanks),
        len(workshop.projects),
        (
            Link(say("Catalogue"), "catalogue/index.html"),
            Link(say("Settings by material"), "settings/index.html"),
        ),
        hazards(cautions("", ptfe=True)),
    )
    yield Page("search.html", "workshop/search.html", say("Search"), view, door="search.html")
    data = _Data(book).whole()
    yield Text(DATA, f"window.searchData = {json.dumps(data, ensure_ascii=False, separators=(',', ':'))};\n")


class _Data:
    """Builds the script's data: every text once, and rows that name texts by number, so that it stays small."""

    def __init__(self, book: Notebook) -> None:
        self._book = book
        self._texts: dict[str, int] = {}
        self._temperatures: dict[object, int] = {}
        self._times: dict[object, int] = {}
        self._typed: dict[str, str] = {}
        """What the records have, by the text that is shown for it in another language."""

    def whole(self) -> Mapping[str, object]:
        """Return texts, other words for them, blanks, presses, projects and settings.

        A blank is [address, texts], a press [address, texts], a project [address, blank, texts], each with
        its name first among the texts; a setting is [blank, press, dial, platen, time, pressure, face, outcome, last,
        projects, defects, own], where own is 1 for the maker's own pressings. A missing one is null.
        """
        book, workshop = self._book, self._book.workshop
        blanks = {blank.id: number for number, blank in enumerate(workshop.blanks.values())}
        presses = {press.id: number for number, press in enumerate(workshop.presses.values())}
        projects = {project.id: number for number, project in enumerate(book.newest_first)}
        # What settings say is said most often: its texts come first, so that their numbers are short.
        found = (each for blank in sorted(workshop.blanks) for each in book.shown("found", _found_on, blank).all)
        settings = [self._setting(each, blanks, presses, projects) for each in sorted(found, key=_order)]
        of_blanks = [
            [
                addresses.blank(each.id),
                self._all(
                    each.name, self._said(each.substrate), each.id, each.code, each.supplier, self._said(each.method)
                ),
            ]
            for each in workshop.blanks.values()
        ]
        of_presses = [
            [addresses.press(each.id), self._all(each.name, each.id, self._said(each.kind))]
            for each in workshop.presses.values()
        ]
        of_projects = [
            [addresses.project(each.id), blanks[each.blank], self._all(each.title, each.id, *each.occasions)]
            for each in book.newest_first
        ]
        return {
            "texts": list(self._texts),
            "also": self._also(),
            "blanks": of_blanks,
            "presses": of_presses,
            "projects": of_projects,
            "settings": settings,
        }

    def _also(self) -> dict[int, str]:
        """Return by each text's number the other words by which it is found."""
        found: dict[str, list[str]] = defaultdict(list)
        for word, others in _ALSO.items():
            found[say(word)].append(others)
        for text, typed in self._typed.items():
            found[text].append(typed)
        return {self._texts[text]: " ".join(words) for text, words in found.items() if text in self._texts}

    def _said(self, word: str | None) -> str | None:
        """Return a record's word as it is shown; it is found as the record has it too."""
        shown = say(word) if word else word
        if word and shown and shown != word:
            self._typed[shown] = word
        return shown

    def _text(self, text: str | None) -> int | None:
        return None if text is None else self._texts.setdefault(text, len(self._texts))

    def _all(self, *texts: str | None) -> list[int | None]:
        return [self._text(text) for text in dict.fromkeys(texts) if text]

    def _setting(
        self, found: _Found, blanks: Mapping[str, int], presses: Mapping[str, int], projects: Mapping[str, int]
    ) -> list[object]:
        dial, true = self._temperature(found.dial), self._temperature(found.true)
        return [
            blanks[found.blank],
            presses.get(str(found.press)),
            true if dial is None else dial,
            true,
            self._time(found.time),
            self._text(found.pressure),
            self._text(self._said(str(found.face))) if found.face else None,
            self._text(found.outcome),
            self._text(found.last_used),
            [projects[each] for each in found.projects if each in projects],
            [self._text(self._said(defect)) for defect in found.defects],
            int(found.own),
        ]

    def _temperature(self, celsius: object) -> int | None:
        if not isinstance(celsius, int | float):
            return None
        if celsius not in self._temperatures:
            shown = self._book.wording.temperature(Temperature(Fraction(celsius)))
            self._temperatures[celsius] = self._shown(shown)
        return self._temperatures[celsius]

    def _time(self, seconds: object) -> int | None:
        if not isinstance(seconds, int | float):
            return None
        if seconds not in self._times:
            shown = self._book.wording.time(Duration(Fraction(seconds)))
            self._times[seconds] = self._shown(shown)
            if spoken().tag != "en":  # the script knows seconds by their sign in the SI
                self._typed[_both(shown)] = f"{plain(Fraction(seconds))} s"
        return self._times[seconds]

    def _shown(self, both: Both) -> int:
        """Return the number of a text that holds both figures, parted by a bar for the script to take apart."""
        return self._texts.setdefault(_both(both), len(self._texts))


def _both(both: Both) -> str:
    return f"{both.first}|{both.second}"


@frozen
class _Found:
    """A setting that is found, with what is said of it; nothing more, since there are very many."""

    blank: str
    press: object
    dial: object
    true: object
    time: object
    face: object
    own: bool
    """Whether the maker has pressed with it."""
    projects: tuple[str, ...]
    defects: tuple[str, ...]
    order: tuple[float, ...]
    pressure: str | None
    outcome: str
    last_used: str | None


@frozen
class _FoundOn:
    """What is found of one blank."""

    settings: int
    """Settings that the maker has pressed it with."""
    all: tuple[_Found, ...]


def _order(found: _Found) -> tuple[float | str, ...]:
    return (*found.order, found.blank)


def _found_on(book: Notebook, name: str) -> _FoundOn:
    own = book.evidence_by_blank[name]
    rows = rows_on(book.workshop.blanks[name], book.workshop, own, book.points[name])
    return _FoundOn(len(own), tuple(_found(book, row) for row in rows))


def _found(book: Notebook, row: Row) -> _Found:
    facts, wording = row.facts, book.wording
    own = row.evidence if facts["source"] == "own" else None
    return _Found(
        str(facts["blank"]),
        facts["press"],
        facts["dial_c"],
        facts["temperature_c"],
        facts["time_s"],
        facts["face"],
        own is not None,
        own.projects if own else (),
        tuple(defect for defect, _ in own.defects) if own else (),
        row.order[:4],
        wording.pressure(row.pressure),
        _outcome(book, row),
        wording.day(row.evidence.last_used).words if row.evidence else None,
    )


def _outcome(book: Notebook, row: Row) -> str:
    """Return what came of a setting, or where the figures come from."""
    each = row.evidence
    if each is None:
        return say(_SOURCES[str(row.facts["source"])])
    wording = book.wording
    parts = {
        "counted": wording.good_of(each.good, each.pressed),
        "low": wording.count(percent_down(each.interval.low)),
        "high": wording.count(percent_up(each.interval.high)),
    }
    if row.like is None:
        return say("{counted}, likely {low} to {high}\N{NO-BREAK SPACE}%", **parts)
    blank = book.workshop.blanks[row.like].name
    return say("{counted} on {blank}, likely {low} to {high}\N{NO-BREAK SPACE}%: test one", blank=blank, **parts)
