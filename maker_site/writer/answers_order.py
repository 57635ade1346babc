"""How the order of rows is kept: best supported first, each row's place in a few bytes."""

from __future__ import annotations

import struct
from typing import Final

KEY: Final = struct.Struct("<bdqqI")
"""Of a row's order (`workings.finding.rows.Row.order`), with the number of its blank in place of the id."""
