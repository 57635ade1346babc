"""Where pages live in a copy, and the way from one to another."""

from __future__ import annotations

import posixpath
import re
from functools import lru_cache
from urllib.parse import quote

PICTURES = "pictures"
"""The folder of all derivatives in each copy."""
MENU = "menu.html"
"""The menu's first page, in each copy."""
MENU_PAPER = "menu.pdf"
"""The menu to hand out, in each copy."""


def slug(text: str) -> str:
    """Return a word as part of an address: ``stainless steel`` is ``stainless-steel``."""
    return re.sub(r"[^\w]+", "-", text.lower()).strip("-")


def project(project_id: str) -> str:
    """Return the address of a project's page in the workshop copy."""
    return f"projects/{project_id}.html"


def card(project_id: str) -> str:
    """Return the address of a project's press card."""
    return f"cards/{project_id}.html"


def cost(project_id: str) -> str:
    """Return the address of a project's cost sheet."""
    return f"costs/{project_id}.html"


def proof(project_id: str) -> str:
    """Return the address of a project's placement proof."""
    return f"proofs/{project_id}.html"


def card_paper(project_id: str) -> str:
    """Return the address of a project's press card as a PDF."""
    return f"cards/{project_id}.pdf"


def blank(blank_id: str) -> str:
    """Return the address of a blank's page."""
    return f"blanks/{blank_id}.html"


def settings_of(blank_id: str) -> str:
    """Return the folder of the further pages of a blank's settings."""
    return f"blanks/{blank_id}/settings"


def ladder(blank_id: str) -> str:
    """Return the address of a blank's test ladder."""
    return f"ladders/{blank_id}.html"


def press(press_id: str) -> str:
    """Return the address of a press's page."""
    return f"presses/{press_id}.html"


def substrate(word: str) -> str:
    """Return the address of a substrate's settings."""
    return f"settings/{slug(word)}.html"


def tutorial(project_id: str) -> str:
    """Return the address of a tutorial in the public copy."""
    return f"tutorials/{project_id}.html"


def article(article_id: str, folder: str) -> str:
    """Return the address of an article; the copies keep theirs in folders of different names."""
    return f"{folder}/{article_id}.html"


@lru_cache(maxsize=1024)  # a page names what it links to many times, and its neighbours name it too
def relative(here: str, to: str) -> str:
    """Return the link from the page `here` to `to`, both from the copy's root; whole web addresses stay."""
    if re.match(r"(?:https?|mailto):", to) or to.startswith("#"):
        return to
    path, mark, fragment = to.partition("#")
    link = posixpath.basename(path) if path == here else _way(posixpath.dirname(here), path)
    return link + (f"#{quote(fragment)}" if mark else "")


@lru_cache(maxsize=16384)
def _way(folder: str, path: str) -> str:
    return quote(posixpath.relpath(f"/{path}", f"/{folder}"))  # both absolute, or each asks where the program runs


def whole(address: str, to: str) -> str:
    """Return a whole web address of a page, below the copy's own `address`."""
    return f"{address.rstrip('/')}/{quote(to)}"
