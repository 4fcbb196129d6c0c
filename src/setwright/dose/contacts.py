"""Jump contacts: how often a member lands. What jumps are counted in, by the set, the session and the week.

A jump is an exercise of the pattern 'jump', or one whose landings are limited, whatever its pattern says: it leaves the
ground and lands. Each landing counts once, whether one foot
lands or both together, as foot contacts are counted for jump training (Potach DH, Chu DA, in Baechle TR, Earle RW
(eds), Essentials of Strength Training and Conditioning, NSCA / Human Kinetics; from memory). Height, load and speed of
a landing are not in the number. Of a range, the upper end counts.
"""

from collections.abc import Mapping
from fractions import Fraction
from math import ceil
from typing import Final

from setwright.dose.dose import Dose, Set, metres
from setwright.dose.open_ended import most_in
from setwright.model.exercise import Exercise
from setwright.model.prescription import MEASURES, Measure
from setwright.model.routine import Routine
from setwright.model.tempo import Tempo

JUMP: Final = "jump"
"""The pattern of every jump."""

QUICK_HOP_S: Final = Fraction(1, 2)
"""From one landing to the next, in seconds, where a set is timed and nothing says how fast: two landings a second, as
with a skipping rope. It is also the least that a repetition 'as fast as control allows' takes. Common practice, no
source."""

METRES_PER_CONTACT: Final = 1
"""A landing each metre, where jumps cover a distance: short hops, so that no bound is counted too low. Common practice,
no source."""


def is_jump(exercise: Exercise) -> bool:
    """Say whether an exercise counts as jumps: by its pattern, or since its limits count its landings."""
    return exercise.pattern == JUMP or (exercise.limits is not None and exercise.limits.contacts is not None)


def contacts_of(measure: Measure, amount: int | Fraction, tempo: Tempo | None, side_count: int = 1) -> int:
    """Return the landings of one set of a jump, both sides together.

    Args:
        measure: what the amount is: reps (a count), hold or work (seconds), distance (centimetres).
        amount: the amount of one set, on each side where the sides work one at a time.
        tempo: the pace of a repetition, where there is one; only timed work asks for it.
        side_count: 2 where the sides work one at a time.
    """
    match measure:
        case "reps":
            one_side = ceil(amount)
        case "work":
            one_side = ceil(amount / _landing_s(tempo))
        case "distance":
            one_side = ceil(metres(amount) / METRES_PER_CONTACT)
        case "hold":
            one_side = 1  # jump once, land and stay
    return one_side * side_count


def contacts(exercise: Exercise, dose: Dose) -> int:
    """Return the landings of a whole dose, warm-up sets and both sides included; 0 where the exercise is no jump."""
    return sum(_of_set(dose, one) for one in dose.sets) if is_jump(exercise) else 0


def routine_contacts(routine: Routine, exercises: Mapping[str, Exercise]) -> int:
    """Return the landings of a warm-up or cool-down, all rounds; steps in words are not known and count for nothing."""
    total = 0
    for part in routine.exercises:
        exercise = exercises[part.exercise] if part.exercise is not None else None
        if exercise is None or not is_jump(exercise):
            continue
        measure = next(key for key in MEASURES if getattr(part, key) is not None)
        sides = 2 if exercise.sides == "one at a time" else 1
        total += contacts_of(measure, getattr(part, measure), exercise.tempo, sides)
    return total * routine.rounds


def _of_set(dose: Dose, one: Set) -> int:
    most = most_in(one.amount)
    return contacts_of(dose.measure, one.amount.high if most is None else most, one.tempo, dose.side_count)


def _landing_s(tempo: Tempo | None) -> Fraction:
    """Return the shortest time from one landing to the next, in seconds."""
    if tempo is None:
        return QUICK_HOP_S
    slow_s = tempo.lowering_s + tempo.pause_low_s + tempo.pause_high_s
    return slow_s + QUICK_HOP_S if tempo.lifting_s is None else Fraction(slow_s + tempo.lifting_s)
