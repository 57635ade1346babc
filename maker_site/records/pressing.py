"""The press log: one row for each pressing."""

from __future__ import annotations

from pydantic import ValidationInfo, field_validator

from maker_site.records import fields as f
from maker_site.records.base import OneLine, Origin, Record
from maker_site.records.problems import NotReadable


class Pressing(Record):
    """What was set, what was pressed, what came out. Failures count.

    Each value is read from its own text alone, but for `good`; `read_log` relies on that.
    """

    id: str
    """The log's file and the row's line there, with a colon between them."""
    date: f.Date
    blank: f.Text
    press: f.Text
    temperature: f.Temperature
    """What the dial was set to."""
    time: f.Seconds
    pressed: f.Pressed
    good: f.Count
    """Fit to sell, of those pressed."""
    project: f.Text | None = None
    """Absent for a test pressing."""
    lot: f.Text | None = None
    method: f.Method | None = None
    pressure: f.Pressure | None = None
    face: f.Face | None = None
    pre_press: f.Seconds | None = None
    stack: f.LayerList = ()
    at_once: f.CountFromOne | None = None
    peel: f.Peel | None = None
    cool: f.Cool | None = None
    defects: f.DefectList = ()
    note: f.Text | None = None
    photo: f.InnerPath | None = None

    @field_validator("good", mode="after")
    @classmethod
    def _no_more_than_pressed(cls, good: int, info: ValidationInfo) -> int:
        pressed = info.data.get("pressed")
        if pressed is not None and good > pressed:
            raise NotReadable(f"{good} good of {pressed} pressed can't be; correct one of the two")
        return good

    @property
    def origin(self) -> Origin:
        """Where the row was read; told by its id, since there are very many rows."""
        file, _, line = self.id.rpartition(":")
        return Origin(file, OneLine(int(line) if line.isdecimal() else 0))
