"""Sheets of transfers at true size: where each lies, its label, its corner marks, and the words of the sheet."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction
from math import ceil
from pathlib import Path
from typing import Any, Final

from maker_site.frozen import frozen
from maker_site.language import apart, say
from maker_site.paper.ganging import Ganged, Lying, Room, gang
from maker_site.paper.sizes import SheetSize
from maker_site.paper.typesetting import Document

_CLEAR: Final = Fraction("0.4")
"""mm between a transfer and its marks and label."""
_LABEL: Final = (Fraction("1.9"), Fraction(3))
"""mm: the lowest and the highest that a label may be."""
_MARK: Final = (Fraction("0.6"), Fraction(2))
"""mm: the shortest and the longest corner mark."""
_RULER_ROW: Final = Fraction(7)
"""mm of the sheet's words that the ruler takes."""
_LINE: Final = Fraction("2.75")
"""mm from line to line of the sheet's words."""
_LETTER: Final = Fraction("0.95")
"""mm that one letter of them takes up, rather too much."""
_LARGE: Final = Fraction("1.35")
"""How much larger the words are where there is room enough."""
_KEPT_OFF: Final = Fraction(3)
"""mm of bare paper beside the words of the sheet."""


@frozen
class NameOnIt:
    """A name in the box that the artwork keeps for one."""

    text: str
    x: Fraction
    """mm from the transfer's left edge, right way round, bleed and all."""
    y: Fraction
    """mm from its upper edge."""
    width: Fraction
    """mm; the letters are as large as they can be in it."""
    height: Fraction
    font: str | None
    colour: str
    """Six hexadecimal digits."""
    outline: str | None
    """The colour of a line round the letters."""
    outline_width: Fraction
    """mm that it is seen to be wide."""


@frozen
class Transfer:
    """One to be printed."""

    project: str
    """Its id."""
    width: Fraction
    """mm, bleed and all."""
    height: Fraction
    bleed: Fraction
    """mm on each side."""
    art_width: Fraction
    """mm of the whole artwork, of which the middle is seen."""
    art_height: Fraction
    file: str
    """The name of its picture among the files of the document."""
    text: str
    """What the picture is, for those who can't see it."""
    mirrored: bool
    ppi: Fraction | None
    """Effective pixels an inch; None for a drawing."""
    labels: tuple[str, ...]
    """The same in fewer and fewer words; the first that there is room for is printed."""
    name: NameOnIt | None = None


@frozen
class ProjectWords:
    """What a sheet says of a project on it."""

    title: str
    setting: str
    """Blank, setting, face, mirrored or not; one line, said."""
    cautions: tuple[str, ...]
    """Short ones, said, gravest first."""


@frozen
class Job:
    """Transfers, with where each lies."""

    transfers: tuple[Transfer, ...]
    places: tuple[Lying, ...]
    paper: SheetSize
    room: Room
    sheets: int
    per_sheet: int
    words_at: str
    """foot, side or apart: where the words of each sheet stand."""

    @property
    def waste(self) -> Fraction:
        """The share of the paper that no transfer covers, 0 to 1."""
        covered = sum((each.width * each.height for each in self.transfers), Fraction(0))
        return 1 - covered / (self.sheets * self.paper.width * self.paper.height)

    def box(self, lying: Lying) -> tuple[Fraction, Fraction, Fraction, Fraction]:
        """Return x, y, width and height in mm of a transfer as it lies."""
        transfer = self.transfers[lying.piece]
        sides = (transfer.height, transfer.width) if lying.turned else (transfer.width, transfer.height)
        return lying.x, lying.y, *sides


def lay_transfers(
    transfers: Sequence[Transfer],
    paper: SheetSize,
    margin: Fraction,
    gap: Fraction,
    words: Mapping[str, ProjectWords],
    closing: str,
) -> Job | None:
    """Return where the transfers lie on the fewest sheets that were found; None where one fits no sheet.

    Room for the words of the sheet (ruler, settings, cautions) is kept at its foot or its side where that costs no
    sheet; else they stand on a page of their own. `words` is by project.
    """
    sizes = [(each.width, each.height) for each in transfers]
    sheet = (paper.width, paper.height)
    room = Room(sheet, margin, gap)
    bare = gang(sizes, room)
    if bare is None:
        return None
    said = [*words.values()]

    def depth(along: Fraction, scale: Fraction) -> Fraction:
        return _depth(said, closing, along - 2 * max(margin, _KEPT_OFF), scale) + gap

    tries = (
        ("foot", Room(sheet, margin, gap, foot=depth(paper.width, _LARGE))),
        ("foot", Room(sheet, margin, gap, foot=depth(paper.width, Fraction(1)))),
        ("side", Room(sheet, margin, gap, side=depth(paper.height, _LARGE))),
        ("side", Room(sheet, margin, gap, side=depth(paper.height, Fraction(1)))),
    )
    for where, smaller in tries:
        found = gang(sizes, smaller)
        if found and found.sheets <= bare.sheets:
            return _job(transfers, found, bare.per_sheet, paper, smaller, where)
    return _job(transfers, bare, bare.per_sheet, paper, room, "apart")


