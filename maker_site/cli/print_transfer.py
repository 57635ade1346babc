"""`maker-site print transfer`: true-size transfers, ganged on as few sheets as can be found."""

from __future__ import annotations

import json
import tempfile
from pathlib import Path
from typing import NoReturn

import click

from maker_site.cli.paper_file import check_target, fail, paper_asked, tell_cautions, write_paper
from maker_site.cli.reading import read_book, record_named
from maker_site.frozen import frozen
from maker_site.language import speaking
from maker_site.media import PictureProblem
from maker_site.paper.transfer import Job
from maker_site.paper.typesetting import PaperProblem
from maker_site.records.content_folder import reason
from maker_site.writer.printing import setter
from maker_site.writer.themes import ThemeProblem, theme
from maker_site.writer.transfer_job import Asked, TransferProblem, sheets_as_data, sheets_of

_LONGEST_LIST = 1024 * 1024


@frozen
class Options:
    """What was said on the command line, as typed."""

    pieces: int | None
    paper: str | None
    names: Path | None
    mirror: str | None
    out: Path | None
    theme: str


def run(content: Path, ids: tuple[str, ...], options: Options, *, as_json: bool) -> None:
    """Make the PDF and say how many sheets it takes and what of the paper is left over."""
    book = read_book(content)
    projects = [record_named(book.workshop.projects, each, "project") for each in dict.fromkeys(ids)]
    asked = Asked(
        options.pieces,
        paper_asked(options.paper, book.workshop.shop.units.length),
        names_in(options.names) if options.names else None,
        {None: None, "yes": True, "no": False}[options.mirror],
    )
    out = options.out or Path(f"{projects[0].id}{'-and-more' if len(projects) > 1 else ''}-transfer.pdf")
    check_target(out)
    try:
        with speaking(book.language):
            sheets = sheets_of(book, projects, asked)
            with setter(theme(options.theme, content), content) as setting, tempfile.TemporaryDirectory() as folder:
                pdf, more = sheets.set(setting, book, Path(folder))
    except TransferProblem as problem:
        _refused(problem)
    except ThemeProblem as problem:
        raise click.UsageError(str(problem)) from problem
    except (PictureProblem, PaperProblem) as problem:
        fail([str(problem)])
    write_paper(out, pdf)
    tell_cautions((*sheets.cautions, *more))
    if as_json:
        click.echo(json.dumps(sheets_as_data(sheets.job), ensure_ascii=False, indent=2))
    else:
        _tell(sheets.job, out)


def names_in(file: Path) -> tuple[str, ...]:
    """Return the names of a list, one a line, as they are spelt; empty lines are passed over."""
    try:
        raw = file.read_bytes()
    except OSError as error:
        raise click.UsageError(f"“{file}” can't be read: {reason(error)}") from error
    if len(raw) > _LONGEST_LIST:
        raise click.UsageError(f"“{file}” is larger than a list of names can be")
    try:
        text = raw.decode("utf-16" if raw[:2] in (b"\xff\xfe", b"\xfe\xff") else "utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        raise click.UsageError(f"“{file}”, line {line}: this is not UTF-8 text; save the list as UTF-8") from error
    return tuple(line.strip() for line in text.splitlines() if line.strip())


def _refused(problem: TransferProblem) -> NoReturn:
    if problem.wrong_use:
        raise click.UsageError("\n".join(problem.sentences)) from problem
    fail(problem.sentences)


def _tell(job: Job, out: Path) -> None:
    sheets = "1 sheet" if job.sheets == 1 else f"{job.sheets} sheets"
    pieces = "1 transfer" if len(job.transfers) == 1 else f"{len(job.transfers)} transfers"
    sizes = {(each.width, each.height) for each in job.transfers}
    holds = f"a full sheet holds {job.per_sheet}" if len(sizes) == 1 else f"up to {job.per_sheet} on a sheet"
    click.echo(
        f"{pieces} on {sheets} of {job.paper.name}, {holds}; {round(job.waste * 100)} % of the paper is left over."
    )
    click.echo(f"{out}: print at 100 %, not “fit to page”, and lay a ruler on the 100 mm line.")
