"""Any workshop without a mistake is read as it was written; any mistake is a sentence."""

import tempfile
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from maker_site.records import load
from tests.records.conftest import SMALLEST
from tests.strategies import workshops


@settings(max_examples=25, deadline=None)
@given(made=workshops(), separator=st.sampled_from(",;\t"))
def test_what_was_written_is_read(made, separator):
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        made.write(root, separator)
        findings = load(root)
    # A lot is a lot of a blank and rows name none, so that nothing is left to be questioned.
    assert findings.problems == ()
    found = findings.workshop
    assert (found.shop.name, found.shop.currency) == (made.shop["name"], made.shop["currency"])
    assert found.shop.labour.value == Decimal(made.shop["labour"])
    for kind in ("blanks", "presses", "supplies", "projects"):
        assert list(getattr(found, kind)) == sorted(getattr(made, kind))
    for each, fields in made.blanks.items():
        blank = found.blanks[each]
        assert (blank.id, blank.name, blank.substrate, blank.note) == (
            each,
            fields["name"],
            fields["substrate"],
            fields.get("note"),
        )
        assert [(lot.count, lot.paid.typed, lot.lot) for lot in blank.bought] == [
            (int(lot["count"]), lot["paid"], lot["lot"]) for lot in fields.get("bought", [])
        ]
        if "thickness" in fields:
            assert blank.thickness.mm == Fraction(fields["thickness"].removesuffix(" mm"))
    for each, fields in made.presses.items():
        assert (found.presses[each].name, found.presses[each].watts) == (fields["name"], int(fields["watts"]))
    for each, fields in made.projects.items():
        project = found.projects[each]
        assert (project.title, project.blank, project.note) == (
            fields["title"],
            fields["blank"],
            fields.get("note"),
        )
        assert list(project.occasions) == fields.get("occasions", [])
        assert (project.made.isoformat() if project.made else None) == fields.get("made")
        assert [use.supply for use in project.supplies] == [use["supply"] for use in fields.get("supplies", [])]
    for ours, fields in zip(found.pressings, sorted(made.rows, key=lambda row: row["date"]), strict=True):
        assert (ours.date.isoformat(), ours.blank, ours.press) == (fields["date"], fields["blank"], fields["press"])
        assert f"{ours.temperature.fahrenheit} F" == fields["temperature"]
        assert f"{ours.time.seconds} s" == fields["time"]
        assert (ours.pressed, ours.good) == (int(fields["pressed"]), int(fields["good"]))
        assert (ours.project or "", ours.note or "") == (fields["project"], fields["note"])


@settings(max_examples=50, deadline=None)
@given(
    name=st.sampled_from([*SMALLEST, "about.md", "articles/a.md", "articles/a.yaml", "projects/harbour/tutorial.md"]),
    raw=st.one_of(
        st.binary(max_size=80),
        st.text(max_size=80).map(str.encode),
        st.text("abc: -[]{}'\"\n,;&*!|#x()/.\\", max_size=80).map(str.encode),
    ),
    after=st.booleans(),
)
def test_any_bytes_in_any_file_end_in_sentences(name, raw, after):
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        for file, text in SMALLEST.items():
            (root / file).parent.mkdir(parents=True, exist_ok=True)
            (root / file).write_bytes(text.encode() + (raw if after and file == name else b""))
        if name not in SMALLEST or not after:
            (root / name).parent.mkdir(parents=True, exist_ok=True)
            (root / name).write_bytes(raw)
        findings = load(root)
    assert (findings.workshop is None) == bool(findings.errors)
    for problem in findings.problems:
        assert problem.message
        assert problem.file
        assert problem.line >= 0
