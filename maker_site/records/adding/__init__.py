"""Adding to the maker's files: rows to the press log, new records. Nothing that is there is rewritten."""

from maker_site.records.adding.already import already_there
from maker_site.records.adding.answers import cells_of, column_of, last_used, pressing_of, problems_in_answers
from maker_site.records.adding.bench import Bench, read_bench
from maker_site.records.adding.dates import Order, order_of, unclear
from maker_site.records.adding.files import Added, NotAdded, add_rows, create_export, create_file, create_folders
from maker_site.records.adding.headings import Meaning, clashes, guess, meaning, settled
from maker_site.records.adding.log_text import HEADING
from maker_site.records.adding.old_rows import (
    NAMED,
    Choices,
    OldTable,
    Read,
    Refused,
    folded,
    known_names,
    old_table,
    read_old_rows,
    unnamed,
)
from maker_site.records.adding.record_text import KINDS, Kind, problems_in_needed, record_text

__all__ = [
    "HEADING",
    "KINDS",
    "NAMED",
    "Added",
    "Bench",
    "Choices",
    "Kind",
    "Meaning",
    "NotAdded",
    "OldTable",
    "Order",
    "Read",
    "Refused",
    "add_rows",
    "already_there",
    "cells_of",
    "clashes",
    "column_of",
    "create_export",
    "create_file",
    "create_folders",
    "folded",
    "guess",
    "known_names",
    "last_used",
    "meaning",
    "old_table",
    "order_of",
    "pressing_of",
    "problems_in_answers",
    "problems_in_needed",
    "read_bench",
    "read_old_rows",
    "record_text",
    "settled",
    "unclear",
    "unnamed",
]
