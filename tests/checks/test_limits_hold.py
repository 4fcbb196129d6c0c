"""The physiotherapist's limits: a dose beyond one stops publishing, and no weight above one is offered."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.dose.bands import choice_at
from setwright.dose.resolve import resolve
from support import make
from support.strategies import body_weights

DUMBBELLS = "kit: [dumbbell]"
CASES = [
    # the exercise's limits, the prescription, what crosses them (in a club for 40 to 110 kg)
    ("{reps: 10}", "{reps: 10}", None),
    ("{reps: 10}", "{reps: 11}", "11 reps in week 1 of plan is beyond the limit of 10"),
    (
        "{reps: 10}",
        "{reps: 9, progress: {reps: {add: 1, up_to: 12}}}",
        "11 reps in week 3 of plan is beyond the limit of 10",
    ),
    ("{hold: 40 s}", "{hold: 40 s}", None),
    ("{hold: 40 s}", "{hold: 45 s}", "a hold of 45 s in week 1 of plan is beyond the limit of 40 s"),
    ("{hold: 40 s}", "{work: 45 s}", "45 s of work in week 1 of plan is beyond the limit of 40 s"),
    ("{hold: 40 s}", "{reps: 10}", None),  # four seconds each
    ("{hold: 40 s}", "{reps: 11}", "11 reps, which take 44 s, in week 1 of plan is beyond the limit of 40 s"),
    ("{hold: 40 s, reps: 11}", "{reps: 11}", None),  # repetitions have a limit of their own
    ("{hold: 40 s}", "{distance: 40 m}", None),
    ("{hold: 40 s}", "{distance: 45 m}", "45 m, which take 45 s, in week 1 of plan is beyond the limit of 40 s"),
    (
        "{hold: 40 s, reps: 11}",
        "{reps: 1, tempo: 2-0-2-60}",
        "a pause of 60 s in each rep in week 1 of plan is beyond the limit of 40 s",
    ),
    ("{distance: 40 m}", "{distance: 40 m}", None),
    ("{distance: 40 m}", "{distance: 45 m}", "45 m in week 1 of plan is beyond the limit of 40 m"),
    ("{distance: 40 m, hold: 30 s, reps: 5}", "{distance: 40 m}", None),  # a distance has a limit of its own
    ("{distance: 40 m}", "{work: 40 s}", None),  # a metre a second
    ("{distance: 40 m}", "{work: 45 s}", "45 s of work, time for 45 m, in week 1 of plan is beyond the limit of 40 m"),
    ("{distance: 40 m, hold: 60 s}", "{work: 45 s}", None),
    ("{distance: 40 m}", "{reps: 11}", "11 reps, time for 44 m, in week 1 of plan is beyond the limit of 40 m"),
    ("{distance: 40 m}", "{hold: 2 min}", None),  # who holds still goes nowhere
    ("{load: none}", "{reps: 8, kit: [mat]}", None),
    ("{load: none}", "{reps: 8, load: 3 reps in reserve, kit: [mat]}", None),
    ("{load: none}", "{reps: 8, load: 1 kg}", "1 kg in week 1 of plan is beyond the limit of none, the body alone"),
    (
        "{load: none}",
        "{reps: 8, load: light band, kit: [band]}",
        "light band in week 1 of plan is beyond the limit of none, the body alone",
    ),
    (
        "{load: none}",
        "{reps: 8, load: 1 % bodyweight}",
        "1 % bodyweight in week 1 of plan is beyond the limit of none, the body alone",
    ),
    ("{reps: 10}", "{work: 32 s}", None),  # three seconds each, where nothing is written
    ("{reps: 10}", "{work: 33 s}", "33 s of work, time for 11 reps, in week 1 of plan is beyond the limit of 10"),
    ("{reps: 10}", "{work: 33 s, tempo: 2-0-2-0}", None),
    (
        "{reps: 10}",
        "{work: 22 s, tempo: 1-0-X-0}",
        "22 s of work, time for 11 reps, in week 1 of plan is beyond the limit of 10",
    ),
    ("{reps: 10}", "{hold: 45 s}", "a hold of 45 s, time for 15 reps, in week 1 of plan is beyond the limit of 10"),
    ("{reps: 10, hold: 60 s}", "{hold: 45 s}", None),
    ("{load: 12 kg}", "{reps: 8, load: 12 kg}", None),
    ("{load: 12 kg}", "{reps: 8, load: 13 kg}", "13 kg in week 1 of plan is beyond the limit of 12 kg"),
    ("{load: 12 kg}", "{reps: 8, load: 6 kg per hand}", None),
    (
        "{load: 12 kg}",
        "{reps: 8, load: 7 kg per hand}",
        "7 kg per hand in week 1 of plan is beyond the limit of 12 kg",
    ),
    (
        "{load: 6 kg per hand}",
        "{reps: 8, load: 13 kg}",
        "13 kg in week 1 of plan is beyond the limit of 6 kg per hand",
    ),
    ("{load: 20 % bodyweight}", "{reps: 8, load: 20 % bodyweight}", None),
    (
        "{load: 20 % bodyweight}",
        "{reps: 8, load: 10.5 % bodyweight per hand}",
        "10.5 % bodyweight per hand in week 1 of plan is beyond the limit of 20 % bodyweight",
    ),
    ("{load: 20 % bodyweight}", "{reps: 8, load: 8 kg}", None),  # a fifth of the lightest member
    (
        "{load: 20 % bodyweight}",
        "{reps: 8, load: 9 kg}",
        "9 kg for a member of 40 kg in week 1 of plan is beyond the limit of 20 % bodyweight",
    ),
    ("{top_effort: RPE 7}", "{reps: 8, load: RPE 7}", None),
    ("{top_effort: RPE 7}", "{reps: 8, load: RPE 7.5}", "RPE 7.5 in week 1 of plan is beyond the limit of RPE 7"),
    ("{top_effort: RPE 7}", "{reps: 8, load: 3 reps in reserve}", None),
    (
        "{top_effort: RPE 7}",
        "{reps: 8, load: 2 reps in reserve}",
        "2 reps in reserve in week 1 of plan is beyond the limit of RPE 7",
    ),
    (
        "{least_reserve: 2 reps in reserve}",
        "{reps: 8, load: 2 reps in reserve, progress: {load: {take: 1 rep in reserve, down_to: 1 rep in reserve}}}",
        "1 rep in reserve in week 2 of plan is beyond the limit of 2 reps in reserve",
    ),
    ("{least_reserve: 2 reps in reserve}", "{reps: 8, load: RPE 8}", None),
    (
        "{least_reserve: 2 reps in reserve}",
        "{reps: 8, load: RPE 9}",
        "RPE 9 in week 1 of plan is beyond the limit of 2 reps in reserve",
    ),
    # the repetition table (Baechle and Earle) has ten repetitions at 75 % and nothing below 65 %
    ("{top_effort: RPE 7}", "{reps: 7, load: 75 % 1RM}", None),
    (
        "{top_effort: RPE 7}",
        "{reps: 8, load: 75 % 1RM}",
        "8 reps at 75 % 1RM, where most people manage 10, in week 1 of plan is beyond the limit of RPE 7",
    ),
    ("{weekly_step: 5 %}", "{reps: 8, load: 20 kg, progress: {load: {add: 1 kg, up_to: 21 kg}}}", None),
    (
        "{weekly_step: 5 %}",
        "{reps: 8, load: 10 kg, progress: {load: {add: 1 kg, up_to: 11 kg}}}",
        "10 kg to 11 kg in week 2 of plan is 10 % more; the limit is 5 % in a week",
    ),
]
FOUR_WEEKS = "[{name: All, aim: To go on., weeks: 4, sessions: {monday: only}}]"


@pytest.mark.parametrize(("limits", "written", "crossed"), CASES)
def test_dose_and_limit(limits: str, written: str, crossed: str | None) -> None:
    """A dose at its limit is allowed, one beyond it is an error that says where and by how much."""
    made = make.one_exercise(written, phases=FOUR_WEEKS, lift=f"{{{DUMBBELLS}, limits: {limits}}}")
    found = [f for f in make.verdict(made).findings if f.rule == "dose-beyond-limit"]

    assert [(f.message, f.severity) for f in found] == ([(f"lift: {crossed}", "error")] if crossed else [])


def test_sets_of_a_week_are_added_up() -> None:
    """Two sessions of three sets are six in a week, and a limit of five is crossed once."""
    files = {
        "plans/plan": "phases: [{name: All, aim: To go on., weeks: 2, sessions: {monday: only, thursday: only}}]",
        "exercises/lift": "limits: {weekly_sets: 5}",
    }
    found = make.verdict(make.programme(files)).findings

    assert [f.message for f in found] == ["lift: 6 sets in week 1 of plan are beyond the limit of 5"]


LOWER = "[{week: 2, session: only, exercise: lift, load: 6 kg, why: Tired.}]"


@pytest.mark.parametrize("changes", ["[]", LOWER])
def test_coming_back_from_a_lighter_week_is_no_step(changes: str) -> None:
    """Neither a lighter week nor a week that a change made lighter turns the way back into a step that is too large."""
    phases = "[{name: All, aim: To go on., weeks: 4, sessions: {monday: only}, lighter: {weeks: [3], load: 60 %}}]"
    made = make.one_exercise(
        "{reps: 8, load: 10 kg}", phases=phases, changes=changes, lift="limits: {weekly_step: 5 %}"
    )

    assert make.verdict(made).findings == ()


def test_limit_cannot_be_accepted_away() -> None:
    """Accepting a crossed limit leaves it standing, and is itself an error."""
    accept = "accept: [{rule: dose-beyond-limit, why: They can take it.}]"
    files = {"exercises/lift": f"limits: {{reps: 6}}\n{accept}", "sessions/only": accept, "plans/plan": accept}
    verdict = make.verdict(make.programme(files))

    assert sorted(f.rule for f in verdict.findings) == ["dose-beyond-limit", *["unknown-rule"] * 3]
    assert verdict.accepted == ()


@given(body_weights, st.sampled_from(["12 kg", "9 % bodyweight", "5 kg per hand", "4 % bodyweight per hand"]))
def test_no_member_is_offered_a_weight_beyond_the_limit(body_weight: Fraction, limit: str) -> None:
    """Whatever is prescribed by body weight, the bands stop at the limit, in all or in each hand."""
    written = "{reps: 8, load: 8 % bodyweight}"
    made = make.one_exercise(written, phases=FOUR_WEEKS, lift=f"{{{DUMBBELLS}, limits: {{load: {limit}}}}}")
    chosen = choice_at(next(next(resolve(made)[0].sessions).items).bands, body_weight)
    number = Fraction(limit.split()[0]) * (2 if "per hand" in limit else 1)
    most = number if "kg" in limit else number * body_weight / 100

    assert chosen is None or chosen.weight_kg is None or chosen.weight_kg <= most


def test_fixed_weight_keeps_to_a_share_of_the_lightest_member() -> None:
    """7.5 kg lies between two dumbbells; with a limit of 19 % (7.6 kg at 40 kg) the heavier of them is out."""
    offered = [
        make.in_week(make.one_exercise("{reps: 8, load: 7.6 kg}", lift=f"{{{DUMBBELLS}{limit}}}"), 1).choice
        for limit in ("", ", limits: {load: 19 % bodyweight}")
    ]

    assert [(choice.weight_kg, choice.fit) for choice in offered if choice] == [(8, "near"), (7, "limit")]


WITHOUT_WEIGHTS = [
    # a limit in kg, a share of body weight with kit that does not come in weights, in a club for 40 to 110 kg
    ("12 kg", "10 % bodyweight", None),
    (
        "12 kg",
        "11 % bodyweight",
        "11 % bodyweight for a member of 110 kg in week 1 of plan is beyond the limit of 12 kg",
    ),
]


@pytest.mark.parametrize(("limit", "load", "crossed"), WITHOUT_WEIGHTS)
def test_share_of_body_weight_without_owned_weights(limit: str, load: str, crossed: str | None) -> None:
    """Where no list of owned weights stops at the limit, the heaviest member's share must keep to it."""
    lift = f"{{kit: [mat], limits: {{load: {limit}}}}}"
    made = make.one_exercise(f"{{reps: 8, load: {load}}}", phases=FOUR_WEEKS, lift=lift)
    found = [f.message for f in make.verdict(made).findings if f.rule == "dose-beyond-limit"]

    assert found == ([f"lift: {crossed}"] if crossed else [])


