"""Articles and the page about the shop: writing that belongs to no project."""

from __future__ import annotations

from maker_site.records import fields as f
from maker_site.records.base import Part, Record


class ArticleHead(Part):
    """The fields of articles/ID.yaml; all may be absent."""

    published: f.Date | None = None
    updated: f.Date | None = None
    share: f.YesNo = False
    """Without it the article stays in the workshop copy."""
    summary: f.Text | None = None
    occasions: f.TextList = ()
    was: f.TextList = ()
    """Ids it had before; pages that lead on stay at their addresses. Public once the article is shared."""


class Article(Record):
    """A piece of writing; its first heading is the title."""

    title: str
    text: str
    """Markdown; empty lines stand where the heading was that is the title."""
    head: ArticleHead = ArticleHead()
