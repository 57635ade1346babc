"""How many identical transfers fit a sheet, and where each of them lies."""

from maker_site.workings.sheet_layout.layout import Placed, SheetLayout, lay_out, sheets_needed

__all__ = ["Placed", "SheetLayout", "lay_out", "sheets_needed"]
