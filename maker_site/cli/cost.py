"""`maker-site cost`: what a sold item costs, line by line, and the price that meets the wanted margin."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path

import click

from maker_site.cli.reading import read_book, record_named
from maker_site.frozen import frozen
from maker_site.records.problems import NotReadable
from maker_site.records.quantities import amount, share
from maker_site.workings.money import (
    CostSheet,
    Figures,
    Price,
    WhatIf,
    Yield,
    cost_as_data,
    cost_sheet,
    price_of,
)


@frozen
class Tried:
    """Figures to try instead of those in the records, as typed."""

    pieces: int | None
    batch: int | None
    share: str | None
    labour: str | None


def run(content: Path, project_id: str, tried: Tried, *, as_json: bool, plain: bool) -> None:
    """Print the cost sheet of a project."""
    book = read_book(content)
    project = record_named(book.workshop.projects, project_id, "project")
    what_if, good_share = _what_if(tried)
    sheet = cost_sheet(
        book.workshop,
        project,
        good_share or book.yield_of(project),
        book.coverage_of(project),
        book.rows_to_cost(project),
        what_if,
    )
    price = price_of(project, sheet, book.workshop.shop)
    if as_json:
        click.echo(json.dumps(cost_as_data(sheet, price), ensure_ascii=False, indent=2))
    elif plain:
        for line in sheet.lines:
            click.echo(f"{line.name}\t{'' if line.amount is None else line.amount}\t{line.whole_basis}")
        click.echo(f"total\t{sheet.cost}\t{'complete' if sheet.complete else 'at least'}")
        click.echo(f"price\t{price.shown or ''}\t{price.source}")
    else:
        _table(sheet, price, book.figures, project.title)


def _what_if(tried: Tried) -> tuple[WhatIf, Yield | None]:
    try:
        labour = Fraction(amount(tried.labour).value) if tried.labour else None
        good = Yield(share(tried.share).of_one, "tried", assumed=True) if tried.share else None
    except (NotReadable, ValueError) as refused:
        raise click.UsageError(str(refused)) from refused
    return WhatIf(pieces=tried.pieces, batch=tried.batch, labour=labour), good


def _table(sheet: CostSheet, price: Price, figures: Figures, title: str) -> None:
    from rich.console import Console
    from rich.table import Table

    of = "one piece" if sheet.pieces == 1 else f"a set of {sheet.pieces}"
    table = Table(title=f"{title}: what {of} costs, made {sheet.batch} at one go", title_justify="left")
    table.add_column("Line")
    table.add_column("Amount", justify="right")
    table.add_column("How it is worked out")
    for line in sheet.lines:
        table.add_row(line.name, "not known" if line.amount is None else figures.money(line.amount), line.whole_basis)
    table.add_section()
    total = figures.money(sheet.cost)
    table.add_row("Total", total if sheet.complete else f"at least {total}", f"yield {sheet.share.source}")
    console = Console()
    console.print(table)
    if price.shown is None:
        console.print(f"No price: {price.reason}.")
    else:
        how = "typed by hand" if price.source == "typed" else "worked out for the margin wanted"
        console.print(f"Price {figures.money(price.shown)}, {how}.")
    if price.profit is not None and price.fee is not None and price.tax is not None:
        margin = f", a margin of {figures.percent(price.margin)}" if price.margin is not None else ""
        console.print(
            f"Of it {figures.money(price.tax)} is tax and {figures.money(price.fee)} the selling fee; "
            f"{figures.money(price.profit)} is left{margin}."
        )
    for caution in price.cautions:
        console.print(f"Caution: {caution}.")
