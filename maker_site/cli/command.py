"""The command `maker-site` and its commands. What a command needs is imported when it runs."""

from __future__ import annotations

from pathlib import Path

import click

from maker_site.cli.columns import cells_of_options, column_options
from maker_site.cli.exits import PROBLEMS, STOPPED
from maker_site.cli.stopping import as_before, stop_in_order

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


class _Commands(click.Group):
    def invoke(self, ctx: click.Context) -> object:
        """Run the command that was asked for, until Ctrl-C ends it."""
        before = stop_in_order()
        try:
            return super().invoke(ctx)
        except KeyboardInterrupt:
            click.echo("\nStopped.", err=True)
            raise SystemExit(STOPPED) from None
        finally:
            as_before(before)


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
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


@main.command("watch")
@_CONTENT
@_OUT
@click.option("--theme", default="print-room", show_default=True, help="The name of a theme, or the path of one.")
@click.option("--port", type=click.IntRange(1, 65535), default=4600, show_default=True, help="Where it is served.")
@click.option("--no-open", is_flag=True, help="Do not open the browser.")
def watch_command(content: Path, out: Path, theme: str, port: int, *, no_open: bool) -> None:
    """Make, open it in the browser, and refresh as files change; this computer alone is served."""
    from maker_site.cli.watch import run

    run(content, out, theme, port, opens=not no_open)


@main.command("check")
@_CONTENT
@click.option("--json", "as_json", is_flag=True, help="Print the problems as JSON.")
@click.option("--plain", is_flag=True, help="Print one problem a line, for scripts.")
@click.option("--links", is_flag=True, help="Ask every address that the records name, too; this needs the network.")
@click.pass_context
def check_command(context: click.Context, content: Path, *, as_json: bool, plain: bool, links: bool) -> None:
    """Read every record and list every problem; make nothing."""
    from maker_site.cli.check import run

    if run(content, as_json=as_json, plain=plain, links=links):
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


@main.group("add")
def add_group() -> None:
    """Add a pressing to the log, or the file of a new record. Nothing that is there is rewritten."""


@add_group.command("pressing")
@_CONTENT
@column_options
def add_pressing_command(content: Path, **options: str | None) -> None:
    """Write one row at the end of the press log; asks for what is needed and not said."""
    from datetime import date

    from maker_site.cli.add import run_pressing

    run_pressing(content, cells_of_options(options), date.today())  # noqa: DTZ011 - the maker's own calendar day


@add_group.command("blank")
@_CONTENT
@click.argument("record_id", metavar="ID")
@click.option("--name", help="What it is called.")
@click.option("--substrate", help="What it is made of.")
def add_blank_command(content: Path, record_id: str, **given: str | None) -> None:
    """Create blanks/ID.yaml; what may stay away is there in comments."""
    from maker_site.cli.add import run_record

    run_record(content, "blank", record_id, given)


@add_group.command("press")
@_CONTENT
@click.argument("record_id", metavar="ID")
@click.option("--name", help="What it is called.")
def add_press_command(content: Path, record_id: str, **given: str | None) -> None:
    """Create presses/ID.yaml; what may stay away is there in comments."""
    from maker_site.cli.add import run_record

    run_record(content, "press", record_id, given)


@add_group.command("supply")
@_CONTENT
@click.argument("record_id", metavar="ID")
@click.option("--name", help="What it is called.")
@click.option("--kind", help="Ink, tape, transfer paper …")
def add_supply_command(content: Path, record_id: str, **given: str | None) -> None:
    """Create supplies/ID.yaml; what may stay away is there in comments."""
    from maker_site.cli.add import run_record

    run_record(content, "supply", record_id, given)


@add_group.command("project")
@_CONTENT
@click.argument("record_id", metavar="ID")
@click.option("--title", help="What it is called.")
@click.option("--blank", help="The name of the blank's file.")
def add_project_command(content: Path, record_id: str, **given: str | None) -> None:
    """Create projects/ID/project.yaml with folders for photos and artwork beside it."""
    from maker_site.cli.add import run_record

    run_record(content, "project", record_id, given)


