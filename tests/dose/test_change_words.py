"""What changed since the last time, in words and numbers: one line a case."""

from dataclasses import replace

import pytest
from hypothesis import given

from setwright.dose.change import changes_between, own_changes, round_changes
from setwright.dose.dose import Dose
from setwright.wording.changes import in_a_line, in_words
from setwright.wording.language import ENGLISH
from support import make
from support.strategies import doses

CASES = [
    # last time, now, words
    ("{reps: 8}", "{reps: 8}", ()),
    ("{reps: 8}", "{reps: 9}", ("1 more rep",)),
    ("{reps: 10}", "{reps: 8}", ("2 fewer reps",)),
    ("{sets: 2, reps: 8}", "{sets: 3, reps: 8}", ("one set more",)),
    ("{sets: 3, reps: 8}", "{sets: 1, reps: 8}", ("two sets fewer",)),
    ("{sets: 1, reps: 8}", "{sets: 6, reps: 8}", ("5 sets more",)),
    ("{hold: 30 s}", "{hold: 35 s}", ("5 s longer",)),
    ("{work: 1 min}", "{work: 45 s}", ("15 s shorter",)),
    ("{distance: 20 m}", "{distance: 25 m}", ("5 m farther",)),
    ("{distance: 30 m}", "{distance: 27.5 m}", ("2.5 m less far",)),
    ("{reps: 8, load: 15 % bodyweight}", "{reps: 8, load: 17.5 % bodyweight}", ("2.5 % of body weight heavier",)),
    ("{reps: 8, load: 15 % bodyweight}", "{reps: 8, load: 13.5 % bodyweight}", ("1.5 % of body weight lighter",)),
    (
        "{reps: 8, load: 6 % bodyweight per hand}",
        "{reps: 8, load: 6.5 % bodyweight per hand}",
        ("0.5 % of body weight heavier in each hand",),
    ),
    ("{reps: 5, load: 70 % 1RM}", "{reps: 5, load: 75 % 1RM}", ("5 % of 1RM heavier",)),
    ("{reps: 8, load: 12 kg}", "{reps: 8, load: 16 kg}", ("4 kg heavier",)),
    ("{reps: 8, load: 6 kg per hand}", "{reps: 8, load: 4 kg per hand}", ("2 kg lighter in each hand",)),
    ("{reps: 8, load: 25 lb}", "{reps: 8, load: 30 lb}", ("5 lb heavier",)),
    ("{reps: 8, load: RPE 6}", "{reps: 8, load: RPE 6.5}", ("effort 0.5 higher",)),
    ("{reps: 8, load: RPE 8}", "{reps: 8, load: RPE 6}", ("effort 2 lower",)),
    ("{reps: 8, load: 3 reps in reserve}", "{reps: 8, load: 2 reps in reserve}", ("1 rep less in reserve",)),
    ("{reps: 8, load: 1 rep in reserve}", "{reps: 8, load: 3 reps in reserve}", ("2 reps more in reserve",)),
    ("{reps: 8, load: light band}", "{reps: 8, load: medium band}", ("medium band instead of light band",)),
    ("{reps: 8}", "{reps: 8, load: 12 kg}", ("now with 12 kg",)),
    ("{reps: 8, load: 12 kg}", "{reps: 8}", ("without weight",)),
    ("{reps: 8, load: 12 kg}", "{reps: 8, load: 8 kg per hand}", ("8 kg in each hand instead of 12 kg",)),
    ("{reps: 8, load: 12 kg}", "{reps: 8, load: RPE 7}", ("effort 7 of 10 instead of 12 kg",)),
    ("{reps: 8, tempo: 3-0-1-0}", "{reps: 8, tempo: 4-0-1-0}", ("tempo 4-0-1-0 instead of 3-0-1-0",)),
    ("{reps: 8}", "{reps: 8, tempo: 4-0-1-0}", ("tempo 4-0-1-0",)),
    ("{reps: 8, tempo: 4-0-1-0}", "{reps: 8}", ("no set tempo instead of 4-0-1-0",)),
    ("{reps: 8, rest: 90 s}", "{reps: 8, rest: 75 s}", ("15 s less rest",)),
    ("{reps: 8, rest: 60 s}", "{reps: 8, rest: 2 min}", ("60 s more rest",)),
    # most important first
    (
        "{sets: 3, reps: 10, load: 12 kg, rest: 60 s}",
        "{sets: 2, reps: 8, load: 16 kg, rest: 90 s}",
        ("one set fewer", "2 fewer reps", "4 kg heavier", "30 s more rest"),
    ),
]


