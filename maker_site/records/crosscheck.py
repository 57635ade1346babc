"""Does what a record names exist? Across records, once all of them are read.

Inner module of the records room.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from maker_site.records import words
from maker_site.records.article import Article
from maker_site.records.base import Origin, Record
from maker_site.records.content_folder import RECORD_ID, ContentFolder
from maker_site.records.meanings import relative_path
from maker_site.records.pictures_in_text import pictures_in_text
from maker_site.records.pressing import Pressing
from maker_site.records.problems import NotReadable, Problem, Severity, listed, nearest, quoted
from maker_site.records.project import Project
from maker_site.records.remembered import digest_of
from maker_site.records.shop import Shop
from maker_site.records.workshop import Workshop
from maker_site.records.yaml_text import Place

_MOST_ADVISED: Final = 100
"""Looking a name up among a thousand near ones takes a while; who has a hundred wrong names has another trouble."""


def crosscheck(
    workshop: Workshop,
    folder: ContentFolder,
    failed: set[str],
    logs: Mapping[str, Sequence[Pressing]] | None = None,
) -> list[Problem]:
    """Return the problems between records; a record whose own file `failed` is not called missing.

    `logs` are the rows of each file of the log, so that those of a file that nothing happened to are not gone through.
    """
    known = _Known(workshop, failed)
    memory = folder.remembered
    names, money = digest_of(*map(sorted, known.ids)), (workshop.shop.currency, workshop.shop.locale)
    found: list[Problem] = []
    for project in workshop.projects.values():

        def of_project(project: Project = project) -> None:
            found.extend(_project(project, known, folder))
            found.extend(_foreign(project, workshop.shop))

        memory.unit(f"projects/{project.id}", (project, names, money), found, of_project, use="names")
    for record in (workshop.shop, *workshop.blanks.values(), *workshop.supplies.values()):

        def of_record(record: Record = record) -> None:
            found.extend(_foreign(record, workshop.shop))

        memory.unit(record.origin.file, (record, money), found, of_record, use="names")
    lots = {blank.id: tuple(lot.lot for lot in blank.bought if lot.lot) for blank in workshop.blanks.values()}
    for file, rows in (logs if logs is not None else {"": workshop.pressings}).items():

        def of_rows(rows: Sequence[Pressing] = rows) -> frozenset[str]:
            for pressing in rows:
                found.extend(_pressing(pressing, known, folder))
            return frozenset(f"projects/{row.project}/{row.photo}" for row in rows if row.project and row.photo)

        memory.unit(file, (rows, names, lots), found, of_rows, use="names", watched=lambda photos: photos)

    def of_articles() -> None:
        for article in workshop.articles.values():
            found.extend(_pictures(article.text, f"articles/{article.id}.md", folder))

    memory.unit("articles", workshop.articles, found, of_articles, use="names")
    found += _old_ids("project", {each.id: (each.origin, each.was) for each in workshop.projects.values()})
    found += _old_ids("article", {each.id: (_head(each), each.head.was) for each in workshop.articles.values()})
    return found


class _Known:
    """The ids that a record may name, those whose files could not be read included."""

    def __init__(self, workshop: Workshop, failed: set[str]) -> None:
        self.workshop = workshop
        supplies = {*workshop.supplies, *_ids_of(failed, "supplies")}
        self._ids = {
            "blank": {*workshop.blanks, *_ids_of(failed, "blanks")},
            "press": {*workshop.presses, *_ids_of(failed, "presses")},
            "project": {*workshop.projects, *_ids_of(failed, "projects")},
            "supply": supplies,
            "layer or supply": {*words.STACK_LAYERS, *supplies},
        }
        self.ids = tuple(self._ids.values())
        self._advice: dict[tuple[str, str], str] = {}

    def named(self, origin: Origin, place: Place, name: str, what: str) -> Iterator[Problem]:
        """Find that there is no `what` of that name."""
        if name not in self._ids[what]:
            yield origin.problem(place, f"there is no {what} {quoted(name)}{self._nearest(what, name)}")

    def _nearest(self, what: str, name: str) -> str:
        if (what, name) not in self._advice:
            near = nearest(name, sorted(self._ids[what])) if len(self._advice) < _MOST_ADVISED else ""
            self._advice[what, name] = near or "; add it, or correct the name"
        return self._advice[what, name]


def _ids_of(files: set[str], folder: str) -> set[str]:
    """Return the ids of a folder's records by their files: ``blanks/ID.yaml`` or ``blanks/ID/blank.yaml``."""
    parts = [file.split("/") for file in files]
    return {each[1].removesuffix(".yaml") for each in parts if each[0] == folder and len(each) > 1}


