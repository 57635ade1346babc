"""Supplies: what is used up or worn, and how much heat it bears."""

from __future__ import annotations

from maker_site.records import fields as f
from maker_site.records.base import Record


class Supply(Record):
    """Ink, paper, tape, sheets, pads, packaging."""

    name: f.Text
    kind: f.SupplyKind
    material: f.Text | None = None
    """What it is made of: PTFE, silicone, felt …"""
    price: f.Amount | None = None
    """For the contents."""
    contents: f.Measure | None = None
    size: f.Size | None = None
    laydown: f.Laydown | None = None
    """Ink, ml per square metre at full cover."""
    use: f.Measure | None = None
    """For one piece."""
    lasts: f.Measure | None = None
    """Pressings that a sheet outlives."""
    limit: f.Temperature | None = None
    """Never hotter than this."""
    supplier: f.Text | None = None
    code: f.Text | None = None
    link: f.WebAddress | None = None
    paid_link: f.YesNo = False
    note: f.Text | None = None