def _job(transfers: Sequence[Transfer], found: Ganged, per_sheet: int, paper: SheetSize, room: Room, where: str) -> Job:
    return Job(tuple(transfers), found.places, paper, room, found.sheets, per_sheet, where)


def _depth(words: Sequence[ProjectWords], closing: str, along: Fraction, scale: Fraction) -> Fraction:
    """Return the mm that the words of a sheet take away from an edge along which they have so many mm.

    `scale` is the size of their letters against the small one.
    """
    letters = int(along / (_LETTER * scale))
    texts = [f"{project.title} {project.setting}" for project in words]
    texts.append(f"{say('Cautions.')} {_cautions(words)} {closing}")
    lines = sum(ceil(len(text) / max(1, letters)) for text in texts)
    return _RULER_ROW + lines * _LINE * scale


def transfer_document(
    job: Job,
    words: Mapping[str, ProjectWords],
    closing: str,
    title: str,
    language: tuple[str, str | None],
    files: Mapping[str, Path],
) -> Document:
    """Return the sheets as a document; labels that find no room on them stand on a page of their own at the end."""
    sheets: list[dict[str, Any]] = []
    homeless: list[str] = []
    for number in range(job.sheets):
        lying = [each for each in job.places if each.sheet == number]
        spots = _Spots(job, lying)
        pieces = [_piece(job, each, spots, homeless, number) for each in lying]
        here = dict.fromkeys(job.transfers[each.piece].project for each in lying)
        said = _said([words[project] for project in here], closing)
        head = say("Sheet {number} of {count}, {paper}.", number=number + 1, count=job.sheets, paper=job.paper.name)
        sheets.append(
            {
                "pieces": pieces,
                "marks": [_floats(mark) for mark in _marks(job, lying)],
                "words": None
                if job.words_at == "apart"
                else {**said, "head": f"{head} {_ruler_words()}", **_words_box(job)},
            }
        )
    last = None
    if homeless or job.words_at == "apart":
        last = {**_said([*words.values()], closing), "labels": homeless}
    data = {
        "paper": job.paper.name,
        "width": float(job.paper.width),
        "height": float(job.paper.height),
        "sheets": sheets,
        "apart": last,
        "said": {
            "cautions": say("Cautions."),
            "apart": say("What the sheets have no room for"),
            "keep": say("Print this page on plain paper and keep it with the sheets."),
            "ruler": _ruler_words(),
        },
    }
    return Document("transfer.typ", title, *language, data, files)


def labels_apart(job: Job) -> int:
    """Return how many labels find no room beside their transfers."""
    count = 0
    for number in range(job.sheets):
        lying = [each for each in job.places if each.sheet == number]
        spots = _Spots(job, lying)
        count += sum(spots.label(each) is None for each in lying)
    return count


def _said(words: Sequence[ProjectWords], closing: str) -> dict[str, Any]:
    return {
        "projects": [{"title": apart(each.title), "setting": each.setting} for each in words],
        "cautions": _cautions(words),
        "closing": closing,
    }


def _cautions(words: Iterable[ProjectWords]) -> str:
    """Return the short cautions of all projects in a row, each once."""
    return f"{'; '.join(dict.fromkeys(each for project in words for each in project.cautions))}."


def _ruler_words() -> str:
    return say("This line is 100 mm: print at 100 %, not “fit to page”.")


def _words_box(job: Job) -> dict[str, Any]:
    """Return where the words of a sheet stand: x, y, length and depth, and whether they run up the side."""
    off = max(job.room.margin, _KEPT_OFF)
    width, height = job.room.sheet
    if job.words_at == "foot":
        depth = job.room.foot - job.room.gap
        return {**_rect(off, height - job.room.margin - depth, width - 2 * off, depth), "turned": False}
    depth = job.room.side - job.room.gap
    return {**_rect(width - job.room.margin - depth, off, depth, height - 2 * off), "turned": True}


def _piece(job: Job, lying: Lying, spots: _Spots, homeless: list[str], number: int) -> dict[str, Any]:
    transfer = job.transfers[lying.piece]
    spot = spots.label(lying)
    if spot is None:
        homeless.append(say("Sheet {number}: {label}", number=number + 1, label=transfer.labels[0]))
    return {
        **_rect(lying.x, lying.y, transfer.width, transfer.height),
        "turned": lying.turned,
        "mirrored": transfer.mirrored,
        "art_width": float(transfer.art_width),
        "art_height": float(transfer.art_height),
        "file": f"files/{transfer.file}",
        "text": transfer.text,
        "labels": list(transfer.labels),
        "label": spot,
        "name": _name(transfer.name) if transfer.name else None,
    }


