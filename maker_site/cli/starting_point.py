"""`maker-site starting-point`: what to set for a blank, and why to believe it."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from pathlib import Path

import click

from maker_site.cli.figures import Facts, both, clock, degrees, hazards, share
from maker_site.cli.find import telling_problems
from maker_site.frozen import frozen
from maker_site.writer.answers import Answers, ask

KEYS = (
    *("blank", "source", "reason", "temperature_c", "dial_c", "time_s"),
    *("pressure", "face", "pressed", "good", "low", "high"),
)


@frozen
class Answer:
    """The first starting point, the runner-up where there is one, and how the shop shows temperatures."""

    points: Sequence[Facts]
    unit: str


def run(content: Path, blank: str, press: str | None, *, as_json: bool) -> None:
    """Print where to begin with a blank; wrong use where there is no such blank or press."""

    def question(answers: Answers) -> Answer:
        _known("blank", blank, answers.blanks)
        if press is not None:
            _known("press", press, answers.presses)
        return Answer([dict(each) for each in answers.starting_points(blank, press)], answers.shop["temperature"])

    answer = telling_problems(lambda: ask(content, question))
    first = answer.points[0]
    if as_json:
        click.echo(json.dumps({key: first[key] for key in KEYS}, ensure_ascii=False, indent=2))
        return
    click.echo("\n".join(_lines(answer)))


def _known(kind: str, asked: str, ids: Sequence[str]) -> None:
    if asked not in ids:
        from maker_site.records.problems import nearest

        raise click.UsageError(f"there is no {kind} “{asked}”{nearest(asked, ids)}")


def _lines(answer: Answer) -> Iterator[str]:
    first, *others = answer.points
    yield click.style(f"{first['name']} ({first['blank']}), {first['substrate']}, {first['method']}", bold=True)
    yield from _point(first, answer.unit)
    for other in others:
        yield click.style("Runner-up", bold=True)
        yield from _point(other, answer.unit)
    yield click.style(click.wrap_text(hazards([first["substrate"]], _over_limit(answer)), width=78), fg="yellow")


def _point(facts: Facts, unit: str) -> Iterator[str]:
    said = [_heat(facts, unit), _time(facts), facts["pressure"], facts["face"]]
    if facts["source"]:
        yield _fact("Set", ", ".join(each for each in said if each))
    if ranges := ", ".join(_ranges(facts, unit)):
        yield _fact("Range", ranges)
    yield _fact("Why", facts["reason"])
    if facts["source"] == "relative":
        yield _fact(
            "Came out there", f"{facts['good']} of {facts['pressed']} good; the true share is likely {share(facts)}"
        )


def _fact(name: str, value: str) -> str:
    return click.wrap_text(f"{name}: {value}", width=78, initial_indent="  ", subsequent_indent="    ")


def _heat(facts: Facts, unit: str) -> str | None:
    true, dial = facts["temperature_c"], facts["dial_c"]
    if true is None:
        return None
    platen = both(*degrees(true, unit))
    if dial is None:
        return f"{platen} at the platen"
    shown = f"{both(*degrees(dial, unit))} on {facts['press']}"
    if facts["footing"] == "no readings":
        return f"{shown} (no readings: the dial is taken at its word)"
    guess = ", a guess beyond its readings" if facts["guess"] else ""
    return f"{shown} (at the platen {degrees(true, unit)[0]}{guess})"


def _time(facts: Facts) -> str | None:
    return both(*clock(facts["time_s"])) if facts["time_s"] is not None else None


def _ranges(facts: Facts, unit: str) -> Iterator[str]:
    for name, shown in (("celsius_range", lambda value: degrees(value, unit)), ("seconds_range", clock)):
        if facts.get(name) and facts[name][0] != facts[name][1]:
            low, high = (shown(value) for value in facts[name])
            yield both(f"{low[0]} to {high[0]}", f"{low[1]} to {high[1]}")


def _over_limit(answer: Answer) -> list[str]:
    limit = answer.points[0]["limit_c"]
    hottest = max((each["temperature_c"] or 0 for each in answer.points), default=0)
    if limit is None or hottest <= limit:
        return []
    return [f"Above what this blank bears, {both(*degrees(limit, answer.unit))}: set less"]
