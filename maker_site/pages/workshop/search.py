"""Search: every setting, blank and project of the workshop, found as one types, from the disk."""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction

from maker_site.frozen import frozen
from maker_site.language import marked, say, spoken
from maker_site.pages import addresses
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page, Text
from maker_site.pages.parts import Both, Link
from maker_site.pages.wording import hazards
from maker_site.pages.workshop.catalogue_data import ANY
from maker_site.pages.workshop.views import Search
from maker_site.records.project import Project
from maker_site.records.quantities import Duration, Temperature, plain
from maker_site.records.words import DEFECTS, SUBSTRATE_SPELLINGS
from maker_site.workings.cautions import cautions
from maker_site.workings.finding.rows import Row, rows_on
from maker_site.workings.starting_point import percent_down, percent_up

DATA = "search/data.js"
_IN_QUOTES = {ord("\\"): "\\\\", ord("'"): "\\'"}
_ALSO = {
    **{defect: " ".join(others) for defect, others in DEFECTS.items() if others},
    **{
        meant: " ".join(other for other, same in SUBSTRATE_SPELLINGS.items() if same == meant)
        for meant in SUBSTRATE_SPELLINGS.values()
    },
}
"""Other words by which a text is found."""
_COLUMNS = ("blank", "press", "dial", "platen", "time", "pressure", "face", "outcome", "last")
_SOURCES = {
    "sheet": marked("The supplier’s sheet: test one"),
    "common": marked("Common practice, not yours: test one"),
}


def search_pages(book: Notebook) -> Iterator[Page | Text]:
    """Yield search.html and the script that it searches."""
    workshop = book.workshop
    found = [book.shown("found", _found_on, name) for name in sorted(workshop.blanks)]
    view = Search(
        DATA,
        sum(each.settings for each in found),
        len(workshop.blanks),
        len(workshop.projects),
        (
            Link(say("Catalogue"), "catalogue/index.html"),
            Link(say("Settings by material"), "settings/index.html"),
        ),
        hazards(cautions("", ptfe=True)),
    )
    yield Page("search.html", "workshop/search.html", say("Search"), view, door="search.html")
    data = json.dumps(_Data(book).whole(found), ensure_ascii=False, separators=(",", ":"))
    # Read as JSON a browser has it in half the time, and holds it in less, than as so long a script.
    yield Text(DATA, f"window.searchData = JSON.parse('{data.translate(_IN_QUOTES)}');\n")


class _Data:
    """Builds the script's data: every text once, and columns that name texts by number, so that it stays small.

    There may be tens of thousands of settings: a list for each would weigh more than what it holds.
    """

    def __init__(self, book: Notebook) -> None:
        self._book = book
        self._texts: dict[str, int] = {"": 0}
        self._temperatures: dict[object, int] = {}
        self._times: dict[object, int] = {}
        self._typed: dict[str, str] = {}
        """What the records have, by the text that is shown for it in another language."""

    def whole(self, found: Iterable[_FoundOn]) -> Mapping[str, object]:
        """Return texts, other words for them, blanks, presses, projects and settings.

        A text's number is its place in `texts`; 0 is a missing one. A blank or a press is [address, numbers of its
        texts], its name first. The projects are columns: `blank`, and `texts`, of each its title, its folder and its
        occasions; `pages` is the address of all of them, `*` for the folder. The settings are columns, best supported
        first; `press` is the number of presses where none is known. A column of several to a row is [how many each
        row has, all of them].
        """
        book, workshop = self._book, self._book.workshop
        blanks = {blank.id: number for number, blank in enumerate(workshop.blanks.values())}
        presses = {press.id: number for number, press in enumerate(workshop.presses.values())}
        projects = {project.id: number for number, project in enumerate(book.newest_first)}
        # What settings say is said most often: its texts come first, so that their numbers are short.
        ordered = sorted((each for here in found for each in here.all), key=_order)
        settings = self._settings(ordered, blanks, presses, projects)
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
        of_projects = {
            "blank": [blanks[each.blank] for each in book.newest_first],
            "texts": _several([self._text(text) for text in _told(each)] for each in book.newest_first),
        }
        return {
            "texts": list(self._texts),
            "also": self._also(),
            "blanks": of_blanks,
            "presses": of_presses,
            "pages": addresses.project(ANY),
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

    def _text(self, text: str | None) -> int:
        return self._texts.setdefault(text or "", len(self._texts))

    def _all(self, *texts: str | None) -> list[int]:
        return [self._text(text) for text in dict.fromkeys(texts) if text]

    def _settings(
        self,
        found: Sequence[_Found],
        blanks: Mapping[str, int],
        presses: Mapping[str, int],
        projects: Mapping[str, int],
    ) -> dict[str, object]:
        columns: dict[str, list[int]] = {name: [] for name in _COLUMNS}
        for each in found:
            dial, platen = self._temperature(each.dial), self._temperature(each.true)
            row = (
                blanks[each.blank],
                presses.get(str(each.press), len(presses)),
                dial or platen,
                platen,
                self._time(each.time),
                self._text(each.pressure),
                self._text(self._said(str(each.face)) if each.face else None),
                self._text(each.outcome),
                self._text(each.last_used),
            )
            for name, number in zip(_COLUMNS, row, strict=True):
                columns[name].append(number)
        used_for = _several([projects[name] for name in each.projects if name in projects] for each in found)
        defects = _several([self._text(self._said(defect)) for defect in each.defects] for each in found)
        return {**columns, "projects": used_for, "defects": defects}

    def _temperature(self, celsius: object) -> int:
        if not isinstance(celsius, int | float):
            return 0
        if celsius not in self._temperatures:
            shown = self._book.wording.temperature(Temperature(Fraction(celsius)))
            self._temperatures[celsius] = self._shown(shown)
        return self._temperatures[celsius]

    def _time(self, seconds: object) -> int:
        if not isinstance(seconds, int | float):
            return 0
        if seconds not in self._times:
            shown = self._book.wording.time(Duration(Fraction(seconds)))
            self._times[seconds] = self._shown(shown)
            if spoken().tag != "en":  # the script knows seconds by their sign in the SI
                self._typed[_both(shown)] = f"{plain(Fraction(seconds))} s"
        return self._times[seconds]

    def _shown(self, both: Both) -> int:
        """Return the number of a text that holds both figures, parted by a bar for the script to take apart."""
        return self._texts.setdefault(_both(both), len(self._texts))


def _told(project: Project) -> tuple[str, ...]:
    return (project.title, project.id, *project.occasions)


def _several(rows: Iterable[Sequence[int]]) -> list[list[int]]:
    """Return how many each row has, and all of them."""
    kept = list(rows)
    return [[len(row) for row in kept], [number for row in kept for number in row]]


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
