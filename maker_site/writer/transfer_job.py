"""Transfers of projects: from the notebook to sheets that are ready to be set."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any, Final

from maker_site.frozen import frozen
from maker_site.language import apart, listed, say
from maker_site.media import PictureProblem
from maker_site.media.artwork import ArtworkFile
from maker_site.media.artwork.placing import place_name, ready_to_place
from maker_site.pages.notebook import Notebook
from maker_site.pages.wording import face_words
from maker_site.pages.workshop.pieces import setting_of_point
from maker_site.pages.workshop.views import SettingShown
from maker_site.paper.sizes import SheetSize, sheet_of, sheet_size
from maker_site.paper.transfer import (
    Job,
    NameOnIt,
    ProjectWords,
    Transfer,
    labels_apart,
    lay_transfers,
    transfer_document,
)
from maker_site.paper.typesetting import Typesetter, missing_words
from maker_site.records import Artwork, Problem, Project, Severity
from maker_site.records.problems import nearest
from maker_site.records.quantities import plain
from maker_site.workings.artwork_size import ArtworkSize
from maker_site.workings.cautions import CLOSING
from maker_site.workings.remake import Remake
from maker_site.writer.printing import language_of

USUAL_PAPER: Final = "A4"
MOST_TRANSFERS: Final = 2000
"""Of one project at one go: every piece is placed and drawn one by one."""
_OUTLINE_MM: Final = Fraction("0.4")
"""Of a name whose outline has no width."""


@frozen
class Asked:
    """What is asked for beside the projects."""

    pieces: int | None
    """Of each project; None: what its record says, and every artwork at least once."""
    paper: SheetSize | None
    names: tuple[str, ...] | None
    """One transfer for each."""
    mirror: bool | None
    """Taken where it is not known; else None."""


class TransferProblem(ValueError):
    """What keeps transfers from being made; each sentence can be acted on."""

    def __init__(self, sentences: Sequence[str], *, wrong_use: bool) -> None:
        super().__init__("; ".join(sentences))
        self.sentences = tuple(sentences)
        self.wrong_use = wrong_use


@frozen
class Sheets:
    """Transfers laid out, with what is worth telling."""

    job: Job
    words: Mapping[str, ProjectWords]
    cautions: tuple[str, ...]
    _artwork: Mapping[str, tuple[Path, ArtworkFile, Fraction]]
    _ppi: int

    def set(self, setter: Typesetter, book: Notebook, folder: Path) -> tuple[bytes, tuple[str, ...]]:
        """Return the PDF and what came up while it was set; pictures are made ready in `folder`.

        Raises `PictureProblem`, `PaperProblem` and `TransferProblem`.
        """
        _check_fonts(self.job, setter.families)
        files: dict[str, Path] = {}
        for name, (path, artwork, width) in self._artwork.items():
            ready_to_place(path, artwork, width, self._ppi, folder / name)
            files[name] = folder / name
        title = say("Transfers: {titles}", titles=listed(each.title for each in self.words.values()))
        document = transfer_document(self.job, self.words, say(CLOSING), title, language_of(book), files)
        paper = setter.set(document)
        return paper.pdf, (missing_words(paper.missing),) if paper.missing else ()


def sheets_of(book: Notebook, projects: Sequence[Project], asked: Asked) -> Sheets:
    """Return the transfers of some projects, laid on sheets. Raises `TransferProblem` with all that is wrong."""
    _refuse(_unready(book, projects), wrong_use=False)
    _refuse(_unclear(book, projects, asked), wrong_use=True)
    transfers: list[Transfer] = []
    artwork: dict[str, tuple[Path, ArtworkFile, Fraction]] = {}
    for project in projects:
        for transfer, index in _transfers(book, project, asked):
            transfers.append(transfer)
            path, found = _file(book, project, project.artwork[index])
            artwork[transfer.file] = (path, found, transfer.art_width)
    shop = book.workshop.shop
    paper = asked.paper or (sheet_of(shop.paper) if shop.paper else sheet_size(USUAL_PAPER))
    margin = shop.printer.margin.mm if shop.printer.margin else Fraction(0)
    gap = shop.printer.gap.mm if shop.printer.gap else Fraction(0)
    words = {project.id: _words(book, project, asked) for project in projects}
    job = lay_transfers(transfers, paper, margin, gap, words, say(CLOSING))
    if job is None:
        raise TransferProblem(_too_large(transfers, paper, margin), wrong_use=True)
    return Sheets(job, words, tuple(_cautions(book, projects, asked, job)), artwork, shop.printer.ppi)


def sheets_as_data(job: Job) -> dict[str, Any]:
    """Return the sheets by the names of the contract; mm as the transfer lies, waste as a share from 0 to 1."""
    pieces = []
    for lying in job.places:
        transfer = job.transfers[lying.piece]
        x, y, width, height = job.box(lying)
        pieces.append(
            {
                "project": transfer.project,
                "sheet": lying.sheet + 1,
                "x_mm": _rounded(x),
                "y_mm": _rounded(y),
                "width_mm": _rounded(width),
                "height_mm": _rounded(height),
                "rotated": lying.turned,
                "effective_ppi": None if transfer.ppi is None else round(float(transfer.ppi), 1),
            }
        )
    return {
        "sheets": job.sheets,
        "per_sheet": job.per_sheet,
        "paper": job.paper.name,
        "waste": round(float(job.waste), 4),
        "pieces": pieces,
    }


def _rounded(length: Fraction) -> float:
    return round(float(length), 4)


def _refuse(sentences: Iterator[str], *, wrong_use: bool) -> None:
    if found := tuple(sentences):
        raise TransferProblem(found, wrong_use=wrong_use)


def _unready(book: Notebook, projects: Sequence[Project]) -> Iterator[str]:
    """Yield what the records lack."""
    for project in projects:
        where = f"projects/{project.id}/project.yaml"
        blank = book.workshop.blanks[project.blank]
        if not project.artwork:
            yield f"{where}: there is no artwork to print; name its file under “artwork”"
            continue
        for index, artwork in enumerate(project.artwork):
            path = f"projects/{project.id}/{artwork.file}"
            if path not in book.artwork:
                yield f"{where}: “{artwork.file}” can't be placed on paper; save a copy as PNG, TIFF, SVG or PDF"
            elif book.artwork_size(project, index) is None:
                yield f"{blank.origin.file}: {blank.name} has no size; write its “size”, or “girth” and “height”"
                break


def _unclear(book: Notebook, projects: Sequence[Project], asked: Asked) -> Iterator[str]:
    """Yield what has to be said on the command line."""
    if asked.names is not None:
        if len(projects) > 1:
            yield "names go on the transfers of one project; name one only"
        if asked.pieces is not None:
            yield "there is one transfer for each name, so --pieces can't be said with --names"
        if not asked.names:
            yield "there is no name in the file; write one a line"
        for project in projects[:1]:
            if not any(artwork.name_box for artwork in project.artwork):
                yield (
                    f"no artwork of {project.id} keeps a place for a name; write one in projects/{project.id}/"
                    "project.yaml, like name box: {at: 10 x 70 mm, size: 80 x 18 mm}"
                )
        if len(asked.names) > MOST_TRANSFERS:
            yield f"{len(asked.names)} names are too many for one go ({MOST_TRANSFERS} at most); share the file out"
    for project in projects:
        if asked.names is None and asked.pieces is None and project.pieces > MOST_TRANSFERS:
            yield f"{project.id} has {project.pieces} pieces, too many for one go; say how many with --pieces"
        if book.remakes[project.id].mirror is None and asked.mirror is None:
            yield (
                f"whether {project.id} is mirrored is not known: films made at home are, bought ones come ready; "
                "say --mirror yes or --mirror no"
            )


def _check_fonts(job: Job, families: Sequence[str]) -> None:
    asked = dict.fromkeys(each.name.font for each in job.transfers if each.name and each.name.font)
    known = {family.casefold() for family in families}
    wrong = tuple(
        f"there is no font “{font}” for the names{nearest(font, families)}; known are {', '.join(families)}, "
        "and what is in content/fonts/"
        for font in asked
        if font and font.casefold() not in known
    )
    if wrong:
        raise TransferProblem(wrong, wrong_use=False)


def _transfers(book: Notebook, project: Project, asked: Asked) -> Iterator[tuple[Transfer, int]]:
    """Yield the transfers of a project, each with the number of its artwork, which are taken in turn."""
    if asked.names is not None:
        index = next(number for number, artwork in enumerate(project.artwork) if artwork.name_box)
        for number, name in enumerate(asked.names, 1):
            yield _transfer(book, project, index, (number, len(asked.names)), asked, name), index
        return
    count = asked.pieces or max(project.pieces, len(project.artwork))
    for number in range(count):
        index = number % len(project.artwork)
        yield _transfer(book, project, index, (number + 1, count), asked, None), index


def _transfer(
    book: Notebook, project: Project, index: int, number: tuple[int, int], asked: Asked, name: str | None
) -> Transfer:
    size = book.artwork_size(project, index)
    assert size is not None  # looked at before
    artwork = project.artwork[index]
    _, found = _file(book, project, artwork)
    remake = book.remakes[project.id]
    place = size.place
    mirrored = _mirrored(remake, asked)
    file = artwork.file.rpartition("/")[2]
    picture = say("{name}, on {file}", name=name, file=file) if name else file
    text = (
        say("{picture}, mirrored, for {project}", picture=picture, project=project.title)
        if mirrored
        else say("{picture}, for {project}", picture=picture, project=project.title)
    )
    return Transfer(
        project.id,
        place.printed_width,
        place.printed_height,
        place.bleed,
        size.width,
        size.height,
        place_name(found, size.width, book.workshop.shop.printer.ppi),
        text,
        mirrored,
        size.ppi,
        tuple(_labels(book, remake, number, name)),
        _name_on_it(artwork, size, name) if name else None,
    )


def _file(book: Notebook, project: Project, artwork: Artwork) -> tuple[Path, ArtworkFile]:
    path = f"projects/{project.id}/{artwork.file}"
    return book.workshop.root / path, book.artwork[path]


def _mirrored(remake: Remake, asked: Asked) -> bool:
    return bool(remake.mirror if remake.mirror is not None else asked.mirror)


def _name_on_it(artwork: Artwork, size: ArtworkSize, name: str) -> NameOnIt:
    box = artwork.name_box
    assert box is not None  # chosen for it
    bleed = size.place.bleed
    return NameOnIt(
        name,
        box.at[0].mm + bleed,
        box.at[1].mm + bleed,
        box.size.width.mm,
        box.size.height.mm,
        box.font,
        box.colour,
        box.outline,
        box.outline_width.mm if box.outline_width else _OUTLINE_MM,
    )


def _labels(book: Notebook, remake: Remake, number: tuple[int, int], name: str | None) -> Iterator[str]:
    """Yield a transfer's label in fewer and fewer words."""
    project, blank = remake.project, remake.blank
    setting = setting_of_point(book, remake.setting) if remake.setting else None
    face = setting.face if setting and setting.face else say("face not known")
    of = say("{number} of {count}", number=number[0], count=number[1])
    whose = (name,) if name else ()
    if setting is None:
        yield _label(*whose, project.title, blank.name, say("no setting known"), face, of)
        yield _label(*whose, project.id, blank.id, say("no setting"), face, of)
        return
    first, time = setting.temperature.first, setting.time.first
    yield _label(*whose, project.title, blank.name, f"{first} ({setting.temperature.second})", time, face, of)
    yield _label(*whose, project.title, blank.name, first, time, face, of)
    yield _label(*whose, project.title, blank.id, first, time, face, of)
    yield _label(*whose, project.id, blank.id, first, time, face, of)


