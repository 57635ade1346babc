"""Money: what a piece costs, what to ask for it, what is left on the shelf. Exact figures, rounded only when shown."""

from maker_site.workings.money.anew import Once, Parts, amounts_anew, parts_of
from maker_site.workings.money.breaks import Break, quantity_breaks
from maker_site.workings.money.case import WhatIf
from maker_site.workings.money.contract import cost_as_data
from maker_site.workings.money.costing import CostSheet, by_project, cost_sheet
from maker_site.workings.money.ink import ink_ml
from maker_site.workings.money.landed import Landed, landed
from maker_site.workings.money.line import CostLine
from maker_site.workings.money.power import kilowatt_hours
from maker_site.workings.money.pricing import Price, Terms, price_for, price_of, rounded_up, terms_of
from maker_site.workings.money.shelf import Gift, Makeable, can_make, gifts_under, makeable_of
from maker_site.workings.money.stock import LotStock, Stock, all_stock, running_low, stock_of
from maker_site.workings.money.transfer_size import TransferSize, transfer_size
from maker_site.workings.money.words import Figures, decimal_of, digits_of, minor_unit, money, rounded
from maker_site.workings.money.yields import COMMON_YIELD, Yield, assumed_yield, pieces_to_start

__all__ = [
    "COMMON_YIELD",
    "Break",
    "CostLine",
    "CostSheet",
    "Figures",
    "Gift",
    "Landed",
    "LotStock",
    "Makeable",
    "Once",
    "Parts",
    "Price",
    "Stock",
    "Terms",
    "TransferSize",
    "WhatIf",
    "Yield",
    "all_stock",
    "amounts_anew",
    "assumed_yield",
    "by_project",
    "can_make",
    "cost_as_data",
    "cost_sheet",
    "decimal_of",
    "digits_of",
    "gifts_under",
    "ink_ml",
    "kilowatt_hours",
    "landed",
    "makeable_of",
    "minor_unit",
    "money",
    "parts_of",
    "pieces_to_start",
    "price_for",
    "price_of",
    "quantity_breaks",
    "rounded",
    "rounded_up",
    "running_low",
    "stock_of",
    "terms_of",
    "transfer_size",
]
