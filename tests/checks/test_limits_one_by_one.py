"""Each limit of a physiotherapist by itself: the dose at the limit passes, the first one beyond it is told."""

import pytest

from setwright.checks.example import Example
from setwright.checks.trial import verdict_of


def said(example: Example) -> list[str]:
    """Return what is said of doses beyond limits."""
    return [found.message for found in verdict_of(example).findings if found.rule == "dose-beyond-limit"]


def squat(limits: str, written: str, block: str = "sets: 3", more: Example | None = None) -> Example:
    """Return a session that holds the squat alone, which has limits, and dumbbells for kit."""
    return {
        "exercises/goblet-squat": f"kit: [dumbbell]\nlimits: {{{limits}}}",
        "sessions/legs": f"blocks: [{{kind: straight, {block}, exercises: [{{exercise: goblet-squat, {written}}}]}}]",
        **(more or {}),
    }


LIGHTER = (
    "phases: [{name: First, aim: To begin., weeks: 4, sessions: {monday: legs}, lighter: {weeks: [2], load: 50 %}}]"
)
ONE_DOSE = [
    # limits, what is written, the doubt (members of 40 to 110 kg)
    ("reps: 8", "reps: 8", None),
    ("reps: 7", "reps: 8", "8 reps in week 1 of spring is beyond the limit of 7"),
    (
        "reps: 8",
        "reps: 8, progress: {reps: {add: 1, up_to: 10}}",
        "9 reps in week 2 of spring is beyond the limit of 8",
    ),
    # a hold takes the time of repetitions of 3 s, and repetitions of 4 s take the time of a hold
    ("reps: 7", "hold: 30 s", "a hold of 30 s, time for 10 reps, in week 1 of spring is beyond the limit of 7"),
    ("reps: 10", "hold: 30 s", None),
    ("hold: 30 s", "hold: 30 s", None),
    ("hold: 29 s", "hold: 30 s", "a hold of 30 s in week 1 of spring is beyond the limit of 29 s"),
    ("hold: 5 s", "reps: 8", "8 reps, which take 32 s, in week 1 of spring is beyond the limit of 5 s"),
    ("hold: 32 s", "reps: 8", None),
    # pauses count; time to keep moving is repetitions as well, a hold none
    ("rep_time: 8 s", "reps: 4, tempo: 4-1-3-0", None),
    ("rep_time: 8 s", "reps: 4, tempo: 5-1-3-0", "a repetition of 9 s in week 1 of spring is beyond the limit of 8 s"),
    (
        "rep_time: 8 s",
        "work: 40 s, tempo: 5-1-3-0",
        "a repetition of 9 s in week 1 of spring is beyond the limit of 8 s",
    ),
    ("rep_time: 8 s", "hold: 40 s", None),
    ("load: 12 kg", "reps: 8, load: 12 kg", None),
    ("load: 12 kg", "reps: 8, load: 13 kg", "13 kg in week 1 of spring is beyond the limit of 12 kg"),
    ("load: 12 kg", "reps: 8, load: 6 kg per hand", None),
    ("load: 12 kg", "reps: 8, load: 7 kg per hand", "7 kg per hand in week 1 of spring is beyond the limit of 12 kg"),
    ("load: 20 % bodyweight", "reps: 8, load: 20 % bodyweight", None),
    (
        "load: 20 % bodyweight",
        "reps: 8, load: 21 % bodyweight",
        "21 % bodyweight in week 1 of spring is beyond the limit of 20 % bodyweight",
    ),
    # a fixed weight must suit the lightest member: 20 % of 40 kg
    ("load: 20 % bodyweight", "reps: 8, load: 8 kg", None),
    (
        "load: 20 % bodyweight",
        "reps: 8, load: 9 kg",
        "9 kg for a member of 40 kg in week 1 of spring is beyond the limit of 20 % bodyweight",
    ),
    # bands hold a share within a limit in kg by themselves
    ("load: 12 kg", "reps: 8, load: 15 % bodyweight", None),
]


@pytest.mark.parametrize(("limits", "written", "doubt"), ONE_DOSE)
def test_a_dose_against_its_limit(limits: str, written: str, doubt: str | None) -> None:
    """Told once, at the first week, with the dose and the limit."""
    assert said(squat(limits, written)) == ([f"goblet-squat: {doubt}"] if doubt else [])


def test_a_share_without_weights_meets_a_limit_in_kg_at_the_heaviest_member() -> None:
    """Where nothing owned stands between, 15 % of 110 kg is 16.5 kg."""
    barbell = squat("load: 16 kg", "reps: 8, load: 15 % bodyweight, kit: [box]")
    fits = squat("load: 16.5 kg", "reps: 8, load: 15 % bodyweight, kit: [box]")

    assert said(barbell) == [
        "goblet-squat: 15 % bodyweight for a member of 110 kg in week 1 of spring is beyond the limit of 16 kg"
    ]
    assert said(fits) == []


STEPS = [
    # the loads of four weeks, the plan, the doubt about a limit of 10 % a week
    ("10 kg, 11 kg, 12 kg, 13 kg", {}, None),
    ("10 kg, 12 kg, 13 kg, 14 kg", {}, "10 kg to 12 kg in week 2 of spring is 20 % more; the limit is 10 % in a week"),
    (
        "10 kg, 11 kg, 14 kg, 18 kg",
        {},
        "11 kg to 14 kg in week 3 of spring is 27.3 % more; the limit is 10 % in a week",
    ),
    ("10 kg, 11 kg, 12 kg, 13 kg", {"plans/spring": LIGHTER}, None),  # back from a lighter week is no step
]


