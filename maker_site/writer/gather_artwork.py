"""The design files that the records name: looked at, planned to be shown, their ink counted."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, MutableMapping
from fractions import Fraction
from functools import partial
from pathlib import Path

from maker_site.frozen import frozen
from maker_site.language import ENGLISH, speaking
from maker_site.media import PictureProblem, PictureSet
from maker_site.media.artwork import ArtworkFile, UnreadArtwork, coverage, plan_preview, read_artwork
from maker_site.pages.notebook import motif_of
from maker_site.records import Problem, Severity, Workshop
from maker_site.workings.artwork_review import SeenArtwork, review_artwork
from maker_site.writer.gather import side_by_side


class Coverages(Mapping[str, Fraction]):
    """Mean ink coverage of artwork by path, counted when it is first asked for and known by content from then on."""

    def __init__(self, root: Path, files: Mapping[str, ArtworkFile], known: MutableMapping[str, Fraction]) -> None:
        self._root = root
        self._files = files
        self._known = known

    def __getitem__(self, path: str) -> Fraction:
        digest = self._files[path].digest
        if digest not in self._known:
            try:
                self._known[digest] = coverage(self._root / path)
            except PictureProblem as error:
                raise KeyError(path) from error
        return self._known[digest]

    def __iter__(self) -> Iterator[str]:
        return iter(self._files)

    def __len__(self) -> int:
        return len(self._files)

    def problem(self, path: str) -> Problem | None:
        """Count now, and return what is wrong where it can't be done."""
        digest = self._files[path].digest
        try:
            if digest not in self._known:
                self._known[digest] = coverage(self._root / path)
        except PictureProblem as error:
            return Problem(path, 0, "", str(error))
        return None


@frozen
class GatheredArtwork:
    """Design files by path from the content folder, and what is wrong with the others."""

    files: Mapping[str, ArtworkFile]
    pictures: Mapping[str, PictureSet]
    """How they are shown."""
    coverage: Coverages
    errors: tuple[Problem, ...]
    cautions: tuple[Problem, ...]


def gather_artwork(
    workshop: Workshop, known: MutableMapping[str, Fraction], *, decode: bool, wholly: bool
) -> GatheredArtwork:
    """Look at every design file, side by side; `decode` also counts the ink of those that are not known yet.

    `known` holds coverage by content hash and is added to. `wholly` decodes the known ones too, for `check`.
    """
    entries = [
        (f"projects/{project.id}/{artwork.file}", project, index)
        for project in workshop.projects.values()
        for index, artwork in enumerate(project.artwork)
    ]
    paths = sorted({path for path, *_ in entries})
    seen = dict(zip(paths, side_by_side(partial(_look, workshop.root), paths), strict=True))
    files = {path: each for path, each in seen.items() if isinstance(each, ArtworkFile)}
    errors = [Problem(path, 0, "", str(each)) for path, each in seen.items() if _is_broken(each)]
    cautions = [
        project.origin.problem(("artwork", index, "file"), str(seen[path]), Severity.CAUTION)
        for path, project, index in entries
        if isinstance(seen[path], UnreadArtwork)
    ]
    if wholly:
        known.clear()
    counted = Coverages(workshop.root, files, known)
    if decode or wholly:
        errors += filter(None, side_by_side(counted.problem, sorted(files)))
    with speaking(ENGLISH):  # as all problems are told
        notes = {path: tuple(note.words for note in each.notes) for path, each in files.items()}
    reviewed = {path: SeenArtwork(motif_of(each), each.colour, notes[path]) for path, each in files.items()}
    cautions += review_artwork(workshop, reviewed)
    pictures = {path: plan_preview(each) for path, each in files.items()}
    return GatheredArtwork(files, pictures, counted, tuple(errors), tuple(cautions))


def _look(root: Path, path: str) -> ArtworkFile | PictureProblem:
    try:
        return read_artwork(root / path)
    except PictureProblem as error:
        return error


def _is_broken(seen: ArtworkFile | PictureProblem) -> bool:
    return isinstance(seen, PictureProblem) and not isinstance(seen, UnreadArtwork)