@pytest.mark.parametrize(("last_time", "now", "words"), CASES)
def test_change_in_words(last_time: str, now: str, words: tuple[str, ...]) -> None:
    """Two doses of an exercise differ in these words."""
    assert in_words(ENGLISH, changes_between(make.dose(last_time), make.dose(now))) == words


def test_rounds_are_called_rounds() -> None:
    """In a superset or circuit, sets are rounds."""
    two, three = (make.dose("{reps: 8}", block=f"{{kind: circuit, rounds: {rounds}}}") for rounds in (2, 3))

    assert in_words(ENGLISH, changes_between(two, three, rounds=True)) == ("one round more",)


LISTS = [
    # last time, now, words: each number that differs, of each set, and nothing that stays
    ("{reps: 8}", "{reps: [8, 6, 4]}", "8, 6, 4 reps instead of 8"),
    ("{reps: [8, 6, 4]}", "{reps: 8}", "8 reps instead of 8, 6, 4"),
    ("{reps: [12, 10, 8], tempo: 3-0-1-0}", "{reps: [13, 11, 9], tempo: 3-0-1-0}", "1 more rep"),
    (
        "{reps: [12, 10, 8], tempo: 3-0-1-0}",
        "{reps: [10, 10, 8], tempo: 3-0-1-0}",
        "10, 10, 8 reps instead of 12, 10, 8",
    ),
    ("{reps: [12, 10, 8]}", "{reps: [12, 10]}", "one set fewer"),  # the last one is left out
    ("{reps: [12, 10]}", "{reps: [12, 10, 8]}", "one set more; 12, 10, 8 reps instead of 12, 10"),
    ("{reps: [12, 10, 8]}", "{reps: [8 to 10, 6]}", "one set fewer; 8 to 10, 6 reps instead of 12, 10, 8"),
    ("{hold: [40 s, 30 s]}", "{hold: [40 s, 20 s]}", "40 s, 20 s hold instead of 40 s, 30 s"),
    ("{distance: [40 m, 30 m]}", "{distance: 20 m}", "one set more; 20 m instead of 40, 30"),
    (
        "{reps: [12, 10, 8], load: [40 kg, 45 kg, 50 kg], feels_like: RPE 8}",
        "{reps: [10, 8], load: [45 kg, 50 kg], feels_like: RPE 8}",
        "one set fewer; 10, 8 reps instead of 12, 10, 8; 45, 50 kg instead of 40, 45, 50 kg",
    ),
    (
        "{reps: 5, load: [60 % 1RM, 70 % 1RM]}",
        "{reps: 5, load: [54 % 1RM, 63 % 1RM]}",
        "54, 63 % of 1RM instead of 60, 70 % of 1RM",
    ),
    ("{reps: 5, load: [60 % 1RM, 70 % 1RM]}", "{reps: 5, load: [65 % 1RM, 75 % 1RM]}", "5 % of 1RM heavier"),
    (
        "{reps: 5, load: [light band, medium band]}",
        "{reps: 5, load: [medium band, heavy band]}",
        "medium band, heavy band instead of light band, medium band",
    ),
    (
        "{reps: 5, load: 60 kg, feels_like: RPE 8}",
        "{reps: 5, load: 60 kg, feels_like: RPE 7}",
        "should feel like effort 7 of 10",
    ),
]


@pytest.mark.parametrize(("last_time", "now", "words"), LISTS)
def test_sets_that_differ_say_what_differs(last_time: str, now: str, words: str) -> None:
    """Where sets differ among themselves, the list of each number that changed stands beside the one before."""
    before, after = (
        make.dose(each, block="{kind: straight}" if "[" in each else "{kind: straight, sets: 3}")
        for each in (last_time, now)
    )
    assert in_a_line(ENGLISH, changes_between(before, after)) == words


def test_rounds_that_differ_are_never_called_sets() -> None:
    """In a superset, the round that a change takes away is said of the block, and of an exercise what it does then."""
    only = """
blocks:
  - kind: superset
    rounds: 3
    exercises: [{exercise: lift, reps: [12, 10, 8]}, {exercise: lift, reps: 5}]
"""
    change = "{week: 2, session: only, sets: 1, why: Little time.}"
    block = make.resolved({"sessions/only": only, "plans/plan": f"changes: [{change}]"}).weeks[1].sessions[0].blocks[0]

    assert [in_a_line(ENGLISH, each) for each in (block.changes, *(item.changes for item in block.items))] == [
        "two rounds fewer",
        "",
        "",
    ]


