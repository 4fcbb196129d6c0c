"""What a progression makes of a first dose after so many trained weeks.

``trained`` counts from 0: the first week in which the session is really trained is week 0 of its progression. A lighter
week and a taper week hold it, a skipped week does not count. No value ever leaves its ``up_to`` or ``down_to``.
"""

from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import Any, TypeVar

from setwright.model.amounts import Amounts, Loads
from setwright.model.load import (
    Band,
    BodyWeightShare,
    Effort,
    HelpShare,
    HelpWeight,
    Load,
    OneRepMaxShare,
    Reserve,
    Weight,
    magnitude,
)
from setwright.model.progress import Climb, LoadClimb
from setwright.model.span import Span

N = TypeVar("N", int, Fraction)


def value_at(start: int, climb: Climb[int, int] | None, trained: int) -> int:
    """Return a count of sets or rounds, or a rest, after so many trained weeks."""
    if climb is None:
        return start
    return climb.listed(trained) if climb.weeks is not None else start + _way(start, start, climb, trained)


def amounts_at(start: Amounts, climb: Climb[Any, Amounts] | None, trained: int) -> Amounts:
    """Return the amounts of a set, or of each, after so many trained weeks: a step is taken in every set alike.

    The climb ends where the largest amount reaches ``up_to``, or the smallest one ``down_to``.
    """
    if climb is None:
        return start
    if climb.weeks is not None:
        return climb.listed(trained)
    by = _way(min(one.low for one in start), max(one.high for one in start), climb, trained)
    return tuple(Span(one.low + by, one.high + by) for one in start)


def _way(low: N, high: N, climb: Climb[N, Any], trained: int) -> N:
    """Return how far from its start a climb has come."""
    steps = trained // climb.every
    if climb.add is not None and climb.up_to is not None:
        return min(climb.up_to - high, climb.add * steps)
    if climb.take is not None and climb.down_to is not None:
        return max(climb.down_to - low, -climb.take * steps)
    raise ValueError("a climb goes by steps to an end, or by a list of weeks")


def with_magnitude(load: Load, number: Fraction) -> Load:
    """Return the same kind of load with another number."""
    match load:
        case BodyWeightShare() | OneRepMaxShare() | HelpShare():
            return replace(load, percent=number)
        case Weight() | HelpWeight():
            return replace(load, kg=number)
        case Effort():
            return replace(load, rpe=number)
        case Reserve():
            return replace(load, reps=int(number))
        case Band():
            raise ValueError("a band has a name, not a number")


def loads_at(start: Loads, climb: LoadClimb | None, trained: int) -> Loads:
    """Return the load of every set, or of each, after so many trained weeks; none at all for the body alone."""
    if climb is None:
        return start
    if climb.weeks is not None:
        return climb.listed(trained)
    return _stepped(start, climb, trained // climb.every)


def _stepped(start: Loads, climb: LoadClimb, steps: int) -> Loads:
    """Return loads so many steps on, each by as much: the heaviest stops at ``up_to``, the lightest at ``down_to``."""
    step = climb.add if climb.add is not None else climb.take
    end = climb.up_to if climb.add is not None else climb.down_to
    if step is None or end is None or not start:
        return start
    numbers = [magnitude(load) for load in start]
    if climb.add is not None:
        by = min(magnitude(end) - max(numbers), magnitude(step) * steps)
    else:
        by = max(magnitude(end) - min(numbers), -magnitude(step) * steps)
    return tuple(with_magnitude(load, number + by) for load, number in zip(start, numbers, strict=True))


def double_at(
    start: Amounts, climb: Climb[Any, Amounts], loads: Loads, then: LoadClimb, trained: int
) -> tuple[Amounts, Loads]:
    """Return amounts and loads of a double progression: the amount climbs to its end, the load rises, it starts again.

    Once the load has reached its own end and the amount has climbed once more, both stay.

    Raises:
        ValueError: for a climb without a step or an end, which the language refuses.
    """
    if climb.add is None or climb.up_to is None:
        raise ValueError("a double progression climbs by steps to an end")
    steps_to_end = ceil(Fraction(climb.up_to - max(one.high for one in start)) / Fraction(climb.add))
    cycle, within = divmod(trained, (steps_to_end + 1) * climb.every)
    heavier = _stepped(loads, then, cycle)
    settled = heavier == _stepped(loads, then, cycle - 1)
    return amounts_at(start, climb, steps_to_end * climb.every if settled else within), heavier
