"""The press card: all that is needed at the press, on one side of a small sheet."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import Literal, TypeAlias

from markupsafe import Markup

from maker_site.language import Language, apart, listed, marked, say, say_in, spoken
from maker_site.pages import addresses
from maker_site.pages.marks import NARROW, WIDE, mirror_mark, square_code, stack_drawing, swatch
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
        say(SOURCE_WORDS[point.source]) if point else say("Nothing is known yet"),
        point.reason if point else say(_NOTHING),
        book.wording.evidence(point.evidence) if point and point.evidence else None,
        round(point.time.seconds) if point and point.time else None,
        _mirror_words(remake.mirror),
        None if remake.mirror is None else mirror_mark(mirrored=remake.mirror, size=36),
        tuple(_small_facts(book, remake)),
        next(iter(tries_shown(point, book.pressings_by_project.get(project.id, ()))), None),
        Link(say("Test ladder"), addresses.ladder(remake.blank.id)),
        _stack(remake, "stack", NARROW),
        _stack(remake, "paper-stack", WIDE),
        remake.stack.written,
        tuple(layer.label for layer in remake.stack.layers),
        tuple(Step(_together(each.words), each.seconds) for each in _steps(book, remake, setting)),
        hazards(remake.cautions),
        _last(book, remake),
        square_code(target),
        target,
        words,
        Link(say("The card as a PDF"), addresses.card_paper(project.id)),
    )
    title = say("Press card: {project}", project=project.title)
    return Page(addresses.card(project.id), "workshop/card.html", title, view)


_COOLING = {
    None: marked("Let it cool where nobody touches it."),
    "air": marked("Let it cool in the air, where nobody touches it."),
    "fan": marked("Let it cool before a fan, where nobody touches it."),
    "cold plate": marked("Let it cool on a cold plate, where nobody touches it."),
    "flat": marked("Let it cool lying flat, where nobody touches it."),
    "flat under weight": marked("Let it cool flat under a weight, where nobody touches it."),
    "water": marked("Let it cool in water, where nobody touches it."),
}
_PEELING = {
    None: marked("Gloves. Open slowly, lift straight up."),
    "hot": marked("Gloves. Open slowly, lift straight up. Peel hot."),
    "warm": marked("Gloves. Open slowly, lift straight up. Peel warm."),
    "cold": marked("Gloves. Open slowly, lift straight up. Peel cold."),
}
_PRINTING = {
    None: marked("Print {what} at 100 %."),
    True: marked("Print {what} at 100 %, mirrored."),
    False: marked("Print {what} at 100 %, not mirrored."),
}
"""By whether it is mirrored; None where that is not known."""
_CUTTING = {
    None: marked("Cut {what} at 100 %, and weed."),
    True: marked("Cut {what} at 100 %, mirrored, and weed."),
    False: marked("Cut {what} at 100 %, not mirrored, and weed."),
}
_NOTHING = marked(
    "No pressing, no supplier’s sheet, no like blank and no common practice is known for this blank. Test one."
)


def _mirror_words(mirror: bool | None) -> str:  # noqa: FBT001 - three-valued: yes, no, not known
    if mirror is None:
        return say("Mirror? Films made at home are mirrored, bought ones come ready: look.")
    return say("Mirror the artwork") if mirror else say("Do not mirror")


def _small_facts(book: Notebook, remake: Remake) -> Iterator[Fact]:
    wording = book.wording
    if remake.pre_press:
        yield Fact(say("Pre-press"), wording.one_line(wording.time(remake.pre_press)))
    if remake.peel:
        yield Fact(say("Peel"), say(remake.peel))
    if remake.cool:
        yield Fact(say("Cool"), say(remake.cool))
    if remake.at_once:
        yield Fact(say("At once"), wording.count(remake.at_once))
    if remake.blank.coated_side:
        yield Fact(say("Coated side"), remake.blank.coated_side)
    if remake.limit:
        limit = wording.one_line(wording.temperature(remake.limit.temperature))
        yield Fact(say("Stack bears at most"), say("{limit}: {what}", limit=limit, what=remake.limit.what))


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
        title=say("The stack, from bottom to top"),
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
    files = listed(artwork.file.rpartition("/")[2] for artwork in remake.project.artwork)
    made = _CUTTING if remake.method == "heat-transfer vinyl" else _PRINTING
    yield Step(say(made[remake.mirror], what=files or say_in("what is printed or cut", "the transfer")))
    if setting:
        yield Step(_set_press(book, setting))
    if remake.pre_press:
        seconds = round(remake.pre_press.seconds)
        time = wording.time(remake.pre_press).second
        yield Step(say("Pre-press for {time}; steam escapes sideways.", time=time), seconds)
    layers = say_in("between the layers of a stack", "; ").join(apart(layer.label) for layer in remake.stack.layers)
    yield Step(say("Build the stack from the bottom: {layers}.", layers=layers))
    face = face_words(remake.setting.face) if remake.setting else None
    if face:
        yield Step(face)
    if setting and remake.setting and remake.setting.time:
        press_for = say("Hands clear. Close and press for {time}.", time=setting.time.first)
        yield Step(press_for, round(remake.setting.time.seconds))
    yield Step(say(_PEELING[remake.peel]))
    yield Step(say(_COOLING[remake.cool]))
    yield Step(say("Look it over, count the good ones, write the row in the press log."))


def _set_press(book: Notebook, setting: SettingShown) -> str:
    press = setting.press.text if setting.press else say_in("what is set", "the press")
    temperature = book.wording.one_line(setting.temperature)
    if setting.pressure is None:
        return say("Set {press} to {temperature}; let it settle.", press=press, temperature=temperature)
    return say(
        "Set {press} to {temperature}, {pressure} pressure; let it settle.",
        press=press,
        temperature=temperature,
        pressure=setting.pressure,
    )


def _look_over(remake: Remake) -> str:
    """Return the first step: what to clean off, and which side takes the print where that can be mistaken."""
    blank = remake.blank
    if remake.method != "sublimation":
        return say("Roll the lint off the blank and look it over.")
    if not blank.coated_side:
        return say("Wipe the blank, peel off any protective film, find the side that takes the print.")
    return say(
        "Wipe the blank, peel off any protective film, find the side that takes the print: {side}.",
        side=blank.coated_side,
    )


def _together(words: str) -> str:
    """Return words with each figure kept on one line with its unit."""
    return _figure_and_unit(spoken()).sub("\N{NO-BREAK SPACE}", words)


@cache
def _figure_and_unit(_: Language) -> re.Pattern[str]:
    """Return what finds the space between a figure and its unit, in the language spoken now."""
    patterns = (say("{n} °C"), say("{n} °F"), say("{n} %"), say("{n} s"), say("{n} min"))
    units = "|".join(re.escape(each.format(n="").strip()) for each in patterns)
    return re.compile(rf"(?<=\d) (?=(?:{units})(?!\w))")


def _last(book: Notebook, remake: Remake) -> str | None:
    if remake.last is None:
        return None
    return say(
        "Last pressed {day}: {outcome}.",
        day=book.wording.day(remake.last.date).words,
        outcome=outcome(book, [remake.last]),
    )


def _code(book: Notebook, project: Project) -> tuple[str, str]:
    """Return what the square code holds and what that is: the card at home, else the tutorial, else the card's name."""
    shop = book.workshop.shop
    if shop.workshop_address:
        here = addresses.whole(shop.workshop_address, addresses.card(project.id))
        return here, say("Opens this card in the workshop copy")
    if shop.address and project.share.tutorial:
        there = addresses.whole(shop.address, addresses.tutorial(project.id))
        return there, say("Opens the tutorial in the public copy")
    return addresses.card(project.id), say("Names this card’s page in the workshop copy")
