"""What one dose crosses of an exercise's limits: how much of it, how heavy, and how hard."""

from collections.abc import Iterator
from fractions import Fraction

from setwright.checks.limit_crossing import Crossing
from setwright.checks.limit_open import endless, left
from setwright.dose.bounding import (
    MOST_EFFORT,
    centimetres_in,
    effort_of,
    is_open,
    longest_pause_s,
    reps_in,
    seconds_in,
)
from setwright.dose.dose import Dose, metres
from setwright.dose.loads import share_kg
from setwright.dose.open_ended import most_in
from setwright.dose.repetitions import most_reps
from setwright.dose.taking import limit_of
from setwright.model.club import BodyWeightRange
from setwright.model.exercise import Exercise
from setwright.model.limits import Limits, NoWeight
from setwright.model.load import Band, BodyWeightShare, HelpShare, HelpWeight, Load, OneRepMaxShare, Weight
from setwright.model.prescription import Measure
from setwright.model.tempo import Tempo
from setwright.model.units import plain_number

_SAID = {"hold": "a hold of %s s", "work": "%s s of work", "reps": "%s reps"}


def crossings(
    exercise: Exercise, dose: Dose, members: BodyWeightRange, banded: bool, bare: bool = False
) -> Iterator[Crossing]:
    """Yield every limit on a set that a dose crosses.

    Args:
        exercise: the exercise, with its limits.
        dose: its dose.
        members: the body weights of the club.
        banded: whether a table of owned weights stands for the load; it never goes above a limit in kg.
        bare: whether the load is left aside, since nobody says yet what it is.
    """
    if exercise.limits is None:
        return
    yield from endless(exercise, dose)
    for most, tempo in dict.fromkeys((most_in(one.amount), one.tempo) for one in dose.sets):
        if most is not None:
            yield from amounts(exercise, dose.measure, most, tempo)
    for load in dose.loads:
        yield from _too_heavy(exercise, exercise.limits, load, members, banded)
    if not bare:
        for told in dict.fromkeys(one.load for one in dose.working):
            yield from too_little_help(exercise.limits, told, members)
    for one_set in dose.working:
        reps = int(one_set.amount.high) if dose.measure == "reps" else 0
        for key, told in (("load", one_set.load), ("feels_like", one_set.feels), ("leave", left(one_set.amount))):
            if told is not None:
                yield from _too_hard(exercise.limits, told, reps, key)


def amounts(
    exercise: Exercise, measure: Measure, amount: int | Fraction, tempo: Tempo | None = None
) -> Iterator[Crossing]:
    """Yield the limits of reps, hold and distance that the amount of one set crosses, whatever it is counted in.

    And that of one repetition's time, where a tempo says how long it takes.
    """
    limits, pace = exercise.limits, tempo or exercise.tempo
    if limits is None:
        return
    said = _said(measure, amount)
    own = {"hold": limits.hold, "distance": limits.distance}.get(measure)  # then, no other counts it as well
    if limits.distance is not None and (measure == "distance" or (limits.reps is None and limits.hold is None)):
        far_cm = centimetres_in(measure, amount, pace)
        if far_cm > limits.distance:
            as_far = said if measure == "distance" else f"{said}, time for {_metres(far_cm)},"
            yield Crossing("distance", _metres(limits.distance), as_far, measure)
    if limits.reps is not None and own is None:
        reps = reps_in(exercise, measure, amount, pace)
        if reps > limits.reps:
            as_many = said if measure == "reps" else f"{said}, time for {reps} reps,"
            yield Crossing("reps", str(limits.reps), as_many, measure)
    if (
        limits.rep_time is not None
        and measure in ("reps", "work")
        and pace is not None
        and pace.rep_s > limits.rep_time
    ):
        yield Crossing("rep_time", f"{limits.rep_time} s", f"a repetition of {pace.rep_s} s", "tempo")
    if limits.hold is not None:
        seconds = seconds_in(measure, amount, pace)
        moving = measure in ("reps", "distance")
        if seconds > limits.hold and not (moving and limits.reps is not None) and not (moving and own is not None):
            as_long = f"{said}, which take {plain_number(seconds)} s," if moving else said
            yield Crossing("hold", f"{limits.hold} s", as_long, measure)
        pause_s = longest_pause_s(tempo)
        if pause_s > limits.hold:
            yield Crossing("hold", f"{limits.hold} s", f"a pause of {pause_s} s in each rep", "tempo")