def _label(*parts: str) -> str:
    return " · ".join(apart(part) for part in parts)


def _words(book: Notebook, project: Project, asked: Asked) -> ProjectWords:
    """Return what a sheet says of a project: the setting in full, which way round, the cautions."""
    remake = book.remakes[project.id]
    setting = setting_of_point(book, remake.setting) if remake.setting else None
    parts = [_setting_words(remake, setting)]
    if remake.setting and (face := face_words(remake.setting.face)):
        parts.append(face)
    parts.append(say("Printed mirrored.") if _mirrored(remake, asked) else say("Printed the right way round."))
    return ProjectWords(project.title, " ".join(parts), tuple(say(each.short) for each in remake.cautions))


def _setting_words(remake: Remake, setting: SettingShown | None) -> str:
    blank = remake.blank.name
    if remake.blank.code:
        blank = say("{blank} ({code})", blank=blank, code=remake.blank.code)
    if setting is None:
        return say("{blank}: no full setting is known; test one.", blank=blank)
    figures = [f"{setting.temperature.first} ({setting.temperature.second})"]
    if setting.true and setting.true != setting.temperature:
        figures.append(say("{temperature} at the platen", temperature=setting.true.first))
    figures.append(f"{setting.time.first} ({setting.time.second})")
    if setting.pressure:
        figures.append(setting.pressure)
    if setting.press:
        return say("{blank}: set {press} to {figures}.", blank=blank, press=setting.press.text, figures=listed(figures))
    return say("{blank}: set {figures}.", blank=blank, figures=listed(figures))