NOT_BEFORE = [
    # earliest phase, what is found in a plan of two phases that both hold the exercise
    (1, None),
    (2, "lift: week 1 of plan is in phase 1 (First), before phase 2, the earliest allowed"),
    (3, "lift: week 1 of plan is in phase 1 (First), before phase 3, the earliest allowed"),
]


@pytest.mark.parametrize(("earliest", "crossed"), NOT_BEFORE)
def test_earliest_phase(earliest: int, crossed: str | None) -> None:
    """An exercise that comes before its phase is found once a plan, and the hint names the limit's place."""
    phases = "{name: %s, aim: To go on., weeks: 2, sessions: {monday: only}}"
    files = {
        "plans/plan": f"phases: [{phases % 'First'}, {phases % 'Second'}]",
        "exercises/lift": f"limits: {{earliest_phase: {earliest}}}",
    }
    found = make.verdict(make.programme(files)).findings

    assert [f.message for f in found] == ([crossed] if crossed else [])
    assert all("the limit is in program/exercises/lift.yml" in f.hint for f in found)


NOT_BEFORE_WEEK = [
    # earliest week, what is found in a plan of two phases of two weeks
    (1, None),
    (2, "lift: week 1 of plan is in phase 1 (First), before week 2, the earliest allowed"),
    (5, "lift: week 1 of plan is in phase 1 (First), before week 5, the earliest allowed"),
]