def _said(measure: Measure, amount: int | Fraction) -> str:
    if measure == "distance":
        return _metres(amount)
    return _SAID[measure] % amount


def _metres(amount_cm: int | Fraction) -> str:
    return f"{plain_number(metres(amount_cm))} m"


def _too_heavy(
    exercise: Exercise, limits: Limits, load: Load, members: BodyWeightRange, banded: bool
) -> Iterator[Crossing]:
    if isinstance(limits.load, NoWeight):
        if load.weighed or isinstance(load, Band):
            yield Crossing("load", f"{limits.load}, the body alone", str(load), "load")
    elif isinstance(load, BodyWeightShare):
        most = limit_of(exercise, load.per_hand)
        if most.percent is not None and load.percent > most.percent:
            yield Crossing("load", str(limits.load), str(load), "load")
        # Load bands never offer more than a limit in kg. Without bands, the heaviest member would lift more.
        elif most.kg is not None and not banded and share_kg(load.percent, members.to) > most.kg:
            who = f"{load} for a member of {plain_number(members.to)} kg"
            yield Crossing("load", str(limits.load), who, "load")
    elif isinstance(load, Weight):
        limit_kg = limit_of(exercise, load.per_hand).at(members.from_)
        if limit_kg is not None and load.kg > limit_kg:
            lightest = f" for a member of {plain_number(members.from_)} kg"
            who = lightest if isinstance(limits.load, BodyWeightShare) else ""
            yield Crossing("load", str(limits.load), f"{load}{who}", "load")


def too_little_help(limits: Limits, load: Load | None, members: BodyWeightRange) -> Iterator[Crossing]:
    """Yield the least help that a load, or the body alone, falls short of, for some member of the club."""
    least = limits.load
    if not isinstance(least, HelpShare | HelpWeight) or (load is not None and is_open(load)):
        return
    # Between a share and a weight, the member decides at whom the help is scarcest.
    member_kg = members.from_ if isinstance(load, HelpShare) else members.to
    limit_kg = least.kg if isinstance(least, HelpWeight) else share_kg(least.percent, member_kg)
    if isinstance(load, HelpShare | HelpWeight):
        help_kg = load.kg if isinstance(load, HelpWeight) else share_kg(load.percent, member_kg)
        who = "" if type(load) is type(least) else f" for a member of {plain_number(member_kg)} kg"
        if help_kg < limit_kg:
            yield Crossing("load", f"{least}, the least,", f"{load}{who}", "load")
    else:
        yield Crossing("load", f"{least}, the least,", "no help" if load is None else f"{load}, without help,", "load")


def _too_hard(limits: Limits, load: Load, reps: int, written: str) -> Iterator[Crossing]:
    """Yield the limits of effort and of reps in reserve that a set crosses; the stricter of the two binds both."""
    bounds = [(key, getattr(limits, key)) for key in ("top_effort", "least_reserve")]
    for key, limit in bounds:
        most = effort_of(limit) if limit is not None else None
        if most is None:
            continue
        effort = effort_of(load)
        if effort is not None and effort > most:
            yield Crossing(key, str(limit), str(load), written)
        elif isinstance(load, OneRepMaxShare):
            left = MOST_EFFORT - most
            can = most_reps(load.percent)
            if can is not None and reps + left > can:
                yield Crossing(key, str(limit), f"{reps} reps at {load}, where most people manage {can},", "reps")
