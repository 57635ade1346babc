"""Pages as data by schema.org, for programs that read them: JSON-LD built of public views alone."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from decimal import Decimal
from html import unescape
from typing import Any
from urllib.parse import urljoin

from markupsafe import Markup

from maker_site.pages import addresses
from maker_site.pages.parts import Day, Link, MenuItem
from maker_site.pages.public.views import Article, Tutorial

_PICTURE = re.compile(r'<img src="([^"]+)"')
_UNSAFE = str.maketrans({each: f"\\u{ord(each):04x}" for each in "<>&\u2028\u2029"})
Node = dict[str, Any]


def script(nodes: Sequence[Node]) -> Markup:
    """Return nodes as JSON-LD that can't end the script element that it stands in."""
    text = json.dumps({"@context": "https://schema.org", "@graph": list(nodes)}, ensure_ascii=False)
    return Markup(text.translate(_UNSAFE))


def plain(text: Markup) -> str:
    """Return what HTML says, without its elements."""
    return str(text.striptags())


def shop_node(address: str, name: str, logo: str) -> Node:
    """Return the shop."""
    home = canonical(address, "index.html")
    return {"@type": "Organization", "@id": f"{home}#shop", "name": name, "url": home, "logo": logo}


def site_node(address: str, name: str, line: str | None, language: str) -> Node:
    """Return the whole copy."""
    home = canonical(address, "index.html")
    return _said(
        {
            "@type": "WebSite",
            "@id": f"{home}#site",
            "name": name,
            "url": home,
            "description": line,
            "inLanguage": language,
            "publisher": {"@id": f"{home}#shop"},
        }
    )


def breadcrumbs(address: str, ways: Sequence[Link]) -> Node:
    """Return the way from the front to a page, which comes last."""
    return {
        "@type": "BreadcrumbList",
        "itemListElement": [
            {"@type": "ListItem", "position": place, "name": each.text, "item": canonical(address, each.address)}
            for place, each in enumerate(ways, 1)
        ],
    }


def tutorial_node(address: str, here: str, view: Tutorial, picture: str, language: str) -> Node:
    """Return a tutorial: HowTo where it has steps, else Article."""
    page = canonical(address, here)
    common = _writing(address, page, view.title, view.summary, view.published, view.updated, picture, language)
    if not view.steps:
        return {"@type": "Article", "headline": view.title, **common}
    steps = []
    for number, step in enumerate(view.steps, 1):
        shown = _PICTURE.search(str(step.text))
        steps.append(
            _said(
                {
                    "@type": "HowToStep",
                    "position": number,
                    "name": plain(step.title),
                    "text": plain(step.text) or plain(step.title),
                    "url": f"{page}#step-{number}",
                    "image": urljoin(page, unescape(shown[1])) if shown else None,
                }
            )
        )
    supplies = [
        _said({"@type": "HowToSupply", "name": each.name, "requiredQuantity": each.amount}) for each in view.supplies
    ]
    tools = [{"@type": "HowToTool", "name": each} for each in view.tools]
    return {"@type": "HowTo", **common, **_said({"supply": supplies, "tool": tools}), "step": steps}


def article_node(address: str, here: str, view: Article, picture: str, language: str) -> Node:
    """Return an article."""
    page = canonical(address, here)
    common = _writing(address, page, view.title, view.summary, view.published, view.updated, picture, language)
    return {"@type": "Article", "headline": view.title, **common}


def product_node(address: str, item: MenuItem, price: Decimal | None, currency: str) -> Node:
    """Return something on the menu; an offer where it has a price, with a full stop and no separators."""
    place = canonical_place(address, item.address)
    offer = {
        "@type": "Offer",
        "price": f"{price:f}" if price is not None else None,
        "priceCurrency": currency,
        "url": place,
        "seller": {"@id": f"{canonical(address, 'index.html')}#shop"},
    }
    return _said(
        {
            "@type": "Product",
            "@id": place,
            "name": item.name,
            "description": item.line,
            "material": item.material,
            "size": item.size,
            "image": addresses.whole(address, item.picture.fallback.address) if item.picture else None,
            "offers": offer if price is not None else None,
        }
    )


def canonical(address: str, here: str) -> str:
    """Return the one whole address of a page; that of a folder's index is the folder's."""
    return addresses.whole(address, here.removesuffix("index.html") if here.endswith("index.html") else here)


def canonical_place(address: str, place: str) -> str:
    """Return the one whole address of a place on a page."""
    page, _, anchor = place.partition("#")
    return f"{canonical(address, page)}#{anchor}"


def _writing(
    address: str,
    page: str,
    name: str,
    summary: str | None,
    published: Day | None,
    updated: Day | None,
    picture: str,
    language: str,
) -> Node:
    shop = {"@id": f"{canonical(address, 'index.html')}#shop"}
    latest = updated or published
    return _said(
        {
            "@id": page,
            "name": name,
            "description": summary,
            "image": picture,
            "inLanguage": language,
            "datePublished": published.iso if published else None,
            "dateModified": latest.iso if latest else None,
            "author": shop,
            "publisher": shop,
            "mainEntityOfPage": page,
        }
    )


def _said(node: Node) -> Node:
    """Return a node without what has nothing to say."""
    return {name: value for name, value in node.items() if value not in (None, [], "")}
