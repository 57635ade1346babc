"""The text of a new record: what is needed, and every other field in a comment, ready to be taken up. Pure.

Inner module of the records room.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Final

from maker_site.frozen import frozen
from maker_site.records.base import Record
from maker_site.records.blank import Blank
from maker_site.records.press import Press
from maker_site.records.problems import Problem
from maker_site.records.project import Project
from maker_site.records.read_record import record_from
from maker_site.records.shop import Units
from maker_site.records.supply import Supply
from maker_site.records.words import SUPPLY_KINDS
from maker_site.records.yaml_text import read_yaml


@frozen
class Kind:
    """One kind of record and the file that a new one gets."""

    word: str
    """As a maker says it: ``a blank``."""
    folder: str
    model: type[Record]
    needed: Mapping[str, str]
    """Fields that must be there, each with the question for it."""
    examples: tuple[tuple[str, str], ...]
    """The other fields, each as a line that may be taken up and what it means; an empty line parts groups."""
    inner: str | None = None
    """The file's name where the record is a folder, or may be one."""
    is_folder: bool = False

    def file(self, record_id: str) -> str:
        """Return the path of a record from the content folder."""
        return f"{self.folder}/{record_id}/{self.inner}" if self.is_folder else f"{self.folder}/{record_id}.yaml"


_NOTHING = ("", "")
BLANK: Final = Kind(
    "a blank",
    "blanks",
    Blank,
    {"name": "What is it called?", "substrate": "What is it made of (slate, ceramic, aluminium …)?"},
    (
        ("method: sublimation", "how the picture gets onto it: sublimation, heat-transfer vinyl or film transfer"),
        _NOTHING,
        ("size: 100 x 100 mm", "width and height; or 95 mm round"),
        ("print area: 94 x 94 mm", "the part that takes a full picture, where it is smaller than the size"),
        ("corner radius: 3 mm", "how round the corners are"),
        ("outline: M0 0 H100 V100 H0 Z", "a shape of its own, a path in mm from the top left corner of the size"),
        ("holes: [{at: 10 x 10 mm, diameter: 5 mm}]", "from the left, from the top, to the middle of each hole"),
        ("thickness: 5 mm", "of the piece"),
        ("bleed: 3 mm", "how far the artwork goes past the edge"),
        _NOTHING,
        ("girth: 257 mm", "a round piece: once around at the top"),
        ("girth bottom: 253 mm", "and at the bottom"),
        ("height: 96 mm", "of a round piece"),
        ("handle gap: 27 mm", "left free for the handle, along the girth"),
        _NOTHING,
        ("supplier: Example Stone Co", "private, like the code and what you paid"),
        ("code: SC-100", "the supplier's article number"),
        ("link: https://example.org/sc-100", "where it can be bought; shown where you share the supplies"),
        ("paid link: no", "yes where the link earns you something"),
        ("bought: [{date: 2026-02-03, lot: A7, count: 24, paid: 38.40, delivery: 6.95}]", "each delivery"),
        ("low stock: 6", "at this count or below it is running low"),
        _NOTHING,
        ("coating: hard", "soft or hard"),
        ("coated side: front, the shinier one", "which side takes the dye, and how to tell"),
        ("limit: 230 C", "never hotter than this"),
        ("sheet: {temperature: 190 to 200 C, time: 5 min, pressure: medium, face: print up}", "what its supplier says"),
        ("care: Wipe clean with a damp cloth.", "for everybody"),
        ("food contact: Its maker states nothing.", "what its maker states in writing; for everybody"),
        ("note: Count them on arrival.", "private"),
    ),
    inner="blank.yaml",
)
PRESS: Final = Kind(
    "a press",
    "presses",
    Press,
    {"name": "What is it called?"},
    (
        ("kind: flat clamshell", "flat clamshell, flat swing-away, mug, cap, hand press or oven"),
        ("platen: 380 x 380 mm", "the heated plate"),
        ("even zone: 340 x 340 mm", "the part of it that is at the same temperature"),
        ("watts: 1400", "as its plate says"),
        ("duty: 35 %", "of the time it is heating"),
        ("warm up: 12 min", "from cold"),
        ("idle: 120 C", "held between pressings, by some mug presses"),
        ("lowest: 60 C", "that its dial reaches"),
        ("highest: 225 C", "that its dial reaches"),
        ("resolution: {temperature: 1 C, time: 1 s}", "the smallest steps it can be set in"),
        _NOTHING,
        ("pressure mark: medium is three turns", "what light, medium, firm and heavy mean on it"),
        ("timer starts: when it closes", "or when the temperature has come back"),
        ("readings: [{date: 2026-01-10, set: 200 C, measured: 193 C, where: centre}]", "what a contact probe said"),
        ("note: Cold lower plate on the first piece.", "private"),
    ),
)
SUPPLY: Final = Kind(
    "a supply",
    "supplies",
    Supply,
    {
        "name": "What is it called?",
        "kind": f"What kind ({', '.join(SUPPLY_KINDS)})?",
    },
    (
        ("material: silicone", "what it is made of"),
        ("price: 9.00", "for the contents"),
        ("contents: 100 sheets", "or 400 ml, 33 m, 200 pieces"),
        ("size: A4", "of a sheet"),
        ("laydown: 11 ml/m2", "ink at full cover"),
        ("use: 120 mm", "for one piece"),
        ("lasts: 200 pressings", "a sheet that is used again"),
        ("limit: 250 C", "never hotter than this"),
        _NOTHING,
        ("supplier: Example Sheet Co", "private"),
        ("code: TP-A4", "the supplier's article number"),
        ("link: https://example.org/tp-a4", "where it can be bought; shown where you share the supplies"),
        ("paid link: no", "yes where the link earns you something"),
        ("note: Keep it dry.", "private"),
    ),
)
PROJECT: Final = Kind(
    "a project",
    "projects",
    Project,
    {"title": "What is it called?", "blank": "Which blank (its file's name)?"},
    (
        ("made: 2026-04-18", "the day"),
        ("method: sublimation", "where it differs from the blank's"),
        ("pieces: 4", "in what is sold or given as one"),
        ("occasions: [wedding, new home]", "what it suits"),
        ("summary: Four coasters with a harbour on them.", "one line for everybody"),
        ("difficulty: easy", "easy, medium or hard"),
        ("time needed: An afternoon", "in your words"),
        _NOTHING,
        ("artwork: [{file: artwork/front.png, bleed: 3 mm, licence: own drawing}]", "design files, right way round"),
        ("photos: [{file: photos/front.jpg, text: What the picture shows, share: no}]", "the first is the cover"),
        ("supplies: [{supply: tape, use: 120 mm}]", "beside ink, paper and stack; each is the name of its file"),
        (
            "stack: pad > protective paper > transfer > blank > cover sheet",
            "bottom to top: words, or names of supplies",
        ),
        _NOTHING,
        ("minutes: {design: 90, press: 12, finish: 6}", "design once; the others each time"),
        ("at once: 2", "pieces in the press together"),
        ("batch: 6", "how many are made in one go"),
        ("tools: [lint roller, gloves for the heat]", "what is used and not used up; for everybody"),
        ("video: https://example.org/film", "where it can be seen"),
        ("for: Somebody", "private"),
        ("order: {for: Somebody, due: 2026-05-01, paid: 24.00, names: [Ann, Bo]}", "private"),
        ("note: Ask for a second proof.", "private"),
        ("care: Wipe clean with a damp cloth.", "for everybody"),
        _NOTHING,
        (
            "share: {tutorial: no, setting: no, supplies: no, menu: {section: Home, price: 24.00}}",
            "what everybody sees",
        ),
    ),
    inner="project.yaml",
    is_folder=True,
)
KINDS: Final = {"blank": BLANK, "press": PRESS, "supply": SUPPLY, "project": PROJECT}

