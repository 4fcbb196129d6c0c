"""A load grows by 2 to 10 % at a time.

Source: Ratamess NA et al., Med Sci Sports Exerc 2009;41:687-708. The check warns above 10 %; how small a step may be is
left to the coach.
"""

from fractions import Fraction

import pytest

from setwright.checks.load_step import MOST, step_percent
from setwright.model.load import parse_load
from support import make

RULE = "load-step-too-large"
LIGHTEST_KG = Fraction(40)
STEPS = [
    # from, to, percent more, allowed
    ("40 kg", "42.5 kg", "6.25", True),
    ("40 kg", "44 kg", "10", True),
    ("40 kg", "44.1 kg", "10.25", False),
    ("20 kg", "22.5 kg", "12.5", False),
    ("20 kg", "20.4 kg", "2", True),
    ("25 lb", "30 lb", "20", False),
    ("15 % bodyweight", "16.5 % bodyweight", "10", True),
    ("70 % 1RM", "80 % 1RM", "14.285", False),
    ("8 kg per hand", "9 kg per hand", "12.5", False),
    ("12 kg", "8 kg per hand", "33.333", False),  # 16 kg in both hands
    ("20 kg", "16 kg", "-20", True),
]
KETTLEBELLS = [(8, 12, 50.00), (12, 16, 33.33), (16, 20, 25.00), (20, 24, 20.00), (24, 28, 16.67), (28, 32, 14.29)]
"""Steps of 4 kg, from memory; the percentages are computed."""


@pytest.mark.parametrize(("before", "now", "percent", "allowed"), STEPS)
def test_step(before: str, now: str, percent: str, allowed: bool) -> None:
    """A step is so many percent of the load before, and passes up to 10."""
    step = step_percent(parse_load(before), parse_load(now), LIGHTEST_KG)

    assert step is not None
    assert abs(step - Fraction(percent)) < Fraction(1, 1000)
    assert (step <= MOST.default) is allowed


@pytest.mark.parametrize(("before", "now", "percent"), KETTLEBELLS)
def test_every_usual_kettlebell_jump_is_too_large(before: int, now: int, percent: float) -> None:
    """From one kettlebell to the next is more than 10 %, so repetitions have to climb first."""
    step = step_percent(parse_load(f"{before} kg"), parse_load(f"{now} kg"), LIGHTEST_KG)

    assert step is not None
    assert round(float(step), 2) == percent
    assert step > MOST.default


def test_kettlebell_jump_from_40_to_44_is_just_allowed() -> None:
    """44 kg after 40 kg is exactly 10 %: the first jump that passes (computed)."""
    assert step_percent(parse_load("40 kg"), parse_load("44 kg"), LIGHTEST_KG) == MOST.default


@pytest.mark.parametrize(
    ("before", "now"),
    [("12 kg", "15 % bodyweight"), ("RPE 6", "RPE 9"), ("light band", "heavy band"), ("12 kg", "RPE 7")],
)
def test_loads_of_other_kinds_are_not_compared(before: str, now: str) -> None:
    """A load that changes its kind, an effort or a band has no percentage."""
    assert step_percent(parse_load(before), parse_load(now), LIGHTEST_KG) is None


ONE = "{{name: All, aim: To go on., weeks: {weeks}, sessions: {{monday: only}}{more}}}"
PLAIN = ONE.format(weeks=4, more="")
LIGHTER = ONE.format(weeks=4, more=", lighter: {weeks: [2], load: 80 %}")
BY_TENTHS = "{reps: 8, load: 10 kg, progress: {load: {add: 1 kg, up_to: 12 kg}}}"
BY_FIFTHS = "{reps: 8, load: 10 kg, progress: {load: {add: 2 kg, up_to: 16 kg}}}"
STEADY = "{reps: 8, load: 10 kg}"
LOWER, HIGHER = (
    f"[{{week: 2, session: only, exercise: lift, load: {load}, why: For once.}}]" for load in ("6 kg", "16 kg")
)
WEEKS = [
    # prescription, phases, changes, the doubt
    (BY_TENTHS, PLAIN, "[]", None),
    (BY_FIFTHS, PLAIN, "[]", "lift: 10 kg to 12 kg in week 2 of plan is 20 % more"),  # said once, at the first
    (STEADY, LIGHTER, "[]", None),  # coming back from a lighter week is no step
    (BY_FIFTHS, LIGHTER, "[]", "lift: 10 kg to 12 kg in week 3 of plan is 20 % more"),
    (STEADY, PLAIN, LOWER, None),  # nor from a week that a change made lighter
    (STEADY, PLAIN, HIGHER, "lift: 10 kg to 16 kg in week 2 of plan is 60 % more"),
    (BY_FIFTHS, PLAIN, LOWER, "lift: 10 kg to 14 kg in week 3 of plan is 40 % more"),
]


