"""Small line drawings of our own on a grid of 24: one for each caution, and how print and blank lie."""

from types import MappingProxyType
from typing import Literal

from markupsafe import Markup

from maker_site.pages.marks._svg import drawing, path

Face = Literal["print up", "print down", "wrapped"]

CAUTION_DRAWINGS = MappingProxyType(
    {
        "hot surface": "M3 17H21V21H3ZM6 14V9M10 14V5M14 14V9M18 14V5",
        "pinch": (
            "M3 3H21V7H3ZM3 21H21M2 11.5H10A2 2 0 0 1 10 15.5H2M2 18H8A1.5 1.5 0 0 0 8 15.5M17 9.5V17M14 14L17 17L20 14"
        ),
        "fumes": ("M3 21H21M6 18C3 15 9 14 6 10M11 18C8 15 14 14 11 10M16 18C13 15 19 14 16 10M4 5H20M17 2L20 5L17 8"),
        "electrical": "M7 9H17V14L15 16H9L7 14ZM10 9V4M14 9V4M12 16V19C12 22.5 19 22.5 19 18",
        "fire": (
            "M4 21.5H20"
            "M12.5 2.5C13 7 17.5 8 17.5 13A5.5 5.5 0 0 1 6.5 13"
            "C6.5 10.5 8 9.5 8.5 7.5C10 8.5 10.5 9.5 10.5 11C12.5 9 13 6 12.5 2.5Z"
            "M12 18.5V14.5"
        ),
        "breakage": "M12 3A9 9 0 1 0 12 21A9 9 0 1 0 12 3ZM13 3L10 8L14 11L9.5 15L12.5 21M14 11L20.5 9",
        "steam": (
            "M7 4H17V8H7ZM7 16H17V20H7ZM10.5 12C9 9.8 7.5 14.2 6 12S3 9.8 1.5 12"
            "M13.5 12C15 9.8 16.5 14.2 18 12S21 9.8 22.5 12"
        ),
        "food": ("M3 12H21C20.5 17 17 20 12 20S3.5 17 3 12ZM8 20V22H16V20M13.5 9L18.5 3.5M18 4A2 2 0 0 1 21 2"),
        "dishwasher": (
            "M6 11V3H15V11M15 4.5H18.5V9H15M3 15H21M5 15V12M10.5 15V12M16 15V12M6.5 21.5L8.5 18"
            "M12 21.5V18M17.5 21.5L15.5 18"
        ),
        "sun": (
            "M3 9.5A6.5 6.5 0 0 0 9.5 3M12.5 3H15.5M3 12.5V15.5M11 7.5L13 8.5M7.5 11L8.5 13"
            "M11 11H21V21H11ZM11 14L14 11M11 17.5L17.5 11M11 21L21 11"
        ),
        "child": (
            "M8 2.5A3 3 0 1 0 8 8.5A3 3 0 1 0 8 2.5ZM8 8.5V15.5M3.5 11.5H12.5L16 13.5M8 15.5L5 21.5"
            "M8 15.5L11 21.5M15 15.5H21V21.5H15ZM15 15.5L21 21.5"
        ),
        "rights": (
            "M5 2.5H15L19 6.5V21.5H5ZM15 2.5V6.5H19M8 9.5H15M8 12.5H15"
            "M8 18C9 14.5 10.5 15 10.5 17S12.5 18.5 13 16.5S15 17 16.5 17.5"
        ),
        "bird": (
            "M2.5 13C7 13 7.5 6.5 13 6.5C16 6.5 17.5 8.5 17.5 11C17.5 15.5 14 18 10 18C6 18 3.5 16 2.5 13Z"
            "M17.3 9.5L21.5 11L17.4 12.5M9 18V21.5M12 18V21.5M7 12.5C8.5 15 11.5 15 13 12M14.5 9V10.2"
        ),
        "note": "M4 4H20V20H4ZM12 7.5V13.5M12 15.5V17",
    }
)
"""Path of each caution's drawing; `note` stands for a caution without a drawing of its own."""

HOT_CAUTIONS = frozenset({"hot surface", "fire", "steam"})
"""Cautions of heat, the only ones in the colour of heat."""


def caution_icon(caution: str, *, size: float = 24, title: str | None = None) -> Markup:
    """The drawing of CAUTION (a key of CAUTION_DRAWINGS, else the note's), SIZE pixels square."""
    hot = " m-hot" if caution in HOT_CAUTIONS else ""
    return _icon(path(CAUTION_DRAWINGS.get(caution, CAUTION_DRAWINGS["note"]), f"m-icon{hot}"), 24, 24, size, title)


_R = "M{x} 20V4H{x1}A4.5 4.5 0 0 {sweep} {x1} 13H{x}M{x2} 13L{x3} 20"


def mirror_mark(*, mirrored: bool, size: float = 24, title: str | None = None) -> Markup:
    """A letter R as it must look on the transfer: reversed where MIRRORED, beside the right way round."""
    if not mirrored:
        return _icon(path(_R.format(x=8, x1=13, x2=12, x3=17, sweep=1), "m-icon m-bold"), 24, 24, size, title)
    reversed_r = path(_R.format(x=38, x1=33, x2=34, x3=29, sweep=0), "m-icon m-bold")
    plain_r = path(_R.format(x=4, x1=9, x2=8, x3=13, sweep=1), "m-icon m-faint")
    axis = path("M21 1V23", "m-icon m-dashed")
    return _icon(plain_r + axis + reversed_r, 42, 24, size, title)


def face_mark(face: Face, *, size: float = 24, title: str | None = None) -> Markup:
    """How print and blank lie: the blank hatched, the transfer beside it with its printed side thick."""
    if face == "wrapped":
        piece = "M20 5.5A6.5 6.5 0 1 0 20 18.5A6.5 6.5 0 1 0 20 5.5ZM20 8.5A3.5 3.5 0 1 0 20 15.5A3.5 3.5 0 1 0 20 8.5Z"
        handle = "M26 9.5H35V14.5H26"
        wrap = path("M27.4 5.3A10 10 0 1 0 27.4 18.7", "m-icon m-bold")
        return _icon(path(piece + handle, "m-icon") + wrap, 42, 24, size, title)
    up = face == "print up"
    blank_top, paper_top = (2, 18) if up else (12, 3)
    blank = f"M4 {blank_top}H38V{blank_top + 10}H4Z" + "".join(
        f"M{x} {blank_top + 10}L{x + 7} {blank_top}" for x in (6, 12, 18, 24, 30)
    )
    paper = f"M4 {paper_top}H38V{paper_top + 4}H4Z"
    printed = paper_top if up else paper_top + 4
    thick = path(f"M4 {printed}H38", "m-icon m-bold")
    return _icon(path(blank, "m-icon") + path(paper, "m-icon") + thick, 42, 24, size, title)


def _icon(content: str, width: float, height: float, size: float, title: str | None) -> Markup:
    scale = size / 24
    if scale == 1:
        return drawing([content], width=width, height=height, title=title, css_class="m-small-mark")
    inner = f'<g transform="scale({scale:g})">{content}</g>'
    return drawing([inner], width=width * scale, height=height * scale, title=title, css_class="m-small-mark")
