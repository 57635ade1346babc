"""Records: the maker's plain files, read into frozen values, with every problem in a sentence."""

from maker_site.records.article import Article, ArticleHead
from maker_site.records.base import Origin, Part, Record
from maker_site.records.blank import Blank, Hole, Lot, Sheet
from maker_site.records.load import load
from maker_site.records.press import Press, Reading, Resolution
from maker_site.records.pressing import Pressing
from maker_site.records.problems import NotReadable, Problem, Severity
from maker_site.records.project import Artwork, MenuEntry, NameBox, Order, Photo, Project, Share, Use, Work
from maker_site.records.shop import Fee, Printer, Shop, Tax, Units
from maker_site.records.supply import Supply
from maker_site.records.workshop import Findings, Workshop

__all__ = [
    "Article",
    "ArticleHead",
    "Artwork",
    "Blank",
    "Fee",
    "Findings",
    "Hole",
    "Lot",
    "MenuEntry",
    "NameBox",
    "NotReadable",
    "Order",
    "Origin",
    "Part",
    "Photo",
    "Press",
    "Pressing",
    "Printer",
    "Problem",
    "Project",
    "Reading",
    "Record",
    "Resolution",
    "Severity",
    "Share",
    "Sheet",
    "Shop",
    "Supply",
    "Tax",
    "Units",
    "Use",
    "Work",
    "Workshop",
    "load",
]
