"""A tutorial: what a project's record and write-up say to everybody."""

from __future__ import annotations

from collections.abc import Mapping
from urllib.parse import urlsplit

from markupsafe import Markup

from maker_site.language import marked, say
from maker_site.pages import addresses
from maker_site.pages.marks import swatch
from maker_site.pages.menu import shared_photos
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.parts import Link, Picture
from maker_site.pages.picture_html import figure_html
from maker_site.pages.public.lists import material_address, occasion_links
from maker_site.pages.public.order import Order
from maker_site.pages.public.paid import DISCLOSURE, with_paid_links
from maker_site.pages.public.related import related
from maker_site.pages.public.steps import title_and_rest, write_up
from maker_site.pages.public.views import PublicTile, SharedSetting, SharedSupply, Tutorial, Video
from maker_site.pages.stand_in import blank_drawing
from maker_site.pages.wording import face_words, hazards
from maker_site.pages.writing import written
from maker_site.records import Project
from maker_site.records.words import difficulty_said

_NAMES_A_SUPPLY = "limit"
_CAME_OUT: Mapping[str | None, str] = {
    None: marked("{good} of {pressed} came out well on our press."),
    "flat clamshell": marked("{good} of {pressed} came out well on our flat clamshell press."),
    "flat swing-away": marked("{good} of {pressed} came out well on our flat swing-away press."),
    "mug": marked("{good} of {pressed} came out well on our mug press."),
    "cap": marked("{good} of {pressed} came out well on our cap press."),
    "hand press": marked("{good} of {pressed} came out well on our hand press."),
    "oven": marked("{good} of {pressed} came out well on our oven press."),
}
"""By the kind of the press."""
_YOURS_WILL_DIFFER = marked("Yours will differ: start from your own supplier’s sheet, and test one.")
IN_TEXT = "(min-width: 52rem) 640px, (min-resolution: 2.5dppx) 66vw, calc(100vw - 32px)"
"""How wide the theme lays a picture of a text."""


def tutorial_link(project: Project) -> Link:
    """Return the way to a project's tutorial."""
    return Link(project.title, addresses.tutorial(project.id))


def tile(book: Notebook, project: Project) -> PublicTile:
    """Return a tutorial as it stands in a grid."""
    picture, stand_in = _cover(book, project)
    substrate = book.workshop.blanks[project.blank].substrate
    return PublicTile(
        tutorial_link(project),
        say(substrate),
        swatch(substrate, width=28, height=28),
        project.summary,
        project.difficulty and difficulty_said(project.difficulty),
        book.wording.day(project.share.published),
        picture,
        stand_in,
    )


def tutorial_page(book: Notebook, project: Project, order: Order) -> Page:
    """Return a tutorial's page."""
    here = addresses.tutorial(project.id)
    projects = book.workshop.projects
    place = order.tutorials[project.id]
    blank = book.workshop.blanks[project.blank]
    photos = shared_photos(book, project)
    cover, stand_in = _cover(book, project)
    _, words = title_and_rest(book.write_up[project.id] or "")
    text, used = written(words, photos.get, lambda picture: figure_html(picture, here, IN_TEXT))
    text, pays = with_paid_links(text, order.paid_links)
    parted = write_up(text, addresses.relative(here, cover.fallback.address) if cover else None)
    supplies = _supplies(book, project) if project.share.supplies else ()
    view = Tutorial(
        project.title,
        project.summary,
        Link(say(blank.substrate), material_address(blank.substrate)),
        swatch(blank.substrate, width=184, height=56),
        say(book.workshop.method_of(project)),
        project.difficulty and difficulty_said(project.difficulty),
        project.time_needed,
        book.wording.day(project.share.published),
        book.wording.day(project.share.updated),
        occasion_links(project.occasions),
        cover,
        stand_in,
        tuple(picture for file, picture in photos.items() if file not in used and picture is not cover),
        parted.opening,
        parted.steps,
        _setting(book, project) if project.share.setting else None,
        hazards(tuple(each for each in book.remakes[project.id].cautions if each.kind != _NAMES_A_SUPPLY)),
        supplies,
        project.tools,
        say(DISCLOSURE) if pays or any(each.link and each.link.paid for each in supplies) else None,
        tuple(words for words in (project.care or blank.care, blank.food_contact) if words),
        _video(project, photos, cover),
        tutorial_link(projects[place.newer]) if place.newer else None,
        tutorial_link(projects[place.older]) if place.older else None,
        tuple(tile(book, projects[each]) for each in related(project, blank.substrate, order.newest)),
    )
    return Page(
        here,
        "public/tutorial.html",
        project.title,
        view,
        door="tutorials/index.html",
        description=project.summary,
    )


def _cover(book: Notebook, project: Project) -> tuple[Picture | None, Markup | None]:
    photos = shared_photos(book, project)
    if photos:
        return next(iter(photos.values())), None
    return None, blank_drawing(book, project.blank)


def _video(project: Project, photos: Mapping[str, Picture], cover: Picture | None) -> Video | None:
    if not project.video:
        return None
    still = photos.get(project.video_still or "") or cover
    return Video(Link(say("Watch the video"), project.video), urlsplit(project.video).hostname or "", still)


def _setting(book: Notebook, project: Project) -> SharedSetting | None:
    """Return the maker's own proven setting; a supplier's sheet is theirs and never shared."""
    remake = book.remakes[project.id]
    point = remake.setting
    if point is None or point.evidence is None or point.true is None or point.time is None:
        return None
    wording = book.wording
    found = point.evidence
    counted = {"good": wording.count(found.good), "pressed": wording.count(found.pressed)}
    kind = remake.press.kind if remake.press else None
    return SharedSetting(
        wording.temperature(point.true),
        wording.time(point.time),
        say(point.pressure.word) if point.pressure and point.pressure.word else None,
        face_words(point.face),
        say(remake.blank.substrate),
        say(kind) if kind else None,
        f"{say(_CAME_OUT[kind], **counted)} {say(_YOURS_WILL_DIFFER)}",
    )


def _supplies(book: Notebook, project: Project) -> tuple[SharedSupply, ...]:
    """Return what a reader needs: the blank and the project's supplies, with the links that the maker gave."""
    blank = book.workshop.blanks[project.blank]
    found = [SharedSupply(blank.name, book.wording.count(project.pieces), _shop_link(blank.link, paid=blank.paid_link))]
    for use in project.supplies:
        supply = book.workshop.supplies[use.supply]
        amount = use.use.typed if use.use else None
        found.append(SharedSupply(supply.name, amount, _shop_link(supply.link, paid=supply.paid_link)))
    return tuple(found)


def _shop_link(address: str | None, *, paid: bool) -> Link | None:
    return Link(say("where to find it"), address, paid=paid) if address else None
