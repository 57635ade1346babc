"""Bring any picture to 8-bit sRGB (IEC 61966-2-1) on a white ground. Inner module.

Two steps, because resizing goes between them: `flattened` makes it 8-bit without alpha in its own colour
space, `to_srgb` converts the (by then smaller) picture by its embedded profile.
"""

from __future__ import annotations

import io
from functools import lru_cache
from itertools import product

from PIL import Image, ImageCms

# ICC.1, data colour space signatures
_SPACES = {"RGB": "RGB ", "L": "GRAY", "CMYK": "CMYK", "LAB": "Lab "}
_STEPS = 6  # of the grid, in each channel, on which a profile is compared with sRGB


def flattened(picture: Image.Image) -> Image.Image:
    """Give a picture of mode RGB, L, CMYK or LAB: alpha laid on white, palette resolved, 16 bits to 8.

    White is chosen for every format, so that dark ink on clear ground stays to be seen on a dark page.
    Raises ValueError on pixels that are measurements and no picture (32-bit).
    """
    if picture.mode in {"I", "F"}:
        msg = "its pixels are 32-bit measurements, save it with 8 or 16 bits a channel"
        raise ValueError(msg)
    if picture.mode.startswith("I;16"):
        return _high_bytes(picture)
    if picture.has_transparency_data:
        clear = picture.convert("RGBA")
        ground = Image.new("RGB", clear.size, "white")
        ground.paste(clear, mask=clear.getchannel("A"))
        return ground
    if picture.mode in _SPACES:
        return picture
    return picture.convert("L" if picture.mode == "1" else "RGB")


def to_srgb(picture: Image.Image, profile: bytes | None) -> Image.Image:
    """Convert a flattened picture to sRGB by its embedded ICC profile.

    Without one, or with one that is broken or of another colour space, RGB is taken for sRGB, grey for sRGB's
    grey, and CMYK is turned by plain subtraction.
    """
    if picture.mode == "LAB":
        profile = None  # Lab is a colour space of its own: nothing to be told about it
    elif not profile:
        return picture.convert("RGB")
    conversion = _conversion(profile, picture.mode)
    return picture.convert("RGB") if conversion is None else conversion.apply(picture)


@lru_cache(maxsize=16)
def _conversion(profile: bytes | None, mode: str) -> ImageCms.ImageCmsTransform | None:
    """Give the conversion, or None where it changes nothing, does not fit the mode or can't be read."""
    try:
        if profile is None:
            source = ImageCms.ImageCmsProfile(ImageCms.createProfile("LAB"))
        else:
            source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        if source.profile.xcolor_space != _SPACES[mode]:
            return None
        conversion = ImageCms.buildTransform(
            source,
            ImageCms.createProfile("sRGB"),
            mode,
            "RGB",
            renderingIntent=ImageCms.Intent.RELATIVE_COLORIMETRIC,
            flags=ImageCms.Flags.BLACKPOINTCOMPENSATION,
        )
    except (ImageCms.PyCMSError, OSError, ValueError):
        return None
    return None if mode == "RGB" and _changes_nothing(conversion) else conversion


def _changes_nothing(conversion: ImageCms.ImageCmsTransform) -> bool:
    """Say whether the profile is sRGB under whatever name: no channel moves by more than 1 of 255."""
    steps = [round(255 * step / (_STEPS - 1)) for step in range(_STEPS)]
    before = bytes(channel for colour in product(steps, repeat=3) for channel in colour)
    after = conversion.apply(Image.frombytes("RGB", (_STEPS**3, 1), before)).tobytes()
    return all(abs(one - other) <= 1 for one, other in zip(before, after, strict=True))


def _high_bytes(picture: Image.Image) -> Image.Image:
    """Give the upper 8 of 16 bits: Pillow's own conversion has clipped, not scaled, in some versions."""
    big_endian = picture.mode == "I;16B"
    return Image.frombytes("L", picture.size, picture.tobytes()[0 if big_endian else 1 :: 2])
