"""Sums that are held: few of them where a make goes over each once, and the same ones whichever are held."""

import pytest

from maker_site.pages.noting import note, noting
from maker_site.pages.worked import Worked


def squares(asked: list[int]) -> Worked[int]:
    def work(name: str) -> int:
        note("number", name)
        asked.append(int(name))
        return int(name) ** 2

    return Worked(lambda: map(str, range(5)), work)


def test_a_sum_is_worked_out_once() -> None:
    asked: list[int] = []
    sums = squares(asked)
    assert [*sums.values(), *sums.values()] == [0, 1, 4, 9, 16] * 2
    assert asked == [0, 1, 2, 3, 4]


@pytest.mark.parametrize("most", [1, 2, 5])
def test_of_few_that_are_held_each_is_the_same_and_notes_the_same(most: int) -> None:
    asked: list[int] = []
    sums = squares(asked)
    sums.hold(most)
    with noting() as reads:
        assert [*sums.values(), *sums.values()] == [0, 1, 4, 9, 16] * 2
    assert reads == {("number", str(number)) for number in range(5)}
    assert len(asked) == (5 if most == 5 else 10)
    assert sums.made_of("3") == (("number", "3"),)


def test_those_that_were_worked_out_last_are_held() -> None:
    asked: list[int] = []
    sums = squares(asked)
    sums.hold(2)
    assert [sums[name] for name in "01223"] == [0, 1, 4, 4, 9]
    assert sums["2"] == 4
    assert asked == [0, 1, 2, 3]
