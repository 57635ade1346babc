"""What the site says itself, in the shop's language: GNU gettext catalogues, English where there is none.

Knows nothing of ours. The words of the records are the maker's and are never looked up here by themselves.
"""

from maker_site.language.lists import all_of, listed
from maker_site.language.speech import (
    ENGLISH,
    Language,
    apart,
    direction,
    language_of,
    marked,
    page_language,
    say,
    say_forms,
    say_in,
    say_n,
    speaking,
    spoken,
    tag_of,
)

__all__ = [
    "ENGLISH",
    "Language",
    "all_of",
    "apart",
    "direction",
    "language_of",
    "listed",
    "marked",
    "page_language",
    "say",
    "say_forms",
    "say_in",
    "say_n",
    "speaking",
    "spoken",
    "tag_of",
]