@main.command("import")
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@_CONTENT
@click.option("--write", is_flag=True, help="Add the rows; without it they are looked at and nothing is written.")
@click.option("--yes", is_flag=True, help="Take the guesses as they are shown.")
@click.option(
    "--map", "headings", multiple=True, metavar="THEIRS=OURS", help="What a heading means; “-” leaves it out."
)
@click.option("--blank", "blanks", multiple=True, metavar="THEIRS=ID", help="Which blank a word means.")
@click.option(
    "--press", "presses", multiple=True, metavar="THEIRS=ID", help="Which press; “=ID” where none is written."
)
@click.option("--project", "projects", multiple=True, metavar="THEIRS=ID", help="Which project a word means.")
@click.option("--dates", type=click.Choice(["dmy", "mdy"]), help="What comes first in 3/4/2026: the day or the month.")
@click.pass_context
def import_command(
    context: click.Context,
    file: Path,
    content: Path,
    *,
    write: bool,
    yes: bool,
    headings: tuple[str, ...],
    blanks: tuple[str, ...],
    presses: tuple[str, ...],
    projects: tuple[str, ...],
    dates: str | None,
) -> None:
    """Look at a spreadsheet of old notebook rows (CSV), and add them to the press log with --write.

    What was added before is not added again.
    """
    from maker_site.cli.import_rows import Said, pairs, run

    names = {
        "blank": pairs(blanks, "--blank"),
        "press": pairs(presses, "--press"),
        "project": pairs(projects, "--project"),
    }
    if run(content, file, Said(pairs(headings, "--map"), names, dates, yes), write=write):
        context.exit(PROBLEMS)


@main.command("export")
@_CONTENT
@click.option("--as", "form", type=click.Choice(["csv", "json"]), default="csv", show_default=True, help="The form.")
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    default="export",
    show_default=True,
    help="A new folder, or an empty one.",
)
def export_command(content: Path, form: str, out: Path) -> None:
    """Give everything back as plain tables, or as one JSON file, as you typed it."""
    from maker_site.cli.export import run

    run(content, out, form)


@main.group("print")
def print_group() -> None:
    """Make a PDF to print: transfers at true size, press cards, the menu."""


_PDF_OUT = click.option("--out", type=click.Path(path_type=Path), metavar="FILE.pdf", help="Where the PDF is put.")
_THEME = click.option("--theme", default="print-room", show_default=True, help="The name of a theme, or its path.")


@print_group.command("transfer")
@click.argument("projects", metavar="PROJECT…", nargs=-1, required=True)
@_CONTENT
@click.option("--pieces", type=click.IntRange(1, 2000), help="Transfers of each project; its artwork is taken in turn.")
@click.option("--paper", help="A3, A4, Letter, Tabloid, 13x19 or WxH; the shop’s paper if not said.")
@click.option(
    "--names",
    type=click.Path(exists=True, dir_okay=False, path_type=Path),
    help="A list of names, one a line: one transfer for each.",
)
@click.option("--mirror", type=click.Choice(["yes", "no"]), help="For films of which it is not known.")
@_PDF_OUT
@_THEME
@click.option("--json", "as_json", is_flag=True, help="Print where every transfer lies, in mm as it lies, as JSON.")
def print_transfer_command(
    projects: tuple[str, ...],
    content: Path,
    pieces: int | None,
    paper: str | None,
    names: Path | None,
    mirror: str | None,
    out: Path | None,
    theme: str,
    *,
    as_json: bool,
) -> None:
    """Make the transfers of every PROJECT at true size, mirrored where they must be, on as few sheets as may be."""
    from maker_site.cli.print_transfer import Options, run

    run(content, projects, Options(pieces, paper, names, mirror, out, theme), as_json=as_json)


@print_group.command("card")
@click.argument("projects", metavar="[PROJECT…]", nargs=-1)
@_CONTENT
@click.option("--substrate", help="The cards of every project on it.")
@click.option("--all", "every", is_flag=True, help="Every card.")
@click.option("--paper", help="A6 or 4x6, one card a page; A4 or Letter, several with cut marks; A6 if not said.")
@_PDF_OUT
@_THEME
def print_card_command(
    projects: tuple[str, ...],
    content: Path,
    substrate: str | None,
    paper: str | None,
    out: Path | None,
    theme: str,
    *,
    every: bool,
) -> None:
    """Make press cards to laminate, black on white, the cautions first."""
    from maker_site.cli.print_card import Which, run

    run(content, Which(projects, substrate, every), paper, out, theme)


@print_group.command("menu")
@_CONTENT
@click.option("--paper", help="A4, Letter, A3 … or WxH; the shop’s paper if not said. A large one makes a poster.")
@click.option("--fold", "folds", type=click.IntRange(0, 3), default=0, show_default=True, help="Folds of a leaflet.")
@_PDF_OUT
@_THEME
def print_menu_command(content: Path, paper: str | None, folds: int, out: Path | None, theme: str) -> None:
    """Make the menu to hand out, of nothing but what is shared: a sheet, a poster, or a leaflet."""
    from maker_site.cli.print_menu import run

    run(content, paper, folds, out, theme)
