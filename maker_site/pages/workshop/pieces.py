"""Pieces that several pages of the workshop copy are built of."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from markupsafe import Markup

from maker_site.language import listed, marked, say, say_n
from maker_site.pages import addresses
from maker_site.pages.marks import face_mark, interval_bar, swatch
from maker_site.pages.notebook import Notebook
from maker_site.pages.parts import Link, Picture
from maker_site.pages.pictures import picture_at
from maker_site.pages.wording import face_words
from maker_site.pages.workshop.proofs import stand_in
from maker_site.pages.workshop.views import (
    LogRow,
    SettingRow,
    SettingShown,
    SheetShown,
    StartShown,
    Tile,
)
from maker_site.records import Blank, Pressing, Project
from maker_site.workings.calibration import Footing
from maker_site.workings.evidence import Evidence
from maker_site.workings.starting_point import Source, StartingPoint

SOURCE_WORDS = {
    Source.OWN: marked("Your own pressings"),
    Source.SHEET: marked("The supplier’s sheet"),
    Source.RELATIVE: marked("A like blank"),
    Source.COMMON: marked("Common practice"),
}

BAND_WIDTH, BAND_HEIGHT = 184, 56
"""Of the hatching in a page's stub, in pixels."""


def blank_link(book: Notebook, blank_id: str) -> Link:
    """Return the way to a blank's page."""
    return Link(book.workshop.blanks[blank_id].name, addresses.blank(blank_id))


def press_link(book: Notebook, press_id: str) -> Link:
    """Return the way to a press's page."""
    return Link(book.workshop.presses[press_id].name, addresses.press(press_id))


def project_link(book: Notebook, project_id: str) -> Link:
    """Return the way to a project's page."""
    return Link(book.workshop.projects[project_id].title, addresses.project(project_id))


def substrate_link(substrate: str) -> Link:
    """Return the way to a substrate's settings."""
    return Link(say(substrate), addresses.substrate(substrate))


def photos_of(book: Notebook, project: Project) -> tuple[Picture, ...]:
    """Return all photos of a project, the listed ones in their order, then the others of its folder."""
    untold = say("Photo of {project}", project=project.title)
    named = [(photo.file, photo.text or untold, photo.caption) for photo in project.photos]
    known = {file for file, _, _ in named}
    others = [(file, untold, None) for file in project.folder_photos if file not in known]
    found = [
        picture_at(book.pictures, f"projects/{project.id}/{file}", text, caption)
        for file, text, caption in [*named, *others]
    ]
    return tuple(each for each in found if each)


def tile(book: Notebook, project: Project, here: str) -> Tile:
    """Return a project for a grid on the page `here`."""
    blank = book.workshop.blanks[project.blank]
    photos = photos_of(book, project)
    return Tile(
        Link(project.title, addresses.project(project.id)),
        Link(say("Press card"), addresses.card(project.id)),
        blank.name,
        say(blank.substrate),
        say(book.workshop.method_of(project)),
        book.wording.day(project.made),
        project.occasions,
        photos[0] if photos else None,
        None if photos else stand_in(book, project, here),
        swatch(blank.substrate),
        outcome(book, book.pressings_by_project.get(project.id, ())),
    )


def outcome(book: Notebook, rows: Sequence[Pressing]) -> str | None:
    """Return ``24 of 25 good`` for pressings, or None for none."""
    pressed = sum(row.pressed for row in rows)
    if not pressed:
        return None
    return book.wording.good_of(sum(row.good for row in rows), pressed)


def setting_of_evidence(book: Notebook, each: Evidence) -> SettingShown:
    """Return the setting behind counted evidence, in words."""
    setting = each.setting
    wording = book.wording
    known = setting.footing is not Footing.NONE
    return SettingShown(
        wording.temperature(setting.dial),
        wording.temperature(setting.true) if known else None,
        footing_words(setting.footing),
        wording.time(setting.time),
        wording.pressure(setting.pressure),
        setting.face and say(setting.face),
        face_words(setting.face),
        face_drawing(setting.face),
        press_link(book, setting.press),
    )


