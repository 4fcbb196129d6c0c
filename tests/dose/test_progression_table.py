"""What a written progression comes to, week by week: one line a case.

A progression counts trained weeks, from 1 here. Common practice, no source: linear and double progression; a rule of
this tool: listed weeks.
"""

import pytest

from setwright.wording.doses import dose_in_words
from setwright.wording.language import ENGLISH
from setwright.wording.times import duration
from support import make

REPS = "{reps: 8, progress: {reps: {add: 1, up_to: 10}}}"
BY_TWOS = "{reps: 8, progress: {reps: {add: 2, up_to: 11}}}"
SLOWLY = "{reps: 8, progress: {reps: {add: 1, every: 2 weeks, up_to: 10}}}"
HOLD = "{hold: 30 s, progress: {hold: {add: 5 s, up_to: 45 s}}}"
WORK = "{work: 30 s, progress: {work: {add: 15 s, up_to: 1 min}}}"
CARRY = "{distance: 20 m, progress: {distance: {add: 5 m, every: 2 weeks, up_to: 30 m}}}"
SETS = "{sets: 2, reps: 8, progress: {sets: {add: 1, every: 3 weeks, up_to: 4}}}"
LISTED = "{reps: 10, progress: {reps: {weeks: [10, 10, 12, 8]}}}"
KILOS = "{reps: 5, load: 20 kg, progress: {load: {add: 2 kg, up_to: 25 kg}}}"
SHARE = (
    "{reps: 5, load: 15 % bodyweight, "
    "progress: {load: {add: 1.5 % bodyweight, every: 2 weeks, up_to: 18 % bodyweight}}}"
)
MAX = "{reps: 5, load: 70 % 1RM, progress: {load: {add: 2.5 % 1RM, up_to: 75 % 1RM}}}"
EFFORT = "{reps: 5, load: RPE 6, progress: {load: {add: RPE 0.5, up_to: RPE 7}}}"
RESERVE = "{reps: 5, load: 4 reps in reserve, progress: {load: {take: 1 rep in reserve, down_to: 2 reps in reserve}}}"
BANDS = "{reps: 12, load: light band, progress: {load: {weeks: [light band, light band, medium band]}}}"
LATER = "{reps: 6, progress: {load: {weeks: [4 kg, 6 kg]}}}"
TEMPO = "{reps: 6, tempo: 3-0-1-0, progress: {tempo: {weeks: [3-0-1-0, 4-0-1-0, 2-0-X-0]}}}"
DOUBLE = "{reps: 8, load: 10 kg, progress: {reps: {add: 1, up_to: 10}, then: {load: {add: 2 kg, up_to: 13 kg}}}}"
DOUBLE_BY_TWOS = "{reps: 5, load: 10 kg, progress: {reps: {add: 2, up_to: 8}, then: {load: {add: 2 kg, up_to: 12 kg}}}}"
DOUBLE_SLOWLY = (
    "{reps: 8, load: 10 kg, "
    "progress: {reps: {add: 1, every: 2 weeks, up_to: 9}, then: {load: {add: 2 kg, up_to: 12 kg}}}}"
)
DOUBLE_HOLD = (
    "{hold: 20 s, load: 4 kg, progress: {hold: {add: 10 s, up_to: 30 s}, then: {load: {add: 2 kg, up_to: 6 kg}}}}"
)
DOUBLE_RESERVE = (
    "{reps: 8, load: 3 reps in reserve, progress: {reps: {add: 2, up_to: 10}, "
    "then: {load: {take: 1 rep in reserve, down_to: 2 reps in reserve}}}}"
)

