"""The shop: its name, its money, its units, its rates, what customers are told."""

from __future__ import annotations

from typing import Annotated

from maker_site.records import fields as f
from maker_site.records.base import Part, Record


class Units(Part):
    """What a bare number means, and which unit is shown first."""

    temperature: f.TemperatureUnit = "C"
    length: f.LengthUnit = "mm"
    pressure: f.PressureUnit = "bar"


class Fee(Part):
    """What a selling place keeps of each sale."""

    percent: f.Share | None = None
    fixed: f.Amount | None = None


class Tax(Part):
    """Sales tax: its rate, and whether the prices that are typed hold it already."""

    rate: f.Share
    included: f.YesNo = True


class Printer(Part):
    """What the printer leaves bare, the gap kept between transfers, the pixels an inch that are wanted."""

    margin: f.Length | None = None
    gap: f.Length | None = None
    ppi: f.CountFromOne = 300


class Shop(Record):
    """The one record that a workshop can't be without."""

    name: f.Text
    currency: Annotated[str, f.currency_code]
    """By ISO 4217."""
    locale: Annotated[str, f.locale_name] = "en_GB"
    """By CLDR: how dates, numbers and money are written."""
    units: Units = Units()
    line: f.Text | None = None
    """One line about the shop, for everybody."""
    notice: f.Text | None = None
    """A sentence at the foot of every page of both copies."""
    address: f.WebAddress | None = None
    """Where the public copy lives."""
    domain_file: f.YesNo = False
    """Puts the address's domain into a file of the public copy, as some hosts want it; public."""
    workshop_address: f.WebAddress | None = None
    """Where the workshop copy is served at home; private."""
    contact: f.Text | None = None
    """How to reach the shop, for everybody."""
    how_to_order: f.Text | None = None
    lead_time: f.Text | None = None
    menu_sections: f.TextList = ()
    """The order of the menu's sections."""
    labour: f.Amount | None = None
    """Per hour."""
    electricity: f.Amount | None = None
    """Per kWh."""
    overhead: f.Share | None = None
    """Of the other costs."""
    margin: f.Share | None = None
    """Wanted, on net sales."""
    markup: f.Share | None = None
    """Wanted, on cost; instead of a margin."""
    fee: Fee | None = None
    tax: Tax | None = None
    price_ending: f.Amount | None = None
    """Prices are rounded up to the next multiple."""
    paper: f.Size | None = None
    """The paper in the printer."""
    printer: Printer = Printer()
    usual_yield: f.Share | None = None
    """Assumed where the log says nothing yet."""
    low_stock: f.Count | None = None
    """Blanks at or below this count are running low, unless the blank says otherwise."""
