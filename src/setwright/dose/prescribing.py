"""From what the coach wrote for one exercise to its dose in one week."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any, Final

from setwright.dose.dose import Clock, Dose, Set
from setwright.dose.open_ended import all_counted, ended
from setwright.dose.progression import amounts_at, double_at, loads_at, value_at
from setwright.dose.timing import USUAL_REST_S
from setwright.dose.week_kind import WHOLE, Remains, share_of_count, share_of_load, share_of_time
from setwright.model.amounts import Amounts, Loads, Rests
from setwright.model.exercise import Exercise
from setwright.model.load import Band, Effort, Load, Reserve, demand, same_kind
from setwright.model.plan import Change
from setwright.model.prescription import Measure, Prescription
from setwright.model.progress import Climb, Progress
from setwright.model.session import Block
from setwright.model.span import Open

_KEEPS_ALL: Final = Remains()


def rest_at(block: Block, trained: int) -> Rests:
    """Return a block's rest in seconds after so many trained weeks: one for all, or each between two."""
    # As many rounds as possible are done without a rest, unless the coach writes one.
    usual_s = USUAL_REST_S[block.kind] if block.lasts is None else 0
    start = block.rest if block.rest is not None else (usual_s,)
    climb = block.progress.rest if block.progress else None
    return (value_at(start[0], climb, trained),) if climb is not None else start


def prescribed(block: Block, written: Prescription, exercise: Exercise, block_rests_s: Rests, trained: int) -> Dose:
    """Return the dose after so many trained weeks, before lighter weeks, tapers and single changes."""
    progress = written.progress or Progress()
    measure = written.measure
    amounts: Amounts = getattr(written, measure)
    climb: Climb[Any, Amounts] | None = getattr(progress, measure)
    loads = written.load or ()
    if progress.then is not None and loads and climb is not None:
        amounts, loads = double_at(amounts, climb, loads, progress.then.load, trained)
    else:
        amounts, loads = amounts_at(amounts, climb, trained), loads_at(loads, progress.load, trained)
    tempo = written.tempo or exercise.tempo
    if progress.tempo is not None:
        tempo = progress.tempo.weeks[min(trained, len(progress.tempo.weeks) - 1)]
    # In a round, an exercise's own rest is the one before the next exercise: its sets are rounds, which rest together.
    own = written.rest if block.kind == "straight" else None
    rests_s = own if own is not None else block_rests_s
    if progress.rest is not None:
        first_s = own if own is not None else rest_at(block, 0)
        rests_s = (value_at(first_s[0], progress.rest, trained),)
    amounts = ended(amounts, written.leave, written.up_to)
    one = Set(
        amount=amounts[0],
        load=loads[0] if loads else None,
        tempo=tempo if measure in ("reps", "work") else None,
        rest_s=rests_s[0],
        feels=written.feels_like,
    )
    # In a week of a list, a plain number stands for as many sets as the other weeks list.
    count = written.listed_sets or _count(block, written, progress, trained)
    alike = Dose.alike(count, measure, exercise.sides, one)
    counted = all_counted(_rested(set_by_set(alike, amounts, loads), rests_s))
    return replace(counted, clock=clock_of(block, trained))


def clock_of(block: Block, trained: int) -> Clock | None:
    """Return what a block keeps to after so many trained weeks, where it runs by the clock."""
    if block.every is None and block.lasts is None:
        return None
    climb = block.progress.lasts if block.progress else None
    lasts_s = value_at(block.lasts, climb, trained) if block.lasts is not None else None
    return Clock(block.every, lasts_s, block.up_to)


def _rested(dose: Dose, rests_s: Rests) -> Dose:
    """Return a dose with these rests after its working sets; the last one stands for those that follow."""
    working = (replace(one, rest_s=nth(rests_s, place)) for place, one in enumerate(dose.working))
    return replace(dose, sets=(*dose.ramp, *working))


def nth(rests_s: Rests, place: int) -> int:
    """Return the rest after the set or round in a place, from 0."""
    return rests_s[min(place, len(rests_s) - 1)]


def set_by_set(dose: Dose, amounts: Amounts = (), loads: Loads = ()) -> Dose:
    """Return a dose whose working sets have these amounts and loads, one each; a single one stands for every set."""
    working = [
        _loaded(
            replace(one, amount=amounts[min(place, len(amounts) - 1)] if amounts else one.amount),
            loads[min(place, len(loads) - 1)] if loads else one.load,
        )
        for place, one in enumerate(dose.working)
    ]
    return replace(dose, sets=(*dose.ramp, *working))


