"""What a progression makes of a first dose after so many trained weeks.

``trained`` counts from 0: the first week in which the session is really trained is week 0 of its progression. A lighter
week and a taper week hold it, a skipped week does not count. No value ever leaves its ``up_to`` or ``down_to``.
"""

from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import TypeVar

from setwright.model.load import Band, BodyWeightShare, Effort, Load, OneRepMaxShare, Reserve, Weight, magnitude
from setwright.model.progress import Climb, LoadClimb

N = TypeVar("N", int, Fraction)


def value_at(start: N, climb: Climb[N] | None, trained: int) -> N:
    """Return a count, a time or a distance after so many trained weeks."""
    if climb is None:
        return start
    if climb.weeks is not None:
        return climb.weeks[min(trained, len(climb.weeks) - 1)]
    steps = trained // climb.every
    if climb.add is not None and climb.up_to is not None:
        return min(climb.up_to, start + climb.add * steps)
    if climb.take is not None and climb.down_to is not None:
        return max(climb.down_to, start - climb.take * steps)
    return start


def with_magnitude(load: Load, number: Fraction) -> Load:
    """Return the same kind of load with another number."""
    match load:
        case BodyWeightShare() | OneRepMaxShare():
            return replace(load, percent=number)
        case Weight():
            return replace(load, kg=number)
        case Effort():
            return replace(load, rpe=number)
        case Reserve():
            return replace(load, reps=int(number))
        case Band():
            raise ValueError("a band has a name, not a number")


def load_at(start: Load | None, climb: LoadClimb | None, trained: int) -> Load | None:
    """Return a load after so many trained weeks."""
    if climb is None:
        return start
    if climb.weeks is not None:
        return climb.weeks[min(trained, len(climb.weeks) - 1)]
    return _stepped(start, climb, trained // climb.every) if start is not None else None


def _stepped(start: Load, climb: LoadClimb, steps: int) -> Load:
    step = climb.add if climb.add is not None else climb.take
    end = climb.up_to if climb.add is not None else climb.down_to
    if step is None or end is None:
        return start
    if climb.add is not None:
        return with_magnitude(start, min(magnitude(end), magnitude(start) + magnitude(step) * steps))
    return with_magnitude(start, max(magnitude(end), magnitude(start) - magnitude(step) * steps))


def double_at(start: N, climb: Climb[N], load: Load, then: LoadClimb, trained: int) -> tuple[N, Load]:
    """Return count and load of a double progression: the count climbs to its end, then the load rises and it restarts.

    Once the load has reached its own end and the count has climbed once more, both stay.

    Raises:
        ValueError: for a climb without a step or an end, which the language refuses.
    """
    if climb.add is None or climb.up_to is None:
        raise ValueError("a double progression climbs by steps to an end")
    steps_to_end = ceil(Fraction(climb.up_to - start) / Fraction(climb.add))
    cycle, within = divmod(trained, (steps_to_end + 1) * climb.every)
    heavier = _stepped(load, then, cycle)
    settled = heavier == _stepped(load, then, cycle - 1)
    return (climb.up_to if settled else value_at(start, climb, within)), heavier
