"""The photos that the records name: looked at and planned."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextvars import copy_context
from functools import partial
from pathlib import Path
from typing import TypeVar

from maker_site.frozen import frozen
from maker_site.media import PictureProblem, PictureSet, plan, probe, sound
from maker_site.records import Problem, Project, Workshop
from maker_site.records.pictures_in_text import pictures_in_text
from maker_site.records.remembered import Forgetful, Remembered
from maker_site.writer.known import KnownPhotos

T = TypeVar("T")
G = TypeVar("G")


@frozen
class Gathered:
    """Planned pictures by path from the content folder, and what is wrong with the others."""

    pictures: Mapping[str, PictureSet]
    problems: tuple[Problem, ...]


def picture_paths(workshop: Workshop, remembered: Remembered | None = None) -> tuple[str, ...]:
    """Return the path of every photo that a page may show, from the content folder, sorted."""
    return tuple(sorted(set(_paths(workshop, remembered or Forgetful()))))


def _paths(workshop: Workshop, remembered: Remembered) -> Iterator[str]:
    for project in workshop.projects.values():
        read = partial(_of_project, workshop.root, project)
        yield from remembered.unit(f"projects/{project.id}", project, [], read, use="pictures")
    for pressing in workshop.pressings:
        if pressing.project and pressing.photo:
            yield f"projects/{pressing.project}/{pressing.photo}"
    for blank in workshop.blanks.values():
        yield from (f"blanks/{blank.id}/{name}" for name in blank.folder_pictures)
    for article in workshop.articles.values():
        yield from _inside(workshop.root, "articles", article.text)


def _of_project(root: Path, project: Project) -> tuple[str, ...]:
    home = f"projects/{project.id}"
    named = [photo.file for photo in project.photos]
    shown = _inside(root, home, project.tutorial) if project.tutorial else ()
    return (*(f"{home}/{file}" for file in (*named, *project.folder_photos)), *shown)


def _inside(root: Path, home: str, text: str) -> Iterator[str]:
    """Yield the pictures that a text shows and that are there."""
    for _, path in pictures_in_text(text):
        if (root / home / path).is_file():
            yield f"{home}/{path}"


def gather(root: Path, paths: Sequence[str], *, wholly: bool = False, known: KnownPhotos | None = None) -> Gathered:
    """Look at pictures side by side and plan their sizes; `wholly` also decodes each to its end, for `check`.

    `known` is what is known of them from earlier makes.
    """

    def look(path: str) -> PictureSet | Problem:
        try:
            found = plan(known.probe(root, path, probe) if known else probe(root / path))
            if wholly:
                sound(root / path)
        except PictureProblem as error:
            return Problem(path, 0, "", str(error))
        return found

    found = dict(zip(paths, side_by_side(look, paths), strict=True))
    return Gathered(
        {path: each for path, each in found.items() if isinstance(each, PictureSet)},
        tuple(each for each in found.values() if isinstance(each, Problem)),
    )


def side_by_side(work: Callable[[G], T], items: Iterable[G]) -> Iterator[T]:
    """Do the work on every core; the heavy parts of picture work let other threads run."""
    from concurrent.futures import ThreadPoolExecutor  # late: often nothing is to be done

    pool = ThreadPoolExecutor(max_workers=os.cpu_count() or 1)
    here = copy_context()  # the language spoken here is spoken there
    try:
        yield from pool.map(lambda item: here.copy().run(work, item), items)
    finally:
        pool.shutdown(cancel_futures=True)  # after Ctrl-C or a fault what has not begun is not begun
