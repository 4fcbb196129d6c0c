"""Loads that nobody wrote, weights on jumps, and the first load of a plan."""

import pytest

from setwright.checks.example import Example
from setwright.checks.trial import verdict_of
from support import make


def said(files: dict[str, str], rule: str) -> list[str]:
    """Return what a check says of a small programme."""
    return [f.message for f in make.verdict(make.programme(files)).findings if f.rule == rule]


def one(written: str) -> str:
    """Return a session of one exercise."""
    return f"blocks: [{{kind: straight, sets: 3, exercises: [{{{written}}}]}}]"


LEFT_OPEN = [
    # limits, kit of the exercise, what the session writes, what is left to the member
    ("load: 12 kg", "kettlebell", "reps: 8", "a kettlebell without a load"),
    ("load: 12 kg, top_effort: RPE 7", "kettlebell", "reps: 8", "a kettlebell without a load"),
    ("load: 12 kg", "band", "reps: 8", "a band without a load"),
    ("load: 12 kg", "mat, kettlebell", "reps: 8", "a kettlebell without a load"),
    ("load: 12 kg", "kettlebell", "reps: 8, load: 8 kg", None),
    ("load: 12 kg", "kettlebell", "reps: 8, kit: [mat]", None),
    ("load: 12 kg", "mat", "reps: 8, kit: [dumbbell]", "a dumbbell without a load"),
    ("load: 12 kg", "mat", "reps: 8", None),
    ("reps: 12", "kettlebell", "reps: 8", None),
]


@pytest.mark.parametrize(("limits", "kit", "written", "left"), LEFT_OPEN)
def test_a_load_that_is_left_to_the_member(limits: str, kit: str, written: str, left: str | None) -> None:
    """Under a limit of the load, kit that comes in weights or bands stands beside a load."""
    files = {
        "exercises/lift": f"kit: [{kit}]\nlimits: {{{limits}}}",
        "sessions/only": one(f"exercise: lift, {written}"),
    }

    assert said(files, "load-escapes-limit") == (
        [f"lift: {left} in week 1 of plan may weigh more than the limit of 12 kg"] if left else []
    )


NO_WEIGHT = [
    ("reps: 8", "a kettlebell without a load"),
    ("reps: 8, load: RPE 7", "a kettlebell at RPE 7"),
    ("reps: 8, load: RPE 7, kit: [mat]", None),
    ("reps: 8, kit: [mat]", None),
]


@pytest.mark.parametrize(("written", "weight"), NO_WEIGHT)
def test_where_no_weight_is_allowed_none_stands_there(written: str, weight: str | None) -> None:
    """Not by effort either, even where the effort is limited."""
    files = {
        "exercises/lift": "limits: {load: none, top_effort: RPE 8}",
        "sessions/only": one(f"exercise: lift, {written}"),
    }

    assert said(files, "load-escapes-limit") == (
        [f"lift: {weight} in week 1 of plan is a weight, and the limit allows none"] if weight else []
    )


@pytest.mark.parametrize(("limits", "found"), [("load: 12 kg", 1), ("load: none", 1), ("reps: 12", 0)])
def test_a_warm_up_can_write_no_load(limits: str, found: int) -> None:
    """A step of a warm-up says none, so that an exercise with weights and a limit is none for it."""
    files = {
        "exercises/lift": f"limits: {{{limits}}}",
        "sessions/only": one("exercise: lift, reps: 8, load: 8 kg"),
        "routines/warm": "exercises: [{do: Walk., work: 5 min}, {exercise: lift, reps: 5}]",
    }
    in_warm_up = [message for message in said(files, "load-escapes-limit") if "in the warm-up warm" in message]

    assert len(in_warm_up) == found


HOP = "name: Hop\nkit: [%s]\n%s"
JUMPS = [
    # what makes it a jump, kit, what the session writes, the weight
    ("pattern: jump", "mat", "reps: 5", None),
    ("pattern: jump", "mat", "reps: 5, load: RPE 6", None),
    ("pattern: jump", "mat", "reps: 5, load: 2 kg per hand, kit: [dumbbell]", "2 kg per hand"),
    ("pattern: jump", "kettlebell", "reps: 5", "a kettlebell"),
    ("pattern: jump", "kettlebell", "reps: 5, load: RPE 6", "a kettlebell at RPE 6"),
    ("pattern: jump", "band", "reps: 5, load: light band", "light band"),
    ("pattern: jump\nlimits: {load: 4 kg}", "kettlebell", "reps: 5, load: 4 kg", None),
    ("pattern: squat\nlimits: {contacts: 80}", "kettlebell", "reps: 5, load: 4 kg", "4 kg"),
    ("pattern: squat", "kettlebell", "reps: 5, load: 4 kg", None),
]


