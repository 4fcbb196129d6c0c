"""From help to the body alone, and from there to a weight added to it, is a step of the load like any other."""

import pytest

from support.make import programme, verdict

TWO_PHASES = (
    "phases: [{name: A, aim: B., weeks: 2, sessions: {monday: only}}, {name: C, aim: D., weeks: 2, sessions: "
    "{monday: two}}]"
)


def session_of(load: str) -> str:
    """Return a session of one exercise with a load, or with the body alone."""
    with_load = f", load: {load}" if load else ""
    return f"blocks: [{{kind: straight, sets: 3, exercises: [{{exercise: lift, reps: 6{with_load}}}]}}]"


@pytest.mark.parametrize(
    ("before", "now", "more"),
    [
        # The lightest member has 40 kg: 10, 35 and 38 kg of the body are left, 50 and 43 kg are lifted (computed).
        ("30 kg of help", "", "300 % more"),
        ("5 kg of help", "", "14.3 % more"),
        ("2 kg of help", "", None),
        ("20 % bodyweight of help", "", "25 % more"),
        ("5 % bodyweight of help", "", None),
        ("", "bodyweight + 10 kg", "25 % more"),
        ("", "bodyweight + 3 kg", None),
        ("bodyweight + 10 kg", "", None),
        ("", "30 kg of help", None),
        ("", "8 kg", None),
    ],
)
def test_a_step_to_or_from_the_body_alone(before: str, now: str, more: str | None) -> None:
    """It is counted for the lightest member; towards more help or less weight there is none."""
    made = programme({"sessions/only": session_of(before), "sessions/two": session_of(now), "plans/plan": TWO_PHASES})
    said = [found.message for found in verdict(made).findings if found.rule == "load-step-too-large"]

    assert len(said) == (0 if more is None else 1)
    assert more is None or (more in said[0] and "the body alone" in said[0])
