from collections.abc import Iterator
from pathlib import Path

import pytest

from maker_site.paper.typesetting import Typesetter
from maker_site.writer.printing import setter
from maker_site.writer.themes import theme


@pytest.fixture(scope="session")
def setting(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Typesetter]:
    """The typesetter with the theme that ships."""
    content: Path = tmp_path_factory.mktemp("content")
    with setter(theme("print-room", content), content) as made:
        yield made
