"""A weight in each hand, and a dose that does not say so.

Looks at exercises whose load the physiotherapist limited and whose figure holds one weight in each hand. A dose without
'per hand' can be read twice there: for both hands together, or for each. It cannot be accepted away.

Why it matters: who takes 10 kg in each hand for a dose of 10 kg lifts twice the dose, and may pass the limit.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.limit_crossing import dose_place, limit_place
from setwright.checks.rule import Doubt, Subject
from setwright.model.exercise import Exercise
from setwright.model.load import BodyWeightShare, Load, Weight

ID = "per-hand-missing"
SEVERITY = "error"
SOURCE = "The physiotherapist of the club."

_CARRIED = """
kit: [dumbbell]
limits: {load: 12 kg per hand}
figure: {holds: {dumbbell: each hand}, poses: [{trunk: 2}]}
"""
_SESSION = """
blocks:
  - kind: straight
    sets: 3
    exercises: [{exercise: goblet-squat, reps: 8, load: %s}]
"""
BAD: Example = {"exercises/goblet-squat": _CARRIED, "sessions/legs": _SESSION % "5 kg"}
GOOD: Example = {"exercises/goblet-squat": _CARRIED, "sessions/legs": _SESSION % "5 kg per hand"}


def in_each_hand(exercise: Exercise, kit: str | None) -> bool:
    """Say whether the figure holds this kit, or any where none is named, in each hand."""
    holds = exercise.figure.holds if exercise.figure is not None else None
    if holds is None:
        return False
    held = (holds.kettlebell, holds.dumbbell) if kit is None else (getattr(holds, kit, None),)
    return "each hand" in held


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise of a session, at the first week with such a load."""
    for (_, slot), uses in subject.slots.items():
        ident = uses[0][2].exercise
        exercise = subject.programme.exercises[ident]
        if exercise.limits is None or exercise.limits.load is None:
            continue
        for plan, where, item in uses:
            load = next((load for load in item.dose.loads if _in_all(load)), None)
            if load is not None and in_each_hand(exercise, item.kit):
                yield Doubt(
                    dose_place(subject, plan, where, item, slot, "load"),
                    f"{ident}: {load} in week {where.week} of {plan.ident}, of a weight that is held in each hand",
                    f"write 'per hand' and the weight of one hand; the limit of {exercise.limits.load} is in "
                    f"{limit_place(subject, ident, 'load')}",
                )
                break


def _in_all(load: Load) -> bool:
    return isinstance(load, BodyWeightShare | Weight) and not load.per_hand