@pytest.mark.parametrize(("loads", "plan", "doubt"), STEPS)
def test_a_step_against_its_limit(loads: str, plan: Example, doubt: str | None) -> None:
    """Weeks that are really trained are compared, each with the one before."""
    written = f"reps: 8, load: 10 kg, progress: {{load: {{weeks: [{loads}]}}}}"

    assert said(squat("weekly_step: 10 %", written, more=plan)) == ([f"goblet-squat: {doubt}"] if doubt else [])


TWICE = "phases: [{name: First, aim: To begin., weeks: 2, sessions: {monday: legs, thursday: legs}}]"
SETS = [
    # the most sets a week, the plan, the doubt
    (3, "", None),
    (2, "", "3 sets in week 1 of spring are beyond the limit of 2"),
    (6, TWICE, None),
    (5, TWICE, "6 sets in week 1 of spring are beyond the limit of 5"),
]


@pytest.mark.parametrize(("most", "plan", "doubt"), SETS)
def test_sets_of_a_week_against_their_limit(most: int, plan: str, doubt: str | None) -> None:
    """All sessions of a week count together; told once, at the first week."""
    example = squat(f"weekly_sets: {most}", "reps: 8", more={"plans/spring": plan} if plan else {})

    assert said(example) == ([f"goblet-squat: {doubt}"] if doubt else [])


TWO = (
    "phases: [{name: First, aim: To begin., weeks: 2, sessions: {monday: legs}}, "
    "{name: Second, aim: To go on., weeks: 2, sessions: {monday: legs}}]"
)


@pytest.mark.parametrize(("first", "weeks"), [(1, []), (2, ["week 1 of spring is in phase 1 (First), before phase 2"])])
def test_the_earliest_phase(first: int, weeks: list[str]) -> None:
    """From its phase on an exercise may stand in a plan; before it, that is told once."""
    found = said(squat(f"earliest_phase: {first}", "reps: 8", more={"plans/spring": TWO}))

    assert found == [f"goblet-squat: {week}, the earliest allowed" for week in weeks]


WARM_UPS = [
    ("{exercise: goblet-squat, reps: 12}", None),
    ("{exercise: goblet-squat, reps: 13}", "13 reps in the warm-up warm-up is beyond the limit of 12"),
    ("{exercise: goblet-squat, hold: 21 s}", "a hold of 21 s in the warm-up warm-up is beyond the limit of 20 s"),
    ("{exercise: goblet-squat, work: 20 s}", None),
    ("{do: Walk., reps: 50}", None),
    ("{exercise: step-down, reps: 50}", None),  # it has no limits
]


@pytest.mark.parametrize(("part", "doubt"), WARM_UPS)
def test_warm_ups_keep_limits_too(part: str, doubt: str | None) -> None:
    """Whatever is done before the training counts against the same limits, and what comes after it is looked at too."""
    files = {"routines/warm-up": f"exercises: [{{do: Walk., work: 5 min}}, {part}]"}
    example = squat("reps: 12, hold: 20 s", "reps: 8", more=files)

    assert said(example) == ([f"goblet-squat: {doubt}"] if doubt else [])


LINES = "blocks:\n  - kind: straight\n    sets: 3\n    exercises:\n      - exercise: goblet-squat\n        reps: 8\n{}"
GROWS = "        progress: {reps: {add: 1, up_to: 10}}\n"
EASED = "changes: [{week: 1, session: legs, exercise: goblet-squat, reps: 5, why: Test.}]"
ONE = "changes: [{week: 2, session: legs, exercise: goblet-squat, reps: 9, why: Test.}]"
PLACES = [
    # the limit, what is behind the dose, the plan's changes, the file, the text at the place
    (7, GROWS, "", "sessions/legs", "8\n"),  # the first dose
    (8, GROWS, "", "sessions/legs", "{add: 1, up_to"),  # what it grows to
    (8, "", ONE, "plans/spring", "9, why"),  # a change of the exercise
    (7, "", EASED, "sessions/legs", "8\n"),  # from the second week on, with nothing that grows
]


@pytest.mark.parametrize(("limit", "more", "changes", "file", "at"), PLACES)
def test_the_doubt_stands_at_the_number_to_change(limit: int, more: str, changes: str, file: str, at: str) -> None:
    """At the first dose, at the progression that passes the limit, or at the change of that week."""
    days = "phases: [{name: First, aim: To begin., weeks: 4, sessions: {monday: legs}}]"
    example = {
        "exercises/goblet-squat": f"limits: {{reps: {limit}}}",
        "sessions/legs": LINES.format(more),
        "plans/spring": f"{days}\n{changes}",
    }
    (found,) = (f for f in verdict_of(example).findings if f.rule == "dose-beyond-limit")
    line = f"{example[file]}\n".split("\n")[found.position.line - 1] + "\n"

    assert found.position.file == f"program/{file}.yml"
    assert line[found.position.column - 1 :].startswith(at)
