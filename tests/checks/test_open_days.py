"""Checks of spacing where days are open, groups start apart, or a plan goes on from another.

The times between sessions are common practice or from the source that each check names; here they are only held.
"""

import pytest

from setwright.checks.example import Example
from setwright.checks.trial import verdict_of

UNDATED: Example = {"plans/open": "name: Open"}
ARMS: Example = {
    "exercises/press": "{pattern: push, regions: {main: [chest]}}",
    "sessions/arms": "blocks: [{kind: straight, sets: 3, exercises: [{exercise: press, reps: 8}]}]",
}


def said(rule: str, example: Example) -> list[str]:
    """Return what a check says of an example."""
    return [found.message for found in verdict_of({**ARMS, **example}).findings if found.rule == rule]


def week(sessions: str, more: str = "", weeks: int = 4) -> Example:
    """Return the plan of the base with other sessions in its weeks; it starts on Monday 1 March 2027."""
    phase = f"{{name: First, aim: To begin., weeks: {weeks}, sessions: {sessions}}}"
    return {"plans/spring": f"phases: [{phase}]\n{more}"}


@pytest.mark.parametrize(
    ("sessions", "doubt"),
    [
        ("[legs, legs]", []),
        ("[legs, legs, legs]", []),  # three with 48 h between fit into a week, back to the first
        (
            "[legs, legs, legs, legs]",
            ["week 1 has 4 sessions, and with 48 h between two that work quadriceps, it would need 8 days"],
        ),
        ("[legs, arms, legs, arms]", []),
        ("[legs]", []),
    ],
)
def test_open_days_are_asked_whether_the_week_is_long_enough(sessions: str, doubt: list[str]) -> None:
    """Nothing is said of weekdays, which nobody knows: only whether the order fits into seven days."""
    assert said("regions-too-close", week(sessions)) == doubt


def test_two_sessions_of_one_day_are_no_hours_apart() -> None:
    """Morning and evening for the same legs are told; legs and arms are not."""
    assert said("regions-too-close", week("{monday: [legs, legs]}")) == [
        "legs and legs are 0 h apart in week 1 and both work quadriceps and glutes"
    ]
    assert said("regions-too-close", week("{monday: [legs, arms]}")) == []


def hard(*days: str) -> str:
    return f"other_training: [{', '.join(f'{{day: {day}, what: Intervals., hard: true}}' for day in days)}]"


@pytest.mark.parametrize(
    ("sessions", "days", "doubt"),
    [
        ("[legs, legs]", ("sunday",), []),  # Monday to Friday are free
        (
            "[legs, legs]",
            ("tuesday", "thursday", "sunday"),
            ["2 sessions of week 1 work the legs, and 1 day leaves 48 h"],
        ),
        ("[legs]", ("tuesday", "thursday", "sunday"), []),
        ("[arms, arms]", ("tuesday", "thursday", "sunday"), []),
    ],
)
def test_open_days_are_asked_whether_enough_are_free_before_what_is_hard(
    sessions: str, days: tuple[str, ...], doubt: list[str]
) -> None:
    """A day counts as free where two whole days lie between it and each key session."""
    found = said("key-session-too-close", week(sessions, hard(*days)))

    assert [message.split(" before ")[0] for message in found] == doubt


def test_an_event_at_a_distance_is_a_key_session_too() -> None:
    """Legs on Saturday, the event on Sunday of the same week, by its place in the plan."""
    event = "event: {name: Race, week: 4, day: sunday}"

    assert said("key-session-too-close", week("{saturday: legs}", event)) == ["legs in week 4 is 24 h before Race"]
    assert said("key-session-too-close", week("{friday: legs}", event)) == []


@pytest.mark.parametrize(
    ("event", "doubt"),
    [
        ("week: 4, day: sunday", []),
        ("week: 5, day: sunday", []),
        ("week: 3, day: sunday", ["Race is in week 3, the plan's last week is 4"]),
    ],
)
def test_an_event_at_a_distance_is_at_the_plans_end(event: str, doubt: list[str]) -> None:
    """The last week, or the one after it."""
    assert said("event-outside-plan", week("{monday: legs}", f"event: {{name: Race, {event}}}")) == doubt


def test_an_event_is_looked_at_for_each_group() -> None:
    """It falls into the last week of the early group, and before the last week of the late one."""
    groups = "starts: {Early: 2027-03-01, Late: 2027-03-08}\nevent: {name: Race, date: 2027-03-27}"

    assert said("event-outside-plan", week("{monday: legs}", groups)) == [
        "Race is on 2027-03-27, the last week of 'Late' is 2027-03-29 to 2027-04-04"
    ]


def squat(load: str) -> str:
    return f"blocks: [{{kind: straight, sets: 3, exercises: [{{exercise: goblet-squat, reps: 8, load: {load}}}]}}]"


def seam(before: str, now: str, follows: str) -> Example:
    """Return two plans with one session each, and a load of the same squat in both."""
    phases = "phases: [{name: P, aim: To go on., weeks: 2, sessions: {monday: %s}}]"
    return {
        "sessions/light": squat(before),
        "sessions/heavy": squat(now),
        "plans/before": f"starts: 2027-01-04\n{phases % 'light'}",
        "plans/spring": f"{follows}\n{phases % 'heavy'}",
    }


def test_a_load_steps_across_the_seam_of_two_plans() -> None:
    """From 8 kg to 16 kg is told where the plan follows the other one, and is none where members come from anywhere."""
    assert said("load-step-too-large", seam("8 kg", "16 kg", "follows: before")) == [
        "goblet-squat: 8 kg to 16 kg in week 1 of spring, after before, is 100 % more"
    ]
    assert said("load-step-too-large", seam("8 kg", "16 kg", "")) == []
    assert said("load-step-too-large", seam("16 kg", "16 kg", "follows: before")) == []
