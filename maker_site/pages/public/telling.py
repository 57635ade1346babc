"""What the programs of others are told of each page, where the shop says its address."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from maker_site.language import say
from maker_site.media.social import SOCIAL_SIZE
from maker_site.pages import addresses
from maker_site.pages.notebook import Notebook
from maker_site.pages.page import Drawn, Page
from maker_site.pages.parts import Day, Link
from maker_site.pages.public.data import (
    Node,
    article_node,
    breadcrumbs,
    canonical,
    script,
    shop_node,
    site_node,
    tutorial_node,
)
from maker_site.pages.public.signs import icon, social_of_page
from maker_site.pages.public.views import Article, Found, Tutorial


@dataclass(frozen=True)
class Teller:
    """Tells of the pages of one shop."""

    book: Notebook
    address: str | None

    @cached_property
    def usual_picture(self) -> Drawn:
        """What every page is shown with that has no picture of its own, so that few are drawn."""
        return social_of_page(self.book, self.book.workshop.shop.name)

    @cached_property
    def logo(self) -> str:
        """The whole web address of the shop's sign."""
        return addresses.whole(self.address or "", icon(self.book).address)

    def told(
        self, page: Page, ways: Sequence[Link] = (), drawn: Drawn | None = None, nodes: Sequence[Node] = ()
    ) -> Iterator[Page | Drawn]:
        """Yield the page with what is told of it, and the picture that it is shown with.

        `ways` lead from the front to the page, both left out. Without an address nothing can be told.
        """
        if self.address is None:
            yield page
            return
        shop = self.book.workshop.shop
        picture = drawn or self.usual_picture
        whole = addresses.whole(self.address, picture.address)
        language = shop.locale.replace("_", "-")
        published: Day | None = None
        updated: Day | None = None
        about = list(nodes)
        if isinstance(page.view, Tutorial | Article):
            published, updated = page.view.published, page.view.updated
            node = tutorial_node if isinstance(page.view, Tutorial) else article_node
            about.append(node(self.address, page.address, page.view, whole, language))  # type: ignore[arg-type]
        if page.address == "index.html":
            about.append(site_node(self.address, shop.name, shop.line, language))
        else:
            trail = [Link(shop.name, "index.html"), *ways, Link(page.title, page.address)]
            about.append(breadcrumbs(self.address, trail))
        width, height = SOCIAL_SIZE
        found = Found(
            canonical(self.address, page.address),
            "article" if isinstance(page.view, Tutorial | Article) else "website",
            shop.locale,
            whole,
            width,
            height,
            say("{page}, {shop}", page=page.title, shop=shop.name) if page.title != shop.name else shop.name,
            published,
            updated,
            script([shop_node(self.address, shop.name, self.logo), *about]),
        )
        yield replace(page, found=found)
        yield picture
