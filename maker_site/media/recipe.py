"""Which pictures are made of a photo: formats, effort and widths, chosen by measuring. Inner module.

Measured on four drawn 12-megapixel pictures (slate on wood, mug, cloth, reeds; 1/f texture, hard edges,
sensor noise) with Pillow 13.0, libavif 1.4.2, libwebp 1.6.0. Kilobytes are interpolated at
equal quality: SSIM (Wang et al. 2004, luma, 8 x 8 box) against the resized original of 0.94 at 1,600 px, the
four added; of 0.96 at 640 px, slate and cloth added (the smooth two reach it at nearly any quality).
Milliseconds: one picture of 1,600 px on one core.

    format, effort      kB at 1,600 px   kB at 640 px   ms
    JPEG progressive          636              99             18
    WebP method 2             539              84             55
    WebP method 4             484              75            126
    AVIF speed 9              367              74             76    <- chosen
    AVIF speed 8              316              60            224
    AVIF speed 7              310              58            371

With decoding and all widths, on two cores, a photo takes 145 ms, and would take 111 ms with WebP at method 2,
180 ms at method 4, and over 300 ms with AVIF at speed 8. So speed 9 saves a tenth (small) to a third (large) of
WebP's bytes for under a third more time, and the next step saves a sixth for twice the time. On the reeds alone
WebP was 8 % lighter. At the chosen figures AVIF has SSIM 0.963 at 640 px (mean of the four, lowest 0.940) and
35.1 dB; WebP of nearly the same size (quality 76) 0.959, lowest 0.917; the one JPEG 0.968 and 35.3 dB, for 4 ms.

Widths: of all sets of four to six up to 1,600 px, over an assumed spread (cards of 150 to 320 CSS px, phones,
desks; 1 to 3 dots a px), these four send 6 % more bytes than the best five and take 15 % less time.
"""

from __future__ import annotations

import hashlib
from dataclasses import astuple

from maker_site.frozen import frozen


@frozen
class Recipe:
    """How derivatives are made. Any change of a figure changes every file name."""

    version: int = 1
    """Raised when the code that makes the pictures changes what they look like."""
    widths: tuple[int, ...] = (480, 800, 1120, 1600)
    """Wanted widths in pixels, narrowest first."""
    fallback_width: int = 800
    """Width of the JPEG, in pixels."""
    tallest: int = 4800
    """No derivative is higher, in pixels, so that a long strip stays small."""
    avif_quality: int = 60
    """Of libavif, 0 to 100."""
    avif_speed: int = 9
    """Of libavif, 0 slowest to 10."""
    jpeg_quality: int = 78
    """Of libjpeg, 1 to 95."""

    @property
    def fingerprint(self) -> str:
        """A hash of every figure above, in hexadecimal."""
        return hashlib.blake2b(repr(astuple(self)).encode(), digest_size=16).hexdigest()


RECIPE = Recipe()
"""The recipe for a maker's photos."""
