"""What a record can't share by a slip, and names that would take the place of a list."""

from pathlib import Path

import pytest

from maker_site.records import load
from tests.small_workshop import write_workshop


def messages(content: Path) -> str:
    return "\n".join(problem.message for problem in load(content).problems)


def test_artwork_can_not_be_shared_as_a_photo(tmp_path: Path) -> None:
    content = write_workshop(
        tmp_path,
        {
            "projects/harbour/project.yaml": (
                "title: H\nblank: slate\nphotos: [{file: artwork/wall.png, text: The artwork, share: yes}]\n"
            ),
            "projects/harbour/artwork/wall.png": b"x",
        },
    )

    assert "only photos are shared, never artwork" in messages(content)


@pytest.mark.parametrize(
    "name", ["blanks/index.yaml", "presses/index.yaml", "projects/index/project.yaml", "articles/index.md"]
)
def test_no_record_takes_the_name_of_a_list(tmp_path: Path, name: str) -> None:
    content = write_workshop(tmp_path, {name: "# Title\n" if name.endswith(".md") else "name: N\n"})

    assert "lists the others" in messages(content)


def test_no_substrate_is_called_index(tmp_path: Path) -> None:
    content = write_workshop(tmp_path, {"blanks/slate.yaml": "name: S\nsubstrate: Index\n"})

    assert "is not a substrate" in messages(content)
