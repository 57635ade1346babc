"""What is wrong with a picture, in a sentence the maker can act on. Inner module."""

from __future__ import annotations

from pathlib import Path

READ_FORMATS = "JPEG, PNG, WebP, TIFF, HEIC/HEIF, AVIF and GIF (its first frame)"
"""The formats that are read, as shown to the maker."""


class PictureProblem(ValueError):  # told to the maker as one of the records' problems
    """A picture file that can't be used; ``str()`` gives the sentence, without the file's name."""

    def __init__(self, path: Path, sentence: str) -> None:
        super().__init__(sentence)
        self.path = path
        """The file as it was handed in, for the caller to show in the maker's terms."""
        self.sentence = sentence
        """What was met and what to do about it."""

    def __reduce__(self) -> tuple[type[PictureProblem], tuple[Path, str]]:
        return type(self), (self.path, self.sentence)  # so that it crosses from a worker process whole
