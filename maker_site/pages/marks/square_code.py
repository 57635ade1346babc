"""The square code of a text, made by segno; its mask is chosen here.

ISO/IEC 18004:2015 has eight masks tried and the one with the fewest penalty points taken (7.8.2, 7.8.3). segno looks at
every module of the eight in turn, which takes five times as long as all the rest. Here a whole code is one integer, a
bit a module, so that all modules are compared at once; the code that comes of it is segno's own to the last module.
"""

import re
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import Final

from markupsafe import Markup

from maker_site.frozen import frozen

_GAP: Final = 4
"""Light modules between two lines of modules in the integer, as many as are asked for beside a finder (7.8.3.1)."""
_DIGITS: Final = bytes.maketrans(b"\0\1", b"01")
_MASKS: Final = range(8)
_LARGEST: Final = 41
"""Modules along a side of version 6, the last without an area that tells its version."""
_TIMING: Final = 6
"""The row and the column of the timing pattern."""
_QUIET: Final = 4
_SCALE: Final = 4
"""Modules of the quiet zone, and user units of a module."""
_ERROR: Final = "m"
_DARK: Final = re.compile("1+")


def square_code(text: str) -> Markup:
    """TEXT as a QR code of error level M, or a better one in the same size, with its quiet zone."""
    import segno  # late: it brings the network's modules with it, and few pages have a code

    code = segno.make_qr(text, error=_ERROR, mask=0)
    rows = code.matrix
    size = len(rows)
    if size > _LARGEST:
        rows = segno.make_qr(text, error=_ERROR).matrix
        return _drawn(["".join(map(str, row)) for row in rows])
    form = _form(code.version)
    across, down = _whole(rows), _whole(zip(*rows, strict=True))
    points = [form.penalty(across ^ form.across[mask], down ^ form.down[mask]) for mask in _MASKS]
    best = points.index(min(points))
    bits = f"{across ^ form.across[best]:0{size * form.stride - _GAP}b}"
    return _drawn([bits[start : start + size] for start in range(0, len(bits), form.stride)])


@frozen
class _Form:
    """What all codes of a version have in common, each part as one integer."""

    stride: int
    """Bits from one line of modules to the next."""
    modules: int
    counted: int
    """Modules that the points are counted of: all but the ones that tell the format, which count as light."""
    pairs: int
    """Modules with another one before them in their line."""
    across: Sequence[int]
    """By the number of a mask, what turns a code of mask 0 into one of that mask, row by row."""
    down: Sequence[int]
    """The same column by column."""

    def penalty(self, across: int, down: int) -> int:
        """Return the points of a code (7.8.3.1, table 11), given row by row and column by column."""
        across &= self.counted
        down &= self.counted
        above = across >> self.stride
        like_last = self._like_last(across)
        blocks = like_last & (like_last >> self.stride) & ~(across ^ above)
        share = across.bit_count() / self.modules * 100
        return (
            self._in_lines(across, like_last)
            + self._in_lines(down, self._like_last(down))
            + 3 * blocks.bit_count()
            + 10 * int(abs(share - 50) / 5)
        )

    def _like_last(self, code: int) -> int:
        return ~(code ^ (code >> 1)) & self.pairs

    @staticmethod
    def _in_lines(code: int, like_last: int) -> int:
        """Points for five and more alike in a line, and for what looks like a finder with light beside it."""
        four = like_last & (like_last >> 1)
        four &= four >> 2
        alike = four.bit_count() + 2 * (four & ~(four >> 1)).bit_count()
        finders = code & ~(code >> 1) & (code >> 2) & (code >> 3) & (code >> 4) & ~(code >> 5) & (code >> 6)
        before = (code >> 7) | (code >> 8) | (code >> 9) | (code >> 10)
        after = (code << 1) | (code << 2) | (code << 3) | (code << 4)
        finders &= ~(before & after)
        overlapping = (finders & (finders >> 4)).bit_count() + (finders & (finders >> 6)).bit_count()
        return alike + 40 * (finders.bit_count() - overlapping)


@lru_cache(maxsize=6)
def _form(version: int) -> _Form:
    """Learn from segno what the masks of a version do; it does not depend on what a code says."""
    import segno

    codes = [segno.make_qr("0", version=version, error=_ERROR, mask=mask).matrix for mask in _MASKS]
    size = len(codes[0])
    counted = [bytearray(b"\1" * size) for _ in range(size)]
    for place in (*range(9), *range(size - 8, size)):
        if place != _TIMING:
            counted[8][place] = counted[place][8] = 0
    across = [_whole(code) for code in codes]
    down = [_whole(zip(*code, strict=True)) for code in codes]
    return _Form(
        size + _GAP,
        size * size,
        _whole(counted),
        _whole([b"\0" + b"\1" * (size - 1)] * size),
        [each ^ across[0] for each in across],
        [each ^ down[0] for each in down],
    )


def _whole(lines: Iterable[Iterable[int]]) -> int:
    """Return lines of modules as one integer, the first module its highest bit."""
    return int((b"\0" * _GAP).join(map(bytes, lines)).translate(_DIGITS), 2)


def _drawn(rows: Sequence[str]) -> Markup:
    """Draw rows of modules, dark ones as 1, each run of dark ones as a stroke."""
    strokes: list[str] = []
    at_x, at_y = 0, 0.0
    for number, row in enumerate(rows):
        y = _QUIET + number + 0.5
        for dark in _DARK.finditer(row):
            x = _QUIET + dark.start()
            length = dark.end() - dark.start()
            down = y - at_y
            strokes.append(f"{'m' if strokes else 'M'}{x - at_x} {down:g}h{length}")
            at_x, at_y = x + length, y
    side = _SCALE * (len(rows) + 2 * _QUIET)
    path = f'<path transform="scale({_SCALE})" class="qrline" stroke="#000" d="{"".join(strokes)}"/>'
    return Markup(f'<svg viewBox="0 0 {side} {side}" class="square-code">{path}</svg>')
