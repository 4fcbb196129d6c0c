"""Limits on the ways round a dose: the easier way and the one at home beside it, and warm-ups and cool-downs."""

from collections.abc import Iterator
from itertools import chain

from setwright.checks.limit_crossing import doubt
from setwright.checks.limit_doses import amounts, crossings, too_little_help
from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.dose.ways import ways_from
from setwright.model.limits import Limits
from setwright.model.prescription import MEASURES


def in_place_of(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each limit of another exercise that a dose crosses which may be done with it instead.

    It is done at the pace of the dose, or at its own. The load is left aside: a member takes less for an easier way, or
    none, and its limit stands beside it.
    """
    members = subject.programme.club.body_weight
    for (session, slot), uses in subject.slots.items():
        seen: set[tuple[str, str]] = set()
        for way in ways_from(subject.programme.exercises[uses[0][2].exercise]):
            other = subject.programme.exercises[way.exercise]
            for plan, where, item in uses:
                bare = item.dose.with_sets(load=None)
                own_pace = bare.with_sets(tempo=other.tempo)
                found = (crossings(other, dose, members, banded=True, bare=True) for dose in (bare, own_pace))
                for crossing in chain.from_iterable(found):
                    if (way.exercise, crossing.key) not in seen:
                        seen.add((way.exercise, crossing.key))
                        when = f"in week {where.week} of {plan.ident}, as the {way.kind} way of {item.exercise},"
                        place = subject.at(*place_in_session(session, slot))
                        yield doubt(subject, place, way.exercise, crossing, when)


def in_routines(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each limit that a step of a warm-up or cool-down crosses."""
    for ident, routine in subject.programme.routines.items():
        for index, part in enumerate(routine.exercises):
            if part.exercise is None:
                continue
            exercise = subject.programme.exercises[part.exercise]
            measure = next(key for key in MEASURES if getattr(part, key) is not None)
            limits, members = exercise.limits or Limits(), subject.programme.club.body_weight
            helped = too_little_help(limits, None, members)  # routines know no loads: nothing helps there
            for crossing in chain(amounts(exercise, measure, getattr(part, measure)), helped):
                place = subject.at(f"routines/{ident}.yml", "exercises", index, measure)
                yield doubt(subject, place, part.exercise, crossing, f"in the {routine.kind} {ident}")