def _too_large(transfers: Sequence[Transfer], paper: SheetSize, margin: Fraction) -> tuple[str, ...]:
    usable = sorted((paper.width - 2 * margin, paper.height - 2 * margin))
    found = {
        f"{each.project}: a transfer of {plain(each.width, 1)} × {plain(each.height, 1)} mm does not fit {paper.name} "
        f"less margins of {plain(margin, 1)} mm ({plain(usable[0], 1)} × {plain(usable[1], 1)} mm); "
        "say a larger --paper": None
        for each in transfers
        if min(each.width, each.height) > usable[0] or max(each.width, each.height) > usable[1]
    }
    return tuple(found) or (f"nothing can be printed on {paper.name} with margins of {plain(margin, 1)} mm",)


def _cautions(book: Notebook, projects: Sequence[Project], asked: Asked, job: Job) -> Iterator[str]:
    """Yield what is worth a look before paper is used."""
    ids = {project.id for project in projects}
    for problem in book.cautions:
        if _is_about_artwork(problem, ids):
            yield f"{problem.file}, line {problem.line}: {problem.message}"
    for project in projects:
        known = book.remakes[project.id].mirror
        if asked.mirror is not None and known is not None and known != asked.mirror:
            yield (
                f"{project.id} is printed {'mirrored' if known else 'the right way round'}, as its method and face "
                "have it; --mirror is for those of which it is not known"
            )
    for transfer in job.transfers:
        name = transfer.name
        if name and (name.x + name.width > transfer.width or name.y + name.height > transfer.height):
            yield f"{transfer.project}: the name box reaches past the edge of the picture"
            break
    apart = labels_apart(job)
    if apart:
        yield (
            f"{apart} of {len(job.transfers)} labels find no room beside their transfers and stand on the last page; "
            "a gap of 4 mm in the shop's “printer” gives each its place"
        )
    elif job.words_at == "apart":
        yield "the ruler, the settings and the cautions find no room on the sheets and stand on the last page"


def _is_about_artwork(problem: Problem, ids: set[str]) -> bool:
    parts = problem.file.split("/")
    named = len(parts) > 2 and parts[0] == "projects" and parts[1] in ids
    return named and problem.severity is Severity.CAUTION and problem.field.startswith("artwork")


__all__ = ["USUAL_PAPER", "Asked", "PictureProblem", "Sheets", "TransferProblem", "sheets_as_data", "sheets_of"]
