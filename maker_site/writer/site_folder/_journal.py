"""The journal: what a commit is about to do, written before it is done. Inner module."""

import json
from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

from maker_site.frozen import frozen
from maker_site.writer.site_folder._durable import install
from maker_site.writer.site_folder._manifest import is_stamps

_VERSION = 1


class Move(NamedTuple):
    """A staged file that is to take its place."""

    staged: str
    """Its name in the staging folder."""
    over: bool
    """Whether a file that may be replaced was there; if not, one found there later is the maker's."""


@frozen
class Journal:
    """The difference between the site as it is and as it is to be; done twice is the same as done once."""

    remove: tuple[str, ...]
    """Addresses no longer wanted."""
    moves: Mapping[str, Move]
    """Staged files by address."""
    stamps: Mapping[str, str]
    """What the manifest is to say of new and changed addresses, the moved ones among them."""

    @property
    def is_empty(self) -> bool:
        """Whether there is nothing to do."""
        return not (self.remove or self.stamps or self.moves)


def write_journal(path: Path, journal: Journal) -> None:
    """Put the journal into place, whole or not at all."""
    whole = {"version": _VERSION, "remove": journal.remove, "moves": journal.moves, "stamps": journal.stamps}
    install(path, json.dumps(whole, separators=(",", ":")).encode("ascii"))


def read_journal(path: Path) -> Journal | None:
    """Give the journal, or None where it is not one that this version can read. Raises FileNotFoundError."""
    try:
        found = json.loads(path.read_bytes())
        if found["version"] != _VERSION or not is_stamps(found["stamps"]):
            return None
        moves = {address: Move(str(staged), bool(over)) for address, (staged, over) in found["moves"].items()}
        return Journal(
            remove=tuple(str(address) for address in found["remove"]),
            moves=moves,
            stamps=found["stamps"],
        )
    except (ValueError, KeyError, TypeError, AttributeError):
        return None
