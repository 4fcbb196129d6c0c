"""A jump with a weight.

Looks at every jump of a session, and at jumps in warm-ups and cool-downs: is there a load, or kit to choose one from,
such as a dumbbell or a band? A physiotherapist who wants a weight there says how heavy it may be, in the limits of the
exercise (`load`); then this check has nothing to say. It cannot be accepted away.

Why it matters: a landing already comes to a multiple of body weight. A weight in the hands adds to each, keeps the arms
from catching a stumble, and is the last thing that a tired member puts down.
"""

from collections.abc import Iterator

from setwright.checks.chosen import chosen_in, in_routines
from setwright.checks.example import JUMPS, Example
from setwright.checks.limit_crossing import dose_place
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.dose.bounding import is_open
from setwright.dose.contacts import is_jump
from setwright.dose.dose import Dose
from setwright.model.exercise import Exercise
from setwright.model.load import Band

ID = "weight-on-a-jump"
SEVERITY = "error"
SOURCE = COMMON

_SESSION = """
blocks:
  - {kind: straight, sets: 2, rest: 2 min, exercises: [{exercise: hop, reps: 5%s}]}
  - {kind: straight, sets: 3, exercises: [{exercise: goblet-squat, reps: 8}]}
"""
BAD: Example = {**JUMPS, "sessions/legs": _SESSION % ", load: 2 kg per hand, kit: [dumbbell]"}
GOOD: Example = {**JUMPS, "sessions/legs": _SESSION % ""}

_HINT = "leave the weight out; a physiotherapist who wants it limits the 'load' of the exercise"


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each jump of a session, at its first week with a weight, and for each one in a routine."""
    for (_, slot), uses in subject.slots.items():
        ident = uses[0][2].exercise
        if not _unweighted(subject.programme.exercises[ident]):
            continue
        for plan, where, item in uses:
            found = _weight(item.dose, chosen_in(subject, where.session, slot))
            if found is not None:
                key, weight = found
                place = dose_place(subject, plan, where, item, slot, key)
                yield Doubt(place, f"{ident}: {weight} on a jump, in week {where.week} of {plan.ident}", _HINT)
                break
    for ident, exercise, kit, routine, place in in_routines(subject):
        if _unweighted(exercise):
            yield Doubt(place, f"{ident}: a {kit} on a jump, in {routine}", _HINT)


def _unweighted(exercise: Exercise) -> bool:
    """Say whether an exercise is a jump to which no physiotherapist allows a weight."""
    return is_jump(exercise) and (exercise.limits is None or exercise.limits.load is None)


def _weight(dose: Dose, kit: str | None) -> tuple[str, str] | None:
    """Return the key that says so and the weight of a dose; None where there is none."""
    load = next((load for load in dose.loads if load.weighed or isinstance(load, Band)), None)
    if load is not None:
        return "load", str(load)
    if kit is None:
        return None
    by_effort = next((f" at {load}" for load in dose.loads if is_open(load)), "")
    return "kit", f"a {kit}{by_effort}"
