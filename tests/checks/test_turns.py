"""Sessions that take turns: no week is like the one before it, and growth is judged from turn to turn."""

from setwright.checks.weeks import comparable, week_pairs
from setwright.dose.resolved import ResolvedPlan
from support import make

EVENINGS = {"sessions/legs": "name: Legs", "sessions/arms": "name: Arms", "sessions/trunk": "name: Trunk"}
TURNS = "{name: Turns, aim: On., weeks: 6, sessions: {rotate: [legs, arms, trunk], days: [tuesday, friday]}}"


def pairs(plan: ResolvedPlan) -> list[tuple[int, int]]:
    return [(before.number, week.number) for before, week in week_pairs(plan)]


def test_a_week_is_judged_by_the_last_one_with_the_same_sessions() -> None:
    """Three sessions on two evenings come round in three weeks: week 4 by week 1, and the first turn by nothing."""
    plan = make.resolved({**EVENINGS, "plans/plan": f"phases: [{TURNS}]"})

    assert pairs(plan) == [(1, 4), (2, 5), (3, 6)]


def test_a_first_turn_is_judged_by_the_weeks_before_it() -> None:
    """Each of its weeks by the last of the phase before: a turn may not begin with a leap either."""
    before = "{name: Before, aim: To begin., weeks: 2, sessions: {tuesday: legs}}"
    plan = make.resolved({**EVENINGS, "plans/plan": f"phases: [{before}, {TURNS}]"})

    assert pairs(plan) == [(1, 2), (2, 3), (2, 4), (2, 5), (3, 6), (4, 7), (5, 8)]


def test_without_turns_every_week_counts() -> None:
    """Sessions on their days: each week is judged by the one before it."""
    usual = "{name: Usual, aim: On., weeks: 3, sessions: {tuesday: legs, friday: arms}}"
    plan = make.resolved({**EVENINGS, "plans/plan": f"phases: [{usual}]"})

    assert pairs(plan) == [(1, 2), (2, 3)]
    assert [week.number for week in comparable(plan.plan, plan.weeks[:2], plan.weeks[2])] == [1, 2]


def test_an_exercise_that_grows_too_fast_from_turn_to_turn_is_told() -> None:
    """8 repetitions in the first turn and 14 in the second, in the same session: 75 % more, and 50 % is the most."""
    lift = "{exercise: lift, reps: 8, progress: {reps: {weeks: [8, 14]}}}"
    legs = f"blocks: [{{kind: straight, sets: 3, exercises: [{lift}]}}]"
    turns = "{name: Turns, aim: On., weeks: 4, sessions: {rotate: [legs, arms], days: [tuesday]}}"
    made = make.programme({**EVENINGS, "sessions/legs": legs, "plans/plan": f"phases: [{turns}]"})
    found = [one.message for one in make.verdict(made).findings if one.rule == "exercise-step-too-large"]

    assert [message.split(":")[0] for message in found] == ["lift"]
