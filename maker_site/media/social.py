"""Pictures that are drawn and not taken: what a shared link is shown with, and the sign in a browser's tab.

Their names carry a hash of all that they are drawn from, so that one that is there is right.
"""

from __future__ import annotations

import hashlib
import io
import json
import shutil
import tempfile
import unicodedata
from dataclasses import astuple
from functools import cache, lru_cache
from pathlib import Path
from typing import TYPE_CHECKING, Final, Literal

from maker_site.frozen import frozen
from maker_site.language import direction

if TYPE_CHECKING:
    import typst
    from PIL import Image

SOCIAL_SIZE: Final = (1200, 630)
"""Pixels. What most programs that show a shared link ask for; common practice, no source."""
ICON_SIZE: Final = (192, 192)
"""Pixels; common practice, no source."""
_JPEG_QUALITY: Final = 82
_WRITABLE: Final = ("LATIN", "GREEK", "CYRILLIC", "HEBREW")
"""Scripts that the typesetter's own fonts have."""
_ARABIC: Final = frozenset("".join(map(chr, (*range(0x621, 0x63B), *range(0x641, 0x64B)))) + "پچژگکی")
"""The letters of Arabic and Persian, which its monospaced font has; of the script's others it lacks many."""
_COMMON: Final = """
#let data = json(bytes(sys.inputs.data))
#let fonts = ("Libertinus Serif", "New Computer Modern", "DejaVu Sans Mono")
#let way = if data.direction == "rtl" { rtl } else { ltr }
#set text(font: fonts, fill: rgb("#1f1d1a"), lang: data.language, dir: way, hyphenate: false)
#let hatch(..size) = image(bytes(data.hatch), format: "svg", ..size)
"""
_PAGE: Final = """
#set page(width: 1200pt, height: 630pt, margin: 0pt, fill: rgb("#faf7f0"))
#set par(leading: 0.42em)
#let title(size) = text(size, weight: "bold", data.words)
#let fitted(size) = if size <= 34pt or measure(title(size), width: 344pt).height <= 330pt {
  title(size)
} else {
  fitted(size - 3pt)
}
// The picture lies where a line begins and its stub where it ends; all is measured from the left.
#let left-of(x, width) = if way == rtl { 1200pt - x - width } else { x }
#place(top + left, dx: left-of(0pt, 780pt), if data.cover {
  image("cover.jpg", width: 780pt, height: 630pt, fit: "cover")
} else {
  hatch(width: 780pt, height: 630pt, fit: "cover")
})
#let perforation = (paint: rgb("#8d8474"), thickness: 3pt, dash: (9pt, 7pt))
#place(top + left, dx: left-of(792pt, 0pt), line(angle: 90deg, length: 630pt, stroke: perforation))
#let stub(at, dy: 0pt, body) = place(at + left, dx: left-of(824pt, 344pt), dy: dy, { set align(start); body })
#stub(top, dy: 44pt, box(width: 344pt, height: 84pt, clip: true, stroke: 1.5pt + rgb("#1f1d1a"), hatch(width: 780pt)))
#let above = 16pt // for what stands above the height of a capital
#stub(
  top,
  dy: 160pt - above,
  box(width: 344pt, height: 330pt + above, inset: (top: above), clip: true, context fitted(58pt)),
)
#stub(bottom, dy: -44pt, box(width: 344pt, text(26pt, fill: rgb("#5c564c"), data.under)))
"""
_SOCIAL: Final = _COMMON + _PAGE
_UNHATCHED: Final = _COMMON + "#let hatch(..size) = []" + _PAGE
_WORDS: Final = {"ltr": (796, 136, 1200, 630), "rtl": (0, 136, 404, 630)}
"""Pixels between which the words lie: the stub under its hatching. Left, top, right, foot."""
_ICON: Final = (
    _COMMON
    + """
#set page(width: 192pt, height: 192pt, margin: 0pt, fill: rgb("#faf7f0"))
#let size = if data.words.clusters().len() > 1 { 98pt } else { 124pt }
#place(center + top, dy: 26pt, text(size, weight: "bold", top-edge: "cap-height", data.words))
#place(left + bottom, box(width: 192pt, height: 56pt, clip: true, hatch(width: 192pt)))
"""
)


