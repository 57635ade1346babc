"""What the header of a picture says about it as artwork. Inner module."""

from __future__ import annotations

import io
import os
from pathlib import Path
from typing import Final

from PIL import Image, ImageCms

from maker_site.language import marked
from maker_site.media.artwork.file import UNTAGGED, ArtworkFile, Note
from maker_site.media.opening import opened, orientation, upright_size
from maker_site.media.probing import content_hash

_COLOURS: Final = {
    "1": marked("black and white"),
    "L": marked("grey"),
    "LA": "grey",
    "La": "grey",
    "P": marked("indexed RGB"),
    "PA": "indexed RGB",
    "CMYK": "CMYK",
    "LAB": "Lab",
    "YCbCr": "RGB",
}
_LONGEST_NAME: Final = 60


def pixel_facts(path: Path, *, max_pixels: int) -> ArtworkFile:
    """Read the header of a picture. Raises `PictureProblem`."""
    with opened(path, max_pixels=max_pixels) as (kind, picture, stream):
        colour = "grey" if picture.mode.startswith("I") else _COLOURS.get(picture.mode, "RGB")
        pages = int(getattr(picture, "n_frames", 1) or 1)
        return ArtworkFile(
            kind,
            upright_size(picture.size, orientation(kind, picture)),
            None,
            colour,
            _profile_name(picture),
            bool(picture.has_transparency_data),
            pages,
            content_hash(path),
            os.fstat(stream.fileno()).st_size,
            (Note("pictures", pages),) if pages > 1 else (),
        )


def _profile_name(picture: Image.Image) -> str:
    """Return the description that an embedded ICC profile gives itself, cut to one short line."""
    profile = picture.info.get("icc_profile")
    if not profile:
        return "sRGB" if "srgb" in picture.info else UNTAGGED  # the PNG chunk of that name
    try:
        words = ImageCms.getProfileDescription(ImageCms.ImageCmsProfile(io.BytesIO(profile)))
    except (ImageCms.PyCMSError, OSError, ValueError):
        return "a profile that can't be read"
    line = " ".join("".join(each if each.isprintable() else " " for each in words).split())
    return line[:_LONGEST_NAME] or "a profile without a name"
