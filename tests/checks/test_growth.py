"""What grows from week to week, across sessions and phases. Common practice, no source."""

import pytest

from support import make

SETS = "blocks: [{kind: straight, sets: %s, exercises: [{exercise: lift, reps: %s}]}]"
PHASE = "{{name: {name}, aim: To go on., weeks: {weeks}, sessions: {{{sessions}}}{more}}}"


def plan(*phases: str, changes: str = "[]") -> str:
    return f"phases: [{', '.join(phases)}]\nchanges: {changes}"


def phase(name: str, sessions: str, weeks: int = 2, more: str = "") -> str:
    return PHASE.format(name=name, sessions=sessions, weeks=weeks, more=more)


def rules(files: dict[str, str]) -> list[str]:
    return [f.rule for f in make.verdict(make.programme(files)).findings]


GROWTH = [
    # sets and reps of one exercise in the first phase, in another session in the second, what is found
    ("9", "8", "9", "8", []),
    ("9", "8", "9", "12", []),  # 72 to 108 repetitions: half as many again
    ("9", "8", "9", "13", ["exercise-step-too-large"]),
    ("10", "8", "12", "8", []),  # a fifth more
    ("10", "8", "13", "8", ["volume-step-too-large"]),
    ("2", "8", "4", "8", []),  # small numbers: 32 repetitions are a third more than three sets of eight
    ("2", "8", "5", "8", ["exercise-step-too-large"]),  # 40 are two thirds more
]


@pytest.mark.parametrize(("sets", "reps", "then_sets", "then_reps", "found"), GROWTH)
def test_a_new_phase_with_a_new_session_is_compared(
    sets: str, reps: str, then_sets: str, then_reps: str, found: list[str]
) -> None:
    """The exercise is the same, whichever session it stands in."""
    files = {
        "sessions/only": SETS % (sets, reps),
        "sessions/other": SETS % (then_sets, then_reps),
        "plans/plan": plan(phase("First", "monday: only"), phase("Second", "monday: other")),
    }

    assert rules(files) == found


FEWER = "[{week: 2, session: only, exercise: lift, %s, why: For once.}]"
CHANGED = [
    # what is changed in week 2 of three times 10 sets of 8, what is found
    ("sets: 3", []),
    ("reps: 2", []),
    ("sets: 13", ["volume-step-too-large"]),
    ("reps: 13", ["exercise-step-too-large"]),
]


@pytest.mark.parametrize(("change", "found"), CHANGED)
def test_a_change_is_judged_and_is_no_measure(change: str, found: list[str]) -> None:
    """A week made heavier is a step; a week made lighter makes the next one none."""
    files = {
        "sessions/only": SETS % ("10", "8"),
        "plans/plan": plan(phase("First", "monday: only", weeks=3), changes=FEWER % change),
    }

    assert rules(files) == found


def test_a_session_done_instead_is_judged_too() -> None:
    """A week does not pass unseen because a coach exchanged a session in it."""
    files = {
        "sessions/only": SETS % ("10", "8"),
        "sessions/camp": SETS % ("20", "8"),
        "plans/plan": plan(
            phase("First", "monday: only", weeks=3), changes="[{week: 2, day: monday, do_instead: camp, why: Camp.}]"
        ),
    }

    assert set(rules(files)) == {"volume-step-too-large", "region-step-too-large", "exercise-step-too-large"}


LOADS = [
    # what the second phase lifts, what is found: the first one lifts 10 sets of 8 with 10 kg, 800 kg
    ("sets: 10, reps: 8, load: 10 kg", []),
    ("sets: 10, reps: 8, load: RPE 7", []),  # by feel: no kilograms are known
    ("sets: 10, reps: 11, load: 11 kg", ["lifted-step-too-large"]),  # 1210 kg, 51 % more
]


@pytest.mark.parametrize(("second", "found"), LOADS)
def test_repetitions_and_load_together(second: str, found: list[str]) -> None:
    """A third more repetitions and a tenth more load are each a sensible step, and half as many kilograms together."""
    session = "blocks: [{kind: straight, sets: 1, exercises: [{exercise: lift, %s}]}]"
    files = {
        "exercises/lift": "kit: [dumbbell]",
        "sessions/only": session % "sets: 10, reps: 8, load: 10 kg",
        "sessions/other": session % second,
        "plans/plan": plan(phase("First", "monday: only"), phase("Second", "monday: other")),
    }

    assert rules(files) == found


def test_balance_is_counted_phase_by_phase() -> None:
    """A phase of squats and one of hinges are two phases out of balance, though the plan adds up."""
    three = (
        "blocks: [{kind: straight, sets: 4, exercises: [{exercise: %s, reps: 8}, {exercise: plank, hold: 20 s}, "
        "{exercise: reach, reps: 8}]}]"
    )
    files = {
        "exercises/hinge": "{pattern: hinge, regions: {main: [hamstrings]}}",
        "exercises/plank": "{pattern: trunk, regions: {main: [abdominals]}}",
        "exercises/reach": "{pattern: balance, regions: {main: [foot]}}",
        "sessions/only": three % "lift",
        "sessions/other": three % "hinge",
        "plans/plan": plan(phase("First", "monday: only"), phase("Second", "monday: other")),
    }
    found = [f.message for f in make.verdict(make.programme(files)).findings if f.rule == "knee-hip-imbalance"]

    assert [("First" in said, "Second" in said) for said in found] == [
        (False, True),
        (True, False),
    ]  # in order of their messages