@frozen
class Sign:
    """One picture to be drawn. It holds nothing but what everybody may see."""

    kind: Literal["social", "icon"]
    words: str
    """The title, or the shop's initials."""
    under: str
    """The shop's name; empty on an icon."""
    hatch: str
    """The hatching of the material as an SVG that needs no style sheet."""
    language: str = "en"
    cover: str | None = None
    """The path of a shared photo from the content folder."""
    digest: str = ""
    """Content hash of that photo."""

    @property
    def name(self) -> str:
        """Return the file's name: a hash of everything that it is drawn from."""
        said = (*astuple(self)[:5], self.digest, _template(self), _JPEG_QUALITY)
        digest = hashlib.blake2b(repr(said).encode("utf-8", "surrogateescape"), digest_size=8).hexdigest()
        return f"{digest}.{'jpg' if self.kind == 'social' else 'png'}"


def draw(sign: Sign, cover: Path | None) -> bytes:
    """Return the picture's bytes: a JPEG of 1200 x 630 px, or for an icon a PNG. The same input gives the same bytes.

    `cover` is a JPEG of the sign's photo. Words in a script that no font at hand has are left out.
    """
    out = io.BytesIO()
    if sign.kind == "icon":
        words, under = (each if writable(each) else "" for each in (sign.words, sign.under))
        _drawn(_ICON, words, under, sign.hatch, sign.language).save(out, "PNG", optimize=True)
    else:
        picture = drawn_whole(sign, cover) if cover else _drawn_in_parts(sign)
        picture.save(out, "JPEG", quality=_JPEG_QUALITY, progressive=True, optimize=True)
    return out.getvalue()


def drawn_whole(sign: Sign, cover: Path | None) -> Image.Image:
    """Return a social picture before it is made small."""
    return _drawn(_SOCIAL, *_lines(sign), sign.hatch, sign.language, cover)


def _drawn_in_parts(sign: Sign) -> Image.Image:
    """Return the same without a photo, in half the time: only the words are its own."""
    picture = _without_words(sign.hatch, sign.language).copy()
    place = _WORDS[direction(sign.language)]
    picture.paste(_drawn(_UNHATCHED, *_lines(sign), "", sign.language).crop(place), place)
    return picture


def _lines(sign: Sign) -> tuple[str, str]:
    words, under = (_in_its_order(each) if writable(each) else "" for each in (sign.words, sign.under))
    return words, under


@lru_cache(maxsize=8)  # two megabytes each; to hatch so large a field takes long, and a shop has few materials
def _without_words(hatch: str, language: str) -> Image.Image:
    """Return a social picture of a material."""
    return _drawn(_SOCIAL, "", "", hatch, language)


def _drawn(template: str, words: str, under: str, hatch: str, language: str, cover: Path | None = None) -> Image.Image:
    from PIL import Image

    data = {
        "words": words,
        "under": under,
        "hatch": hatch,
        "cover": cover is not None,
        "language": language,
        "direction": direction(language),
    }
    with tempfile.TemporaryDirectory(prefix="maker-site-") as name:
        folder = Path(name).resolve()
        (folder / "sign.typ").write_text(template, encoding="utf-8")
        if cover is not None:
            shutil.copyfile(cover, folder / "cover.jpg")
        drawn = _compiler(folder).compile(
            format="png", ppi=72.0, sys_inputs={"data": json.dumps(data, ensure_ascii=False)}
        )
    assert isinstance(drawn, bytes)
    with Image.open(io.BytesIO(drawn)) as picture:
        return picture.convert("RGB")


def writable(text: str) -> bool:
    """Tell whether every letter is of a script that the typesetter's own fonts have."""
    letters = (character for character in text if character.isalpha())
    return all(letter in _ARABIC or unicodedata.name(letter, "").startswith(_WRITABLE) for letter in letters)


def _in_its_order(text: str) -> str:
    """Return text that runs the way its own first letter does, whatever language stands round it."""
    return f"\N{FIRST STRONG ISOLATE}{text}\N{POP DIRECTIONAL ISOLATE}"


def _template(sign: Sign) -> str:
    return _SOCIAL if sign.kind == "social" else _ICON


def _compiler(folder: Path) -> typst.Compiler:
    import typst

    return typst.Compiler(folder / "sign.typ", root=folder, font_paths=_fonts(), ignore_system_fonts=True)


@cache
def _fonts() -> typst.Fonts:
    import typst

    return typst.Fonts(include_system_fonts=False, include_embedded_fonts=True)
