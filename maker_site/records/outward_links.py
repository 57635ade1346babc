"""Which addresses elsewhere on the web the records name, each with its place.

Inner module of the records room.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from maker_site.records.problems import Problem, Severity
from maker_site.records.workshop import Workshop

_PART: Final = r"[^\s<>\"'\]()]"
_IN_TEXT: Final = re.compile(rf"https?://{_PART}++(?:\({_PART}*+\){_PART}*+)*", re.IGNORECASE)
"""An address as it stands in a text; round brackets belong to it in pairs."""
_AFTER: Final = ".,;:!?*_"
"""What ends a sentence rather than an address."""


@dataclass(frozen=True, slots=True, order=True)
class OutwardLink:
    """One place that names an address."""

    address: str
    file: str
    line: int
    field: str

    def caution(self, message: str) -> Problem:
        """Return a caution about it."""
        return Problem(self.file, self.line, self.field, message, Severity.CAUTION)


def outward_links(workshop: Workshop) -> tuple[OutwardLink, ...]:
    """Return every link of blanks, supplies, videos and texts, in the order of their places."""
    return tuple(sorted(_found(workshop), key=lambda each: (each.file, each.line, each.field)))


def _found(workshop: Workshop) -> Iterator[OutwardLink]:
    for blank in workshop.blanks.values():
        if blank.link:
            yield OutwardLink(blank.link, blank.origin.file, blank.origin.line(("link",)), "link")
    for supply in workshop.supplies.values():
        if supply.link:
            yield OutwardLink(supply.link, supply.origin.file, supply.origin.line(("link",)), "link")
    for project in workshop.projects.values():
        if project.video:
            yield OutwardLink(project.video, project.origin.file, project.origin.line(("video",)), "video")
    for file, text in _texts(workshop).items():
        for number, line in enumerate(text.split("\n"), 1):
            for match in _IN_TEXT.finditer(line):
                yield OutwardLink(match[0].rstrip(_AFTER), file, number, "")


def _texts(workshop: Workshop) -> Mapping[str, str]:
    found = {f"projects/{each.id}/tutorial.md": each.tutorial or "" for each in workshop.projects.values()}
    found |= {f"articles/{each.id}.md": each.text for each in workshop.articles.values()}
    return found | {"about.md": workshop.about or ""}
