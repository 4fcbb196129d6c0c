"""A step that is too large is pointed at where a coach mends it: at the load, not at what else progresses."""

import pytest

from setwright.checks.trial import verdict_of

CARRY = """
blocks:
  - kind: straight
    sets: 2
    exercises:
      - exercise: goblet-squat
        distance: 20 m
        load: %s
        progress:
%s
"""
DISTANCE = "          distance: {add: 5 m, up_to: 40 m}"
LOAD = "          load: {weeks: [10 kg, 12 kg]}"
THEN = "          then: {load: {add: 4 kg, up_to: 14 kg}}"
BY_CHANGE = """
phases: [{name: First, aim: To begin., weeks: 2, sessions: {monday: legs}}]
changes: [{week: 2, session: legs, exercise: goblet-squat, load: 12 kg, why: A test.}]
"""
BY_SESSION = """
phases:
  - {name: First, aim: To begin., weeks: 1, sessions: {monday: legs}}
  - {name: Second, aim: To go on., weeks: 2, sessions: {monday: heavier}}
"""
PLACES = [
    # the progress of the carry, the plan, a heavier session, the file and the text at the place
    (f"{DISTANCE}\n{LOAD}", "", "", "sessions/legs", "{weeks: [10 kg"),
    (f"{DISTANCE.replace('40 m', '25 m')}\n{THEN}", "", "", "sessions/legs", "{add: 4 kg"),
    (DISTANCE, BY_CHANGE, "", "plans/spring", "12 kg"),
    (DISTANCE, BY_SESSION, CARRY % ("12 kg", DISTANCE), "sessions/heavier", "12 kg"),
]


@pytest.mark.parametrize("rule", ["load-step-too-large", "dose-beyond-limit"])
@pytest.mark.parametrize(("progress", "plan", "heavier", "file", "at"), PLACES)
def test_a_step_stands_at_the_load(rule: str, progress: str, plan: str, heavier: str, file: str, at: str) -> None:
    """In its own climb, in the climb after another, in a change of one week, or in the session that is heavier."""
    files = {
        "exercises/goblet-squat": "kit: [dumbbell]\nlimits: {weekly_step: 10 %}",
        "sessions/legs": CARRY % ("10 kg", progress),
        **({"plans/spring": plan} if plan else {}),
        **({"sessions/heavier": f"name: Heavier\n{heavier}"} if heavier else {}),
    }
    (found,) = (f for f in verdict_of(files).findings if f.rule == rule)
    line = files[file].strip().split("\n")[found.position.line - 1]

    assert found.position.file == f"program/{file}.yml"
    assert line[found.position.column - 1 :].startswith(at)
