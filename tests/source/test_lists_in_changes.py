"""A list of sets in a change of one week is as long as the sets or rounds of that week."""

from collections.abc import Callable

import pytest

from setwright.source.finding import Finding, Position
from setwright.source.links import Parts, link_findings
from setwright.source.read import FOLDERS
from support import make

PHASES = """
phases:
  - {name: One, aim: To begin., weeks: 4, sessions: {monday: only}, lighter: {weeks: [4], sets: 60 %}}
  - {name: Two, aim: To be fresh., weeks: 1, sessions: {monday: only}, taper: {sets: [50 %]}}
"""
STRAIGHT = "blocks: [{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8}]}]"
LISTED = "blocks: [{kind: straight, exercises: [{exercise: lift, reps: [10, 8, 6]}]}]"
OWN_GROWING = (
    "blocks: [{kind: straight, exercises: [{exercise: lift, sets: 2, reps: 8, progress: {sets: {add: 1, up_to: 4}}}]}]"
)
GROWING = (
    "blocks: [{kind: straight, sets: 4, progress: {sets: {take: 1, down_to: 2}}, "
    "exercises: [{exercise: lift, reps: 8}]}]"
)
BY_WEEKS = (
    "blocks: [{kind: straight, sets: 2, progress: {sets: {weeks: [2, 4]}}, exercises: [{exercise: lift, reps: 8}]}]"
)
ROUNDS = "blocks: [{kind: superset, rounds: 3, exercises: [{exercise: lift, reps: 8}, {exercise: pull, reps: 8}]}]"
TWICE = (
    "blocks: [{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8}]}, "
    "{kind: straight, sets: 2, exercises: [{exercise: lift, reps: 5}]}]"
)


def found(session: str, changes: str) -> list[Finding]:
    """Return what is found in a plan of this session with these changes; a position says the path as its file."""
    parts = Parts(
        plans={"plan": make.plan(f"{PHASES}\nchanges: [{changes}]")},
        sessions={"only": make.session(session)},
        ids={kind: {"only", "lift", "pull", "warm"} for kind in FOLDERS},
        routines={"warm": make.routine()},
    )
    place: Callable[..., Position] = lambda file, *path, **_: Position(" ".join(map(str, (file, *path))))  # noqa: E731
    return list(link_findings(parts, place))


def change(week: int, numbers: str) -> str:
    """Return a change of the lift."""
    return f"{{week: {week}, day: monday, exercise: lift, {numbers}, why: Because.}}"


@pytest.mark.parametrize(
    ("session", "week", "numbers", "key", "said", "hint"),
    [
        (STRAIGHT, 1, "reps: [8, 8]", "reps", "3 sets", "each of the 3 sets, or 'sets: 2' beside the list"),
        (STRAIGHT, 1, "load: [8 kg, 8 kg]", "load", "3 sets", "each of the 3 sets, or 'sets: 2' beside the list"),
        (LISTED, 2, "reps: [8, 8]", "reps", "3 sets", "each of the 3 sets, or 'sets: 2' beside the list"),
        (ROUNDS, 3, "reps: [8, 8]", "reps", "3 rounds", "each of the 3 rounds"),
        (
            OWN_GROWING,
            2,
            "reps: [8, 8, 8, 8, 8]",
            "reps",
            "2 to 4 sets",
            "each of the 2 to 4 sets, or 'sets: 5' beside the list",
        ),
        (
            GROWING,
            2,
            "reps: [8, 8, 8, 8, 8]",
            "reps",
            "2 to 4 sets",
            "each of the 2 to 4 sets, or 'sets: 5' beside the list",
        ),
        (
            BY_WEEKS,
            2,
            "reps: [8, 8, 8]",
            "reps",
            "2 to 4 sets",
            "each of the 2 to 4 sets, or 'sets: 3' beside the list",
        ),
        (STRAIGHT, 4, "reps: [8, 8, 8, 8]", "reps", "3 sets", "each of the 3 sets, or 'sets: 4' beside the list"),
        (TWICE, 1, "reps: [8, 8, 8]", "reps", "2 sets", "each of the 2 sets, or 'sets: 3' beside the list"),
    ],
)
def test_a_list_of_another_length(session: str, week: int, numbers: str, key: str, said: str, hint: str) -> None:
    """It is refused at its key, once, with how many sets or rounds there are, and how to have another number."""
    (one,) = found(session, change(week, numbers))

    count = numbers.count(",") + 1
    assert one.position.file == f"plans/plan.yml changes 0 {key}"
    assert one.rule == "list-length-differs"
    assert one.message == f"this list has {count} entries, 'lift' has {said} in that week"
    assert one.hint == f"write one entry for {hint}"


@pytest.mark.parametrize(
    ("session", "week", "numbers"),
    [
        (STRAIGHT, 1, "reps: [8, 8, 6]"),
        (STRAIGHT, 1, "reps: 6"),
        (STRAIGHT, 1, "sets: 2, reps: [8, 8]"),
        (LISTED, 1, "reps: [8, 8, 6], load: [8 kg, 8 kg, 10 kg]"),
        (ROUNDS, 1, "reps: [8, 8, 6]"),
        (OWN_GROWING, 3, "reps: [8, 8, 6]"),
        (GROWING, 3, "reps: [8, 8, 6]"),
        (BY_WEEKS, 3, "reps: [8, 8, 8, 6]"),
    ],
)
def test_a_list_as_long_as_the_sets(session: str, week: int, numbers: str) -> None:
    """A list as long as the week may be, one value for every set, and a list with 'sets' beside it are fine."""
    assert found(session, change(week, numbers)) == []


@pytest.mark.parametrize("week", [4, 5])
def test_a_lighter_week_and_a_taper_have_fewer_sets(week: int) -> None:
    """Of three sets, a lighter week and a taper leave one or two, so that a list of two fits."""
    assert found(STRAIGHT, change(week, "reps: [8, 8]")) == []


def test_another_change_of_the_week_may_say_how_many_sets() -> None:
    """Sets of the whole session count for each of its exercises; those of another week or exercise do not."""
    whole = "{week: 1, day: monday, sets: 2, why: Because.}"
    other = "{week: 1, day: monday, exercise: pull, sets: 2, why: Because.}"

    assert found(STRAIGHT, f"{whole}, {change(1, 'reps: [8, 8]')}") == []
    assert len(found(STRAIGHT, f"{whole}, {change(2, 'reps: [8, 8]')}")) == 1
    assert len(found(ROUNDS, f"{other}, {change(1, 'reps: [8, 8]')}")) == 1