@pytest.mark.parametrize(("earliest", "crossed"), NOT_BEFORE_WEEK)
def test_earliest_week(earliest: int, crossed: str | None) -> None:
    """Weeks of a plan count as weeks, however its phases are cut."""
    files = {"exercises/lift": f"limits: {{earliest_week: {earliest}}}"}
    found = make.verdict(make.programme(files)).findings

    assert [f.message for f in found] == ([crossed] if crossed else [])


def test_a_short_first_phase_does_not_shorten_the_weeks() -> None:
    """A phase of one week is over soon; a week that is named is not; where none is, the short phase is told."""
    phases = (
        "phases: [{name: First, aim: To begin., weeks: 1, sessions: {monday: other}}, "
        "{name: Second, aim: To go on., weeks: 4, sessions: {monday: only}}]"
    )
    files = {
        "plans/plan": phases,
        "sessions/other": "blocks: [{kind: straight, sets: 3, exercises: [{exercise: easy, reps: 8}]}]",
        "exercises/easy": "name: Easy\nkit: [mat]",
    }
    rules = {
        limits: {f.rule for f in make.verdict(make.programme({**files, "exercises/lift": limits})).findings}
        for limits in ("limits: {earliest_phase: 2}", "limits: {earliest_phase: 2, earliest_week: 4}")
    }

    assert list(rules.values()) == [{"phase-too-short"}, {"dose-beyond-limit"}]


def test_a_warm_up_keeps_to_the_limits_too() -> None:
    """Repetitions and holds of a routine are doses like any other."""
    files = {
        "routines/warm": "{takes: 1 min, exercises: [{exercise: lift, reps: 12}]}",
        "exercises/lift": "limits: {reps: 10}",
    }
    found = make.verdict(make.programme(files)).findings

    assert [f.message for f in found] == ["lift: 12 reps in the warm-up warm is beyond the limit of 10"]
