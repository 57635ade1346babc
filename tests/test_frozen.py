"""Frozen records are what the standard library's frozen dataclasses with slots are, and cost less at start-up."""

import copy
import pickle
import subprocess
import sys
from dataclasses import FrozenInstanceError, asdict, dataclass, field, fields, is_dataclass, replace
from typing import Any

import pytest

from maker_site.frozen import frozen


@frozen
class Ours:
    """A record of ours."""

    name: str
    pieces: tuple[int, ...]
    note: str = "none"

    @property
    def first(self) -> int:
        """The first piece."""
        return self.pieces[0]


@dataclass(frozen=True, slots=True)
class Standard:
    """The same record by the standard library, which says what is right."""

    name: str
    pieces: tuple[int, ...]
    note: str = "none"


@frozen
class One:
    name: str


@frozen
class Nothing:
    pass


@pytest.mark.parametrize("made", [lambda kind: kind("a", (1,)), lambda kind: kind("a", pieces=(1,), note="b")])
def test_a_record_has_the_fields_that_a_dataclass_has(made: Any) -> None:
    ours, standard = made(Ours), made(Standard)

    assert asdict(ours) == asdict(standard)
    assert [(each.name, each.type, each.default) for each in fields(Ours)] == [
        (each.name, each.type, each.default) for each in fields(Standard)
    ]
    assert repr(ours) == repr(standard).replace("Standard", "Ours")
    assert hash(ours) == hash(standard)
    assert Ours.__match_args__ == Standard.__match_args__
    assert is_dataclass(ours)
    assert not hasattr(ours, "__dict__")


def test_records_are_equal_by_their_values_and_their_kind() -> None:
    assert Ours("a", (1,)) == Ours("a", (1,))
    assert Ours("a", (1,)) != Ours("a", (2,))
    assert Ours("a", (1,)) != Standard("a", (1,))
    assert Ours("a", (1,)) != ("a", (1,), "none")
    assert One("a") == One("a") != One("b")
    assert Nothing() == Nothing()
    assert len({Ours("a", (1,)), Ours("a", (1,)), Ours("b", (1,))}) == 2


def test_replace_gives_another_record_and_leaves_the_first() -> None:
    first = Ours("a", (1,))

    assert replace(first, note="changed") == Ours("a", (1,), "changed")
    assert first.note == "none"
    assert first.first == 1


@pytest.mark.parametrize("change", [lambda it: setattr(it, "name", "b"), lambda it: delattr(it, "name")])
def test_a_record_refuses_to_change(change: Any) -> None:
    record = Ours("a", (1,))

    with pytest.raises(FrozenInstanceError, match="name"):
        change(record)
    assert record.name == "a"


@pytest.mark.parametrize("record", [Ours("a", (1,), "b"), One("a"), Nothing()])
def test_a_record_goes_through_a_pickle_and_a_copy(record: object) -> None:
    assert pickle.loads(pickle.dumps(record)) == record
    assert copy.deepcopy(record) == record


@pytest.mark.parametrize("values", [(), ("a",), ("a", (1,), "b", "too many")])
def test_wrong_values_are_refused_in_the_words_of_python(values: tuple[Any, ...]) -> None:
    with pytest.raises(TypeError) as standard:
        Standard(*values)

    for _ in range(2):  # compiled at the first, known at the second
        with pytest.raises(TypeError) as ours:
            Ours(*values)
        assert str(ours.value) == str(standard.value).replace("Standard", "Ours")


@pytest.mark.parametrize("usual", [[], {}, set(), field(default=1)])
def test_what_only_a_dataclass_can_do_is_refused(usual: Any) -> None:
    with pytest.raises(TypeError, match=r"needs dataclasses\.dataclass"):
        frozen(type("Wrong", (), {"__annotations__": {"name": "object"}, "name": usual}))


def test_nothing_is_compiled_before_a_record_is_made() -> None:
    code = """
import builtins
from maker_site.frozen import frozen
compiled, builtins_exec = [], builtins.exec
builtins.exec = lambda source, *scope: (compiled.append(source), builtins_exec(source, *scope))
@frozen
class Record:
    name: str
before = len(compiled)
Record("a"), Record("b")
print(before, len(compiled))
"""
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout

    assert told.split() == ["0", "1"]
