"""Read an SVG so that nothing outside it is ever read, and find its size. Inner module.

The text is parsed here and written anew for the drawing program, which would follow a path to any file: links to
what is outside are taken out, entities are resolved within a bound, and the size is given in pixels.
"""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path
from typing import Final
from xml.etree import ElementTree
from xml.parsers import expat

from maker_site.frozen import frozen
from maker_site.media.artwork.file import Note
from maker_site.media.problems import PictureProblem
from maker_site.records.quantities.length import MM_PER_INCH

_SVG: Final = "http://www.w3.org/2000/svg"
_LINKS: Final = ("href", "{http://www.w3.org/1999/xlink}href")
_PIXELS_PER_INCH: Final = 96
"""CSS Values and Units, absolute lengths."""
_UNIT_PX: Final = {
    "": Fraction(1),
    "px": Fraction(1),
    "mm": _PIXELS_PER_INCH / MM_PER_INCH,
    "cm": 10 * _PIXELS_PER_INCH / MM_PER_INCH,
    "q": _PIXELS_PER_INCH / MM_PER_INCH / 4,
    "in": Fraction(_PIXELS_PER_INCH),
    "pt": Fraction(_PIXELS_PER_INCH, 72),
    "pc": Fraction(_PIXELS_PER_INCH, 6),
    "em": Fraction(16),  # the usual size of letters
    "ex": Fraction(8),
}
_NUMBER: Final = r"[+-]?(?:\d{1,9}(?:\.\d{0,9})?|\.\d{1,9})(?:[eE][+-]?\d{1,2})?"
_LENGTH: Final = re.compile(rf"\s*({_NUMBER})\s*(px|mm|cm|q|in|pt|pc|em|ex|%)?\s*", re.IGNORECASE)
_LARGEST_MM: Final = 20_000
_SAME_PROPORTIONS: Final = Fraction(1, 200)
_DEEPEST: Final = 100
"""Elements within each other; the drawing program fails somewhere above 200."""
_LONGEST_TEXT: Final = 256 * 1024 * 1024
"""Bytes that the text may have once its entities are put in."""


@frozen
class CheckedSvg:
    """An SVG that reads nothing but itself. Its tree is not to be changed."""

    size_mm: tuple[Fraction, Fraction]
    notes: tuple[Note, ...]
    """What of it is not drawn."""
    root: ElementTree.Element

    @property
    def text(self) -> str:
        """The SVG in its own size, in mm."""
        width, height = (f"{float(side):.4f}mm" for side in self.size_mm)
        return self._sized(width, height)

    def text_at(self, pixels: tuple[int, int]) -> str:
        """Return the SVG ready to be drawn at exactly this size, so that no edge is left bare by rounding."""
        return self._sized(str(pixels[0]), str(pixels[1]))

    def _sized(self, width: str, height: str) -> str:
        root = ElementTree.Element(self.root.tag, {**self.root.attrib, "width": width, "height": height})
        root.text = self.root.text
        root.extend(self.root)
        return ElementTree.tostring(root, encoding="unicode")


class _Refused(Exception):
    """Why a document is not read."""


def checked_svg(path: Path) -> CheckedSvg:
    """Read the SVG at `path`. Raises `PictureProblem` for what is no SVG, has no size, or grows without bound."""
    try:
        root = _parsed(path.read_bytes())
        width, height = _size_px(root)
    except _Refused as error:
        raise PictureProblem(path, str(error)) from error
    except (expat.ExpatError, ElementTree.ParseError, ValueError, LookupError) as error:
        raise PictureProblem(path, f"the SVG is broken ({error}): save it again") from error
    except OSError as error:
        raise PictureProblem(path, f"the file can't be read: {error.strerror}") from error
    notes = tuple(_made_safe(root))
    _let_it_scale(root, width, height)
    to_mm = MM_PER_INCH / _PIXELS_PER_INCH
    return CheckedSvg((width * to_mm, height * to_mm), notes, root)


