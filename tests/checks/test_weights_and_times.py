"""Loads that the club owns something for, and sessions that fit their time. Common practice, no source."""

import pytest

from support import make

WEIGHTS = [
    # kit, load, the doubt (in a club for 40 to 110 kg; kettlebells of 4 to 24 kg, one each; dumbbells of 1 to 20 kg)
    ("kettlebell", "12 kg", None),
    ("kettlebell", "14 kg", None),  # between 12 and 16 kg, and near both
    ("kettlebell", "2 kg", "no kettlebell near 2 kg"),
    ("kettlebell", "40 kg", "no kettlebell near 40 kg"),
    ("kettlebell", "6 kg per hand", "6 kg per hand, but no kettlebell is owned in pairs"),
    ("dumbbell", "6 kg per hand", None),
    ("mat", "12 kg", "12 kg, but none of its kit comes in weights"),
    ("mat", "RPE 7", None),
    ("kettlebell", "15 % bodyweight", None),
    ("kettlebell", "5 % bodyweight", "no kettlebell is light enough for members of 40 to 59 kg at 5 % bodyweight"),
    (
        "kettlebell",
        "30 % bodyweight",
        "no kettlebell is near 30 % bodyweight for members of 107 to 110 kg: they take 24 kg",
    ),
    ("dumbbell", "70 % 1RM", None),
]


@pytest.mark.parametrize(("kit", "load", "doubt"), WEIGHTS)
def test_owned_weight(kit: str, load: str, doubt: str | None) -> None:
    """A load needs a weight near it, for the lightest member and for the heaviest."""
    phases = "[{name: All, aim: To go on., weeks: 1, sessions: {monday: only}}]"
    made = make.one_exercise(f"{{reps: 8, load: {load}}}", phases=phases, lift=f"kit: [{kit}]")

    found = [f.message for f in make.verdict(made).findings if f.rule == "no-owned-weight-near"]

    assert found == ([f"lift, week 1 of plan: {doubt}"] if doubt else [])


def test_kit_of_the_session_goes_before_the_exercise() -> None:
    """A session may say which kit the load is taken with."""
    phases = "[{name: All, aim: To go on., weeks: 1, sessions: {monday: only}}]"
    made = make.one_exercise("{reps: 8, load: 5 kg per hand, kit: [mat, dumbbell]}", phases=phases)

    assert make.verdict(made).findings == ()


TIMES = [
    # one set of 40 s hold and a warm-up of 5 min take 340 s; three with 90 s rest 600 to 620 s, 610 in the middle
    ("{kind: straight, sets: 1}", "340 s", None),
    ("{kind: straight, sets: 1}", "339 s", "about 6 min with the shortest warm-up, in week 1 of plan"),
    ("{kind: straight, sets: 3, rest: 90 s}", "610 s", None),
    ("{kind: straight, sets: 3, rest: 90 s}", "10 min", "about 11 min with the shortest warm-up, in week 1 of plan"),
    (
        "{kind: straight, sets: 1, progress: {sets: {add: 2, up_to: 3}}}",
        "10 min",
        "about 11 min with the shortest warm-up, in week 2 of plan",
    ),
]


@pytest.mark.parametrize(("block", "budget", "doubt"), TIMES)
def test_time_budget(block: str, budget: str, doubt: str | None) -> None:
    """The middle of the computed time and the shortest warm-up have to fit, in the longest week."""
    exercises = "exercises: [{exercise: lift, hold: 40 s}]"
    only = f"time_budget: {budget}\nwarm_up: [long, warm]\nblocks: [{block[:-1]}, {exercises}}}]"
    files = {"sessions/only": only, "routines/long": "{takes: 20 min, exercises: [{do: Walk., work: 20 min}]}"}

    assert [f.message for f in make.verdict(make.programme(files)).findings] == ([doubt] if doubt else [])
