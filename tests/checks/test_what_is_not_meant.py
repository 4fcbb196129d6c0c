"""What a coach writes and nobody does, or does where it was not meant: lists beyond the plan, changes of several."""

import pytest

from support import make

TWICE = (
    "blocks: [{kind: straight, rest: 2 min, exercises: [{exercise: lift, sets: 1, reps: 5}, "
    "{exercise: %s, sets: 3, reps: 8}]}]"
)


def changed(session: str, change: str) -> list[str]:
    """Return what is said of a change of one week."""
    made = make.programme(
        {
            "sessions/only": session,
            "plans/plan": f"changes: [{{week: 2, {change}, why: A race.}}]",
            "exercises/other": "",
        }
    )
    return [one.message for one in make.verdict(made).findings if one.rule == "change-of-several"]


@pytest.mark.parametrize(
    ("session", "change", "entries"),
    [
        (TWICE % "lift", "day: monday, exercise: lift, reps: 4", 2),
        (TWICE % "lift", "session: only, exercise: lift, reps: 4", 2),
        (TWICE % "other", "day: monday, exercise: lift, reps: 4", 0),
        (TWICE % "lift", "day: monday, sets: 1", 0),  # of the whole session, as it says
        (TWICE % "lift", "day: monday, skip: true", 0),
    ],
)
def test_a_change_of_several_entries_is_told(session: str, change: str, entries: int) -> None:
    """Where the exercise stands twice, its change is of both; a change of the session means all of it."""
    found = changed(session, change)

    assert found == ([f"this changes {entries} entries of lift in only, all alike"] if entries else [])


def test_another_way_of_the_same_exercise_is_an_entry_too() -> None:
    """The lighter way for newcomers would get the change as well."""
    made = make.programme(
        {
            "club": "choices: {new: I am new}",
            "sessions/only": "blocks: [{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8, instead: "
            "[{for: [new], exercise: lift, reps: 5}]}]}]",
            "plans/plan": "changes: [{week: 2, day: monday, exercise: lift, reps: 4, why: A race.}]",
        }
    )

    assert "change-of-several" in [one.rule for one in make.verdict(made).findings]


@pytest.mark.parametrize(
    ("progress", "phases", "never"),
    [
        ("{reps: {weeks: [8, 9, 10, 11]}}", "weeks: 4", ""),
        ("{reps: {weeks: [8, 9, 10, 11, 12]}}", "weeks: 4", "the last one is never done"),
        (
            "{reps: {weeks: [8, 9, 10, 11]}}",
            "weeks: 4, lighter: {weeks: [3], sets: 60 %}",
            "the last one is never done",
        ),
        ("{tempo: {weeks: [3-0-1-0, 4-0-1-0, 5-0-1-0]}}", "weeks: 1", "the last 2 are never done"),
        ("{reps: {weeks: [8, 9], again: true}}", "weeks: 4", ""),
    ],
)
def test_a_list_beyond_the_plan_is_told(progress: str, phases: str, never: str) -> None:
    """Each trained week takes an entry; a lighter week takes none."""
    made = make.programme(
        {
            "sessions/only": "blocks: [{kind: straight, sets: 3, exercises: "
            f"[{{exercise: lift, reps: 8, progress: {progress}}}]}}]",
            "plans/plan": f"phases: [{{name: A, aim: B., {phases}, sessions: {{monday: only}}}}]",
        }
    )
    found = [one.message for one in make.verdict(made).findings if one.rule == "list-beyond-plan"]

    assert len(found) == bool(never)
    assert all(message.endswith(never) for message in found)
