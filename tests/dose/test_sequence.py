"""How a session goes, step by step: one list that times, checks, words and the phone's guide read."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.dose.dose import Dose, Set
from setwright.dose.sequence import Step, block_steps, session_steps
from setwright.dose.timing import block_time, seconds_until_again, set_time
from setwright.model.session import BlockKind
from setwright.model.span import Span
from support import make
from support.strategies import doses


def said(steps: tuple[Step, ...]) -> list[str]:
    """Return steps as ``A1``, ``A1 left`` and so on, pauses with their seconds."""
    sides = {0: "", 1: " first side", 2: " second side"}
    return [
        f"{'ABCDE'[step.item]}{step.round}{sides[step.side]}" if step.kind == "set" else f"{step.kind} {step.seconds}"
        for step in steps
    ]


def reps(sets: int, sides: str = "both together", rest_s: int = 90) -> Dose:
    """Return so many sets of five repetitions of 4 s."""
    block = f"{{kind: straight, sets: {sets}, rest: {rest_s} s}}"
    return make.dose("{reps: 5, tempo: 2-0-2-0}", f"sides: {sides}", block)


NAMES = "ABCDE"

CASES: list[tuple[BlockKind, list[Dose], list[str]]] = [
    ("straight", [reps(2), reps(1)], ["A1", "rest 90", "A2", "change 90", "B1"]),
    # the rest before the next exercise is that of the one before it
    ("straight", [reps(1), reps(2, rest_s=120)], ["A1", "change 90", "B1", "rest 120", "B2"]),
    ("straight", [reps(1, "one at a time")], ["A1 first side", "A1 second side"]),
    ("superset", [reps(2), reps(2)], ["A1", "change 20", "B1", "rest 60", "A2", "change 20", "B2"]),
    # one drops out of the second round, and its change-over with it
    ("superset", [reps(2), reps(1)], ["A1", "change 20", "B1", "rest 60", "A2"]),
    (
        "circuit",
        [reps(1), reps(2), reps(2)],
        ["A1", "change 20", "B1", "change 20", "C1", "rest 60", "B2", "change 20", "C2"],
    ),
]


@pytest.mark.parametrize(("kind", "inside", "steps"), CASES)
def test_a_block_goes_like_this(kind: BlockKind, inside: list[Dose], steps: list[str]) -> None:
    """Straight sets finish one exercise before the next; supersets and circuits go round by round."""
    assert said(block_steps(0, kind, NAMES[: len(inside)], inside, rests_s=(60,), change_over_s=20)) == steps


def test_from_one_exercise_to_the_next_the_longer_of_rest_and_change_over_stands() -> None:
    """A rest of 90 s goes on while a member changes over in 20 s; a change of 2 min lasts longer than it."""
    quick = block_steps(0, "straight", "AB", [reps(1), reps(1)], (0,), 20)
    slow = block_steps(0, "straight", "AB", [reps(1), reps(1)], (0,), 120)

    assert [said(quick), said(slow)] == [["A1", "change 90", "B1"], ["A1", "change 120", "B1"]]


def test_the_same_exercise_again_is_rested_for_and_not_changed_to() -> None:
    """Three entries of one set each, 3 min apart as written: 20 + 180 + 20 + 180 + 20 s."""
    sets = [make.dose("{reps: 5, tempo: 2-0-2-0, rest: 3 min}", "", "{kind: straight, sets: 1}") for _ in range(3)]
    steps = block_steps(0, "straight", "AAA", sets, (0,), 60)

    assert said(steps) == ["A1", "rest 180", "B1", "rest 180", "C1"]
    assert block_time(steps, sets).low_s == 420


def test_a_dropped_out_exercise_takes_its_change_over_along() -> None:
    """Two rounds of 20 s each and 20 s between, the second with one exercise alone: 20 + 20 + 20 + 60 + 20 s."""
    inside = [reps(2), reps(1)]

    assert block_time(block_steps(0, "superset", "AB", inside, (60,), 20), inside).low_s == 140


def test_no_change_over_is_no_step_in_a_round() -> None:
    """Where the next exercise follows at once, nothing stands between."""
    assert said(block_steps(0, "circuit", "AB", [reps(1), reps(1)], (60,), 0)) == ["A1", "B1"]


def test_a_step_says_where_it_stands() -> None:
    """The guide shows a step's exercise, round and side; a rest belongs to the round that it leads to."""
    steps = block_steps(1, "superset", "AB", [reps(2), reps(2, "one at a time")], rests_s=(60,), change_over_s=20)

    assert steps[:6] == (
        Step("set", block=1, item=0, round=1, rounds=2, side=0, seconds=0),
        Step("change", block=1, item=1, round=1, rounds=2, side=0, seconds=20),
        Step("set", block=1, item=1, round=1, rounds=2, side=1, seconds=0),
        Step("set", block=1, item=1, round=1, rounds=2, side=2, seconds=0),
        Step("rest", block=1, item=0, round=2, rounds=2, side=0, seconds=60),
        Step("set", block=1, item=0, round=2, rounds=2, side=0, seconds=0),
    )


