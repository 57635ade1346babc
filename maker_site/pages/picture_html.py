"""A picture as HTML: the sizes a browser may choose from, and the room it takes before it has come."""

from __future__ import annotations

from markupsafe import Markup

from maker_site.pages.addresses import relative
from maker_site.pages.parts import Picture


def picture_html(picture: Picture, here: str, sizes: str = "100vw", *, eager: bool = False) -> Markup:
    """Return the picture element for the page at `here`; `sizes` as in HTML, how wide it stands in the layout.

    Width and height keep the layout still; all but the page's first picture wait until they are near (`eager`).
    """
    choices = ", ".join(f"{relative(here, source.address)} {source.width}w" for source in picture.modern)
    wait = Markup(' fetchpriority="high"') if eager else Markup(' loading="lazy"')
    return Markup(
        '<picture><source type="{type}" srcset="{choices}" sizes="{sizes}">'
        '<img src="{src}" alt="{alt}" width="{width}" height="{height}" decoding="async"{wait}></picture>'
    ).format(
        type=picture.modern_type,
        choices=choices,
        sizes=sizes,
        src=relative(here, picture.fallback.address),
        alt=picture.text,
        width=picture.width,
        height=picture.height,
        wait=wait,
    )


def figure_html(picture: Picture, here: str, sizes: str = "(min-width: 48em) 42rem, 100vw") -> Markup:
    """Return a picture of a text with its caption."""
    caption = Markup("<figcaption>{}</figcaption>").format(picture.caption) if picture.caption else Markup("")
    return Markup('<figure class="shown">{}{}</figure>').format(picture_html(picture, here, sizes), caption)