def _let_it_scale(root: ElementTree.Element, width: Fraction, height: Fraction) -> None:
    """Give it a view box where it has none; one in its own proportions then fills any size of nearly the same."""
    box = _view_box(root.get("viewBox"))
    if box is None:
        root.set("viewBox", f"0 0 {float(width):.6f} {float(height):.6f}")
    if box is None or abs(box[0] * height / (box[1] * width) - 1) < _SAME_PROPORTIONS:
        root.set("preserveAspectRatio", "none")


def _parsed(data: bytes) -> ElementTree.Element:
    builder = ElementTree.TreeBuilder()
    parser = expat.ParserCreate(namespace_separator="}")
    parser.buffer_text = True
    longest = depth = 0

    def start(name: str, attributes: dict[str, str]) -> None:
        nonlocal depth
        depth += 1
        if depth > _DEEPEST:
            raise _Refused(f"more than {_DEEPEST} groups of the SVG stand within each other: ungroup it and save again")
        builder.start(_named(name), {_named(key): value for key, value in attributes.items()})

    def end(name: str) -> None:
        nonlocal depth
        depth -= 1
        builder.end(_named(name))

    def entity(_name: str, _parameter: bool, value: str | None, *_: object) -> None:  # noqa: FBT001 - the parser's own
        nonlocal longest
        if value is None:
            return  # one that stands in another file: never read
        longest = max(longest, len(value))
        if "&" in value or len(data) + data.count(b"&") * longest > _LONGEST_TEXT:
            raise _Refused("the SVG's entities unfold into more text than is read: save it again as a plain SVG")

    parser.StartElementHandler = start
    parser.EndElementHandler = end
    parser.CharacterDataHandler = builder.data
    parser.EntityDeclHandler = entity
    parser.ExternalEntityRefHandler = lambda *_: 1  # passed over, nothing is opened
    parser.Parse(data, True)  # noqa: FBT003 - the parser's own
    root: ElementTree.Element = builder.close()
    if root.tag not in ("svg", f"{{{_SVG}}}svg"):
        raise _Refused("this is a text with markup and no SVG drawing: save the drawing as SVG, PDF or PNG")
    return root


def _named(name: str) -> str:
    return f"{{{name}" if "}" in name else name


def _size_px(root: ElementTree.Element) -> tuple[Fraction, Fraction]:
    """Return width and height; what is missing comes from the view box, in pixels and in its proportions."""
    box = _view_box(root.get("viewBox"))
    width = _length_px(root.get("width"), box[0] if box else None)
    height = _length_px(root.get("height"), box[1] if box else None)
    if box:
        if width is None:
            width = height * box[0] / box[1] if height else box[0]
        if height is None:
            height = width * box[1] / box[0]
    if width is None or height is None:
        raise _Refused("the SVG does not say how large it is: give it a width and a height, like 106mm")
    most = _LARGEST_MM * _PIXELS_PER_INCH / MM_PER_INCH
    if not (0 < width <= most and 0 < height <= most):
        raise _Refused(f"the SVG says it is {float(width):g} by {float(height):g} pixels, which can't be drawn")
    return width, height


def _view_box(text: str | None) -> tuple[Fraction, Fraction] | None:
    parts = re.split(r"[\s,]+", (text or "").strip())
    if len(parts) != 4 or not all(re.fullmatch(_NUMBER, part) for part in parts):
        return None
    width, height = Fraction(parts[2]), Fraction(parts[3])
    return (width, height) if width > 0 and height > 0 else None


def _length_px(text: str | None, whole: Fraction | None) -> Fraction | None:
    match = _LENGTH.fullmatch(text or "")
    if not match:
        return None
    value, unit = Fraction(match[1]), (match[2] or "").lower()
    if unit == "%":
        return value / 100 * whole if whole else None
    return value * _UNIT_PX[unit]


def _made_safe(root: ElementTree.Element) -> list[Note]:
    """Take out every link to something outside, and say what will be missing from the drawing."""
    outside = text = 0
    for element in root.iter():
        kind = element.tag.rpartition("}")[2]
        for link in _LINKS:
            value = element.get(link)
            if value is not None and not value.startswith(("#", "data:")):
                del element.attrib[link]
                outside += kind != "a"  # a link to follow draws nothing
        text += kind == "text"
    notes: list[Note] = []
    if outside:
        notes.append(Note("outside", outside))
    if text:
        notes.append(Note("lettering", text))
    return notes