_WIDEST_BEFORE_COMMENT: Final = 46


def record_text(kind: Kind, answers: Mapping[str, str]) -> str:
    """Return the text of a new record with these answers to what is needed."""
    lines = [f"{field}: {_scalar(answers[field])}" for field in kind.needed]
    lines += ["", "# All that follows may stay away. To use a line, take the # from its beginning."]
    lines += [_example(line, meaning) for line, meaning in kind.examples]
    return "\n".join(lines) + "\n"


def problems_in_needed(kind: Kind, answers: Mapping[str, str], units: Units) -> list[Problem]:
    """Return what is wrong with the answers given so far; those still to come are not called missing."""
    text = "".join(f"{field}: {_scalar(answer)}\n" for field, answer in answers.items())
    _, problems = record_from(kind.model, read_yaml(text, ""), "", {"id": "new"}, units, kind=kind.word)
    return [problem for problem in problems if not problem.field or problem.field in answers]


def _example(line: str, meaning: str) -> str:
    return f"# {line:<{_WIDEST_BEFORE_COMMENT}}  # {meaning}" if line else "#"


def _scalar(text: str) -> str:
    """Return the text as YAML: plain where it reads back as it is, else in double quotes."""
    tree = read_yaml(f"x: {text}\n", "")
    return text if tree.fields == {"x": text} and not tree.problems else json.dumps(text, ensure_ascii=False)
