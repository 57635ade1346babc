"""Several words in a row, in the language spoken now."""

from __future__ import annotations

from collections.abc import Iterable

from maker_site.language.speech import apart, say_in, spoken


def listed(parts: Iterable[str]) -> str:
    """Return ``hotter, longer, firmer``."""
    row = list(parts)
    return _kind(row)(say_in("between the parts of a list", ", ")).join(apart(part) for part in row)


def all_of(parts: Iterable[str]) -> str:
    """Return ``hotter``, ``hotter and longer`` or ``hotter, longer and firmer``: by CLDR, in English as in Britain."""
    row = list(parts)
    if spoken().tag == "en":  # Babel is slow to import, and not needed for this
        kind = _kind(row)
        return kind(" and ").join(part for part in (kind(", ").join(row[:-1]), *row[-1:]) if part)
    from babel.lists import format_list
    from markupsafe import escape

    if _kind(row) is str:
        return str(format_list([apart(part) for part in row], "standard", spoken().tag))
    return _kind(row)(format_list([str(apart(escape(part))) for part in row], "standard", spoken().tag))


def _kind(row: Iterable[str]) -> type[str]:
    """Return what a row becomes: HTML where a part is HTML, and then all else is escaped."""
    return next((type(part) for part in row if hasattr(part, "__html__")), str)
