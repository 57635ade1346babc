"""What the writer is handed: a page is an address, a template's name and a view."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import Any

from maker_site.frozen import frozen
from maker_site.media.social import Sign


@frozen
class Page:
    """One page to be rendered."""

    address: str
    """From the copy's root."""
    template: str
    """The theme's template, ``workshop/home.html``."""
    title: str
    """For the title element, without the shop's name."""
    view: Any
    """A frozen view; the template sees nothing else but the copy's frame."""
    door: str | None = None
    """The address of the door that it stands behind, to be marked in the header."""
    description: str | None = None
    """One line for those who find the page by search; public copy."""
    found: Any = None
    """What the programs of others are told of the page; public copy, where the shop says its address."""


@frozen
class Text:
    """One file that is ready as it is: a script of data, a feed."""

    address: str
    text: str


@frozen
class Said:
    """What a page says of itself for those files that are made of many pages: an index, a sitemap."""

    kind: str
    value: Any
    """Nothing but what JSON holds."""


@frozen
class Batch:
    """Pages that are built together, or left as they are together where nothing that they show has changed."""

    name: str
    """Of its own in its copy."""
    build: Callable[[], Iterable[Page | Text | Drawn | Said]]


@frozen
class Gathering:
    """Files that are made of what all pages of a copy have said."""

    name: str
    """Of its own in its copy, beside those of the batches."""
    kind: str
    """Which sayings it is made of."""
    build: Callable[[Sequence[Any]], Iterable[Text]]
    """Given what was said, in the order of the batches."""


@frozen
class Drawn:
    """One picture that is drawn where it is not there yet; its name carries a hash of all that it is drawn from."""

    address: str
    sign: Sign
