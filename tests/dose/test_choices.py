"""Members with choices: what they come to, how long it takes, and what a week asks of them at most."""

from dataclasses import replace
from itertools import combinations
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from setwright.dose.choosing import picks_in
from setwright.dose.exposure import exposure
from setwright.dose.in_use import dosages
from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedPlan
from setwright.model.session import Block
from support import make
from support.limited import programmes

CLUB = "choices: {new: This is my first season, sore: My shoulder hurts}"
ROW = "{name: A row, pattern: pull, regions: {main: [upper back], also: [biceps]}, kit: [dumbbell]}"


def planned(session: str, **files: str) -> ResolvedPlan:
    """Return the plan of a small programme whose club knows two choices."""
    made = make.programme({"club": CLUB, "exercises/row": ROW, "sessions/only": f"blocks: [{session}]", **files})
    return resolve(made)[0]


def test_the_first_way_that_fits_counts_for_whoever_ticks_several() -> None:
    """With two exercises that each have ways, every combination that a member may come to is there, and no other."""
    way = {"exercise": "a", "reps": "8"}
    block = Block.model_validate(
        {
            "kind": "superset",
            "rounds": "2",
            "exercises": [
                way | {"instead": [way | {"for": ["new"]}, way | {"for": ["sore"]}]},
                way | {"instead": [way | {"for": ["sore"]}]},
            ],
        }
    )

    assert picks_in(block) == ((0, 0), (1, 0), (2, 1), (1, 1))


def test_an_alternative_progresses_by_itself() -> None:
    """Its dose grows as written in it; nothing of the exercise that it stands for is carried over."""
    plan = planned(
        "{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8, load: 12 kg, progress: {reps: {add: 1, "
        "up_to: 10}}, instead: [{for: [new], exercise: row, sets: 2, hold: 20 s, progress: {hold: {add: 5 s, "
        "up_to: 30 s}}}]}]}"
    )
    ways = [session.blocks[0].items[0].instead[0] for session in plan.sessions]

    assert [int(way.dose.amount.high) for way in ways] == [20, 25, 30, 30]
    assert {way.dose.count for way in ways} == {2}
    assert {way.dose.loads for way in ways} == {()}
    assert [bool(way.changes) for way in ways] == [False, True, True, False]


def test_time_goes_from_without_what_is_optional_to_the_longest_way() -> None:
    """Two sets of 30 s with 60 s between are 2 min; one set alone is 30 s; four sets of the other way are 5 min."""
    plan = planned(
        "{kind: straight, rest: 60 s, exercises: [{exercise: lift, sets: 2, work: 30 s, instead: [{for: [new], "
        "exercise: lift, sets: 4, work: 30 s}]}, {exercise: row, sets: 2, work: 30 s, optional: true}]}"
    )
    time = next(plan.sessions).blocks[0].time

    assert time.low_s == 30 + 60 + 30
    # Four sets of the other way and three rests, the change-over, two sets of the optional one and a rest: ten seconds
    # more for each pause.
    assert time.high_s == 4 * 30 + 3 * 70 + 70 + 2 * 30 + 70


def test_an_optional_block_may_take_no_time_and_no_change_over() -> None:
    """The quick end of the session is the first block alone, without the 90 s between blocks."""
    one = "{kind: straight, sets: 1, exercises: [{exercise: lift, work: 1 min}]}"
    optional = "{kind: straight, sets: 1, optional: true, exercises: [{exercise: row, work: 1 min}]}"
    time = next(planned(f"{one}, {optional}").sessions).time

    assert (time.low_s, time.high_s) == (60, 60 + 100 + 60)


def test_the_heavier_way_counts_in_the_exposure_of_a_week() -> None:
    """Figure by figure: most sets, most kilograms, and the regions of both ways; a place is never counted twice."""
    plan = planned(
        "{kind: straight, sets: 2, exercises: [{exercise: lift, reps: 8, load: 12 kg, instead: [{for: [new], sets: 3, "
        "exercise: row, reps: 5, load: 4 kg per hand}]}]}"
    )
    session = next(plan.sessions)
    exercises = make.programme({"exercises/row": ROW}).exercises
    whole = exposure(session.items, exercises)

    assert (whole.sets, whole.reps, whole.lifted.fixed_kg) == (3, 16, 2 * 8 * 12)
    assert whole.by_region == {"quadriceps": 2, "upper back": 3, "biceps": 1.5}
    assert whole.by_pattern == {"squat": 2, "pull": 3}


def test_the_doses_in_use_hold_every_way_and_count_a_place_once() -> None:
    """The range that a physiotherapist signs spans the alternative; the week's sets are those of one of the two."""
    made = make.programme(
        {
            "club": CLUB,
            "sessions/only": "blocks: [{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8, instead: "
            "[{for: [sore], exercise: lift, sets: 2, reps: 4}]}]}]",
        }
    )
    dosage = dosages(made, resolve(made))["lift"]

    assert (dosage.sets, dosage.amounts, dosage.weekly_sets) == ({2, 3}, {"reps": {4, 8}}, 3)


@given(programmes(), st.data())
def test_a_member_of_any_choices_is_within_time_and_exposure(made: Any, data: st.DataObject) -> None:
    """Whatever a member ticks, their way lies within the time of the block and asks no more than its exposure."""
    for plan in resolve(made):
        session = data.draw(st.sampled_from(list(plan.sessions)))
        for block in session.blocks:
            most = exposure(block.items, made.exercises)
            for course in block.courses:
                chosen = [replace(way, instead=()) for way in block.picked(course.picks)]
                asked = exposure(chosen, made.exercises)
                assert asked.sets <= most.sets
                assert asked.tension_s <= most.tension_s
                assert all(sets <= most.by_region[region] for region, sets in asked.by_region.items())


def test_every_tick_has_its_course() -> None:
    """For each set of ticked choices, the phone finds a course or the steps as they stand."""
    plan = planned(
        "{kind: superset, rounds: 2, exercises: [{exercise: lift, reps: 8, instead: [{for: [new], exercise: row, "
        "reps: 5}]}, {exercise: row, reps: 8, instead: [{for: [sore], exercise: lift, reps: 5}]}]}"
    )
    block = next(plan.sessions).blocks[0]
    known = {(0, 0), *(course.picks for course in block.courses)}
    ticked = [set(some) for size in range(3) for some in combinations(("new", "sore"), size)]

    assert known == {(int("new" in some), int("sore" in some)) for some in ticked}
