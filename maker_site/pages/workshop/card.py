"""The press card: all that is needed at the press, on one side of a small sheet."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Literal, TypeAlias

import segno
from markupsafe import Markup

from maker_site.pages import addresses
from maker_site.pages.marks import NARROW, WIDE, mirror_mark, stack_drawing, swatch
from maker_site.pages.marks import Layer as DrawnLayer
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Page
from maker_site.pages.parts import Link
from maker_site.pages.wording import face_words, hazards
from maker_site.pages.workshop.ladders import tries_shown
from maker_site.pages.workshop.pieces import SOURCE_WORDS, outcome, photos_of, setting_of_point
from maker_site.pages.workshop.views import CardPage, Fact, SettingShown, Step
from maker_site.records import Project
from maker_site.workings.remake import Remake
from maker_site.workings.stack import Layer

DrawnKind: TypeAlias = Literal["pad", "protective paper", "cover sheet", "transfer", "blank", "tape", "other"]


def card_page(book: Notebook, project: Project) -> Page:
    """Return cards/ID.html."""
    remake = book.remakes[project.id]
    point = remake.setting
    setting = setting_of_point(book, point) if point else None
    photos = photos_of(book, project)
    target, words = _code(book, project)
    view = CardPage(
        project.id,
        project.title,
        Link(project.title, addresses.project(project.id)),
        project.id,
        remake.blank.name,
        remake.blank.code,
        book.wording.day(project.made),
        swatch(remake.blank.substrate, width=56, height=56),
        photos[0] if photos else None,
        setting,
        SOURCE_WORDS[point.source] if point else "Nothing is known yet",
        point.reason if point else _NOTHING,
        book.wording.evidence(point.evidence) if point and point.evidence else None,
        round(point.time.seconds) if point and point.time else None,
        _mirror_words(remake.mirror),
        None if remake.mirror is None else mirror_mark(mirrored=remake.mirror, size=36),
        tuple(_small_facts(book, remake)),
        next(iter(tries_shown(point, book.pressings_by_project.get(project.id, ()))), None),
        Link("Test ladder", addresses.ladder(remake.blank.id)),
        _stack(remake, "stack", NARROW),
        _stack(remake, "paper-stack", WIDE),
        remake.stack.written,
        tuple(layer.label for layer in remake.stack.layers),
        tuple(Step(_together(each.words), each.seconds) for each in _steps(book, remake, setting)),
        hazards(remake.cautions),
        _last(book, remake),
        Markup(segno.make_qr(target, error="m").svg_inline(border=4, scale=4, omitsize=True, svgclass="square-code")),
        target,
        words,
        Link("The card as a PDF", addresses.card_paper(project.id)),
    )
    return Page(addresses.card(project.id), "workshop/card.html", f"Press card: {project.title}", view)


_STAY = "\N{NO-BREAK SPACE}"
_FIGURE_AND_UNIT = re.compile(r"(?<=\d) (?=°C|°F|%|s\b|min\b)")
_COOLING = {
    "air": " in the air,",
    "fan": " before a fan,",
    "cold plate": " on a cold plate,",
    "flat": " lying flat,",
    "flat under weight": " flat under a weight,",
    "water": " in water,",
}

_NOTHING = "No pressing, no supplier’s sheet, no like blank and no common practice is known for this blank. Test one."


def _mirror_words(mirror: bool | None) -> str:  # noqa: FBT001 - three-valued: yes, no, not known
    if mirror is None:
        return "Mirror? Films made at home are mirrored, bought ones come ready: look."
    return "Mirror the artwork" if mirror else "Do not mirror"


def _small_facts(book: Notebook, remake: Remake) -> Iterator[Fact]:
    wording = book.wording
    if remake.pre_press:
        yield Fact("Pre-press", wording.one_line(wording.time(remake.pre_press)))
    if remake.peel:
        yield Fact("Peel", remake.peel)
    if remake.cool:
        yield Fact("Cool", remake.cool)
    if remake.at_once:
        yield Fact("At once", str(remake.at_once))
    if remake.blank.coated_side:
        yield Fact("Coated side", remake.blank.coated_side)
    if remake.limit:
        limit = wording.one_line(wording.temperature(remake.limit.temperature))
        yield Fact("Stack bears at most", f"{limit}: {remake.limit.what}")


def _stack(remake: Remake, prefix: str, width: int) -> Markup:
    face = remake.setting.face if remake.setting else None
    wrapped = face == "wrapped" or (face is None and remake.press is not None and remake.press.kind == "mug")
    printed: Literal["up", "down"] = "up" if face == "print up" else "down"
    layers = [
        DrawnLayer(
            _drawn_kind(layer),
            layer.label,
            remake.blank.substrate if layer.kind == "blank" else _pad_material(layer),
            printed if layer.kind == "transfer" else None,
        )
        for layer in remake.stack.layers
    ]
    return stack_drawing(
        layers,
        heat="around" if wrapped else "above",
        title="The stack, from bottom to top",
        prefix=prefix,
        width=width,
    )


def _drawn_kind(layer: Layer) -> DrawnKind:
    match layer.kind:
        case "pad" | "protective paper" | "cover sheet" | "transfer" | "blank" | "tape":
            return layer.kind
    return "other"


def _pad_material(layer: Layer) -> str | None:
    return (layer.material or "felt").lower() if layer.kind == "pad" else None


def _steps(book: Notebook, remake: Remake, setting: SettingShown | None) -> Iterator[Step]:
    wording = book.wording
    yield Step(_look_over(remake))
    files = ", ".join(artwork.file.rpartition("/")[2] for artwork in remake.project.artwork)
    name = f" {files}" if files else " the transfer"
    mirrored = {True: ", mirrored", False: ", not mirrored", None: ""}[remake.mirror]
    verb, after = ("Cut", ", and weed") if remake.method == "heat-transfer vinyl" else ("Print", "")
    yield Step(f"{verb}{name} at 100 %{mirrored}{after}.")
    if setting:
        press = setting.press.text if setting.press else "the press"
        pressure = f", {setting.pressure} pressure" if setting.pressure else ""
        yield Step(
            f"Set {press} to {setting.temperature.first} ({setting.temperature.second}){pressure}; let it settle."
        )
    if remake.pre_press:
        seconds = round(remake.pre_press.seconds)
        yield Step(f"Pre-press for {wording.time(remake.pre_press).second}; steam escapes sideways.", seconds)
    layers = "; ".join(layer.label for layer in remake.stack.layers)
    yield Step(f"Build the stack from the bottom: {layers}.")
    face = face_words(remake.setting.face) if remake.setting else None
    if face:
        yield Step(face)
    if setting and remake.setting and remake.setting.time:
        yield Step(f"Hands clear. Close and press for {setting.time.first}.", round(remake.setting.time.seconds))
    peel = f" Peel {remake.peel}." if remake.peel else ""
    yield Step(f"Gloves. Open slowly, lift straight up.{peel}")
    yield Step(f"Let it cool{_COOLING.get(remake.cool or '', '')} where nobody touches it.")
    yield Step("Look it over, count the good ones, write the row in the press log.")


def _look_over(remake: Remake) -> str:
    """Return the first step: what to clean off, and which side takes the print where that can be mistaken."""
    blank = remake.blank
    if remake.method != "sublimation":
        return "Roll the lint off the blank and look it over."
    coated = f": {blank.coated_side}" if blank.coated_side else ""
    return f"Wipe the blank, peel off any protective film, find the side that takes the print{coated}."


def _together(words: str) -> str:
    """Return words with each figure kept on one line with its unit."""
    return _FIGURE_AND_UNIT.sub(_STAY, words)


def _last(book: Notebook, remake: Remake) -> str | None:
    if remake.last is None:
        return None
    return f"Last pressed {book.wording.day(remake.last.date).words}: {outcome(book, [remake.last])}."


def _code(book: Notebook, project: Project) -> tuple[str, str]:
    """Return what the square code holds and what that is: the card at home, else the tutorial, else the card's name."""
    shop = book.workshop.shop
    if shop.workshop_address:
        return addresses.whole(
            shop.workshop_address, addresses.card(project.id)
        ), "Opens this card in the workshop copy"
    if shop.address and project.share.tutorial:
        return addresses.whole(shop.address, addresses.tutorial(project.id)), "Opens the tutorial in the public copy"
    return addresses.card(project.id), "Names this card’s page in the workshop copy"
