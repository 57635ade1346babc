"""The kinds of page that each copy has, and where one of each kind stands.

The addresses are the project's contract with the world; a kind that matches no page is a failure, not a skip.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

import pytest


@dataclass(frozen=True)
class Kind:
    """One kind of page."""

    name: str
    """What the page is, in the trade's words."""
    copy: str
    """The folder of the copy: workshop or public."""
    patterns: tuple[str, ...]
    """Where its pages may stand, most wanted first; `*` stands for a record's id."""

    def __str__(self) -> str:
        """Name the kind and its copy, as a test's id."""
        return f"{self.copy} {self.name}"


KINDS = (
    Kind("home", "workshop", ("index.html",)),
    Kind("search", "workshop", ("search.html",)),
    Kind("catalogue", "workshop", ("catalogue/index.html",)),
    Kind("project with photos", "workshop", ("projects/allotment-tally-coasters.html", "projects/*.html")),
    Kind("project without photos", "workshop", ("projects/barge-leather-patch.html",)),
    Kind("project with next to nothing", "workshop", ("projects/test-swatch-tags.html",)),
    Kind("press card", "workshop", ("cards/allotment-tally-coasters.html", "cards/*.html")),
    Kind("press card of a mug", "workshop", ("cards/plot-holder-mug.html",)),
    Kind("press card of two colours of vinyl", "workshop", ("cards/crust-and-crumb-tote.html",)),
    Kind("press card of next to nothing", "workshop", ("cards/test-swatch-tags.html",)),
    Kind("proof of a set", "workshop", ("proofs/allotment-tally-coasters.html", "proofs/*.html")),
    Kind("proof of a mug", "workshop", ("proofs/plot-holder-mug.html",)),
    Kind("settings", "workshop", ("settings/index.html",)),
    Kind("settings of a substrate", "workshop", ("settings/slate.html", "settings/*.html")),
    Kind("blanks", "workshop", ("blanks/index.html",)),
    Kind("blank", "workshop", ("blanks/slate-coaster-lumm.html", "blanks/*.html")),
    Kind("test ladder", "workshop", ("ladders/slate-coaster-marlpit.html", "ladders/*.html")),
    Kind("presses", "workshop", ("presses/index.html",)),
    Kind("press", "workshop", ("presses/clam.html", "presses/*.html")),
    Kind("supplies", "workshop", ("supplies/index.html",)),
    Kind("costs", "workshop", ("costs/index.html",)),
    Kind("cost sheet", "workshop", ("costs/allotment-tally-coasters.html", "costs/*.html")),
    Kind("cost sheet with figures missing", "workshop", ("costs/test-swatch-tags.html",)),
    Kind("writing", "workshop", ("writing/index.html",)),
    Kind("article", "workshop", ("writing/*.html",)),
    Kind("about", "workshop", ("about.html",)),
    Kind("menu", "workshop", ("menu.html",)),
    Kind("front", "public", ("index.html",)),
    Kind("tutorials", "public", ("tutorials/index.html",)),
    Kind("tutorial", "public", ("tutorials/allotment-tally-coasters.html", "tutorials/*.html")),
    Kind("articles", "public", ("articles/index.html",)),
    Kind("article", "public", ("articles/*.html",)),
    Kind("menu", "public", ("menu.html",)),
    Kind("about", "public", ("about.html",)),
    Kind("tutorial without steps or setting", "public", ("tutorials/plot-holder-mug.html",)),
    Kind("everything on a material", "public", ("on/slate.html", "on/*.html")),
    Kind("everything for an occasion", "public", ("for/new-home.html", "for/*.html")),
    Kind("everything of a month", "public", ("in/2026-01.html", "in/*.html")),
    Kind("gift ideas", "public", ("gifts.html",)),
    Kind("search", "public", ("search.html",)),
    Kind("nothing here", "public", ("404.html",)),
)
# Pages that lead on at once to where a record is now: nobody stays on them.
MOVED = (Kind("an article's old address", "public", ("articles/what-spent-paper-says.html",)),)

CARDS = tuple(kind for kind in KINDS if kind.name.startswith("press card"))


def each(kinds: Iterable[Kind]) -> pytest.MarkDecorator:
    """Run a test for each of the kinds; tests of one kind go to one parallel worker, which looks at its page once."""
    group = pytest.mark.xdist_group
    return pytest.mark.parametrize("kind", [pytest.param(kind, id=str(kind), marks=group(str(kind))) for kind in kinds])


def page_of(kind: Kind, site: Path) -> Path:
    """Give the first page of the kind. An index page is only given where the pattern names it.

    Raises LookupError, with every place that was looked at, where the site has no such page.
    """
    for pattern in kind.patterns:
        for found in sorted((site / kind.copy).glob(pattern)):
            if found.name != "index.html" or pattern.endswith("index.html"):
                return found
    places = ", ".join(f"{kind.copy}/{pattern}" for pattern in kind.patterns)
    raise LookupError(f"no page is a {kind.name}; looked for {places}")


def pages_of_no_kind(site: Path) -> list[str]:
    """List the pages that no kind claims: pages that no judge would look at."""
    claimed = {
        page for kind in (*KINDS, *MOVED) for pattern in kind.patterns for page in (site / kind.copy).glob(pattern)
    }
    return sorted(str(page.relative_to(site)) for page in site.rglob("*.html") if page not in claimed)
