"""What open-ended sets cross of an exercise's limits: nothing but 'up_to' keeps them below a number."""

from collections.abc import Iterator

from setwright.checks.limit_crossing import Crossing, doubt
from setwright.checks.rule import Doubt, Subject
from setwright.dose.contacts import is_jump
from setwright.dose.dose import Dose
from setwright.dose.open_ended import most_in
from setwright.dose.ways import ways_from
from setwright.model.exercise import Exercise
from setwright.model.load import Reserve
from setwright.model.span import Open, Span


def endless(exercise: Exercise, dose: Dose) -> Iterator[Crossing]:
    """Yield a limit of a set's amount that a set without an end crosses."""
    limits = exercise.limits
    if limits is None or all(most_in(one.amount) is not None for one in dose.working):
        return
    said = "as many reps as possible, with no 'up_to' to end them,"
    if limits.reps is not None:
        yield Crossing("reps", str(limits.reps), said, "reps")
    elif limits.hold is not None:
        yield Crossing("hold", f"{limits.hold} s", said, "reps")
    if limits.contacts is not None and is_jump(exercise):
        yield Crossing("contacts", str(limits.contacts), said, "reps")


def endless_rounds(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise whose limit of a week or a session only a last round would keep."""
    exercises = subject.programme.exercises
    for (session, slot), uses in subject.slots.items():
        plan, where, item = uses[0]
        clock = item.dose.clock
        if clock is None or clock.lasts_s is None or clock.up_to is not None:
            continue
        for ident in (item.exercise, *(way.exercise for way in ways_from(exercises[item.exercise]))):
            limits = exercises[ident].limits
            key = next((key for key in _BY_ROUNDS if limits is not None and getattr(limits, key) is not None), None)
            if key is None or (key == "contacts" and not is_jump(exercises[ident])):
                continue
            crossing = Crossing(key, str(getattr(limits, key)), _ENDLESS_ROUNDS, "rounds")
            place = subject.at(f"sessions/{session}.yml", "blocks", slot[0], "rounds")
            yield doubt(subject, place, ident, crossing, f"in week {where.week} of {plan.ident}")


_BY_ROUNDS = ("weekly_sets", "contacts")
_ENDLESS_ROUNDS = "as many rounds as possible, with no 'up_to' on the block to end them,"


def left(amount: Span) -> Reserve | None:
    """Return what must be left of an open-ended set, to hold against limits of effort."""
    return Reserve(amount.leave) if isinstance(amount, Open) else None
