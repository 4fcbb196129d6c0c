"""What a routine says that it takes, against its steps. Common practice, no source."""

import pytest

from support import make

TAKES = [
    # what it takes and its steps, whether the two disagree
    ("takes: 5 min, exercises: [{do: Walk., work: 5 min}]", False),
    ("takes: 7 min, exercises: [{do: Walk., work: 5 min}]", False),  # a quarter and a minute more: 7 min 15 s
    ("takes: 8 min, exercises: [{do: Walk., work: 5 min}]", True),
    ("takes: 3 min, exercises: [{do: Walk., work: 5 min}]", False),  # a quarter and a minute less: 2 min 45 s
    ("takes: 2 min, exercises: [{do: Walk., work: 5 min}]", True),
    ("takes: 2 min, rounds: 3, exercises: [{do: Walk., work: 2 min}]", True),
    ("takes: 6 min, rounds: 3, exercises: [{do: Walk., work: 2 min}]", False),
    ("takes: 2 min, exercises: [{exercise: lift, hold: 150 s}]", True),  # on each side: 5 min
    ("takes: 5 min, exercises: [{exercise: lift, hold: 150 s}]", False),
]


@pytest.mark.parametrize(("routine", "disagrees"), TAKES)
def test_takes_and_steps(routine: str, disagrees: bool) -> None:
    """A routine takes what its steps take, on both sides and in all rounds, give or take a quarter and a minute."""
    files = {"routines/warm": f"{{{routine}}}", "exercises/lift": "sides: one at a time"}
    found = make.verdict(make.programme(files)).findings

    assert [f.rule for f in found] == (["takes-disagrees-with-steps"] if disagrees else [])
