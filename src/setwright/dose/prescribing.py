"""From what the coach wrote for one exercise to its dose in one week."""

from dataclasses import replace
from typing import Any, Final

from setwright.dose.dose import Dose, Set
from setwright.dose.progression import double_at, load_at, value_at
from setwright.dose.span import Span
from setwright.dose.timing import USUAL_REST_S
from setwright.dose.week_kind import Remains, share_of_count, share_of_load
from setwright.model.exercise import Exercise
from setwright.model.load import in_all
from setwright.model.plan import Change
from setwright.model.prescription import Measure, Prescription
from setwright.model.progress import Climb, Progress
from setwright.model.session import Block

_KEEPS_ALL: Final = Remains()


def rest_at(block: Block, trained: int) -> int:
    """Return a block's rest in seconds after so many trained weeks."""
    start = block.rest if block.rest is not None else USUAL_REST_S[block.kind]
    return value_at(start, block.progress.rest if block.progress else None, trained)


def prescribed(block: Block, written: Prescription, exercise: Exercise, block_rest_s: int, trained: int) -> Dose:
    """Return the dose after so many trained weeks, before lighter weeks, tapers and single changes."""
    progress = written.progress or Progress()
    measure = written.measure
    amount: Any = getattr(written, measure)
    climb: Climb[Any] | None = getattr(progress, measure)
    load = written.load
    if progress.then is not None and load is not None and climb is not None:
        amount, load = double_at(amount, climb, load, progress.then.load, trained)
    else:
        amount, load = value_at(amount, climb, trained), load_at(load, progress.load, trained)
    tempo = written.tempo or exercise.tempo
    if progress.tempo is not None:
        tempo = progress.tempo.weeks[min(trained, len(progress.tempo.weeks) - 1)]
    rest_s = written.rest if written.rest is not None else block_rest_s
    if progress.rest is not None:
        first_s = written.rest if written.rest is not None else rest_at(block, 0)
        rest_s = value_at(first_s, progress.rest, trained)
    one = Set(Span.of(amount), load, tempo if measure in ("reps", "work") else None, rest_s)
    return Dose.alike(_count(block, written, progress, trained), measure, exercise.sides, one)


def lightened(dose: Dose, remains: Remains) -> Dose:
    """Return what a lighter week or a taper leaves of a dose.

    A lighter week leaves out the last sets. A taper leaves out the lightest ones, since its loads stay.
    """
    if remains == _KEEPS_ALL:
        return dose
    count = share_of_count(dose.count, remains.sets)
    kept = _without_lightest(dose, count) if remains.kind == "taper" else dose.of(count)
    return replace(kept, sets=tuple(_lightened(one, dose.measure, remains) for one in kept.sets))


def _lightened(one: Set, measure: Measure, remains: Remains) -> Set:
    amount = one.amount
    if measure != "distance":
        amount = Span(share_of_count(int(amount.low), remains.reps), share_of_count(int(amount.high), remains.reps))
    return replace(one, amount=amount, load=share_of_load(one.load, remains.load))


def _without_lightest(dose: Dose, count: int) -> Dose:
    """Return the dose with so many working sets, the lightest left out first, the later one of two equally light."""
    heaviest = dose.heaviest
    if heaviest is None or not heaviest.weighed or any(one.load is None for one in dose.working):
        return dose.of(count)
    weights = {place: in_all(one.load) for place, one in enumerate(dose.working) if one.load is not None}
    keep = sorted(sorted(weights, key=lambda place: (-weights[place], place))[:count])
    ramp = tuple(one for one in dose.sets if one.kind != "work")
    return replace(dose, sets=(*ramp, *(dose.working[place] for place in keep)))


def overridden(dose: Dose, change: Change) -> Dose:
    """Return a dose with the numbers that a change sets for one week."""
    numbers = change.doses
    new: dict[str, Any] = {}
    if dose.measure in numbers:
        new["amount"] = Span.of(numbers[dose.measure])
    for key, field in (("load", "load"), ("tempo", "tempo"), ("rest", "rest_s")):
        if key in numbers:
            new[field] = numbers[key]
    return dose.of(numbers.get("sets", dose.count)).with_sets(**new)


def _count(block: Block, written: Prescription, progress: Progress, trained: int) -> int:
    of_block = block.progress
    if block.kind != "straight":
        return value_at(block.rounds or 1, of_block.rounds if of_block else None, trained)
    if written.sets is not None:
        return value_at(written.sets, progress.sets, trained)
    return value_at(block.sets or 1, progress.sets or (of_block.sets if of_block else None), trained)
