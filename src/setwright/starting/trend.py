"""Values over weeks as a progression: steps to an end where they are steps, else a list, week by week."""

import itertools
from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import Any

from setwright.model.amounts import parse_loads
from setwright.model.load import Band, Load, magnitude, same_kind
from setwright.model.units import parse_duration_s, parse_length_cm, plain_number

Written = str | list[str]
Progress = dict[str, Any]


def trend(values: Sequence[Written], kind: str) -> tuple[Written, Progress | None]:
    """Return the first value, and the progression that gives the others; None where all weeks are alike.

    Args:
        values: one for each week, as the programme writes them.
        kind: sets, reps, time, distance, rest, load or tempo.
    """
    first = values[0]
    if all(value == first for value in values):
        return first, None
    numbers = [_number(value, kind) for value in values]
    if kind != "tempo" and all(number is not None for number in numbers) and _alike(values, kind):
        steps = _steps([number for number in numbers if number is not None])
        if steps is not None:
            way, step, every = steps
            ends = {"add": "up_to", "take": "down_to"}
            progress: Progress = {way: _written(step, first, kind)}
            if every > 1:
                progress["every"] = f"{every} weeks"
            progress[ends[way]] = values[-1]
            return first, progress
    return first, {"weeks": list(values)}


def double(amounts: Sequence[Written], loads: Sequence[str]) -> tuple[Progress, Progress] | None:
    """Return the progression of repetitions and the load's step after it, where repetitions climb and start over.

    Returns:
        Both, or nothing where the weeks are not of that kind.
    """
    reps, kilograms = [_number(value, "reps") for value in amounts], [_number(value, "load") for value in loads]
    if None in reps or None in kilograms or not _alike(loads, "load"):
        return None
    low, high = min(map(_sure, reps)), max(map(_sure, reps))
    cycle = int(high - low) + 1
    if low == high or len(reps) <= cycle or kilograms[cycle] is None:
        return None
    step = _sure(kilograms[cycle]) - _sure(kilograms[0])
    if step <= 0:
        return None
    for week, (count, weight) in enumerate(zip(map(_sure, reps), map(_sure, kilograms), strict=True)):
        if count != low + week % cycle or weight != _sure(kilograms[0]) + step * (week // cycle):
            return None
    return {"add": "1", "up_to": str(high)}, {"add": _written(step, loads[0], "load"), "up_to": loads[-1]}


def _sure(number: Fraction | None) -> Fraction:
    if number is None:
        raise ValueError("a number is missing")
    return number


def _steps(numbers: list[Fraction]) -> tuple[str, Fraction, int] | None:
    """Return whether numbers are added or taken, the step, and how many weeks each lasts; nothing for other rows."""
    step = next(later - before for before, later in itertools.pairwise(numbers) if later != before)
    every = next(week for week, number in enumerate(numbers) if number != numbers[0])
    bound: Callable[[Fraction, Fraction], Fraction] = min if step > 0 else max
    if all(n == bound(numbers[-1], numbers[0] + step * (week // every)) for week, n in enumerate(numbers)):
        return ("add" if step > 0 else "take"), abs(step), every
    return None


def _number(value: Written, kind: str) -> Fraction | None:
    if isinstance(value, list):
        return None
    match kind:
        case "sets" | "reps":
            return Fraction(value) if value.isdigit() else None
        case "time" | "rest":
            return Fraction(parse_duration_s(value))
        case "distance":
            return parse_length_cm(value)
        case "load":
            return None if isinstance(one := _load(value), Band) else _in_its_unit(one)
    return None


def _load(value: str) -> Load:
    (one,) = parse_loads(value)
    return one


def _in_its_unit(one: Load) -> Fraction:
    """Return a load's number as it is written: pounds where it is written in pounds."""
    return Fraction(str(one).split()[0]) if str(one)[0].isdigit() else magnitude(one)


def _alike(values: Sequence[Written], kind: str) -> bool:
    if kind != "load":
        return True
    loads = [_load(value) for value in values if isinstance(value, str)]
    units = {str(one).split(maxsplit=1)[-1] if str(one)[0].isdigit() else "" for one in loads}
    return all(same_kind(loads[0], one) for one in loads) and len(units) == 1


def _written(step: Fraction, like: Written, kind: str) -> str:
    """Return a step as the programme writes it, in the unit of the value that it is added to."""
    number = plain_number(step)
    match kind:
        case "time" | "rest":
            return f"{number} s"
        case "distance":
            return f"{plain_number(step / 100)} m"
        case "load":
            said = str(like)
            if said.startswith("RPE"):
                return f"RPE {number}"
            if said.endswith("in reserve"):
                return f"{number} {'rep' if number == '1' else 'reps'} in reserve"
            return f"{number} {said.split(maxsplit=1)[1]}"
    return number