def _pictures(text: str, file: str, folder: ContentFolder) -> Iterator[Problem]:
    """Find the pictures of a Markdown text that are not there; those elsewhere on the web are not looked for."""
    home = (folder.root / file).parent
    for number, picture in pictures_in_text(text):
        try:
            sentence = folder.inner_file(home, relative_path(picture))
        except NotReadable as refused:
            sentence = str(refused)
        if sentence is not None:
            yield Problem(file, number, "", sentence)


def _project(project: Project, known: _Known, folder: ContentFolder) -> Iterator[Problem]:
    home = folder.root / "projects" / project.id
    origin = project.origin
    yield from known.named(origin, ("blank",), project.blank, "blank")
    for index, use in enumerate(project.supplies):
        yield from known.named(origin, ("supplies", index, "supply"), use.supply, "supply")
    for index, layer in enumerate(project.stack):
        yield from known.named(origin, ("stack", index), layer, "layer or supply")
    for index, artwork in enumerate(project.artwork):
        if (sentence := folder.inner_file(home, artwork.file)) is not None:
            yield origin.problem(("artwork", index, "file"), sentence)
    yield from _photos(project, folder)
    yield from _pictures(project.tutorial or "", f"projects/{project.id}/tutorial.md", folder)
    if project.share.tutorial and not (project.tutorial or "").strip():
        yield origin.problem(
            ("share", "tutorial"),
            "the tutorial is shared, but there is no tutorial.md with text in it; its page has no steps yet",
            Severity.CAUTION,
        )
    if project.share.tutorial and project.share.published is None:
        yield origin.problem(
            ("share", "tutorial"),
            "the tutorial is shared without a day, so it is in no feed and under no month; "
            "write published: and a day like 2026-05-01 under share",
            Severity.CAUTION,
        )


def _photos(project: Project, folder: ContentFolder) -> Iterator[Problem]:
    home = folder.root / "projects" / project.id
    seen: set[str] = set()
    for index, photo in enumerate(project.photos):
        place = ("photos", index, "file")
        if photo.file in seen:
            yield project.origin.problem(place, f"the photo “{photo.file}” is listed twice", Severity.CAUTION)
        seen.add(photo.file)
        if (sentence := folder.inner_file(home, photo.file)) is not None:
            yield project.origin.problem(place, sentence)
        elif photo.share and not photo.file.startswith("photos/"):
            yield project.origin.problem(
                place, f"“{photo.file}” is not in photos/; only photos are shared, never artwork: copy it there first"
            )
        elif photo.share and not photo.text:
            yield project.origin.problem(
                ("photos", index),
                f"the shared photo “{photo.file}” has no “text” for those who can't see it, "
                "so the public copy leaves it out; write what it shows",
                Severity.CAUTION,
            )
    for inner in project.folder_photos:
        if not folder.stays_inside(home / inner):
            yield Problem(
                f"projects/{project.id}/{inner}",
                0,
                "",
                "this is a link that leaves the content folder; copy the photo in instead",
            )
    menu = project.share.menu
    shared = {photo.file for photo in project.photos if photo.share}
    chosen: tuple[tuple[Place, str | None], ...] = (
        (("share", "menu", "photo"), menu.photo if menu else None),
        (("video still",), project.video_still),
    )
    for where, file in chosen:
        if file and file not in shared:
            yield project.origin.problem(
                where, f"“{file}” is not a shared photo of this project{nearest(file, shared)}"
            )


