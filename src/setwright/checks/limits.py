"""A dose beyond what the physiotherapist allows.

Looks at the limits that an exercise carries: load, effort, reps in reserve, repetitions, hold, distance, height,
landings of jumps in a session, sets in a week, step of the load in a week, and the earliest phase and week of a plan.
Any week of any plan, and any warm-up or cool-down, that goes beyond one of them stops publishing; the message names the
place of the dose, the hint the place of the limit. Limits cannot be accepted away.

A limit is not got round by another way of counting. Time to keep moving is bounded by repetitions, at its tempo, by a
hold, and by a distance, at 1 m/s, where only that is limited; repetitions and holds bound each other where only one of
them is limited, and a pause in a repetition is a hold. An exercise whose landings are limited is a jump, whatever its
pattern says. Sets in a week, the earliest phase and the earliest week count warm-ups, cool-downs, changes of one week,
and what stands beside a dose as its easier way or its way at home: the limits of that exercise hold for the dose, too.
A share of 1RM under a limited effort must leave the repetition table that much room.

Why it matters: the physiotherapist signed the exercise off with these limits.
"""

from collections.abc import Iterator

from setwright.checks import limit_heights, limit_open, limit_ways, limit_weeks
from setwright.checks.example import Example
from setwright.checks.limit_crossing import dose_place, doubt
from setwright.checks.limit_doses import crossings
from setwright.checks.rule import Doubt, Subject
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.model.exercise import Exercise
from setwright.model.session import Slot

ID = "dose-beyond-limit"
SEVERITY = "error"
SOURCE = "The physiotherapist of the club."

BAD: Example = {"exercises/goblet-squat": "limits: {reps: 6}            # the session asks for 8"}
GOOD: Example = {"exercises/goblet-squat": "limits: {reps: 12}"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each limit that is crossed, at the first week that does."""
    for (_, slot), uses in subject.slots.items():
        exercise = subject.programme.exercises[uses[0][2].exercise]
        if exercise.limits is not None:
            yield from _in_session(subject, slot, uses, exercise)
    yield from limit_weeks.weekly_steps(subject)
    yield from limit_weeks.weekly_sets(subject)
    yield from limit_weeks.earliest(subject)
    yield from limit_weeks.landings(subject)
    yield from limit_heights.heights(subject)
    yield from limit_open.endless_rounds(subject)
    yield from limit_ways.in_place_of(subject)
    yield from limit_ways.in_routines(subject)


def _in_session(
    subject: Subject, slot: Slot, uses: list[tuple[ResolvedPlan, ResolvedSession, ResolvedItem]], exercise: Exercise
) -> Iterator[Doubt]:
    members = subject.programme.club.body_weight
    crossed: set[str] = set()
    for plan, where, item in uses:
        for crossing in crossings(exercise, item.dose, members, bool(item.bands)):
            if crossing.key not in crossed:
                crossed.add(crossing.key)
                place = dose_place(subject, plan, where, item, slot, crossing.written)
                yield doubt(subject, place, item.exercise, crossing, f"in week {where.week} of {plan.ident}")