def setting_of_point(book: Notebook, point: StartingPoint) -> SettingShown | None:
    """Return a starting point's setting in words, or None where temperature or time is not known."""
    if point.true is None or point.time is None:
        return None
    wording = book.wording
    dial = point.dial
    known = dial is not None and dial.footing is not Footing.NONE
    return SettingShown(
        wording.temperature(dial.temperature if dial else point.true),
        wording.temperature(point.true) if known else None,
        footing_words(dial.footing if dial else None),
        wording.time(point.time),
        wording.pressure(point.pressure),
        point.face and say(point.face),
        face_words(point.face),
        face_drawing(point.face),
        press_link(book, point.press) if point.press else None,
    )


def footing_words(footing: Footing | None) -> str | None:
    """Return what to say where the platen's temperature is a guess."""
    if footing is Footing.BEYOND:
        return say("Beyond this press’s readings: the nearest offset is taken to hold, a guess.")
    if footing is Footing.NONE:
        return say("This press has no readings: the dial is taken at its word.")
    return None


def face_drawing(face: str | None) -> Markup | None:
    """Return the mark of a face, or None where it is not clear."""
    match face:
        case "print up" | "print down" | "wrapped":
            return face_mark(face, size=36)
    return None


def setting_row(book: Notebook, each: Evidence, *, best: bool) -> SettingRow:
    """Return a setting with its evidence and the projects it was used for, as it stands in a list."""
    bar = interval_bar(each.interval.low, each.interval.high, each.good / each.pressed, bare=True)
    return SettingRow(
        setting_of_evidence(book, each),
        replace(book.wording.evidence(each), bar=bar),
        tuple(project_link(book, project) for project in each.projects if project in book.workshop.projects),
        best,
    )


def start_shown(book: Notebook, point: StartingPoint) -> StartShown:
    """Return a starting point with its reason."""
    wording = book.wording
    return StartShown(
        point.source.value,
        say(SOURCE_WORDS[point.source]),
        point.reason,
        setting_of_point(book, point),
        wording.temperature_range(point.temperature_range) if point.temperature_range else None,
        wording.time_range(point.time_range) if point.time_range else None,
        wording.evidence(point.evidence) if point.evidence else None,
    )


def sheet_shown(book: Notebook, blank: Blank) -> SheetShown | None:
    """Return the supplier's sheet in words, or None where there is none."""
    sheet = blank.sheet
    if sheet is None:
        return None
    wording = book.wording
    return SheetShown(
        wording.temperature_range(sheet.temperature) if sheet.temperature else None,
        wording.time_range(sheet.time) if sheet.time else None,
        wording.pressure(sheet.pressure),
        sheet.face and say(sheet.face),
        wording.one_line(wording.time(sheet.pre_press)) if sheet.pre_press else None,
        sheet.peel and say(sheet.peel),
        sheet.cool and say(sheet.cool),
        wording.day(sheet.dated),
        sheet.note,
        blank.supplier,
    )


def log_row(book: Notebook, row: Pressing) -> LogRow:
    """Return one pressing in words."""
    wording = book.wording
    day = wording.day(row.date)
    parts = [
        wording.one_line(wording.temperature(row.temperature)),
        wording.time(row.time).first,
        wording.pressure(row.pressure),
        row.face and say(row.face),
    ]
    photo = f"projects/{row.project}/{row.photo}" if row.project and row.photo else None
    return LogRow(
        day,
        blank_link(book, row.blank),
        press_link(book, row.press),
        project_link(book, row.project) if row.project else None,
        listed(part for part in parts if part),
        row.lot,
        row.pressed,
        row.good,
        tuple(map(say, row.defects)),
        row.note,
        picture_at(book.pictures, photo, say("Result of {day}", day=day.words)) if photo else None,
    )


def log_total(book: Notebook, rows: Sequence[Pressing]) -> str | None:
    """Return ``46 of 50 good in 12 pressings``."""
    said = outcome(book, rows)
    if said is None:
        return None
    return say_n(
        "{good} in {n} pressing", "{good} in {n} pressings", len(rows), good=said, n=book.wording.count(len(rows))
    )
