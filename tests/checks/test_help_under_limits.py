"""Help and added weights under checks: less help is a step up, and a limit may ask for a least help."""

import pytest

from setwright.source.finding import Finding
from support import make

STACK = "kit: {stack: {from: 5 kg, to: 80 kg, step: 5 kg}, band: [medium]}"


def found(load: str, *rules: str, progress: str = "", exercise: str = "", weeks: int = 4) -> list[Finding]:
    """Return what some rules find on a session of one exercise with a load."""
    files = {
        "club": STACK,
        "exercises/lift": f"{{kit: [stack], {exercise}}}" if exercise else "kit: [stack]",
        "sessions/only": "blocks: [{kind: straight, sets: 3, rest: 2 min, exercises: [{exercise: lift, reps: 6, "
        f"{load and f'load: {load}, '}progress: {{{progress}}}}}]}}]"
        if progress
        else f"blocks: [{{kind: straight, sets: 3, rest: 2 min, exercises: [{{exercise: lift, reps: 6"
        f"{load and f', load: {load}'}}}]}}]",
        "plans/plan": f"phases: [{{name: A, aim: B., weeks: {weeks}, sessions: {{monday: only}}}}]",
    }
    return [one for one in make.verdict(make.programme(files)).findings if one.rule in rules]


def test_less_help_is_a_step_up_judged_with_the_body() -> None:
    """From 20 to 10 kg of help, a member of 40 kg lifts 30 kg instead of 20: half as much again. More help is none."""
    harder = found(
        "20 kg of help", "load-step-too-large", progress="load: {take: 10 kg of help, down_to: 5 kg of help}"
    )
    easier = found("10 kg of help", "load-step-too-large", progress="load: {add: 10 kg of help, up_to: 40 kg of help}")

    assert len(harder) == 1
    assert "of body and weight together of a member of 40 kg 20 kg to 30 kg, is 50 % more" in harder[0].message
    assert easier == []


def test_an_added_weight_is_a_small_step_of_the_whole() -> None:
    """From 5 to 10 kg on the body is twice the disc, and 11 % more for a member of 40 kg: over a tenth, and no more."""
    step = found("bodyweight + 5 kg", "load-step-too-large", progress="load: {add: 5 kg, up_to: bodyweight + 15 kg}")

    assert len(step) == 1
    assert "40 kg 45 kg to 50 kg, is 11.1 % more" in step[0].message


@pytest.mark.parametrize(
    ("limit", "load", "crosses"),
    [
        ("20 kg of help", "20 kg of help", False),
        ("20 kg of help", "25 kg of help", False),
        ("20 kg of help", "15 kg of help", True),
        ("20 kg of help", "60 % bodyweight of help", False),
        ("20 kg of help", "40 % bodyweight of help", True),  # 16 kg for a member of 40 kg
        ("20 % bodyweight of help", "25 kg of help", False),  # 22 kg for a member of 110 kg
        ("20 % bodyweight of help", "20 kg of help", True),
        ("20 kg of help", "bodyweight + 5 kg", True),
        ("20 kg of help", "5 kg", True),
        ("20 kg of help", "", True),
        ("bodyweight + 10 kg", "bodyweight + 10 kg", False),
        ("bodyweight + 10 kg", "bodyweight + 15 kg", True),
        ("10 kg", "bodyweight + 15 kg", True),
        ("bodyweight + 10 kg", "15 kg", True),
        ("bodyweight + 10 kg", "20 kg of help", False),
    ],
)
def test_a_limit_holds_the_right_way_round(limit: str, load: str, crosses: bool) -> None:
    """A least help is crossed by less of it, by none, and by weight; for the member at whom it is scarcest."""
    assert bool(found(load, "dose-beyond-limit", exercise=f"limits: {{load: {limit}}}")) is crosses


def test_a_band_that_helps_needs_an_effort_under_a_limit_of_load() -> None:
    """What a band takes off the body cannot be weighed."""
    limits = "limits: {load: 20 kg of help}"

    assert len(found("medium band of help", "load-escapes-limit", exercise=limits)) == 1