@pytest.mark.parametrize(("written", "phases", "changes", "doubt"), WEEKS)
def test_weeks_that_follow_each_other(written: str, phases: str, changes: str, doubt: str | None) -> None:
    """Only loads of trained weeks are compared, each with the one before."""
    made = make.one_exercise(written, phases=f"[{phases}]", changes=changes, lift="kit: [dumbbell]")
    found = [f.message for f in make.verdict(made).findings if f.rule == "load-step-too-large"]

    assert found == ([doubt] if doubt else [])


def test_hint_names_the_largest_step() -> None:
    """The fix is a number: the club owns a dumbbell between the two; on paper, 70 % of 1RM may become 77 %."""
    in_hand = make.one_exercise(BY_FIFTHS, phases=f"[{PLAIN}]", lift="kit: [dumbbell]")
    shares = "{reps: 5, load: 70 % 1RM, progress: {load: {add: 10 % 1RM, up_to: 80 % 1RM}}}"
    on_paper = make.one_exercise(shares, phases=f"[{PLAIN}]", lift="kit: [dumbbell]")
    hints = [f.hint for made in (in_hand, on_paper) for f in make.verdict(made).findings if f.rule == RULE]

    assert "the club owns 11 kg in between" in hints[0]
    assert "(up to 77 % 1RM)" in hints[1]


SETS = [
    # the sets of two weeks, the doubt about the second
    ("60 % 1RM, 70 % 1RM, 80 % 1RM", "80 % 1RM, 80 % 1RM, 80 % 1RM", "set 1 from 60 % 1RM to 80 % 1RM", "33.3"),
    ("60 % 1RM, 60 % 1RM, 80 % 1RM", "60 % 1RM, 80 % 1RM, 80 % 1RM", "set 2 from 60 % 1RM to 80 % 1RM", "33.3"),
    ("10 kg, 12 kg, 20 kg", "14 kg, 15 kg, 20 kg", "set 1 from 10 kg to 14 kg", "40"),  # the larger of two
    ("10 kg, 15 kg, 20 kg", "11 kg, 16 kg, 20 kg", None, None),
    ("60 % 1RM, 70 % 1RM, 80 % 1RM", "55 % 1RM, 70 % 1RM, 85 % 1RM", None, None),
]


@pytest.mark.parametrize(("first", "then", "step", "percent"), SETS)
def test_each_set_steps_from_its_own(first: str, then: str, step: str | None, percent: str | None) -> None:
    """A first set that jumps to the last one's load is a step, although the heaviest set stays where it was."""
    written = f"{{reps: 5, load: [{first}], progress: {{load: {{weeks: [[{first}], [{then}]]}}}}}}"
    lift = "{kit: [dumbbell], limits: {weekly_step: 10 %}}"
    made = make.one_exercise(written, "{kind: straight}", phases=f"[{PLAIN}]", lift=lift)
    said = [f.message for f in make.verdict(made).findings if f.rule in (RULE, "dose-beyond-limit")]

    whole = f"lift: {step} in week 2 of plan is {percent} % more"
    assert sorted(said) == ([whole, f"{whole}; the limit is 10 % in a week"] if step else [])


def test_a_list_after_equal_sets_steps_set_by_set() -> None:
    """From three sets at 10 kg to 10, 12 and 10 kg, it is the heaviest that steps: said once, and of no other set."""
    change = "[{week: 2, session: only, exercise: lift, load: [10 kg, 12 kg, 10 kg], why: For once.}]"
    made = make.one_exercise(STEADY, phases=f"[{PLAIN}]", changes=change, lift="kit: [dumbbell]")

    said = [f.message for f in make.verdict(made).findings if f.rule == RULE]
    assert said == ["lift: 10 kg to 12 kg in week 2 of plan is 20 % more"]


