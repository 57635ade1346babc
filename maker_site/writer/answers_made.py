"""All that is kept for answers, made of all records: rows, words, and what an edit is mended from later on."""

from __future__ import annotations

import json
import marshal
import os
import secrets
import zlib
from array import array
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from maker_site.records import Workshop, gist
from maker_site.workings.evidence import Evidence, evidence_of
from maker_site.workings.finding.index import WEIGHT_BITS, Indexing
from maker_site.workings.finding.rows import Row, points_by_blank, rows, starts
from maker_site.workings.finding.told import Teller, teller
from maker_site.writer.answers_draft import project_kept
from maker_site.writer.answers_kept import FORM, NO_TEXT, Name, said
from maker_site.writer.answers_order import KEY
from maker_site.writer.fingerprint import Fingerprint, path_of


def parts_of(workshop: Workshop, content: Path, seen: Fingerprint) -> Iterator[tuple[str, Name, bytes]]:
    """Yield all that is kept, each by its kind and its number or name."""
    groups = evidence_of(workshop)
    points = points_by_blank(workshop, groups)
    yield "form", FORM, seen.program.encode()
    yield "mark", 0, secrets.token_bytes(16)
    yield "records", 0, seen.records.encode()
    yield "stamps", 0, "\n".join(seen.lines).encode("utf-8", "surrogateescape")
    yield "shop", 0, as_json({"temperature": workshop.shop.units.temperature})
    yield "blanks", 0, as_json(sorted(workshop.blanks))
    yield "presses", 0, as_json(sorted(workshop.presses))
    yield from _found(sorted(workshop.blanks), rows(workshop, groups, points))
    for _, blank in sorted(workshop.blanks.items()):
        yield "start", blank.id, as_json(starts(blank, points[blank.id]))
    yield from _mended_from(workshop, groups)
    for line in seen.lines:
        path = path_of(line)
        yield "text", key_of(path), text_kept(content, path)


def as_json(value: object) -> bytes:
    """Return plain values as JSON."""
    return json.dumps(value, ensure_ascii=False).encode()


def key_of(path: str) -> bytes:
    """Return the name that a file's text is kept by."""
    return path.encode("utf-8", "surrogateescape")


def text_kept(content: Path, path: str) -> bytes:
    """Return a file's bytes as they are kept."""
    try:
        raw = Path(os.path.join(content, path)).read_bytes()  # noqa: PTH118
    except OSError:
        return NO_TEXT
    return zlib.compress(raw, 1)


def _found(blanks: Sequence[str], found: Iterable[Row]) -> Iterator[tuple[str, Name, bytes]]:
    """Yield the rows one by one, then by what words they are found, and what masks those of a blank."""
    numbers = {blank: number for number, blank in enumerate(blanks)}
    indexing, keys, likes, of_row = Indexing(), bytearray(), {}, array("I")
    for number, row in enumerate(found):
        yield "row", number, as_json(row.facts)
        indexing.add(row.sayings)
        blank = numbers[str(row.facts["blank"])]
        of_row.append(blank)
        keys += KEY.pack(*row.order[:-1], blank)
        if row.like:
            likes[number] = row.like
    yield "keys", 0, bytes(keys)
    yield "likes", 0, as_json(likes)
    indexed = indexing.done()
    yield "words", 0, "\n".join(indexed.vocabulary.words).encode()
    yield "spans", 0, as_json([[span.kind, span.low, span.high] for span in indexed.vocabulary.spans])
    for number, posted in enumerate(indexed.postings):
        yield "postings", number, posted.tobytes()
    yield from _masked_by(blanks, of_row, indexed.postings)


def _mended_from(workshop: Workshop, groups: Sequence[Evidence]) -> Iterator[tuple[str, Name, bytes]]:
    """Yield what the settings of a blank are worked out from, and what an edited record has to agree with."""
    units = workshop.shop.units
    yield "bare", 0, marshal.dumps((units.temperature, units.length, units.pressure, workshop.shop.currency))
    yield "press gists", 0, said({each.id: gist.of_press(each) for each in workshop.presses.values()})
    yield "layers", 0, marshal.dumps(sorted(workshop.supplies))
    yield "was", 0, marshal.dumps(sorted({old for each in workshop.projects.values() for old in each.was}))
    log: dict[str, dict[str, list[gist.Row]]] = defaultdict(dict)
    naming: dict[str, set[str]] = defaultdict(set)
    for pressing in workshop.pressings:
        row = gist.of_pressing(pressing)
        log[row.blank].setdefault(row.file, []).append(row)
        if row.project:
            naming[row.project].add(row.blank)
    for blank_id, files in log.items():
        yield "log", blank_id, said({file: tuple(sorted(each, key=_line)) for file, each in files.items()})
    for project in workshop.projects.values():
        yield "project", project.id, project_kept(project.title, project.occasions, naming[project.id])
    yield from _tellers(workshop, groups)


def _line(row: gist.Row) -> int:
    return row.number


def _tellers(workshop: Workshop, groups: Sequence[Evidence]) -> Iterator[tuple[str, Name, bytes]]:
    mine: dict[str, list[Evidence]] = defaultdict(list)
    for each in groups:
        mine[each.setting.blank].append(each)
    alike: dict[str, dict[str, Teller]] = defaultdict(dict)
    for blank in workshop.blanks.values():
        alike[blank.substrate][blank.id] = teller(gist.of_blank(blank), mine[blank.id])
    for substrate, tellers in alike.items():
        yield "tellers", substrate, said(tellers)
    yield "substrates", 0, marshal.dumps({blank.id: blank.substrate for blank in workshop.blanks.values()})


def _masked_by(
    blanks: Sequence[str], of_row: Sequence[int], postings: Sequence[array[int]]
) -> Iterator[tuple[str, Name, bytes]]:
    """Yield what tells which rows and words are left when a blank's rows are others."""
    words: list[tuple[array[int], array[int]]] = [(array("I"), array("I")) for _ in blanks]
    for number, posted in enumerate(postings):
        for blank, count in Counter([of_row[each >> WEIGHT_BITS] for each in posted]).items():
            words[blank][0].append(number)
            words[blank][1].append(count)
    yield "totals", 0, array("I", map(len, postings)).tobytes()
    slots: list[array[int]] = [array("I") for _ in blanks]
    for at, blank in enumerate(of_row):
        slots[blank].append(at)
    for blank_id, (said_in, counts), mine in zip(blanks, words, slots, strict=True):
        yield "said", blank_id, marshal.dumps((mine.tobytes(), said_in.tobytes(), counts.tobytes()))
