"""The command `maker-site` and its commands. What a command needs is imported when it runs."""

from __future__ import annotations

from pathlib import Path

import click

from maker_site.cli.exits import PROBLEMS

_CONTENT = click.option(
    "--content",
    type=click.Path(exists=True, file_okay=False, path_type=Path),
    default="content",
    show_default=True,
    help="The folder of your records.",
)
_OUT = click.option(
    "--out",
    type=click.Path(path_type=Path),
    default="site",
    show_default=True,
    help="The folder that the copies are made in.",
)


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="maker-site")
def main() -> None:
    """Turn a heat-press maker's records into a workshop catalogue and a public copy."""


@main.command("make")
@_CONTENT
@_OUT
@click.option("--theme", default="print-room", show_default=True, help="The name of a theme, or the path of one.")
def make_command(content: Path, out: Path, theme: str) -> None:
    """Make both copies: OUT/workshop for you, OUT/public for everybody."""
    from maker_site.cli.make import run

    run(content, out, theme)


@main.command("check")
@_CONTENT
@click.option("--json", "as_json", is_flag=True, help="Print the problems as JSON.")
@click.option("--plain", is_flag=True, help="Print one problem a line, for scripts.")
@click.pass_context
def check_command(context: click.Context, content: Path, *, as_json: bool, plain: bool) -> None:
    """Read every record and list every problem; make nothing."""
    from maker_site.cli.check import run

    if run(content, as_json=as_json, plain=plain):
        context.exit(PROBLEMS)


@main.command("cost")
@click.argument("project")
@_CONTENT
@click.option("--pieces", type=click.IntRange(1), help="Try another number of pieces in what is sold as one.")
@click.option("--batch", type=click.IntRange(1), help="Try another number made at one go.")
@click.option("--yield", "good_share", metavar="PERCENT", help="Try another share of good pieces, like 90 %.")
@click.option("--labour", metavar="AMOUNT", help="Try another rate an hour, like 14.00.")
@click.option("--json", "as_json", is_flag=True, help="Print the sheet as JSON, unrounded.")
@click.option("--plain", is_flag=True, help="Print one line a row, for scripts.")
def cost_command(
    project: str,
    content: Path,
    pieces: int | None,
    batch: int | None,
    good_share: str | None,
    labour: str | None,
    *,
    as_json: bool,
    plain: bool,
) -> None:
    """Show what PROJECT costs, line by line, and the price that meets the wanted margin."""
    from maker_site.cli.cost import Tried, run

    run(content, project, Tried(pieces, batch, good_share, labour), as_json=as_json, plain=plain)


@main.command("find")
@click.argument("words", nargs=-1, required=True)
@_CONTENT
@click.option("--json", "as_json", is_flag=True, help="Print every setting found as JSON.")
@click.option("--plain", is_flag=True, help="Print every setting found, one a line, parted by tabs.")
def find_command(words: tuple[str, ...], content: Path, *, as_json: bool, plain: bool) -> None:
    """Find past settings by WORDS in any order: material, blank, supplier, code, project, press, defect, figure."""
    from maker_site.cli.find import run

    run(content, words, as_json=as_json, plain=plain)


@main.command("starting-point")
@click.argument("blank")
@_CONTENT
@click.option("--press", metavar="ID", help="The press that it is to be set on.")
@click.option("--json", "as_json", is_flag=True, help="Print it as JSON.")
def starting_point_command(blank: str, content: Path, press: str | None, *, as_json: bool) -> None:
    """Show what to set for BLANK, and why."""
    from maker_site.cli.starting_point import run

    run(content, blank, press, as_json=as_json)