def _loaded(one: Set, load: Load | None) -> Set:
    """Return a set with a load. An effort as the load says by itself how the set feels; the body alone says nothing."""
    felt = load is not None and not isinstance(load, Effort | Reserve)
    return replace(one, load=load, feels=one.feels if felt else None)


def lightened(dose: Dose, remains: Remains, bands: Sequence[str] = ()) -> Dose:
    """Return what a lighter week or a taper leaves of a dose; ``bands`` are the club's, lightest first."""
    if remains == _KEEPS_ALL:
        return dose
    kept = with_fewer_sets(dose, remains, bands)
    if dose.clock is not None and dose.clock.lasts_s is not None:
        kept = replace(kept, clock=replace(dose.clock, lasts_s=share_of_time(dose.clock.lasts_s, remains.sets)))
    return replace(kept, sets=tuple(_lightened(one, dose.measure, remains) for one in kept.sets))


def with_fewer_sets(dose: Dose, remains: Remains, bands: Sequence[str] = ()) -> Dose:
    """Return the sets that a lighter week or a taper leaves, each as it was.

    A lighter week leaves out the last sets. A taper leaves out the lightest ones, since its loads stay: bands in the
    order of the club's list, efforts from the easiest.
    """
    count = share_of_count(dose.count, remains.sets)
    return _without_lightest(dose, count, bands) if remains.kind == "taper" else dose.of(count)


def _lightened(one: Set, measure: Measure, remains: Remains) -> Set:
    amount = one.amount
    if measure != "distance":
        low, high = (share_of_count(int(end), remains.reps) for end in (amount.low, amount.high))
        amount = replace(amount, low=low, high=high)
    if isinstance(amount, Open) and not remains.reps == remains.load == WHOLE:
        # With less weight or fewer repetitions, no set may come to more than it counts as in a full week.
        amount = replace(amount, up_to=int(amount.high))
    return replace(one, amount=amount, load=share_of_load(one.load, remains.load))


def _without_lightest(dose: Dose, count: int, bands: Sequence[str]) -> Dose:
    """Return the dose with so many working sets, the lightest left out first, the later one of two equally light."""
    loads = [one.load for one in dose.working if one.load is not None]
    weights = [weight for load in loads if (weight := _heaviness(load, bands)) is not None]
    if len(weights) < dose.count or not all(same_kind(loads[0], load) for load in loads):
        return dose.of(count)
    keep = sorted(sorted(range(dose.count), key=lambda place: (-weights[place], place))[:count])
    return replace(dose, sets=(*dose.ramp, *(dose.working[place] for place in keep)))


def _heaviness(load: Load, bands: Sequence[str]) -> Fraction | None:
    """Return what loads of one kind are ordered by, heaviest last; None for a band that is in no list."""
    match load:
        case Band(name=name):
            place = Fraction(bands.index(name)) if name in bands else None
            return -place if place is not None and load.helps else place
        case Reserve(reps=reps):
            return Fraction(-reps)
        case _:
            return demand(load)


def overridden(dose: Dose, change: Change) -> Dose:
    """Return a dose with the numbers that a change sets for one week."""
    numbers = change.doses
    amounts: Amounts = numbers.get(dose.measure, ())
    loads: Loads = numbers.get("load", ())
    listed = max(len(amounts), len(loads))
    if dose.clock is not None and dose.open_rounds and "sets" in numbers:
        dose = replace(dose, clock=replace(dose.clock, up_to=numbers["sets"]))
    else:
        dose = dose.of(numbers.get("sets", listed if listed > 1 else dose.count))
    fields = {"tempo": "tempo", "rest": "rest_s", "feels_like": "feels"}
    dose = dose.with_sets(**{field: numbers[key] for key, field in fields.items() if key in numbers})
    return all_counted(set_by_set(dose, ended(amounts, change.leave, change.up_to), loads))


def _count(block: Block, written: Prescription, progress: Progress, trained: int) -> int:
    of_block = block.progress
    if block.kind != "straight":
        # As many rounds as possible are counted once all exercises of the block are known.
        return value_at(block.counted_rounds or 1, of_block.rounds if of_block else None, trained)
    if written.sets is not None:
        return value_at(written.sets, progress.sets, trained)
    return value_at(block.sets or 1, progress.sets or (of_block.sets if of_block else None), trained)