HANDS = [
    # loads of two weeks, what is owned is 11, 12 and 14 kg among others, words
    ("12 kg", "10.8 kg", "1 kg lighter"),
    ("12 kg", "11.9 kg", "same weight"),
    ("12 kg", "13 kg", "1 kg heavier"),
    ("11.6 kg", "12.4 kg", "same weight"),
    ("[10 kg, 12 kg]", "[9.8 kg, 12.4 kg]", "same weight"),
    ("[10 kg, 12 kg]", "[9 kg, 12.4 kg]", "9, 12 kg instead of 10, 12 kg"),
    ("15 % bodyweight", "13.5 % bodyweight", "1.5 % of body weight lighter"),  # members differ
]


@pytest.mark.parametrize(("before", "now", "words"), HANDS)
def test_a_change_is_told_of_the_weight_in_the_hand(before: str, now: str, words: str) -> None:
    """With dumbbells of 1 kg steps, 11.9 kg after 12 kg is the same weight, whatever the paper says."""
    change = f"[{{week: 2, session: only, exercise: lift, load: {now}, why: For once.}}]"
    block = "{kind: straight}" if "[" in before else "{kind: straight, sets: 2}"
    made = make.one_exercise(f"{{reps: 8, load: {before}}}", block, changes=change, lift="kit: [dumbbell]")
    item = make.in_week(made, 2)

    assert item is not None
    assert in_a_line(ENGLISH, item.changes) == words


@given(doses)
def test_same_dose_has_no_change(dose: Dose) -> None:
    """Nothing is said where nothing changed."""
    assert changes_between(dose, dose) == ()


@given(doses, doses)
def test_every_difference_is_said(before: Dose, now: Dose) -> None:
    """Two doses of the same measure that are not the same never pass as the same."""
    now = replace(now, measure=before.measure, sides=before.sides)

    assert (changes_between(before, now) == ()) is (before == now)


@given(doses, doses)
def test_block_and_exercise_share_the_words_between_them(before: Dose, now: Dose) -> None:
    """What a whole superset shares and what is an exercise's own are together all that changed, none of it twice."""
    now = replace(now, measure=before.measure)
    whole = changes_between(before, now, rounds=True)

    assert set(whole) == {*round_changes(before, now), *own_changes(before, now)}


def test_superset_says_once_what_all_of_it_shares() -> None:
    """When a superset gets a round more, that stands on the block and not on each of its exercises."""
    only = """
blocks:
  - kind: superset
    rounds: 2
    progress: {rounds: {add: 1, up_to: 3}}
    exercises: [{exercise: lift, reps: 8, progress: {reps: {add: 1, up_to: 9}}}, {exercise: lift, reps: 5}]
"""
    block = make.resolved({"sessions/only": only}).weeks[1].sessions[0].blocks[0]

    assert in_words(ENGLISH, block.changes) == ("one round more",)
    assert [in_words(ENGLISH, item.changes) for item in block.items] == [("1 more rep",), ()]


def test_straight_sets_say_it_on_each_exercise() -> None:
    """Where each exercise has its own sets, nothing is shared, although both got one more."""
    only = """
blocks:
  - kind: straight
    sets: 2
    progress: {sets: {add: 1, up_to: 3}}
    exercises: [{exercise: lift, reps: 8}, {exercise: lift, reps: 5}]
"""
    block = make.resolved({"sessions/only": only}).weeks[1].sessions[0].blocks[0]

    assert block.changes == ()
    assert [in_words(ENGLISH, item.changes) for item in block.items] == [("one set more",), ("one set more",)]


def test_changes_are_told_from_the_last_time_not_the_last_week() -> None:
    """After a skipped week a dose is compared with the one before that, which members remember."""
    climb = "{reps: 8, progress: {reps: {add: 1, up_to: 20}}}"
    skip = "[{week: 2, day: monday, skip: true, why: The hut is let.}]"
    item = make.in_week(make.one_exercise(climb, changes=skip), 3)

    assert item is not None
    assert in_words(ENGLISH, item.changes) == ("1 more rep",)


def test_first_time_has_no_changes() -> None:
    """Nothing is compared in the first week."""
    item = make.in_week(make.one_exercise("{reps: 8}"), 1)

    assert item is not None
    assert item.changes == ()
