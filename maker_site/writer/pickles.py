"""Values put into bytes and taken out again, by a reader that makes values of known kinds and calls nothing else."""

from __future__ import annotations

import io
import pickle
from typing import Any, Final

DAMAGED: Final = (
    *(OSError, ValueError, TypeError, EOFError, AttributeError, LookupError, ImportError),
    pickle.UnpicklingError,
)
"""What `taken_out` may raise where bytes are not what was put into them."""
_OURS: Final = "maker_site."
_PLAIN: Final = frozenset(
    {
        ("fractions", "Fraction"),
        ("decimal", "Decimal"),
        ("datetime", "date"),
        ("datetime", "timedelta"),
        ("array", "array"),
        ("array", "_array_reconstructor"),
        ("builtins", "set"),
        ("builtins", "frozenset"),
        ("builtins", "object"),
        ("copyreg", "_reconstructor"),
        ("markupsafe", "Markup"),
    }
)
"""What a kept value may be made of beside our own kinds: nothing that does anything."""


def put_in(value: object) -> bytes:
    """Return a value as bytes."""
    said = io.BytesIO()
    pickle.Pickler(said, pickle.HIGHEST_PROTOCOL).dump(value)
    return said.getvalue()


def taken_out(data: bytes) -> Any:
    """Return the value that was put into bytes; raises one of `DAMAGED`."""
    return _Values(io.BytesIO(data)).load()


class _Values(pickle.Unpickler):
    """Reads our own records and plain values, and refuses to call anything else."""

    def find_class(self, module: str, name: str) -> Any:
        """Return a kind of value; raises UnpicklingError."""
        if (module, name) in _PLAIN:
            return super().find_class(module, name)
        found = super().find_class(module, name) if module.startswith(_OURS) else None
        if isinstance(found, type) and found.__module__ == module:
            return found
        raise pickle.UnpicklingError(f"{module}.{name} is no kind of value")
