"""Documents for paper: the theme's templates, and what the pages say put as paper needs it."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from maker_site.paper.typesetting import Typesetter, typesetter
from maker_site.writer.themes import theme

FONTS = "fonts"
"""The folder of the maker's own fonts in the content folder."""


@contextmanager
def setter(theme_name: str, content: Path) -> Iterator[Typesetter]:
    """Give a typesetter with a theme's templates and the maker's fonts. Raises `ThemeProblem`."""
    used = theme(theme_name, content)
    fonts = content / FONTS
    with typesetter(used.papers(), fonts if fonts.is_dir() else None) as setting:
        yield setting