CASES = [
    # a number grows by a step and stops at its end
    (REPS, 1, "3 sets of 8 reps"),
    (REPS, 2, "3 sets of 9 reps"),
    (REPS, 3, "3 sets of 10 reps"),
    (REPS, 4, "3 sets of 10 reps"),
    (REPS, 40, "3 sets of 10 reps"),
    # and its last step is cut short, not left out
    (BY_TWOS, 2, "3 sets of 10 reps"),
    (BY_TWOS, 3, "3 sets of 11 reps"),
    # every second trained week
    (SLOWLY, 2, "3 sets of 8 reps"),
    (SLOWLY, 3, "3 sets of 9 reps"),
    (SLOWLY, 5, "3 sets of 10 reps"),
    # anything that is counted may grow
    (HOLD, 3, "3 sets of 40 s hold"),
    (HOLD, 5, "3 sets of 45 s hold"),
    (WORK, 3, "3 sets of 1 min work"),
    (CARRY, 3, "3 sets of 25 m"),
    (SETS, 3, "2 sets of 8 reps"),
    (SETS, 4, "3 sets of 8 reps"),
    (SETS, 12, "4 sets of 8 reps"),
    # listed weeks, up or down; after the last one listed, it stays
    (LISTED, 2, "3 sets of 10 reps"),
    (LISTED, 3, "3 sets of 12 reps"),
    (LISTED, 4, "3 sets of 8 reps"),
    (LISTED, 9, "3 sets of 8 reps"),
    # loads of every kind
    (KILOS, 3, "3 sets of 5 reps, 24 kg"),
    (KILOS, 4, "3 sets of 5 reps, 25 kg"),
    (SHARE, 2, "3 sets of 5 reps, 15 % of body weight"),
    (SHARE, 3, "3 sets of 5 reps, 16.5 % of body weight"),
    (SHARE, 9, "3 sets of 5 reps, 18 % of body weight"),
    (MAX, 2, "3 sets of 5 reps, 72.5 % of 1RM"),
    (EFFORT, 2, "3 sets of 5 reps, effort 6.5 of 10"),
    (RESERVE, 2, "3 sets of 5 reps, 3 reps in reserve"),
    (RESERVE, 7, "3 sets of 5 reps, 2 reps in reserve"),
    (BANDS, 2, "3 sets of 12 reps, light band"),
    (BANDS, 5, "3 sets of 12 reps, medium band"),
    (LATER, 1, "3 sets of 6 reps, 4 kg"),
    (LATER, 3, "3 sets of 6 reps, 6 kg"),
    # a tempo listed
    (TEMPO, 1, "3 sets of 6 reps, tempo 3-0-1-0"),
    (TEMPO, 2, "3 sets of 6 reps, tempo 4-0-1-0"),
    (TEMPO, 8, "3 sets of 6 reps, tempo 2-0-X-0"),
    # double progression: repetitions climb, then the load rises and they start again; its last step is cut short
    (DOUBLE, 1, "3 sets of 8 reps, 10 kg"),
    (DOUBLE, 3, "3 sets of 10 reps, 10 kg"),
    (DOUBLE, 4, "3 sets of 8 reps, 12 kg"),
    (DOUBLE, 6, "3 sets of 10 reps, 12 kg"),
    (DOUBLE, 7, "3 sets of 8 reps, 13 kg"),
    (DOUBLE, 9, "3 sets of 10 reps, 13 kg"),
    (DOUBLE, 10, "3 sets of 10 reps, 13 kg"),
    (DOUBLE, 40, "3 sets of 10 reps, 13 kg"),
    # with a step that does not meet the end
    (DOUBLE_BY_TWOS, 2, "3 sets of 7 reps, 10 kg"),
    (DOUBLE_BY_TWOS, 3, "3 sets of 8 reps, 10 kg"),
    (DOUBLE_BY_TWOS, 4, "3 sets of 5 reps, 12 kg"),
    # every second week, the full repetitions are done for two weeks too
    (DOUBLE_SLOWLY, 2, "3 sets of 8 reps, 10 kg"),
    (DOUBLE_SLOWLY, 4, "3 sets of 9 reps, 10 kg"),
    (DOUBLE_SLOWLY, 5, "3 sets of 8 reps, 12 kg"),
    # with holds, and with a load that falls
    (DOUBLE_HOLD, 2, "3 sets of 30 s hold, 4 kg"),
    (DOUBLE_HOLD, 3, "3 sets of 20 s hold, 6 kg"),
    (DOUBLE_RESERVE, 2, "3 sets of 10 reps, 3 reps in reserve"),
    (DOUBLE_RESERVE, 3, "3 sets of 8 reps, 2 reps in reserve"),
    (DOUBLE_RESERVE, 5, "3 sets of 10 reps, 2 reps in reserve"),
]