def _head(article: Article) -> Origin:
    """Return where an article's fields are written."""
    return Origin(f"articles/{article.id}.yaml")


def _old_ids(what: str, records: Mapping[str, tuple[Origin, tuple[str, ...]]]) -> Iterator[Problem]:
    """Find ids from before that are no ids, that a record has now, or that two records say they had."""
    had: dict[str, str] = {}
    for record_id, (origin, was) in records.items():
        for index, old in enumerate(was):
            place = ("was", index)
            if not RECORD_ID.fullmatch(old) or old.lower() == "index":
                yield origin.problem(place, f"{quoted(old)} can't have been a name; write letters, digits, - and _")
            elif old in records:
                yield origin.problem(place, f"{quoted(old)} is a {what} of its own, so its address is taken")
            elif had.setdefault(old, record_id) != record_id:
                yield origin.problem(place, f"{quoted(old)} is said of {had[old]} too; one address leads to one {what}")


def _pressing(pressing: Pressing, known: _Known, folder: ContentFolder) -> Iterator[Problem]:
    origin = pressing.origin
    yield from known.named(origin, ("blank",), pressing.blank, "blank")
    yield from known.named(origin, ("press",), pressing.press, "press")
    if pressing.project:
        yield from known.named(origin, ("project",), pressing.project, "project")
    for layer in pressing.stack:
        yield from known.named(origin, ("stack",), layer, "layer or supply")
    if pressing.photo and pressing.project and pressing.project in known.workshop.projects:
        home = folder.root / "projects" / pressing.project
        if (sentence := folder.inner_file(home, pressing.photo)) is not None:
            yield origin.problem(("photo",), sentence)
    if pressing.temperature.celsius > words.HOTTEST_C:
        yield origin.problem(
            ("temperature",),
            f"{quoted(pressing.temperature.typed)} is hotter than anything pressed; is it in F, or a figure too long?",
            Severity.CAUTION,
        )
    if pressing.face in words.UNCLEAR_FACES:
        yield origin.problem(
            ("face",),
            f"“{pressing.face}” is used both ways; write print up (the blank lies face down) or print down",
            Severity.CAUTION,
        )
    for defect in pressing.defects:
        if defect in words.UNCLEAR_DEFECTS:
            yield origin.problem(
                ("defects",),
                f"“{defect}” hides several faults: {words.UNCLEAR_DEFECTS[defect]}; write the one it was",
                Severity.CAUTION,
            )
    yield from _lot(pressing, known.workshop)


def _lot(pressing: Pressing, workshop: Workshop) -> Iterator[Problem]:
    blank = workshop.blanks.get(pressing.blank)
    if not pressing.lot or blank is None:
        return
    lots = [lot.lot for lot in blank.bought if lot.lot]
    if lots and pressing.lot not in lots:
        yield pressing.origin.problem(
            ("lot",),
            f"no lot {quoted(pressing.lot)} of {blank.id} was bought"
            + (nearest(pressing.lot, lots) or f"; known are {listed(lots)}"),
            Severity.CAUTION,
        )


def _foreign(record: Record, shop: Shop) -> Iterator[Problem]:
    """Find amounts written in another currency than the shop's; no rate of exchange is known here."""
    accepted: set[str] = set()
    for place, amount in record.amounts():
        if amount.currency is None or amount.currency == shop.currency:
            continue
        accepted = accepted or _signs_of(shop)
        if amount.currency not in accepted:
            yield record.origin.problem(
                place,
                f"{quoted(amount.typed)} is not in the shop's currency; write the amount in {shop.currency}",
            )


def _signs_of(shop: Shop) -> set[str]:
    from babel.numbers import get_currency_symbol  # late: asked only where a sign stands beside an amount

    return {get_currency_symbol(shop.currency, locale=locale) for locale in (shop.locale, "en")}
