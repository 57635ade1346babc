"""Answers after an edit: only what it concerns is worked out again, and put before what is kept.

Concerned are the blanks of rows that came or went, blanks that were edited, those pressed for projects of another
name (`answers_judged`), and, where what one of these tells others is another, the blanks of its substrate whose
beginning rests on that (`answers_reworked`). Where an edit can't be judged quickly, or where very many rows came since
all was made, all is made afresh.
"""

from __future__ import annotations

import marshal
import os
import zlib
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final

from maker_site.writer.answers_kept import NO_TEXT, Kept, Name, Parts
from maker_site.writer.fingerprint import Fingerprint, touched

if TYPE_CHECKING:
    from maker_site.writer.answers_judged import Edit

_MOST_FILES: Final = 100
"""Edited at once; more are read with all the others."""


def mended(kept: Kept, content: Path, now: Fingerprint) -> Parts | None:
    """Return what goes before what is kept, so that it is as if made now; empty where nothing was really changed, and
    may be soon. None where all has to be made afresh. Raises what damage raises.
    """
    before = kept.part("stamps").decode("utf-8", "surrogateescape").split("\n")
    edits = list(_edits(kept, content, touched(before, now.lines)))
    if not edits and not now.is_settled:
        return {}
    if len(edits) > _MOST_FILES:
        return None
    changed: dict[tuple[str, Name], bytes] = {}
    if edits:
        from maker_site.records.glance.unsure import Unsure  # here, as what is below: most often nothing was edited

        try:
            changed = _after(edits, kept, content)
        except Unsure:
            return None
    changed["stamps", 0] = "\n".join(now.lines).encode("utf-8", "surrogateescape")
    changed["records", 0] = now.records.encode()
    changed["mark", 0] = kept.based("mark")
    return {**kept.patched(), **changed}


def _edits(kept: Kept, content: Path, paths: Iterable[str]) -> Iterator[Edit]:
    """Yield the files that say something else than they did."""
    for path in paths:
        held = kept.find("text", path.encode("utf-8", "surrogateescape")) or NO_TEXT
        try:
            raw = Path(os.path.join(content, path)).read_bytes()  # noqa: PTH118
        except OSError:
            raw = None
        if raw is None or held == NO_TEXT or zlib.decompress(held) != raw:
            from maker_site.writer.answers_judged import Edit

            yield Edit(path, held, raw)


def _after(edits: Sequence[Edit], kept: Kept, content: Path) -> dict[tuple[str, Name], bytes]:
    """Return the parts that are others after some edits; raises Unsure."""
    from maker_site.records.glance.reading import Bare
    from maker_site.writer.answers_draft import Draft
    from maker_site.writer.answers_judged import judged
    from maker_site.writer.answers_reworked import rework

    draft = Draft(kept)
    bare = Bare(*marshal.loads(kept.part("bare")))
    rework(draft, bare, judged(draft, content, bare, edits))
    return draft.parts