@pytest.mark.parametrize(("written", "trained_week", "expected"), CASES)
def test_trained_week(written: str, trained_week: int, expected: str) -> None:
    """A prescription in its nth trained week is this dose."""
    item = make.in_week(make.one_exercise(written), trained_week)

    assert item is not None
    assert dose_in_words(ENGLISH, item.dose) == expected


BLOCKS = [
    ("{kind: circuit, rounds: 1, progress: {rounds: {add: 1, every: 2 weeks, up_to: 2}}}", 2, "1 round of 8 reps"),
    ("{kind: circuit, rounds: 1, progress: {rounds: {add: 1, every: 2 weeks, up_to: 2}}}", 3, "2 rounds of 8 reps"),
    ("{kind: superset, rounds: 2, progress: {rounds: {weeks: [2, 2, 3]}}}", 3, "3 rounds of 8 reps"),
    ("{kind: straight, sets: 2, progress: {sets: {add: 1, up_to: 3}}}", 2, "3 sets of 8 reps"),
]


@pytest.mark.parametrize(("block", "trained_week", "expected"), BLOCKS)
def test_rounds_and_sets_of_a_block_grow_too(block: str, trained_week: int, expected: str) -> None:
    """Rounds and a block's sets climb like any other number."""
    item = make.in_week(make.one_exercise("{reps: 8}", block), trained_week)

    assert item is not None
    assert dose_in_words(ENGLISH, item.dose, rounds="straight" not in block) == expected


RESTS = [
    (
        "{reps: 8}",
        "{kind: straight, sets: 3, rest: 90 s, progress: {rest: {take: 15 s, down_to: 60 s}}}",
        2,
        "1 min 15 s",
    ),
    ("{reps: 8}", "{kind: straight, sets: 3, rest: 90 s, progress: {rest: {take: 15 s, down_to: 60 s}}}", 9, "1 min"),
    ("{reps: 8, rest: 50 s}", "{kind: straight, sets: 3, rest: 90 s}", 2, "50 s"),
    ("{reps: 8, rest: 50 s, progress: {rest: {take: 10 s, down_to: 30 s}}}", "{kind: straight, sets: 3}", 2, "40 s"),
    ("{reps: 8, progress: {rest: {take: 20 s, down_to: 40 s}}}", "{kind: straight, sets: 3, rest: 80 s}", 2, "1 min"),
    # an exercise's own rest starts at its block's first one, whatever becomes of that
    (
        "{reps: 8, progress: {rest: {add: 5 s, up_to: 90 s}}}",
        "{kind: straight, sets: 3, rest: 60 s, progress: {rest: {add: 20 s, up_to: 120 s}}}",
        2,
        "1 min 5 s",
    ),
    ("{reps: 8}", "{kind: superset, rounds: 3, rest: 60 s, progress: {rest: {take: 5 s, down_to: 45 s}}}", 3, "50 s"),
]


@pytest.mark.parametrize(("written", "block", "trained_week", "expected"), RESTS)
def test_rest_shrinks(written: str, block: str, trained_week: int, expected: str) -> None:
    """Rest may be taken away, down to its end; an exercise's own rest goes before its block's."""
    item = make.in_week(make.one_exercise(written, block), trained_week)

    assert item is not None
    assert duration(ENGLISH, item.dose.first.rest_s) == expected