def test_each_straight_set_has_its_own_rest() -> None:
    """Where sets differ, the rest after each is the one that is written for it."""
    pyramid = Dose("reps", "both together", tuple(Set(Span.of(5), rest_s=rest_s) for rest_s in (60, 120, 180)))

    assert said(block_steps(0, "straight", "A", [pyramid], (0,), 0)) == ["A1", "rest 60", "A2", "rest 120", "A3"]


def test_from_block_to_block() -> None:
    """The change to the next block stands between blocks, and nowhere else."""
    one, two = (block_steps(index, "straight", "A", [reps(1)], (0,), 0) for index in (0, 1))

    assert [step.kind for step in session_steps([one, two])] == ["set", "block", "set"]
    # a minute and a half; common practice, no source
    assert session_steps([one, two])[1] == Step("block", block=1, item=0, round=0, rounds=0, side=0, seconds=90)


@pytest.mark.parametrize(
    ("kind", "inside", "waits_s"),
    [
        ("straight", [reps(3)], 90),
        ("superset", [reps(3), reps(3)], 20 + 20 + 60),
        # in the last round the other one is missing: the shortest wait is the rest alone
        ("superset", [reps(3), reps(2)], 20 + 20 + 60),
        ("superset", [reps(3), reps(1)], 60),
        # the second side belongs to the same set
        ("straight", [reps(3, "one at a time")], 90),
        ("straight", [reps(1)], None),
    ],
)
def test_how_long_until_the_same_exercise_comes_again(kind: BlockKind, inside: list[Dose], waits_s: int | None) -> None:
    """The time from the end of one set to the start of the next, the others' sets and changes included."""
    steps = block_steps(0, kind, NAMES[: len(inside)], inside, (60,), 20 if len(inside) > 1 else 0)

    assert seconds_until_again(steps, inside, 0) == waits_s


@given(
    st.sampled_from(["straight", "superset", "circuit"]),
    st.lists(doses, min_size=1, max_size=5),
    st.integers(0, 300),
    st.integers(0, 60),
)
def test_every_set_is_done_once(kind: BlockKind, inside: list[Dose], rest_s: int, change_over_s: int) -> None:
    """Whatever stands in a block, each set comes once a side, and sets stand at its beginning and its end."""
    steps = block_steps(0, kind, NAMES[: len(inside)], inside, (rest_s,), change_over_s)
    done = [(step.item, step.round, step.side) for step in steps if step.kind == "set"]
    wanted = [
        (item, number, side)
        for item, dose in enumerate(inside)
        for number in range(1, len(dose.sets) + 1)
        for side in ((1, 2) if dose.side_count == 2 else (0,))
    ]
    work = sum(set_time(dose, one).low_s for dose in inside for one in dose.sets)
    pauses = sum(step.seconds for step in steps)

    assert sorted(done) == wanted
    assert (steps[0].kind, steps[-1].kind) == ("set", "set")
    assert block_time(steps, inside).low_s == work + pauses
