"""Several words in a row, in the language spoken now."""

from __future__ import annotations

from collections.abc import Iterable

from maker_site.language.speech import apart, say_in, spoken


def listed(parts: Iterable[str]) -> str:
    """Return ``hotter, longer, firmer``."""
    return say_in("between the parts of a list", ", ").join(apart(part) for part in parts)


def all_of(parts: Iterable[str]) -> str:
    """Return ``hotter``, ``hotter and longer`` or ``hotter, longer and firmer``: by CLDR, in English as in Britain."""
    row = list(parts)
    if spoken().tag == "en":  # Babel is slow to import, and not needed for this
        return " and ".join(part for part in (", ".join(row[:-1]), *row[-1:]) if part)
    from babel.lists import format_list

    return str(format_list([apart(part) for part in row], "standard", spoken().tag))