def _name(name: NameOnIt) -> dict[str, Any]:
    return {
        **_rect(name.x, name.y, name.width, name.height),
        "text": apart(name.text),
        "font": name.font,
        "colour": name.colour,
        "outline": name.outline,
        "outline_width": float(name.outline_width),
    }


class _Spots:
    """Where labels can stand on one sheet: inside what is printed, over no transfer and no other label."""

    def __init__(self, job: Job, lying: Sequence[Lying]) -> None:
        self._job = job
        self._taken = [job.box(each) for each in lying]
        self._edge = min(_LABEL[1], job.room.gap - 2 * _CLEAR) if job.room.gap else _LABEL[1]

    def label(self, lying: Lying) -> dict[str, Any] | None:
        """Return a place along a transfer, its longer sides first; None where all are taken."""
        x, y, width, height = self._job.box(lying)
        inset = self._job.transfers[lying.piece].bleed + 2 * _CLEAR
        for depth in (self._edge, _LABEL[0]):
            if depth < _LABEL[0]:
                continue
            along, down = (x + inset, width - 2 * inset), (y + inset, height - 2 * inset)
            level = (
                (False, (along[0], y + height + _CLEAR, along[1], depth)),
                (False, (along[0], y - _CLEAR - depth, along[1], depth)),
            )
            upright = (
                (True, (x + width + _CLEAR, down[0], depth, down[1])),
                (True, (x - _CLEAR - depth, down[0], depth, down[1])),
            )
            for turned, box in (*level, *upright) if width >= height else (*upright, *level):
                if self._is_free(box):
                    self._taken.append(box)
                    return {**_rect(*box), "turned": turned}
        return None

    def _is_free(self, box: tuple[Fraction, Fraction, Fraction, Fraction]) -> bool:
        x, y, width, height = box
        room = self._job.room
        right, foot = (side - room.margin for side in room.part)
        if room.foot:
            foot += room.gap  # the words begin below it
        if room.side:
            right += room.gap
        inside = x >= room.margin and y >= room.margin and x + width <= right and y + height <= foot
        return inside and min(width, height) > 0 and not any(_meet(box, each) for each in self._taken)


def _marks(job: Job, lying: Sequence[Lying]) -> Iterator[tuple[Fraction, Fraction, Fraction, Fraction]]:
    """Yield the corner marks: from x, y to x, y in mm, in line with the edges of the piece without its bleed."""
    boxes = [job.box(each) for each in lying]
    length = min(_MARK[1], job.room.gap / 2 - _CLEAR) if job.room.gap else _MARK[1]
    length = max(length, _MARK[0])
    for each in lying:
        x, y, width, height = job.box(each)
        bleed = job.transfers[each.piece].bleed
        for at in (x + bleed, x + width - bleed):
            for start in (y - _CLEAR - length, y + height + _CLEAR):
                yield from _clear_of(boxes, job, (at, start, at, start + length))
        for at in (y + bleed, y + height - bleed):
            for start in (x - _CLEAR - length, x + width + _CLEAR):
                yield from _clear_of(boxes, job, (start, at, start + length, at))


def _clear_of(
    boxes: Sequence[tuple[Fraction, Fraction, Fraction, Fraction]],
    job: Job,
    mark: tuple[Fraction, Fraction, Fraction, Fraction],
) -> Iterator[tuple[Fraction, Fraction, Fraction, Fraction]]:
    x, y, to_x, to_y = mark
    thick = Fraction("0.1")
    box = (x - thick, y - thick, to_x - x + 2 * thick, to_y - y + 2 * thick)
    inside = x >= 0 and y >= 0 and to_x <= job.paper.width and to_y <= job.paper.height
    if inside and not any(_meet(box, each) for each in boxes):
        yield mark


def _meet(
    one: tuple[Fraction, Fraction, Fraction, Fraction], other: tuple[Fraction, Fraction, Fraction, Fraction]
) -> bool:
    return (
        one[0] < other[0] + other[2]
        and other[0] < one[0] + one[2]
        and one[1] < other[1] + other[3]
        and other[1] < one[1] + one[3]
    )


def _rect(x: Fraction, y: Fraction, width: Fraction, height: Fraction) -> dict[str, float]:
    return {"x": float(x), "y": float(y), "width": float(width), "height": float(height)}


def _floats(values: Iterable[Fraction]) -> list[float]:
    return [float(each) for each in values]