@pytest.mark.parametrize(("about", "kit", "written", "weight"), JUMPS)
def test_a_weight_on_a_jump(about: str, kit: str, written: str, weight: str | None) -> None:
    """None, in whatever way it is written, unless a physiotherapist says how heavy it may be."""
    files = {"exercises/hop": HOP % (kit, about), "sessions/only": one(f"exercise: hop, {written}")}

    assert said(files, "weight-on-a-jump") == ([f"hop: {weight} on a jump, in week 1 of plan"] if weight else [])


def test_a_weighted_jump_in_a_warm_up() -> None:
    """A warm-up is no way round it."""
    files = {
        "exercises/hop": HOP % ("dumbbell", "pattern: jump"),
        "routines/warm": "exercises: [{do: Walk., work: 5 min}, {exercise: hop, reps: 5}]",
    }

    assert said(files, "weight-on-a-jump") == ["hop: a dumbbell on a jump, in the warm-up warm"]


def begun(load: str, limits: str = "", plan: str = "") -> list[str]:
    """Return what is said of a plan that begins a squat with dumbbells, or a bar, at a load."""
    squat = f"kit: [dumbbell]\n{f'limits: {{{limits}}}' if limits else ''}"
    example: Example = {
        "exercises/goblet-squat": squat,
        "sessions/legs": one(f"exercise: goblet-squat, reps: 8, {load}"),
        "plans/spring": plan or "for: Members.",
    }
    return [f.message for f in verdict_of(example).findings if f.rule == "first-load-heavy"]


TRAINED = "experience: trained"
FIRST = [
    # the first load, limits, the plan, why it is heavy (members of 40 to 110 kg)
    ("load: 12 kg", "", "", None),  # 30 % of 40 kg
    ("load: 13 kg", "", "", "32.5 % of the body weight of a member of 40 kg, and 30 % is the most"),
    ("load: 7 kg per hand", "", "", "35 % of the body weight of a member of 40 kg, and 30 % is the most"),
    ("load: 30 % bodyweight", "", "", None),
    ("load: 31 % bodyweight", "", "", "31 % of the body weight, and 30 % is the most"),
    ("load: 30 kg", "", TRAINED, None),
    ("load: 31 kg", "", TRAINED, "77.5 % of the body weight of a member of 40 kg, and 75 % is the most"),
    ("load: 70 % 1RM", "", "", None),
    ("load: 71 % 1RM", "", "", "70 % of 1RM is the most"),
    ("load: 85 % 1RM", "", TRAINED, None),
    ("load: 86 % 1RM", "", TRAINED, "85 % of 1RM is the most"),
    ("load: 9 kg", "load: 10 kg", "", None),
    ("load: 10 kg", "load: 10 kg", "", "100 % of its limit, and 90 % is the most"),
    ("load: 18 % bodyweight", "load: 20 % bodyweight", "", None),
    ("load: 19 % bodyweight", "load: 20 % bodyweight", "", "95 % of its limit, and 90 % is the most"),
    ("load: 8 kg", "load: 20 % bodyweight", "", "100 % of its limit, and 90 % is the most"),
    ("load: 5 kg per hand", "load: 10 kg", "", "100 % of its limit, and 90 % is the most"),
    ("load: RPE 8", "", "", None),  # the member's own choice
]


@pytest.mark.parametrize(("load", "limits", "plan", "why"), FIRST)
def test_the_first_load_of_a_plan(load: str, limits: str, plan: str, why: str | None) -> None:
    """Some way below its limit, a part of what the lightest member weighs, or of what can be lifted once.

    Of 1RM: Ratamess NA et al., Med Sci Sports Exerc 2009;41:687-708 (from memory). The rest is common practice.
    """
    said_load = load.removeprefix("load: ")

    assert begun(load, limits, plan) == (
        [f"goblet-squat: spring begins it at {said_load} in week 1: {why}"] if why else []
    )


LATER = [
    # the loads of four weeks, the plan's phase, the doubt
    ("8 kg, 9 kg, 14 kg, 14 kg", "", []),  # a step, which another check judges
    ("RPE 6, RPE 6, 14 kg, 14 kg", "", ["14 kg in week 3"]),  # the first of its kind
    ("10 % bodyweight, 10 % bodyweight, 16 kg, 16 kg", "", ["16 kg in week 3"]),
    ("14 kg, 14 kg, 14 kg, 14 kg", ", lighter: {weeks: [1], load: 50 %}", ["14 kg in week 2"]),
]


@pytest.mark.parametrize(("loads", "lighter", "found"), LATER)
def test_a_load_that_begins_later_is_a_first_one_too(loads: str, lighter: str, found: list[str]) -> None:
    """Where a kind of load begins there is nothing to step from; a lighter first week is none."""
    plan = f"phases: [{{name: All, aim: To go on., weeks: 4, sessions: {{monday: legs}}{lighter}}}]"
    first = loads.partition(",")[0]
    messages = begun(f"load: {first}, progress: {{load: {{weeks: [{loads}]}}}}", "", plan)

    assert [
        message.removeprefix("goblet-squat: spring begins it at ").partition(":")[0] for message in messages
    ] == found
