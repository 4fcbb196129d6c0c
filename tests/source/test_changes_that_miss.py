"""A change in one week that changes nothing, or says what another says: told at its line, with what would fit."""

from collections.abc import Callable

import pytest

from setwright.source.finding import Finding, Position
from setwright.source.links import Parts, link_findings
from setwright.source.read import FOLDERS
from support import make

PHASES = """
phases:
  - {name: One, aim: To begin., weeks: 2, sessions: {monday: legs, thursday: arms}}
  - {name: Two, aim: To go on., weeks: 2, sessions: {tuesday: legs}}
"""
LEGS = "blocks: [{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8}, {exercise: plank, hold: 30 s}]}]"
ARMS = (
    "blocks: [{kind: superset, rounds: 3, exercises: [{exercise: press, reps: 8}, {exercise: row, reps: 8}]}, "
    "{kind: straight, sets: 2, exercises: [{exercise: curl, reps: 8}]}]"
)


def found(changes: str) -> list[Finding]:
    """Return what is found in a plan with these changes; a position says the path as its file."""
    parts = Parts(
        plans={"plan": make.plan(f"{PHASES}\nchanges: [{changes}]")},
        sessions={"legs": make.session(LEGS), "arms": make.session(ARMS)},
        ids={kind: {"legs", "arms", "lift", "plank", "press", "row", "curl", "warm"} for kind in FOLDERS},
        routines={"warm": make.routine()},
    )
    place: Callable[..., Position] = lambda file, *path, **_: Position(" ".join(map(str, (file, *path))))  # noqa: E731
    return list(link_findings(parts, place))


WHY = "why: Because."
MISSES = [
    # the change, where it is told, what is said, the hint
    (
        "{week: 1, day: tuesday, sets: 2}",
        "day",
        "week 1 has no session on tuesday",
        "its days are monday, thursday",
    ),
    ("{week: 3, day: monday, sets: 2}", "day", "week 3 has no session on monday", "its days are tuesday"),
    (
        "{week: 2, day: monday, session: arms, sets: 2}",
        "session",
        "monday of week 2 does not hold session 'arms'",
        "write the day or the session, or 'legs'",
    ),
    (
        "{week: 1, day: monday, move_to: thursday}",
        "move_to",
        "thursday of week 1 already has a session",
        "choose another day",
    ),
    ("{week: 3, session: arms, sets: 2}", "session", "week 3 does not hold session 'arms'", "one of: legs"),
    (
        "{week: 1, day: monday, exercise: press, sets: 2}",
        "exercise",
        "session 'legs' does not hold exercise 'press'",
        "one of: lift, plank",
    ),
    (
        "{week: 1, session: legs, exercise: plank, reps: 5}",
        "reps",
        "'plank' counts hold there, not reps",
        "write 'hold'",
    ),
    (
        "{week: 1, session: legs, exercise: lift, hold: 5 s}",
        "hold",
        "'lift' counts reps there, not hold",
        "write 'reps'",
    ),
    (
        "{week: 1, session: arms, exercise: row, rest: 30 s}",
        "rest",
        "the rest belongs to the whole round that 'row' is in",
        "leave out 'exercise' to change every rest of the session",
    ),
]


@pytest.mark.parametrize(("change", "key", "said", "hint"), MISSES)
def test_a_change_that_misses(change: str, key: str, said: str, hint: str) -> None:
    """One mistake is one finding, at the key to mend."""
    (one,) = found(f"{change[:-1]}, {WHY}}}")

    assert (one.position.file, one.message, one.hint) == (f"plans/plan.yml changes 0 {key}", said, hint)


FIT = [
    "{week: 2, day: thursday, sets: 2}",
    "{week: 3, day: tuesday, sets: 2}",  # the days of the second phase
    "{week: 2, session: arms, sets: 2}",
    "{week: 2, day: monday, session: legs, sets: 2}",
    "{week: 1, day: monday, move_to: friday}",
    "{week: 1, session: legs, exercise: plank, hold: 20 s}",
    "{week: 1, session: arms, exercise: curl, rest: 30 s}",  # straight sets rest by themselves
    "{week: 1, day: monday, exercise: lift, load: 8 kg}",
]


@pytest.mark.parametrize("change", FIT)
def test_a_change_that_fits(change: str) -> None:
    """What the week holds may be changed."""
    assert found(f"{change[:-1]}, {WHY}}}") == []


SWAP = f"{{week: 1, day: monday, do_instead: arms, {WHY}}}"


def test_the_session_done_instead_may_be_changed_too() -> None:
    """A week whose Monday holds arms instead of legs: press is there, and legs may still be named, as written."""
    for about in ("day: monday, exercise: press", "day: monday, session: arms, exercise: press", "session: legs"):
        assert found(f"{SWAP}, {{week: 1, {about}, sets: 2, {WHY}}}") == []
    (one,) = found(f"{SWAP}, {{week: 1, day: monday, exercise: lift, sets: 2, {WHY}}}")

    assert one.message == "session 'arms' does not hold exercise 'lift'"


def test_the_swap_of_another_week_or_day_helps_nobody() -> None:
    """Arms on Monday of week 1 are not there on Monday of week 2, nor on Tuesday of week 3."""
    assert len(found(f"{SWAP}, {{week: 2, day: monday, session: arms, sets: 2, {WHY}}}")) == 1
    assert len(found(f"{SWAP}, {{week: 3, session: arms, sets: 2, {WHY}}}")) == 1


def test_two_sessions_are_not_moved_to_one_day() -> None:
    """The second to come finds the day taken; in another week it is free."""
    first = f"{{week: 1, day: monday, move_to: friday, {WHY}}}"
    (one,) = found(f"{first}, {{week: 1, day: thursday, move_to: friday, {WHY}}}")

    assert one.message == "friday of week 1 already has a session"
    assert one.position.file == "plans/plan.yml changes 1 move_to"
    assert found(f"{first}, {{week: 2, day: thursday, move_to: friday, {WHY}}}") == []


def test_an_unknown_session_instead_is_told() -> None:
    """What is done instead has to be there."""
    (one,) = found(f"{{week: 1, day: monday, do_instead: legz, {WHY}}}")

    assert (one.rule, one.hint) == ("unknown-session", "did you mean 'legs'?")


def test_the_same_change_twice_is_told_with_its_line() -> None:
    """The same number of the same thing, set twice; another number or another exercise is another change."""
    sets = f"{{week: 1, session: legs, sets: 2, {WHY}}}"
    skip = f"{{week: 1, day: monday, skip: true, {WHY}}}"
    other = f"{{week: 1, session: legs, exercise: lift, sets: 2, {WHY}}}"

    assert [one.position.file for one in found(f"{sets}, {sets}")] == ["plans/plan.yml changes 1 sets"]
    assert [one.position.file for one in found(f"{skip}, {skip}")] == ["plans/plan.yml changes 1 skip"]
    assert found(f"{sets}, {other}, {skip}") == []


def test_weeks_fall_into_their_phases() -> None:
    """Weeks 1 and 2 are the first phase, 3 and 4 the second, each counted from its own start."""
    plan = make.plan(PHASES)

    assert [plan.phase_of(week) for week in (1, 2, 3, 4)] == [(0, 1), (0, 2), (1, 1), (1, 2)]
    with pytest.raises(IndexError):
        plan.phase_of(5)
