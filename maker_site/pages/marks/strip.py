"""A control strip as at the edge of a printed sheet: one field of every hatching, the house's ornament."""

from functools import cache

from markupsafe import Markup

from maker_site.pages.marks._svg import drawing, num
from maker_site.pages.marks.hatching import hatch_pattern
from maker_site.pages.marks.materials import HATCHES, Hatch

_FIELD = 79.0
_HEIGHT = 14.0


@cache
def control_strip() -> Markup:
    """Every hatching side by side, without words, once a page; to be cut off where its place ends."""
    fields = [_field(hatch, index) for index, hatch in enumerate(HATCHES.values())]
    return drawing(fields, width=len(HATCHES) * _FIELD + 1, height=_HEIGHT, css_class="m-strip")


def _field(hatch: Hatch, index: int) -> str:
    name = f"strip-{index}"
    place = f'x="{num(0.5 + index * _FIELD)}" y="0.5" width="{num(_FIELD)}" height="{num(_HEIGHT - 1)}"'
    return f'{hatch_pattern(hatch, name)}<rect fill="url(#{name})" {place}/>'
