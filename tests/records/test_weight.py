"""What records weigh in memory: a large workshop has a hundred thousand rows, and all of them are held."""

import pickle
import subprocess
import sys

from maker_site.records import load
from maker_site.records.base import Lines, like
from maker_site.records.read_log import read_log
from maker_site.records.shop import Units
from tests.conftest import CONTENT

ROWS = 3000
HEADING = "date,blank,press,temperature,time,pressed,good,project"


def test_a_row_of_the_log_weighs_no_more_than_half_a_kilobyte() -> None:
    # Ours to choose: a hundred thousand of them then take an eighth of the 400 MB that a make may take. In a process
    # of its own: how small Python holds the fields of a kind of record depends on all that were made before.
    done = subprocess.run([sys.executable, "-c", _WEIGH], check=True, capture_output=True, text=True)
    rows, weight = map(int, done.stdout.split())
    assert rows == ROWS
    assert weight / ROWS < 500


_WEIGH = f"""
import tracemalloc
from maker_site.records.read_log import read_log
from maker_site.records.shop import Units

row = "2026-04-18,coaster,clam,200 C,60 s,2,1,bunting"
read_log("\\n".join(["{HEADING}", row]), "log.csv", Units())  # what reads is made now
text = "\\n".join(["{HEADING}", *(row for _ in range({ROWS}))])
tracemalloc.start()
rows, problems = read_log(text, "press-log/2026.csv", Units())
assert not problems
print(len(rows), tracemalloc.get_traced_memory()[0])
"""


def test_records_that_give_the_same_fields_hold_the_same_names_once() -> None:
    workshop = load(CONTENT).workshop
    assert workshop is not None
    given = [each.model_fields_set for each in workshop.projects.values()]
    assert len({id(names) for names in given}) == len({frozenset(names) for names in given})


def test_a_record_is_the_same_after_it_was_pickled() -> None:
    workshop = load(CONTENT).workshop
    assert workshop is not None
    for record in (*workshop.projects.values(), *workshop.blanks.values(), *workshop.pressings):
        again = pickle.loads(pickle.dumps(record))
        assert again == record
        assert again.origin == record.origin
        assert again.model_fields_set is record.model_fields_set


def test_a_row_like_another_leaves_that_one_as_it_is() -> None:
    rows, _ = read_log(f"{HEADING}\n2026-04-18,coaster,clam,200 C,60 s,2,1,bunting", "log.csv", Units())
    other = like(rows[0], {"id": "log.csv:7", "good": 2})
    assert (rows[0].good, rows[0].origin.line(())) == (1, 2)
    assert (other.good, other.origin.line(()), other.project) == (2, 7, "bunting")


def test_lines_are_found_by_their_places() -> None:
    found = {(): 1, ("title",): 1, ("photos", 0, "file"): 70_000}
    lines = Lines(found)
    assert dict(lines) == found
    assert lines == found
    assert lines.get(("photos",)) is None
