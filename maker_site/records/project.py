"""Projects: what was made, on which blank, from which artwork, and what of it is shared."""

from __future__ import annotations

from pydantic import ValidationInfo, field_validator

from maker_site.records import fields as f
from maker_site.records.base import Part, Record


class NameBox(Part):
    """The place that artwork keeps for a name. Private, as the artwork is."""

    at: f.PlaceOnBlank
    """Its upper left corner, from the left and the upper edge of the finished picture, bleed not counted."""
    size: f.Size
    """The letters are as large as they can be in it."""
    font: f.Text | None = None
    """The name of a font that the typesetter has, or one out of content/fonts/."""
    colour: f.Colour = "000000"
    outline: f.Colour | None = None
    """The colour of a line round the letters."""
    outline_width: f.Length | None = None


class Artwork(Part):
    """A design file, right way round."""

    file: f.InnerPath
    """Inside the project's folder."""
    bleed: f.Length | None = None
    name_box: NameBox | None = None
    """Where a name goes, one on each transfer."""
    licence: f.Text | None = None
    """What its owner allows."""
    note: f.Text | None = None


class Photo(Part):
    """A photo of the piece. What is not shared stays in the workshop copy."""

    file: f.InnerPath
    text: f.Text | None = None
    """What the picture shows, for those who can't see it."""
    caption: f.Text | None = None
    share: f.YesNo = False


class Use(Part):
    """A supply beside ink, transfer paper and stack, and how much of it one sold item takes."""

    supply: f.Text
    use: f.Measure | None = None


class Work(Part):
    """Minutes: design once for the project, press and finish for what is sold as one."""

    design: f.Minutes | None = None
    press: f.Minutes | None = None
    finish: f.Minutes | None = None


class Order(Part):
    """Who asked, until when, what was paid, which names. Private."""

    for_: f.Text | None = None
    due: f.Date | None = None
    paid: f.Amount | None = None
    names: f.TextList = ()
    note: f.Text | None = None


class MenuEntry(Part):
    """How the piece stands on the menu."""

    section: f.Text | None = None
    name: f.Text | None = None
    """The title where absent."""
    line: f.Text | None = None
    """A short line under the name."""
    price: f.Amount | None = None
    options: f.TextList = ()
    photo: f.InnerPath | None = None
    """One of the project's shared photos; the first of them where absent."""
    gift: f.YesNo = False
    """Put among the gift ideas under the project's occasions, even where there is no tutorial."""


class Share(Part):
    """What crosses to the public copy. Nothing does that is not said here."""

    tutorial: f.YesNo = False
    setting: f.YesNo = False
    supplies: f.YesNo = False
    published: f.Date | None = None
    updated: f.Date | None = None
    menu: MenuEntry | None = None


class Project(Record):
    """A title and a blank are enough for a first one."""

    title: f.Text
    made: f.Date | None = None
    blank: f.Text
    method: f.Method | None = None
    """Where it differs from the blank's."""
    pieces: f.CountFromOne = 1
    """Pieces in what is sold or given as one."""
    occasions: f.TextList = ()
    summary: f.Text | None = None
    """One line for everybody."""
    difficulty: f.Difficulty | None = None
    time_needed: f.Text | None = None
    artwork: tuple[Artwork, ...] = ()
    photos: tuple[Photo, ...] = ()
    supplies: tuple[Use, ...] = ()
    stack: f.LayerList = ()
    """Bottom to top: words or supplies."""
    minutes: Work = Work()
    at_once: f.CountFromOne | None = None
    batch: f.CountFromOne | None = None
    video: f.WebAddress | None = None
    video_still: f.InnerPath | None = None
    """One of the project's shared photos, to stand for the video; the cover where absent."""
    tools: f.TextList = ()
    """What is used and not used up; for everybody, with the tutorial."""
    for_: f.Text | None = None
    """Private."""
    order: Order | None = None
    note: f.Text | None = None
    """Private."""
    care: f.Text | None = None
    was: f.TextList = ()
    """Ids it had before; pages that lead on stay at their addresses. Public once the tutorial is shared."""
    share: Share = Share()

    tutorial: str | None = None
    """The write-up, Markdown, out of tutorial.md, with the file's own lines."""
    folder_photos: tuple[str, ...] = ()
    """Photos in photos/ that the record does not list, by path inside the project's folder."""

    @field_validator("folder_photos", mode="after")
    @classmethod
    def _only_unlisted(cls, found: tuple[str, ...], info: ValidationInfo) -> tuple[str, ...]:
        listed = {photo.file for photo in info.data.get("photos", ())}
        return tuple(file for file in found if file not in listed)
