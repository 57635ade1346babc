"""Blanks: the undecorated pieces, what they are made of, where they were bought, what their supplier says."""

from __future__ import annotations

from maker_site.records import fields as f
from maker_site.records.base import Part, Record


class Hole(Part):
    """A hole: where its middle is, from the left and the top, and how wide it is."""

    at: f.PlaceOnBlank
    diameter: f.Length


class Lot(Part):
    """One delivery. The same code in a new lot can carry a different coating."""

    date: f.Date | None = None
    lot: f.Text | None = None
    count: f.CountFromOne
    paid: f.Amount | None = None
    """For the whole lot, without delivery."""
    delivery: f.Amount | None = None
    import_charges: f.Amount | None = None
    note: f.Text | None = None


class Sheet(Part):
    """What the supplier's sheet says: a claim, not evidence."""

    temperature: f.TemperatureRange | None = None
    time: f.SecondsRange | None = None
    pressure: f.Pressure | None = None
    face: f.Face | None = None
    pre_press: f.Seconds | None = None
    peel: f.Peel | None = None
    cool: f.Cool | None = None
    dated: f.Date | None = None
    note: f.Text | None = None


class Blank(Record):
    """One kind of blank from one supplier."""

    name: f.Text
    substrate: f.Substrate
    method: f.Method = "sublimation"
    size: f.Size | None = None
    print_area: f.Size | None = None
    """The part that takes a full image; the size where absent."""
    corner_radius: f.Length | None = None
    outline: f.Outline | None = None
    """Of a shape of its own, a path in mm from the top left corner of the size: M L H V C S Q T A Z and figures."""
    holes: tuple[Hole, ...] = ()
    thickness: f.Length | None = None
    bleed: f.Length | None = None
    girth: f.Length | None = None
    """Round the outside at the top."""
    girth_bottom: f.Length | None = None
    height: f.Length | None = None
    handle_gap: f.Length | None = None
    """Along the girth, left free for the handle."""
    supplier: f.Text | None = None
    code: f.Text | None = None
    """The supplier's article number."""
    link: f.WebAddress | None = None
    paid_link: f.YesNo = False
    """The link earns the maker something."""
    bought: tuple[Lot, ...] = ()
    low_stock: f.Count | None = None
    coating: f.Coating | None = None
    coated_side: f.Text | None = None
    """Which side takes the dye, and how to tell."""
    limit: f.Temperature | None = None
    """Never hotter than this."""
    sheet: Sheet | None = None
    care: f.Text | None = None
    """How to wash and keep it; for everybody."""
    food_contact: f.Text | None = None
    """What the blank's maker states in writing; for everybody."""
    note: f.Text | None = None
    """Private."""

    folder_pictures: tuple[str, ...] = ()
    """Pictures beside blank.yaml, scans of the supplier's sheet among them; never public, they are the supplier's."""