def kettlebells(reps: str, load: str) -> list[str]:
    """Return what is said of a squat with the club's kettlebells: 4, 6, 8, 10, 12, 16, 20 and 24 kg."""
    written = f"{{reps: {reps}, load: {load.split(',')[0]}, progress: {{{load.partition(',')[2]}}}}}"
    made = make.one_exercise(written, phases=f"[{ONE.format(weeks=6, more='')}]")
    return [f.message for f in make.verdict(made).findings if f.rule == RULE]


IN_HAND = (
    "lift: 15 % bodyweight to 16.5 % bodyweight in week 2 of plan, "
    "in the hand of a member of 43 kg 6 kg to 8 kg, is 33.3 % more"
)


def test_a_step_is_judged_in_the_hand_for_every_body_weight() -> None:
    """A tenth on paper, 15 to 16.5 %, is 6 to 8 kg for whoever weighs 43 kg: a third more (7.095 kg is nearer 8)."""
    climb = "load: {add: 1.5 % bodyweight, up_to: 16.5 % bodyweight}"

    assert kettlebells("8", f"15 % bodyweight, {climb}") == [IN_HAND]


CLIMB = "reps: {add: 1, up_to: 10}, then: {load: {add: %s, up_to: %s}}"


@pytest.mark.parametrize(
    ("load", "step", "end", "passes"),
    [
        ("8 kg", "2 kg", "10 kg", True),  # the next kettlebell, a quarter heavier
        ("12 kg", "4 kg", "16 kg", True),  # the next one too: the club has no 14 kg
        ("8 kg", "4 kg", "12 kg", False),  # 10 kg stands between
        ("15 % bodyweight", "1.5 % bodyweight", "16.5 % bodyweight", True),
    ],
)
def test_the_next_owned_weight_passes_after_a_climb(load: str, step: str, end: str, passes: bool) -> None:
    """From 8 to 10 repetitions, then the next weight and 8 again. Common practice, no source."""
    assert (kettlebells("8", f"{load}, {CLIMB % (step, end)}") == []) is passes


def test_a_climb_that_does_not_start_again_below_excuses_nothing() -> None:
    """Ten repetitions and a heavier weight at once are two steps in one week."""
    both = "8 kg, reps: {weeks: [8, 9, 10, 10]}, load: {weeks: [8 kg, 8 kg, 8 kg, 10 kg]}"

    assert kettlebells("8", both) == ["lift: 8 kg to 10 kg in week 4 of plan is 25 % more"]


def test_a_lighter_week_in_the_numbers_is_no_step_back_up() -> None:
    """A coach who writes 12, 8, 12 kg has planned a light week, and not a step of half the weight."""
    assert kettlebells("8", "12 kg, load: {weeks: [12 kg, 8 kg, 12 kg]}") == []


def test_a_load_is_followed_from_session_to_session() -> None:
    """The second phase has another session; the squat in it is the same squat."""
    second = "blocks: [{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8, load: 16 kg}]}]"
    first = second.replace("16 kg", "12 kg")
    phases = ", ".join(
        f"{{name: {name}, aim: To go on., weeks: 2, sessions: {{monday: {session}}}}}"
        for name, session in (("First", "only"), ("Second", "heavier"))
    )
    files = {"sessions/only": first, "sessions/heavier": second, "plans/plan": f"phases: [{phases}]"}
    found = make.verdict(make.programme(files)).findings

    assert [(f.rule, f.position.file) for f in found] == [(RULE, "program/sessions/heavier.yml")]


def test_plans_are_not_compared_with_each_other() -> None:
    """A second plan begins afresh: a session's first week there follows nothing."""
    climb = "exercises: [{exercise: lift, reps: 8, load: 12 kg, progress: {load: {take: 1 kg, down_to: 10 kg}}}]"
    files = {"sessions/only": f"blocks: [{{kind: straight, sets: 3, {climb}}}]", "plans/second": "starts: 2027-06-07"}

    assert make.verdict(make.programme({**files, "exercises/lift": "kit: [dumbbell]"})).findings == ()
