"""What the writer is handed: a page is an address, a template's name and a view."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
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


@dataclass(frozen=True, slots=True)
class Text:
    """One file that is ready as it is: a script of data, a feed."""

    address: str
    text: str
