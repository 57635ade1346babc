"""What a sold item costs, and the overview of costs."""

from __future__ import annotations

from markupsafe import Markup

from maker_site.frozen import frozen
from maker_site.pages.parts import Link
from maker_site.pages.workshop.views.settings import Fact


@frozen
class CostRow:
    """One line of the cost sheet."""

    name: str
    amount: str | None
    """None: not known."""
    basis: str
    """The arithmetic in words, or which figure is missing."""
    assumed: str
    """The figures in it that nobody wrote down; empty where all were."""
    key: Markup | None
    """The filling of its part of the bar; None where it has no part."""


@frozen
class CostShown:
    """What one sold item costs, as far as known."""

    lines: tuple[CostRow, ...]
    total: str
    complete: bool
    """False: the total is “at least”."""
    yield_words: str
    price: str | None
    price_words: str | None
    """Typed by hand, or worked out for which margin."""
    left: str | None
    """What is left for the maker of one."""
    margin: str | None
    """The same as a share of net sales, in a sentence."""
    loses: bool
    """The price does not cover the cost."""
    cautions: tuple[str, ...]
    assumed: tuple[str, ...]
    """Each figure that nobody wrote down, with the lines that lean on it."""
    bar: Markup | None


@frozen
class BreakRow:
    """Cost and worked-out price of one, for so many made at one go."""

    quantity: str
    cost: str
    price: str | None
    own: bool
    """The number that the project's record says."""


@frozen
class CostSheetPage:
    """costs/ID.html: what one sold item costs, and a place to try other figures."""

    id: str
    title: str
    project: Link
    one: str
    """What is sold as one: one piece, a set of 4."""
    cost: CostShown
    split: tuple[Fact, ...]
    """Where the price goes: tax, fee, cost, what is left."""
    wanted: str | None
    """A sentence with the price that would bring what is wanted, where another is typed."""
    breaks: tuple[BreakRow, ...]
    batch: int
    """Made at one go."""
    yield_percent: str
    """As a plain figure for an input: 92; empty where nothing came out good yet."""
    labour: str | None
    """Per hour, as a plain figure for an input."""
    typed: str | None
    """The price typed by hand, as a plain figure for an input."""
    data: str
    """JSON for the script that works the sheet out anew; the same rules, never the only way to read it."""


@frozen
class CostLineShown:
    """A project in the overview of costs; figures for sorting beside the words."""

    project: Link
    sheet: Link
    cost: str
    cost_figure: float
    price: str | None
    price_figure: float | None
    left: str | None
    left_figure: float | None
    margin: str | None
    margin_figure: float | None
    an_hour: str | None
    """What is left with the labour in it, for an hour at the bench."""
    an_hour_figure: float | None
    good: str
    """The yield: 92 %."""
    good_figure: float
    stock: int | None
    """Blanks left."""
    items: int
    """Sold items that the shelf is enough for."""
    likely: int
    """Those to count on, spoilage taken off."""
    loses: bool
    """The price does not cover the cost."""
    paid_figure: float | None
    """What the customer pays, tax and all."""


@frozen
class CostOverview:
    """costs/index.html, costs/2.html …: cost, price, margin, yield and stock of projects; what can be made now."""

    rows: tuple[CostLineShown, ...]
    """Of this page, by title."""
    total: int
    """Projects on all pages."""
    first: int
    """Place of this page's first row among all, from 0."""
    number: int
    """Of this page, from 1."""
    pages: int
    previous: Link | None
    next: Link | None
    losing: int
    """Projects whose price does not cover their cost."""
    incomplete: int
    """Projects with a figure missing."""
    can_make: tuple[CostLineShown, ...]
    """Those whose blanks are on the shelf, the cheapest price first; those without a price last. First page only."""
    makeable: int
    """How many there are of them; the page holds the first ones."""
    currency: str
    """By ISO 4217."""
    data: str
    """Address of the script with every project's row."""
